//! Ways to pay.

use serde::{Deserialize, Serialize};

/// How something is paid: the table's own list says which of them there are.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Tender {
    /// Notes and coins; what is left to pay goes to the nearest cash step.
    Cash,
    /// A card, to the exact sum.
    Card,
    /// Another way, as the maker calls it, to the exact sum.
    #[serde(untagged)]
    Named(String),
}

impl Tender {
    /// The name in the table's file and in forms.
    pub fn name(&self) -> &str {
        match self {
            Self::Cash => "cash",
            Self::Card => "card",
            Self::Named(name) => name,
        }
    }

    /// The way that the maker calls `name`.
    pub fn called(name: &str) -> Self {
        match name.to_lowercase().as_str() {
            "cash" => Self::Cash,
            "card" => Self::Card,
            _ => Self::Named(name.to_owned()),
        }
    }

    /// How something was paid, in words that go on after "paid 8.50".
    pub fn words(&self) -> String {
        match self {
            Self::Cash => "in cash".to_owned(),
            Self::Card => "by card".to_owned(),
            Self::Named(name) => format!("by {name}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_way_to_pay_is_stored_by_its_name() {
        for (tender, stored) in
            [(Tender::Cash, "\"Cash\""), (Tender::Card, "\"Card\""), (Tender::Named("Voucher".into()), "\"Voucher\"")]
        {
            assert_eq!(serde_json::to_string(&tender).unwrap(), stored, "as earlier versions stored the first two");
            assert_eq!(serde_json::from_str::<Tender>(stored).unwrap(), tender);
            assert_eq!(Tender::called(tender.name()), tender);
        }
        assert_eq!(Tender::called("CASH"), Tender::Cash, "no second cash beside the first");
    }
}
