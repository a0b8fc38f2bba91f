//! Few files instead of many: `join PARTS BASE SCRIPT.js`. wasm-split makes a module of what each set of parts shares,
//! most of them smaller than what it costs to fetch one. Here they are put into groups, one for each part that is
//! needed early, and what fetches the parts is written into the app's own script, so that nothing waits for a second
//! one. It prints the groups, a line each, for tools/hooks/apart to merge; the names of the files begin with BASE.
//! Nothing but the standard library.

#[path = "slim.rs"]
#[allow(dead_code)]
mod slim;

use slim::Reader;
use std::path::Path;
use std::process::ExitCode;

/// A module that is shared goes into the group of the first of these parts that needs it. What is reckoned beside the page,
/// and what opens a large book, come first, because they share little with the rooms: so they fetch little.
const GROUPS: [(&str, &str); 7] = [
    ("heat", "aside"),
    ("search", "aside"),
    ("bundle", "aside"),
    ("pour", "pour"),
    ("pot", "pot"),
    ("shelves", "shelves"),
    ("works", "works"),
];

/// What every part takes from the first one, as `getSharedImports` of wasm-split says it.
const SHARED: &str = "{ __indirect_function_table, __wasm_split_shared0, memory,  }";

fn group(parts: &str) -> &'static str {
    let needed = |part: &str| parts.split(", ").any(|p| p == part);
    GROUPS.iter().find(|(part, _)| needed(part)).map_or("rest", |(_, group)| group)
}

