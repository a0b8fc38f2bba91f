//! Three invented fragrances, worked through by hand with the tables of Annex I to Regulation (EC) No 1272/2008. The
//! working stands beside each result; of every range the upper end counts.

use super::{ingredient, lines, names};
use potside::desk::hazard::{Drop, Mixed, drops, mix, statements};
use potside::quantity::{Exact, Voice};

const ORCHARD: &str = "Linalool; 78-70-6; 20 - 30 %; Skin Irrit. 2 H315; Eye Irrit. 2 H319; Skin Sens. 1B H317\n\
    d-Limonene; 5989-27-5; 10 - < 15 %; Flam. Liq. 3 H226; Skin Irrit. 2 H315; Skin Sens. 1B H317; Asp. Tox. 1 H304; \
    Aquatic Acute 1 H400 (M=1); Aquatic Chronic 3 H412\n\
    Citral; 5392-40-5; 1 - 5 %; Skin Irrit. 2 H315; Eye Irrit. 2 H319; Skin Sens. 1 H317\n\
    Benzyl benzoate; 120-51-4; ≤ 20 %; Acute Tox. 4 H302; Aquatic Acute 1 H400; Aquatic Chronic 2 H411";

const CLOVE: &str = "Eugenol; 97-53-0; 40 - 60 %; Eye Irrit. 2 H319; Skin Sens. 1B H317\n\
    Isoeugenol; 97-54-1; 1 - 3 %; Acute Tox. 4 H302; Skin Irrit. 2 H315; Skin Sens. 1A H317; \
    Skin Sens. 1A H317: C ≥ 0,01 %\n\
    An acid; 5 - 8 %; Skin Corr. 1B H314; Eye Dam. 1 H318\n\
    A musk; 2 - 4 %; Aquatic Acute 1 H400 (M=1); Aquatic Chronic 1 H410 (M=10)";

const ALMOND: &str =
    "A kernel; 60 - 80 %; Acute Tox. 4 (oral) H302 (ATE = 430 mg/kg bw)\nA solvent; 20 %; not classified";
const BITTER: &str = "A bitter; 20 %; Acute toxicity, oral (Category 3), H301\n\
    Cinnamal; 104-55-2; 0.08 %; Skin Sens. 1A H317\nA solvent; 79.92 %; not classified";

fn candle(percent: i128, text: &str) -> Mixed {
    mix(&[ingredient(Exact::whole(percent), lines(text))], true)
}

fn label(mixed: &Mixed) -> (Vec<u8>, &'static str, Vec<String>, Vec<String>) {
    let said = statements(mixed, false);
    (said.pictograms, said.signal.word(), said.contains, said.further)
}

/// 8 % in the candle: linalool 2.4 %, limonene 1.2 %, citral 0.4 %, benzyl benzoate 1.6 %.
/// Skin, Table 3.2.3: from 1 % on (Table 1.1) 2.4 + 1.2 = 3.6 < 10. Eyes, 3.3.3: 2.4 < 10.
/// Allergy, 3.4.5: linalool 2.4 ≥ 1, so Skin Sens. 1; named from 0.1 % on (3.4.6): linalool, limonene, citral.
/// By mouth, 3.1.3.6.1: 100 ÷ (1.6 ÷ 500) = 31250 > 2000.
/// Water, 4.1.1: 1.2 + 1.6 = 2.8 < 25. 4.1.2: second 1.6 < 25; third 10 × 1.6 + 1.2 = 17.2 < 25;
/// fourth 1.2 + 1.6 = 2.8 < 25.
#[test]
fn orchard() {
    let mixed = candle(8, ORCHARD);
    assert_eq!(names(&mixed), ["Skin Sens. 1 (H317)"]);
    let named = ["Linalool", "d-Limonene", "Citral"].map(str::to_owned).to_vec();
    assert_eq!(label(&mixed), (vec![7], "Warning", named, vec![]));
    let shown = |number| Voice::default().number(number);
    let sums: Vec<String> = mixed.sums.iter().map(|sum| shown(sum.value)).collect();
    // Skin, eyes, allergy, aspiration (not of what is solid), water: acute, second, third and fourth of the chronic.
    assert_eq!(sums, ["3.600", "2.400", "2.400", "1.200", "2.800", "1.600", "17.200", "2.800"]);
    assert_eq!(mixed.acute.iter().map(|a| shown(a.ate)).collect::<Vec<_>>(), ["31\u{202f}250.000"]);

    // 12 %: 3.6, 1.8, 0.6 and 2.4 %. Skin 3.6 + 1.8 = 5.4; third 10 × 2.4 + 1.8 = 25.8 ≥ 25: Aquatic Chronic 3, which has
    // no pictogram. At 25 ÷ (10 × 0.20 + 0.15) = 11.628 % it begins.
    let mixed = candle(12, ORCHARD);
    assert_eq!(names(&mixed), ["Skin Sens. 1 (H317)", "Aquatic Chronic 3 (H412)"]);
    assert_eq!(label(&mixed).0, [7]);
    let most: Vec<Option<Exact>> = drops(&[ingredient(Exact::whole(12), lines(ORCHARD))], 0, true)
        .iter()
        .map(|d: &Drop| d.most)
        .collect();
    // Skin Sens. 1 begins at 1 ÷ 0.30 = 3.333 %.
    assert_eq!(most, [Some(Exact::ratio(333, 100)), Some(Exact::ratio(1162, 100))]);
}

