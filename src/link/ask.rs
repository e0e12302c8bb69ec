//! One question to the desk.

use std::time::Duration;

use serde::{Serialize, de::DeserializeOwned};

use super::{
    Pairing, files,
    talk::{DELIVERY_TIMEOUT, Shared, lock},
    wire::PairRequest,
};

/// Why the desk gave no answer.
#[derive(Debug)]
pub(super) enum Unanswered {
    NotPaired,
    Away(String),
    Status(u16),
}

impl Shared {
    pub(super) fn ask<T: DeserializeOwned>(
        &self,
        path: &str,
        body: Option<&impl Serialize>,
        timeout: Duration,
    ) -> Result<T, Unanswered> {
        let pairing = lock(&self.pairing).clone().ok_or(Unanswered::NotPaired)?;
        let away = |error: ureq::Error| Unanswered::Away(error.to_string());
        let url = format!("{}{path}", pairing.desk);
        let key = format!("Bearer {}", pairing.key);
        let agent = agent(timeout);
        let mut response = match body {
            Some(body) => agent.post(&url).header("authorization", &key).send_json(body),
            None => agent.get(&url).header("authorization", &key).call(),
        }
        .map_err(away)?;
        match response.status().as_u16() {
            200 => response.body_mut().with_config().limit(64 * 1024 * 1024).read_json().map_err(away),
            status => Err(Unanswered::Status(status)),
        }
    }

    pub(super) fn pair(&self, desk: &str, code: String) -> Result<u8, String> {
        let desk = desk_url(desk);
        let mut response =
            agent(DELIVERY_TIMEOUT).post(format!("{desk}/link/pair")).send_json(&PairRequest { code }).map_err(
                |error| format!("no desk answers at {desk} ({error}); compare the address with the desk's page"),
            )?;
        if response.status() != 200 {
            return Err("the desk does not know this code; ask for a new one on its Kiosks page".into());
        }
        let mut pairing: Pairing =
            response.body_mut().read_json().map_err(|error| format!("{desk} does not answer as a desk ({error})"))?;
        // The address that was reached is the one that works from here.
        pairing.desk = desk;
        files::write_json(&self.dir.join("pairing.json"), &pairing)
            .map_err(|error| format!("the pairing could not be written to this tablet's disk ({error})"))?;
        let digit = pairing.digit;
        *lock(&self.pairing) = Some(pairing);
        self.outbox_changed.notify_all();
        Ok(digit)
    }
}

pub(super) fn agent(timeout: Duration) -> ureq::Agent {
    ureq::Agent::config_builder()
        .timeout_connect(Some(Duration::from_millis(1500)))
        .timeout_global(Some(timeout))
        .http_status_as_error(false)
        .build()
        .new_agent()
}

/// `192.168.4.1` typed on a tablet means `http://192.168.4.1:7345`.
fn desk_url(typed: &str) -> String {
    let typed = typed.trim().trim_end_matches('/');
    let (scheme, host) = typed.split_once("://").unwrap_or(("http", typed));
    let has_port = host.rsplit_once(':').is_some_and(|(_, port)| port.bytes().all(|b| b.is_ascii_digit()));
    if has_port { format!("{scheme}://{host}") } else { format!("{scheme}://{host}:{}", super::DESK_PORT) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_address_as_a_seller_types_it() {
        for (typed, url) in [
            ("192.168.4.1", "http://192.168.4.1:7345"),
            (" 192.168.4.1:8000/ ", "http://192.168.4.1:8000"),
            ("http://desk.local:7345", "http://desk.local:7345"),
        ] {
            assert_eq!(desk_url(typed), url);
        }
    }
}
