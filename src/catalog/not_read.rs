//! Why a file of the folder was not read, as its mistakes say it.

use crate::{
    disk::plain_file::{MEGABYTE, NoFile, NotRead},
    ron_tree::{Detail, Part, detail, what},
};

/// What was found of `file`, which is named as a sentence begins with it.
pub(super) fn found(file: impl Into<Part>, error: &NotRead) -> Detail {
    let file = file.into();
    match error {
        NotRead::Missing => detail!("wrong-missing", "{file} is missing", file = file),
        NotRead::NoFile(is) => {
            let is = match is {
                NoFile::Folder => what("a-folder", "a folder"),
                NoFile::Pipe => what("a-pipe", "a pipe"),
                NoFile::Socket => what("a-socket", "a socket"),
                NoFile::Device => what("a-device", "a device"),
                NoFile::LinkToNowhere => what("a-link-to-nowhere", "a link to nowhere"),
            };
            detail!("wrong-no-file", "{file} is {is} and no file", file = file, is = is)
        }
        NotRead::TooLong(most) => {
            let most = (most / MEGABYTE).to_string();
            detail!("wrong-too-long", "{file} is larger than {most} MB", file = file, most = most)
        }
        NotRead::Disk(error) => unread(file, error),
    }
}

/// The system does not let it be read, and says why.
pub(super) fn unread(file: impl Into<Part>, why: &impl ToString) -> Detail {
    detail!("wrong-unread", "{file} can't be read ({why})", file = file.into(), why = Part::foreign(why))
}

/// What would be right of a file that every catalogue has.
pub(super) fn expected(error: &NotRead) -> Detail {
    match error {
        NotRead::Missing => detail!("right-there", "every catalogue needs it"),
        NotRead::NoFile(_) => detail!("right-plain-file", "put a plain file there, or take it away"),
        NotRead::TooLong(_) => {
            detail!("right-shorter", "no catalogue needs as much; part it, or look what came into it")
        }
        NotRead::Disk(_) => readable(),
    }
}

/// What would be right where the system does not let something be read.
pub(super) fn readable() -> Detail {
    detail!("right-readable", "make it readable")
}
