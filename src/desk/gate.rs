//! Who may be connected, and for how long without asking anything: strangers that only hold connections open keep
//! nobody else out.
//!
//! Somebody new always comes in while there is a connection that waits without saying anything: the one that has waited
//! longest goes, of the address that has most. It is told so (503, RFC 9110, section 15.6.4).

use std::{
    collections::HashMap,
    io,
    net::{IpAddr, Ipv4Addr, Ipv6Addr, SocketAddr},
    sync::{Arc, Mutex, MutexGuard, PoisonError},
    task::Waker,
    time::{Duration, Instant},
};

use axum::{
    body::Body,
    extract::{ConnectInfo, FromRequestParts, Request, connect_info::Connected},
    http::{HeaderValue, StatusCode, header, request::Parts},
    middleware::Next,
    response::{IntoResponse, Response},
    serve::{IncomingStream, Listener},
};
use tokio::net::{TcpListener, TcpStream};
use tokio_stream::StreamExt;

use super::{
    refusal::Refusal,
    watched::{FETCH, Watched},
};

/// Connections of one address: a laptop with twenty pages open needs fewer.
const PER_ADDRESS: usize = 64;
/// All connections. Some systems let a program have no more than 256 files open.
const IN_ALL: usize = 192;
/// A request's head has to be there within this.
const HEAD: Duration = Duration::from_secs(10);
/// A connection on which something was asked may rest this long until the next question.
const REST: Duration = Duration::from_secs(30);
/// A request's body has to be there within this.
const BODY: Duration = Duration::from_secs(15);
/// The longest body: a ticket with every drop of a large catalogue is smaller.
const LONGEST_BODY: usize = 256 * 1024;
/// A longer body is read, and thrown away, up to this.
const READ_AT_MOST: usize = 16 * 1024 * 1024;
/// What is told whoever is turned away.
pub(super) const TURNED_AWAY: &[u8] = b"HTTP/1.1 503 Service Unavailable\r\ncontent-type: text/plain\r\n\
    content-length: 50\r\nretry-after: 5\r\nconnection: close\r\n\r\nToo many connections to the desk; try again later.";

/// Who asks.
#[derive(Debug, Clone)]
pub(super) struct Caller {
    /// The other side's address.
    pub ip: IpAddr,
    /// Whether it is the machine on which the desk runs.
    pub is_here: bool,
    visit: Arc<Visit>,
}

/// Whether `ip`, reached as `own`, is this machine: a browser here comes from 127.0.0.1 or ::1, or from the very address
/// that it asked.
fn is_here(ip: IpAddr, own: Option<IpAddr>) -> bool {
    let ip = ip.to_canonical();
    ip == IpAddr::V4(Ipv4Addr::LOCALHOST)
        || ip == IpAddr::V6(Ipv6Addr::LOCALHOST)
        || own.is_some_and(|own| own.to_canonical() == ip)
}

/// What a connection is at.
#[derive(Debug, Clone, Copy)]
enum State {
    /// The head of a request has to come, or its answer be fetched, since then.
    Waiting { since: Instant, within: Duration },
    /// A request is being answered.
    Busy,
}

/// One connection.
#[derive(Debug)]
pub(super) struct Visit {
    ip: IpAddr,
    now: Mutex<(State, Option<Waker>)>,
    turned_away: std::sync::atomic::AtomicBool,
}

impl Visit {
    fn new(ip: IpAddr) -> Arc<Self> {
        let state = State::Waiting { since: Instant::now(), within: HEAD };
        Arc::new(Self { ip, now: Mutex::new((state, None)), turned_away: false.into() })
    }

    fn lock(&self) -> MutexGuard<'_, (State, Option<Waker>)> {
        self.now.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn waits_since(&self) -> Option<Instant> {
        match self.lock().0 {
            State::Waiting { since, .. } => Some(since),
            State::Busy => None,
        }
    }

    /// Until when something has to be read; `None` while a request is being answered. `waker` is woken when it is turned
    /// away.
    pub fn deadline(&self, waker: &Waker) -> Option<Instant> {
        let mut now = self.lock();
        now.1 = Some(waker.clone());
        match now.0 {
            State::Waiting { since, within } => Some(since + within),
            State::Busy => None,
        }
    }

    /// Some of the answer went out.
    pub fn written(&self) {
        if let State::Waiting { since, .. } = &mut self.lock().0 {
            *since = Instant::now();
        }
    }

    /// Whether it has to go.
    pub fn is_turned_away(&self) -> bool {
        self.turned_away.load(std::sync::atomic::Ordering::Relaxed)
    }

