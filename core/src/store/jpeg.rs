//! The frame of a JPEG file (ITU-T T.81, annex B): enough to know that one is whole and to leave out what a camera adds.

/// One marker segment before the picture's data: its marker and its payload.
struct Segment<'a> {
    marker: u8,
    payload: &'a [u8],
}

const START: [u8; 2] = [0xFF, 0xD8];
const END: [u8; 2] = [0xFF, 0xD9];
const SCAN: u8 = 0xDA;
const EXIF: &[u8] = b"Exif\0\0";

/// Whether the bytes are a JPEG file from its start to the end of its picture.
pub(crate) fn is_whole(bytes: &[u8]) -> bool {
    bare(bytes).is_some()
}

/// The picture without what a camera adds to it: place, time, names, comments, previews and whatever follows the picture.
/// Kept are the segments that decode it, its colour profile, and which way up it is. `None` where it is not whole.
pub(crate) fn bare(bytes: &[u8]) -> Option<Vec<u8>> {
    let (segments, data) = frame(bytes)?;
    let mut out = START.to_vec();
    for segment in &segments {
        let keep = match segment.marker {
            0xE0 => segment.payload.starts_with(b"JFIF\0"),
            0xE2 => segment.payload.starts_with(b"ICC_PROFILE\0"),
            0xEE => segment.payload.starts_with(b"Adobe"),
            0xE1 | 0xE3..=0xED | 0xEF | 0xFE => false,
            _ => true,
        };
        if keep {
            push(&mut out, segment.marker, segment.payload);
        }
        // Right behind the file's own head, where readers look for it.
        let first = std::ptr::eq(segment, segments.first()?);
        if first && let Some(up) = segments.iter().find_map(orientation) {
            push(&mut out, 0xE1, &exif_of(up));
        }
    }
    out.extend_from_slice(data);
    Some(out)
}

fn push(out: &mut Vec<u8>, marker: u8, payload: &[u8]) {
    let length = u16::try_from(payload.len() + 2).unwrap_or(u16::MAX);
    out.extend_from_slice(&[0xFF, marker]);
    out.extend_from_slice(&length.to_be_bytes());
    out.extend_from_slice(payload);
}

/// The segments before the first scan, and the rest from the scan's marker to the end of the picture.
fn frame(bytes: &[u8]) -> Option<(Vec<Segment<'_>>, &[u8])> {
    let mut rest = bytes.strip_prefix(&START)?;
    let mut segments = Vec::new();
    loop {
        let (marker, after) = marker(rest)?;
        if marker == SCAN {
            return Some((segments, rest.get(..end_of_picture(rest)?)?));
        }
        let length = usize::from(u16::from_be_bytes([*after.first()?, *after.get(1)?]));
        segments.push(Segment { marker, payload: after.get(2..length)? });
        rest = after.get(length..)?;
    }
}

/// A marker and what follows it; fill bytes may stand before it.
fn marker(bytes: &[u8]) -> Option<(u8, &[u8])> {
    let fill = bytes.iter().take_while(|byte| **byte == 0xFF).count();
    let marker = *bytes.get(fill)?;
    (fill > 0 && marker != 0).then_some((marker, bytes.get(fill + 1..)?))
}

/// How many bytes the picture takes, from its first scan on. In a scan 0xFF stands before 0 or a restart marker only, and
/// the segments between two scans hold tables, which are passed over by their lengths.
fn end_of_picture(bytes: &[u8]) -> Option<usize> {
    let mut at = 0;
    loop {
        let here = bytes.get(at..)?;
        if here.starts_with(&END) {
            return Some(at + END.len());
        }
        match here {
            [0xFF, 0 | 0xD0..=0xD7, ..] => at += 2,
            [0xFF, 0xFF, ..] => at += 1,
            [0xFF, _, high, low, ..] => at += 2 + usize::from(u16::from_be_bytes([*high, *low])),
            [0xFF, ..] | [] => return None,
            _ => at += 1,
        }
    }
}

