//! What is handed over on paper: a receipt for the guest, a slip for the helper who threads a piece. Both are made once as
//! rows of words, and set from these as PDF and as what a receipt printer reads, so that no two papers of one sale differ.
//!
//! | file | look here for |
//! | --- | --- |
//! | `receipt`, `slip`, `hand_over` | the facts of each, and the rows that follow from them |
//! | `document` | the rows, and the sheet that they are set on |
//! | `wrap` | lines of a width out of words |
//! | `typeface` | the typefaces in the program, and how wide words are in them |
//! | `layout`, `pdf` | rows onto pages; pages as a PDF file |
//! | `roll`, `code_page`, `raster` | rows for a receipt printer; its letters; its dots |

mod code_page;
mod document;
mod hand_over;
mod layout;
mod pdf;
mod raster;
mod receipt;
mod roll;
mod slip;
mod typeface;
mod wrap;

pub use document::{Document, PaperError, Row, Sheet, Sort};
pub use hand_over::HandOver;
pub use pdf::pdf;
pub use receipt::{Back, Off, OffWhy, Paid, Receipt, SoldPiece, TakenBack, TaxLine};
pub use roll::roll;
pub use slip::Slip;
pub use typeface::{SANS, SANS_BOLD, SERIF};
