//! Serves the built files on this machine, and packs them into a zip. Nothing but the standard library.
//!
//!     potside-server [--dist FOLDER] [--port N] [--under /some/path/]
//!     potside-server --zip FILE [--dist FOLDER]

#[path = "host.rs"]
mod host;
#[path = "zip.rs"]
mod zip;

use host::Host;
use std::path::PathBuf;
use std::process::ExitCode;

const USAGE: &str = "potside-server [--dist FOLDER] [--port N] [--under /some/path/] [--zip FILE]";

struct Wanted {
    dist: PathBuf,
    port: u16,
    under: String,
    zip: Option<PathBuf>,
}

fn wanted(mut words: impl Iterator<Item = String>) -> Result<Wanted, String> {
    let mut wanted = Wanted { dist: "dist".into(), port: 8080, under: "/".into(), zip: None };
    while let Some(word) = words.next() {
        let mut value = || words.next().ok_or_else(|| format!("{word} wants a value.\n{USAGE}"));
        match word.as_str() {
            "--dist" => wanted.dist = value()?.into(),
            "--under" => wanted.under = value()?,
            "--zip" => wanted.zip = Some(value()?.into()),
            "--port" => {
                let text = value()?;
                wanted.port =
                    text.parse().map_err(|_| format!("{text} is not a port: use a number up to 65535."))?;
            }
            _ => return Err(format!("{word} is not known here.\n{USAGE}")),
        }
    }
    Ok(wanted)
}

fn run() -> Result<(), String> {
    let wanted = wanted(std::env::args().skip(1))?;
    if !wanted.dist.join("index.html").is_file() {
        return Err(format!("{} has no index.html: build first (tools/build).", wanted.dist.display()));
    }
    if let Some(file) = wanted.zip {
        let bytes = zip::pack(&wanted.dist).map_err(|error| format!("{}: {error}", wanted.dist.display()))?;
        return std::fs::write(&file, bytes).map_err(|error| format!("{}: {error}", file.display()));
    }
    let host = Host::start(&wanted.dist, wanted.port, &wanted.under).map_err(|error| {
        format!("Port {} cannot be used ({error}): try --port with another number.", wanted.port)
    })?;
    println!("{}", host.address());
    loop {
        std::thread::park();
    }
}

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(sentence) => {
            eprintln!("{sentence}");
            ExitCode::FAILURE
        }
    }
}
