//! SHA-256 as the house writes it: in hexadecimal, small letters.

use sha2::Digest;

/// A SHA-256 that is given its bytes piece by piece.
#[derive(Debug, Clone, Default)]
pub struct Sha256(sha2::Sha256);

impl Sha256 {
    /// Takes more bytes in.
    pub fn update(&mut self, bytes: impl AsRef<[u8]>) {
        self.0.update(bytes);
    }

    /// The hash of all that was taken in, as 64 hexadecimal digits.
    pub fn into_hex(self) -> String {
        hex(&self.0.finalize())
    }
}

/// The SHA-256 of `bytes`, as 64 hexadecimal digits.
pub fn sha256_hex(bytes: impl AsRef<[u8]>) -> String {
    hex(&sha2::Sha256::digest(bytes))
}

/// Bytes in hexadecimal, two small digits for each.
pub fn hex(bytes: &[u8]) -> String {
    let digit = |half: u8| char::from(b"0123456789abcdef"[usize::from(half)]);
    bytes.iter().flat_map(|byte| [digit(byte >> 4), digit(byte & 15)]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The one-block example of the standard. Source: NIST, FIPS 180-4 examples, SHA-256 of "abc" (from memory).
    #[test]
    fn the_published_hash() {
        let published = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(sha256_hex("abc"), published);
        let mut by_pieces = Sha256::default();
        by_pieces.update("a");
        by_pieces.update("bc");
        assert_eq!(by_pieces.into_hex(), published);
    }
}
