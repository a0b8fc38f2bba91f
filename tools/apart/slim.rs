//! Makes what wasm-bindgen wrote smaller, without changing what it does: `slim MODULE.wasm SCRIPT.js`. Nothing but the
//! standard library. The names that module and script call each other by carry long hashes: short ones stand in for them.
//! What a library offers to JavaScript and no script of the app asks for goes, and so does what is put into the table of
//! functions only to say that nothing is there yet. Where a file of the standard library is named, for its panics, `std` says
//! as much.

use std::process::ExitCode;

/// The classes that the streams of a library of ours give out; the app has none.
const UNUSED: &str = "IntoUnderlying";

/// A module being read, from front to back.
pub struct Reader<'a> {
    pub rest: &'a [u8],
}

impl<'a> Reader<'a> {
    pub fn take(&mut self, count: usize) -> Result<&'a [u8], String> {
        let (taken, rest) = self.rest.split_at_checked(count).ok_or("the module ends too soon")?;
        self.rest = rest;
        Ok(taken)
    }

    pub fn byte(&mut self) -> Result<u8, String> {
        self.take(1)?.first().copied().ok_or_else(|| "the module ends too soon".to_owned())
    }

    /// An unsigned LEB128 number of 32 bits.
    pub fn number(&mut self) -> Result<usize, String> {
        let mut number = 0;
        for at in 0..5 {
            let byte = self.byte()?;
            number |= usize::from(byte & 0x7f) << (7 * at);
            if byte < 0x80 {
                return Ok(number);
            }
        }
        Err("a number is longer than 32 bits".to_owned())
    }

    pub fn name(&mut self) -> Result<&'a [u8], String> {
        let length = self.number()?;
        self.take(length)
    }

    /// The bytes that `read` goes over.
    fn span(&mut self, read: impl FnOnce(&mut Self) -> Result<(), String>) -> Result<&'a [u8], String> {
        let before = self.rest;
        read(self)?;
        Ok(before.split_at(before.len() - self.rest.len()).0)
    }

    fn limits(&mut self) -> Result<(), String> {
        let flags = self.byte()?;
        self.number()?;
        if flags & 1 == 1 {
            self.number()?;
        }
        Ok(())
    }
}

fn number(mut n: usize, to: &mut Vec<u8>) {
    while n >= 0x80 {
        to.push((n & 0x7f) as u8 | 0x80);
        n >>= 7;
    }
    to.push(n as u8);
}

fn name(name: &[u8], to: &mut Vec<u8>) {
    number(name.len(), to);
    to.extend_from_slice(name);
}

/// a, b … z, aa, ab …
fn short(mut at: usize) -> String {
    let mut letters = Vec::new();
    loop {
        letters.push((b'a' + (at % 26) as u8) as char);
        if at < 26 {
            return letters.iter().rev().collect();
        }
        at = at / 26 - 1;
    }
}

/// The imports, those from the script under short names; the long names go into `names`, in the order of the short ones.
fn imports(body: &[u8], names: &mut Vec<String>) -> Result<Vec<u8>, String> {
    let (mut body, mut out) = (Reader { rest: body }, Vec::new());
    let count = body.number()?;
    number(count, &mut out);
    for _ in 0..count {
        let (from, what) = (body.name()?, body.name()?);
        name(from, &mut out);
        if from.ends_with(b"_bg.js") {
            name(short(names.len()).as_bytes(), &mut out);
            names.push(String::from_utf8_lossy(what).into_owned());
        } else {
            name(what, &mut out);
        }
        out.extend_from_slice(body.span(|r| match r.byte()? {
            0 => r.number().map(drop),
            1 => r.byte().and_then(|_| r.limits()),
            2 => r.limits(),
            3 => r.take(2).map(drop),
            kind => Err(format!("an import is of the unknown kind {kind}")),
        })?);
    }
    Ok(out)
}

fn exports(body: &[u8]) -> Result<Vec<u8>, String> {
    let (mut body, mut kept, mut out) = (Reader { rest: body }, Vec::new(), Vec::new());
    for _ in 0..body.number()? {
        let mut unused = false;
        let one = body.span(|r| {
            let name = String::from_utf8_lossy(r.name()?).into_owned();
            unused = name.contains(&UNUSED.to_lowercase());
            r.byte()?;
            r.number().map(drop)
        })?;
        if !unused {
            kept.push(one);
        }
    }
    number(kept.len(), &mut out);
    Ok(out.into_iter().chain(kept.concat()).collect())
}

