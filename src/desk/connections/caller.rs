//! Who asks.

use std::{
    net::{IpAddr, Ipv4Addr, Ipv6Addr},
    sync::Arc,
};

use axum::{
    extract::{ConnectInfo, FromRequestParts},
    http::{StatusCode, request::Parts},
};

use super::visit::Visit;
use crate::{desk::refusal::Refusal, lang::message};

/// The other side of a connection.
#[derive(Debug, Clone)]
pub(in crate::desk) struct Caller {
    /// The other side's address.
    pub ip: IpAddr,
    /// Whether it is the machine on which the desk runs.
    pub is_here: bool,
    /// The connection on which they ask.
    pub(super) visit: Arc<Visit>,
}

/// Whether `ip`, reached as `own`, is this machine: a browser here comes from 127.0.0.1 or ::1, or from the very address
/// that it asked.
pub(super) fn is_here(ip: IpAddr, own: Option<IpAddr>) -> bool {
    let ip = ip.to_canonical();
    ip == IpAddr::V4(Ipv4Addr::LOCALHOST)
        || ip == IpAddr::V6(Ipv6Addr::LOCALHOST)
        || own.is_some_and(|own| own.to_canonical() == ip)
}

impl<S: Sync> FromRequestParts<S> for Caller {
    type Rejection = Refusal;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Refusal> {
        let ConnectInfo(caller) = parts
            .extensions
            .get::<ConnectInfo<Self>>()
            .ok_or_else(|| Refusal::Said(StatusCode::INTERNAL_SERVER_ERROR, message!("refused-nobody")))?;
        Ok(caller.clone())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ip(last: u8) -> IpAddr {
        IpAddr::from([192, 168, 4, last])
    }

    #[test]
    fn this_machine_is_told_from_others() {
        let own = Some(ip(1));
        assert!(is_here(IpAddr::from([127, 0, 0, 1]), own) && is_here("::1".parse().unwrap(), own));
        assert!(is_here("::ffff:127.0.0.1".parse().unwrap(), own) && is_here(ip(1), own));
        assert!(!is_here(ip(2), own) && !is_here(IpAddr::from([127, 0, 0, 2]), own) && !is_here(ip(1), None));
    }
}
