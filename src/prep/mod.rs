//! Before and after a show: how many to make, what a piece costs and should cost, what to buy, and how to cut it.
//!
//! | file | look here for |
//! | --- | --- |
//! | `demand`, `sold_out` | what is sold at the next show, from the shows so far and a guess; what shows that sold out tell |
//! | `how_many` | how many to take along, by what a sale and a leftover are worth |
//! | `costs` | what parts cost by the lots that were bought, and what a drop costs by its recipe |
//! | `pricing` | prices from costs, few price points, margin and break-even |
//! | `shopping` | what a batch needs beyond the drawers, in whole lots; what stops when a part is gone |
//! | `cuts` | mixed lengths from spools, part spools and remnants |
//!
//! A pure room: no files, no clock. Whatever takes long asks between its steps whether it may go on.

mod costs;
pub mod cuts;
mod demand;
mod how_many;
mod pricing;
mod shopping;
mod sold_out;

pub use costs::{Bought, Cost, Need, Rates, Recipe, cost_of, unit_cost};
pub use demand::{DemandError, Forecast, Outcome, Prior, Sureness, forecast};
pub use how_many::{HowMany, Worth, how_many};
pub use pricing::{PriceError, break_even, margin, price_from_cost, price_points, sold_for_the_same};
pub use shopping::{Makeable, Offer, Purchase, can_be_made, needs_of, stopped_by, whole_lots};
