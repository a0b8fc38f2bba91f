//! What is kept: entries, the journal, its fold into today's state, and the trait behind which storage stands.

mod act;
mod copy;
mod crc;
mod demo;
mod entry;
mod finished;
mod id;
mod journal;
mod learn;
mod ledger;
mod lookup;
mod map;
mod offers;
mod settings;
mod state;
mod store;
mod wish;
mod writer;

pub use act::{Act, Ending, Subject};
pub use copy::{Copy, CopyError, LARGEST_COPY, read_copy, say_bytes};
pub use crc::crc32c;
pub use demo::demo;
pub use entry::{Damage, Entry, FORMAT, LONGEST};
pub use finished::Cure;
pub use id::Id;
pub use journal::Journal;
pub use learn::{Fact, Use};
pub use ledger::{ActError, Book};
pub use lookup::Found;
pub use map::Map;
pub use settings::Settings;
pub use state::{Batch, Ignored, Kept, Refusal, State, Version};
pub use store::{FailingStore, Fault, MemoryStore, Store, StoreError};
pub use wish::{VesselOffer, Wish, WishError};
pub use writer::{Saving, Writer};
