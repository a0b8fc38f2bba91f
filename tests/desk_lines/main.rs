//! Section 3 of a safety data sheet as it is typed or pasted: what is read, and what is told line by line.

mod beside;
mod factor;
mod spelled;
mod words;

use potside::desk::hazard::{Ingredient, cas_check, ec_check, mix, read_lines, remarks};
use potside::quantity::{Exact, Locale, Voice};

/// What stands in a line beside its classes.
#[track_caller]
fn figures(line: &str, told: &[&str]) {
    let (found, errors) = read_lines(line, Locale::Point);
    assert!(errors.is_empty(), "{line}: {errors:?}");
    assert_eq!(found.first().cloned().unwrap_or_default().figures(Voice::default()), told, "{line}");
}

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
        "Linalool; 5 %; Skin Sens. 1B H317 6 %",
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