/// Which way up the picture is, 1 to 8, from the tag 0x0112 of Exif (CIPA DC-008, 4.6.4).
fn orientation(segment: &Segment<'_>) -> Option<u16> {
    let tiff = (segment.marker == 0xE1).then(|| segment.payload.strip_prefix(EXIF)).flatten()?;
    let little = match tiff.get(..2)? {
        b"II" => true,
        b"MM" => false,
        _ => return None,
    };
    let short = |at: usize| -> Option<u16> {
        let pair = [*tiff.get(at)?, *tiff.get(at.checked_add(1)?)?];
        Some(if little { u16::from_le_bytes(pair) } else { u16::from_be_bytes(pair) })
    };
    let long = |at: usize| -> Option<usize> {
        let (first, second) = (usize::from(short(at)?), usize::from(short(at.checked_add(2)?)?));
        Some(if little { second << 16 | first } else { first << 16 | second })
    };
    let directory = long(4)?;
    let entries = (0..usize::from(short(directory)?)).map(|n| directory.saturating_add(2 + n * 12));
    let entry = entries.into_iter().find(|at| short(*at) == Some(0x0112))?;
    short(entry.saturating_add(8)).filter(|up| (1..=8).contains(up))
}

/// Exif that says which way up and nothing else.
fn exif_of(up: u16) -> Vec<u8> {
    let mut out = EXIF.to_vec();
    out.extend_from_slice(b"MM\0\x2A\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01");
    out.extend_from_slice(&up.to_be_bytes());
    out.extend_from_slice(&[0; 6]);
    out
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;

    /// A JPEG file by the letter of the frame: head, Exif (turned, with a place), a comment, tables, a scan with a restart
    /// and a stuffed byte, a second scan, and a film behind the picture as some cameras add it.
    pub(crate) fn photo() -> Vec<u8> {
        let mut out = START.to_vec();
        push(&mut out, 0xE0, b"JFIF\0\x01\x01\0\0\x01\0\x01\0\0");
        let mut exif = EXIF.to_vec();
        exif.extend_from_slice(b"II\x2A\0\x08\0\0\0\x02\0\x12\x01\x03\0\x01\0\0\0\x06\0\0\0");
        exif.extend_from_slice(b"\x25\x88\x02\0\x08\0\0\0\x26\0\0\0\0\0\0\x0040.71280\0");
        push(&mut out, 0xE1, &exif);
        push(&mut out, 0xFE, b"40.71280 N");
        push(&mut out, 0xDB, &[0; 65]);
        push(&mut out, 0xC0, &[8, 0, 1, 0, 1, 1, 1, 0x11, 0]);
        push(&mut out, SCAN, &[1, 1, 0, 0, 63, 0]);
        out.extend_from_slice(&[0x12, 0xFF, 0, 0x34, 0xFF, 0xD0, 0x56]);
        push(&mut out, 0xC4, &[0xFF, 0xD9]);
        push(&mut out, SCAN, &[1, 1, 0, 0, 63, 0]);
        out.extend_from_slice(&[0x78]);
        out.extend_from_slice(&END);
        out.extend_from_slice(b"ftyp film 40.71280");
        out
    }

    #[test]
    fn leaves_out_the_place_and_keeps_which_way_up() {
        let bare = bare(&photo()).unwrap();
        assert!(!bare.windows(8).any(|part| part == b"40.71280"));
        let (segments, data) = frame(&bare).unwrap();
        assert_eq!(segments.iter().map(|one| one.marker).collect::<Vec<_>>(), [0xE0, 0xE1, 0xDB, 0xC0]);
        assert_eq!(segments.iter().find_map(orientation), Some(6));
        let taken = photo();
        let (_, whole) = frame(&taken).unwrap();
        assert_eq!(data, whole, "the picture itself is untouched");
        assert_eq!(super::bare(&bare).unwrap(), bare);
    }

    #[test]
    fn a_photo_cut_anywhere_is_not_whole() {
        let whole = photo();
        let end = whole.len() - b"ftyp film 40.71280".len();
        assert!(is_whole(&whole) && is_whole(&whole[..end]));
        for cut in 0..end {
            assert!(!is_whole(&whole[..cut]), "{cut}");
        }
        assert!(!is_whole(b"not a photo"));
    }

    proptest::proptest! {
        #[test]
        fn any_bytes_are_judged_without_trouble(bytes: Vec<u8>, at in 0_usize..200) {
            let mut changed = photo();
            if let Some(place) = changed.get_mut(at) {
                *place = bytes.first().copied().unwrap_or(0xFF);
            }
            is_whole(&changed);
            let mut behind = START.to_vec();
            behind.extend(bytes);
            is_whole(&behind);
        }
    }
}
