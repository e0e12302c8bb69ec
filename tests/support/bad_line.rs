//! A line between a tablet and its desk that fails in every way a network has.

use std::{
    io::{Read, Write},
    net::{SocketAddr, TcpListener, TcpStream},
    sync::{
        Arc, Mutex,
        atomic::{AtomicBool, Ordering},
    },
    thread,
    time::Duration,
};

use crate::random::Random;

/// Longer than a tablet waits for the answer to a delivery.
const LATE: Duration = Duration::from_millis(3200);

/// What was delivered over a line, to be said again later.
type Said = Arc<Mutex<Vec<Vec<u8>>>>;

/// A bad line to the desk: it cuts, it dawdles, it brings things late, and it says again what was said before.
pub struct BadLine {
    /// Where a tablet finds it.
    pub addr: SocketAddr,
}

impl BadLine {
    /// A line to `desk` that lasts until `end`.
    pub fn new(desk: SocketAddr, seed: u64, end: Arc<AtomicBool>) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").expect("a port");
        let addr = listener.local_addr().expect("an address");
        let said: Said = Arc::default();
        thread::spawn(move || {
            let mut random = Random(seed);
            for client in listener.incoming().flatten() {
                if end.load(Ordering::Relaxed) {
                    return;
                }
                let (kind, bytes) = (random.below(10), random.below(4000) as usize);
                // What was delivered before comes once more, after others that came later.
                if random.below(6) == 0 {
                    let said = said.lock().expect("what was said");
                    if !said.is_empty() {
                        say_again(desk, &said[random.of(said.len())]);
                    }
                }
                let Ok(server) = TcpStream::connect(desk) else { continue };
                let said = Arc::clone(&said);
                thread::spawn(move || carry(&client, &server, kind, bytes, &said));
            }
        });
        Self { addr }
    }
}

fn say_again(desk: SocketAddr, request: &[u8]) {
    if let Ok(mut server) = TcpStream::connect(desk) {
        let _ = server.write_all(request);
        let _ = server.set_read_timeout(Some(Duration::from_millis(300)));
        let _ = server.read(&mut [0; 1024]);
    }
}

/// Carries bytes both ways until one side ends; kinds 0 and 1 cut the way to the desk, 2 and 3 the way back, 4
/// dawdles, and 5 brings to the desk after what comes later, when nobody waits for the answer any more.
fn carry(client: &TcpStream, server: &TcpStream, kind: u64, cut_after: usize, said: &Said) {
    let limit = |is: &[u64]| if is.contains(&kind) { cut_after } else { usize::MAX };
    thread::scope(|scope| {
        scope.spawn(|| {
            let carried = pipe(client, server, limit(&[0, 1]), kind);
            // Of a guest who waits a repetition would send what that guest took back; those tickets are delivered once more
            // by the tablet itself where no answer came.
            let given = b"\"refuse_if_short\":false";
            let is_given = carried.windows(given.len()).any(|part| part == given);
            if carried.starts_with(b"POST /link/tickets") && is_given && carried.len() < 20_000 {
                said.lock().expect("what was said").push(carried);
            }
        });
        pipe(server, client, limit(&[2, 3]), 6);
    });
}

fn pipe(mut from: &TcpStream, mut to: &TcpStream, limit: usize, kind: u64) -> Vec<u8> {
    let mut carried = Vec::new();
    let mut bytes = [0; 2048];
    while let Ok(count @ 1..) = from.read(&mut bytes) {
        match kind {
            4 => thread::sleep(Duration::from_millis(120)),
            5 if carried.is_empty() => thread::sleep(LATE),
            _ => {}
        }
        let count = count.min(limit.saturating_sub(carried.len()));
        if count == 0 || to.write_all(&bytes[..count]).is_err() {
            break;
        }
        if carried.len() < 20_000 {
            carried.extend_from_slice(&bytes[..count]);
        }
    }
    // Cut, for both.
    let _ = (from.shutdown(std::net::Shutdown::Both), to.shutdown(std::net::Shutdown::Both));
    carried
}
