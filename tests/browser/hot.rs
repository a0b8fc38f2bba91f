//! What goes wrong at a hot pot, by touch: too many drops, restored; a step taken back; a note; the converter over the pour;
//! how a number came about; and the sheet of the pour on paper.

use crate::browser::{Browser, Engine};
use crate::flow::{demo, done, read_twice, step};
use crate::paper::print;
use crate::pour::serve;
use std::process::Command;

/// The words of a printed sheet.
fn words(pdf: &std::path::Path) -> String {
    let out = Command::new("pdftotext")
        .args(["-layout"])
        .arg(pdf)
        .arg("-")
        .output()
        .expect("pdftotext comes with pdftoppm");
    String::from_utf8_lossy(&out.stdout).split_whitespace().collect::<Vec<_>>().join(" ")
}

#[tokio::test]
async fn too_many_drops_and_the_way_back() {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, "hot").await;
    b.open(&host.address()).await;
    b.size(1024, 768).await;
    demo(&b).await;
    b.room("pot").await;
    b.pick("Formula", "Late Orchard").await;
    b.sees("Print this sheet").await;
    // Everything that goes in stands on one page, in the order of the work; nothing of the form does.
    let (pdf, pages) = print(&b, "pour-sheet").await;
    let sheet = words(&pdf);
    assert_eq!(pages, 1, "{sheet}");
    let at = |name: &str| sheet.find(name).unwrap_or_else(|| panic!("{name} is not on the sheet: {sheet}"));
    assert!(at("Late Orchard") < at("Meadow") && at("Plum dye") < at("Late orchard oil"), "{sheet}");
    assert!(sheet.contains("Melt to 200 °F"), "{sheet}");
    for form in ["Size the batch by", "What stays in the pot", "Start this pour", "why?"] {
        assert!(!sheet.contains(form), "{form}: {sheet}");
    }

    // How a line came about is found when it is asked, and again from what was kept once the pour is on.
    b.tap("Why? Plum dye").await;
    b.sees("whole drops nearest the shade").await;
    b.sees("6 drops").await;
    b.tap("Close").await;
    b.tap("Start this pour").await;
    b.sees("Step 1 of").await;
    read_twice(&b).await;
    b.tap("Why? The times as it cools").await;
    b.sees("half time × log₂").await;
    b.tap("Close").await;
    while !b.shows("Add Plum dye Dropper").await && !b.shows("Add Plum dye 6 drops").await {
        done(&b).await;
    }
    let before = step(&b).await;
    b.tap("Why? Plum dye").await;
    b.sees("whole drops nearest the shade").await;
    b.tap("Close").await;
    b.tap("Enter what went in").await;
    b.fill("How many drops went in", "7.5").await;
    b.tap("Done with this amount").await;
    b.sees("“7.5” is not a whole number").await;
    b.fill("How many drops went in", "8").await;
    b.tap("Done with this amount").await;
    b.sees("Too much Plum dye").await;
    b.sees("+2 drops").await;
    b.sees("8 drops (0.0068 oz) went in, 6 drops (0.0051 oz) was asked").await;
    b.shot("over").await;
    b.tap("Why? What the pot then holds").await;
    b.sees("weight ÷ all wax").await;
    b.tap("Close").await;
    b.tap("Restore it").await;
    b.sees("Add more").await;
    // Both are taken back, one after the other, to where nothing of it had gone in.
    b.tap("Undo").await;
    b.sees("Too much Plum dye").await;
    b.tap("Undo").await;
    b.sees("Enter what went in").await;
    assert_eq!(step(&b).await, before);

    b.tap("Note").await;
    b.fill("What should be remembered of this moment", "stirred longer").await;
    b.tap("Keep the note").await;
    b.tap("Convert").await;
    b.fill("Amount with its unit", "2 1/4 oz").await;
    b.sees("63.8g rounded").await;
    b.tap("Why? 2.25 oz in g").await;
    b.sees("28.349523125 g").await;
    b.tap("Close").await;
    b.tap("Close").await;
    assert_eq!(step(&b).await, before, "closed back to the same step");
    b.saved().await;
    assert_eq!(b.errors(None).await, Vec::<String>::new());
    b.end().await;
}
