//! What is usual of each sort of drop and of a base, for what nobody has told yet. Where things differ, what is taken is the
//! side on which more has to be said to a guest.
//!
//! Common practice, no source, where nothing else is said.

use std::f64::consts::PI;

use super::{
    Body, Clasp, Facts, Finish, Length, LengthRange, LinearDensity, LinkKind, Mass, Material, Necklace, Plating, Ring,
    Sort,
};

const fn mm(mm: f64) -> Length {
    Length::from_mm(mm)
}

/// The ring that drops hang by: 10 mm of 18 AWG wire, which passes over an end ring of 5 mm by hand.
pub const USUAL_RING: Ring = Ring { outside: mm(10.0), wire: mm(1.024) };

/// How many of one sort a compartment holds, where nobody has counted.
pub const USUAL_STOCK: u32 = 5;

/// The densest metal that is usual in drops of which nobody knows the metal: copper. Source: PNNL-15870 Rev. 1.
const HEAVY_G_CM3: f64 = 8.96;
/// Brass, of which most chains are made. Source: as above.
const BRASS_G_CM3: f64 = 8.07;

impl Sort {
    /// Width, height and depth of a drop of this sort.
    pub const fn usual_size(self) -> [Length; 3] {
        let [width, height, depth] = match self {
            Self::Charm => [18.0, 22.0, 3.0],
            Self::Bead => [10.0, 12.0, 10.0],
            Self::Vial => [12.0, 28.0, 12.0],
            Self::Locket => [20.0, 26.0, 6.0],
            Self::Key => [16.0, 45.0, 4.0],
            Self::Crystal => [12.0, 20.0, 12.0],
            Self::Tassel => [10.0, 50.0, 10.0],
            Self::Found => [20.0, 28.0, 6.0],
        };
        [mm(width), mm(height), mm(depth)]
    }

    /// The body of a drop of this sort of which nobody has told any: a bead is a ball, which has a rule of its own, and any
    /// other has the outline of nobody knows what, which counts as small.
    pub const fn usual_body(self, depth: Length) -> Body {
        match self {
            Self::Bead => Body::Ball { diameter: depth },
            _ => Body::Outline { thickness: depth, shape: None },
        }
    }

    /// What is known of a drop of this sort of which nobody has told anything: its metal is one that nobody tested, its
    /// plating may be nickel, and it has whatever of such drops is dangerous.
    pub fn usual_facts(self) -> Facts {
        use Material::{Cork, CrystalGlass, Glass, Silk, UnknownMetal};
        let materials = match self {
            Self::Charm | Self::Key | Self::Locket | Self::Found => vec![UnknownMetal],
            Self::Bead => vec![Glass, UnknownMetal],
            Self::Vial => vec![Glass, Cork, UnknownMetal],
            Self::Crystal => vec![CrystalGlass, UnknownMetal],
            Self::Tassel => vec![Silk, UnknownMetal],
        };
        let cork = Body::Cylinder { diameter: mm(6.0), height: mm(6.0) };
        Facts {
            materials,
            plating: Plating::Unknown,
            // What was cut out of something old has the edges that it was cut with.
            sharp: matches!(self, Self::Found),
            painted: matches!(self, Self::Charm | Self::Found),
            liquid: matches!(self, Self::Vial),
            comes_off: if matches!(self, Self::Vial) { vec![cork] } else { vec![] },
            ..Facts::default()
        }
    }
}

/// What is taken of a drop of which nobody has told the sort, or of which it is only guessed as from a photo: whatever any
/// sort has that is dangerous counts.
pub struct UnknownSort;

impl UnknownSort {
    /// The depth of the deepest sort.
    pub fn depth() -> Length {
        let deepest = Sort::ALL.iter().map(|sort| sort.usual_size()[2].mm()).fold(0.0, f64::max);
        mm(deepest)
    }

    /// The body of nobody knows what, which counts as small; a bead's ball would be no worse.
    pub const fn body(depth: Length) -> Body {
        Body::Outline { thickness: depth, shape: None }
    }

