//! The frame of a JPEG file (ITU-T T.81, annex B): enough to know that one is whole and to leave out what a camera adds.

/// A part of a file between its start and its end.
enum Segment<'a> {
    Segment {
        marker: u8,
        payload: &'a [u8],
    },
    /// What follows the head of a scan.
    Data(&'a [u8]),
}

const START: [u8; 2] = [0xFF, 0xD8];
const END: u8 = 0xD9;
const SCAN: u8 = 0xDA;
const EXIF: &[u8] = b"Exif\0\0";

/// Whether the bytes are a JPEG file from its start to the end of its picture.
pub(crate) fn is_whole(bytes: &[u8]) -> bool {
    parts(bytes).is_some()
}

/// The picture without what a camera adds to it: place, time, names, comments, previews and whatever follows the picture.
/// Kept are the segments that decode it, its colour profile, and which way up it is. `None` where it is not whole.
pub(crate) fn bare(bytes: &[u8]) -> Option<Vec<u8>> {
    let parts = parts(bytes)?;
    let mut up = parts.iter().find_map(orientation);
    let mut out = START.to_vec();
    for part in &parts {
        match part {
            Segment::Segment { marker, payload } if decodes(*marker, payload) => push(&mut out, *marker, payload),
            Segment::Segment { .. } => {}
            Segment::Data(data) => out.extend_from_slice(data),
        }
        // Right behind the file's own head, where readers look for it.
        if let Some(up) = up.take() {
            push(&mut out, 0xE1, &exif_of(up));
        }
    }
    out.extend_from_slice(&[0xFF, END]);
    Some(out)
}

/// Whether a picture needs a segment to be shown as it was taken. Of what programs add (APPn, COM) only these do.
fn decodes(marker: u8, payload: &[u8]) -> bool {
    match marker {
        0xE0 => payload.starts_with(b"JFIF\0"),
        0xE2 => payload.starts_with(b"ICC_PROFILE\0"),
        0xEE => payload.starts_with(b"Adobe"),
        0xE1..=0xEF | 0xFE => false,
        _ => true,
    }
}

fn push(out: &mut Vec<u8>, marker: u8, payload: &[u8]) {
    let length = u16::try_from(payload.len() + 2).unwrap_or(u16::MAX);
    out.extend_from_slice(&[0xFF, marker]);
    out.extend_from_slice(&length.to_be_bytes());
    out.extend_from_slice(payload);
}

/// `None` where the bytes end before the picture does, or hold none.
fn parts(bytes: &[u8]) -> Option<Vec<Segment<'_>>> {
    let mut rest = bytes.strip_prefix(&START)?;
    let mut parts = Vec::new();
    loop {
        let (marker, after) = marker(rest)?;
        if marker == END {
            return parts.iter().any(|part| matches!(part, Segment::Data(_))).then_some(parts);
        }
        let length = usize::from(u16::from_be_bytes([*after.first()?, *after.get(1)?]));
        parts.push(Segment::Segment { marker, payload: after.get(2..length)? });
        rest = after.get(length..)?;
        if marker == SCAN {
            let (data, behind) = rest.split_at_checked(end_of_scan(rest)?)?;
            parts.push(Segment::Data(data));
            rest = behind;
        }
    }
}

/// A marker and what follows it; fill bytes may stand before it.
fn marker(bytes: &[u8]) -> Option<(u8, &[u8])> {
    let fill = bytes.iter().take_while(|byte| **byte == 0xFF).count();
    let marker = *bytes.get(fill)?;
    (fill > 0 && marker != 0).then_some((marker, bytes.get(fill + 1..)?))
}

/// Where the next marker stands: in a scan 0xFF stands before 0 or a restart marker only.
fn end_of_scan(bytes: &[u8]) -> Option<usize> {
    bytes.windows(2).position(|pair| matches!(pair, [0xFF, next] if !matches!(next, 0 | 0xD0..=0xD7)))
}

/// Which way up the picture is, 1 to 8 (Exif, CIPA DC-008, 4.6.4). What else stands there may be unreadable.
fn orientation(part: &Segment<'_>) -> Option<u16> {
    let Segment::Segment { marker: 0xE1, payload } = part else { return None };
    let tiff = payload.strip_prefix(EXIF)?.to_vec();
    let read = exif::Reader::new().continue_on_error(true).read_raw(tiff);
    let exif = read.or_else(|error| error.distill_partial_result(|_| ())).ok()?;
    let up = exif.get_field(exif::Tag::Orientation, exif::In::PRIMARY)?.value.get_uint(0)?;
    u16::try_from(up).ok().filter(|up| (1..=8).contains(up))
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
pub(crate) mod tests;
