//! Who the piece is for, in the bands by which cautions differ.

use serde::{Deserialize, Serialize};

/// The age of the person who will wear the piece. Nothing else about them is ever asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize)]
pub enum Wearer {
    /// Under 3 years.
    Under3,
    /// 3 to 5 years.
    From3To5,
    /// 6 to 12 years.
    From6To12,
    /// 13 years or older.
    From13,
    /// Not answered: a young child is possible.
    #[default]
    Unknown,
}

impl Wearer {
    /// The four answers a guest can give, youngest first.
    pub const ANSWERS: [Self; 4] = [Self::Under3, Self::From3To5, Self::From6To12, Self::From13];

    /// The band's name in the terminal and in JSON.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Under3 => "under3",
            Self::From3To5 => "from3to5",
            Self::From6To12 => "from6to12",
            Self::From13 => "from13",
            Self::Unknown => "unknown",
        }
    }

    /// The band called `code`.
    pub fn from_code(code: &str) -> Option<Self> {
        [Self::Under3, Self::From3To5, Self::From6To12, Self::From13, Self::Unknown]
            .into_iter()
            .find(|w| w.code() == code)
    }

    /// Whether a grown-up has to confirm the cautions: known to be a child of 12 or younger.
    pub fn is_child(self) -> bool {
        matches!(self, Self::Under3 | Self::From3To5 | Self::From6To12)
    }
}
