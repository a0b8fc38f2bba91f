//! What a copy would do to the book that one may not expect is said before it is taken in.

use crate::browser::{Browser, Engine};
use crate::pour::serve;
use crate::years::put;
use fantoccini::Locator;
use potside::bench::Ingredient;
use potside::book::{Act, Entry, Id, Journal, backup, read_copy};

fn wax(thing: &str, name: &str) -> Act {
    let body = Ingredient { name: name.to_owned(), ..Ingredient::default() };
    Act::Ingredient { id: Id(thing.to_owned()), over: None, body }
}

fn does(journal: &mut Journal, act: Act) {
    let entry = journal.entry(act, 1_764_806_400_000, journal.entries().len() as u32);
    journal.take(entry);
}

fn lines(journal: &Journal) -> Vec<String> {
    journal.entries().iter().map(Entry::to_line).collect()
}

/// On the other device the book was replaced by an early copy, and then a wax changed that was put away here.
#[tokio::test]
async fn what_a_copy_sets_aside_and_hides_is_said() {
    let mut tablet = Journal::open(vec![], "tablet");
    does(&mut tablet, wax("meadow", "Meadow wax"));
    let early = backup(&lines(&tablet), "tablet", 1_764_806_400_000);
    for name in ["Chalk wax", "Chalk wax 2"] {
        does(&mut tablet, wax("chalk", name));
    }
    let mut table = Journal::open(lines(&tablet), "table");
    let replace = read_copy(&early, &table).unwrap().replace.unwrap();
    does(&mut table, replace);
    does(&mut table, wax("meadow", "Meadow wax, new"));
    does(&mut tablet, Act::Retire { id: Id("meadow".to_owned()), retired: true });

    let host = serve("/");
    let file = std::env::temp_dir().join(format!("potside-copied-{}.json", std::process::id()));
    std::fs::write(&file, backup(&lines(&table), "table", 1_764_806_400_000)).unwrap();
    let b = Browser::start(Engine::Chromium, "copied").await;
    b.size(1024, 768).await;
    b.open(&format!("{}manifest.webmanifest", host.address())).await;
    put(&b, &lines(&tablet)).await;
    b.open(&format!("{}#desk", host.address())).await;
    b.sees("Choose a copy").await;
    let chooser = b.client.find(Locator::Css("input[accept^='.json']")).await.unwrap();
    chooser.send_keys(file.to_str().unwrap()).await.unwrap();
    b.sees("This copy holds 5 entries. 2 are not here yet. 3 are here already.").await;
    b.sees("2 entries of your book would no longer count, since the book was replaced by a copy").await;
    b.sees("Put away, and changed").await;
    b.sees("here put away; in the copy changed").await;
    let see = "document.querySelector('.clashes').scrollIntoView({ block: 'center' })";
    for (width, height) in [(1024, 768), (768, 1024), (390, 844)] {
        b.size(width, height).await;
        b.client.execute(see, vec![]).await.unwrap();
        b.shot(&format!("copied-{width}")).await;
    }
    b.end().await;
    std::fs::remove_file(file).unwrap();
}
