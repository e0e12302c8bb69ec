//! A seller's hands: keys and a finger, as the browser itself gets them (W3C WebDriver, section 17).

use std::{
    thread,
    time::{Duration, Instant},
};

use serde_json::{Value, json};

use crate::driver::Browser;

/// Keys without a letter (W3C WebDriver, section 17.4.2).
pub const ENTER: char = '\u{E007}';
pub const DOWN: char = '\u{E015}';

impl Browser {
    fn act(&self, actions: Value) {
        self.command("/actions", &json!({"actions": actions})).expect("done");
    }

    /// Presses keys, wherever the focus is.
    pub fn keys(&self, keys: &[char]) {
        let strokes: Vec<Value> = keys
            .iter()
            .flat_map(|key| ["keyDown", "keyUp"].map(|kind| json!({"type": kind, "value": key.to_string()})))
            .collect();
        self.act(json!([{"type": "key", "id": "keyboard", "actions": strokes}]));
    }

    /// Brings the pointer over the middle of an element, without scrolling.
    pub fn point_at(&self, css: &str) {
        let (x, y) = self.middle_of(css);
        self.act(json!([{"type": "pointer", "id": "hand", "parameters": {"pointerType": "mouse"},
            "actions": [{"type": "pointerMove", "duration": 0, "x": x, "y": y}]}]));
    }

    /// Touches the same place several times in a row.
    pub fn touch_times(&self, css: &str, times: usize) {
        let (x, y) = self.middle_of(css);
        let mut actions = vec![json!({"type": "pointerMove", "duration": 0, "x": x, "y": y})];
        for _ in 0..times {
            actions.push(json!({"type": "pointerDown", "button": 0}));
            actions.push(json!({"type": "pointerUp", "button": 0}));
            actions.push(json!({"type": "pause", "duration": 90}));
        }
        self.act(
            json!([{"type": "pointer", "id": "hand", "parameters": {"pointerType": "mouse"}, "actions": actions}]),
        );
    }

    fn middle_of(&self, css: &str) -> (i64, i64) {
        let place = self.run(&format!(
            "const box = document.querySelector({}).getBoundingClientRect();
             return [Math.round(box.left + box.width / 2), Math.round(box.top + box.height / 2)]",
            Value::from(css)
        ));
        (place[0].as_i64().expect("a place"), place[1].as_i64().expect("a place"))
    }

    /// What has the focus, in words: its label or text, and its value.
    pub fn focus(&self) -> String {
        let told = self.run(
            "const one = document.activeElement;
             return [one.tagName, one.id, one.getAttribute('aria-label') || one.textContent.trim().slice(0, 30), one.value].join('|')",
        );
        told.as_str().expect("words").to_owned()
    }

    /// Counts from now on how often the page asks for itself.
    pub fn count_renewals(&self) {
        self.run(
            "if (!window.theirFetch) {
               window.theirFetch = window.fetch;
               window.fetch = async (address, options) => {
                 const answer = await window.theirFetch(address, options);
                 if (String(address) === location.href) setTimeout(() => { window.renewals += 1; }, 150);
                 return answer;
               };
             }
             window.renewals = 0",
        );
    }

    /// Waits longer than a page may usually take: a time limit has to pass first.
    pub fn wait_long_until(&self, script: &str) {
        let began = Instant::now();
        while self.run(script) != true {
            assert!(began.elapsed() < Duration::from_secs(40), "{script}");
            thread::sleep(Duration::from_millis(100));
        }
    }

    /// Waits until it has done so.
    pub fn wait_for_renewal(&self) {
        self.wait("return window.renewals > 0");
    }
}
