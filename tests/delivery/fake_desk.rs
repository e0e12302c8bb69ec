//! A desk that answers as a test tells it to: for answers that a real one gives only when something is broken.

use std::{
    io::{BufRead, BufReader, Read, Write},
    net::{SocketAddr, TcpListener, TcpStream},
    sync::{
        Arc,
        atomic::{AtomicBool, Ordering},
    },
    thread,
};

/// What is asked: method and path, the key of who asks, and the body.
pub struct Asked<'a> {
    pub line: &'a str,
    pub key: Option<&'a str>,
    pub body: &'a [u8],
}

/// A status with a JSON body; no answer at all closes the connection.
pub type Told = Option<(u16, String)>;

/// Answers until it is dropped.
pub struct FakeDesk {
    pub addr: SocketAddr,
    ended: Arc<AtomicBool>,
}

impl FakeDesk {
    pub fn start(answer: impl Fn(&Asked) -> Told + Send + Sync + 'static) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").expect("a port");
        let addr = listener.local_addr().expect("an address");
        let (ended, answer) = (Arc::new(AtomicBool::new(false)), Arc::new(answer));
        let end = Arc::clone(&ended);
        thread::spawn(move || {
            for stream in listener.incoming().map_while(Result::ok) {
                if end.load(Ordering::Relaxed) {
                    return;
                }
                let answer = Arc::clone(&answer);
                thread::spawn(move || serve(stream, &*answer));
            }
        });
        Self { addr, ended }
    }
}

impl Drop for FakeDesk {
    fn drop(&mut self) {
        self.ended.store(true, Ordering::Relaxed);
        let _ = TcpStream::connect(self.addr);
    }
}

/// One request on each connection: the least of HTTP/1.1 (RFC 9112) that a client of ours needs.
fn serve(stream: TcpStream, answer: &dyn Fn(&Asked) -> Told) -> Option<()> {
    let mut reader = BufReader::new(stream.try_clone().ok()?);
    let mut line = String::new();
    reader.read_line(&mut line).ok()?;
    let (mut length, mut key) = (0, None);
    loop {
        let mut header = String::new();
        reader.read_line(&mut header).ok()?;
        if header.to_ascii_lowercase().starts_with("authorization:") {
            key = header.split_once("Bearer ").map(|(_, key)| key.trim().to_owned());
        }
        let header = header.trim().to_ascii_lowercase();
        if header.is_empty() {
            break;
        }
        if let Some(value) = header.strip_prefix("content-length:") {
            length = value.trim().parse().ok()?;
        }
    }
    let mut body = vec![0; length];
    reader.read_exact(&mut body).ok()?;
    let (status, text) = answer(&Asked { line: line.trim(), key: key.as_deref(), body: &body })?;
    let head =
        format!("HTTP/1.1 {status} Told\r\ncontent-type: application/json\r\ncontent-length: {}\r\n", text.len());
    let mut stream = stream;
    stream.write_all(format!("{head}connection: close\r\n\r\n{text}").as_bytes()).ok()
}
