//! A hostile stranger in the desk's network, over real sockets.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]
#![cfg(target_os = "linux")]

use std::{
    fs,
    io::{BufRead, BufReader, Read, Write},
    net::{SocketAddr, TcpStream},
    os::unix::fs::PermissionsExt,
    path::Path,
    process::{Child, Command, Stdio},
    thread,
    time::{Duration, Instant},
};

use chatelaine::{
    craft::Wearer,
    desk::Desk,
    link::{
        PinAnswer,
        wire::{PairRequest, PinQuestion},
    },
};

#[path = "desk/kit.rs"]
#[expect(dead_code, reason = "the desk's own tests need more of it")]
mod kit;
#[path = "attack/raw.rs"]
mod raw;
#[path = "attack/secrets.rs"]
mod secrets;
#[path = "desk/seller.rs"]
mod seller;
mod support;

use kit::{Kiosk, PIN, Table, agent, config};
use raw::{FORM, ask, connect_from, rest, sign_in};
use seller::Seller;

const WRONG: &str = "918273";

fn ask_pin(kiosk: &Kiosk, pin: &str) -> PinAnswer {
    let request = kiosk.agent.post(format!("{}/link/pin", kiosk.pairing.desk)).header("Authorization", kiosk.bearer());
    request.send_json(PinQuestion { pin: pin.to_owned() }).unwrap().body_mut().read_json().unwrap()
}

/// A desk in a process of its own, with its words.
struct OwnDesk {
    child: Child,
    addr: SocketAddr,
    home: Option<tempfile::TempDir>,
}

impl Drop for OwnDesk {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

impl OwnDesk {
    fn start(more: &[&str]) -> Self {
        let home = tempfile::tempdir().expect("a folder");
        let data = home.path().join("data");
        Self::on(home, &data, more)
    }

    fn on(home: tempfile::TempDir, data: &Path, more: &[&str]) -> Self {
        let mut child = Command::new(env!("CARGO_BIN_EXE_chatelaine"))
            .args(["desk", "--listen", "127.0.0.1:0", "--catalog"])
            .arg(support::test_table())
            .arg("--data")
            .arg(data)
            .args(more)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("a desk");
        let mut line = String::new();
        BufReader::new(child.stdout.as_mut().expect("its words")).read_line(&mut line).expect("a line");
        let addr = line.split("http://").nth(1).and_then(|rest| rest.split(' ').next()?.parse().ok());
        Self { child, addr: addr.unwrap_or_else(|| panic!("{line}")), home: Some(home) }
    }

