//! A real desk on the good catalogue, asked over sockets by whoever writes the bytes.

use std::{
    io::{Read, Write},
    net::{Ipv4Addr, SocketAddr, TcpStream},
    path::{Path, PathBuf},
    time::{Duration, Instant},
};

use chatelaine::{
    desk::{Desk, DeskConfig},
    link::wire::Refused,
};
use tempfile::TempDir;

use super::{catalogue::write_good, delivery::GOOD, is_one_line};

/// An answer takes no longer, also where a slow hash is worked out.
const LONGEST: Duration = Duration::from_secs(10);

/// Who asks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Who {
    /// The seller, by forms.
    Seller,
    /// A tablet, by messages in JSON.
    Tablet,
}

/// What came back.
#[derive(Debug)]
pub struct Told {
    pub status: u16,
    pub head: String,
    pub body: String,
}

impl Told {
    /// The words of a refusal, as its reader finds them.
    pub fn reason(&self) -> String {
        match serde_json::from_str::<Refused>(&self.body) {
            Ok(refused) => refused.reason,
            Err(_) => {
                let alert = self.body.split("role=\"alert\"").nth(1).unwrap_or_default();
                let words = alert.split_once('>').map_or("", |(_, words)| words).split('<').next().unwrap_or_default();
                words.replace("&quot;", "\"").replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")
            }
        }
    }
}

/// A desk with a paired tablet, a seller who is signed in, and one ticket.
pub struct AskedDesk {
    desk: Desk,
    key: String,
    cookie: String,
    dir: TempDir,
}

/// The id of the good delivery's ticket.
pub fn ticket_id() -> String {
    let delivery: serde_json::Value = serde_json::from_slice(GOOD).expect("a delivery");
    delivery["ticket"]["id"].as_str().expect("an id").to_owned()
}

impl AskedDesk {
    /// On the good catalogue.
    pub fn start() -> Self {
        Self::on(|_| ())
    }

    /// On the good catalogue after something was changed in its folder.
    pub fn on(change: impl FnOnce(&Path)) -> Self {
        let dir = tempfile::tempdir().expect("a folder");
        write_good(&dir.path().join("catalog"));
        change(&dir.path().join("catalog"));
        let config = DeskConfig {
            catalog_dir: dir.path().join("catalog"),
            data_dir: dir.path().join("data"),
            listen: SocketAddr::from((Ipv4Addr::LOCALHOST, 0)),
        };
        let desk = Desk::start(config).unwrap_or_else(|error| panic!("{error}"));
        let key = desk.pair_local().expect("a digit").key;
        let mut this = Self { desk, key, cookie: String::new(), dir };
        let set = this.ask(Who::Seller, "POST /setup", b"pin=482913&again=482913");
        let line = set.head.lines().find(|line| line.to_ascii_lowercase().starts_with("set-cookie: seller="));
        let cookie = line.and_then(|line| line["set-cookie: ".len()..].split(';').next());
        this.cookie = cookie.unwrap_or_else(|| panic!("{}", set.head)).to_owned();
        let told = this.ask(Who::Tablet, "POST /link/tickets", GOOD);
        assert!(told.status == 200 && told.body.contains("Stored"), "{told:?}");
        this
    }

    /// The ledger's file.
    pub fn ledger_file(&self) -> PathBuf {
        self.dir.path().join("data/ledger.sqlite")
    }

    /// The number of the ledger's last entry.
    pub fn change(&self) -> i64 {
        self.desk.with_ledger(|ledger| ledger.change()).expect("open").expect("read")
    }

