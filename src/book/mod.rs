//! What is kept: entries, the journal, its fold into today's state, and the trait behind which storage stands.

mod act;
mod crc;
mod demo;
mod entry;
mod id;
mod journal;
mod ledger;
mod lookup;
mod state;
mod store;
mod writer;

pub use act::{Act, Ending, Subject};
pub use crc::crc32c;
pub use demo::demo;
pub use entry::{Damage, Entry, FORMAT, LONGEST};
pub use id::Id;
pub use journal::Journal;
pub use ledger::{ActError, Book};
pub use lookup::Found;
pub use state::{Batch, Ignored, Kept, Refusal, Settings, State, Version};
pub use store::{FailingStore, Fault, MemoryStore, Store, StoreError};
pub use writer::{Saving, Writer};