    /// Ends it and gives what it said in its log.
    fn log(mut self) -> String {
        self.child.kill().expect("ended");
        let mut text = String::new();
        self.child.stderr.take().expect("its log").read_to_string(&mut text).expect("its log");
        self.child.wait().expect("ended");
        text
    }
}

#[test]
fn a_thousand_silent_connections_keep_nobody_out() {
    let desk = OwnDesk::start(&[]);
    let set = ask(1, desk.addr, "POST /setup", &[FORM], &format!("pin={PIN}&again={PIN}"));
    let cookie = set.cookie("seller").expect("a session");
    // Someone reads the news all the while.
    let mut stream = connect_from(8, desk.addr);
    let head = format!("GET /events HTTP/1.1\r\nhost: {}\r\ncookie: {cookie}\r\n\r\n", desk.addr);
    stream.write_all(head.as_bytes()).expect("asked");
    let mut first = [0; 16];
    stream.read_exact(&mut first).expect("an answer");

    let mut silent: Vec<TcpStream> = Vec::new();
    for round in 0..250u16 {
        silent.extend([2, 3, 4, 5].map(|last| connect_from(last, desk.addr)));
        if round % 50 == 49 {
            for last in [1, 2, 7] {
                let page = ask(last, desk.addr, "GET /tickets", &[&format!("cookie: {cookie}")], "");
                assert_eq!(page.status, 200, "127.0.0.{last} after {} silent ones: {}", silent.len(), page.head);
            }
        }
    }
    // Of the thousand most were told, and the rest are closed before long.
    let mut told = 0;
    for connection in &mut silent {
        told += usize::from(rest(connection).status == 503);
    }
    assert!((800..1000).contains(&told), "{told} were told");
    let page = ask(7, desk.addr, "GET /tickets", &[&format!("cookie: {cookie}")], "");
    assert_eq!(page.status, 200);
    // Who was listening still is.
    stream.set_nonblocking(true).expect("a connection");
    let mut news = [0; 4096];
    while let Ok(read) = stream.read(&mut news) {
        assert_ne!(read, 0, "the stream of news was cut");
    }
}

#[test]
fn what_never_ends_is_ended() {
    let table = Table::new();
    let to = table.desk.addr();
    let seller = table.seller();
    thread::scope(|scope| {
        // A head that comes a byte at a time, a body that never comes, and a body a byte at a time.
        let slow_head = scope.spawn(|| {
            let mut stream = connect_from(2, to);
            stream.write_all(b"GET /tickets HTTP/1.1\r\n").expect("begun");
            let began = Instant::now();
            while began.elapsed() < Duration::from_secs(30) && stream.write_all(b"a: b\r\n").is_ok() {
                thread::sleep(Duration::from_millis(200));
            }
            assert!(began.elapsed() < Duration::from_secs(30), "a head may last for ever");
        });
        let no_body = scope.spawn(|| {
            let mut stream = connect_from(3, to);
            let head = format!("POST /sign-in HTTP/1.1\r\nhost: {to}\r\n{FORM}\r\ncontent-length: 100\r\n\r\npin=");
            stream.write_all(head.as_bytes()).expect("begun");
            rest(&mut stream).status
        });
        let slow_body = scope.spawn(|| {
            let mut stream = connect_from(4, to);
            let head = format!("POST /sign-in HTTP/1.1\r\nhost: {to}\r\n{FORM}\r\ncontent-length: 9999\r\n\r\npin=");
            stream.write_all(head.as_bytes()).expect("begun");
            let mut answer = stream.try_clone().expect("a connection");
            let reader = thread::spawn(move || rest(&mut answer).status);
            while !reader.is_finished() {
                let _ = stream.write_all(b"1");
                thread::sleep(Duration::from_millis(100));
            }
            reader.join().expect("a status")
        });
        // Meanwhile the desk answers.
        assert_eq!(seller.get("/tickets").status, 200);
        slow_head.join().expect("the head was ended");
        assert_eq!((no_body.join().expect("a status"), slow_body.join().expect("a status")), (408, 408));
    });
    // Chunks without end are cut off, too.
    let mut stream = connect_from(2, to);
    let head = format!("POST /sign-in HTTP/1.1\r\nhost: {to}\r\n{FORM}\r\ntransfer-encoding: chunked\r\n\r\n");
    stream.write_all(head.as_bytes()).expect("begun");
    let chunk = format!("ffff\r\n{}\r\n", "1".repeat(0xffff));
    while stream.write_all(chunk.as_bytes()).is_ok() {}
    let _ = stream.shutdown(std::net::Shutdown::Write);
    assert!([413, 0].contains(&rest(&mut stream).status));
    assert_eq!(seller.get("/tickets").status, 200);
}

#[test]
fn a_browser_has_one_session_and_each_can_be_ended() {
    let table = Table::new();
    let to = table.desk.addr();
    let seller = table.seller();
    let phone = |cookie: &str| {
        let agent = "user-agent: Mozilla/5.0 (Android 15; Mobile; rv:140.0) Gecko/140.0 Firefox/140.0";
        ask(9, to, "POST /sign-in", &[FORM, agent, &format!("cookie: {cookie}")], &format!("pin={PIN}"))
    };
    let look = |session: &str| ask(9, to, "GET /tickets", &[&format!("cookie: {session}")], "").status;
    let first = phone("");
    let (browser, session) = (first.cookie("browser").expect("a browser"), first.cookie("seller").expect("a session"));
    assert_eq!(look(&session), 200);
    // Signing in again ends the earlier session of that browser, also where its cookie is gone already.
    let second = phone(&format!("{browser}; {session}")).cookie("seller").expect("a session");
    assert_eq!((look(&session), look(&second)), (303, 200));
    let third = phone(&browser).cookie("seller").expect("a session");
    assert_eq!((look(&second), look(&third)), (303, 200));
    // A list with each of them, and a way to end it.
    let page = seller.get("/kiosks").text;
    assert!(page.contains("Firefox on Android") && page.contains("127.0.0.9") && page.contains("this one"), "{page}");
    assert_eq!(page.matches("action=\"/sessions/").count(), 2);
    let form = page.split("action=\"").find(|rest| {
        rest.starts_with("/sessions/")
            && page[..page.find(rest).unwrap()].rfind("127.0.0.9") > page.find("<h2>Signed-in")
    });
    let path = form.and_then(|rest| rest.split('"').next()).expect("a form");
    assert_eq!(seller.post(path, &[]).status, 303);
    assert_eq!((look(&third), seller.get("/tickets").status), (303, 200));
    assert_eq!(seller.post("/sessions/0000000000000000/end", &[]).status, 404);
}

#[test]
fn nothing_of_a_piece_is_kept_in_a_browser_after_signing_out() {
    let table = Table::new();
    let (seller, kiosk) = (table.seller(), table.kiosk());
    let ticket = kiosk.ticket(0, &[&kiosk.fitting()[0].id], Wearer::From13);
    kiosk.deliver(&ticket, true);
    let page = format!("/tickets/{}", ticket.id);
    for path in [page.clone(), format!("{page}/picture.png?size=small"), "/tickets".into(), "/kiosks".into()] {
        assert_eq!(seller.get(&path).headers["cache-control"], "no-store", "{path}");
    }
    assert_eq!(seller.post("/sign-out", &[]).status, 303);
    assert_eq!(seller.get(&format!("{page}/picture.png?size=small")).status, 303);
}

#[test]
fn the_data_are_the_owners_alone() {
    let home = tempfile::tempdir().expect("a folder");
    support::copy(&support::test_table(), &home.path().join("catalog")).expect("a copy");
    // As an earlier version left it: everybody may read.
    let data = home.path().join("data");
    fs::create_dir(&data).expect("a folder");
    let everybody = |path: &Path, mode| fs::set_permissions(path, fs::Permissions::from_mode(mode)).expect("a mode");
    everybody(&data, 0o755);
    drop(Desk::start(config(home.path())).expect("the desk starts"));
    for file in fs::read_dir(&data).expect("the folder").flatten().filter(|file| file.path().is_file()) {
        everybody(&file.path(), 0o644);
    }
    everybody(&data, 0o755);
    let desk = Desk::start(config(home.path())).expect("the desk starts");
    let table = Table { desk, dir: home };
    table.seller();
    let kiosk = table.kiosk();
    kiosk.deliver(&kiosk.ticket(0, &[], Wearer::From13), true);
    let mode = |path: &Path| fs::metadata(path).expect("there").permissions().mode() & 0o777;
    assert_eq!(mode(&data), 0o700);
    let mut files = 0;
    for file in fs::read_dir(&data).expect("the folder").flatten().filter(|file| file.path().is_file()) {
        assert_eq!(mode(&file.path()), 0o600, "{}", file.path().display());
        files += usize::from(file.file_name().to_string_lossy().starts_with("ledger.sqlite"));
    }
    assert!(files >= 2, "the ledger and its write-ahead log");
    // A folder that others use stays theirs; only the ledger is closed.
    let shared = tempfile::tempdir().expect("a folder");
    support::copy(&support::test_table(), &shared.path().join("catalog")).expect("a copy");
    let folder = shared.path().join("data");
    fs::create_dir(&folder).expect("a folder");
    fs::write(folder.join("prices.txt"), "theirs").expect("a file");
    everybody(&folder.join("prices.txt"), 0o644);
    everybody(&folder, 0o755);
    let _desk = Desk::start(config(shared.path())).expect("the desk starts");
    assert_eq!((mode(&folder), mode(&folder.join("prices.txt"))), (0o755, 0o644));
    assert_eq!(mode(&folder.join("ledger.sqlite")), 0o600);
    // And a tablet's: its key, its tickets and the hash of the PIN.
    let dir = table.dir.path().join("tablet");
    let link = chatelaine::link::LinkConfig {
        dir: dir.clone(),
        pairing: Some(table.desk.pair_local().expect("a digit")),
        wake: std::sync::Arc::new(|| {}),
    };
    let _line = chatelaine::link::Link::open(link).unwrap_or_else(|error| panic!("{error}"));
    assert_eq!((mode(&dir), mode(&dir.join("pairing.json"))), (0o700, 0o600));
}

#[test]
fn the_log_says_who_tries_to_get_in_and_no_secrets() {
    let desk = OwnDesk::start(&[]);
    let to = desk.addr;
    let elsewhere = ask(4, to, "POST /setup", &[FORM], "code=31415926&pin=718204&again=718204");
    assert_eq!(elsewhere.status, 403);
    let set = ask(1, to, "POST /setup", &[FORM], &format!("pin={PIN}&again={PIN}"));
    let cookie = format!("cookie: {}", set.cookie("seller").expect("a session"));
    (0..40).for_each(|_| drop(sign_in(2, to, WRONG, "")));
    let key = "a".repeat(64);
    ask(3, to, "GET /link/news?have=1", &[&format!("authorization: Bearer {key}")], "");
    let pair = serde_json::to_string(&PairRequest { code: "271828".into(), key: None }).expect("a message");
    ask(5, to, "POST /kiosks/code", &[&cookie], "");
    ask(5, to, "POST /link/pair", &["content-type: application/json"], &pair);
    ask(6, to, "POST /sign-in", &[FORM, "origin: http://shop.example\u{9b}2J"], "pin=1");
    ask(7, to, "GET /tickets", &["host: rebound.example"], "");
    let log = desk.log();
    for (last, words) in [
        (2, "a wrong PIN"),
        (3, "an unknown key"),
        (4, "a wrong setup code"),
        (5, "a wrong pairing code"),
        (6, "another site"),
        (7, "rebound.example"),
    ] {
        let said = log.lines().any(|line| line.contains(words) && line.contains(&format!("127.0.0.{last}")));
        assert!(said, "{words} is not said:\n{log}");
    }
    for secret in [WRONG, PIN, &key, "271828", "31415926", "718204"] {
        assert!(!log.contains(secret), "{secret} is in the log:\n{log}");
    }
    assert!(log.matches("a wrong PIN").count() < 15, "forty tries fill the log:\n{log}");
    assert!(!log.contains('\u{9b}'), "a stranger's words steer the terminal");
}

#[test]
fn only_the_machines_own_names_are_answered() {
    let table = Table::new();
    let to = table.desk.addr();
    table.seller();
    let asked_as = |host: &str| ask(9, to, "GET /sign-in", &[&format!("host: {host}")], "").status;
    let own = fs::read_to_string("/proc/sys/kernel/hostname").expect("this machine's name").trim().to_lowercase();
    let label = own.split('.').next().expect("a name").to_owned();
    let port = to.port();
    for host in ["127.0.0.1", "192.168.4.1:7345", "[::1]:80", "localhost", &own, &label] {
        assert_eq!(asked_as(host), 200, "{host}");
    }
    for host in [format!("{label}.local:{port}"), format!("{}.LOCAL", label.to_uppercase()), format!("{own}:{port}")] {
        assert_eq!(asked_as(&host), 200, "{host}");
    }
    for host in ["rebound.example", "other-table.local", "127.0.0.1.rebound.example", "localhost.example", "local", ""]
    {
        assert_eq!(asked_as(host), 403, "{host}");
    }
    for host in [format!("{label}.rebound.example"), format!("x{label}.local"), format!("{label}.local.example")] {
        assert_eq!(asked_as(&host), 403, "{host}");
    }
    // No host at all, and two of them: no request (RFC 9112, section 3.2).
    let mut stream = connect_from(9, to);
    stream.write_all(b"GET /sign-in HTTP/1.1\r\nconnection: close\r\n\r\n").expect("asked");
    assert!([400, 403].contains(&rest(&mut stream).status));
}
