//! Lines as data sheets print them: classes in full, estimates by their routes, columns that were pasted.

use super::{classed, reads};
use potside::desk::hazard::read_lines;
use potside::quantity::{Locale, Voice};

/// Names of classes as the GHS (Annex 1 to 3 of its text), the OSHA standard (29 CFR 1910.1200, Appendix C) and the
/// titles of Annex I print them, in the ways in which sheets put them together (our own cases).
#[test]
fn classes_written_in_full() {
    for (text, classes) in [
        ("Skin sensitization 1B", "Skin Sens. 1B (H317)"),
        ("Skin Sensitisation, Category 1B", "Skin Sens. 1B (H317)"),
        ("Skin sensitization (Sub-category 1A), H317", "Skin Sens. 1A (H317)"),
        ("Sensitization, skin; Category 1; H317", "Skin Sens. 1 (H317)"),
        ("Skin sensitizer, Cat. 1B; Eye irritation 2A", "Skin Sens. 1B (H317); Eye Irrit. 2A (H319)"),
        ("Respiratory sensitization, Category 1", "Resp. Sens. 1 (H334)"),
        ("Acute toxicity (oral) Category 4", "Acute Tox. 4 (H302)"),
        ("Acute toxicity, Oral (Category 4), H302", "Acute Tox. 4 (H302)"),
        ("Acute Toxicity - Dermal, Category 3", "Acute Tox. 3 (H311)"),
        ("Acute toxicity, Category 4, oral; H302", "Acute Tox. 4 (H302)"),
        ("Acute toxicity, inhalation (dusts and mists), Category 4", "Acute Tox. 4 (H332)"),
        (
            "Acute toxicity, oral, Category 3, Acute toxicity, dermal, Category 4",
            "Acute Tox. 3 (H301); Acute Tox. 4 (H312)",
        ),
        ("Skin corrosion/irritation, Category 2", "Skin Irrit. 2 (H315)"),
        ("Skin corrosion/irritation: Category 1B", "Skin Corr. 1B (H314)"),
        ("Skin Irrit. Cat. 2", "Skin Irrit. 2 (H315)"),
        ("Serious eye damage", "Eye Dam. 1 (H318)"),
        ("Serious eye damage/eye irritation, Category 2A", "Eye Irrit. 2A (H319)"),
        ("Serious eye damage / eye irritation Category 1 H318", "Eye Dam. 1 (H318)"),
        ("Eye irritation 2B H320", "Eye Irrit. 2B (H319)"),
        ("Hazardous to the aquatic environment, long-term hazard, Category 2", "Aquatic Chronic 2 (H411)"),
        ("Hazardous to the aquatic environment – acute hazard – Category 1", "Aquatic Acute 1 (H400)"),
        ("Short-term (acute) aquatic hazard (Category 1), H400", "Aquatic Acute 1 (H400)"),
        ("Long-term (chronic) aquatic hazard (Category 3), H412", "Aquatic Chronic 3 (H412)"),
        ("Aquatic Chronic 2", "Aquatic Chronic 2 (H411)"),
        ("Aspiration hazard, Category 1", "Asp. Tox. 1 (H304)"),
        ("Germ cell mutagenicity, Category 1B, H340", "Muta. 1B (H340)"),
        ("Carcinogenicity (Category 2), H351", "Carc. 2 (H351)"),
        ("Reproductive toxicity, Category 2, H361fd", "Repr. 2 (H361)"),
        ("Effects on or via lactation H362", "Lact. (H362)"),
        (
            "Specific target organ toxicity - single exposure (Category 3), Respiratory system, H335",
            "STOT SE 3 (H335)",
        ),
        (
            "Specific target organ toxicity – single exposure, Category 3, narcotic effects",
            "STOT SE 3 (H336)",
        ),
        (
            "Specific target organ toxicity (repeated exposure), Oral (Category 2), Liver, H373",
            "STOT RE 2 (H373)",
        ),
        ("STOT RE 2, H373 (thyroid, kidneys)", "STOT RE 2 (H373)"),
        ("Flammable liquids, Category 3, H226; Skin irritation, Category 2", "Skin Irrit. 2 (H315)"),
        ("Combustible liquid, Category 4, H227; Aquatic acute 2, H401", "Aquatic Acute 2 (H401)"),
        ("Skin Sens. 1B; H317 - May cause an allergic skin reaction.", "Skin Sens. 1B (H317)"),
        (
            "H400: Very toxic to aquatic life. H410: Very toxic to aquatic life with long lasting effects.",
            "Aquatic Acute 1 (H400); Aquatic Chronic 1 (H410)",
        ),
    ] {
        let classes: Vec<&str> = classes.split("; ").filter(|c| !c.is_empty()).collect();
        reads(&["A; 5 %; ", text].concat(), "5", &classes);
    }
    // With its limit it is a class of the substance as well: 9 % of 5 % is below 0.5 %, 10 % is at it.
    let full = "A; 5 %; Skin Sensitisation, Category 1B: C ≥ 0.5 %";
    assert!(classed(full, 9).is_empty());
    assert_eq!(classed(full, 10), ["Skin Sens. 1 (H317)"]);
    // A column of categories is not one of concentrations, and what is not clear is not guessed.
    for line in [
        "A; Skin irritation; Category 2; H315",
        "A; 5 %; Skin irritashun Category 9",
        "A; 5 %; Hazardous to the aquatic environment, Category 1",
        "A; 5 %; Carcinogenicity",
        "A; 5 %; Skin Sensitisation Category 1, Nonsense Category 2",
        "A; 5 %; Specific target organ toxicity, Category 2",
    ] {
        let (found, errors) = read_lines(line, Locale::Point);
        assert_eq!((found.len(), errors.len()), (0, 1), "{line}: {found:?}");
    }
}

