//! Parts that every room uses: fields, choices, sheets, the why, notes.

mod amounts;
mod away;
mod chart;
mod choice;
mod chooser;
mod field;
mod finish;
mod head;
mod live;
mod money;
mod notes;
mod number;
mod past;
mod pick;
mod sheet;
mod stepper;
mod unkept;
mod why;

pub use amounts::{
    area, length_field, mass_field, mass_field_in, share_field, temperature_field, text_field,
};
pub use away::{away, retired};
pub use chart::{captions, chart};
pub use choice::{Choice, choice};
pub use chooser::{chooser, file_input, refusal};
pub use field::{Field, Typed, field};
pub use finish::finish;
pub use head::{page_head, page_part, paged};
pub use live::{later, live, press, words};
pub use money::{coins, date_field, missing_page, money_field, percent_field};
pub use notes::{caution, notes, sentence};
pub use number::{mass, temperature, temperature_range};
pub use past::past;
pub use pick::{Pick, pick};
pub use sheet::{confirm_sheet, sheet};
pub use stepper::stepper;
pub use why::{why_asked, why_button, why_sheet};
