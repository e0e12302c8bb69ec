//! The catalogue folder: read, checked, every mistake reported with its place, and watched for edits.
//!
//! ```text
//! catalog/table.ron      the table: name, currency, tax, region, holds, idle times
//! catalog/bases.ron      the bases
//! catalog/trays/*.ron    the trays, a letter and rows of compartments each
//! catalog/rules/*.ron    where a table needs them: a region's cautions in place of the program's, or a region more
//! catalog/parts.ron      where the maker wants it: what drops are made of, what lies in the drawers, what was bought
//! catalog/printed.json   written by the program: what stands on the price marks that were printed last
//! catalog/pictures/      a PNG or JPEG for every drop, and beside it NAME.normal.png with its relief, if it has one
//! ```
//!
//! | file | look here for |
//! | --- | --- |
//! | `folder`, `listing` | reading the whole folder, with all mistakes at once; which files it has |
//! | `read_table`, `read_till`, `read_bases`, `read_trays`, `read_assortment`, `read_facts`, `read_guesses`, `read_sizes`, `read_amounts`, `read_paper`, `read_parts`, `names` | reading one file, or a part of one |
//! | `remarks`, `not_read`, `material_words` | what the seller should know though nothing is wrong; what is said of a file that can't be read; materials in what is said |
//! | `edit` | the desk's editor of these files |
//! | `read_piece` | a piece as a file |
//! | `workshop` | parts, recipes, drawers and lots, which no guest sees |
//! | `model`, `paper` | a whole catalogue, and what follows from it: sums, cautions, names; what is wanted on paper |
//! | `pictures`, `outline` | pictures, and the outline of what they show |
//! | `printed` | what stands on the price marks that were printed last |
//! | `watch` | watching the folder for edits |

mod edit;
mod folder;
mod listing;
mod material_words;
mod model;
mod names;
mod not_read;
mod outline;
mod paper;
mod pictures;
mod printed;
mod read_amounts;
mod read_assortment;
mod read_bases;
mod read_facts;
mod read_guesses;
mod read_paper;
mod read_parts;
mod read_piece;
mod read_sizes;
mod read_table;
mod read_till;
mod read_trays;
mod remarks;
mod watch;
mod workshop;

pub use edit::{
    Act, EditRefusal, Fields, LotAmount, LotTold, PartTold, Place, PutAway, Seen, TableEditor, TableFiles,
    VersionListed, begin_empty, begin_like, fresh_id, is_there, written_length,
};
pub use folder::{Loaded, read_folder};
pub use model::{Catalog, PieceError, Table, TableGuess, ThreadedBy, Till, Tray};
pub use names::Names;
pub use outline::Outline;
pub use paper::{Columns, Paper, Printer};
pub use pictures::{Picture, relief_name};
pub use printed::Printed;
pub use read_parts::read_workshop;
pub use read_piece::read_piece;
pub use watch::{Watch, watch};
pub use workshop::{BoughtLot, BoughtPart, LotKey, PartCount, There, Workshop};