/// Classes of two routes beside each other: each its own (before, both had both).
#[test]
fn a_route_is_of_the_class_it_stands_beside() {
    for text in [
        "Acute Tox. 3 (oral) H301 / Acute Tox. 4 (dermal) H312",
        "Acute Tox. 3 (oral), Acute Tox. 4 (dermal)",
        "Acute Tox. 3 oral / Acute Tox. 4 dermal",
        "oral: Acute Tox. 3, dermal: Acute Tox. 4",
    ] {
        reads(&["A; 1 %; ", text].concat(), "1", &["Acute Tox. 3 (H301)", "Acute Tox. 4 (H312)"]);
    }
    reads("A; 1 %; Acute Tox. 4 (oral, dermal)", "1", &["Acute Tox. 4 (H302)", "Acute Tox. 4 (H312)"]);
}

/// Annex I, Table 3.1.1, undiluted: by mouth 300 to 2000 mg/kg is category 4, on the skin 200 to 1000 category 3; as vapour
/// 2 to 10 mg/L category 3; as dust or mist 1 to 5 mg/L category 4; as gas 500 to 2500 ppm category 3.
#[test]
fn estimates_as_sheets_have_them() {
    for (text, class) in [
        ("ATE oral 500", "Acute Tox. 4 (H302)"),
        ("oral ATE 500 mg/kg", "Acute Tox. 4 (H302)"),
        ("Oral: ATE = 500 mg/kg", "Acute Tox. 4 (H302)"),
        ("ATE (oral): 500 mg/kg bw", "Acute Tox. 4 (H302)"),
        ("ATE - oral: 0.5 g/kg", "Acute Tox. 4 (H302)"),
        ("ATE oral 0,5 g/kg", "Acute Tox. 4 (H302)"),
        ("LD50 oral rat 1200 mg/kg", "Acute Tox. 4 (H302)"),
        ("LD50 (oral, rat): 1200 mg/kg bodyweight", "Acute Tox. 4 (H302)"),
        ("Acute toxicity estimate (oral) 1200 mg/kg", "Acute Tox. 4 (H302)"),
        ("LD50 dermal (rabbit) 900mg/kg", "Acute Tox. 3 (H311)"),
        ("ATE inhalation (vapours) 5 mg/l", "Acute Tox. 3 (H331)"),
        ("LC50 inhalation, dust/mist: 1.2 mg/l (4 h)", "Acute Tox. 4 (H332)"),
        ("LC50 vapour 5000 mg/m3/4h", "Acute Tox. 3 (H331)"),
        ("ATE gas 700 ppm", "Acute Tox. 3 (H331)"),
        ("Acute Tox. 4, H302 (ATE = 400 mg/kg bw)", "Acute Tox. 4 (H302)"),
        // More than 2000 is none, but where a class stands beside it the class counts.
        ("LD50 oral rat > 2000 mg/kg", ""),
        ("LD50 oral rat ≥ 2000 mg/kg", "Acute Tox. 4 (H302)"),
        ("Acute Tox. 4 (oral), H302, ATE oral 4900 mg/kg", "Acute Tox. 4 (H302)"),
    ] {
        let classes: Vec<&str> = Some(class).filter(|c| !c.is_empty()).into_iter().collect();
        assert_eq!(classed(&["A; 100 %; ", text].concat(), 100), classes, "{text}");
    }
    // The estimate and not the point value of the class: 400 ÷ 2000 is 20 %, 500 ÷ 2000 is 25 %.
    let by = |text: &str, percent| classed(&["A; 100 %; ", text].concat(), percent);
    assert_eq!(by("Acute Tox. 4, H302 (ATE = 400 mg/kg bw)", 20), ["Acute Tox. 4 (H302)"]);
    assert!(by("Acute Tox. 4, H302", 20).is_empty());
    // A dose for fish, of another time, in another unit or by another way into the body says nothing of people; of what is
    // breathed in the form must be said, and of “less than” nothing is known.
    for text in [
        "LC50 fish 96 h 1.2 mg/l",
        "LC50 dust 1 h 2 mg/l",
        "LC50 vapour 3000 ppm",
        "ATE oral 5 mg/l",
        "LD50 intraperitoneal rat 300 mg/kg",
        "ATE inhalation 11 mg/l",
        "LD50 oral < 500 mg/kg",
        "LD50 oral mouse 300 mg/kg",
        "ATE oral 500 - 2000",
        "ATE oral 50 0",
        "ATE oral 1,200 mg/kg",
        "ATE oral dermal 500",
    ] {
        let (found, errors) = read_lines(&["A; 5 %; ", text].concat(), Locale::Point);
        assert_eq!((found.len(), errors.len()), (0, 1), "{text}: {found:?}");
        assert!(errors[0].to_string().contains("acute toxicity estimate"), "{errors:?}");
    }
}

