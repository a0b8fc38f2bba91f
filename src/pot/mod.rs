//! The plan of a pour and its run: scaling, rounding to scales, drops, correction, the order of work.

mod batch;
mod card;
mod drops;
mod fold;
mod line;
mod measure;
mod mend;
mod misses;
mod needs;
mod order;
mod pending;
mod plan;
mod record;
mod round;
mod run;
mod scale;
mod spoon;
mod step;
mod ways;

pub use card::StepView;
pub use drops::{DropChoice, Shade, Wanted, choose_drops};
pub use line::{Dose, Line, Note, Pour};
pub use mend::{Kept, Mended, Restored, keep, restore};
pub use misses::Wants;
pub use needs::Need;
pub use pending::Pending;
pub use plan::{Ask, MOST_VESSELS, Plan, PlanError, Residue, Target, plan};
pub use record::{Record, RecordLine, RecordStep, RecordVessel};
pub use round::{Rounded, apportion};
pub use run::{Run, RunError};
pub use scale::{ScaleChoice, choose_scale};
pub use spoon::{SpoonChoice, choose_spoon, eighth};
pub use step::{Event, Step, StepKey, Way};
