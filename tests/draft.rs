//! Formulas and vessels while they are typed: reading a form whole, what is wrong with it, and that it is lossless.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod formula_shared;

use formula_shared::{Weighed, f, formula, fragrance, g, lb, number, oz, part, percent, range, tbsp};
use potside::formula::{
    self, Basis, BasisKind, Draft, FormulaError, PartDraft, PartKind, Place, RangeDraft, VesselWick, sample,
};
use potside::quantity::{Amount, LengthUnit, Locale, Mass, MassUnit, ShareUnit, TemperatureUnit, Voice};
use potside::vessel::{self, FillKind, FillRule, Inside, Vessel, Water};

const COMMA: Voice = Voice {
    mass: MassUnit::Ounce,
    temperature: TemperatureUnit::Fahrenheit,
    length: LengthUnit::Inch,
    locale: Locale::Comma,
};

fn full() -> formula::Formula {
    let mut full = formula(vec![
        part("Hardener", PartKind::Additive, Basis::Spoon(tbsp("3/4")), range("186", "190")),
        part("Red", PartKind::Dye, Basis::Drops(3), range("182", "182")),
        part(
            "Shine",
            PartKind::Additive,
            Basis::PerWax { amount: oz("0.25"), wax: lb("1") },
            range("181", "185"),
        ),
        part("Soy oil", PartKind::Other, Basis::OfWhole(percent("1.5")), range("180", "185")),
        part("Pearl", PartKind::Other, Basis::Weight(g("12.5")), range("180", "185")),
        fragrance(Basis::OfWax(percent("8"))),
    ]);
    full.parts[0].highest = Some(Amount::new(number("20"), ShareUnit::PerThousand));
    full.parts[0].flash = Some(f("300"));
    full.parts[1].note = "stir well".into();
    full.wax[0].flash = Some(f("400"));
    full.vessels = vec![VesselWick { vessel: potside::book::Id("v-1".into()), wick: "medium".into() }];
    full.cure_days = 14;
    full.note = "For the shelf".into();
    full
}

// The law of a form: opened and saved unchanged, a thing stays the same.
#[test]
fn an_unchanged_form_reads_as_what_it_was_opened_with() {
    for voice in [Voice::default(), COMMA] {
        let (read, problems) = Draft::of(&full(), voice).read(voice);
        assert_eq!(problems, []);
        assert_eq!(read, full());
    }
}

#[test]
fn units_and_one_sided_ranges_are_filled_in() {
    let mut draft = Draft::new(COMMA);
    draft.name = " Fig ".into();
    draft.wax[0].name = "Soy".into();
    draft.melt_to = "190".into();
    draft.warmed.low = "165".into();
    draft.unwarmed = RangeDraft { low: "75 C".into(), high: "76".into() };
    draft.usual_vessels = "4".into();
    draft.usual_fill = "7,5".into();
    let mut oil = PartDraft::new(PartKind::Fragrance, COMMA);
    oil.name = "Fig".into();
    oil.basis = BasisKind::PerWax;
    oil.amount = "1".into();
    oil.add.low = "180".into();
    draft.parts.push(oil);
    let (read, problems) = draft.read(COMMA);
    assert_eq!(problems, []);
    assert_eq!(read.name, "Fig");
    assert_eq!(read.wax[0].share, percent("100"));
    assert_eq!(read.melt_to, f("190"));
    assert_eq!(read.pour.warmed, range("165", "165"));
    // The second of a range is in the unit of the first.
    assert_eq!(read.pour.unwarmed.high, Amount::new(number("76"), TemperatureUnit::Celsius));
    assert_eq!(read.usual.unwrap().fill, oz("7.5"));
    assert_eq!(read.parts[0].basis, Basis::PerWax { amount: oz("1"), wax: lb("1") });
}

#[test]
fn every_text_that_cannot_be_read_is_told_with_its_place() {
    let voice = Voice::default();
    let mut draft = Draft::new(voice);
    draft.wax[0].name = "Soy".into();
    draft.wax[0].share = "most".into();
    draft.usual_vessels = "4".into();
    draft.cure_days = "1.5".into();
    draft.warmed.low = "74".into();
    draft.unwarmed.low = "77".into();
    draft.parts = vec![PartDraft::new(PartKind::Fragrance, voice), PartDraft::new(PartKind::Dye, voice)];
    draft.parts[0].amount = "8 g".into();
    draft.parts[0].add.low = "80".into();
    draft.parts[1].name = "Red".into();
    draft.parts[1].amount = "3".into();
    let (_, problems) = draft.read(voice);
    let told: Vec<(Place, &str)> = problems.iter().map(|p| (p.place, p.text.as_str())).collect();
    let wanted = [
        (Place::Wax(0), "“Soy”, share: “most” is not a share. Type it like 8 %."),
        (Place::Temperatures, "Melt to: No temperature yet: type a number."),
        (Place::Part(0), "Part 1, amount: “8 g” is a weight, and a share is wanted here. Use % or ‰."),
        (Place::Part(1), "“Red”, add at: No temperature yet: type a number."),
        (Place::Usual, "Usual batch, fill of one: No weight yet: type a number."),
        (Place::Cure, "Cure days: “1.5” is not a whole number. Type one, like 8."),
    ];
    assert_eq!(told, wanted);
}

