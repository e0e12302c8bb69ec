//! What nobody has told of a part, and stands there as a guess.

use serde::{Deserialize, Serialize};

macro_rules! guesses {
    ($($(#[$doc:meta])* $variant:ident = $field:literal),+ $(,)?) => {
        /// A field of a part that is a guess. Those come first whose truth matters most to who wears the piece.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        pub enum Guess { $($(#[$doc])* $variant),+ }
        impl Guess {
            /// Every one of them, the gravest first.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];
            /// The field of the file that is meant.
            pub const fn field(self) -> &'static str {
                match self { $(Self::$variant => $field),+ }
            }
        }
    };
}

guesses! {
    /// What it is made of.
    Materials = "materials",
    /// What sort it is. Until somebody tells it, what is usual of any sort counts.
    Sort = "sort",
    /// Its solid shape.
    Body = "body",
    /// How wide its body is.
    Width = "width",
    /// How high its body is.
    Height = "height",
    /// How heavy it is.
    Weight = "weight",
    /// The ring it hangs by.
    Ring = "ring",
    /// How heavy a chain is.
    Chain = "chain",
    /// How wide a bangle is inside.
    Inside = "inside",
    /// A necklace's clasp.
    Clasp = "clasp",
    /// The ring at a necklace's other end.
    EndRing = "end_ring",
    /// How long a link is.
    LinkLength = "link_length",
    /// How wide a link is.
    LinkWidth = "link_width",
    /// The wire of a bangle.
    Wire = "wire",
    /// How wide a bangle's hook is.
    HookWidth = "hook_width",
    /// How thick a bangle's hook is.
    HookThickness = "hook_thickness",
    /// How heavy a bangle's hook is.
    HookWeight = "hook_weight",
    /// How much of a bangle drops hang on.
    FreeArc = "free_arc_deg",
    /// The length that lies ready.
    UsualLength = "usual_length",
    /// The shortest length that is made.
    Shortest = "shortest",
    /// The longest length that is made.
    Longest = "longest",
    /// The finish of its metal.
    Finish = "finish",
    /// How many there are.
    Stock = "stock",
    /// The colours by which guests look for it.
    Colours = "colours",
    /// Its picture.
    Picture = "picture",
    /// Its name.
    Name = "name",
}

impl Guess {
    /// Whether what is said of a part's dangers may change once this is known.
    pub const fn is_of_safety(self) -> bool {
        matches!(
            self,
            Self::Materials
                | Self::Sort
                | Self::Body
                | Self::Width
                | Self::Height
                | Self::Weight
                | Self::Ring
                | Self::Chain
                | Self::Clasp
                | Self::EndRing
                | Self::Inside
        )
    }

    /// The guess at the field of this name.
    pub fn of_field(field: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|guess| guess.field() == field)
    }
}
