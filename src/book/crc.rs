//! CRC-32C, the checksum of every entry.

/// The polynomial 0x1EDC6F41, bits reversed (RFC 3720, 12.1).
const POLYNOMIAL: u32 = 0x82f6_3b78;

/// The remainders of the sixteen half bytes: small enough to be worth nothing in the bundle.
#[expect(clippy::indexing_slicing, reason = "checked when it is compiled")]
const HALVES: [u32; 16] = {
    let mut table = [0; 16];
    let mut i = 0;
    while i < 16 {
        let mut rest = i as u32;
        let mut bit = 0;
        while bit < 4 {
            rest = if rest & 1 == 1 { (rest >> 1) ^ POLYNOMIAL } else { rest >> 1 };
            bit += 1;
        }
        table[i] = rest;
        i += 1;
    }
    table
};

/// CRC-32C (Castagnoli) of `bytes`, as RFC 3720 uses it.
pub fn crc32c(bytes: &[u8]) -> u32 {
    let half = |rest: u32| (rest >> 4) ^ HALVES.get((rest & 15) as usize).copied().unwrap_or_default();
    !bytes.iter().fold(!0, |rest, byte| half(half(rest ^ u32::from(*byte))))
}
