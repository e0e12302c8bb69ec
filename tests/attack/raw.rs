//! Requests byte by byte, from any address of this machine's own network: on Linux all of 127.0.0.0/8.

use std::{
    io::{Read, Write},
    net::{IpAddr, SocketAddr, TcpStream},
    time::Duration,
};

/// A connection from 127.0.0.`last`.
pub fn connect_from(last: u8, to: SocketAddr) -> TcpStream {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().expect("a runtime");
    let stream = runtime.block_on(async {
        let socket = tokio::net::TcpSocket::new_v4().expect("a socket");
        socket.bind(SocketAddr::new(IpAddr::from([127, 0, 0, last]), 0)).expect("an address of this machine");
        socket.connect(to).await.expect("a connection").into_std().expect("a connection")
    });
    stream.set_nonblocking(false).expect("a connection");
    stream.set_read_timeout(Some(Duration::from_secs(40))).expect("a limit");
    stream.set_write_timeout(Some(Duration::from_secs(40))).expect("a limit");
    stream
}

/// What came back.
pub struct Told {
    pub status: u16,
    pub head: String,
    pub body: String,
}

impl Told {
    /// `name=value` of a cookie that was set.
    pub fn cookie(&self, name: &str) -> Option<String> {
        let of = format!("set-cookie: {name}=");
        let line = self.head.lines().find(|line| line.to_ascii_lowercase().starts_with(&of))?;
        Some(line["set-cookie: ".len()..].split(';').next()?.to_owned())
    }
}

/// Everything that comes until the other side closes.
pub fn rest(stream: &mut TcpStream) -> Told {
    let mut bytes = Vec::new();
    // A connection that is reset has said what it had to say.
    let _ = stream.read_to_end(&mut bytes);
    let text = String::from_utf8_lossy(&bytes).into_owned();
    let (head, body) = text.split_once("\r\n\r\n").unwrap_or((&text, ""));
    let status = head.split(' ').nth(1).and_then(|status| status.parse().ok()).unwrap_or(0);
    Told { status, head: head.to_owned(), body: body.to_owned() }
}

/// A request from 127.0.0.`last` with further header lines.
pub fn ask(last: u8, to: SocketAddr, line: &str, headers: &[&str], body: &str) -> Told {
    let mut stream = connect_from(last, to);
    let mut text = format!("{line} HTTP/1.1\r\nconnection: close\r\ncontent-length: {}\r\n", body.len());
    if !headers.iter().any(|header| header.to_ascii_lowercase().starts_with("host:")) {
        text.push_str(&format!("host: {to}\r\n"));
    }
    for header in headers {
        text.push_str(&format!("{header}\r\n"));
    }
    stream.write_all(format!("{text}\r\n{body}").as_bytes()).expect("asked");
    rest(&mut stream)
}

pub const FORM: &str = "content-type: application/x-www-form-urlencoded";

/// The status of a try to sign in with `pin`.
pub fn sign_in(last: u8, to: SocketAddr, pin: &str, cookie: &str) -> Told {
    ask(last, to, "POST /sign-in", &[FORM, &format!("cookie: {cookie}")], &format!("pin={pin}"))
}
