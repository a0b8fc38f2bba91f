//! The plan of a pour and its run: scaling, rounding to scales, drops, correction, the order of work.

mod batch;
mod drops;
mod line;
mod measure;
mod mend;
mod plan;
mod round;
mod run;
mod scale;
mod spoon;
mod ways;

pub use drops::{DropChoice, Shade, Wanted, choose_drops};
pub use line::{Dose, Line, Note, Pour};
pub use mend::{Kept, Mended, Restored, keep, restore};
pub use plan::{Ask, MOST_VESSELS, Plan, PlanError, Residue, Target, plan};
pub use round::{Rounded, apportion};
pub use run::{Event, Run, RunError, Step, StepKey, Way};
pub use scale::{ScaleChoice, choose_scale};
pub use spoon::{SpoonChoice, choose_spoon, eighth};
