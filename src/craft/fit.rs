//! Whether a drop's ring passes over the closed end of a base by hand.

use serde::{Deserialize, Serialize};

use super::{Base, Length, Ring};

/// The end of a base that a ring has to pass over.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum ClosedEnd {
    /// A closed ring or a ball of this outside diameter. A flat ring goes through edge on,
    /// and the smallest circle round it is its own outside.
    Round(Length),
    /// A clasp or hook of this section; the smallest circle round a rectangle has its diagonal as diameter.
    Flat {
        /// How wide the section is at its widest place.
        width: Length,
        /// How thick the section is at its thickest place.
        thickness: Length,
    },
}

impl ClosedEnd {
    /// Diameter of the smallest round hole it goes through.
    pub fn needs_mm(self) -> f64 {
        match self {
            Self::Round(outside) => outside.mm(),
            Self::Flat { width, thickness } => width.mm().hypot(thickness.mm()),
        }
    }
}

/// The answer for one drop on one base.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Fit {
    /// Whether the ring goes on over the easier end.
    pub passes: bool,
    /// Opening less what that end needs, in millimetres.
    pub clearance_mm: f64,
    /// The ring's free opening in millimetres.
    pub opening_mm: f64,
    /// What the easier end needs, in millimetres.
    pub needs_mm: f64,
}

/// Whether a drop's `ring` can be put on `base` by hand, over the easier of its ends.
pub fn fit_on(base: &Base, ring: Ring) -> Fit {
    let most = |way: Vec<ClosedEnd>| way.into_iter().map(ClosedEnd::needs_mm).fold(0.0, f64::max);
    let needs_mm = base.ways_on().into_iter().map(most).fold(f64::INFINITY, f64::min);
    Fit::of(ring, needs_mm)
}

/// Whether `ring` can be put over one closed end by hand.
pub fn fit_over(ring: Ring, end: ClosedEnd) -> Fit {
    Fit::of(ring, end.needs_mm())
}

impl Fit {
    fn of(ring: Ring, needs_mm: f64) -> Self {
        let opening_mm = ring.opening().mm();
        let clearance_mm = opening_mm - needs_mm;
        Self { passes: clearance_mm > 0.0, clearance_mm, opening_mm, needs_mm }
    }
}

impl std::fmt::Display for Fit {
    /// Its numbers, as fine as two of them differ that are told apart.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "it opens {:.2} mm, and more than {:.2} mm are needed", self.opening_mm, self.needs_mm)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Published in tutorials on jump rings: a ring of 6 mm outside and 20 AWG (0.81 mm) opens 4.38 mm. That a ring or ball
    /// of the very size does not pass, and a rectangle needs its diagonal (3 and 4 mm: 5 mm): by geometry.
    #[test]
    fn a_ring_passes_over_what_is_smaller_than_its_opening() {
        let mm = Length::from_mm;
        let ring = |outside: &str, wire: &str| Ring::new(outside.parse().unwrap(), wire.parse().unwrap()).unwrap();
        let published = ring("6mm", "20awg");
        assert!(fit_over(published, ClosedEnd::Round(mm(4.37))).passes);
        assert!(!fit_over(published, ClosedEnd::Round(mm(4.39))).passes);
        let flat = ClosedEnd::Flat { width: mm(3.0), thickness: mm(4.0) };
        assert!(!fit_over(ring("7mm", "1mm"), flat).passes && fit_over(ring("7.02mm", "1mm"), flat).passes);
    }

    /// A bangle takes drops over its hook, a necklace over the easier of end ring and clasp; at exactly the size it holds.
    #[test]
    fn each_base_has_its_ends() {
        use crate::craft::{Bangle, BaseKind, Clasp, Finish, LengthRange, LinearDensity, LinkKind, Mass, Necklace};
        let mm = Length::from_mm;
        let base = |kind| Base {
            id: "base".into(),
            name: "Base".into(),
            finish: Finish::Steel,
            facts: crate::craft::Facts::of([]),
            price: 1.into(),
            stock: 1,
            kind,
            counted: None,
            guessed: vec![],
        };
        let bangle = base(BaseKind::Bangle(Bangle {
            inside: mm(65.0),
            wire: mm(2.4),
            weight: Mass::from_g(9.0),
            hook_width: mm(4.0),
            hook_thickness: mm(3.0),
            hook_weight: Mass::from_g(1.0),
            free_arc_deg: 240.0,
        }));
        let small = Ring { outside: mm(4.0), wire: mm(0.8) };
        let necklace = base(BaseKind::Necklace(Necklace {
            chain: LinearDensity::from_g_per_m(12.0),
            link: LinkKind::Cable,
            link_length: mm(4.0),
            link_width: mm(3.0),
            end_ring: Ring { outside: mm(5.0), wire: mm(0.8) },
            clasp: Clasp { length: mm(12.0), width: mm(6.0), thickness: mm(3.0), ring: small },
            lengths: LengthRange { usual: mm(600.0), shortest: mm(350.0), longest: mm(900.0) },
            breakaway: false,
        }));
        let ring = |opening: f64| Ring { outside: mm(opening + 2.0), wire: mm(1.0) };
        let changed = |change: &dyn Fn(&mut Necklace)| {
            let mut base = necklace.clone();
            if let BaseKind::Necklace(necklace) = &mut base.kind {
                change(necklace);
            }
            fit_on(&base, ring(20.0)).needs_mm
        };
        let (wide, small_clasp) = (Ring { outside: mm(14.0), wire: mm(1.0) }, (mm(3.0), mm(4.0)));
        for (needs, change) in [
            // √(6² + 3²): the clasp is the easier end.
            (6.7082, &(|n: &mut Necklace| n.end_ring = wide) as &dyn Fn(&mut Necklace)),
            // A small clasp on a large ring of its own.
            (13.0, &|n| {
                (n.clasp.width, n.clasp.thickness) = small_clasp;
                (n.end_ring, n.clasp.ring) = (wide, Ring { outside: mm(13.0), wire: mm(1.0) });
            }),
            // Links wider than both ends.
            (9.0, &|n| n.link_width = mm(9.0)),
        ] {
            assert!((changed(change) - needs).abs() < 1e-4, "{} for {needs}", changed(change));
        }
        for base in [&bangle, &necklace] {
            assert!(!fit_on(base, ring(5.0)).passes, "a tight ring does not go on");
            let fit = fit_on(base, ring(5.1));
            assert!(
                fit.passes && (fit.needs_mm - 5.0).abs() < 1e-12 && (fit.clearance_mm - 0.1).abs() < 1e-9,
                "{fit:?}"
            );
        }
    }
}
