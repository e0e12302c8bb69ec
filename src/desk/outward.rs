//! Under which number others in the network reach this machine.

use std::net::{IpAddr, UdpSocket};

/// This machine's number in its network. Nothing is sent: choosing a peer only makes the system choose its own address.
pub(super) fn outward() -> Option<IpAddr> {
    let socket = UdpSocket::bind(("0.0.0.0", 0)).ok()?;
    // An address reserved for documentation (RFC 5737).
    socket.connect(("192.0.2.1", 9)).ok()?;
    Some(socket.local_addr().ok()?.ip()).filter(|ip| !ip.is_loopback() && !ip.is_unspecified())
}
