//! How the figures of a freezing came about.

use super::freezing::{decimal_of, duration, temperature};
use crate::heat::{Freezing, Setup};
use crate::quantity::{Exact, Length, LengthUnit, Quantity, Voice, Why};

const METHOD: &str = "in every ring of wax, wall and base, step by step: change of the heat it holds = what flows in − what flows \
     out; through matter conductivity × area × difference of temperature ÷ distance, at a surface film × area × \
     difference to the room";
const MARKS: &str = "straight between the steps. Skinned over: the softest place of the top millimetre is half solid; moved: \
     98 % solid; solid: 99.5 %; trimmed: the warmest wax 3 °C above the room; at the room: 1 °C above it. Wax by the wall: \
     2 mm from it, half way down";
const SIDE: &str = "Still air: Churchill and Chu (1975); between vessels Bar-Cohen and Rohsenow (1984); moving air: Churchill and \
     Bernstein (1977); radiation: Stefan and Boltzmann";
const TOP: &str = "Still air: McAdams (3rd edition); moving air: Blasius and Pohlhausen; radiation: Stefan and Boltzmann; a cover \
     stands between";
const BOTTOM: &str =
    "Wood and metal: through the hollow and the board, our own estimates; a rack: McAdams (3rd edition)";

/// From which values and by which relations.
pub fn reckoned(setup: &Setup, f: &Freezing, voice: Voice) -> Why {
    let (shape, wax, film) = (&setup.shape, &setup.wax, &setup.film);
    let long = |metres: f64| length(metres, voice);
    let warm = |celsius: f64| temperature(celsius, voice);
    let of = |value: f64, places: u32, unit: &str| [&decimal_of(value, places, voice), " ", unit].concat();
    let passes = |h: f64| of(h, 1, "W/(m²·K)");
    let by = |what: &str, source: &str, h: f64| {
        Why::new(what, "what the air takes + what is radiated", passes(h)).from(source)
    };
    let solid = f.solid.map_or_else(|| "not within 12 h".to_owned(), duration);
    Why::new("How it freezes", METHOD, ["solid after ", &solid].concat())
        .with("inside, across", long(2.0 * shape.radius))
        .with("height of the wax", long(shape.fill))
        .with("wall", long(shape.wall))
        .with("base", long(shape.base))
        .with("pour", warm(setup.pour))
        .with("vessel", warm(setup.vessel))
        .with("room", warm(setup.room))
        .with("melting range", [&warm(wax.solidus), " to ", &warm(wax.liquidus)].concat())
        .with("heat of melting", of(wax.latent / 1e3, 0, "kJ/kg"))
        .with("specific heat, solid", of(wax.heat_solid / 1e3, 2, "kJ/(kg·K)"))
        .with("specific heat, liquid", of(wax.heat_liquid / 1e3, 2, "kJ/(kg·K)"))
        .with("conductivity, solid", of(wax.conduct_solid, 3, "W/(m·K)"))
        .with("conductivity, liquid", of(wax.conduct_liquid, 3, "W/(m·K)"))
        .with("conductivity, wall", of(setup.material.conduct, 1, "W/(m·K)"))
        .with_why("film at the side", passes(film.side), by("Film at the side", SIDE, film.side))
        .with_why("film at the top", passes(film.top), by("Film at the top", TOP, film.top))
        .with_why("film at the bottom", passes(film.bottom), by("Film at the bottom", BOTTOM, film.bottom))
        .with_why("shrinks by", shrinks(f, voice), shrinking(setup, f, voice))
        .rounded(MARKS)
        .from(
            "Conduction alone, by the enthalpy method, checked on the solutions of Stefan and Neumann. Usual properties of \
             waxes are typical values.",
        )
}

/// By how much the wax is smaller in the end, in percent of what was poured.
pub(super) fn shrinks(f: &Freezing, voice: Voice) -> String {
    [&decimal_of(100.0 * f.contraction.total(), 1, voice), " %"].concat()
}

fn shrinking(setup: &Setup, f: &Freezing, voice: Voice) -> Why {
    let wax = &setup.wax;
    let density = |d: f64| [&decimal_of(d / 1e3, 3, voice), " g/mL"].concat();
    Why::new(
        "Shrinks from the pour to the room",
        "1 − density as poured ÷ density when cold",
        shrinks(f, voice),
    )
    .with("density as poured", density(wax.liquid_at(setup.pour)))
    .with("density when cold", density(wax.solid_at(setup.room)))
    .with("density melted, before it sets", density(wax.liquid_at(wax.liquidus)))
    .with("density set, still warm", density(wax.solid_at(wax.solidus)))
    .with("wax in the vessel", [&decimal_of(1e3 * setup.mass(), 1, voice), " g"].concat())
    .with(
        "to keep back: wax × (density when cold ÷ density as poured − 1)",
        [&decimal_of(f.contraction.keep_back, 1, voice), " g"].concat(),
    )
}

/// Where the last wax sets: `22 mm below the top, in the middle`.
pub(super) fn last(f: &Freezing, voice: Voice) -> String {
    let (out, deep) = f.last;
    // Nearer to the axis than one ring is wide is the middle.
    let middle = f.picture.radii.get(1).is_none_or(|ring| out <= *ring);
    let out =
        if middle { "in the middle".to_owned() } else { [&length(out, voice), " from the middle"].concat() };
    [&length(deep, voice), " below the top, ", &out].concat()
}

fn length(metres: f64, voice: Voice) -> String {
    let length = Length::of(Exact::near(1e3 * metres).unwrap_or_default(), LengthUnit::Millimetre);
    voice.amount(length, voice.length)
}
