//! The maker's bench: what ledger and catalogue say, put through the computations of `prep`, for terminal and desk.
//!
//! | file | look here for |
//! | --- | --- |
//! | `history` | the shows so far, as far as they tell how much is wanted |
//! | `numbers` | how many of everything to make for the next show |
//! | `prices` | what everything costs and earns, and what it should cost |
//! | `after` | what a show came to for the maker |
//! | `costs` | what the parts and the work in what was sold cost |
//! | `batch` | what a batch takes from the drawers, what is short, what to buy |
//! | `parts` | bases and drops in one list |
//! | `chains` | what is cut from which spool |

mod after;
mod batch;
mod chains;
mod costs;
mod history;
mod numbers;
mod parts;
mod prices;

pub use after::{AfterShow, SoldHere, SoldOfSort, after_show};
pub use batch::{Batch, PartShort, batch};
pub use chains::{ChainError, Chains, chains};
pub use costs::{SoldCosts, sold_costs};
pub use history::{PastShow, past_shows};
pub use numbers::{Basis, Number, numbers};
pub use prices::{Priced, prices};
