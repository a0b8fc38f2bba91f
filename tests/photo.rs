//! Photos: their names, their text, and that nothing but a small picture is one.
#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

use potside::photo::{
    LONG_SIDE, MOST_BYTES, PhotoError, bare, check, from_base64, is_name, name, pack, to_base64,
};
use proptest::prelude::*;

/// A segment with its marker and length.
fn segment(marker: u8, body: &[u8]) -> Vec<u8> {
    let length = u16::try_from(body.len() + 2).unwrap().to_be_bytes();
    [&[0xFF, marker], length.as_slice(), body].concat()
}

fn frame(high: u16, wide: u16) -> Vec<u8> {
    let ([h1, h2], [w1, w2]) = (high.to_be_bytes(), wide.to_be_bytes());
    segment(0xC0, &[8, h1, h2, w1, w2, 1, 1, 0x11, 0])
}

/// The parts of a small grey JPEG, in their order; only its make-up is right, not its codes.
fn parts(high: u16, wide: u16) -> Vec<Vec<u8>> {
    vec![
        vec![0xFF, 0xD8],
        segment(0xE0, b"JFIF\0\x01\x01\0\0\x01\0\x01\0\0"),
        segment(0xDB, &[0; 65]),
        frame(high, wide),
        segment(0xC4, &[0; 29]),
        segment(0xDA, &[1, 1, 0, 0, 63, 0]),
        vec![1, 2, 0xFF, 0, 3, 0xFF, 0xD3, 4],
        vec![0xFF, 0xD9],
    ]
}

fn picture(high: u16, wide: u16) -> Vec<u8> {
    parts(high, wide).concat()
}

