//! Packs a folder into a zip of stored (uncompressed) files, the same bytes for the same files.
//! Layout: PKWARE's .ZIP File Format Specification (APPNOTE.TXT) 6.3, sections 4.3.7, 4.3.12 and 4.3.16.

use std::io::{self, Error, ErrorKind};
use std::path::Path;

/// 1980-01-01, the first date a zip can say: files of a release differ by content, not by when they were built.
const DATE: u16 = 0x0021;
const VERSION: u16 = 20;
/// Bit 11: names are UTF-8.
const FLAGS: u16 = 0x0800;

/// The zip of all files under `folder`, with names relative to it, in order of name.
pub(crate) fn pack(folder: &Path) -> io::Result<Vec<u8>> {
    let mut names = Vec::new();
    list(folder, "", &mut names)?;
    names.sort();
    let (mut zip, mut directory) = (Vec::new(), Vec::new());
    for name in &names {
        let bytes = std::fs::read(folder.join(name))?;
        let offset = small(zip.len())?;
        let mut entry = Vec::new();
        for half in [VERSION, FLAGS, 0, 0, DATE] {
            entry.extend(half.to_le_bytes());
        }
        for word in [crc(&bytes), small(bytes.len())?, small(bytes.len())?] {
            entry.extend(word.to_le_bytes());
        }
        let length = u16::try_from(name.len()).map_err(|_| too_large())?;
        entry.extend(length.to_le_bytes());
        entry.extend(0u16.to_le_bytes());

        zip.extend(b"PK\x03\x04");
        zip.extend(&entry);
        zip.extend(name.as_bytes());
        zip.extend(&bytes);

        directory.extend(b"PK\x01\x02");
        directory.extend(VERSION.to_le_bytes());
        directory.extend(&entry);
        // No comment, first disk, no attributes.
        directory.extend([0; 10]);
        directory.extend(offset.to_le_bytes());
        directory.extend(name.as_bytes());
    }
    let count = u16::try_from(names.len()).map_err(|_| too_large())?;
    let (start, size) = (small(zip.len())?, small(directory.len())?);
    zip.extend(directory);
    zip.extend(b"PK\x05\x06\0\0\0\0");
    zip.extend(count.to_le_bytes());
    zip.extend(count.to_le_bytes());
    zip.extend(size.to_le_bytes());
    zip.extend(start.to_le_bytes());
    zip.extend([0; 2]);
    Ok(zip)
}

fn list(folder: &Path, under: &str, names: &mut Vec<String>) -> io::Result<()> {
    for entry in std::fs::read_dir(folder.join(under))? {
        let entry = entry?;
        let name = entry
            .file_name()
            .into_string()
            .map_err(|_| Error::new(ErrorKind::InvalidData, "a file name is not text"))?;
        let name = if under.is_empty() { name } else { format!("{under}/{name}") };
        if entry.file_type()?.is_dir() {
            list(folder, &name, names)?;
        } else {
            names.push(name);
        }
    }
    Ok(())
}

fn small(size: usize) -> io::Result<u32> {
    u32::try_from(size).map_err(|_| too_large())
}

fn too_large() -> Error {
    Error::new(ErrorKind::InvalidData, "too large for a plain zip")
}

/// CRC-32 as zip uses it (ISO 3309, reflected polynomial EDB88320).
pub(crate) fn crc(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(!0u32, |sum, byte| {
        (0..8).fold(
            sum ^ u32::from(*byte),
            |sum, _| if sum & 1 == 1 { sum >> 1 ^ 0xEDB8_8320 } else { sum >> 1 },
        )
    })
}
