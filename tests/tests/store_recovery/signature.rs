//! Whoever has the key of a device can make a signature that is good by one equation of Ed25519 and not by the other (RFC 8032,
//! section 5.1.7, allows both): a point of small order added to its first half. What comes from elsewhere is held to the strict
//! one, or two phones would judge one answer differently.

use std::fs;

use curve25519_dalek::constants::{ED25519_BASEPOINT_POINT, EIGHT_TORSION};
use curve25519_dalek::scalar::{Scalar, clamp_integer};
use lapwright::store::{BadEntry, Store, StoreError};
use lapwright_tests::book::{now, open, options};
use sha2::{Digest, Sha512};

use crate::place::Place;

/// The seed of the device's key, as it stands beside the book.
fn seed(place: &Place) -> [u8; 32] {
    let side = fs::read_to_string(place.folder.path().join("book.device")).unwrap();
    let hex = side.lines().find_map(|line| line.strip_prefix("key ")).unwrap();
    let byte = |at: usize| u8::from_str_radix(&hex[2 * at..2 * at + 2], 16).unwrap();
    std::array::from_fn(byte)
}

/// A signature of a message (RFC 8032, section 5.1.6) with a point of order eight in its first half.
fn of_small_order(seed: &[u8; 32], message: &[u8], nonce: u64) -> Vec<u8> {
    let hash: [u8; 64] = Sha512::digest(seed).into();
    let secret = Scalar::from_bytes_mod_order(clamp_integer(std::array::from_fn(|at| hash[at])));
    let public = (ED25519_BASEPOINT_POINT * secret).compress().to_bytes();
    let random = Scalar::from(nonce);
    let first = (ED25519_BASEPOINT_POINT * random + EIGHT_TORSION[1]).compress().to_bytes();
    let digest: [u8; 64] =
        Sha512::new().chain_update(first).chain_update(public).chain_update(message).finalize().into();
    let second = random + Scalar::from_bytes_mod_order_wide(&digest) * secret;
    // By the equation that clears the factor of eight it is good.
    let challenge = Scalar::from_bytes_mod_order_wide(&digest);
    let left = ED25519_BASEPOINT_POINT * second;
    let right = ED25519_BASEPOINT_POINT * random + EIGHT_TORSION[1] + ED25519_BASEPOINT_POINT * (challenge * secret);
    assert!(left != right && left.mul_by_cofactor() == right.mul_by_cofactor());
    [&public[..], &first, second.as_bytes()].concat()
}

/// Seven of eight such signatures are refused by looking at many at once, too; so it is done often.
#[test]
fn a_signature_that_is_good_by_one_equation_only_is_refused_from_elsewhere() {
    let place = Place::with(3);
    let seed = seed(&place);
    let copy = open(&place.book()).unwrap().store.backup(place.copies(), now(1_000)).unwrap();
    let whole = fs::read(&copy.path).unwrap();
    let last = place.entries.last().unwrap();
    for nonce in 1..=40 {
        fs::write(&copy.path, &whole).unwrap();
        let conn = rusqlite::Connection::open(&copy.path).unwrap();
        let (name, sql): (String, String) = conn
            .query_row(
                "SELECT name, sql FROM sqlite_schema WHERE type = 'trigger' AND sql LIKE '%UPDATE ON entry%'",
                [],
                |row| Ok((row.get(0)?, row.get(1)?)),
            )
            .unwrap();
        conn.execute_batch(&format!("DROP TRIGGER {name}")).unwrap();
        let signature = of_small_order(&seed, &last.hash.0, nonce);
        conn.execute("UPDATE entry SET signature = ?1 WHERE hash = ?2", (&signature, &last.hash.0[..])).unwrap();
        conn.execute_batch(&sql).unwrap();
        drop(conn);
        let refused = Store::restore(place.book(), &copy.path, &options(&place.book()), now(90_000));
        assert!(matches!(refused, Err(StoreError::DamagedFile { path, .. }) if path == copy.path), "{nonce}");

        let mut entries = place.entries.clone();
        entries.last_mut().unwrap().signature = signature;
        let refused = Store::in_memory().unwrap().take_in(&entries, i64::MAX);
        assert!(matches!(refused, Err(StoreError::BadEntry { why: BadEntry::Forged, .. })), "{nonce}");
    }
}
