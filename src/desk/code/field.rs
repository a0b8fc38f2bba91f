//! Reed and Solomon's correction over the field of 256 elements with x⁸ + x⁴ + x³ + x² + 1 (ISO/IEC 18004, 7.5.2).

fn times(a: u8, b: u8) -> u8 {
    let mut product = 0_u8;
    for bit in (0..8).rev() {
        let carry = product & 0x80 != 0;
        product <<= 1;
        if carry {
            product ^= 0x1d;
        }
        if b >> bit & 1 == 1 {
            product ^= a;
        }
    }
    product
}

/// The correction codewords of a block: the remainder of its data by the product of (x − 2ⁿ).
pub(super) fn remainder(data: &[u8], count: usize) -> Vec<u8> {
    // Without its first coefficient, which is 1.
    let mut divisor = vec![0_u8; count];
    if let Some(last) = divisor.last_mut() {
        *last = 1;
    }
    let mut root = 1;
    for _ in 0..count {
        let mut next: Vec<u8> = divisor.iter().skip(1).copied().collect();
        next.push(0);
        for (value, above) in divisor.iter_mut().zip(next) {
            *value = times(*value, root) ^ above;
        }
        root = times(root, 2);
    }
    let mut rest = vec![0_u8; count];
    for byte in data {
        rest.push(0);
        let factor = byte ^ rest.remove(0);
        for (value, by) in rest.iter_mut().zip(&divisor) {
            *value ^= times(*by, factor);
        }
    }
    rest
}
