//! Who may be connected, and for how long without asking anything: strangers that only hold connections open keep
//! nobody else out.
//!
//! Somebody new always comes in while there is a connection that waits without saying anything: the one that has waited
//! longest goes, of the address that has most. It is told so (503, RFC 9110, section 15.6.4).
//!
//! | file | look here for |
//! | --- | --- |
//! | `listener` | the desk's socket: each new connection is let in, or turned away |
//! | `admission` | how many may be connected, and who goes when somebody new comes |
//! | `visit` | one connection: what it is at, and until when something has to come |
//! | `timed_stream` | its bytes: closed when it keeps silent, or does not fetch its answer, for too long |
//! | `body` | a request's body: small, and in time |
//! | `caller` | who asks, for everything behind |

mod admission;
mod body;
mod caller;
mod listener;
mod timed_stream;
mod visit;

pub(super) use body::{LongBody, receive_body};
pub(super) use caller::Caller;
pub(super) use listener::GuardedListener;