/// A group, and the modules in it.
pub type Group = (&'static str, Vec<String>);

/// The groups of what wasm-split's script fetches, and a script that fetches these instead.
pub fn loaders(script: &str, base: &str) -> Result<(Vec<Group>, String), String> {
    let unknown = || "wasm-split's script is not as it used to be".to_owned();
    let (head, rest) = script.split_once("/*").ok_or_else(unknown)?;
    let (_, head) =
        head.split_once('\n').filter(|(import, _)| import.starts_with("import")).ok_or_else(unknown)?;
    if !head.contains(SHARED) {
        return Err("the parts share other things than they used to".to_owned());
    }
    let (chunks, _) = rest.split_once("export const").ok_or_else(unknown)?;
    let mut groups: Vec<Group> = Vec::new();
    for chunk in chunks.split("/*") {
        let (parts, code) = chunk.split_once("*/").ok_or_else(unknown)?;
        let file = code.split('"').nth(1).ok_or_else(unknown)?;
        let file = file.strip_prefix("./").and_then(|f| f.strip_suffix(".wasm")).ok_or_else(unknown)?;
        let name = group(parts.trim());
        match groups.iter_mut().find(|(n, _)| *n == name) {
            Some((_, files)) => files.push(file.to_owned()),
            None => groups.push((name, vec![file.to_owned()])),
        }
    }
    // Merged modules take what they share under the name of the module they are merged with.
    let mut out = head.replace(
        "    return sharedImports;",
        "    sharedImports.main = sharedImports.__wasm_split;\n    return sharedImports;",
    );
    out.push_str(&format!(
        "const part = (name) => () => {{\nconst src = fetch(new URL(`./{base}-${{name}}.wasm`, import.meta.url));\n\
         src.catch(() => {{}});\nreturn (imports) => WebAssembly.instantiateStreaming(src, imports);\n}};\n"
    ));
    for (name, _) in &groups {
        out.push_str(&format!("const chunk_{name} = makeLoad(part(\"chunk_{name}\"), []);\n"));
    }
    for load in rest.split("export const ").skip(1) {
        let name = load.split(' ').next().ok_or_else(unknown)?;
        let part = name.strip_prefix("__wasm_split_load_").ok_or_else(unknown)?;
        let needs = load.rsplit_once('[').and_then(|(_, n)| n.split_once(']')).ok_or_else(unknown)?.0;
        let of = |file: &String| needs.split(", ").any(|n| n.strip_prefix("__").is_some_and(|n| n == file));
        let needs: Vec<_> =
            groups.iter().filter(|(_, f)| f.iter().any(of)).map(|(n, _)| format!("chunk_{n}")).collect();
        // A part may be empty: then all it does is in what it shares.
        let own = if load.contains("fetch(") {
            format!("part(\"split_{part}\")")
        } else {
            "() => () => {}".to_owned()
        };
        out.push_str(&format!("const {name} = wrapAsyncCb(makeLoad({own}, [{}]));\n", needs.join(", ")));
    }
    Ok((groups, out))
}

/// The app's script with `loaders` at its end, instead of what it imports.
pub fn script(whole: &str, loaders: &str) -> String {
    let mut out = String::new();
    let mut there = false;
    let names: Vec<_> = loaders.split("const ").filter(|c| c.starts_with("__wasm_split_load_")).collect();
    let names: Vec<_> = names.iter().filter_map(|c| c.split(' ').next()).collect();
    for line in whole.lines() {
        if line.starts_with("import ") && line.contains("__wasm_split.js") {
            continue;
        }
        if line.trim_start().starts_with("\"./__wasm_split.js\":") {
            if !there {
                out.push_str(&format!("\"./__wasm_split.js\": {{ {} }},\n", names.join(", ")));
            }
            there = true;
            continue;
        }
        out.push_str(line);
        out.push('\n');
    }
    let bare = loaders.lines().map(str::trim).filter(|line| !line.is_empty() && !line.starts_with("//"));
    out.push_str(&bare.collect::<Vec<_>>().join("\n"));
    out.push('\n');
    out
}

/// The least that a shared module wants of memory and table.
pub fn least(module: &[u8]) -> Result<(usize, usize), String> {
    let mut module = Reader { rest: module };
    module.take(8)?;
    let (mut memory, mut table) = (0, 0);
    while !module.rest.is_empty() {
        let (kind, body) = (module.byte()?, module.name()?);
        if kind != 2 {
            continue;
        }
        let mut body = Reader { rest: body };
        for _ in 0..body.number()? {
            body.name()?;
            body.name()?;
            let kind = body.byte()?;
            match kind {
                1 => drop(body.byte()?),
                2 => {}
                3 => {
                    body.take(2)?;
                    continue;
                }
                _ => return Err(format!("a part takes an import of kind {kind}")),
            }
            if body.byte()? != 0 {
                return Err("memory or table has a limit that it used not to have".to_owned());
            }
            *if kind == 1 { &mut table } else { &mut memory } = body.number()?;
        }
    }
    Ok((memory, table))
}

/// What stands before the modules of a group when they are merged, so that all of them take the same memory and table.
pub fn shared((memory, table): (usize, usize)) -> String {
    let one = |name: &str, kind: &str, what: &str| {
        format!("(import \"main\" \"{name}\" ({kind} {what})) (export \"{name}\" ({kind} 0))\n")
    };
    [
        "(module\n",
        &one("memory", "memory", &memory.to_string()),
        &one("__indirect_function_table", "table", &format!("{table} funcref")),
        &one("__wasm_split_shared0", "global", "(mut i32)"),
        ")\n",
    ]
    .concat()
}

fn run() -> Result<(), String> {
    let mut words = std::env::args().skip(1);
    let (Some(parts), Some(base), Some(js)) = (words.next(), words.next(), words.next()) else {
        return Err("join PARTS BASE SCRIPT.js".to_owned());
    };
    let parts = Path::new(&parts);
    let text = |file: &Path| std::fs::read_to_string(file).map_err(|e| format!("{}: {e}", file.display()));
    let (groups, loaders) = loaders(&text(&parts.join("__wasm_split.js"))?, &base)?;
    let (mut memory, mut table) = (0, 0);
    for file in groups.iter().flat_map(|(_, files)| files) {
        let file = parts.join(format!("{file}.wasm"));
        let (m, t) = least(&std::fs::read(&file).map_err(|e| format!("{}: {e}", file.display()))?)?;
        (memory, table) = (memory.max(m), table.max(t));
    }
    std::fs::write(parts.join("shared.wat"), shared((memory, table))).map_err(|e| e.to_string())?;
    std::fs::write(&js, script(&text(Path::new(&js))?, &loaders)).map_err(|e| format!("{js}: {e}"))?;
    for (name, files) in groups {
        println!("{name} {}", files.join(" "));
    }
    Ok(())
}

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("join: {why}.");
            ExitCode::FAILURE
        }
    }
}
