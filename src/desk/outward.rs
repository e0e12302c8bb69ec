//! Under which numbers others in the network reach this machine.

use std::net::{IpAddr, Ipv4Addr, SocketAddr, UdpSocket};

use axum::http::{HeaderMap, header};

use super::state::DeskState;

/// How others reach this desk.
pub(super) enum Reach {
    /// By these addresses, the likeliest first.
    Network(Vec<String>),
    /// Not at all: the address on this machine.
    Here(String),
}

impl Reach {
    /// By what an asking browser used, and by what the machine's networks say.
    pub(super) fn of(desk: &DeskState, headers: &HeaderMap) -> Self {
        let bound = desk.addr;
        if !bound.ip().is_unspecified() {
            let address = format!("http://{bound}");
            return if bound.ip().is_loopback() { Self::Here(address) } else { Self::Network(vec![address]) };
        }
        // What this browser used works for others, unless it is this machine's name for itself.
        let used = headers.get(header::HOST).and_then(|host| host.to_str().ok());
        let number = |host: &str| host.parse::<SocketAddr>().ok();
        let used =
            used.filter(|host| !host.starts_with("localhost") && !number(host).is_some_and(|at| at.ip().is_loopback()));
        let outward = outward().into_iter().map(|ip| SocketAddr::new(ip, bound.port()).to_string());
        let mut hosts: Vec<String> = Vec::new();
        for host in used.map(str::to_owned).into_iter().chain(outward) {
            if !hosts.contains(&host) {
                hosts.push(host);
            }
        }
        // A phone finds a number in its network, and not always a name.
        hosts.sort_by_key(|host| number(host).is_none());
        if hosts.is_empty() {
            return Self::Here(format!("http://localhost:{}", bound.port()));
        }
        Self::Network(hosts.into_iter().map(|host| format!("http://{host}")).collect())
    }

    /// The likeliest address for others in the network.
    pub(super) fn likeliest(self) -> Option<String> {
        match self {
            Self::Network(all) => all.into_iter().next(),
            Self::Here(_) => None,
        }
    }
}

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
