//! Section 3 of a safety data sheet as it is typed or pasted: what is read, and what is told line by line.

use potside::desk::hazard::{Ingredient, cas_check, ec_check, mix, read_lines, remarks};
use potside::quantity::{Exact, Locale, Voice};

/// CAS numbers of well-known substances (public: e.g. water 7732-18-5); their last digit is the check digit.
#[test]
fn cas_check_digits() {
    for number in
        ["7732-18-5", "78-70-6", "5989-27-5", "91-64-5", "121-33-5", "106-24-1", "97-53-0", "5392-40-5"]
    {
        let digits: String = number.chars().filter(char::is_ascii_digit).collect();
        let (before, check) = digits.split_at(digits.len() - 1);
        assert_eq!(cas_check(before).to_string(), check, "{number}");
    }
}

/// EC numbers of the same kind: water 231-791-2, linalool 201-134-4, limonene 227-813-5.
#[test]
fn ec_check_digits() {
    for number in ["231-791-2", "201-134-4", "227-813-5", "202-086-7", "204-465-2"] {
        let digits: String = number.chars().filter(char::is_ascii_digit).collect();
        let (before, check) = digits.split_at(digits.len() - 1);
        assert_eq!(ec_check(before).to_string(), check, "{number}");
    }
}

#[track_caller]
fn reads(line: &str, percent: &str, classes: &[&str]) {
    let (found, errors) = read_lines(line, Locale::Point);
    assert!(errors.is_empty(), "{line}: {errors:?}");
    let one = found.first().cloned().unwrap_or_default();
    let said: Vec<String> = one.classes.iter().map(|c| c.say()).collect();
    let (whole, places) = percent.split_once('.').unwrap_or((percent, ""));
    let number =
        Exact::ratio(format!("{whole}{places}").parse().unwrap_or(-1), 10_i128.pow(places.len() as u32));
    assert_eq!(
        (one.percent, said.iter().map(String::as_str).collect::<Vec<_>>().as_slice()),
        (number, classes),
        "{line}"
    );
}

#[test]
fn lines_as_sheets_have_them() {
    reads(
        "Linalool; 78-70-6; 201-134-4; 5 - < 10 %; Skin Irrit. 2 H315; Eye Irrit. 2 H319; Skin Sens. 1B H317",
        "10",
        &["Skin Irrit. 2 (H315)", "Eye Irrit. 2 (H319)", "Skin Sens. 1B (H317)"],
    );
    reads(
        "Linalool\tCAS: 78-70-6\tEC 201-134-4\t≥ 5 – < 10\tSkin Sens. 1B, H317",
        "10",
        &["Skin Sens. 1B (H317)"],
    );
    reads(
        "Limonene | 5989-27-5 | 01-2119529223-47-XXXX | <1% | Flam. Liq. 3, H226; Asp. Tox. 1, H304; Aquatic Acute 1, H400; Aquatic Chronic 3, H412",
        "1",
        &["Asp. Tox. 1 (H304)", "Aquatic Acute 1 (H400)", "Aquatic Chronic 3 (H412)"],
    );
    reads("Eugenol; 2,5 %; H317; H319", "2.5", &["Skin Sens. 1 (H317)", "Eye Irrit. 2 (H319)"]);
    reads(
        "Coumarin; 1.5 %; Acute Tox. 4 (oral) H302 / Acute Tox. 4 (dermal) H312",
        "1.5",
        &["Acute Tox. 4 (H302)", "Acute Tox. 4 (H312)"],
    );
    reads(
        "Coumarin; 1.5 %; Acute Tox. 4; H302; Skin Sens. 1B; H317",
        "1.5",
        &["Acute Tox. 4 (H302)", "Skin Sens. 1B (H317)"],
    );
    reads("Cineole; 0.1 to 1 %; SKIN SENS. 1B (H317)", "1", &["Skin Sens. 1B (H317)"]);
    reads("Solvent; > 90 %; not classified", "100", &[]);
    reads(
        "2,6-Dimethyl-7-octen-2-ol; 18479-58-8; 1-5%; Skin Irrit. 2; H315; M(acute)=1; M-factor chronic: 1",
        "5",
        &["Skin Irrit. 2 (H315)"],
    );
    reads("Musk; 3 %; Repr. 2 H361f; STOT SE 3 H335", "3", &["Repr. 2 (H361)", "STOT SE 3 (H335)"]);
}

