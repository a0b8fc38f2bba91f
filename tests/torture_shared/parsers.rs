//! Every reader of what comes from outside: whatever comes, none panics, each error is a sentence, and what was read is
//! written and read the same again.

use super::deal::BOOK;
use super::dice::Dice;
use super::mutate::{mutant, reshape, summed};
use super::parsed::{again, log, sheet, typed};
use super::work::{self, american};
use super::{Length, Tally};
use potside::book::{Act, Entry, Journal, backup, read_copy};
use potside::day::Zone;
use potside::desk::{FIELDS, Rates};
use potside::formula::{self, check};
use potside::lists::{self, List, take};
use potside::photo::Photo;
use potside::quantity::{Currency, Exact, Locale, Voice};
use potside::shelf::{OrderDraft, ProductDraft};
use potside::stores::SupplyDraft;
use potside::wire::{self};
use potside::{stores, vessel};
use serde_json::Value;
use std::fmt::Display;

pub(crate) type Said = Result<(), String>;

pub(crate) fn sentence(error: &impl Display) -> Said {
    let said = error.to_string();
    if said.trim_end().ends_with('.') && said.len() > 10 {
        Ok(())
    } else {
        Err(format!("no sentence: {said:?}"))
    }
}

pub(crate) fn sentences(errors: &[String]) -> Said {
    errors.iter().try_for_each(sentence)
}

/// Real texts of each kind.
pub(crate) struct Texts {
    typed: Vec<String>,
    lines: Vec<String>,
    acts: Vec<String>,
    backups: Vec<String>,
    lists: Vec<String>,
    sheets: Vec<String>,
    logs: Vec<String>,
    drafts: Vec<String>,
    book: Journal,
}

const TYPED: [&str; 34] = [
    "2 1/4 oz",
    "2.15oz",
    "¾ tbsp",
    "1 lb 3.5 oz",
    "1,5 kg",
    "188F",
    "86,4 °C",
    "1,234",
    "8 %",
    "0.862 g/mL",
    "12",
    "100000",
    "$12.50",
    "12 €",
    "1'234.5",
    "2025-11-26",
    "0001-01-01",
    "251126-7KQ4-X",
    "3/4",
    "1/3 cup",
    "7.2 oz",
    "40 %",
    "½",
    "5 kg/m³",
    "212 °F",
    "30 mL",
    "3 1/2 in",
    "1 234,5 g",
    "‰ 5",
    "-3",
    "−40 C",
    "0",
    "lbs",
    "14, 16; 18\n20",
];

const SHEET: &str = "Linalool; 78-70-6; 201-134-4; 5 - < 10 %; Skin Sens. 1 H317 ≥ 0.5 %; M=10; ATE oral 500; pH 1.8; no data";

const LOG: &str = "0 185\n10 170 F\n20 158\n45 72 C\n120;95\n240\t80\n";

impl Texts {
    pub(crate) fn new() -> Self {
        let own = |all: &[&str]| all.iter().map(|t| (*t).to_owned()).collect::<Vec<String>>();
        let lines: Vec<String> = BOOK.lines().map(str::to_owned).collect();
        let entries: Vec<Entry> = lines.iter().filter_map(|line| Entry::from_line(line).ok()).collect();
        let book = Journal::open(lines.clone(), "tablet");
        let (state, voice) = (book.state(), Voice::default());
        let some: Vec<String> = lines.iter().step_by(4).cloned().collect();
        let given = |list| {
            [voice, american()]
                .map(|voice| lists::write(&lists::give(list, state, Zone::GREENWICH, voice), voice.locale))
        };
        let sheets = state.safety.values().filter_map(|k| Some(k.body()?.lines.clone()));
        let formulas =
            state.formulas.values().filter_map(|k| Some(wire::write(&formula::Draft::of(k.body()?, voice))));
        let vessels =
            state.vessels.values().filter_map(|k| Some(wire::write(&vessel::Draft::of(k.body()?, voice))));
        Self {
            typed: own(&TYPED),
            acts: entries.iter().map(|e| wire::write(&e.act)).collect(),
            backups: vec![
                backup(&some, "tablet", 1),
                backup(&own(&["torn", "{\"v\":9,"]), "tablet", 2),
                some.join("\n"),
            ],
            lists: [List::Vessels, List::Ingredients, List::Orders, List::Lots]
                .into_iter()
                .flat_map(given)
                .collect(),
            sheets: sheets.chain(own(&[SHEET])).collect(),
            logs: own(&[LOG]),
            drafts: formulas.chain(vessels).collect(),
            lines,
            book,
        }
    }

