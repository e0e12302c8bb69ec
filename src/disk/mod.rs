//! What the house asks of a disk: files that survive a crash, a folder that one program uses at a time, the room that is
//! left, and hashes.
//!
//! | file | look here for |
//! | --- | --- |
//! | `durable` | writing, moving and removing a file so that it stays done after a power cut |
//! | `plain_file` | reading what somebody else put there: plain files of a size that was reckoned with |
//! | `folder` | a folder that is its owner's alone, and the lock on it |
//! | `space` | whether a disk is nearly full |
//! | `digest` | SHA-256 and hexadecimal |

pub mod digest;
pub mod durable;
mod folder;
pub mod plain_file;
mod space;

pub use folder::{FolderLock, LockError, make_private};
pub use space::is_nearly_full;
