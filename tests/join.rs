//! What puts the shared modules of the parts into few groups, and their loaders into the app's own script.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, dead_code)]

#[path = "../tools/apart/join.rs"]
mod join;

/// As wasm-split 0.2.4 writes it, with the bodies cut short.
const SPLIT: &str = "import { initSync } from \"./potside.js\";

function getSharedImports() {
        const { __indirect_function_table, __wasm_split_shared0, memory,  } = initSync(undefined, undefined);
    return sharedImports;
}
    // Said to those who read it.
/* heat, pot */
const __chunk_8 = makeLoad(() => {
    const src = fetch(new URL(\"./chunk_8.wasm\", import.meta.url));
}
, []);
/* pot, shelves */
const __chunk_9 = makeLoad(() => {
    const src = fetch(new URL(\"./chunk_9.wasm\", import.meta.url));
}
, []);
/* pot, works */
const __chunk_90 = makeLoad(() => {
    const src = fetch(new URL(\"./chunk_90.wasm\", import.meta.url));
}
, []);
/* new, newer */
const __chunk_91 = makeLoad(() => {
    const src = fetch(new URL(\"./chunk_91.wasm\", import.meta.url));
}
, []);
export const __wasm_split_load_pot = wrapAsyncCb(makeLoad(() => {
    const src = fetch(new URL(\"./split_pot.wasm\", import.meta.url));
}
, [__chunk_8, __chunk_9, __chunk_90]));
export const __wasm_split_load_heat = wrapAsyncCb(makeLoad(() => async (_imp) => ({}), [__chunk_8]));
export const __wasm_split_load_works = wrapAsyncCb(makeLoad(() => {
    const src = fetch(new URL(\"./split_works.wasm\", import.meta.url));
}
, [__chunk_90]));
export const __wasm_split_load_new = wrapAsyncCb(makeLoad(() => {
    const src = fetch(new URL(\"./split_new.wasm\", import.meta.url));
}
, [__chunk_91]));
";

#[test]
fn each_shared_module_is_in_one_group_and_each_part_fetches_the_groups_it_needs() {
    let (groups, loaders) = join::loaders(SPLIT, "app-0123").unwrap();
    let said: Vec<_> = groups.iter().map(|(name, files)| format!("{name}: {}", files.join(" "))).collect();
    assert_eq!(said, ["aside: chunk_8", "pot: chunk_9 chunk_90", "rest: chunk_91"]);
    let loads: Vec<_> = loaders.lines().filter(|l| l.starts_with("const __wasm_split_load_")).collect();
    assert_eq!(
        loads,
        [
            "const __wasm_split_load_pot = wrapAsyncCb(makeLoad(part(\"split_pot\"), [chunk_aside, chunk_pot]));",
            "const __wasm_split_load_heat = wrapAsyncCb(makeLoad(() => () => {}, [chunk_aside]));",
            "const __wasm_split_load_works = wrapAsyncCb(makeLoad(part(\"split_works\"), [chunk_pot]));",
            "const __wasm_split_load_new = wrapAsyncCb(makeLoad(part(\"split_new\"), [chunk_rest]));",
        ]
    );
    assert!(loaders.contains("`./app-0123-${name}.wasm`") && !loaders.contains("import {"), "{loaders}");
    assert!(loaders.contains("sharedImports.main = sharedImports.__wasm_split;"), "{loaders}");
}

#[test]
fn the_script_fetches_the_parts_itself() {
    let script = "import * as import1 from \"./__wasm_split.js\"\nimport * as import2 from \"./__wasm_split.js\"\n\
const imports = {\n\"./__wasm_split.js\": import1,\n\"./__wasm_split.js\": import2,\n};\n";
    let loaders = "// Said.\n  const __wasm_split_load_pot = 1;\nconst __wasm_split_load_pour = 2;\n\n";
    assert_eq!(
        join::script(script, loaders),
        "const imports = {\n\"./__wasm_split.js\": { __wasm_split_load_pot, __wasm_split_load_pour },\n};\n\
const __wasm_split_load_pot = 1;\nconst __wasm_split_load_pour = 2;\n"
    );
}

#[test]
fn what_is_not_as_it_used_to_be_is_refused() {
    let other = SPLIT.replace("memory,  }", "memory, more,  }");
    assert_eq!(join::loaders(&other, "a").unwrap_err(), "the parts share other things than they used to");
    for cut in ["import {", "/* heat", "export const __wasm_split_load_pot"] {
        let until = &SPLIT[..SPLIT.find(cut).unwrap()];
        assert!(join::loaders(until, "a").is_err(), "{cut}");
    }
}

/// Sections and imports as in the WebAssembly core specification, chapter 5: binary format.
#[test]
fn the_least_memory_and_table_are_read_off_the_module() {
    let imports = [
        &b"\x03"[..],
        b"\x01a\x01m\x02\x00\x13",
        b"\x01a\x01t\x01\x70\x00\xf0\x1d",
        b"\x01a\x01g\x03\x7f\x01",
    ]
    .concat();
    let module = [&b"\0asm\x01\0\0\0"[..], b"\x01\x01\x00\x02", &[imports.len() as u8], &imports].concat();
    assert_eq!(join::least(&module).unwrap(), (19, 3824));
    let shared = join::shared((19, 3824));
    assert!(shared.contains("(memory 19)") && shared.contains("(table 3824 funcref)"), "{shared}");
    let limited = [&b"\0asm\x01\0\0\0\x02\x09\x01"[..], b"\x01a\x01m\x02\x01\x13\x20"].concat();
    assert_eq!(join::least(&limited).unwrap_err(), "memory or table has a limit that it used not to have");
}