    /// One text into the readers of its kind; the dear ones seldom.
    fn case(&self, dice: &mut Dice) -> Said {
        let locale = if dice.once_in(2) { Locale::Point } else { Locale::Comma };
        let voice = Voice { locale, ..if dice.once_in(2) { american() } else { Voice::default() } };
        match dice.roll(2_000) {
            0 => self.hostile(voice, dice),
            1..5 => self.copy(dice),
            5..60 => self.list(voice, dice),
            60..160 => sheet(&mutant(&self.sheets, dice), locale),
            160..300 => self.draft(voice, dice),
            300..400 => log(&mutant(&self.logs, dice), voice),
            400..700 => self.line(dice),
            700..800 => self.act(dice),
            800..950 => self.forms(voice, dice),
            950..1_000 => self.noise(voice, dice),
            _ => typed(&mutant(&self.typed, dice), voice),
        }
    }

    /// Bytes by chance, at times only those that stand in JSON, into every reader.
    fn noise(&self, voice: Voice, dice: &mut Dice) -> Said {
        const JSON: &[u8] = b"{}[]\",:0123456789.eE+-\\u \ntrufalsn\rv";
        let plain = dice.once_in(2);
        let mut byte = |_| if plain { JSON[dice.roll(JSON.len())] } else { dice.roll(256) as u8 };
        let bytes: Vec<u8> = (0..240).map(&mut byte).collect();
        let text = String::from_utf8_lossy(&bytes[..dice.roll(240)]).into_owned();
        let head =
            "{\"potside\":\"backup\",\"format\":1,\"made\":1,\"device\":\"d\",\"count\":1,\"entries\":[\n";
        let line =
            summed(&format!("{{\"v\":2,\"id\":\"a\",\"clock\":1,\"at\":1,\"device\":\"d\",\"act\":{text}"));
        for line in [&text, &summed(&text), &line] {
            Entry::from_line(line).map_or_else(|damage| sentence(&damage), |_| Ok(()))?;
        }
        let here = Journal::open(self.lines[..3].to_vec(), "here");
        for text in [&text, &[head, &text].concat(), &[head, &line, "\n],\"set_aside\":[\n", &text].concat()]
        {
            read_copy(text, &here).map_or_else(|why| sentence(&why), |copy| sentence(&copy.say()))?;
        }
        again::<Act>(&text)?;
        let _ = (lists::read(&text), wire::read::<Photo>(&text));
        sheet(&text, voice.locale)?;
        log(&text, voice)?;
        typed(&text, voice)
    }

    fn line(&self, dice: &mut Dice) -> Said {
        let mut line = mutant(&self.lines, dice);
        if !dice.once_in(4) {
            line = summed(&line);
        }
        match Entry::from_line(&line) {
            Ok(entry) => {
                let again = Entry::from_line(&entry.to_line());
                if again.as_ref() == Ok(&entry) { Ok(()) } else { Err(format!("not the same again: {line}")) }
            }
            Err(damage) => sentence(&damage),
        }
    }

    fn act(&self, dice: &mut Dice) -> Said {
        let text = mutant(&self.acts, dice);
        again::<Act>(&text)?;
        again::<Vec<String>>(&format!("[{text}]"))?;
        again::<Exact>(&text)?;
        again::<String>(&text)
    }