    /// All that is usual of any sort, together. A metal that nobody knows comes first, and is as heavy as the heaviest.
    pub fn facts() -> Facts {
        let mut all = Facts { materials: vec![Material::UnknownMetal], plating: Plating::Unknown, ..Facts::default() };
        for of in Sort::ALL.iter().map(|sort| sort.usual_facts()) {
            let others = of.materials.into_iter().filter(|material| !all.materials.contains(material));
            all.materials.extend(others.collect::<Vec<_>>());
            all.sharp |= of.sharp;
            all.painted |= of.painted;
            all.liquid |= of.liquid;
            all.comes_off.extend(of.comes_off);
        }
        all
    }
}

/// The weight of a drop that nobody has weighed and whose body or metal nobody knows: the block around it, as heavy as the
/// densest of what it may be.
pub fn heaviest_g(width: Length, height: Length, depth: Length, materials: &[Material], ring: Ring) -> Mass {
    let density = |material: &Material| material.density().map_or(HEAVY_G_CM3, |density| density.g_cm3);
    // Of a bead the first is what it is made of, and its metal a pin.
    let main = materials.first().map_or(HEAVY_G_CM3, density);
    let block = width.mm() * height.mm() * depth.mm() * main;
    Mass::from_g(((block + ring.volume_mm3() * HEAVY_G_CM3) / 1000.0).clamp(0.1, 400.0))
}

/// A chain as it is usually sold, by its links.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UsualChain {
    /// How its links are made.
    pub link: LinkKind,
    /// Outside length of a link.
    pub link_length: Length,
    /// Outside width of a link.
    pub link_width: Length,
}

impl UsualChain {
    /// The usual chains of tables where a ring of 10 mm hangs.
    pub const ALL: [Self; 7] = [
        Self::new(LinkKind::Cable, 3.0, 2.3),
        Self::new(LinkKind::Cable, 4.2, 3.1),
        Self::new(LinkKind::Cable, 6.0, 4.5),
        Self::new(LinkKind::FlatCable, 4.6, 3.4),
        Self::new(LinkKind::Rolo, 3.2, 3.2),
        Self::new(LinkKind::Rolo, 4.2, 4.0),
        Self::new(LinkKind::Curb, 6.0, 4.2),
    ];

    const fn new(link: LinkKind, length: f64, width: f64) -> Self {
        Self { link, link_length: mm(length), link_width: mm(width) }
    }

    /// The one of this kind that is sold most.
    pub fn of(link: LinkKind) -> Self {
        match link {
            LinkKind::Cable => Self::ALL[1],
            LinkKind::FlatCable => Self::ALL[3],
            LinkKind::Rolo => Self::ALL[5],
            LinkKind::Curb => Self::ALL[6],
        }
    }

    /// Weight per length in brass.
    pub fn weight(self) -> LinearDensity {
        LinearDensity::from_g_per_m(chain_g_per_m(self.link_length, self.link_width, BRASS_G_CM3))
    }
}

/// Weight of a chain in grams a metre by the size of its links: each of round wire in the form of a stadium, and one to a
/// pitch. Source: geometry, with [`Necklace::WIRE_SHARE`] for the wire.
pub fn chain_g_per_m(link_length: Length, link_width: Length, density_g_cm3: f64) -> f64 {
    let wire = Necklace::WIRE_SHARE * link_width.mm();
    let (long, wide) = (link_length.mm() - wire, link_width.mm() - wire);
    let around = 2.0 * (long - wide).max(0.0) + PI * wide;
    let pitch = (link_length.mm() - 2.0 * wire).max(0.8);
    // Cubic millimetres to a millimetre of chain, and so grams to a metre.
    PI / 4.0 * wire * wire * around / pitch * density_g_cm3
}

impl Clasp {
    /// A lobster clasp of 12 mm on a ring of 4 mm. Sources of the sizes: trade, as sold.
    pub const USUAL: Self =
        Self { length: mm(12.0), width: mm(6.0), thickness: mm(3.0), ring: Ring { outside: mm(4.0), wire: mm(0.812) } };
}

/// The ring at a necklace's other end: 5 mm of 20 AWG wire.
pub const USUAL_END_RING: Ring = Ring { outside: mm(5.0), wire: mm(0.812) };

impl LengthRange {
    /// 24 inches lie ready, and 16 to 34 are made.
    pub const USUAL: Self = Self { usual: mm(609.6), shortest: mm(406.4), longest: mm(863.6) };
}

/// The finish of a base of which nobody has told any.
pub const USUAL_FINISH: Finish = Finish::AntiqueBrass;

