//! Capacity by water and by geometry, the fill by every rule, and that another wax makes another fill.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod formula_shared;

use formula_shared::{f, g, number, percent, wax};
use potside::quantity::{
    Amount, Density, Exact, Length, LengthUnit, Locale, Temperature, TemperatureUnit, Voice, Volume,
};
use potside::vessel::{
    FillRule, Inside, Vessel, VesselError, Water, blend_density, capacity, check, fill, overflow,
    water_density,
};
use proptest::prelude::*;

fn c(text: &str) -> Amount<Temperature> {
    Amount::new(number(text), TemperatureUnit::Celsius)
}

fn mm(text: &str) -> Amount<Length> {
    Amount::new(number(text), LengthUnit::Millimetre)
}

fn density(text: &str) -> Density {
    Density::base(number(text))
}

fn inside(top: &str, bottom: &str, height: &str) -> Inside {
    Inside { top: mm(top), bottom: mm(bottom), height: mm(height) }
}

fn water(mass: &str, at: Amount<Temperature>) -> Water {
    Water { mass: g(mass), at, again: Vec::new() }
}

fn vessel(inside: Option<Inside>, water: Option<Water>, fill: FillRule) -> Vessel {
    Vessel { name: "Straight jar".into(), inside, water, fill, wall: None, note: String::new() }
}

/// kg/m³ to four decimal places.
fn published(at: Temperature) -> Option<Exact> {
    water_density(at).map(|d| (d.in_base() * Exact::whole(1000)).round_to(Exact::ratio(1, 10_000)))
}

// Tanaka et al., Metrologia 38 (2001) 301–309, table 1: every whole degree from 0 to 40 °C, kg/m³.
#[test]
fn water_density_is_the_published_table() {
    let table = "999.8428 999.9017 999.9429 999.9672 999.9749 999.9668 999.9431 999.9045 999.8513 999.7839 999.7027 \
                 999.6081 999.5005 999.3801 999.2474 999.1026 998.9459 998.7778 998.5984 998.4079 998.2067 997.9950 \
                 997.7730 997.5408 997.2988 997.0470 996.7857 996.5151 996.2353 995.9465 995.6488 995.3424 995.0275 \
                 994.7041 994.3724 994.0326 993.6847 993.3290 992.9654 992.5941 992.2152";
    let rows: Vec<&str> = table.split_whitespace().collect();
    assert_eq!(rows.len(), 41);
    for (t, row) in rows.iter().enumerate() {
        assert_eq!(published(Temperature::celsius(Exact::whole(t as i128))), Some(number(row)), "{t} °C");
    }
    // 68 °F is 20 °C.
    assert_eq!(published(f("68").value), Some(number("998.2067")));
    assert_eq!(water_density(c("40.001").value), None);
    assert_eq!(water_density(Temperature::celsius(-Exact::ratio(1, 1000))), None);
}

// An independent formula: Bettin and Spieweck (1990), from measurements a century older, as printed in IP Standard
// Methods (1998), appendix G; its own uncertainty is 0.006 kg/m³.
#[test]
fn water_density_agrees_with_an_older_formula() {
    for tenths in 0..=400 {
        let t = f64::from(tenths) / 10.0;
        let top = 999.83952 + 16.952_577 * t - 7.990_512_7e-3 * t.powi(2) - 46.241_757e-6 * t.powi(3)
            + 105.846_01e-9 * t.powi(4)
            - 281.030_06e-12 * t.powi(5);
        let older = top / (1.0 + 16.887_236e-3 * t);
        let at = Temperature::celsius(Exact::ratio(tenths.into(), 10));
        let ours = water_density(at).unwrap().in_base().to_f64() * 1000.0;
        assert!((ours - older).abs() < 0.006, "{t} °C: {ours} against {older}");
    }
}

#[track_caller]
fn holds(vessel: &Vessel, millilitres: &str, step: &str) {
    let (volume, _) = capacity(vessel, Voice::default()).unwrap();
    assert_eq!(volume.in_base().round_to(number(step)), number(millilitres));
}