/// What stands in the table from the start, without the runs of nothing: an empty table says the same.
fn elements(body: &[u8]) -> Result<Vec<u8>, String> {
    let (mut body, mut kept, mut out) = (Reader { rest: body }, Vec::new(), Vec::new());
    for _ in 0..body.number()? {
        let mut nothing = true;
        let one = body.span(|r| {
            let flags = r.number()?;
            // Where in the table: a constant, then the end of the expression.
            if !matches!(flags, 0 | 4) || r.byte()? != 0x41 || r.number().is_err() || r.byte()? != 0x0b {
                return Err("the table of functions is not filled as it used to be".to_owned());
            }
            for _ in 0..r.number()? {
                if flags == 0 {
                    (nothing, _) = (false, r.number()?);
                } else {
                    // ref.null and its type, or ref.func and its number; then the end of the expression.
                    nothing &= r.byte()? == 0xd0;
                    r.number()?;
                    r.byte()?;
                }
            }
            Ok(())
        })?;
        if !nothing {
            kept.push(one);
        }
    }
    number(kept.len(), &mut out);
    Ok(out.into_iter().chain(kept.concat()).collect())
}

/// What stands before the name of a file of the standard library, of what it is made with, and of another crate
/// (`tools/common`). Each ends with `.rs`.
const ELSEWHERE: [&[u8]; 3] = [b"/rustc/", b"/rust/deps/", b"crate/"];

/// What is put into memory at the start. Everything keeps its place: so a name is blanked, and takes no room once compressed.
/// Of another crate the name stays, which is enough to know whose code it is.
fn data(body: &[u8]) -> Vec<u8> {
    let mut out = body.to_vec();
    for before in ELSEWHERE {
        let mut from = 0;
        while let Some(start) = find(&out, from, before) {
            from = start + before.len();
            let Some(end) = find(&out, from, b".rs").map(|at| at + 3) else { break };
            let path = |b: &u8| b.is_ascii_alphanumeric() || b"/_.-".contains(b);
            let Some(name) = out.get_mut(start..end).filter(|name| name.iter().all(path)) else { continue };
            if before == ELSEWHERE[0] {
                name.fill(b' ');
                name.iter_mut().zip(b"std").for_each(|(to, letter)| *to = *letter);
            } else if let Some(version) =
                name.windows(2).position(|w| matches!(w, [b'-', n] if n.is_ascii_digit()))
            {
                name.iter_mut().skip(version).for_each(|b| *b = b' ');
            }
            from = end;
        }
    }
    out
}

fn find(out: &[u8], from: usize, what: &[u8]) -> Option<usize> {
    out.get(from..)?.windows(what.len()).position(|w| w == what).map(|at| from + at)
}

/// The smaller module, and the names that were changed in it.
pub fn module(whole: &[u8]) -> Result<(Vec<u8>, Vec<String>), String> {
    let (mut rest, mut names) = (Reader { rest: whole }, Vec::new());
    let mut out = rest.take(8)?.to_vec();
    while !rest.rest.is_empty() {
        let (kind, body) = (rest.byte()?, rest.name()?);
        out.push(kind);
        match kind {
            2 => name(&imports(body, &mut names)?, &mut out),
            7 => name(&exports(body)?, &mut out),
            9 => name(&elements(body)?, &mut out),
            11 => name(&data(body), &mut out),
            _ => name(body, &mut out),
        }
    }
    Ok((out, names))
}

/// The script under the new names, without the unused classes, comments and the space before its lines. Each statement
/// keeps lines of its own, so what it says stays the same.
pub fn script(whole: &str, names: &[String]) -> Result<String, String> {
    let (mut out, mut found, mut inside) = (String::new(), 0, false);
    for line in whole.lines() {
        let word = line.trim_start();
        inside |= word.starts_with(&format!("export class {UNUSED}"));
        if inside || word.starts_with(&format!("if (Symbol.dispose) {UNUSED}")) {
            inside &= line != "}";
            continue;
        }
        if word.is_empty() || ["/*", "*", "//"].iter().any(|start| word.starts_with(start)) {
            continue;
        }
        match word
            .split_once(": function")
            .and_then(|(long, rest)| Some((names.iter().position(|n| n == long)?, rest)))
        {
            Some((at, rest)) => {
                found += 1;
                out.push_str(&format!("{}:function{rest}\n", short(at)));
            }
            None => out.push_str(&format!("{word}\n")),
        }
    }
    if found == names.len() {
        Ok(out)
    } else {
        Err(format!("{found} of {} names were found in the script", names.len()))
    }
}

fn run() -> Result<(), String> {
    let mut files = std::env::args().skip(1);
    let (Some(wasm), Some(js)) = (files.next(), files.next()) else {
        return Err("slim MODULE.wasm SCRIPT.js".to_owned());
    };
    let (small, names) = module(&std::fs::read(&wasm).map_err(|e| format!("{wasm}: {e}"))?)?;
    let text = script(&std::fs::read_to_string(&js).map_err(|e| format!("{js}: {e}"))?, &names)?;
    std::fs::write(&wasm, small).and_then(|()| std::fs::write(&js, text)).map_err(|e| e.to_string())
}

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("slim: {why}.");
            ExitCode::FAILURE
        }
    }
}
