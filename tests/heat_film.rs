//! What feeds the freezing: film coefficients, the warming of a vessel, and the factor fitted to a log.
#![allow(clippy::unwrap_used)]

use potside::heat::{
    ALUMINIUM, Air, Base, Detail, Film, GLASS, PARAFFIN_LIKE, Place, Reading, Setup, Shape, film, freeze,
    lay_over, open_share, radiation, warmed,
};

const JAR: Shape = Shape { radius: 0.035, fill: 0.070, rim: 0.012, wall: 0.0035, base: 0.006 };
const STILL: Place = Place { room: 21.0, base: Base::Wood, covered: false, gap: None, air: 0.0 };

#[track_caller]
fn near(value: f64, expected: f64, share: f64) {
    assert!((value / expected - 1.0).abs() <= share, "{value} is not {expected}");
}

#[test]
fn the_upright_plate_is_as_published() {
    // Çengel & Ghajar, solution 9-97: a plate 1.5 m high at 26 °C in air of 18 °C: Ra 2.787e9, Nu 169.5, h 2.858.
    let air = Air::between(26.0, 18.0);
    near(air.conduct, 0.02529, 0.001);
    near(air.viscosity, 1.534e-5, 0.001);
    near(air.prandtl, 0.7304, 0.001);
    near(air.rayleigh(1.5), 2.787e9, 0.005);
    near(air.upright(1.5), 169.5, 0.002);
    near(air.conduct * air.upright(1.5) / 1.5, 2.858, 0.003);
}

#[test]
fn plates_and_cylinders_are_as_published() {
    // The library ht 1.2.0, after McAdams, Churchill and Chu, Churchill and Bernstein, with the air of the table at 33 °C.
    let air = Air::between(45.0, 21.0);
    for (length, ra, up, down, upright) in [
        (0.02, 16_701.6, 6.1388, 3.0694, 6.0919),
        (0.1, 2_087_704.0, 20.5263, 10.2632, 20.2433),
        (0.3, 56_368_020.0, 57.5134, 23.3949, 51.6816),
    ] {
        near(air.rayleigh(length), ra, 1e-4);
        near(air.up(length), up, 1e-4);
        near(air.down(length), down, 1e-4);
        near(air.upright(length), upright, 1e-4);
    }
    near(air.across(1.0, 0.07), 34.2279, 1e-4);
    // Çengel & Ghajar's steam pipe: 0.1 m across a wind of 8 m/s, air at 60 °C: Nu 124.
    near(Air::between(110.0, 10.0).across(8.0, 0.1), 124.0, 0.005);
}

#[test]
fn radiation_is_as_reckoned() {
    // 4εσT³ at 300 K: 5.67e-8·4·2.7e7 = 6.12 W/m²K for a black body (computed).
    near(radiation(1.0, 26.85, 26.85), 6.124, 0.001);
    // Two plates a height apart: 1 − F12 = 1 − (√2 − 1) by crossed strings.
    near(open_share(1.0, 1.0), 2.0 - 2f64.sqrt(), 1e-12);
    near(open_share(1e6, 1.0), 1.0, 1e-5);
}

#[test]
fn a_channel_becomes_two_plates_when_wide_and_shuts_when_narrow() {
    let air = Air::between(45.0, 21.0);
    let h = |gap: f64| air.conduct * air.channel(gap, 0.1) / gap;
    let wide = air.conduct * air.upright(0.1) / 0.1;
    near(h(0.1), wide, 0.25);
    assert!(h(0.002) < 0.1 * wide);
    assert!(h(0.002) < h(0.004) && h(0.004) < h(0.008));
}