/// FIPS 180-4's examples, as NIST gives them in "SHA256.pdf" (one block, two blocks), and nothing at all; the last two
/// from Python's hashlib, at the lengths where the padding needs a block of its own.
#[test]
fn names_are_sha_256() {
    let all: [(&[u8], &str); 5] = [
        (b"abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"),
        (
            b"abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
            "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
        ),
        (b"", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"),
        (&[b'a'; 55], "9f4390f8d30c2dd92ec9f095b65e2b9ae9b0a925a5258e241c9f1e910f734318"),
        (&[b'a'; 1000], "41edece42d63e8d9bf515a9ba6932e1c20cbc9f5a5d134645adb5db1b9737ea3"),
    ];
    for (bytes, digest) in all {
        assert_eq!(name(bytes), digest);
        assert!(is_name(digest));
    }
    for wrong in ["", "abc", &"A".repeat(64), &"a".repeat(65), &"../..".repeat(13)] {
        assert!(!is_name(wrong), "{wrong}");
    }
}

/// RFC 4648, section 10.
#[test]
fn bytes_as_text_and_back() {
    let all = [
        ("", ""),
        ("f", "Zg=="),
        ("fo", "Zm8="),
        ("foo", "Zm9v"),
        ("foob", "Zm9vYg=="),
        ("fooba", "Zm9vYmE="),
        ("foobar", "Zm9vYmFy"),
    ];
    for (plain, text) in all {
        assert_eq!(to_base64(plain.as_bytes()), text);
        assert_eq!(from_base64(text).as_deref(), Some(plain.as_bytes()));
    }
    let every: Vec<u8> = (0..=255).collect();
    assert_eq!(from_base64(&to_base64(&every)), Some(every));
    // Section 3.5: bits left over are nothing, or one photo would have two texts.
    for wrong in ["Zg=", "Zg", "Z===", "Zh==", "Zm9=", "Zm 9v", "Zm9v\n", "====", "Zg==Zg==", "Zm9\u{fc}"] {
        assert_eq!(from_base64(wrong), None, "{wrong:?}");
    }
}

#[test]
fn only_the_picture_stays_in_a_photo() {
    let plain = picture(480, 640);
    assert_eq!(bare(&plain).as_deref(), Some(plain.as_slice()));
    let with = |place: usize, more: Vec<u8>| {
        let mut parts = parts(480, 640);
        parts.insert(place, more);
        parts.concat()
    };
    // Where and with what it was taken, colours, what somebody said of it.
    for marker in [0xE1, 0xE2, 0xED, 0xEE, 0xEF, 0xFE] {
        for place in [1, 2, 5] {
            let told = with(place, segment(marker, b"Exif\0\0 51.5 N 0.1 W <script>alert(1)</script>"));
            assert_eq!(bare(&told), Some(plain.clone()), "{marker:x} at {place}");
        }
    }
    // Whatever stands behind the end.
    assert_eq!(bare(&[plain.as_slice(), b"<html>"].concat()), Some(plain.clone()));
    // A small picture in the head.
    assert_eq!(bare(&with(2, segment(0xE0, b"JFXX\0\x10 a thumbnail"))), Some(plain.clone()));
    let thumbed = segment(0xE0, b"JFIF\0\x01\x01\0\0\x01\0\x01\x01\x01abc");
    assert_eq!(bare(&with(1, thumbed)), None);
}

#[test]
fn what_is_no_photo_of_ours_is_refused() {
    let plain = picture(480, 640);
    for end in 0..plain.len() {
        assert_eq!(bare(&plain[..end]), None, "cut off at {end}");
    }
    for (high, wide) in [(0, 640), (480, 0), (641, 10), (10, 641), (65535, 65535)] {
        assert_eq!(bare(&picture(high, wide)), None, "{high} × {wide}");
    }
    let others: [&[u8]; 6] = [
        b"",
        b"<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>",
        b"<!doctype html><p>",
        b"\x89PNG\r\n\x1a\n",
        b"GIF89a",
        b"RIFF\0\0\0\0WEBP",
    ];
    for other in others {
        assert_eq!(bare(other), None);
        assert_eq!(pack(other), Err(PhotoError::Foreign));
        assert_eq!(check(&name(other), &to_base64(other)), Err(PhotoError::Foreign));
    }
    // Two frames, a scan before any frame, twelve bits, four colours, arithmetic codes.
    let mut parts = parts(480, 640);
    parts.insert(4, frame(480, 640));
    assert_eq!(bare(&parts.concat()), None);
    parts.drain(3..5);
    assert_eq!(bare(&parts.concat()), None);
    for (place, byte) in [(4, 12), (9, 4)] {
        let mut odd = frame(480, 640);
        odd[place] = byte;
        parts.insert(3, odd);
        assert_eq!(bare(&parts.concat()), None);
        parts.remove(3);
    }
    let mut arithmetic = frame(480, 640);
    arithmetic[1] = 0xC9;
    parts.insert(3, arithmetic);
    assert_eq!(bare(&parts.concat()), None);
}

#[test]
fn a_photo_proves_itself_by_its_name() {
    let plain = picture(480, 640);
    let (of, text) = pack(&plain).unwrap();
    assert_eq!(of, name(&plain));
    assert_eq!(check(&of, &text), Ok(()));
    // Every byte changed is told, be it in the picture or in its name.
    for place in 0..plain.len() {
        let mut changed = plain.clone();
        changed[place] ^= 1;
        assert_eq!(check(&of, &to_base64(&changed)), Err(PhotoError::Damaged), "{place}");
    }
    assert_eq!(check(&of.replace('a', "b"), &text), Err(PhotoError::Damaged));
    assert_eq!(check(&of, "no text of bytes"), Err(PhotoError::Damaged));
    // Whole, but with more in it than a picture.
    let told = [plain.as_slice(), b"more"].concat();
    assert_eq!(check(&name(&told), &to_base64(&told)), Err(PhotoError::Foreign));
    // Larger than any of ours: not even looked at.
    let large = "A".repeat((MOST_BYTES / 3 + 1) * 4 + 4);
    assert_eq!(check(&of, &large), Err(PhotoError::Foreign));
    let mut long = parts(480, 640);
    long[6] = vec![7; MOST_BYTES];
    assert_eq!(pack(&long.concat()), Err(PhotoError::Foreign));
}

/// What may be put into a picture: markers, lengths, pieces of other files.
fn piece() -> impl Strategy<Value = Vec<u8>> {
    prop_oneof![
        prop::collection::vec(any::<u8>(), 0..6),
        (any::<u8>(), prop::collection::vec(any::<u8>(), 0..24))
            .prop_map(|(marker, body)| segment(marker, &body)),
        (any::<u16>(), any::<u16>()).prop_map(|(high, wide)| frame(high, wide)),
        any::<u8>().prop_map(|marker| vec![0xFF, marker]),
        Just(b"\xFF\xFF\xFF\xFF".to_vec()),
        Just(b"<script>alert(1)</script>".to_vec()),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 20_000, failure_persistence: None, ..ProptestConfig::default() })]

    /// A picture altered anywhere, with its make-up in mind: it is refused, or what is kept of it is a small picture and
    /// nothing else, and stays what it is.
    #[test]
    fn no_altered_picture_stops_it(
        sides in (1_u16..700, 1_u16..700),
        altered in prop::collection::vec((any::<prop::sample::Index>(), 0_usize..12, piece()), 0..4),
    ) {
        let mut bytes = picture(sides.0, sides.1);
        for (at, gone, put) in altered {
            let from = at.index(bytes.len() + 1);
            let to = (from + gone).min(bytes.len());
            bytes.splice(from..to, put);
        }
        let Some(kept) = bare(&bytes) else { return Ok(()) };
        prop_assert!(kept.len() <= bytes.len());
        prop_assert_eq!(bare(&kept), Some(kept.clone()));
        let (mut markers, mut rest) = (Vec::new(), &kept[2..]);
        while rest[1] != 0xDA {
            let length = usize::from(rest[2]) << 8 | usize::from(rest[3]);
            markers.push(rest[1]);
            if matches!(rest[1], 0xC0 | 0xC2) {
                let side = |at: usize| u32::from(rest[at]) << 8 | u32::from(rest[at + 1]);
                prop_assert!((1..=LONG_SIDE).contains(&side(5)) && (1..=LONG_SIDE).contains(&side(7)));
            }
            rest = &rest[2 + length..];
        }
        prop_assert_eq!(markers.iter().filter(|m| matches!(m, 0xC0 | 0xC2)).count(), 1, "one frame: {:x?}", markers);
        prop_assert!(markers.iter().all(|m| matches!(m, 0xC0 | 0xC2 | 0xC4 | 0xDB | 0xDD | 0xE0)), "{:x?}", markers);
        let text = to_base64(&kept);
        prop_assert_eq!(check(&name(&kept), &text), Ok(()));
        prop_assert_eq!(from_base64(&text), Some(kept));
    }
}
