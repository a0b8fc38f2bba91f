//! Storage in the browser, behind the trait that [`crate::book`] defines; and what else a page needs of its browser.

pub mod bundle;
mod database;
mod date;
mod file;
pub mod local;
mod opened;
mod page;
pub mod photo;
mod planner;
mod prefs;
mod reckon;
mod request;
mod sound;
mod tabs;
mod wake;
mod workshop;

pub use database::{Again, Database};
pub use date::{ZONE, day, file_day, time, time_on, today, weekday, when};
pub use file::{NO_FILES, Shared, Sharing, chosen, download, share, sharing};
pub use page::{
    after, ask_on_leave, confirmed, element, face, focus, focus_if_lost, focus_in, go_to, hash, now, print,
    put_pixels, random, root, scroll_within, set_hash, set_root, tell_page, to_top,
};
pub use prefs::{Hand, Prefs, Theme, device, is_new};
pub use reckon::{give_up_planning, plan, reckon};
pub use sound::{chime, ready_sound};
pub use wake::{Wake, stay_awake};
pub use workshop::{
    Room, Which, append, bring_back, expect, is_gone, is_sure, leave_demo, listen, load, persist, persisted,
    read, room, tell,
};
