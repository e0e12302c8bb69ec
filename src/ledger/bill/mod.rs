//! Bills: what is paid together, how, and what is put right afterwards.
//!
//! | file | look here for |
//! | --- | --- |
//! | `document` | a bill as it is kept |
//! | `open_bill` | beginning one; what is put onto it and taken off, as long as it is not paid |
//! | `pay` | taking money, all or a part, and paying out; what becomes the guest's by that |
//! | `correct` | what is put right after it was paid, each as an entry of its own |
//! | `bill_sum` | what a bill comes to |
//! | `sums_of_bills` | what that adds to the sums of the show |
//! | `bill_rows` | bills as they are read and written |
//! | `sales` | finding a sale again |

mod bill_rows;
mod bill_sum;
mod correct;
mod document;
mod open_bill;
mod pay;
mod sales;
mod sums_of_bills;

pub(super) use bill_rows::{follow, open_bills};
pub use bill_sum::BillSum;
pub use correct::TakeBack;
pub use document::{Bill, BilledTicket, Corrected, Correction, Given, Goods, Payment, Why};
pub(super) use open_bill::{checked_line, reason_of};
pub use pay::{Paying, Seen};
pub use sales::{Sale, SaleId, SaleQuery};