// What is counted into vessels is added at no temperature: the form does not ask for one.
#[test]
fn pieces_need_no_temperature() {
    let voice = Voice::default();
    let mut draft = Draft::of(&full(), voice);
    let mut label = PartDraft::new(PartKind::Other, voice);
    label.name = "Warning label".into();
    label.basis = BasisKind::PerVessel;
    label.amount = "1".into();
    draft.parts.push(label);
    let (read, problems) = draft.read(voice);
    assert_eq!(problems, []);
    assert_eq!(formula::check(&read, &()).map(|_| ()), Ok(()));
    assert_eq!(Draft::of(&read, voice), draft);
}

// DESIGN.md: 8 % of the wax is 7.41 % of the whole; 8 ÷ 108.
#[test]
fn a_sample_shows_both_conventions_before_the_form_is_whole() {
    let voice = Voice::default();
    let mut draft = Draft::new(voice);
    let mut oil = PartDraft::new(PartKind::Fragrance, voice);
    oil.amount = "8".into();
    draft.parts.push(oil);
    let (read, problems) = draft.read(voice);
    assert!(!problems.is_empty());
    let solved = sample(&read, &(), voice).unwrap();
    assert_eq!(voice.share(solved.parts[0].of_wax), "8.00 %");
    assert_eq!(voice.share(solved.parts[0].of_whole), "7.41 %");
    assert_eq!(solved.total, g("1000").value);
    // A weight for a batch whose size is not typed yet says nothing.
    let weight = formula::Formula { usual: None, ..formula(vec![fragrance(Basis::Weight(g("12")))]) };
    assert_eq!(sample(&weight, &(), voice).unwrap().parts[0].mass, Mass::ZERO);
    // Where the usual batch is typed, the sample is that batch: 4 × 8 oz.
    assert_eq!(sample(&full(), &(), voice).unwrap().total, oz("32").value);
    let all = formula(vec![fragrance(Basis::OfWhole(percent("100")))]);
    assert!(matches!(sample(&all, &(), voice), Err(FormulaError::Full { .. })));
}

fn jar() -> Vessel {
    let mm = |text: &str| Amount::new(number(text), LengthUnit::Millimetre);
    Vessel {
        name: "Straight jar".into(),
        inside: Some(Inside { top: mm("74"), bottom: mm("70.5"), height: mm("90") }),
        water: Some(Water { mass: g("350"), at: f("68"), again: Vec::new() }),
        fill: FillRule::Headspace(mm("12")),
        wall: Some(mm("3")),
        note: "clear".into(),
    }
}

#[test]
fn an_unchanged_vessel_form_reads_as_what_it_was_opened_with() {
    let straight = |mut v: Vessel| {
        v.inside = v.inside.map(|i| Inside { bottom: i.top, ..i });
        v
    };
    for (rule, bare) in [
        (FillRule::Weight(oz("7.5")), false),
        (FillRule::Share(percent("85")), false),
        (FillRule::Weight(g("200")), true),
    ] {
        let mut vessel = Vessel { fill: rule, ..jar() };
        if bare {
            vessel = Vessel { inside: None, water: None, wall: None, ..vessel };
        }
        for vessel in [vessel.clone(), straight(vessel), jar()] {
            for voice in [Voice::default(), COMMA] {
                let (read, problems) = vessel::Draft::of(&vessel, voice).read(voice);
                assert_eq!(problems, Vec::<String>::new());
                assert_eq!(read, vessel);
            }
        }
    }
}

#[test]
fn a_vessel_form_tells_what_is_missing() {
    let draft = vessel::Draft {
        top: "74".into(),
        water: "350".into(),
        rule: FillKind::Headspace,
        ..vessel::Draft::default()
    };
    let wanted = [
        "Inside, height: No length yet: type a number.",
        "Temperature of the water: No temperature yet: type a number.",
        "Fill: No length yet: type a number.",
    ];
    assert_eq!(draft.read(Voice::default()).1, wanted);
}

