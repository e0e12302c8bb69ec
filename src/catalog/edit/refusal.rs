//! Why nothing was changed, and the places that can be in conflict.

use std::{fmt, io};

use crate::{
    catalog::workshop::LotKey,
    craft::Home,
    ron_tree::{EditError, Mistakes},
};

/// A place of the files that a page shows, and that may have been changed by hand since.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    /// A compartment of a tray, with what lies in it.
    Home(Home),
    /// A whole tray.
    Tray(char),
    /// A base, by the id that the file gives it.
    Base(String),
    /// A lot that was bought.
    Lot(LotKey),
    /// A part of the workshop.
    Part(String),
    /// The table's own file.
    Table,
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Home(home) => write!(f, "{home}"),
            Self::Tray(letter) => write!(f, "{letter}"),
            Self::Base(id) | Self::Part(id) => write!(f, "{id}"),
            Self::Lot(key) => write!(f, "{}", key.lot),
            Self::Table => write!(f, "table.ron"),
        }
    }
}

/// Why nothing was changed.
#[derive(Debug, thiserror::Error)]
pub enum EditRefusal {
    /// A file does not read, or the table would not.
    #[error("{0}")]
    Mistakes(Mistakes),
    /// Somebody else changed the place since the page was made.
    #[error("{place} was changed meanwhile; it is now {now}")]
    Changed {
        /// Which place.
        place: Place,
        /// As it is written now.
        now: String,
    },
    /// No tray has this compartment.
    #[error("there is no compartment {0}")]
    NoHome(Home),
    /// Nothing lies there.
    #[error("nothing lies in {0}")]
    Empty(Home),
    /// Something lies there.
    #[error("something lies in {0} already")]
    Taken(Home),
    /// There is no such tray.
    #[error("there is no tray {0}")]
    NoTray(char),
    /// There is such a tray.
    #[error("there is a tray {0} already")]
    TrayThere(char),
    /// No tray has so many compartments.
    #[error("a tray has 1 to {most} rows and columns")]
    NoGrid {
        /// How many at most.
        most: usize,
    },
    /// There is no such base.
    #[error("there is no base {0}")]
    NoBase(String),
    /// The lot is written down already, and otherwise.
    #[error("lot {0} of that part and day is written down already")]
    LotThere(String),
    /// There is no such lot.
    #[error("there is no lot {0} of that part and day")]
    NoLot(String),
    /// Another part has this id.
    #[error("there is a part {0} already")]
    PartThere(String),
    /// There is no such part.
    #[error("there is no part {0}")]
    NoPart(String),
    /// Something is made of the part, or some of it was bought.
    #[error("part {part} stands in {recipes} recipes and {lots} lots; strike these out first")]
    PartUsed {
        /// Which part.
        part: String,
        /// In how many recipes it stands.
        recipes: usize,
        /// In how many lots it came.
        lots: usize,
    },
    /// What a change brought was used since, so that taking it back would leave less than nothing.
    #[error(
        "of what that brought of {0}, something was cut or sold since; nothing was undone: count what lies there instead"
    )]
    UsedSince(String),
    /// Nothing is said of parts yet.
    #[error("there is no parts.ron yet, which says what drops are made of")]
    NoWorkshop,
    /// Something lies on the table already.
    #[error("the table is not empty any more")]
    NotBare,
    /// The demo table did not come with the program.
    #[error("the demo table did not come with this program")]
    NoDemo,
    /// Nothing was done that could be undone.
    #[error("there is nothing to undo")]
    NothingToUndo,
    /// What was done can't be undone: somebody wrote in the file since.
    #[error("{file} was changed by hand since, so that nothing was undone")]
    WrittenSince {
        /// Which file.
        file: String,
        /// As it is now.
        now: String,
        /// As it would be.
        would_be: String,
    },
    /// A file has another form than a table's, so that there is no such place in it.
    #[error("there is no {0} in the file")]
    NoPlace(String),
    /// The disk refuses.
    #[error("the table can't be written: {0}")]
    Disk(#[from] io::Error),
}

impl From<EditError> for EditRefusal {
    fn from(error: EditError) -> Self {
        match error {
            EditError::WouldNotRead(mistakes) => Self::Mistakes(mistakes),
            EditError::NoPlace(place) => Self::NoPlace(place),
        }
    }
}
