//! The seller's side: the server that owns the truth, its pages, and the interface for kiosks.
//!
//! One thread owns the ledger (`books`) and one answers requests (`server`); the catalogue is watched
//! (`shelf`). Every page works by plain forms; the script only keeps open pages up to date.

mod alarms;
mod assets;
mod auth;
mod back;
mod books;
mod budgets;
mod connections;
mod cookies;
mod error;
mod events;
mod gallery;
mod guard;
mod kiosks;
mod pages;
mod pin;
mod refusal;
mod refused;
mod seller;
mod server;
mod shelf;
mod state;
mod sweep;
mod tablets;

pub use error::DeskError;
pub use server::{Desk, DeskConfig};
