//! The maker's bench: what ledger and catalogue say, put through the computations of `prep`, for terminal and desk.
//!
//! | file | look here for |
//! | --- | --- |
//! | `history` | the shows so far, as far as they tell how much is wanted |
//! | `numbers` | how many of everything to make for the next show |
//! | `prices` | what everything costs and earns, and what it should cost |
//! | `price_list` | few price points and what each earns, how many pieces earn the stall, what another price would do |
//! | `stock` | what lies there at cost, on a day |
//! | `after` | what a show came to for the maker |
//! | `costs` | what the parts and the work in what was sold cost |
//! | `batch` | what a batch takes from the drawers, what is short, what to buy |
//! | `parts` | bases and drops in one list |
//! | `chains`, `cut_lists` | what is cut from which spool; a list that is ticked off, and the remnants it leaves |
//! | `lots`, `recall` | what was made of which lots, the bench check; where a lot may be |
//! | `there`, `table_cuts` | what lies in the drawers and on the bench now; lengths that were cut at the table |
//! | `plans` | packing, shows to come, custom orders |

mod after;
mod batch;
mod chains;
mod costs;
mod cut_lists;
mod history;
mod lots;
mod numbers;
mod parts;
mod plans;
mod price_list;
mod prices;
mod recall;
mod stock;
mod table_cuts;
mod there;

pub use after::{AfterShow, SoldHere, SoldOfSort, after_show};
pub use batch::{Batch, PartShort, batch};
pub use chains::{ChainError, Chains, chains};
pub use costs::{SoldCosts, sold_costs};
pub use cut_lists::{CUT_LISTS, CutLine, CutList, Ticked, without_promised};
pub use history::{PastShow, past_shows};
pub use lots::{BenchCheck, MADE, Made};
pub use numbers::{Basis, Number, numbers};
pub use plans::{
    LONGEST, LONGEST_NUMBER, ORDERS, Order, PACKING, PLANNED, PackItem, PlannedShow, by_day, not_listed, packing,
};
pub use price_list::{AtPrice, BreakEven, PriceChange, PriceList, PriceRow, StallCosts, price_change, price_list};
pub use prices::{Priced, prices};
pub use recall::{Recall, Suspect, recall};
pub use stock::{StockLine, stock_at_cost, stock_table, worth_of_stock};
pub use table_cuts::{CutOff, TABLE_CUTS, TableCut, bases_on_spools, count_cuts};
pub use there::{PartNow, SPOOLS, UsedSince, carried_on, parts_now, taken_back};
