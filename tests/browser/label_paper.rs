//! Labels measured on the printed page: where the net contents stand, the fire-safety part, and sheets of both shapes.

use crate::browser::{Browser, Engine};
use crate::flow::own_workshop;
use crate::label::add;
use crate::paper::{part, print, words};
use crate::pour::serve;

const BATCH: &str = "Batch, date and QR code";

async fn started(name: &str) -> (crate::host::Host, Browser) {
    let host = serve("/");
    let b = Browser::start(Engine::Chromium, name).await;
    b.open(&host.address()).await;
    b.size(1024, 768).await;
    own_workshop(&b).await;
    (host, b)
}

/// 16 CFR 500.6: in the lowest 30 %, in lines parallel to the base. What is told of it is what is on paper.
#[tokio::test]
async fn the_net_contents_stand_as_low_on_paper_as_is_told() {
    let (_host, b) = started("label-low").await;
    add(&b, "Front", "70 mm", "3", &["Fire safety", "Hazards", "Who makes it", BATCH]).await;
    b.sees("United States: letters and figures at least 1/8 in (3.2 mm) high").await;
    b.sees("The principal display panel has 8.68 square inches (56.0 cm²)").await;
    b.sees("European Union: figures at least 3.0 mm high").await;
    let text = b.text().await;
    // The browser's language is that of the United States, so lengths are in inches.
    let told = text.split("On this label they reach ").nth(1).unwrap().split(" in").next().unwrap();
    let told = 25.4 * told.parse::<f64>().unwrap();
    for (width, height) in [(1024, 768), (768, 1024), (390, 844)] {
        b.size(width, height).await;
        let scroll = "document.getElementById('label-letters').scrollIntoView()";
        b.client.execute(scroll, vec![]).await.unwrap();
        b.shot(&format!("desk-label-letters-{width}")).await;
    }
    b.size(1024, 768).await;
    let (pdf, _) = print(&b, "label-low").await;
    let label = part(&pdf, 600, (20.0, 20.0, 80.0, 70.0));
    // Two lines: "Net wt. 6.34 oz" and "(180 g)".
    let (top, bottom) = (label.line(1).0, label.line(0).1);
    let reach = 70.0 - top;
    assert!(reach <= told && told - reach < 0.6, "{reach} mm on paper, {told} mm told");
    assert!(reach <= 0.3 * 70.0 && bottom < 70.0, "{reach} mm of 70");
    // "Net wt." and "oz": the letters without descenders stand on one line.
    let (from, to) = label.line(1);
    let line = |left: bool| {
        let (l, _, r, _) = label.ink(|_, y| y >= from && y < to).unwrap();
        let edge = if left { l + 3.0 } else { r - 3.0 };
        label.ink(|x, y| y >= from && y < to && if left { x < edge } else { x > edge }).unwrap().3
    };
    assert!((line(true) - line(false)).abs() < 0.1, "{} and {}", line(true), line(false));
    b.end().await;
}

/// The words, and the four pictures: each where it is laid, none on another, and what is drawn of it at least 5 mm high
/// (EN 15494:2019) also on the smallest label; small letters of 1.6 mm.
#[tokio::test]
async fn the_fire_safety_part_on_paper() {
    let (_host, b) = started("label-fire").await;
    let off = ["Name of the candle", "Hazards", BATCH, "Who makes it", "Net contents"];
    for (height, side, apart) in [(60.0, 11.0, 4.0), (22.5, 7.0, 2.5)] {
        add(&b, "Fire", &format!("{height} mm"), "3", &off).await;
        b.sees("ASTM F2058-07 (reapproved 2021) and EN 15494:2019").await;
        b.sees("Nobody has compared the fire safety").await;
        let (pdf, pages) = print(&b, "label-fire").await;
        assert_eq!(pages, 1);
        let text = words(&pdf);
        let said = "WARNING Burn it only within sight. Burn it away from things that catch fire. Burn it away from children and \
pets.";
        assert_eq!(text.matches("Burn it only within sight.").count(), 6, "{text}");
        assert!(text.contains(said), "{text}");
        let label = part(&pdf, 600, (20.0, 20.0, 80.0, height));
        let first = label.ink(|_, _| true).unwrap().1;
        let left = (80.0 - 4.0 * side - 3.0 * apart) / 2.0;
        for n in 0..4 {
            let from = left + f64::from(n) * (side + apart);
            let picture = label.ink(|x, y| y < first + side && x >= from && x < from + side).unwrap();
            let high = picture.3 - picture.1;
            assert!(high >= 5.0 && high <= side, "picture {n} is {high} mm high");
            let gap = label
                .ink(|x, y| y < first + side * 0.9 && x > from + side + 0.1 && x < from + side + apart - 0.1);
            assert_eq!(gap, None, "beside picture {n}");
        }
        let letter = part(&pdf, 1200, (20.0, 20.0, 80.0, height)).lowest_letter(0);
        assert!((1.58..=1.75).contains(&letter), "{letter} mm");
    }
    b.shot("desk-label-fire").await;
    b.end().await;
}