/// 10 %: eugenol 6 %, isoeugenol 0.3 %, the acid 0.8 %, the musk 0.4 %.
/// Skin and eyes: acid and isoeugenol are below 1 % (Table 1.1); eyes 6 < 10.
/// Allergy: isoeugenol 0.3 ≥ 0.01, its own limit: Skin Sens. 1A. Named: eugenol, isoeugenol.
/// By mouth: 0.3 % of category 4 is below 1 %. Water: first 10 × 0.4 = 4; second 10 × 4 = 40 ≥ 25: Aquatic Chronic 2.
#[test]
fn clove() {
    let mixed = candle(10, CLOVE);
    assert_eq!(names(&mixed), ["Skin Sens. 1A (H317)", "Aquatic Chronic 2 (H411)"]);
    let named = ["Eugenol", "Isoeugenol"].map(str::to_owned).to_vec();
    assert_eq!(label(&mixed), (vec![7, 9], "Warning", named, vec![]));
    // 13 %: the acid 1.04 %. Skin 10 × 1.04 = 10.4 ≥ 10. Eyes, once for skin and eyes: 10.4 + 7.8 = 18.2 ≥ 10, and
    // 1.04 < 3. Water 10 × 0.52 = 5.2 and 52.
    let mixed = candle(13, CLOVE);
    assert_eq!(
        names(&mixed),
        ["Skin Irrit. 2 (H315)", "Eye Irrit. 2 (H319)", "Skin Sens. 1A (H317)", "Aquatic Chronic 2 (H411)"]
    );
}

/// Almond 10 % and Bitter 15 %: the kernel 8 % at 430 mg/kg, the bitter 3 % at 100 (Table 3.1.2): 100 ÷ (8 ÷ 430 + 3 ÷ 100)
/// = 2057.416 > 2000. With Bitter 16 %: 100 ÷ (8 ÷ 430 + 3.2 ÷ 100) = 1976.1: Acute Tox. 4.
/// Cinnamal 0.012 % ≥ 0.01 (3.4.6) and < 0.1 (3.4.5): EUH208. With Bitter 12 % 0.0096 %: nothing.
#[test]
fn almond_and_bitter() {
    let two = |bitter| {
        mix(
            &[ingredient(Exact::whole(10), lines(ALMOND)), ingredient(Exact::whole(bitter), lines(BITTER))],
            true,
        )
    };
    let further = vec!["EUH208: Contains Cinnamal. May produce an allergic reaction.".to_owned()];
    let mixed = two(15);
    assert_eq!(names(&mixed), Vec::<String>::new());
    assert_eq!(label(&mixed), (vec![], "", vec![], further.clone()));
    assert_eq!(Voice::default().number(mixed.acute[0].ate), "2057.416");
    let mixed = two(16);
    assert_eq!(names(&mixed), ["Acute Tox. 4 (H302)"]);
    // Article 18(3)(b): those that made it so are named, the one that brings more of it (3.2 ÷ 100) first.
    let named = ["A bitter", "A kernel"].map(str::to_owned).to_vec();
    assert_eq!(label(&mixed), (vec![7], "Warning", named, further));
    assert_eq!(label(&two(12)), (vec![], "", vec![], vec![]));
}
