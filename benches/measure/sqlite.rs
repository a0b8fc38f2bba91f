//! SQLite, compiled to WebAssembly by its makers, as the other storage: with its own files in the same browser, in a worker.

use crate::browser::Browser;
use crate::host::Host;
use crate::years::key;
use serde_json::{Value, json};
use std::path::PathBuf;
use std::time::Duration;

/// Where `tools/measure` has put it beside a copy of the built app, so that one page can ask both.
pub(crate) struct Beside {
    root: PathBuf,
    /// The name of its folder in there.
    pub(crate) folder: String,
}

/// None where it could not be fetched, which was said then.
pub(crate) fn beside() -> Option<Beside> {
    let path = PathBuf::from(std::env::var_os("POTSIDE_SQLITE")?);
    let folder = path.file_name()?.to_str()?.to_owned();
    Some(Beside { root: path.parent()?.to_owned(), folder })
}

/// A page that fills the database and reads nothing.
const FILL: &str = r#"
const [rows, done] = arguments;
(async () => {
  if (!window.ask) {
    const { sqlite } = await import("./page.js");
    window.ask = sqlite();
    await ask({ do: "open", name: "years", pragmas: [] });
  }
  await (rows.length ? ask({ do: "fill", rows }) : ask({ do: "close" }));
})().then(() => done(""), (error) => done(String(error)));
"#;

/// One opening.
pub(crate) struct Opened {
    /// From the navigation until the page was told that every line is read, ms.
    pub(crate) all: f64,
    /// Of that, from the page's own script on.
    pub(crate) inside: f64,
}

impl Beside {
    pub(crate) fn serve(&self) -> Host {
        Host::start(&self.root, 0, "/").expect("the folder is there")
    }

    /// Puts the lines of a book into a database of that origin.
    pub(crate) async fn fill(&self, b: &Browser, address: &str, lines: &[String]) {
        // A page of that folder which runs no script.
        b.open(&format!("{address}{}/page.js", self.folder)).await;
        for some in lines.chunks(2_000) {
            let rows: Vec<Value> = some.iter().map(|line| json!([clock(line), key(line), line])).collect();
            let said = b.client.execute_async(FILL, vec![json!(rows)]).await.unwrap();
            assert_eq!(said, "", "rows are stored");
        }
        assert_eq!(b.client.execute_async(FILL, vec![json!([])]).await.unwrap(), "");
    }

    /// Opened in a browser that was just started. What was read must be all that was put there.
    pub(crate) async fn open(&self, b: &mut Browser, address: &str, lines: &[String]) -> Opened {
        b.close_and_restart().await;
        b.size(1024, 768).await;
        tokio::time::sleep(Duration::from_secs(2)).await;
        b.open(&format!("{address}{}/index.html", self.folder)).await;
        let read = b.wait_js("a database that is read", "return window.read ?? null", vec![]).await;
        let number = |name: &str| read[name].as_f64().unwrap();
        assert_eq!(number("lines") as usize, lines.len(), "every line is read");
        let letters: usize = lines.iter().map(|line| line.encode_utf16().count()).sum();
        assert_eq!(number("letters") as usize, letters, "every line is read whole");
        Opened { all: number("at"), inside: number("at") - number("began") }
    }
}

/// The clock of a line: `{"v":2,"id":"…","clock":12,…`.
fn clock(line: &str) -> u64 {
    let entry: Value = serde_json::from_str(line).expect("a line is JSON");
    entry["clock"].as_u64().expect("a line has its clock")
}
