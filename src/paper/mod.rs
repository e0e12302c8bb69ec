//! What is handed over on paper: a receipt for the guest, a slip for the helper who threads a piece. Both are made once as
//! rows of words, and set from these as PDF and as what a receipt printer reads, so that no two papers of one sale differ.
//! And what lies on the table: price marks, tags, maps, lists.
//!
//! | file | look here for |
//! | --- | --- |
//! | `receipt`, `slip`, `hand_over` | the facts of each, and the rows that follow from them |
//! | `document` | the rows, and the sheet that they are set on |
//! | `wrap` | lines of a width out of words |
//! | `typeface` | the typefaces in the program, and how wide words are in them |
//! | `marks` | what stands on a page, word by word and line by line |
//! | `layout`, `pdf` | rows onto pages; pages as a PDF file |
//! | `labels` | paper for the table: price marks, tags, maps, lists |
//! | `roll`, `code_page`, `raster` | rows for a receipt printer; its letters; its dots |

mod code_page;
mod document;
mod hand_over;
mod labels;
mod layout;
mod marks;
mod pdf;
mod raster;
mod receipt;
mod roll;
mod slip;
mod typeface;
mod wrap;

pub use document::{Document, PaperError, Row, Sheet, Sort};
pub use hand_over::HandOver;
pub use labels::{Grid, GridError, LabelError, LabelOrder, LabelPart, LabelTable, Labels, labels};
pub use pdf::pdf;
pub use receipt::{Back, Off, OffWhy, Paid, Receipt, SoldPiece, TakenBack, TaxLine};
pub use roll::roll;
pub use slip::Slip;
pub use typeface::{SANS, SANS_BOLD, SERIF};