/// A bangle of the size 2-8 of the South-Asian rule, 2.5 in inside, of 2.4 mm wire.
pub const USUAL_BANGLE: (Length, Length) = (mm(63.5), mm(2.4));

/// A bangle's hook: its width, thickness and weight beyond plain wire.
pub const USUAL_HOOK: (Length, Length, Mass) = (mm(5.0), mm(3.0), Mass::from_g(1.2));

/// How much of a bangle drops hang on, in degrees.
pub const USUAL_FREE_ARC_DEG: f64 = 240.0;

/// The weight of a bangle by its inside and its wire, in brass, hook included. Source: Pappus, as for a ring.
pub fn bangle_weight(inside: Length, wire: Length, hook: Mass) -> Mass {
    let ring = Ring { outside: mm(inside.mm() + 2.0 * wire.mm()), wire };
    Mass::from_g(ring.volume_mm3() * BRASS_G_CM3 / 1000.0 + hook.g())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::{ClosedEnd, awg_mm, fit_over};

    /// Wire of AWG 20 in brass weighs 4.17719 g a metre (from the formula and PNNL-15870's density, reckoned outside of the
    /// program); a chain is so much of its wire as its links are longer than its pitch. The link of 4.2 × 3.1 mm was
    /// reckoned by hand: 9.5042 mm of 0.775 mm wire to 2.65 mm of chain.
    #[test]
    fn a_chain_weighs_what_its_wire_weighs() {
        let wire_mm = awg_mm(20).unwrap();
        let wide = mm(wire_mm / Necklace::WIRE_SHARE);
        let long = mm(wide.mm() * 1.35);
        let (straight, bent) = (long.mm() - wide.mm(), PI * (wide.mm() - wire_mm));
        let wanted = 4.17719 * (2.0 * straight + bent) / (long.mm() - 2.0 * wire_mm);
        let found = chain_g_per_m(long, wide, 8.07);
        assert!((found / wanted - 1.0).abs() < 1e-5, "{found} {wanted}");
        let by_hand = 9.5042 * PI / 4.0 * 0.775 * 0.775 / 2.65 * 8.07;
        assert!((UsualChain::of(LinkKind::Cable).weight().g_per_m() / by_hand - 1.0).abs() < 1e-4);
        println!("| link | mm | g/m in brass |");
        for chain in UsualChain::ALL {
            let weight = chain.weight().g_per_m();
            println!("| {:?} | {} × {} | {weight:.1} |", chain.link, chain.link_length.mm(), chain.link_width.mm());
            assert!((3.0..60.0).contains(&weight), "{chain:?}");
        }
    }

    /// Whatever it turns out to be, nothing more has to be said of it than before.
    #[test]
    fn an_unknown_sort_has_the_dangers_of_all() {
        let all = UnknownSort::facts();
        for sort in Sort::ALL {
            let of = sort.usual_facts();
            assert!(of.materials.iter().all(|material| all.materials.contains(material)), "{sort:?}");
            assert!(all.sharp >= of.sharp && all.painted >= of.painted && all.liquid >= of.liquid, "{sort:?}");
            assert!(all.comes_off.len() >= of.comes_off.len() && all.plating == of.plating, "{sort:?}");
            assert!(UnknownSort::depth().mm() >= sort.usual_size()[2].mm());
            let [width, height, depth] = sort.usual_size();
            let told = heaviest_g(width, height, depth, &of.materials, USUAL_RING);
            let unknown = heaviest_g(width, height, UnknownSort::depth(), &all.materials, USUAL_RING);
            assert!(unknown.g() >= told.g(), "{sort:?}: {} {}", unknown.g(), told.g());
        }
    }

    /// The trade fact that the table rests on: the usual drop goes onto the usual necklace by hand.
    #[test]
    fn the_usual_ring_goes_over_the_usual_ends() {
        assert!((USUAL_RING.wire.mm() - awg_mm(18).unwrap()).abs() < 1e-3);
        assert!((USUAL_END_RING.wire.mm() - awg_mm(20).unwrap()).abs() < 1e-3);
        for chain in UsualChain::ALL {
            for end in [ClosedEnd::Round(USUAL_END_RING.outside), ClosedEnd::Round(chain.link_width)] {
                assert!(fit_over(USUAL_RING, end).passes, "{chain:?}");
            }
        }
    }
}
