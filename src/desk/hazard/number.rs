//! Check digits of CAS and EC numbers.

/// The check digit of a CAS number: the digits before it times 1, 2, 3 … from the right, modulo 10 (CAS's own rule).
/// `digits` are those before the check digit.
pub fn cas_check(digits: &str) -> u32 {
    weighted(digits.bytes().rev()) % 10
}

/// The check digit of an EC number: the digits times 1 to 6 from the left, modulo 11; a number with 10 is not given out.
pub fn ec_check(digits: &str) -> u32 {
    weighted(digits.bytes()) % 11
}

fn weighted(digits: impl Iterator<Item = u8>) -> u32 {
    (1..).zip(digits).map(|(at, digit): (u32, u8)| at * u32::from(digit.wrapping_sub(b'0') % 10)).sum()
}

/// A CAS or EC number by its shape, with the digit it ends in and the one it should.
pub(super) struct Number {
    pub(super) cas: bool,
    pub(super) check: u32,
    pub(super) right: u32,
}

/// Reads `78-70-6` or `201-134-4`; none for what is shaped otherwise.
pub(super) fn number(text: &str) -> Option<Number> {
    let groups: Vec<&str> = text.split('-').collect();
    let [first, second, last] = groups.as_slice() else { return None };
    let digits = [*first, *second].concat();
    let all_digits = digits.bytes().chain(last.bytes()).all(|b| b.is_ascii_digit());
    if !all_digits || last.len() != 1 {
        return None;
    }
    let check = last.parse().ok()?;
    match (first.len(), second.len()) {
        (2..=7, 2) => Some(Number { cas: true, check, right: cas_check(&digits) }),
        (3, 3) => Some(Number { cas: false, check, right: ec_check(&digits) }),
        _ => None,
    }
}
