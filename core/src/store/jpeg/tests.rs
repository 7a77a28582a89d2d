use super::*;

/// The place, as it stands in every part of the photo that can hold one.
const PLACE: &[u8] = b"40.71280";

/// A JPEG file by the letter of the frame: head, Exif (turned, with a place), XMP, IPTC, an index of further pictures, a
/// comment, tables, a scan with a restart and a stuffed byte, a comment and Exif between the scans, a second scan, and a
/// film behind the picture as some cameras add it.
pub(crate) fn photo() -> Vec<u8> {
    let placed = |head: &[u8]| [head, PLACE].concat();
    let mut out = START.to_vec();
    push(&mut out, 0xE0, b"JFIF\0\x01\x01\0\0\x01\0\x01\0\0");
    let directory =
        b"II\x2A\0\x08\0\0\0\x02\0\x12\x01\x03\0\x01\0\0\0\x06\0\0\0\x25\x88\x04\0\x01\0\0\0\x26\0\0\0\0\0\0\0";
    let exif = placed(&[EXIF, directory].concat());
    push(&mut out, 0xE1, &exif);
    push(&mut out, 0xE1, &placed(b"http://ns.adobe.com/xap/1.0/\0<exif:GPSLatitude>"));
    push(&mut out, 0xED, &placed(b"Photoshop 3.0\08BIM\x04\x04\0\0\0\0\0\x0D\x1C\x02\x5A\0\x08"));
    push(&mut out, 0xE2, &placed(b"MPF\0"));
    push(&mut out, 0xFE, PLACE);
    push(&mut out, 0xDB, &[0; 65]);
    push(&mut out, 0xC0, &[8, 0, 1, 0, 1, 1, 1, 0x11, 0]);
    push(&mut out, SCAN, &[1, 1, 0, 0, 63, 0]);
    out.extend_from_slice(&FIRST);
    push(&mut out, 0xFE, PLACE);
    push(&mut out, 0xE1, &exif);
    push(&mut out, 0xC4, &[0xFF, 0xD9]);
    push(&mut out, SCAN, &[1, 1, 0, 0, 63, 0]);
    out.extend_from_slice(&SECOND);
    out.extend_from_slice(&[0xFF, END]);
    out.extend_from_slice(&placed(FILM));
    out
}

const FIRST: [u8; 7] = [0x12, 0xFF, 0, 0x34, 0xFF, 0xD0, 0x56];
const SECOND: [u8; 1] = [0x78];
const FILM: &[u8] = b"ftyp film ";

#[test]
fn leaves_out_every_place_and_keeps_which_way_up() {
    let bare = bare(&photo()).unwrap();
    assert!(!bare.windows(PLACE.len()).any(|part| part == PLACE));
    let parts = parts(&bare).unwrap();
    let marker = |part: &Segment<'_>| if let Segment::Segment { marker, .. } = part { Some(*marker) } else { None };
    let markers: Vec<u8> = parts.iter().filter_map(marker).collect();
    assert_eq!(markers, [0xE0, 0xE1, 0xDB, 0xC0, SCAN, 0xC4, SCAN]);
    assert_eq!(parts.iter().find_map(orientation), Some(6));
    let data = |part: &Segment<'_>| if let Segment::Data(data) = part { data.to_vec() } else { Vec::new() };
    assert_eq!(parts.iter().flat_map(data).collect::<Vec<_>>(), [&FIRST[..], &SECOND].concat(), "the picture itself");
    assert_eq!(super::bare(&bare).unwrap(), bare);
}

#[test]
fn a_photo_cut_anywhere_is_not_whole() {
    let whole = photo();
    let end = whole.len() - FILM.len() - PLACE.len();
    assert!(is_whole(&whole) && is_whole(&whole[..end]));
    for cut in 0..end {
        assert!(!is_whole(&whole[..cut]), "{cut}");
    }
    assert!(!is_whole(b"not a photo"));
}

proptest::proptest! {
    #[test]
    fn any_bytes_are_judged_without_trouble(bytes: Vec<u8>, at in 0_usize..500) {
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