    fn turn_away(&self) {
        self.turned_away.store(true, std::sync::atomic::Ordering::Relaxed);
        if let Some(waker) = self.lock().1.take() {
            waker.wake();
        }
    }
}

/// The connections there are.
#[derive(Default)]
pub(super) struct Door {
    inside: Mutex<Vec<Arc<Visit>>>,
}

impl Door {
    fn lock(&self) -> MutexGuard<'_, Vec<Arc<Visit>>> {
        self.inside.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Lets `ip` in, and for that turns somebody away who only waits; `None` where everybody is being answered.
    fn let_in(&self, ip: IpAddr) -> Option<Arc<Visit>> {
        let mut inside = self.lock();
        let mut by_address: HashMap<IpAddr, usize> = HashMap::new();
        inside.iter().for_each(|visit| *by_address.entry(visit.ip).or_default() += 1);
        let is_full_for_it = by_address.get(&ip).is_some_and(|count| *count >= PER_ADDRESS);
        if is_full_for_it || inside.len() >= IN_ALL {
            let waiting = inside.iter().enumerate().filter(|(_, visit)| !is_full_for_it || visit.ip == ip);
            let (at, _) = waiting
                .filter_map(|(at, visit)| Some((at, (by_address.get(&visit.ip)?, visit.waits_since()?))))
                .min_by(|(_, (many, since)), (_, (others, later))| others.cmp(many).then(since.cmp(later)))?;
            inside.swap_remove(at).turn_away();
        }
        let visit = Visit::new(ip);
        inside.push(Arc::clone(&visit));
        Some(visit)
    }

    /// A connection has ended.
    pub fn left(&self, visit: &Arc<Visit>) {
        self.lock().retain(|other| !Arc::ptr_eq(other, visit));
    }
}

/// The desk's socket with its door.
pub(super) struct Gate {
    listener: TcpListener,
    door: Arc<Door>,
}

impl Gate {
    pub fn new(listener: TcpListener) -> Self {
        Self { listener, door: Arc::default() }
    }
}

impl Listener for Gate {
    type Io = Watched;
    type Addr = Caller;

    async fn accept(&mut self) -> (Watched, Caller) {
        loop {
            let (stream, addr) = match self.listener.accept().await {
                Ok(accepted) => accepted,
                Err(error) => {
                    // Usually somebody who is gone again; where files are short, a pause lets some be closed.
                    tracing::debug!("a connection could not be taken: {error}");
                    tokio::time::sleep(Duration::from_millis(50)).await;
                    continue;
                }
            };
            let ip = addr.ip().to_canonical();
            match self.door.let_in(ip) {
                Some(visit) => {
                    let is_here = is_here(ip, stream.local_addr().ok().map(|own| own.ip()));
                    let caller = Caller { ip, is_here, visit: Arc::clone(&visit) };
                    return (Watched::new(stream, visit, Arc::clone(&self.door)), caller);
                }
                None => turn_away(&stream),
            }
        }
    }

    fn local_addr(&self) -> io::Result<Caller> {
        let addr: SocketAddr = self.listener.local_addr()?;
        Ok(Caller { ip: addr.ip(), is_here: true, visit: Visit::new(addr.ip()) })
    }
}

/// Says why, as far as that goes without waiting.
pub(super) fn turn_away(stream: &TcpStream) {
    // What has come already is read first: a connection closed over it would take the words along.
    let mut unread = [0; 4096];
    let _ = stream.try_read(&mut unread);
    let _ = stream.try_write(TURNED_AWAY);
}

impl Connected<IncomingStream<'_, Gate>> for Caller {
    fn connect_info(stream: IncomingStream<'_, Gate>) -> Self {
        stream.remote_addr().clone()
    }
}

impl<S: Sync> FromRequestParts<S> for Caller {
    type Rejection = Refusal;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Refusal> {
        let ConnectInfo(caller) = parts
            .extensions
            .get::<ConnectInfo<Self>>()
            .ok_or_else(|| Refusal::Request(StatusCode::INTERNAL_SERVER_ERROR, "nobody knows who asks".into()))?;
        Ok(caller.clone())
    }
}

