//! A real desk on a free port with a folder of its own, and a kiosk that talks to it.

use std::{
    net::{Ipv4Addr, SocketAddr},
    path::{Path, PathBuf},
    sync::Arc,
    time::Duration,
};

use chatelaine::{
    catalog::{Catalog, read_folder},
    craft::{BaseKind, DropKind, Piece, Wearer, fit_on},
    desk::{Desk, DeskConfig},
    link::{
        Pairing,
        wire::{Delivery, DeskNews},
    },
    ticket::{Receipt, SentTicket, TicketNumber},
};
use tempfile::TempDir;
use ureq::Agent;
use uuid::Uuid;

use crate::support::{copy, test_table};

/// The seller's PIN in these tests.
pub const PIN: &str = "482913";

/// A desk with its folders, gone with this value.
pub struct Table {
    pub desk: Desk,
    pub dir: TempDir,
}

impl Table {
    /// A desk on a copy of the repository's catalogue.
    pub fn new() -> Self {
        let dir = tempfile::tempdir().expect("a temporary folder");
        copy(&test_table(), &dir.path().join("catalog")).expect("a copy");
        let desk = Desk::start(config(dir.path())).expect("the desk starts");
        Self { desk, dir }
    }

    pub fn catalog_file(&self, name: &str) -> PathBuf {
        self.dir.path().join("catalog").join(name)
    }

    pub fn catalog(&self) -> Arc<Catalog> {
        read_folder(&self.dir.path().join("catalog")).expect("a good catalogue").catalog
    }

    pub fn kiosk(&self) -> Kiosk {
        Kiosk { agent: agent(), pairing: self.desk.pair_local().expect("a free digit"), catalog: self.catalog() }
    }
}

pub fn config(dir: &Path) -> DeskConfig {
    DeskConfig {
        catalog_dir: dir.join("catalog"),
        data_dir: dir.join("data"),
        listen: SocketAddr::from((Ipv4Addr::LOCALHOST, 0)),
    }
}

pub fn agent() -> Agent {
    let config = Agent::config_builder()
        .http_status_as_error(false)
        .max_redirects(0)
        .max_redirects_will_error(false)
        .timeout_global(Some(Duration::from_secs(20)));
    config.build().new_agent()
}

/// A paired kiosk.
pub struct Kiosk {
    pub agent: Agent,
    pub pairing: Pairing,
    pub catalog: Arc<Catalog>,
}

impl Kiosk {
    pub fn bearer(&self) -> String {
        format!("Bearer {}", self.pairing.key)
    }

    pub fn news(&self, have: i64, revision: &str) -> DeskNews {
        let url = format!("{}/link/news?have={have}&revision={revision}", self.pairing.desk);
        let mut answer = self.agent.get(url).header("Authorization", self.bearer()).call().expect("news");
        assert_eq!(answer.status(), 200);
        answer.body_mut().with_config().limit(64 << 20).read_json().expect("news")
    }

    /// Drops that fit on the first necklace, in walking order.
    pub fn fitting(&self) -> Vec<&DropKind> {
        let base = self.necklace();
        self.catalog.drops.iter().filter(|kind| kind.stock > 1 && fit_on(base, kind.ring).passes).collect()
    }

    fn necklace(&self) -> &chatelaine::craft::Base {
        let bases = &self.catalog.bases;
        bases.iter().find(|base| matches!(base.kind, BaseKind::Necklace(_))).expect("a necklace")
    }

    /// A ticket of the running show for a necklace with `drops`, as the kiosk would send it.
    pub fn ticket(&self, sequence: u16, drops: &[&str], wearer: Wearer) -> SentTicket {
        self.ticket_in(self.news(-1, "").show, sequence, drops, wearer)
    }

    /// The same of show `show`.
    pub fn ticket_in(&self, show: i64, sequence: u16, drops: &[&str], wearer: Wearer) -> SentTicket {
        let base = self.necklace();
        let piece = Piece {
            base: base.id.clone(),
            length: base.usual_length(),
            wearer,
            neck: None,
            drops: drops.iter().map(|id| (*id).to_owned()).collect(),
            looks: vec![],
        };
        SentTicket {
            id: Uuid::now_v7(),
            show,
            number: TicketNumber::new(self.pairing.digit, sequence).expect("a number"),
            quote: self.catalog.quote(&piece).expect("a sum"),
            verdict: self.catalog.cautions(&piece).expect("cautions"),
            piece,
            grown_up_confirmed: false,
            practice: false,
        }
    }

    pub fn deliver(&self, ticket: &SentTicket, refuse_if_short: bool) -> Receipt {
        let url = format!("{}/link/tickets", self.pairing.desk);
        let delivery = Delivery { ticket: ticket.clone(), refuse_if_short };
        let request = self.agent.post(url).header("Authorization", self.bearer());
        let mut answer = request.send_json(&delivery).expect("an answer");
        assert_eq!(answer.status(), 200);
        answer.body_mut().read_json().expect("an answer")
    }
}
