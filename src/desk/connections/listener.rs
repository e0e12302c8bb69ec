//! The desk's socket: each new connection is let in, or turned away.

use std::{io, net::SocketAddr, sync::Arc, time::Duration};

use axum::{
    extract::connect_info::Connected,
    serve::{IncomingStream, Listener},
};
use tokio::net::TcpListener;

use super::{
    admission::Admission,
    caller::{Caller, is_here},
    timed_stream::{TimedStream, turn_away},
    visit::Visit,
};

/// The desk's socket with all its connections.
pub(in crate::desk) struct GuardedListener {
    listener: TcpListener,
    admission: Arc<Admission>,
}

impl GuardedListener {
    /// Guards the connections of `listener`.
    pub(in crate::desk) fn new(listener: TcpListener) -> Self {
        Self { listener, admission: Arc::default() }
    }
}

impl Listener for GuardedListener {
    type Io = TimedStream;
    type Addr = Caller;

    async fn accept(&mut self) -> (TimedStream, Caller) {
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
            match self.admission.let_in(ip) {
                Some(visit) => {
                    let is_here = is_here(ip, stream.local_addr().ok().map(|own| own.ip()));
                    let caller = Caller { ip, is_here, visit: Arc::clone(&visit) };
                    return (TimedStream::new(stream, visit, Arc::clone(&self.admission)), caller);
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

impl Connected<IncomingStream<'_, GuardedListener>> for Caller {
    fn connect_info(stream: IncomingStream<'_, GuardedListener>) -> Self {
        stream.remote_addr().clone()
    }
}
