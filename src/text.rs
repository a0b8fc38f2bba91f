//! What texts need that the standard library has only with tables of all scripts, or with panics.

/// The text in small letters, so that names are the same whatever their case: of Latin, Greek, Cyrillic and Armenian. The
/// Greek sigma is the same at the end of a word, and the dotted capital İ is an i.
pub fn lower(text: &str) -> String {
    text.chars().map(small).collect()
}

/// What a name is known by: two names are the same where this is, whatever their case and the spaces around them. An
/// accent that is a sign of its own after its letter, as some texts have it that come from elsewhere, makes another name
/// than the letter that carries it: only the tables of Unicode could tell, and entries already kept are by this key.
pub fn key(name: &str) -> String {
    lower(name.trim())
}

/// True of two spellings of one name.
pub fn same(a: &str, b: &str) -> bool {
    a == b || key(a) == key(b)
}

/// Capitals lie a fixed way before their small letters, or the two take turns.
fn small(sign: char) -> char {
    let n = u32::from(sign);
    let small = match n {
        0x130 => 0x69,
        0x41..=0x5a
        | 0xc0..=0xd6
        | 0xd8..=0xde
        | 0x391..=0x3a1
        | 0x3a3..=0x3ab
        | 0x410..=0x42f
        | 0xff21..=0xff3a => n + 32,
        0x400..=0x40f => n + 80,
        0x531..=0x556 => n + 48,
        0x100..=0x137
        | 0x14a..=0x177
        | 0x1de..=0x1ef
        | 0x1f8..=0x21f
        | 0x222..=0x233
        | 0x3d8..=0x3ef
        | 0x460..=0x481
        | 0x48a..=0x4bf
        | 0x4d0..=0x52f
        | 0x1e00..=0x1e95
        | 0x1ea0..=0x1eff => n | 1,
        0x139..=0x148 | 0x179..=0x17e | 0x1cd..=0x1dc | 0x4c1..=0x4ce => n + (n & 1),
        0x178 => 0xff,
        0x1e9e => 0xdf,
        0x386 => 0x3ac,
        0x388..=0x38a => n + 37,
        0x38c => 0x3cc,
        0x38e..=0x38f => n + 63,
        0x3c2 => 0x3c3,
        0x4c0 => 0x4cf,
        _ => n,
    };
    char::from_u32(small).unwrap_or(sign)
}

/// The text before and after this byte; all of it before where the text is shorter or a sign stands across.
pub fn cut(text: &str, at: usize) -> (&str, &str) {
    text.split_at_checked(at).unwrap_or((text, ""))
}
