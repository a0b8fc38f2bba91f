//! A part of the app that cannot be fetched: said where it would stand, asked for again, and nothing else is lost.

use crate::browser::{Browser, Engine};
use crate::host::Host;
use std::path::{Path, PathBuf};

/// The module that the Desk is in.
fn is_of_the_desk(path: &Path) -> bool {
    path.file_name().is_some_and(|n| n.to_string_lossy().contains("-split_works"))
}

#[tokio::test]
async fn a_part_that_cannot_be_fetched() {
    let dist = Path::new(env!("CARGO_MANIFEST_DIR")).join("dist");
    let folder = std::env::temp_dir().join(format!("potside-part-missing-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let mut held: Vec<PathBuf> = Vec::new();
    for file in std::fs::read_dir(&dist).unwrap() {
        let path = file.unwrap().path();
        if is_of_the_desk(&path) {
            held.push(path);
        } else {
            std::fs::copy(&path, folder.join(path.file_name().unwrap())).unwrap();
        }
    }
    assert_eq!(held.len(), 1, "the Desk's module is not where this test looks for it");
    let host = Host::start(&folder, 0, "/").unwrap();
    let b = Browser::start(Engine::Chromium, "parts").await;
    b.open(&host.address()).await;
    b.sees("From the formula to the poured candle").await;
    b.room("book/vessel/new").await;
    b.fill("Name of the vessel", "Straight jar").await;
    b.fill("Weight in one vessel", "180 g").await;
    b.tap("Save vessel").await;
    b.saved().await;
    b.tap("Desk").await;
    b.sees("This is not here yet").await;
    std::fs::copy(&held[0], folder.join(held[0].file_name().unwrap())).unwrap();
    b.tap("Try again").await;
    b.sees("About Potside").await;
    b.room("book").await;
    b.sees("Straight jar").await;
    b.end().await;
    std::fs::remove_dir_all(folder).unwrap();
}