/// As sheets print them where their columns are pasted together (our own cases).
#[test]
fn remarks_beside_a_class_do_no_harm() {
    reads("A; up to 5 % (w/w); Acute Tox. 4 * oral", "5", &["Acute Tox. 4 (H302)"]);
    reads("A; max. 2.5 percent; n/a; Warning; H317 ***", "2.5", &["Skin Sens. 1 (H317)"]);
    reads("A; 1 %; Acute Tox. 4 - inhalation vapour, H332", "1", &["Acute Tox. 4 (H332)"]);
    reads(
        "A; 1 %; STOT SE 3, H335 (respiratory tract); Aq. Chronic 2",
        "1",
        &["STOT SE 3 (H335)", "Aquatic Chronic 2 (H411)"],
    );
    reads("A; 1 %; Skin Irrit. 2 -, H315", "1", &["Skin Irrit. 2 (H315)"]);
    // Both numbers of a column, each with its check digit.
    let (found, _) = read_lines("A; 78-70-6 / 201-134-4; 1 %", Locale::Point);
    assert_eq!((found[0].cas.as_str(), found[0].ec.as_str()), ("78-70-6", "201-134-4"));
    let (_, errors) = read_lines("A; 78-70-5/201-134-4; 1 %", Locale::Point);
    assert!(errors[0].to_string().contains("would end in 6"), "{errors:?}");
}

/// A class that stands only with its limit is a class of the substance all the same: 5 % of it is above 0.5 %, and above 1 %
/// of the corrosive one a mixture irritates (10 × 1 % ≥ 10 %).
#[test]
fn a_limit_without_its_class_tells_the_class() {
    reads("A; 5 %; Skin Sens. 1B H317 ≥ 0.5 %", "5", &["Skin Sens. 1B (H317)"]);
    reads(
        "A; 5 %; Skin Corr. 1B H314: C ≥ 10 %; Skin Irrit. 2 H315: 1 % ≤ C < 10 %",
        "5",
        &["Skin Corr. 1B (H314)", "Skin Irrit. 2 (H315)"],
    );
    // The class that is told stays what it is.
    reads("A; 5 %; Skin Sens. 1A H317; Skin Sens. 1 H317 ≥ 0.5 %", "5", &["Skin Sens. 1A (H317)"]);
    let found = classed("A; 5 %; Skin Sens. 1B H317 ≥ 0.5 %", 20);
    assert_eq!(found, ["Skin Sens. 1 (H317)"]);
    assert!(classed("A; 5 %; Skin Sens. 1B H317 ≥ 0.5 %", 9).is_empty());
}

/// Of a mixture of so much percent of an oil of this line.
fn classed(line: &str, percent: i128) -> Vec<String> {
    let (sheet, errors) = read_lines(line, Locale::Point);
    assert!(errors.is_empty(), "{errors:?}");
    let percent = Exact::whole(percent);
    let oil = Ingredient { name: "Oil".into(), percent, sheet: Some(sheet), harmless: false };
    mix(&[oil], true).classes.iter().map(|c| c.say()).collect()
}

/// Annex I, Table 4.1.1 and 4.1.2: M × share ≥ 25 %. An M-factor is of the class it stands beside; of two that stand beside
/// none, the stricter counts, in whatever order.
#[test]
fn an_m_factor_is_of_its_class() {
    let beside = "A; 10 %; Aquatic Acute 1 H400 (M=10), Aquatic Chronic 1 H410 (M=1)";
    // 25 % of an oil with 10 %: acute 10 × 2.5 = 25, chronic 2.5 and, as Chronic 2, 10 × 2.5 = 25.
    assert_eq!(classed(beside, 25), ["Aquatic Acute 1 (H400)", "Aquatic Chronic 2 (H411)"]);
    for line in [
        "A; 10 %; Aquatic Acute 1 H400, M-factor (acute) = 10; Aquatic Chronic 1 H410, M(chronic)=1",
        "A; 10 %; Aquatic Acute 1, H400, M: 10; Aquatic Chronic 1, H410, M-factor: 1",
    ] {
        assert_eq!(classed(line, 25), classed(beside, 25), "{line}");
    }
    let first = "A; 10 %; Aquatic Acute 1 H400; M=10; Aquatic Chronic 1 H410; M=1";
    let last = "A; 10 %; M=1; Aquatic Chronic 1 H410; Aquatic Acute 1 H400; M=10";
    assert_eq!(classed(first, 25), ["Aquatic Acute 1 (H400)", "Aquatic Chronic 1 (H410)"]);
    assert_eq!(classed(last, 25), classed(first, 25));
}

