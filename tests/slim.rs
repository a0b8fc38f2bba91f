//! What makes the bound module smaller: names, exports, empty runs of the table and files of the standard library; nothing
//! else changes.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::indexing_slicing, dead_code)]

#[path = "../tools/apart/slim.rs"]
mod slim;

use proptest::prelude::*;

/// Its length as a number of three bytes where one does not do, as linkers leave room for it.
fn section(kind: u8, body: &[u8]) -> Vec<u8> {
    let n = body.len();
    match n {
        0..128 => [&[kind, n as u8], body].concat(),
        _ => [&[kind, (n & 0x7f) as u8 | 0x80, (n >> 7 & 0x7f) as u8 | 0x80, (n >> 14) as u8], body].concat(),
    }
}

fn name(text: &str) -> Vec<u8> {
    [&[text.len() as u8], text.as_bytes()].concat()
}

/// One import of each kind, two exports, a table filled in three runs, and a section that is none of ours (WebAssembly
/// core specification, chapter 5: binary format).
fn whole() -> Vec<u8> {
    let import = |from: &str, what: &str, kind: &[u8]| [&name(from), &name(what), kind].concat();
    let imports = [
        vec![4],
        import("./app_bg.js", "__wbg_call_275b78b3b6520b92", &[0, 1]),
        import("./__wasm_split.js", "__wasm_split_load_pot", &[0, 1]),
        import("./app_bg.js", "__wbg_memory_1", &[2, 1, 1, 2]),
        import("./app_bg.js", "table", &[1, 0x70, 0, 1]),
    ];
    let exports =
        [vec![2], name("start"), vec![0, 0], name("__wbg_intounderlyingsink_free"), vec![0, 1]].concat();
    let elements = [
        vec![3],
        vec![0, 0x41, 1, 0x0b, 2, 3, 4],
        vec![4, 0x41, 3, 0x0b, 2, 0xd0, 0x70, 0x0b, 0xd0, 0x70, 0x0b],
        vec![4, 0x41, 5, 0x0b, 2, 0xd0, 0x70, 0x0b, 0xd2, 7, 0x0b],
    ];
    let parts = [
        b"\0asm\x01\0\0\0".to_vec(),
        section(2, &imports.concat()),
        section(7, &exports),
        section(9, &elements.concat()),
        section(10, b"code as it was"),
    ];
    parts.concat()
}

#[test]
fn only_names_unused_exports_and_nothing_go() {
    let (small, names) = slim::module(&whole()).unwrap();
    assert_eq!(names, ["__wbg_call_275b78b3b6520b92", "__wbg_memory_1", "table"]);
    let import = |from: &str, what: &str, kind: &[u8]| [&name(from), &name(what), kind].concat();
    let imports = [
        vec![4],
        import("./app_bg.js", "a", &[0, 1]),
        import("./__wasm_split.js", "__wasm_split_load_pot", &[0, 1]),
        import("./app_bg.js", "b", &[2, 1, 1, 2]),
        import("./app_bg.js", "c", &[1, 0x70, 0, 1]),
    ];
    let elements = [
        vec![2],
        vec![0, 0x41, 1, 0x0b, 2, 3, 4],
        vec![4, 0x41, 5, 0x0b, 2, 0xd0, 0x70, 0x0b, 0xd2, 7, 0x0b],
    ];
    let imports = imports.concat();
    let expected = [
        b"\0asm\x01\0\0\0".to_vec(),
        [vec![2, imports.len() as u8], imports].concat(),
        section(7, &[vec![1], name("start"), vec![0, 0]].concat()),
        section(9, &elements.concat()),
        section(10, b"code as it was"),
    ];
    assert_eq!(small, expected.concat());
}

#[test]
fn the_script_calls_by_the_same_names() {
    let names = ["__wbg_call_2".to_owned(), "__wbg_log_1".to_owned()];
    let script = "/**\n * What it does.\n */\nexport class IntoUnderlyingSink {\n    free() {\n    }\n}\n\
if (Symbol.dispose) IntoUnderlyingSink.x = 1;\nconst import0 = {\n    __wbg_log_1: function(arg0) {\n        // said\n        \
console.log(\"a: function\");\n    },\n    __wbg_call_2: function() { return 1; },\n};\n";
    assert_eq!(
        slim::script(script, &names).unwrap(),
        "const import0 = {\nb:function(arg0) {\nconsole.log(\"a: function\");\n},\na:function() { return 1; },\n};\n"
    );
    assert_eq!(
        slim::script("const import0 = {};", &names).unwrap_err(),
        "0 of 2 names were found in the script"
    );
}

#[test]
fn a_short_name_is_never_given_twice() {
    let imports: Vec<u8> =
        (0..2000).flat_map(|n| [name("_bg.js"), name(&format!("n{n}")), vec![0, 0]].concat()).collect();
    let body = [vec![0xd0, 0x0f], imports].concat();
    let module = [b"\0asm\x01\0\0\0".to_vec(), section(2, &body)].concat();
    let (small, names) = slim::module(&module).unwrap();
    let lines: String = names.iter().map(|n| format!("{n}: function() {{}},\n")).collect();
    let mut given: Vec<String> = slim::script(&lines, &names)
        .unwrap()
        .lines()
        .map(|l| l.split(':').next().unwrap().to_owned())
        .collect();
    assert!(small.len() < module.len());
    given.sort();
    given.dedup();
    assert_eq!(given.len(), 2000);
}

proptest! {
    /// Cut off or changed anywhere, it is refused or gone through; it never panics.
    #[test]
    fn no_module_panics(at in 0usize..200, byte: u8, cut in 0usize..300) {
        let mut module = whole();
        let length = module.len();
        module[at % length] = byte;
        module.truncate(cut);
        let _ = slim::module(&module);
    }
}

/// A file of the standard library is named `std`, one of another crate by the crate, everything around it keeps its place; a
/// text that is no such name stays.
#[test]
fn files_from_elsewhere_are_blanked() {
    for (file, known) in [
        ("/rustc/59807616e1fa2540724bfbac14d7976d7e4a3860/library/core/src/slice/index.rs", "std"),
        ("crate/web-sys-0.3.107/src/features/gen_AudioContextState.rs", "crate/web-sys"),
        ("/rust/deps/dlmalloc-0.2.11/src/dlmalloc.rs", "/rust/deps/dlmalloc"),
        ("crate/of_no_version/src/lib.rs", "crate/of_no_version/src/lib.rs"),
    ] {
        let blank = format!("{known}{}", " ".repeat(file.len() - known.len()));
        let around = |middle: &str| {
            format!("first{middle}src/second.rs /rustc/ is Not a file.rs crate/ nor this.rs{middle}/rustc/")
        };
        let whole = [b"\0asm\x01\0\0\0".to_vec(), section(11, around(file).as_bytes())].concat();
        let (small, names) = slim::module(&whole).unwrap();
        let body = around(&blank);
        assert!(names.is_empty());
        assert!(small.ends_with(body.as_bytes()), "{}", String::from_utf8_lossy(&small));
    }
}