/// What is not on the screen for a part counted in pieces holds nothing up; what of it can be read stays.
#[test]
fn what_is_not_on_the_screen_is_not_refused() {
    let voice = Voice::default();
    let mut draft = Draft::of(&full(), voice);
    let part = &mut draft.parts[0];
    (part.highest, part.flash, part.stir) = ("about ten".into(), "hot".into(), "a bit".into());
    assert_eq!(draft.read(voice).1.len(), 3);
    let part = &mut draft.parts[0];
    (part.basis, part.amount) = (BasisKind::PerVessel, "1".into());
    let (formula, problems) = draft.read(voice);
    assert_eq!(problems, []);
    assert_eq!(
        (formula.parts[0].highest, formula.parts[0].flash, formula.parts[0].stir_minutes),
        (None, None, 0)
    );
    assert_eq!(draft.parts[0].flash, "hot", "what was typed is there once it is weighed again");
    draft.parts[0].flash = "96 °C".into();
    assert!(draft.read(voice).0.parts[0].flash.is_some());
    draft.parts[0].amount = "some".into();
    assert_eq!(draft.read(voice).1.len(), 1, "the number of pieces is on the screen");
}

/// What the form says of its only part.
#[track_caller]
fn tells(basis: Basis, wanted: &str) {
    let looked =
        Draft::of(&formula(vec![fragrance(basis)]), Voice::default()).look(&Weighed, Voice::default());
    assert_eq!(looked.part(0, Voice::default()), wanted);
}

// Worked by hand: 8/108, 8/92; 1/17; the usual batch is 32 oz; 0.75 tbsp × 0.6 g/mL is 6.654 g of 907.2 g.
#[test]
fn a_part_is_told_in_both_conventions() {
    tells(Basis::OfWax(percent("8")), "8 % of the wax = 7.41 % of the whole");
    tells(Basis::OfWhole(percent("8")), "8 % of the whole = 8.70 % of the wax");
    tells(
        Basis::PerWax { amount: oz("1"), wax: lb("1") },
        "1 oz for 1 lb of wax = 6.25 % of the wax = 5.88 % of the whole",
    );
    tells(Basis::Weight(oz("1")), "1 oz in the usual batch = 3.23 % of the wax = 3.12 % of the whole");
    tells(Basis::Spoon(tbsp("3/4")), "¾ tbsp in the usual batch = 0.74 % of the wax = 0.73 % of the whole");
    tells(Basis::Drops(1), "1 drop in the usual batch = 0.0023 % of the wax = 0.0023 % of the whole");
    tells(Basis::PerVessel(2), "2 in each vessel");
    let none = Draft { parts: vec![PartDraft::new(PartKind::Dye, COMMA)], ..Draft::new(COMMA) };
    assert_eq!(none.look(&(), COMMA).part(0, COMMA), "");
}

#[test]
fn a_form_is_looked_over_as_far_as_it_can_be_read() {
    let voice = Voice::default();
    let mut draft = Draft::of(&full(), voice);
    let looked = draft.look(&(), voice);
    assert!(looked.is_good());
    assert_eq!(looked.blend(voice), Ok("The blend adds up to 100 %.".to_owned()));
    // Its cautions stand beside the part they are about, or with the whole.
    let about = |name: Option<&str>| looked.cautions_about(name, voice).len();
    assert!(about(Some("Hardener")) > 0 && about(Some("Red")) > 0);
    let placed: usize = full().parts.iter().map(|p| about(Some(&p.name))).sum();
    assert_eq!(placed + about(None), looked.cautions.len());
    draft.wax[0].share = "70".into();
    draft.name.clear();
    let against = draft.look(&(), voice).against(voice);
    assert_eq!(against.len(), 2);
    let wrong = draft.look(&(), voice).blend(voice).unwrap_err();
    assert_eq!(against[1], wrong);
    // With a text that cannot be read only the names are told: the blend may be right.
    draft.wax[0].share = "some".into();
    let looked = draft.look(&(), voice);
    assert!(looked.is_wrong(Place::Wax(0)) && !looked.is_wrong(Place::Wax(1)));
    assert_eq!(
        looked.against(voice),
        [
            "“Soft wax”, share: “some” is not a share. Type it like 8 %.",
            "This formula has no name yet. Give it one you will know it by.",
        ]
    );
    assert_eq!(looked.cautions, []);
}
