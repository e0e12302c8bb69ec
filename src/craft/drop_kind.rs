//! A catalogue entry for something that hangs.

use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};

use super::{Body, Day, Facts, Finish, Guess, Home, Length, Look, Mass, Ring, material::words};

words! {
    /// What sort of drop it is, as the trade sorts its trays.
    Sort {
        /// A cast or stamped charm or pendant.
        Charm = "charm",
        /// A bead on a head pin with a wrapped loop.
        Bead = "bead",
        /// A small bottle with something in it.
        Vial = "vial",
        /// A locket that opens.
        Locket = "locket",
        /// A key.
        Key = "key",
        /// A cut crystal or stone.
        Crystal = "crystal",
        /// A tassel.
        Tassel = "tassel",
        /// A one-of-a-kind piece of something old.
        Found = "found piece",
    }
}

words! {
    /// The colours by which guests look for a drop.
    Colour {
        /// Yellow metal.
        Golden = "golden",
        /// White metal.
        Silvery = "silvery",
        /// Red metal.
        Coppery = "coppery",
        /// Without colour.
        Clear = "clear",
        /// White and ivory.
        White = "white",
        /// Black and grey.
        Black = "black",
        /// Red.
        Red = "red",
        /// Pink.
        Pink = "pink",
        /// Orange and amber.
        Orange = "orange",
        /// Yellow.
        Yellow = "yellow",
        /// Green.
        Green = "green",
        /// Blue.
        Blue = "blue",
        /// Violet.
        Violet = "violet",
        /// Brown.
        Brown = "brown",
    }
}

/// A drop as it stands in the catalogue: one compartment holds several of it, all alike, or unlike in an assortment.
///
/// Of an assortment, facts, ring and price hold for each of its pieces; `body` is that of the smallest, `weight` that of the
/// heaviest, `width` and `height` those of the largest.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct DropKind {
    /// Its name in files and in the ledger; never changes.
    pub id: String,
    /// Its name for people.
    pub name: String,
    /// What sort of drop it is.
    pub sort: Sort,
    /// The finish of its metal, if it has any.
    pub finish: Option<Finish>,
    /// The colours a guest would look for it by.
    pub colours: Vec<Colour>,
    /// What is known of it and decides its cautions.
    #[serde(flatten)]
    pub facts: Facts,
    /// Its solid shape, without the ring.
    pub body: Body,
    /// Width of the body as it hangs.
    pub width: Length,
    /// Height of the body as it hangs, from where the ring holds it to its lowest point.
    pub height: Length,
    /// The ring it hangs by.
    pub ring: Ring,
    /// Its whole weight, ring included.
    pub weight: Mass,
    /// Price of one, in the table's currency.
    pub price: Decimal,
    /// How many the maker counted when the catalogue was last edited.
    pub stock: u32,
    /// The compartment in which it lies on the table.
    pub home: Home,
    /// The picture's file name under `pictures/`; empty where there is none yet. Of an assortment it shows the mix.
    pub picture: String,
    /// Of an assortment, how its pieces can look; with no look told, it hangs plain.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub assortment: Option<Vec<Look>>,
    /// The day on which that many were counted, where the file says so: another day is another count, also of the same.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub counted: Option<Day>,
    /// What of it nobody has told, the gravest first.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub guessed: Vec<Guess>,
}
