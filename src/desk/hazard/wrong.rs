//! What can be wrong with a line of section 3, as the sentence the person reads.

use std::fmt;

/// Every way a line is refused.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Wrong {
    NoName,
    NoShare,
    TwoShares {
        first: String,
        second: String,
    },
    /// Not a percentage or a range of it.
    Share {
        text: String,
    },
    Backwards {
        text: String,
    },
    TooMuch {
        text: String,
    },
    /// A CAS or EC number whose check digit does not fit.
    Check {
        text: String,
        kind: &'static str,
        right: u32,
    },
    /// The number ends in 10 modulo 11, which no EC number does.
    NoSuchNumber {
        text: String,
    },
    TwoNumbers {
        first: String,
        second: String,
    },
    Unknown {
        text: String,
    },
    NoSuchCode {
        code: String,
    },
    /// A class that has one name for several hazards, and nothing says which.
    WhichOne {
        class: String,
        codes: String,
    },
    MFactor {
        text: String,
    },
    Ate {
        text: String,
    },
    /// A limit without a class, or for one the line does not tell.
    Limit {
        text: String,
    },
    /// A number beside a class that is neither the concentration nor written as a limit.
    Beside {
        text: String,
    },
    Ph {
        text: String,
    },
    /// This line and all after it are not read.
    TooMany {
        most: usize,
    },
}

impl fmt::Display for Wrong {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (start, text, end) = match self {
            Self::TooMany { most } => {
                return write!(
                    f,
                    "Only the first {most} lines are read: this line and those after it are not. Put lines of one \
substance together, and leave out remarks and empty lines."
                );
            }
            Self::NoName => ("", "", "No name: begin the line with the name of the substance."),
            Self::NoShare => ("", "", "No concentration: add its share of the fragrance, like 5 - 10 %."),
            Self::TwoShares { first, second } => {
                return write!(
                    f,
                    "Two concentrations, “{first}” and “{second}”. Keep one; a specific limit begins with its class or H code."
                );
            }
            Self::Share { text } => {
                ("", text.as_str(), " is not a concentration. Type it like 5 - 10 % or < 1 %.")
            }
            Self::Backwards { text } => {
                ("", text.as_str(), " runs backwards. Type the smaller number first.")
            }
            Self::TooMuch { text } => ("", text.as_str(), " is more than 100 %. Check the number."),
            Self::Check { text, kind, right } => {
                return write!(
                    f,
                    "The {kind} number “{text}” has a wrong digit: with these digits it would end in {right}. Compare it with the sheet."
                );
            }
            Self::NoSuchNumber { text } => (
                "",
                text.as_str(),
                " is no EC number: none with these digits is given out. Compare it with the sheet.",
            ),
            Self::TwoNumbers { first, second } => {
                return write!(
                    f,
                    "Two numbers of one kind, “{first}” and “{second}”. Give each substance its own line."
                );
            }
            Self::Unknown { text } => (
                "",
                text.as_str(),
                " is not known here. Part name, number, concentration and classes with semicolons, and write classes \
as the sheet does, like Skin Sens. 1B H317.",
            ),
            Self::NoSuchCode { code } => (
                "",
                code.as_str(),
                " is not a hazard statement of the regulation. Compare it with the sheet.",
            ),
            Self::WhichOne { class, codes } => {
                return write!(f, "“{class}” can mean several things. Add its code: {codes}.");
            }
            Self::MFactor { text } => {
                ("", text.as_str(), " is not an M-factor. Type it like M=10; it is 1 or more.")
            }
            Self::Ate { text } => (
                "",
                text.as_str(),
                " is not an acute toxicity estimate that can be taken. Type it like ATE oral 500 or dermal 1100 (mg/kg), gas 700 (ppm), \
vapour 11 or dust 1.5 (mg/L, 4 hours).",
            ),
            Self::Limit { text } => {
                ("", text.as_str(), " is not a specific limit. Type it like Skin Sens. 1 H317 ≥ 0.5 %.")
            }
            Self::Beside { text } => (
                "",
                text.as_str(),
                " has a number that is neither the concentration nor written clearly as a limit. Write a specific limit like Skin Sens. 1 \
H317: C ≥ 0.5 %, and leave anything else off.",
            ),
            Self::Ph { text } => ("", text.as_str(), " is not a pH. Type it like pH 1.8."),
        };
        f.write_str(start)?;
        if !text.is_empty() {
            write!(f, "“{text}”")?;
        }
        f.write_str(end)
    }
}

impl std::error::Error for Wrong {}