#[test]
fn the_place_moves_the_film_the_right_way() {
    let of = |place| film(&JAR, &PARAFFIN_LIKE, &GLASS, &place).unwrap();
    let still = of(STILL);
    // Free convection in gases 2–25 W/m²K (Incropera, Table 1.1, from memory) and some 5 of radiation.
    for h in [still.side, still.top] {
        assert!((6.0..20.0).contains(&h), "{h}");
    }
    assert!((2.0..8.0).contains(&still.bottom), "{}", still.bottom);
    assert!(of(Place { covered: true, ..STILL }).top < 0.7 * still.top);
    assert!(of(Place { gap: Some(0.01), ..STILL }).side < 0.7 * still.side);
    assert!(of(Place { gap: Some(0.5), ..STILL }).side > 0.9 * still.side);
    let windy = of(Place { air: 1.0, ..STILL });
    assert!(windy.side > 1.3 * still.side && windy.top > 1.1 * still.top);
    assert!(of(Place { base: Base::Metal, ..STILL }).bottom > of(Place { base: Base::Rack, ..STILL }).bottom);
    assert!(of(Place { base: Base::Rack, ..STILL }).bottom > still.bottom);
    let bright = film(&JAR, &PARAFFIN_LIKE, &ALUMINIUM, &STILL).unwrap();
    assert!(bright.side < still.side - 3.0, "a bright tin hardly radiates");
    for bad in
        [Place { air: -1.0, ..STILL }, Place { room: f64::NAN, ..STILL }, Place { gap: Some(0.0), ..STILL }]
    {
        assert!(film(&JAR, &PARAFFIN_LIKE, &GLASS, &bad).is_err());
    }
}

#[test]
fn a_vessel_warms_towards_its_oven() {
    let at = |minutes| warmed(&GLASS, 0.004, minutes, 65.0, 21.0).unwrap();
    near(at(0.0), 21.0, 1e-12);
    assert!(at(2.0) < at(5.0) && at(5.0) < at(15.0) && at(15.0) < 65.0);
    near(at(240.0), 65.0, 1e-3);
    // Half way after τ·ln 2, τ = ρcd/2h with h near 10 W/m²K: about 4 min for 4 mm of glass, by hand.
    assert!((30.0..60.0).contains(&at(4.0)), "{}", at(4.0));
    assert!(warmed(&GLASS, 0.0, 5.0, 65.0, 21.0).is_err());
    assert!(warmed(&GLASS, 0.004, -5.0, 65.0, 21.0).is_err());
}

#[test]
fn the_factor_of_a_log_is_found_again() {
    let film = Film { side: 10.0, top: 9.0, bottom: 6.0 };
    let setup = Setup {
        shape: JAR,
        wax: PARAFFIN_LIKE,
        material: GLASS,
        film,
        room: 21.0,
        pour: 75.0,
        vessel: 21.0,
        stirring: 1.0,
    };
    let probe = (0.015, 0.035);
    for factor in [0.6, 1.35] {
        let film = Film { side: factor * film.side, top: factor * film.top, bottom: factor * film.bottom };
        let detail = Detail { probe: Some(probe), frames: 0, ..Detail::FINE };
        let f = freeze(&Setup { film, ..setup }, &detail).unwrap();
        // Read every ten minutes or so, a reading half a kelvin off now and then.
        let log: Vec<Reading> = f
            .trace
            .iter()
            .filter(|p| p.0 < 14_400.0)
            .step_by(8)
            .enumerate()
            .map(|(i, p)| Reading { seconds: p.0, celsius: p.1 + if i % 2 == 0 { 0.4 } else { -0.4 } })
            .collect();
        let (found, _) = lay_over(&setup, &log, probe).unwrap();
        near(found.factor, factor, 0.03);
        assert!((0.3..0.7).contains(&found.residual), "{}", found.residual);
    }
    let steady: Vec<Reading> =
        (0..6).map(|i| Reading { seconds: 1200.0 * f64::from(i), celsius: 75.0 }).collect();
    let text = lay_over(&setup, &steady, probe).unwrap_err().to_string();
    assert!(text.contains("do not go together"), "{text}");
    assert!(lay_over(&setup, &[], probe).unwrap_err().to_string().contains("0 readings so far"));
}
