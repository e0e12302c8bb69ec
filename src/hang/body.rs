//! On the body: from a neck to hang points, and from depths to places between throat and breastbone.

use super::{HangError, NecklaceLoad, error, necklace};
use crate::craft::{Base, BodyPlace, Length, Piece, Wearer, closes_on_mm};

/// The neck that a piece is drawn on, in millimetres round: the wearer's own where they said it, else the usual one of
/// their band, but none on which the necklace does not close. How large a neck it closes on is what the cautions say.
pub fn worn_neck_mm(base: &Base, piece: &Piece) -> f64 {
    let neck = piece.neck.map_or(piece.wearer.neck().usual_mm, Length::mm);
    let length = piece.length.or(base.usual_length());
    length.map_or(neck, |length| neck.min(closes_on_mm(length)))
}

/// Front length and width between the hang points of a necklace `length_mm` long on a neck of this circumference:
/// the back of the chain lies on half of the neck, the front hangs between the ends of its diameter.
///
/// # Errors
/// Figures that are no lengths, or a necklace that does not close on the neck.
pub fn front_of_body(length_mm: f64, neck_mm: f64) -> Result<(f64, f64), HangError> {
    error::sound("the necklace's length", length_mm, false)?;
    error::sound("the neck", neck_mm, false)?;
    let (front, width) = (length_mm - neck_mm / 2.0, neck_mm / std::f64::consts::PI);
    let missing_mm = neck_mm - closes_on_mm(Length::from_mm(length_mm));
    if missing_mm > 1e-9 {
        return Err(HangError::TooShortForNeck { length_mm, neck_mm, missing_mm });
    }
    Ok((front, width))
}

/// Where a necklace and its drops fall on the wearer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BodyFalls {
    /// The lowest point of the chain.
    pub chain: BodyPlace,
    /// The drops, in the order given.
    pub drops: Vec<BodyPlace>,
}

/// The place on the body at each of these depths below the hang points of a wearer with this neck.
///
/// [`BodyPlace`] knows where the bare chain of a length falls on a grown-up, so a depth falls where the length does whose
/// bare chain hangs that deep. Other necks: the same shape at another size. Common practice for the lengths; that a
/// body grows as its neck does is a simplification, no source.
///
/// # Errors
/// A neck that is no length.
pub fn falls(chain_mm: f64, drops_mm: &[f64], neck_mm: f64) -> Result<BodyFalls, HangError> {
    let adult = Wearer::From13.neck().usual_mm;
    let scale = adult / error::sound("the neck", neck_mm, false)?;
    let mut borders = Vec::with_capacity(BodyPlace::BORDERS.len());
    for (longest, place) in BodyPlace::BORDERS {
        borders.push((bare_depth(longest, adult)?, place));
    }
    let place = |depth: f64| {
        let found = borders.iter().find(|(border, _)| depth * scale < *border);
        found.map_or(BodyPlace::BelowBreastbone, |(_, place)| *place)
    };
    Ok(BodyFalls { chain: place(chain_mm), drops: drops_mm.iter().map(|depth| place(*depth)).collect() })
}

/// How deep a bare chain of this whole length hangs on this neck; its weight does not matter.
fn bare_depth(length: Length, neck_mm: f64) -> Result<f64, HangError> {
    let (front_length_mm, width_mm) = front_of_body(length.mm(), neck_mm)?;
    let (loads, gaps_mm) = (vec![], vec![]);
    let bare = NecklaceLoad { front_length_mm, width_mm, rise_mm: 0.0, chain_g_per_mm: 1.0, loads, gaps_mm };
    Ok(necklace(&bare)?.sag_mm)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The fifth women's and the ninety-fifth men's percentile of necks, ANSUR II public data (2012): 302 and 443 mm. The
    /// usual length closes on all between.
    #[test]
    fn the_usual_length_hangs_on_everybody() {
        for neck in [302.0, 328.0, 395.0, 443.0] {
            assert!(front_of_body(24.0 * 25.4, neck).is_ok(), "{neck}");
        }
        // A choker of 14 in (355.6 mm) with half an inch of slack closes on 342 mm, and not on a man's 395 mm.
        assert!(front_of_body(355.6, 342.6).is_ok() && front_of_body(355.6, 395.0).is_err());
    }

    /// S = C/π and L_front = L − C/2, from the half circle behind the neck; computed by hand for C = 100π.
    #[test]
    fn the_front_of_a_body() {
        let half = 50.0 * std::f64::consts::PI;
        let (front, width) = front_of_body(half + 230.0, 2.0 * half).unwrap();
        assert!((front - 230.0).abs() < 1e-9 && (width - 100.0).abs() < 1e-9);
        // Half an inch of slack counted as 13 mm.
        let refused = front_of_body(2.0 * half, 2.0 * half).unwrap_err();
        let HangError::TooShortForNeck { missing_mm, .. } = refused else { panic!("{refused}") };
        assert!((missing_mm - 13.0).abs() < 1e-9, "{refused}");
        assert!(refused.to_string().contains("13.0 mm too short"), "{refused}");
        for (length, neck) in [(f64::NAN, 360.0), (600.0, f64::INFINITY), (-1.0, 360.0), (600.0, 0.0)] {
            assert!(matches!(front_of_body(length, neck), Err(HangError::Nonsense { .. })), "{length} {neck}");
        }
    }

    #[test]
    fn a_drop_falls_below_its_chain() {
        // 24 in on a neck of 360 mm: the bare chain hangs about 197 mm deep.
        let chain = bare_depth(Length::from_inches(24.0), 360.0).unwrap();
        assert!((190.0..205.0).contains(&chain), "{chain}");
        let found = falls(chain, &[0.0, chain + 10.0, chain + 100.0], 360.0).unwrap();
        assert_eq!(found.chain, BodyPlace::Breastbone);
        assert_eq!(found.drops, [BodyPlace::Throat, BodyPlace::Breastbone, BodyPlace::BelowBreastbone]);
        // On a child of five the same chain falls lower.
        assert_eq!(falls(chain, &[], 260.0).unwrap().chain, BodyPlace::BelowBreastbone);
        assert!(matches!(falls(1.0, &[], 0.0), Err(HangError::Nonsense { .. })));
    }
}
