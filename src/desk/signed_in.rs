//! Somebody who is signed in at the desk, as what they do is entered.

use crate::{
    lang::Texts,
    ledger::{Role, SELLER},
};

/// A request of somebody who is signed in at the desk: the seller, or a helper.
#[derive(Clone)]
pub(super) struct Seller {
    pub token_hash: String,
    /// By which name what they do is entered.
    pub who: Option<String>,
    /// What they may do.
    pub role: Role,
    /// The texts in which they read.
    pub texts: &'static Texts,
}

impl Seller {
    /// Their name; the seller's own where it is the seller.
    pub(super) fn name(&self) -> &str {
        self.who.as_deref().unwrap_or(SELLER)
    }

    /// The same for one act of which the seller approves.
    pub(super) fn approved(&self) -> Self {
        Self { who: Some(format!("{}, approved by the seller", self.name())), ..self.clone() }
    }
}
