//! One question to the desk.

use std::{io, path::Path, sync::atomic::Ordering, time::Duration};

use serde::{Serialize, de::DeserializeOwned};

use super::{
    News, PairError, Pairing, own_key,
    shared::{DELIVERY_TIMEOUT, Shared, lock},
    wire::{PairRefusal, PairRequest, Refused},
};
use crate::{disk::durable, quoting::one_line};

/// What a desk says when it refuses is not longer than this, in bytes.
const LONGEST_REASON: u64 = 64 * 1024;

/// Why the desk gave no answer.
#[derive(Debug)]
pub(super) enum Unanswered {
    NotPaired,
    /// The desk does not know the key.
    LetGo,
    Away(String),
    /// The desk refuses, with these words; none where it says nothing that reads.
    Status(u16, String),
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
            200 => {
                let answer = response.body_mut().with_config().limit(64 * 1024 * 1024).read_json().map_err(away)?;
                self.let_go_of(&pairing, false);
                Ok(answer)
            }
            401 => {
                self.let_go_of(&pairing, true);
                Err(Unanswered::LetGo)
            }
            status => {
                let told = response.body_mut().with_config().limit(LONGEST_REASON).read_json::<Refused>();
                Err(Unanswered::Status(status, told.map(|refused| one_line(&refused.reason)).unwrap_or_default()))
            }
        }
    }

    /// Notes whether the desk knows the key of `pairing`, also for the next start.
    fn let_go_of(&self, pairing: &Pairing, now: bool) {
        if lock(&self.pairing).as_ref() != Some(pairing) || self.let_go.swap(now, Ordering::Relaxed) == now {
            return;
        }
        let kept = if now { durable::write_json(&self.dir.join(LET_GO), pairing) } else { forget_let_go(&self.dir) };
        if let Err(error) = kept {
            tracing::warn!("whether the desk knows this kiosk could not be noted: {error}");
        }
        if now {
            tracing::warn!("the desk does not know this kiosk any more; pair it again");
        }
        self.tell(News::LetGo(now));
        self.outbox_changed.notify_all();
    }

    pub(super) fn pair(&self, desk: &str, code: String) -> Result<u8, PairError> {
        let desk = desk_url(desk);
        let disk = |error: io::Error| PairError::Disk(error.to_string());
        let key = own_key::own_key(&self.dir).map_err(disk)?;
        let mut request = agent(DELIVERY_TIMEOUT).post(format!("{desk}/link/pair"));
        if let Some(before) = lock(&self.pairing).as_ref() {
            request = request.header("authorization", format!("Bearer {}", before.key));
        }
        let mut response = request
            .send_json(&PairRequest { code, key: Some(key) })
            .map_err(|error| PairError::NotReached { desk: desk.clone(), reason: error.to_string() })?;
        let status = response.status().as_u16();
        let not_a_desk = |_| PairError::NotADesk { desk: desk.clone() };
        if status == 403 {
            return Err(match response.body_mut().read_json().map_err(not_a_desk)? {
                PairRefusal::WrongCode => PairError::WrongCode,
                PairRefusal::NoCode => PairError::NoCode,
                PairRefusal::Wait { seconds } => PairError::Wait { seconds },
                PairRefusal::NoDigit => PairError::NoDigit,
                PairRefusal::DeskFailed => PairError::DeskFailed,
            });
        }
        if status >= 500 {
            return Err(PairError::DeskFailed);
        }
        let mut pairing: Pairing = response.body_mut().read_json().map_err(not_a_desk)?;
        // The address that was reached is the one that works from here.
        pairing.desk = desk;
        durable::write_json(&self.dir.join("pairing.json"), &pairing)
            .and_then(|()| own_key::forget(&self.dir))
            .and_then(|()| forget_let_go(&self.dir))
            .map_err(disk)?;
        let digit = pairing.digit;
        *lock(&self.pairing) = Some(pairing);
        if self.let_go.swap(false, Ordering::Relaxed) {
            self.tell(News::LetGo(false));
        }
        lock(&self.tries).clear();
        self.outbox_changed.notify_all();
        Ok(digit)
    }
}

/// Kept beside the pairing that the desk does not know any more.
const LET_GO: &str = "let-go.json";

fn forget_let_go(dir: &Path) -> io::Result<()> {
    match durable::remove(&dir.join(LET_GO)) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error),
        _ => Ok(()),
    }
}

/// Whether the desk had let go of `pairing` when this kiosk ended.
pub(super) fn was_let_go(dir: &Path, pairing: Option<&Pairing>) -> bool {
    let of: Option<Pairing> = durable::read_json(&dir.join(LET_GO));
    of.is_some_and(|of| pairing.is_some_and(|pairing| pairing.key == of.key))
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
