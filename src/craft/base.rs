//! What drops hang on: a necklace or a bangle.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::{ClosedEnd, Day, Facts, Finish, Guess, Length, LinearDensity, Mass, Ring, material::words};

/// A base as it stands in the catalogue.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Base {
    /// Its name in files and in the ledger; never changes.
    pub id: String,
    /// Its name for people.
    pub name: String,
    /// The finish of its metal.
    pub finish: Finish,
    /// What is known of it and decides its cautions.
    #[serde(flatten)]
    pub facts: Facts,
    /// Its price, the same for every length: the labour is in it.
    pub price: Decimal,
    /// How many the maker counted when the catalogue was last edited.
    pub stock: u32,
    /// Necklace or bangle, with its sizes.
    pub kind: BaseKind,
    /// The day on which that many were counted, where the file says so: another day is another count, also of the same.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub counted: Option<Day>,
    /// What of it nobody has told, the gravest first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub guessed: Vec<Guess>,
}

/// The two families of bases.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum BaseKind {
    /// A chain with a clasp and an end ring.
    Necklace(Necklace),
    /// A rigid ring with a hook.
    Bangle(Bangle),
}

/// A chain, its ends and the lengths it is made in.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Necklace {
    /// Weight of the chain per length.
    pub chain: LinearDensity,
    /// How its links are made.
    #[serde(default)]
    pub link: LinkKind,
    /// Outside length of one link.
    pub link_length: Length,
    /// Outside width of one link.
    pub link_width: Length,
    /// The ring at the end without the clasp; a drop goes on over it.
    pub end_ring: Ring,
    /// The clasp at the other end.
    pub clasp: Clasp,
    /// The lengths a guest can ask for.
    pub lengths: LengthRange,
    /// Whether it comes apart when pulled hard.
    pub breakaway: bool,
}

words! {
    /// How a chain's links are made. Trade names.
    #[derive(Default)]
    LinkKind {
        /// Oval links of round wire, each turned a quarter against its neighbours.
        #[default]
        Cable = "cable",
        /// The same, hammered flat.
        FlatCable = "flat cable",
        /// Round links of heavy wire.
        Rolo = "rolo",
        /// Twisted links that lie flat in one another.
        Curb = "curb",
    }
}

/// A clasp and the ring it sits on.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Clasp {
    /// Length of the clasp.
    pub length: Length,
    /// Its widest place.
    pub width: Length,
    /// Its thickest place.
    pub thickness: Length,
    /// The ring that ties it to the chain.
    pub ring: Ring,
}

/// Whole lengths of a necklace, clasp and rings included.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct LengthRange {
    /// The length that lies ready.
    pub usual: Length,
    /// The shortest that is made.
    pub shortest: Length,
    /// The longest that is made.
    pub longest: Length,
}

/// A rigid ring worn on the wrist.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Bangle {
    /// Inside diameter.
    pub inside: Length,
    /// Diameter of its wire.
    pub wire: Length,
    /// Its whole weight.
    pub weight: Mass,
    /// Widest place of the hook, over which a drop goes on.
    pub hook_width: Length,
    /// Thickest place of the hook.
    pub hook_thickness: Length,
    /// Weight of the hook and its eye beyond plain wire.
    pub hook_weight: Mass,
    /// How much of the ring drops can hang on, in degrees.
    pub free_arc_deg: f64,
}

impl Necklace {
    /// Wire of a link, as a share of the link's width. Common practice, no source.
    pub const WIRE_SHARE: f64 = 0.25;

    /// From link to link, in millimetres. Links interlock, so it is shorter than a link by twice the wire.
    pub fn pitch_mm(&self) -> f64 {
        (self.link_length.mm() - 2.0 * Self::WIRE_SHARE * self.link_width.mm()).max(0.8)
    }
}

impl Bangle {
    /// Its inside circumference, in millimetres: what a hand has to go through.
    pub fn around_mm(&self) -> f64 {
        std::f64::consts::PI * self.inside.mm()
    }
}

impl Base {
    /// The ways on which a drop's ring can go on by hand, each with all that it has to pass over. Links turned against
    /// each other are as wide as they are.
    pub fn ways_on(&self) -> Vec<Vec<ClosedEnd>> {
        match &self.kind {
            BaseKind::Necklace(n) => {
                let (links, clasp) = (ClosedEnd::Round(n.link_width), &n.clasp);
                let clasp_end = ClosedEnd::Flat { width: clasp.width, thickness: clasp.thickness };
                vec![
                    vec![ClosedEnd::Round(n.end_ring.outside), links],
                    vec![clasp_end, ClosedEnd::Round(clasp.ring.outside), links],
                ]
            }
            BaseKind::Bangle(b) => vec![vec![ClosedEnd::Flat { width: b.hook_width, thickness: b.hook_thickness }]],
        }
    }

    /// The length that lies ready, for a necklace.
    pub fn usual_length(&self) -> Option<Length> {
        self.length_like(None)
    }

    /// The length of the base this one is taken in place of, where this one is made in it, or else its usual one; none
    /// for a bangle.
    pub fn length_like(&self, before: Option<Length>) -> Option<Length> {
        match &self.kind {
            BaseKind::Necklace(n) => {
                let made = |length: &Length| (n.lengths.shortest..=n.lengths.longest).contains(length);
                before.filter(made).or(Some(n.lengths.usual))
            }
            BaseKind::Bangle(_) => None,
        }
    }
}
