//! Mistakes in files, for the person who has to mend them.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::quoting::one_line;

/// Mistakes of one file that are told at once: who has mended these sees the others, and a file without end of them is told
/// before long.
pub(super) const MOST: usize = 100;

/// Adds a mistake; the last that is told says that there are more.
pub(super) fn tell(mistakes: &mut Vec<Mistake>, mistake: impl FnOnce() -> Mistake) {
    if mistakes.len() < MOST {
        let mut next = mistake();
        if mistakes.len() + 1 == MOST {
            (next.found, next.expected) =
                ("more mistakes from here on".to_owned(), "mend those before first".to_owned());
        }
        mistakes.push(next);
    }
}

/// One mistake: where, what was found, what would be right. Each of these is one line, however the file is written.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Mistake {
    /// The file, as a path below the catalogue folder.
    pub file: String,
    /// Line, from 1; 0 where the whole file is meant.
    pub line: usize,
    /// Column in characters, from 1; 0 where the whole file is meant.
    pub column: usize,
    /// What stands there.
    pub found: String,
    /// What would be right.
    pub expected: String,
}

impl Mistake {
    /// A mistake of a whole file.
    pub fn of_file(file: &str, found: impl Into<String>, expected: impl Into<String>) -> Self {
        Self {
            file: one_line(file),
            line: 0,
            column: 0,
            found: one_line(&found.into()),
            expected: one_line(&expected.into()),
        }
    }

    /// A mistake at byte `at` of `source`.
    pub fn at(file: &str, source: &str, at: usize, found: impl Into<String>, expected: impl Into<String>) -> Self {
        let before = &source[..source.floor_char_boundary(at)];
        let line_start = before.rfind('\n').map_or(0, |newline| newline + 1);
        Self {
            file: one_line(file),
            line: before.matches('\n').count() + 1,
            column: before[line_start..].chars().count() + 1,
            found: one_line(&found.into()),
            expected: one_line(&expected.into()),
        }
    }
}

impl fmt::Display for Mistake {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.line {
            0 => write!(f, "{}: ", self.file)?,
            line => write!(f, "{}:{line}:{}: ", self.file, self.column)?,
        }
        write!(f, "{}; {}", self.found, self.expected)
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
