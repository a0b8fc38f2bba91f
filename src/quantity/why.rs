//! How a number came about: the one mechanism behind every "why?" in the app.

use crate::wire::wire_struct;

/// One computed number with the relation it came from, the values put in, and what was done to show it.
///
/// A computation returns this beside its result; a view only lays it out. Each value may carry the `Why` of
/// its own, so that one can ask on.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Why {
    /// What was computed: "Fragrance for 4 vessels".
    pub what: String,
    /// The relation in words and signs: "share of wax × wax".
    pub relation: String,
    pub values: Vec<WhyValue>,
    /// The result with its unit, before rounding: "60.951 g".
    pub result: String,
    /// What rounding did: "to the 0.1 g division of the small scale: 61.0 g". Empty where none.
    pub rounding: String,
    /// Where the relation or a constant is from. Empty where it is plain arithmetic.
    pub source: String,
}

wire_struct!(Why { what, relation, values, result, rounding [skip], source [skip] });

/// A value that went in.
#[derive(Clone, PartialEq, Debug)]
pub struct WhyValue {
    pub name: String,
    pub shown: String,
    pub why: Option<Box<Why>>,
}

wire_struct!(WhyValue { name, shown, why [skip] });

impl Why {
    pub fn new(what: impl Into<String>, relation: impl Into<String>, result: impl Into<String>) -> Self {
        Self { what: what.into(), relation: relation.into(), result: result.into(), ..Self::default() }
    }
    #[must_use]
    pub fn with(mut self, name: impl Into<String>, shown: impl Into<String>) -> Self {
        self.values.push(WhyValue { name: name.into(), shown: shown.into(), why: None });
        self
    }
    #[must_use]
    pub fn with_why(mut self, name: impl Into<String>, shown: impl Into<String>, why: Self) -> Self {
        self.values.push(WhyValue { name: name.into(), shown: shown.into(), why: Some(Box::new(why)) });
        self
    }
    #[must_use]
    pub fn rounded(mut self, how: impl Into<String>) -> Self {
        self.rounding = how.into();
        self
    }
    #[must_use]
    pub fn from(mut self, source: impl Into<String>) -> Self {
        self.source = source.into();
        self
    }
}