#[test]
fn capacity_by_water() {
    let by = |mass: &str, at| Some(water(mass, at));
    let any = FillRule::Share(percent("80"));
    // 998.2067 g of water at 20 °C is a litre, by the table above.
    holds(&vessel(None, by("998.2067", c("20")), any.clone()), "1000.000", "0.001");
    // Ten degrees of the same jar: 300 g at 30 °C is more volume than at 20 °C.
    holds(&vessel(None, by("300", c("20")), any.clone()), "300.539", "0.001");
    holds(&vessel(None, by("300", c("30")), any.clone()), "301.311", "0.001");
    // Water goes before geometry.
    holds(&vessel(Some(inside("80", "80", "90")), by("998.2067", c("20")), any), "1000", "0.01");
}

// Cylinder π/4 d² h; cone frustum π h (D² + D d + d²)/12: elementary geometry, worked with a calculator.
#[test]
fn capacity_by_geometry() {
    let any = FillRule::Share(percent("80"));
    holds(&vessel(Some(inside("80", "80", "90")), None, any.clone()), "452.38934", "0.00001");
    holds(&vessel(Some(inside("90", "60", "100")), None, any.clone()), "447.67695", "0.00001");
    let inches = |text| Amount::new(number(text), LengthUnit::Inch);
    let three = Inside { top: inches("3"), bottom: inches("3"), height: inches("4") };
    // π/4 × 9 × 4 in³ = 28.27433 in³ × 16.387064 mL
    holds(&vessel(Some(three), None, any), "463.333", "0.001");
}

#[track_caller]
fn fills(vessel: &Vessel, wax: Option<Density>, grams: &str, step: &str) {
    let (mass, _) = fill(vessel, wax, Voice::default()).unwrap();
    assert_eq!(mass.in_base().round_to(number(step)), number(grams));
}

#[test]
fn fill_by_every_rule() {
    let litre = || Some(water("998.2067", c("20")));
    fills(&vessel(None, None, FillRule::Weight(g("180"))), None, "180", "1");
    // A litre at 80 % with wax of 0.865 g/mL: 692 g.
    fills(&vessel(None, litre(), FillRule::Share(percent("80"))), Some(density("0.865")), "692.00", "0.01");
    // 80 mm by 90 mm with 10 mm left: π/4 × 64 × 8 cm = 402.1239 mL.
    let headspace = || FillRule::Headspace(mm("10"));
    fills(&vessel(Some(inside("80", "80", "90")), None, headspace()), Some(density("1")), "402.124", "0.001");
    // Tapered 90 to 60 over 100 mm with 20 mm left: the level is 84 mm wide; π × 80/12 × (84² + 84 × 60 + 60²).
    fills(
        &vessel(Some(inside("90", "60", "100")), None, headspace_of("20")),
        Some(density("1")),
        "328.736",
        "0.001",
    );
    // With water known, the space above the wax comes off the water's volume: 1000 − 50.265 mL.
    fills(
        &vessel(Some(inside("80", "80", "90")), litre(), headspace()),
        Some(density("1")),
        "949.73",
        "0.01",
    );
}

fn headspace_of(text: &str) -> FillRule {
    FillRule::Headspace(mm(text))
}

#[test]
fn a_fill_tells_how_it_came_about() {
    let jar = vessel(None, Some(water("300", c("20"))), FillRule::Share(percent("85")));
    let (_, why) = fill(&jar, Some(density("0.865")), Voice::default()).unwrap();
    // 300 g ÷ 0.9982067 g/mL × 0.85 × 0.865 g/mL
    assert_eq!(
        (why.relation.as_str(), why.result.as_str()),
        ("volume filled × density of the wax", "220.971 g")
    );
    let volume = why.values[0].why.as_ref().unwrap();
    let capacity = volume.values[0].why.as_ref().unwrap();
    let water = capacity.values[1].why.as_ref().unwrap();
    assert_eq!(
        (volume.result.as_str(), capacity.result.as_str(), water.result.as_str()),
        ("255.5 mL", "300.5 mL", "0.998 g/mL")
    );
    assert!(water.source.contains("Tanaka"));
}

