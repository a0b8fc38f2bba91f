//! How doses are said at the pot.

use potside::pot::Dose;
use potside::quantity::{Exact, Mass, MassUnit, Voice};

#[track_caller]
fn spoon(eighths: u32, expected: &str) {
    let said = Dose::Spoon { eighths, mass: Mass::ZERO }.said(Voice::default());
    assert_eq!(format!("{} {}", said.number, said.unit), expected);
}

/// One US tablespoon is three teaspoons (NIST Handbook 44, Appendix C).
#[test]
fn spoons_are_named_as_one_takes_them() {
    spoon(1, "⅛ tsp");
    spoon(6, "¾ tsp");
    // Below half a tablespoon, though it is a whole number of its eighths.
    spoon(9, "1⅛ tsp");
    spoon(11, "1⅜ tsp");
    spoon(12, "½ tbsp");
    spoon(18, "¾ tbsp");
    spoon(20, "2½ tsp");
    spoon(24, "1 tbsp");
    spoon(36, "1½ tbsp");
    spoon(25, "1 tbsp + ⅛ tsp");
    spoon(49, "2 tbsp + ⅛ tsp");
}

#[test]
fn a_weight_is_said_to_its_scale() {
    let gram = |n, d| Mass::base(Exact::ratio(n, d));
    let dose = |loads| Dose::Weigh {
        mass: gram(610, 10),
        scale: "Small scale".to_owned(),
        division: gram(1, 10),
        capacity: gram(500, 1),
        loads,
    };
    let said = dose(1).said(Voice::default());
    assert_eq!((said.number.as_str(), said.unit.as_str()), ("61.0", "g"));
    assert_eq!((said.beside.as_str(), said.with.as_str()), ("2.15 oz", "Small scale"));
    assert_eq!(dose(2).said(Voice::default()).with, "Small scale, in 2 loads");
    let ounces = Voice { mass: MassUnit::Ounce, ..Voice::default() };
    assert_eq!(dose(1).said(ounces).beside, "61.0 g");
}

#[test]
fn one_is_not_many() {
    let said = |dose: Dose| {
        let said = dose.said(Voice::default());
        format!("{} {}", said.number, said.unit)
    };
    assert_eq!(said(Dose::Drops { drops: 1, mass: Mass::ZERO }), "1 drop");
    assert_eq!(said(Dose::Drops { drops: 3, mass: Mass::ZERO }), "3 drops");
    assert_eq!(said(Dose::Count { pieces: 1 }), "1 piece");
    assert_eq!(said(Dose::Count { pieces: 8 }), "8 pieces");
}

#[test]
fn what_is_not_known_is_not_said() {
    assert_eq!(Dose::Drops { drops: 3, mass: Mass::ZERO }.said(Voice::default()).beside, "");
    let known = Dose::Drops { drops: 3, mass: Mass::base(Exact::ratio(25, 100)) };
    assert_eq!(known.said(Voice::default()).beside, "0.25 g");
}
