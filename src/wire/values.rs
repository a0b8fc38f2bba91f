//! Texts, numbers, yes and no, what may be there, and lists.

use super::{Flaws, Json, Wire, put_text};
use std::rc::Rc;

impl Wire for String {
    fn put(&self, out: &mut String) {
        put_text(out, self);
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        json.text(flaws).to_owned()
    }
    fn is_blank(&self) -> bool {
        self.is_empty()
    }
}

impl Wire for bool {
    fn put(&self, out: &mut String) {
        out.push_str(if *self { "true" } else { "false" });
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        if let Json::Bool(value) = json {
            return *value;
        }
        flaws.unlike();
        false
    }
    fn is_blank(&self) -> bool {
        !self
    }
}

impl Wire for u64 {
    fn put(&self, out: &mut String) {
        out.push_str(&self.to_string());
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        json.whole(Self::MAX, flaws)
    }
}

impl Wire for u32 {
    fn put(&self, out: &mut String) {
        u64::from(*self).put(out);
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        json.whole(Self::MAX.into(), flaws) as Self
    }
}

impl Wire for usize {
    fn put(&self, out: &mut String) {
        (*self as u64).put(out);
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        u32::get(json, flaws) as Self
    }
}

impl<T: Wire> Wire for Box<T> {
    fn put(&self, out: &mut String) {
        (**self).put(out);
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        Self::new(T::get(json, flaws))
    }
}

impl<T: Wire> Wire for Rc<T> {
    fn put(&self, out: &mut String) {
        (**self).put(out);
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        Self::new(T::get(json, flaws))
    }
}

impl<T: Wire> Wire for Option<T> {
    fn put(&self, out: &mut String) {
        match self {
            Some(value) => value.put(out),
            None => out.push_str("null"),
        }
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        (!matches!(json, Json::Nothing | Json::Null)).then(|| T::get(json, flaws))
    }
    fn is_blank(&self) -> bool {
        self.is_none()
    }
}

impl<T: Wire> Wire for Vec<T> {
    fn put(&self, out: &mut String) {
        out.push('[');
        for item in self {
            if !out.ends_with('[') {
                out.push(',');
            }
            item.put(out);
        }
        out.push(']');
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        json.items(flaws).iter().map(|item| T::get(item, flaws)).collect()
    }
    fn is_blank(&self) -> bool {
        self.is_empty()
    }
}

/// Two things, as a list of both.
impl<A: Wire, B: Wire> Wire for (A, B) {
    fn put(&self, out: &mut String) {
        out.push('[');
        self.0.put(out);
        out.push(',');
        self.1.put(out);
        out.push(']');
    }
    fn get(json: &Json, flaws: &mut Flaws) -> Self {
        let (first, second) = match json.items(flaws) {
            [first, second] => (first, second),
            _ => (&Json::Nothing, &Json::Nothing),
        };
        (A::get(first, flaws), B::get(second, flaws))
    }
}