/// Table 3.1.1: up to 2000 mg/kg it is Acute Tox. 4. Of two estimates the lower counts, in whatever order.
#[test]
fn of_two_estimates_the_lower_counts() {
    for line in [
        "A; 100 %; ATE oral 1900; ATE oral > 2000",
        "A; 100 %; ATE oral 4000; ATE oral: 1900 mg/kg bodyweight",
    ] {
        assert_eq!(classed(line, 100), ["Acute Tox. 4 (H302)"], "{line}");
    }
}

#[track_caller]
fn refused(line: &str, sentence: &str) {
    let (found, errors) = read_lines(line, Locale::Point);
    let said: Vec<String> = errors.iter().map(ToString::to_string).collect();
    assert_eq!((found.len(), said), (0, vec![sentence.to_owned()]), "{line}");
}

#[test]
fn every_error_names_its_line_and_what_to_do() {
    let cases = [
        "; 5 %",
        "Linalool; 78-70-6",
        "Linalool; 78-70-5; 5 %",
        "Linalool; 201-134-5; 5 %",
        "Linalool; 78-70-6; 5989-27-5; 5 %",
        "Linalool; 5 %; 6 %",
        "Linalool; 10 - 5 %",
        "Linalool; 105 %",
        "Linalool; x %",
        "Linalool; 5 %; Skin Irit. 2",
        "Linalool; 5 %; Skin Sens. 1B, Skin Irit. 2",
        "Linalool; 5 %; H399",
        "Linalool; 5 %; Acute Tox. 4",
        "Linalool; 5 %; STOT SE 3",
        "Linalool; 5 %; M=0",
        "Linalool; 5 %; ATE 500",
        "Linalool; 5 %; SCL Skin Sens. 1 >=",
        "Linalool; 5 %; pH acid",
    ];
    let said = cases.map(|case| {
        let (found, errors) = read_lines(&format!("# remark\n\n{case}"), Locale::Point);
        assert!(found.is_empty(), "{case}: {found:?}");
        format!("{case}\n    {}", errors.first().map(ToString::to_string).unwrap_or_default())
    });
    insta::assert_snapshot!(said.join("\n"));
    refused("5 %", "Line 1: No concentration: add its share of the fragrance, like 5 - 10 %.");
}

/// Our own limit: 500 lines. What stands behind it is said, where it is read and where it is reckoned with.
#[test]
fn a_list_that_is_too_long_says_so() {
    let lines = |number: usize| (0..number).map(|n| format!("Oil {n}; 0.1 %\n")).collect::<String>();
    let (found, errors) = read_lines(&format!("{}\n# a remark\n", lines(500)), Locale::Point);
    assert_eq!((found.len(), errors.len()), (500, 0), "what is empty is not left out");
    let (found, errors) = read_lines(&lines(502), Locale::Point);
    let said: Vec<String> = errors.iter().map(ToString::to_string).collect();
    assert_eq!(
        said,
        [
            "Line 501: Only the first 500 lines are read: this line and those after it are not. Put lines of one substance \
             together, and leave out remarks and empty lines."
        ]
    );
    let rest = found.last().unwrap();
    // 100 % less 500 × 0.1 %.
    assert_eq!((found.len(), rest.percent, rest.unknown), (501, Exact::whole(50), true));
    let oil =
        Ingredient { name: "Oil".into(), percent: Exact::whole(8), sheet: Some(found), harmless: false };
    let said = remarks(&mix(&[oil], true), Voice::default());
    assert!(
        said.contains(&"Hazards not known in full: the lines that were not read.".to_owned()),
        "{said:?}"
    );
}

#[test]
fn good_lines_are_read_beside_bad_ones() {
    let (found, errors) = read_lines("A; 5 %\nB; five\nC; 6 %; H317\n", Locale::Point);
    assert_eq!((found.len(), errors.len(), errors[0].line), (2, 1, 2));
}

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
        // More than 2000 is none, and where a class stands beside it the estimate counts.
        ("LD50 oral rat > 2000 mg/kg", ""),
        ("LD50 oral rat ≥ 2000 mg/kg", "Acute Tox. 4 (H302)"),
        ("Acute Tox. 4 (oral), H302, ATE oral 4900 mg/kg", ""),
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