#[test]
fn changing_wax_changes_the_fill() {
    let jar = vessel(None, Some(water("300", c("20"))), FillRule::Share(percent("85")));
    let of = |d: &str| fill(&jar, Some(density(d)), Voice::default()).unwrap().0;
    assert!(of("0.90") > of("0.86"));
    assert_eq!(
        of("0.90").over(of("0.86")),
        Some(number("90") / number("86")),
        "in the ratio of the densities"
    );
    let weighed = vessel(None, None, FillRule::Weight(g("180")));
    let typed = |d: &str| fill(&weighed, Some(density(d)), Voice::default()).unwrap().0;
    assert_eq!(typed("0.90"), typed("0.86"), "a typed weight stands, whatever the wax");
}

// Volumes add: 1/ρ = Σ w/ρ. 80 % at 0.80 and 20 % at 0.90 is 1/(1 + 2/9) = 9/11.
#[test]
fn blend_density_by_volume() {
    let of = |name: &str| match name {
        "Soft" => Some(density("0.80")),
        "Hard" => Some(density("0.90")),
        _ => None,
    };
    let blend =
        |names: [(&str, &str); 2]| blend_density(&names.map(|(n, s)| wax(n, s)), of, Voice::default());
    let (found, _) = blend([("Soft", "80"), ("Hard", "20")]).unwrap();
    assert_eq!(found.in_base(), Exact::ratio(9, 11).round_to(Exact::ratio(1, 1_000_000_000)));
    let unknown = Err(VesselError::NoDensity { wax: Some("Bees".into()) });
    assert_eq!(blend([("Soft", "80"), ("Bees", "20")]).map(|b| b.0), unknown);
}

#[track_caller]
fn refused(vessel: &Vessel, wax: Option<Density>, wanted: &VesselError) {
    assert_eq!(fill(vessel, wax, Voice::default()).map(|f| f.0), Err(wanted.clone()));
}

#[test]
fn what_cannot_be_filled_is_refused() {
    let one = Some(density("1"));
    let litre = || Some(water("1000", c("20")));
    let share = |text: &str| FillRule::Share(percent(text));
    refused(&vessel(None, None, share("80")), one, &VesselError::NoCapacity);
    refused(&vessel(None, litre(), share("80")), None, &VesselError::NoDensity { wax: None });
    refused(&vessel(None, litre(), share("80")), Some(density("0")), &VesselError::NoDensity { wax: None });
    refused(&vessel(None, litre(), share("0")), one, &VesselError::NoFill);
    refused(&vessel(None, litre(), share("101")), one, &VesselError::OverFull);
    refused(&vessel(None, None, FillRule::Weight(g("0"))), one, &VesselError::NoFill);
    refused(&vessel(None, litre(), headspace_of("10")), one, &VesselError::NoHeight);
    let low = || Some(inside("80", "80", "10"));
    let all = VesselError::Headspace { headspace: mm("10"), height: mm("10") };
    refused(&vessel(low(), None, headspace_of("10")), one, &all);
    refused(&vessel(Some(inside("80", "0", "90")), None, share("80")), one, &VesselError::NoInside);
    let hot = water("300", c("60"));
    refused(&vessel(None, Some(hot), share("80")), one, &VesselError::WaterTemperature { at: c("60") });
    let dry = water("0", c("20"));
    refused(&vessel(None, Some(dry), share("80")), one, &VesselError::NoWater);
    let drop = water("10", c("20"));
    let small =
        fill(&vessel(Some(inside("80", "80", "90")), Some(drop), headspace_of("10")), one, Voice::default());
    assert!(matches!(small, Err(VesselError::LessThanHeadspace { .. })));
}

