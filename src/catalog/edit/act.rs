//! What can be done to a table.

use rust_decimal::Decimal;

use super::{
    entry::Fields,
    lots::{LotTold, PutAway},
    parts::PartTold,
};
use crate::{
    catalog::workshop::{LotKey, PartCount},
    craft::Home,
};

/// One thing that the maker does to her table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Act {
    /// Lays a new drop into an empty compartment.
    Lay {
        /// The compartment in which it is going to lie.
        home: Home,
        /// What is told of the drop, its id among it.
        fields: Fields,
    },
    /// Tells something else of a drop.
    Tell {
        /// Where it lies.
        home: Home,
        /// What is told.
        fields: Fields,
    },
    /// Lays the same under another id into an empty compartment.
    Copy {
        /// What is copied.
        from: Home,
        /// Where the copy lies.
        to: Home,
        /// The id by which the catalogue knows it.
        id: String,
    },
    /// Moves a drop; where another lies, the two change places.
    Move {
        /// The compartment in which it lies now.
        from: Home,
        /// The compartment into which it goes.
        to: Home,
    },
    /// Takes a drop off the table; its compartment is empty then.
    Retire {
        /// Where it lies.
        home: Home,
    },
    /// Sets up another tray of empty compartments.
    NewTray {
        /// The letter that the tray has on the table.
        letter: char,
        /// The name that the maker gives the tray.
        name: String,
        /// How many rows it has.
        rows: usize,
        /// How many compartments a row has.
        columns: usize,
    },
    /// Tells something else of a tray: its name, its inner width.
    TellTray {
        /// The letter that the tray has on the table.
        letter: char,
        /// What is told.
        fields: Fields,
    },
    /// Adds a row of empty compartments, as long as the last one.
    AddRow {
        /// The tray's letter.
        letter: char,
    },
    /// Lays out another base.
    NewBase {
        /// `Necklace` or `Bangle`.
        form: &'static str,
        /// What is told of it, its id among it.
        fields: Fields,
    },
    /// Tells something else of a base.
    TellBase {
        /// The id by which the catalogue knows it.
        id: String,
        /// What is told.
        fields: Fields,
    },
    /// Takes a base off the table.
    RetireBase {
        /// The id by which the catalogue knows it.
        id: String,
    },
    /// Writes down a lot that was bought.
    WriteLot {
        /// What is told of it.
        told: LotTold,
        /// What of it goes into the drawer or onto the bench; nothing, where that is counted by hand.
        put_away: Option<PutAway>,
    },
    /// Tells something else of a lot.
    TellLot {
        /// By what it is known until now.
        key: LotKey,
        /// What is told.
        fields: Fields,
    },
    /// Strikes a lot out that was never bought.
    StrikeLot {
        /// By what it is known.
        key: LotKey,
    },
    /// Begins the file that says what drops and bases are made of; where there is one already, nothing is done.
    BeginWorkshop {
        /// What an hour of work counts.
        hour: Decimal,
        /// In which steps prices are rounded.
        price_step: Decimal,
    },
    /// Writes down a part that drops and bases are made of.
    NewPart {
        /// What is told of it.
        told: PartTold,
    },
    /// Writes what was counted of a part.
    CountPart {
        /// The id by which the file knows it.
        id: String,
        /// What lies there.
        there: PartCount,
    },
    /// Adds to what lies there of a part.
    AddToPart {
        /// The id by which the file knows it.
        id: String,
        /// How many pieces come into the drawer, or which lengths onto the bench.
        more: PutAway,
    },
    /// Strikes out a part that nothing is made of.
    StrikePart {
        /// The id by which the file knows it.
        id: String,
    },
    /// Tells something else of the table itself.
    Table {
        /// What is told.
        fields: Fields,
    },
}