/// Two by three labels of 60 mm, 15 and 25 mm from the edges, 3 and 7 mm apart, of either shape: each is where the sheet has
/// it, to a tenth of a millimetre, and nothing is drawn outside of one.
#[tokio::test]
async fn round_and_square_sheets_on_paper() {
    let (_host, b) = started("label-sheet").await;
    for round in [false, true] {
        b.room("desk/label/new").await;
        b.fill("Name of the label", if round { "Round" } else { "Square" }).await;
        for part in ["Fire safety", "Hazards", "Who makes it", "Net contents"] {
            b.tap(part).await;
        }
        if round {
            b.tap("Round").await;
        }
        b.fill("Rows", "3").await;
        for (field, typed) in [
            ("Width of a label", "60 mm"),
            ("Height of a label", "60 mm"),
            ("Left margin", "15 mm"),
            ("Top margin", "25 mm"),
            ("Gap between columns", "3 mm"),
            ("Gap between rows", "7 mm"),
        ] {
            b.set(field, typed).await;
        }
        b.tap("Keep this label").await;
        b.pick("Batch", "No batch").await;
        b.set("Batch number", "2611-03").await;
        b.sees("Print the sheet").await;
        b.shot(if round { "desk-label-round" } else { "desk-label-square" }).await;
        let (pdf, pages) = print(&b, "label-sheet").await;
        assert_eq!(pages, 1);
        let page = part(&pdf, 300, (0.0, 0.0, 210.0, 296.0));
        let inside = |(left, top): (f64, f64), x: f64, y: f64| {
            let (x, y) = (x - left, y - top);
            if round {
                (x - 30.0).hypot(y - 30.0) <= 30.0
            } else {
                (0.0..60.0).contains(&x) && (0.0..60.0).contains(&y)
            }
        };
        let mut cells = Vec::new();
        for row in 0..3 {
            for column in 0..2 {
                cells.push((15.0 + f64::from(column) * 63.0, 25.0 + f64::from(row) * 67.0));
            }
        }
        let outside = page.ink(|x, y| !cells.iter().any(|cell| inside(*cell, x, y)));
        assert_eq!(outside, None, "ink outside of every label");
        let boxes: Vec<_> = cells.iter().map(|cell| page.ink(|x, y| inside(*cell, x, y)).unwrap()).collect();
        for (cell, found) in cells.iter().zip(&boxes) {
            let moved = (cell.0 - cells[0].0, cell.1 - cells[0].1);
            let off = [
                (found.0 - boxes[0].0, moved.0),
                (found.1 - boxes[0].1, moved.1),
                (found.2 - boxes[0].2, moved.0),
            ];
            assert!(off.iter().all(|(is, should)| (is - should).abs() <= 0.1), "{off:?}");
            // What is centred on the label is centred on its place.
            assert!(((found.0 + found.2) / 2.0 - cell.0 - 30.0).abs() < 0.6, "{found:?} in {cell:?}");
        }
        let code = part(&pdf, 600, (cells[5].0, cells[5].1, 60.0, 60.0)).code();
        assert_eq!(code.as_deref(), Some("2611-03"));
    }
    b.end().await;
}
