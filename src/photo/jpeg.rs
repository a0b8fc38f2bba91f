//! A JPEG (ITU-T T.81, Annex B) taken to pieces: only what makes the picture stays. Where it was taken, with what, the
//! small picture within it, and whatever stands behind its end, is left out.

use super::LONG_SIDE;

const START: u8 = 0xD8;
const END: u8 = 0xD9;
const SCAN: u8 = 0xDA;
const FRAME: u8 = 0xC0;
const PROGRESSIVE: u8 = 0xC2;
/// The head that says that it is such a file (T.871, JFIF).
const HEAD: u8 = 0xE0;
/// Tables: Huffman codes, quantities, how often to begin anew.
const TABLES: [u8; 3] = [0xC4, 0xDB, 0xDD];

/// The picture alone. None where it is no whole JPEG of a browser's canvas, is empty, or is larger than a photo is.
pub fn bare(jpeg: &[u8]) -> Option<Vec<u8>> {
    let mut rest = jpeg.strip_prefix(&[0xFF, START])?;
    let mut bare = vec![0xFF, START];
    let (mut framed, mut scanned) = (false, false);
    loop {
        let marker = *rest.strip_prefix(&[0xFF])?.first()?;
        if marker == END {
            bare.extend([0xFF, END]);
            return (framed && scanned).then_some(bare);
        }
        let length = usize::from(u16::from_be_bytes([*rest.get(2)?, *rest.get(3)?]));
        let (segment, after) = rest.split_at_checked(length.checked_add(2)?)?;
        let body = segment.get(4..)?;
        rest = after;
        match marker {
            FRAME | PROGRESSIVE if !framed => {
                framed = is_small(body);
                if !framed {
                    return None;
                }
                bare.extend(segment);
            }
            HEAD if body.starts_with(b"JFIF\0") => bare.extend(segment.get(..18).filter(|_| plain(body))?),
            SCAN if framed => {
                let end = scan_end(rest)?;
                let (scan, after) = rest.split_at_checked(end)?;
                bare.extend(segment);
                bare.extend(scan);
                (rest, scanned) = (after, true);
            }
            marker if TABLES.contains(&marker) => bare.extend(segment),
            // What is said beside the picture, and a picture within the picture.
            0xE0..=0xEF | 0xFE => {}
            _ => return None,
        }
    }
}

/// The head of a file without a small picture in it.
fn plain(body: &[u8]) -> bool {
    body.len() == 14 && body.ends_with(&[0, 0])
}

/// Eight bits a colour, of grey or of three colours, and not too large.
fn is_small(frame: &[u8]) -> bool {
    let [bits, high1, high2, wide1, wide2, colours, ..] = frame else { return false };
    let side = |a: &u8, b: &u8| u32::from(u16::from_be_bytes([*a, *b]));
    let fits = |side: u32| (1..=LONG_SIDE).contains(&side);
    *bits == 8 && matches!(colours, 1 | 3) && fits(side(high1, high2)) && fits(side(wide1, wide2))
}

/// Where the next marker stands after the picture's own bytes.
fn scan_end(bytes: &[u8]) -> Option<usize> {
    bytes.windows(2).position(|two| matches!(two, [0xFF, marker] if !matches!(marker, 0 | 0xD0..=0xD7)))
}
