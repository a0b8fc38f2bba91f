//! Bytes as text (RFC 4648, section 4), in one way only: padded, without line ends, and nothing in the bits left over.

const SIGNS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

pub fn to_base64(bytes: &[u8]) -> String {
    let mut text = String::new();
    for three in bytes.chunks(3) {
        let byte = |at: usize| u32::from(three.get(at).copied().unwrap_or(0));
        let bits = byte(0) << 16 | byte(1) << 8 | byte(2);
        for place in 0..4 {
            let sign = SIGNS.get((bits >> (18 - 6 * place) & 63) as usize);
            let there = place <= three.len();
            text.push(sign.filter(|_| there).map_or('=', |sign| char::from(*sign)));
        }
    }
    text
}

/// None for anything that [`to_base64`] does not write.
pub fn from_base64(text: &str) -> Option<Vec<u8>> {
    let (text, mut bytes) = (text.as_bytes(), Vec::new());
    let pads = text.iter().rev().take_while(|sign| **sign == b'=').count();
    if !text.len().is_multiple_of(4) || pads > 2 {
        return None;
    }
    let (mut bits, mut count) = (0_u32, 0);
    for sign in text.iter().take(text.len() - pads) {
        let value = match sign {
            b'A'..=b'Z' => sign - b'A',
            b'a'..=b'z' => sign - b'a' + 26,
            b'0'..=b'9' => sign - b'0' + 52,
            b'+' => 62,
            b'/' => 63,
            _ => return None,
        };
        bits = bits << 6 | u32::from(value);
        count += 6;
        if count >= 8 {
            count -= 8;
            bytes.push((bits >> count & 255) as u8);
            bits &= (1 << count) - 1;
        }
    }
    (bits == 0).then_some(bytes)
}
