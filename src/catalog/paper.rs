//! What a table wants on its paper, and where that is printed.

use std::{net::SocketAddr, path::PathBuf};

/// What `table.ron` says of receipts and slips.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Paper {
    /// Lines below the table's name: where it lives, its tax number.
    pub head: Vec<String>,
    /// How a piece is kept, by the language's code, in the order of the file; an empty code is for all languages.
    pub care: Vec<(String, String)>,
    /// Where paper is printed without anybody choosing a printer.
    pub printer: Option<Printer>,
    /// Letters in a line of that printer.
    pub columns: Columns,
    /// Whether the piece's picture is on a slip from that printer.
    pub slip_picture: bool,
}

impl Default for Paper {
    fn default() -> Self {
        Self { head: vec![], care: vec![], printer: None, columns: Columns::Usual, slip_picture: false }
    }
}

impl Paper {
    /// How a piece is kept, in the language with this code: in that language, in all, in English, or in any.
    pub fn care_in(&self, language: &str) -> Option<&str> {
        let called = |code: &str| self.care.iter().find(|(of, _)| of == code);
        let found = [language, "", "en"].into_iter().find_map(called).or(self.care.first());
        found.map(|(_, words)| words.as_str())
    }
}

/// A printer for receipts, as it is reached.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Printer {
    /// In the network.
    Network(SocketAddr),
    /// At this machine, by its device file.
    Device(PathBuf),
    /// None: every print is a file in this folder, for another program.
    Folder(PathBuf),
}

/// How wide the paper of a receipt printer is, in letters of its usual typeface, which are 12 dots wide.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Columns {
    /// 32, on a roll of 58 mm.
    Narrow,
    /// 42, on a roll of 80 mm.
    #[default]
    Usual,
    /// 48, on a roll of 80 mm printed to its edges.
    Wide,
}

impl Columns {
    /// All there are.
    pub const ALL: [Self; 3] = [Self::Narrow, Self::Usual, Self::Wide];

    /// Letters in a line.
    pub const fn count(self) -> u16 {
        match self {
            Self::Narrow => 32,
            Self::Usual => 42,
            Self::Wide => 48,
        }
    }
}
