//! Who made an entry, beyond what it says itself: each device signs what it makes with a key of its own (Ed25519, RFC
//! 8032), and its id is the head of the hash of its public key, so that nobody else can make entries under it. A signature
//! is the public key, 32 bytes, and the signature of the entry's hash, 64 bytes.

use std::collections::BTreeMap;
use std::io;
use std::thread::{self, Builder, ScopedJoinHandle};

use ed25519_dalek::{Signature, Signer as _, SigningKey, VerifyingKey, verify_batch};

use super::{DeviceId, Entry, Hash, Id, Result, StoreError};

/// The secret key of a device.
#[derive(Clone)]
pub(super) struct Key(SigningKey);

impl std::fmt::Debug for Key {
    /// The id it signs for: a secret is never told.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "Key({})", self.device())
    }
}

impl Key {
    /// A new one.
    pub(super) fn new() -> Result<Self> {
        let mut secret = [0; 32];
        getrandom::fill(&mut secret).map_err(|error| StoreError::Io(io::Error::other(error)))?;
        Ok(Self(SigningKey::from_bytes(&secret)))
    }

    /// The device that signs with it.
    pub(super) fn device(&self) -> DeviceId {
        device_of(&self.0.verifying_key())
    }

    pub(super) fn sign(&self, hash: Hash) -> Vec<u8> {
        let mut bytes = self.0.verifying_key().to_bytes().to_vec();
        bytes.extend_from_slice(&self.0.sign(&hash.0).to_bytes());
        bytes
    }

    /// For the file beside the book, which only its owner may read.
    pub(super) fn to_text(&self) -> String {
        Hash(self.0.to_bytes()).to_string()
    }

    pub(super) fn from_text(text: &str) -> Option<Self> {
        let secret: Hash = text.parse().ok()?;
        Some(Self(SigningKey::from_bytes(&secret.0)))
    }
}

fn device_of(key: &VerifyingKey) -> DeviceId {
    let hash = Hash::of(key.to_bytes());
    let (head, _) = hash.0.split_at(16);
    DeviceId(Id::from_bytes(head.try_into().unwrap_or_default()))
}

/// What a signature says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Seal {
    /// Nothing: there is none.
    Absent,
    /// The device of the entry made it as it is.
    Good,
    /// Something was changed, or somebody else made it.
    Bad,
}

/// Looks at the signature of an entry that fits its hash.
pub(super) fn seal_of(entry: &Entry) -> Seal {
    if entry.signature.is_empty() {
        return Seal::Absent;
    }
    let good = || {
        let (key, signature) = entry.signature.split_at_checked(32)?;
        let key = VerifyingKey::from_bytes(key.try_into().ok()?).ok()?;
        let signature = Signature::from_bytes(signature.try_into().ok()?);
        Some(device_of(&key) == entry.stamp.device && key.verify_strict(&entry.hash.0, &signature).is_ok())
    };
    if good() == Some(true) { Seal::Good } else { Seal::Bad }
}

/// Looks at the signatures of many, on all the processors there are: they are what taking in spends most on.
pub(super) fn seals_of(entries: &[&Entry]) -> Vec<Seal> {
    shared_out(entries, |entries| entries.iter().map(|entry| seal_of(entry)).collect())
}

/// The same for entries that were looked at one by one when they came, to find what was damaged since: many at once, and one
/// by one only where something is wrong with them. Whoever has a device's key could make a signature that is good here and
/// not there (the equation leaves a factor of eight open), nobody else.
pub(super) fn seals_of_known(entries: &[&Entry]) -> Vec<Seal> {
    shared_out(entries, |entries| {
        let signed: Vec<&Entry> = entries.iter().copied().filter(|entry| !entry.signature.is_empty()).collect();
        if all_good(&signed) != Some(true) {
            return entries.iter().map(|entry| seal_of(entry)).collect();
        }
        entries.iter().map(|entry| if entry.signature.is_empty() { Seal::Absent } else { Seal::Good }).collect()
    })
}

/// Whether all of these are signed by their devices; `None` where one is no signature at all.
fn all_good(entries: &[&Entry]) -> Option<bool> {
    // A few devices made all of them.
    let mut keys: BTreeMap<&[u8], VerifyingKey> = BTreeMap::new();
    let (mut by, mut signatures) = (Vec::new(), Vec::new());
    for entry in entries {
        let (key, signature) = entry.signature.split_at_checked(32)?;
        let own = match keys.get(key) {
            Some(own) => *own,
            None => *keys.entry(key).or_insert(VerifyingKey::from_bytes(key.try_into().ok()?).ok()?),
        };
        if own.is_weak() || device_of(&own) != entry.stamp.device {
            return Some(false);
        }
        by.push(own);
        signatures.push(Signature::from_bytes(signature.try_into().ok()?));
    }
    let hashes: Vec<&[u8]> = entries.iter().map(|entry| &entry.hash.0[..]).collect();
    Some(verify_batch(&hashes, &signatures, &by).is_ok())
}

/// Gives a share to each processor; each works at so many together that working at more would gain little.
fn shared_out(entries: &[&Entry], look: impl Fn(&[&Entry]) -> Vec<Seal> + Sync) -> Vec<Seal> {
    const FEW: usize = 128;
    const TOGETHER: usize = 1024;
    let alone = |entries: &[&Entry]| entries.chunks(TOGETHER).flat_map(&look).collect::<Vec<_>>();
    let hands = thread::available_parallelism().map_or(1, std::num::NonZero::get);
    if hands == 1 || entries.len() < FEW {
        return alone(entries);
    }
    thread::scope(|scope| {
        let parts = entries.chunks(entries.len().div_ceil(hands));
        let at_work: Vec<_> = parts.map(|part| (part, Builder::new().spawn_scoped(scope, || alone(part)))).collect();
        let done = |(part, begun): (&[&Entry], io::Result<ScopedJoinHandle<'_, Vec<Seal>>>)| match begun {
            // What nobody could look at is not trusted.
            Ok(begun) => begun.join().unwrap_or_else(|_| vec![Seal::Bad; part.len()]),
            Err(_) => alone(part),
        };
        at_work.into_iter().flat_map(done).collect()
    })
}

impl DeviceId {
    /// Four words that two people compare to know that they speak of the same device, in no language: 64 bits as Wilkerson
    /// writes them ("A Proposal for Proquints", arXiv:0901.4016), so that no second key with the same words can be found.
    pub fn words(self) -> String {
        const CONSONANTS: [char; 16] = ['b', 'd', 'f', 'g', 'h', 'j', 'k', 'l', 'm', 'n', 'p', 'r', 's', 't', 'v', 'z'];
        const VOWELS: [char; 4] = ['a', 'i', 'o', 'u'];
        let bytes = self.0.bytes();
        let (head, _) = bytes.split_at(8);
        let word = |pair: &[u8]| -> String {
            let bits = pair.iter().fold(0_usize, |bits, byte| bits << 8 | usize::from(*byte));
            let consonant = |shift: usize| CONSONANTS.get(bits >> shift & 15);
            let vowel = |shift: usize| VOWELS.get(bits >> shift & 3);
            [consonant(12), vowel(10), consonant(6), vowel(4), consonant(0)].into_iter().flatten().collect()
        };
        head.chunks(2).map(word).collect::<Vec<_>>().join(" ")
    }
}

#[cfg(test)]
mod tests;
