//! Under which numbers others in the network reach this machine.

use std::net::{IpAddr, Ipv4Addr, UdpSocket};

/// The numbers that others in a network may reach, the likeliest first: that of the network with a way on, if there is one,
/// then those of the others. A laptop that is an access point itself has no way on, and is reached all the same.
pub(super) fn outward() -> Vec<IpAddr> {
    let all = if_addrs::get_if_addrs().unwrap_or_else(|error| {
        tracing::warn!("the machine's numbers in its networks can't be asked for: {error}");
        Vec::new()
    });
    in_order(with_a_way_on(), all.into_iter().filter(|one| one.is_oper_up()).map(|one| one.ip()))
}

/// The number that the system takes for what lies beyond its networks. Nothing is sent: choosing a peer only makes it choose.
fn with_a_way_on() -> Option<IpAddr> {
    let socket = UdpSocket::bind(("0.0.0.0", 0)).ok()?;
    // An address reserved for documentation (RFC 5737).
    socket.connect(("192.0.2.1", 9)).ok()?;
    Some(socket.local_addr().ok()?.ip())
}

/// Each number once. Only the older sort: every phone and tablet has one, and it is short enough to be typed.
fn in_order(first: Option<IpAddr>, others: impl Iterator<Item = IpAddr>) -> Vec<IpAddr> {
    let is_reached = |ip: &Ipv4Addr| !ip.is_loopback() && !ip.is_unspecified() && !ip.is_link_local();
    let fourth = |ip: IpAddr| match ip.to_canonical() {
        IpAddr::V4(ip) => Some(ip).filter(is_reached),
        IpAddr::V6(_) => None,
    };
    let mut others: Vec<Ipv4Addr> = others.filter_map(fourth).collect();
    // A network at a table is a private one.
    others.sort_by_key(|ip| (!ip.is_private(), *ip));
    let mut all: Vec<IpAddr> = Vec::new();
    for ip in first.and_then(fourth).into_iter().chain(others).map(IpAddr::V4) {
        if !all.contains(&ip) {
            all.push(ip);
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source of the private, link-local and documentation ranges: RFC 1918, RFC 3927, RFC 5737.
    #[test]
    fn what_a_network_reaches_comes_in_order() {
        let ips = |all: &[&str]| all.iter().map(|ip| ip.parse::<IpAddr>().unwrap()).collect::<Vec<_>>();
        let told =
            |first: Option<&str>, all: &[&str]| in_order(first.map(|ip| ip.parse().unwrap()), ips(all).into_iter());
        let access_point = ["127.0.0.1", "10.42.0.1", "fe80::1", "::1", "169.254.7.7"];
        assert_eq!(told(None, &access_point), ips(&["10.42.0.1"]), "without any way on");
        let both = ["10.42.0.1", "192.168.43.17", "203.0.113.5"];
        assert_eq!(told(Some("192.168.43.17"), &both), ips(&["192.168.43.17", "10.42.0.1", "203.0.113.5"]));
        assert_eq!(told(Some("127.0.0.1"), &[]), ips(&[]));
    }
}