/// Waits for the request's body, which has to be small and in time, and keeps the connection from being turned away while
/// it is answered.
pub(super) async fn attend(caller: Caller, request: Request, next: Next) -> Response {
    let (parts, body) = request.into_parts();
    // A little longer, so that whoever is too slow is told so.
    caller.visit.lock().0 = State::Waiting { since: Instant::now(), within: BODY + FETCH };
    let mut response = match tokio::time::timeout(BODY, collect(body)).await {
        Ok(Ok(Some(bytes))) => {
            caller.visit.lock().0 = State::Busy;
            next.run(Request::from_parts(parts, Body::from(bytes))).await
        }
        Ok(Ok(None)) => closing(StatusCode::PAYLOAD_TOO_LARGE, "that is more than the desk takes at once"),
        Ok(Err(_)) => closing(StatusCode::BAD_REQUEST, "what was sent broke off"),
        Err(_) => closing(StatusCode::REQUEST_TIMEOUT, "what was sent did not arrive in time; send it again"),
    };
    // A stream of news ends only with its page.
    let streams = response.headers().get(header::CONTENT_TYPE).is_some_and(|kind| kind == "text/event-stream");
    if !streams {
        caller.visit.lock().0 = State::Waiting { since: Instant::now(), within: REST };
    }
    if caller.visit.is_turned_away() {
        response.headers_mut().insert(header::CONNECTION, HeaderValue::from_static("close"));
    }
    response
}

/// The body; `None` where it is too long. Then it is read on for a while all the same: who is still sending does not hear
/// the answer, and takes it for a broken line.
async fn collect(body: Body) -> Result<Option<Vec<u8>>, axum::Error> {
    let mut chunks = body.into_data_stream();
    let (mut bytes, mut length) = (Vec::new(), 0);
    while let Some(chunk) = chunks.next().await {
        let chunk = chunk?;
        length += chunk.len();
        if length > READ_AT_MOST {
            break;
        }
        if length <= LONGEST_BODY {
            bytes.extend_from_slice(&chunk);
        }
    }
    Ok((length <= LONGEST_BODY).then_some(bytes))
}

fn closing(status: StatusCode, words: &str) -> Response {
    let mut response = Refusal::Request(status, words.to_owned()).into_response();
    response.headers_mut().insert(header::CONNECTION, HeaderValue::from_static("close"));
    response
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ip(last: u8) -> IpAddr {
        IpAddr::from([192, 168, 4, last])
    }

    #[test]
    fn who_only_waits_makes_room_and_who_is_answered_stays() {
        let door = Door::default();
        let answered = door.let_in(ip(1)).unwrap();
        answered.lock().0 = State::Busy;
        let first = door.let_in(ip(2)).unwrap();
        let others: Vec<_> = (0..1000).map(|_| door.let_in(ip(2)).unwrap()).collect();
        assert!(first.is_turned_away() && others[0].is_turned_away() && !others[999].is_turned_away());
        assert!(!answered.is_turned_away());
        assert_eq!(door.lock().len(), PER_ADDRESS + 1);
        // Of many addresses the one that has most gives way, and only so many come in at all.
        let crowd: Vec<_> =
            (10..250).flat_map(|last| (0..3).map(move |_| last)).map(|last| door.let_in(ip(last))).collect();
        assert!(crowd.iter().all(Option::is_some));
        assert_eq!(door.lock().len(), IN_ALL);
        let of_two = door.lock().iter().filter(|visit| visit.ip == ip(2)).count();
        assert!(of_two < 5, "{of_two}");
        assert!(!answered.is_turned_away());
        door.left(&answered);
        assert_eq!(door.lock().len(), IN_ALL - 1);
    }

    #[test]
    fn where_everybody_is_answered_nobody_comes_in() {
        let door = Door::default();
        for last in 0..=255 {
            if let Some(visit) = door.let_in(ip(last)) {
                visit.lock().0 = State::Busy;
            }
        }
        assert!(door.let_in(ip(7)).is_none());
        assert_eq!(door.lock().len(), IN_ALL);
    }

    #[test]
    fn this_machine_is_told_from_others() {
        let own = Some(ip(1));
        assert!(is_here(IpAddr::from([127, 0, 0, 1]), own) && is_here("::1".parse().unwrap(), own));
        assert!(is_here("::ffff:127.0.0.1".parse().unwrap(), own) && is_here(ip(1), own));
        assert!(!is_here(ip(2), own) && !is_here(IpAddr::from([127, 0, 0, 2]), own) && !is_here(ip(1), None));
    }

    #[test]
    fn the_words_are_as_long_as_they_say() {
        let text = std::str::from_utf8(TURNED_AWAY).unwrap();
        let (head, body) = text.split_once("\r\n\r\n").unwrap();
        assert!(head.contains(&format!("content-length: {}\r\n", body.len())), "{}", body.len());
    }
}
