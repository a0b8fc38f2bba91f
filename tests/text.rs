//! Small letters, held against those of the standard library.
#![cfg(not(target_arch = "wasm32"))]

use potside::text::{cut, key, lower, same};

/// Every sign of the scripts that waxes and fragrances are named in: Latin, Greek and Cyrillic, Armenian, more Latin.
#[test]
fn as_the_standard_library_lowers() {
    let blocks =
        [0..0x1c4, 0x1cd..0x1f0, 0x1f8..0x220, 0x222..0x23a, 0x386..0x3f0, 0x400..0x588, 0x1e00..0x1f00];
    for sign in blocks.into_iter().flatten().filter_map(char::from_u32) {
        let ours = lower(&sign.to_string());
        match sign {
            // The standard library keeps the dot apart, and the sigma at the end of a word.
            'İ' => assert_eq!(ours, "i"),
            'ς' => assert_eq!(ours, "σ"),
            // Letters of African languages that stand alone, and the Greek sign for “and”.
            '\u{180}'..='\u{1c3}' | 'Ϗ' => {}
            _ => assert_eq!(ours, sign.to_lowercase().to_string(), "{:x}", u32::from(sign)),
        }
    }
}

#[test]
fn names_are_found_whatever_their_case() {
    for (name, same) in [
        ("RØD MÅNE ÆBLE", "rød måne æble"),
        ("Crème BRÛLÉE", "crème brûlée"),
        ("ŻÓŁĆ", "żółć"),
        ("ŠKOŘICE", "škořice"),
        ("ΛΕΜΌΝΙ ΛΕΥΚΌΣ", "λεμόνι λευκός"),
        ("ЁЛКА", "ёлка"),
        ("GROẞE", "große"),
        ("香り A", "香り a"),
    ] {
        assert_eq!(lower(name), lower(same));
    }
}

#[test]
fn cuts_only_between_signs() {
    assert_eq!(cut("¼ oz", 2), ("¼", " oz"));
    assert_eq!(cut("¼ oz", 1), ("¼ oz", ""));
    assert_eq!(cut("g", 4), ("g", ""));
}

#[test]
fn a_name_is_the_same_whatever_its_case_and_the_spaces_around_it() {
    for other in ["Crème brûlée", " CRÈME BRÛLÉE ", "\tcrème BrûLÉe\u{a0}"] {
        assert!(same("Crème brûlée", other), "{other}");
        assert_eq!(key("Crème brûlée"), key(other), "{other}");
    }
    // Spaces within tell names apart, and so does an accent that is a sign of its own.
    for other in ["Crème  brûlée", "Crèmebrûlée", "Creme brulee", "Cre\u{300}me bru\u{302}le\u{301}e", ""]
    {
        assert!(!same("Crème brûlée", other), "{other}");
    }
}