#[test]
fn a_form_is_told_everything_at_once() {
    let dry = water("0", c("20"));
    let mut bad = vessel(Some(inside("0", "80", "90")), Some(dry), FillRule::Weight(g("0")));
    bad.name = "  ".into();
    let all = vec![VesselError::NoName, VesselError::NoWater, VesselError::NoInside, VesselError::NoFill];
    assert_eq!(check(&bad), Err(all));
    assert_eq!(check(&vessel(Some(inside("80", "70", "90")), None, headspace_of("10"))), Ok(()));
}

/// A weight typed in that does not go into the vessel: hot wax would run over its rim.
#[test]
fn what_would_run_over_is_said() {
    let jar = |fill: &str| vessel(None, Some(water("300", c("20"))), FillRule::Weight(g(fill)));
    let said = |fill: &str, wax: Option<&str>| overflow(&jar(fill), wax.map(density), Voice::default());
    // 300 g of water at 20 °C are 300 ÷ 0.9982067 = 300.539 mL; so much of a wax of 0.86 g/mL is 258.46 g.
    assert_eq!(said("258.4", Some("0.86")), None);
    let ten_ounces = said("283.5", Some("0.86")).unwrap();
    assert_eq!(
        ten_ounces,
        "283.5 g of this wax is 329.7 mL as it is poured, and “Straight jar” holds 300.5 mL to the brim: it would run \
         over. Check its fill and its measures in the Book."
    );
    // Where the wax is not known only what not even water would have room for.
    assert_eq!(said("300.5", None), None);
    let any = said("300.6", None).unwrap();
    assert!(
        any.starts_with("300.6 g of any wax is more than 300.6 mL as it is poured, and “Straight jar” holds"),
        "{any}"
    );
    // Nor is anything known of a vessel that was not measured; other rules leave the rim free.
    let plain = vessel(None, None, FillRule::Weight(g("5000")));
    assert_eq!(overflow(&plain, Some(density("0.86")), Voice::default()), None);
    let share = vessel(None, Some(water("300", c("20"))), FillRule::Share(percent("100")));
    assert_eq!(overflow(&share, Some(density("0.86")), Voice::default()), None);
    // The form refuses what cannot be of any wax.
    assert_eq!(check(&jar("300.5")), Ok(()));
    let errors = check(&jar("350")).unwrap_err();
    let told: Vec<String> = errors.iter().map(|e| e.say(Voice::default())).collect();
    assert_eq!(
        told,
        [
            "A fill of 350 g does not go into a vessel that holds 300.5 mL: wax is lighter than water. Check both; an \
             ounce of weight is not a fluid ounce."
        ]
    );
    let comma = Voice { locale: Locale::Comma, ..Voice::default() };
    let told = check(&jar("350.5")).unwrap_err()[0].say(comma);
    assert!(told.starts_with("A fill of 350,5 g does not go into a vessel that holds 300,5 mL:"), "{told}");
}

proptest! {
    #[test]
    fn headspace_leaves_less(top in 20..150i128, bottom in 20..150i128, height in 20..200i128, space in 1..19i128) {
        let length = |n: i128| mm(&n.to_string());
        let jar = |space| vessel(
            Some(Inside { top: length(top), bottom: length(bottom), height: length(height) }),
            None,
            FillRule::Headspace(length(space)),
        );
        let whole = capacity(&jar(1), Voice::default()).unwrap().0;
        let of = |space| Volume::base(fill(&jar(space), Some(density("1")), Voice::default()).unwrap().0.in_base());
        prop_assert!(of(space) < whole);
        if space > 1 {
            prop_assert!(of(space) < of(space - 1));
        }
        let above = (whole - of(space)).in_base();
        let straight = Exact::ratio(top.max(bottom) * top.max(bottom) * space, 1000);
        prop_assert!(above < straight, "{:?} is no more than a box around it", Volume::base(above).in_base());
    }
}
