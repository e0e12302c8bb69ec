//! In the middle of the rush a tablet is released, a stranger's is paired, and the first one is paired again.

use std::{
    sync::Mutex,
    thread,
    time::{Duration, Instant},
};

use chatelaine::link::{Pairing, wire::PairRequest};

use crate::{kit::agent, sellers::Browser, tablets::Tablet};

/// The digits of the tablets.
pub struct Released {
    /// Of the one that was released.
    pub digit: u8,
    /// Of the stranger's that was paired while that rested.
    pub strangers: u8,
}

/// A pairing code, unless the desk is away just now.
fn code(browser: &mut Browser) -> Option<String> {
    browser.post("/kiosks/code", &[]);
    let page = browser.get("/kiosks")?;
    let code = page.split("class=\"code\">").nth(1)?.split('<').next()?;
    Some(code.to_owned())
}

/// Releases the second tablet after `wait`; however often the desk or the tablet are killed meanwhile, it is paired again.
pub fn release_and_pair(mut browser: Browser, tablets: &Mutex<Vec<Tablet>>, wait: Duration) -> Released {
    thread::sleep(wait);
    let digit = tablets.lock().expect("tablets")[1].digit;
    let end = Instant::now() + Duration::from_secs(60);
    let in_time = || assert!(Instant::now() < end, "the tablet could not be paired again");
    while !browser.post(&format!("/kiosks/{digit}/release"), &[]) {
        in_time();
    }
    let strangers = loop {
        in_time();
        let Some(code) = code(&mut browser) else { continue };
        if let Some(pairing) = pair_stranger(browser.url(), code) {
            break pairing.digit;
        }
    };
    while tablets.lock().expect("tablets")[1].guests().paired.is_empty() {
        in_time();
        if let Some(code) = code(&mut browser) {
            tablets.lock().expect("tablets")[1].type_code(&code);
            thread::sleep(Duration::from_millis(1500));
        }
    }
    Released { digit, strangers }
}

fn pair_stranger(url: &str, code: String) -> Option<Pairing> {
    let request = agent().post(format!("{url}/link/pair")).send_json(PairRequest { code, key: Some("5".repeat(64)) });
    request.ok().filter(|answer| answer.status() == 200)?.body_mut().read_json().ok()
}