    /// Asks, and holds the answer to what is promised of all of them: it comes soon, it is no fault of the desk, and a
    /// refusal says why in one line and has changed nothing.
    pub fn ask(&self, who: Who, line: &str, body: &[u8]) -> Told {
        let (before, began) = (self.change(), Instant::now());
        let mut told = self.exchange(who, line, body);
        // What a PIN was sent for is answered on a page of its own.
        let elsewhere = told.head.lines().find_map(|line| line.strip_prefix("location: ")).map(str::to_owned);
        if let Some(page) = elsewhere.filter(|page| page.starts_with("/answers/")) {
            told = self.exchange(who, &format!("GET {page}"), &[]);
        }
        let asked = || format!("{line} {:?}", String::from_utf8_lossy(&body[..body.len().min(300)]));
        assert!(began.elapsed() < LONGEST, "{} took {:?}", asked(), began.elapsed());
        assert!((200..500).contains(&told.status), "{}: {told:?}", asked());
        if told.status >= 400 {
            assert!(told.body.len() < 200_000, "{}: {} bytes", asked(), told.body.len());
            // What pairing is refused for is a word of its own, and a picture that is not there has none.
            let is_word = line.contains("/link/pair") && told.status == 403;
            if !line.contains("/picture") && !is_word {
                let reason = told.reason();
                assert!(!reason.is_empty(), "{}: {told:?}", asked());
                is_one_line(&reason);
            }
            assert_eq!(self.change(), before, "{} was refused and changed something", asked());
        }
        told
    }

    fn exchange(&self, who: Who, line: &str, body: &[u8]) -> Told {
        let addr = self.desk.addr();
        let mut stream = TcpStream::connect(addr).expect("a connection");
        stream.set_read_timeout(Some(LONGEST * 2)).expect("a limit");
        let (kind, by) = match who {
            Who::Seller => ("application/x-www-form-urlencoded", format!("cookie: {}", self.cookie)),
            Who::Tablet => ("application/json", format!("authorization: Bearer {}", self.key)),
        };
        let head = format!(
            "{line} HTTP/1.1\r\nhost: {addr}\r\nconnection: close\r\ncontent-type: {kind}\r\n{by}\r\ncontent-length: {}\r\n\r\n",
            body.len()
        );
        // What is too long is answered before all of it was written.
        let _ = stream.write_all(head.as_bytes()).and_then(|()| stream.write_all(body));
        let mut bytes = Vec::new();
        let _ = stream.read_to_end(&mut bytes);
        let text = String::from_utf8_lossy(&bytes);
        let (head, body) = text.split_once("\r\n\r\n").unwrap_or((&text, ""));
        let status = head.split(' ').nth(1).and_then(|status| status.parse().ok()).unwrap_or(0);
        Told { status, head: head.to_owned(), body: body.to_owned() }
    }
}

/// Good forms and messages, to be spoiled: who, the request's line, and the body. What would end the session or the pairing
/// is not among them.
pub fn asked() -> Vec<(Who, String, Vec<u8>)> {
    let id = ticket_id();
    let form =
        |path: &str, body: &str| (Who::Seller, format!("POST {}", path.replace("ID", &id)), body.as_bytes().to_vec());
    let message = |path: &str, body: &[u8]| (Who::Tablet, format!("POST {path}"), body.to_vec());
    let delivery: serde_json::Value = serde_json::from_slice(GOOD).expect("a delivery");
    let sent = serde_json::to_vec(&delivery["ticket"]).expect("a ticket");
    let report = format!(
        "{{\"waiting\":[{{\"id\":\"{id}\",\"number\":\"1-042-9\",\"drops\":2,\"sum\":\"USD 9\",\"trouble\":\"away\"}}],\"aside\":[],\"unreadable\":0}}"
    );
    vec![
        form("/tickets/ID/call", ""),
        form("/tickets/ID/tick", "part=base&on=1"),
        form("/tickets/ID/tick", "part=0&on=1&found=1"),
        form("/tickets/ID/length", "mm=609.6"),
        form("/tickets/ID/wearer", "wearer=from_13"),
        form("/tickets/ID/remove", "line=1"),
        form("/tickets/ID/told", "told=1"),
        form("/tickets/ID/confirm", "code=small_part&on=1"),
        form("/tickets/ID/ring-up", "tender=card&total=22.00"),
        form("/tickets/ID/sum", "charge=seen"),
        form("/tickets/ID/missing/0", "to=leaf"),
        form("/parts/key", "free=3"),
        form("/show/close", "show=7"),
        form("/kiosks/1/take-in/ID", ""),
        form("/kiosks/1/put-away/ID", ""),
        form("/pin", "now=000000&pin=135246&again=135246"),
        message("/link/tickets", GOOD),
        message("/link/take-in", &sent),
        message("/link/report", report.as_bytes()),
        message("/link/pin", b"{\"pin\":\"482913\"}"),
        message("/link/pair", b"{\"code\":\"123456\"}"),
    ]
}
