//! A connection that is closed when it keeps silent, or does not fetch its answer, for too long.

use std::{
    io,
    pin::Pin,
    sync::Arc,
    task::{Context, Poll, ready},
    time::{Duration, Instant},
};

use tokio::{
    io::{AsyncRead, AsyncWrite, ReadBuf},
    net::TcpStream,
    time::{Sleep, sleep},
};

use super::{admission::Admission, visit::Visit};

/// An answer that is not fetched for this long is given up.
pub(super) const FETCH: Duration = Duration::from_secs(20);

/// What is told whoever is turned away.
const TURNED_AWAY: &[u8] = b"HTTP/1.1 503 Service Unavailable\r\ncontent-type: text/plain\r\n\
    content-length: 50\r\nretry-after: 5\r\nconnection: close\r\n\r\nToo many connections to the desk; try again later.";

/// Says why, as far as that goes without waiting.
pub(super) fn turn_away(stream: &TcpStream) {
    // What has come already is read first: a connection closed over it would take the words along.
    let mut unread = [0; 4096];
    let _ = stream.try_read(&mut unread);
    let _ = stream.try_write(TURNED_AWAY);
}

/// A connection with the time it has.
pub(in crate::desk) struct TimedStream {
    stream: TcpStream,
    visit: Arc<Visit>,
    admission: Arc<Admission>,
    reading: Pin<Box<Sleep>>,
    writing: Pin<Box<Sleep>>,
    stuck: bool,
}

impl TimedStream {
    /// The connection of `visit`, which leaves `admission` when it ends.
    pub(super) fn new(stream: TcpStream, visit: Arc<Visit>, admission: Arc<Admission>) -> Self {
        let timer = || Box::pin(sleep(Duration::ZERO));
        Self { stream, visit, admission, reading: timer(), writing: timer(), stuck: false }
    }

    /// Whether its time is over or it was turned away.
    fn is_over(&mut self, cx: &mut Context<'_>) -> Option<io::Error> {
        let deadline = self.visit.deadline(cx.waker());
        if self.visit.is_turned_away() && deadline.is_some() {
            turn_away(&self.stream);
            return Some(io::ErrorKind::ConnectionAborted.into());
        }
        let deadline = deadline?;
        if deadline <= Instant::now() {
            return Some(io::ErrorKind::TimedOut.into());
        }
        self.reading.as_mut().reset(deadline.into());
        // Only so that it is looked at again then.
        let _ = self.reading.as_mut().poll(cx);
        None
    }

    /// The same for an answer: it has to be fetched bit by bit.
    fn fetched<T>(&mut self, cx: &mut Context<'_>, wrote: Poll<io::Result<T>>) -> Poll<io::Result<T>> {
        if wrote.is_ready() {
            self.stuck = false;
            self.visit.written();
            return wrote;
        }
        if !self.stuck {
            self.stuck = true;
            self.writing.as_mut().reset((Instant::now() + FETCH).into());
        }
        ready!(self.writing.as_mut().poll(cx));
        Poll::Ready(Err(io::ErrorKind::TimedOut.into()))
    }
}

impl Drop for TimedStream {
    fn drop(&mut self) {
        self.admission.left(&self.visit);
    }
}

impl AsyncRead for TimedStream {
    fn poll_read(mut self: Pin<&mut Self>, cx: &mut Context<'_>, buf: &mut ReadBuf<'_>) -> Poll<io::Result<()>> {
        if let Some(error) = self.is_over(cx) {
            return Poll::Ready(Err(error));
        }
        Pin::new(&mut self.stream).poll_read(cx, buf)
    }
}

impl AsyncWrite for TimedStream {
    fn poll_write(mut self: Pin<&mut Self>, cx: &mut Context<'_>, buf: &[u8]) -> Poll<io::Result<usize>> {
        let wrote = Pin::new(&mut self.stream).poll_write(cx, buf);
        self.fetched(cx, wrote)
    }

    fn poll_flush(mut self: Pin<&mut Self>, cx: &mut Context<'_>) -> Poll<io::Result<()>> {
        Pin::new(&mut self.stream).poll_flush(cx)
    }

    fn poll_shutdown(mut self: Pin<&mut Self>, cx: &mut Context<'_>) -> Poll<io::Result<()>> {
        Pin::new(&mut self.stream).poll_shutdown(cx)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_words_are_as_long_as_they_say() {
        let text = std::str::from_utf8(TURNED_AWAY).unwrap();
        let (head, body) = text.split_once("\r\n\r\n").unwrap();
        assert!(head.contains(&format!("content-length: {}\r\n", body.len())), "{}", body.len());
    }
}
