use super::super::Stamp;
use super::*;

/// The first two words are the paper's own example, 127.0.0.1; the next two are its 63.84.220.193.
#[test]
fn words_are_those_of_the_paper() {
    let mut bytes = [0; 16];
    for (to, from) in bytes.iter_mut().zip([127, 0, 0, 1, 63, 84, 220, 193]) {
        *to = from;
    }
    assert_eq!(DeviceId(Id::from_bytes(bytes)).words(), "lusab babad gutih tugad");
}

/// RFC 8032, section 7.1, test 1: the secret key gives this public key, from which the id is made.
#[test]
fn a_key_is_that_of_the_standard() {
    let key = Key::from_text("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60").unwrap();
    let public = hex::decode("d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a").unwrap();
    assert_eq!(key.0.verifying_key().to_bytes().to_vec(), public);
    assert_eq!(key.device().0.bytes()[..], Hash::of(&public).0[..16]);
    assert_eq!(Key::from_text(&key.to_text()).unwrap().device(), key.device());
    assert!(!format!("{key:?}").contains("9d61"));
}

fn signed(many: u8) -> Vec<Entry> {
    let key = Key::new().unwrap();
    let entry = |n: u8| {
        let mut entry = Entry {
            stamp: Stamp { ms: 1, counter: i64::from(n), device: key.device() },
            sequence: i64::from(n) + 1,
            utc_offset: 0,
            job: None,
            kind: "answered".to_owned(),
            kind_version: 1,
            subject: None,
            form: 1,
            payload: String::new(),
            undoes: None,
            signer: "Ada".to_owned(),
            program: "0".to_owned(),
            previous: Hash::NONE,
            hash: Hash::NONE,
            signature: Vec::new(),
        };
        entry.hash = entry.true_hash();
        entry.signature = key.sign(entry.hash);
        entry
    };
    (0..many).map(entry).collect()
}

#[test]
fn many_signatures_are_looked_at_together_and_the_bad_one_is_found() {
    let mut entries = signed(200);
    fn all(entries: &[Entry]) -> Vec<&Entry> {
        entries.iter().collect()
    }
    assert_eq!(all_good(&all(&entries)), Some(true));
    for byte in 0..96 {
        let whole = entries[77].signature.clone();
        entries[77].signature[byte] ^= 0x10;
        assert_ne!(all_good(&all(&entries)), Some(true), "byte {byte}");
        entries[77].signature = whole;
    }
    entries[3].signature.clear();
    entries[150].hash = Hash::of("another");
    for seals in [seals_of(&all(&entries)), seals_of_known(&all(&entries))] {
        let want = |at: usize| match at {
            3 => Seal::Absent,
            150 => Seal::Bad,
            _ => Seal::Good,
        };
        assert_eq!(seals, (0..200).map(want).collect::<Vec<_>>());
    }
}
