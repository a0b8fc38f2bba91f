//! JSON as it stands in a text (RFC 8259), with objects in their order.

use std::borrow::Cow;

/// Deeper nesting is not read, so that no line can use up the stack.
const DEEPEST: u32 = 128;

/// A value read from a text.
#[derive(Debug)]
pub enum Json<'a> {
    /// A field that is not there.
    Nothing,
    Null,
    Bool(bool),
    /// As written: nothing is rounded.
    Number(&'a str),
    Text(Cow<'a, str>),
    List(Vec<Json<'a>>),
    Object(Vec<(Cow<'a, str>, Json<'a>)>),
}

impl<'a> Json<'a> {
    /// Reads a whole text, none where it is not one JSON value or is nested too deep.
    pub fn parse(text: &'a str) -> Option<Self> {
        let mut parser = Parser { rest: text };
        let value = parser.value(DEEPEST)?;
        parser.space();
        parser.rest.is_empty().then_some(value)
    }
}

struct Parser<'a> {
    rest: &'a str,
}

impl<'a> Parser<'a> {
    fn space(&mut self) {
        // A byte at a time: every line of a book comes by here, some dozens of times.
        while let Some(b' ' | b'\n' | b'\t' | b'\r') = self.rest.as_bytes().first() {
            self.rest = self.rest.get(1..).unwrap_or_default();
        }
    }

    fn eat(&mut self, text: &str) -> bool {
        let rest = self.rest.strip_prefix(text);
        self.rest = rest.unwrap_or(self.rest);
        rest.is_some()
    }

    /// Goes over one sign, where it is there.
    fn sign(&mut self, sign: u8) -> bool {
        let there = self.rest.as_bytes().first() == Some(&sign);
        if there {
            self.rest = self.rest.get(1..).unwrap_or_default();
        }
        there
    }

    fn value(&mut self, depth: u32) -> Option<Json<'a>> {
        let depth = depth.checked_sub(1)?;
        self.space();
        Some(match self.rest.as_bytes().first()? {
            b'"' => Json::Text(self.quoted()?),
            b'{' => {
                self.sign(b'{');
                let mut fields = Vec::new();
                while self.more(fields.is_empty(), b'}')? {
                    self.space();
                    let name = self.quoted()?;
                    self.space();
                    if !self.sign(b':') {
                        return None;
                    }
                    fields.push((name, self.value(depth)?));
                }
                Json::Object(fields)
            }
            b'[' => {
                self.sign(b'[');
                let mut items = Vec::new();
                while self.more(items.is_empty(), b']')? {
                    items.push(self.value(depth)?);
                }
                Json::List(items)
            }
            _ if self.eat("null") => Json::Null,
            _ if self.eat("true") => Json::Bool(true),
            _ if self.eat("false") => Json::Bool(false),
            _ => Json::Number(self.number()?),
        })
    }

    /// True where another item follows, false at the end; none where neither does.
    fn more(&mut self, first: bool, end: u8) -> Option<bool> {
        self.space();
        if self.sign(end) { Some(false) } else { (first || self.sign(b',')).then_some(true) }
    }

    fn quoted(&mut self) -> Option<Cow<'a, str>> {
        if !self.sign(b'"') {
            return None;
        }
        let mut text = Cow::Borrowed("");
        loop {
            let at = self.rest.bytes().position(|b| matches!(b, b'"' | b'\\' | 0..0x20))?;
            let (plain, rest) = self.rest.split_at_checked(at)?;
            text += plain;
            self.rest = rest;
            if self.sign(b'"') {
                return Some(text);
            }
            if !self.sign(b'\\') {
                return None;
            }
            text.to_mut().push(self.escaped()?);
        }
    }

    fn escaped(&mut self) -> Option<char> {
        let mut rest = self.rest.chars();
        let sign = rest.next()?;
        self.rest = rest.as_str();
        Some(match sign {
            '"' | '\\' | '/' => sign,
            'b' => '\u{8}',
            'f' => '\u{c}',
            'n' => '\n',
            'r' => '\r',
            't' => '\t',
            'u' => {
                let first = self.hex()?;
                // A sign beyond 16 bits is written as two halves.
                let second =
                    if (0xd800..0xdc00).contains(&first) && self.eat("\\u") { self.hex()? } else { 0 };
                if (0xdc00..0xe000).contains(&second) {
                    char::from_u32(0x1_0000 + ((first - 0xd800) << 10) + (second - 0xdc00))?
                } else {
                    char::from_u32(first)?
                }
            }
            _ => return None,
        })
    }

    fn hex(&mut self) -> Option<u32> {
        let (digits, rest) = self.rest.split_at_checked(4)?;
        self.rest = rest;
        digits.bytes().all(|b| b.is_ascii_hexdigit()).then(|| u32::from_str_radix(digits, 16).ok())?
    }

    fn number(&mut self) -> Option<&'a str> {
        let whole = self.rest;
        self.eat("-");
        if !self.eat("0") {
            self.digits()?;
        }
        if self.eat(".") {
            self.digits()?;
        }
        if self.eat("e") || self.eat("E") {
            let _ = self.eat("+") || self.eat("-");
            self.digits()?;
        }
        whole.get(..whole.len() - self.rest.len())
    }

    fn digits(&mut self) -> Option<()> {
        let rest = self.rest.trim_start_matches(|c: char| c.is_ascii_digit());
        let some = rest.len() < self.rest.len();
        self.rest = rest;
        some.then_some(())
    }
}