/// A share that is kept secret counts as all of it.
#[test]
fn a_share_that_is_not_told_is_up_to_all_of_it() {
    reads("Aroma A; Trade secret; Skin Sens. 1B H317", "100", &["Skin Sens. 1B (H317)"]);
    reads("Aroma A; proprietary; not classified", "100", &[]);
    reads("Proprietary; 1 - 5 %; Skin Sens. 1B H317", "5", &["Skin Sens. 1B (H317)"]);
}

/// What is read of numbers can be compared with the sheet.
#[test]
fn figures_are_shown_as_they_were_read() {
    let line = "A; 5 %; Aquatic Acute 1 H400 (M=10); Skin Sens. 1A H317 ≥ 0.01 %; ATE oral 0.5 g/kg; LD50 dermal > 5000";
    let (found, errors) = read_lines(line, Locale::Point);
    assert!(errors.is_empty(), "{errors:?}");
    assert_eq!(
        found[0].figures(Voice::default()),
        ["M acute 10", "Skin Sens. 1A from 0.01 %", "ATE swallowed: 500 mg/kg", "ATE on skin: not toxic"]
    );
}

/// Columns with nothing but spaces between them (our own cases).
#[test]
fn columns_pasted_with_spaces() {
    let classes = ["Skin Irrit. 2 (H315)", "Skin Sens. 1B (H317)"];
    for line in [
        "Linalool 78-70-6 201-134-4 20 - 30 % Skin Irrit. 2 H315 Skin Sens. 1B H317",
        "Linalool CAS 78-70-6 EC 201-134-4 01-2119474016-42-XXXX ≥20 – <30 Skin Irrit. 2, H315; Skin Sens. 1B, H317",
        "Linalool (78-70-6) 20 to 30 % w/w Skin Irrit. 2, H315, Skin Sens. 1B, H317",
        "Linalool  CAS: 78-70-6  20-30%  Skin irritation, Category 2  Skin sensitization, Category 1B",
    ] {
        reads(line, "30", &classes);
        let (found, _) = read_lines(line, Locale::Point);
        assert_eq!((found[0].name.as_str(), found[0].cas.as_str()), ("Linalool", "78-70-6"), "{line}");
    }
    let (found, _) =
        read_lines(&"Linalool CAS 78-70-6 EC 201-134-4 5 % H317".replace("EC ", "EC: "), Locale::Point);
    assert_eq!((found[0].cas.as_str(), found[0].ec.as_str()), ("78-70-6", "201-134-4"));
    reads("2,6-Dimethyl-7-octen-2-ol 18479-58-8 1 - 5 % H315", "5", &["Skin Irrit. 2 (H315)"]);
    reads("A solvent; balance; not hazardous", "100", &[]);
    reads("A; [1 - 5 %]; H315", "5", &["Skin Irrit. 2 (H315)"]);
    for (line, sentence) in [
        (
            "Linalool 78-70-5 5 % H317",
            "Line 1: The CAS number “78-70-5” has a wrong digit: with these digits it would end in 6. Compare it with the sheet.",
        ),
        ("Linalool 5 % H317", "Line 1: No concentration: add its share of the fragrance, like 5 - 10 %."),
    ] {
        let said: Vec<String> = read_lines(line, Locale::Point).1.iter().map(ToString::to_string).collect();
        assert_eq!(said, [sentence], "{line}");
    }
}
