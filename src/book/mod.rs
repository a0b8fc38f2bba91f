//! What is kept: entries, the journal, its fold into today's state, and the trait behind which storage stands.

mod act;
mod entry;
mod id;
mod journal;
mod state;
mod store;

pub use act::{Act, Ending};
pub use entry::{Damage, Entry, FORMAT};
pub use id::Id;
pub use journal::Journal;
pub use state::{Batch, Kept, Settings, State, Version};
pub use store::{FailingStore, MemoryStore, Store, StoreError};
