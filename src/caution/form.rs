//! The ways in which one caution can be said.

/// Which of several ways to say a caution.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Form {
    /// The usual one.
    Usual,
    /// Small parts, to somebody for whom they are none: keep them from small children.
    Away,
    /// Beyond the limit, by a test.
    Found,
    /// Within the wearer's limit, by a test, yet beyond what some region allows for children.
    Elsewhere,
    /// Beyond the children's limit, by a test, for a wearer without a limit.
    Children,
    /// Beyond the limit, by a test, and exempt from it.
    Exempt,
    /// Not tested; the supplier states in writing that it is within the limit.
    Declared,
    /// The allergens are known.
    Known,
    /// A magnet of which nobody knows how strong it is.
    Unknown,
    /// A magnet below the limit.
    Within,
    /// Two magnets or more on the piece, each below the limit.
    Together,
    /// A necklace that comes apart when pulled.
    Apart,
    /// Against the neck that the guest gave.
    Own,
    /// A bangle too wide for the hand.
    Slips,
}

impl Form {
    /// The end of a language file's key, `caution-CODE-FORM`.
    pub(super) const fn code(self) -> &'static str {
        match self {
            Self::Usual => "",
            Self::Away => "away",
            Self::Found => "found",
            Self::Elsewhere => "elsewhere",
            Self::Children => "children",
            Self::Exempt => "exempt",
            Self::Declared => "declared",
            Self::Known => "known",
            Self::Unknown => "unknown",
            Self::Within => "within",
            Self::Together => "together",
            Self::Apart => "apart",
            Self::Own => "own",
            Self::Slips => "slips",
        }
    }
}
