//! The guest's session without an engine: what can be asked, what it does, and what follows from it.
//!
//! [`Guest`] is everything of one tablet that is not seen. Only [`Guest::apply`] (what a guest or the seller asks) and
//! [`Guest::hear`] (what the line to the desk tells) change it; both answer with [`Effect`]s that somebody outside has to
//! carry out: the tablet with flights and a window, a rehearsal with none of them.
//!
//! | file | what is in it |
//! | --- | --- |
//! | `request` | everything that can be asked |
//! | `effect` | everything that has to be carried out outside |
//! | `apply` | what each request does to the session |
//! | `piece` | base, length and drops: what is refused, and what the guest is told then |
//! | `send` | what may be sent, and what becomes of it |
//! | `threading` | a piece threaded with the tablet's help, found by its number |
//! | `seller` | PIN, pairing, the bank card, what the seller settles |
//! | `session` | what one guest has done so far |
//! | `told` | what guest and seller are told, as facts |
//! | `known` | what is known of the desk |
//! | `derived` | what follows from a design: sum, cautions, places, ways out |
//! | `places` | where everything of a piece hangs, or why it is no piece |
//! | `standing` | how each drop of the trays stands to the piece |
//! | `surprise`, `chance` | a piece put together by chance; chance that can be repeated |
//! | `amounts` | round amounts that a guest chooses among |
//! | `length` | steps of a necklace's length |
//! | `looks`, `settings` | how the screens look, and what is kept of it |

pub mod amounts;
mod apply;
mod chance;
mod derived;
mod effect;
mod known;
pub mod length;
pub mod looks;
mod piece;
mod places;
mod request;
mod seller;
mod send;
mod session;
pub mod settings;
mod standing;
mod surprise;
mod threading;
mod told;

pub use apply::Guest;
pub use derived::{Derived, WaysOut};
pub use effect::Effect;
pub use known::{Known, Notice};
pub use looks::{Contrast, Looks, TextSize};
pub use places::{Trouble, places_of};
pub use request::Request;
pub use session::{Filters, Overlay, Screen, SellerPart, SellerStep, Sending, Session, Threading, ThreadingNote};
pub use settings::Settings;
pub use standing::{Standing, standing, walking_order};
pub use surprise::surprise;
pub use told::{NotSent, SellerNote, Told, WhyNot};