    /// Entries that can be read and say odd things, with the right checksum: everything that looks at the book goes on.
    fn hostile(&self, voice: Voice, dice: &mut Dice) -> Said {
        let mut lines = self.lines.clone();
        for _ in 0..12 {
            let at = dice.roll(lines.len());
            let Ok(mut line) = serde_json::from_str::<Value>(&lines[at]) else { continue };
            for _ in 0..=dice.roll(3) {
                reshape(&mut line["act"], dice);
            }
            let line = summed(&line.to_string());
            if Entry::from_line(&line).is_ok() {
                lines[at] = line;
            }
        }
        work::all(&Journal::open(lines, "here"), voice);
        Ok(())
    }

    fn copy(&self, dice: &mut Dice) -> Said {
        let text = mutant(&self.backups, dice);
        match read_copy(&text, &Journal::open(self.lines[..20].to_vec(), "here")) {
            Ok(copy) => sentence(&copy.say()),
            Err(why) => sentence(&why),
        }
    }

    fn list(&self, voice: Voice, dice: &mut Dice) -> Said {
        let text = mutant(&self.lists, dice);
        if let Err(why) = lists::read(&text) {
            sentence(&why)?;
        }
        let list = *dice.pick(&[List::Vessels, List::Ingredients, List::Orders]);
        match take(list, &text, self.book.state(), voice) {
            Ok(taken) => {
                taken.found.iter().filter_map(|f| f.body.as_ref().err()).try_for_each(|all| sentences(all))
            }
            Err(why) => sentence(&why),
        }
    }

    fn draft(&self, voice: Voice, dice: &mut Dice) -> Said {
        let text = mutant(&self.drafts, dice);
        again::<formula::Draft>(&text)?;
        again::<vessel::Draft>(&text)?;
        if let Ok(draft) = wire::read::<formula::Draft>(&text) {
            let (formula, problems) = draft.read(voice);
            problems.iter().try_for_each(|p| sentence(&p.text))?;
            if problems.is_empty() && check(&formula, self.book.state()).is_ok() {
                let act = Act::Formula { id: potside::book::Id("f".into()), over: None, body: formula };
                again::<Act>(&wire::write(&act))?;
            }
        }
        if let Ok(draft) = wire::read::<vessel::Draft>(&text) {
            sentences(&draft.read(voice).1)?;
        }
        Ok(())
    }

    /// Forms whose fields hold anything.
    fn forms(&self, voice: Voice, dice: &mut Dice) -> Said {
        let (state, currency) = (self.book.state(), Currency::default());
        let mut text = || mutant(&self.typed, dice);
        let lot = stores::Draft {
            ingredient: text(),
            number: text(),
            got_on: text(),
            best_before: text(),
            price: text(),
            packs: text(),
            holds: text(),
            weighs: text(),
            ..stores::Draft::default()
        };
        for way in [stores::Way::Weight, stores::Way::Volume, stores::Way::Pieces] {
            let lot = stores::Draft { way, ..lot.clone() };
            sentences(&lot.read(&currency, None, voice).err().unwrap_or_default())?;
        }
        let supply =
            SupplyDraft { keeping: text(), holds: text(), lead_days: text(), ..SupplyDraft::default() };
        sentences(&supply.read(&currency, voice).err().unwrap_or_default())?;
        let sold = ProductDraft {
            name: text(),
            spare: text(),
            cure_days: text(),
            parts: text(),
            ..Default::default()
        };
        sentences(&sold.read(state, voice.locale).err().unwrap_or_default())?;
        let order = OrderDraft {
            wanted: text(),
            lines: vec![("v2-product".to_owned(), text())],
            ..OrderDraft::default()
        };
        sentences(&order.read(state, voice.locale).err().unwrap_or_default())?;
        let fields: Vec<String> = FIELDS.iter().map(|_| text()).collect();
        sentences(&Rates::read(&fields, true, [true, false], voice).err().unwrap_or_default())
    }
}

/// Readers that panicked, said no sentence, or read another thing than they wrote.
pub(crate) fn panics(length: Length) -> Tally {
    let (texts, mut tally) = (Texts::new(), Tally::default());
    for case in length.each() {
        let name = || format!("text {case} of seed {}", length.seed);
        tally.case(name, || texts.case(&mut Dice::of(length.seed, case)));
    }
    tally
}
