//! The desk's editor of the catalogue's files: what the maker does becomes a change of single entries, and whoever also
//! writes in the files by hand finds all else as it was.
//!
//! | file | look here for |
//! | --- | --- |
//! | `act`, `refusal` | what can be done, and why it is refused |
//! | `files` | the files as they are now, and where a home stands in them |
//! | `apply` | what an act changes in them |
//! | `lots`, `parts` | lots that were bought, and the parts themselves, in the workshop's file |
//! | `entry` | entries as they are written: fields, guesses, ids |
//! | `editor` | keeping a change: checked as a whole, old or new, never torn; the way back |
//! | `versions` | the last twenty changes, as files of their own |
//! | `left_over` | pictures that the desk has kept and nobody names any more |
//! | `begin` | a new table, empty or like the demo |

mod act;
mod apply;
mod begin;
mod editor;
mod entry;
mod files;
mod left_over;
mod lots;
mod parts;
mod refusal;
mod versions;

pub use act::Act;
pub use begin::{begin_empty, begin_like, is_there};
pub use editor::{Seen, TableEditor};
pub use entry::{Fields, fresh_id};
pub use files::TableFiles;
pub use lots::{LotAmount, LotTold, PutAway, written_length};
pub use parts::PartTold;
pub use refusal::{EditRefusal, Place};
pub use versions::VersionListed;
