//! Mistakes in files, for the person who has to mend them.

use std::fmt;

use super::detail::{Detail, detail};
use crate::quoting::one_line;

/// Mistakes of one file that are told at once: who has mended these sees the others, and a file without end of them is told
/// before long.
pub(super) const MOST: usize = 100;

/// Adds a mistake; the last that is told says that there are more.
pub(super) fn tell(mistakes: &mut Vec<Mistake>, mistake: impl FnOnce() -> Mistake) {
    if mistakes.len() < MOST {
        let mut next = mistake();
        if mistakes.len() + 1 == MOST {
            next.found = detail!("wrong-more", "more mistakes from here on");
            next.expected = detail!("right-those-first", "mend those before first");
        }
        mistakes.push(next);
    }
}

/// One mistake: where, what was found, what would be right. Each of these is one line, however the file is written.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Mistake {
    /// The file, as a path below the catalogue folder.
    pub file: String,
    /// Line, from 1; 0 where the whole file is meant.
    pub line: usize,
    /// Column in characters, from 1; 0 where the whole file is meant.
    pub column: usize,
    /// What stands there.
    pub found: Detail,
    /// What would be right.
    pub expected: Detail,
}

impl Mistake {
    /// A mistake of a whole file.
    pub fn of_file(file: &str, found: impl Into<Detail>, expected: impl Into<Detail>) -> Self {
        Self { file: one_line(file), line: 0, column: 0, found: found.into(), expected: expected.into() }
    }

    /// A mistake at byte `at` of `source`.
    pub fn at(file: &str, source: &str, at: usize, found: impl Into<Detail>, expected: impl Into<Detail>) -> Self {
        let before = &source[..source.floor_char_boundary(at)];
        let line_start = before.rfind('\n').map_or(0, |newline| newline + 1);
        Self {
            file: one_line(file),
            line: before.matches('\n').count() + 1,
            column: before[line_start..].chars().count() + 1,
            found: found.into(),
            expected: expected.into(),
        }
    }

    /// Where it is: the file, with line and column where a place in it is meant.
    pub fn place(&self) -> String {
        match self.line {
            0 => self.file.clone(),
            line => format!("{}:{line}:{}", self.file, self.column),
        }
    }
}

impl fmt::Display for Mistake {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}; {}", self.place(), self.found, self.expected)
    }
}

/// All mistakes of a reading, in order of their places.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub struct Mistakes(pub Vec<Mistake>);

impl fmt::Display for Mistakes {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (n, mistake) in self.0.iter().enumerate() {
            if n > 0 {
                writeln!(f)?;
            }
            write!(f, "{mistake}")?;
        }
        Ok(())
    }
}
