//! A small client of a browser's remote control (W3C WebDriver, with Chromium's own command for screen sizes).

use std::{
    cell::Cell,
    env,
    io::{BufRead, BufReader},
    path::{Path, PathBuf},
    process::{Child, Command, Stdio},
    sync::{Mutex, PoisonError},
    thread,
    time::{Duration, Instant},
};

use serde_json::{Value, json};
use tempfile::TempDir;
use ureq::Agent;

/// The key under which an element is named (W3C WebDriver, section 12).
const ELEMENT: &str = "element-6066-11e4-a52e-4f735466cecf";
/// What a page may take to show what it should.
const PATIENCE: Duration = Duration::from_secs(20);
/// What a browser may take to start, on a machine that has not read it from disk yet, and to answer while others start.
const TO_ANSWER: Duration = Duration::from_secs(120);
/// So near to the last touch, in pixels, a page does not take one for a moment where something new has come to lie there.
const AS_NEAR_PX: f64 = 48.0;
/// That moment and a little more, which every hand takes.
const A_MOMENT: Duration = Duration::from_millis(700);
/// Browsers start one after the other: several at once on two cores keep each other waiting.
static STARTING: Mutex<()> = Mutex::new(());

/// A Chromium without a window; gone with this value.
pub struct Browser {
    agent: Agent,
    session: String,
    driver: Child,
    /// Where the last touch was.
    touched: Cell<(f64, f64)>,
    _profile: TempDir,
}

fn on_path(names: &[&str]) -> Option<PathBuf> {
    let path = env::var_os("PATH")?;
    names.iter().find_map(|name| env::split_paths(&path).map(|dir| dir.join(name)).find(|file| file.is_file()))
}

impl Browser {
    /// Starts one; `None` where none is installed.
    pub fn start(agent: Agent) -> Option<Self> {
        let chromium = on_path(&["chromium", "chromium-browser", "google-chrome"])?;
        let _alone = STARTING.lock().unwrap_or_else(PoisonError::into_inner);
        let mut driver = Command::new(on_path(&["chromedriver"])?)
            .arg("--port=0")
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("chromedriver starts");
        let lines = BufReader::new(driver.stdout.take().expect("its output")).lines();
        let port = lines
            .map_while(Result::ok)
            .find_map(|line| line.split("successfully on port ").nth(1)?.trim_end_matches('.').parse::<u16>().ok());
        let url = format!("http://127.0.0.1:{}", port.expect("chromedriver names its port"));
        let profile = tempfile::tempdir().expect("a temporary folder");
        let arguments = [
            "--headless=new",
            "--no-sandbox",
            "--disable-gpu",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--disable-dev-shm-usage",
            &format!("--user-data-dir={}", profile.path().display()),
        ];
        let wanted = json!({"capabilities": {"alwaysMatch": {
            "browserName": "chrome",
            "goog:chromeOptions": {"binary": chromium, "args": arguments},
            "goog:loggingPrefs": {"browser": "ALL"},
        }}});
        let request = agent.post(format!("{url}/session")).config().timeout_global(Some(TO_ANSWER)).build();
        let mut answer = request.send_json(wanted).expect("a session");
        let answer: Value = answer.body_mut().read_json().expect("a session");
        let id = answer["value"]["sessionId"].as_str().unwrap_or_else(|| panic!("no session: {answer}"));
        Some(Self {
            session: format!("{url}/session/{id}"),
            agent,
            driver,
            touched: Cell::default(),
            _profile: profile,
        })
    }

    pub fn command(&self, path: &str, body: &Value) -> Result<Value, String> {
        let request = self.agent.post(format!("{}{path}", self.session));
        let request = request.config().timeout_global(Some(TO_ANSWER)).build();
        let mut answer = request.send_json(body).map_err(|error| error.to_string())?;
        let value: Value =
            answer.body_mut().with_config().limit(64 << 20).read_json().map_err(|error| error.to_string())?;
        match value["value"]["error"].as_str() {
            Some(error) => Err(format!("{error}: {}", value["value"]["message"])),
            None => Ok(value["value"].clone()),
        }
    }

    /// Makes the screen `width` × `height` logical pixels, as a phone's where it is narrow.
    pub fn resize(&self, width: u32, height: u32) {
        let size = json!({"width": width, "height": height, "deviceScaleFactor": 1, "mobile": width < 600});
        let body = json!({"cmd": "Emulation.setDeviceMetricsOverride", "params": size});
        self.command("/goog/cdp/execute", &body).expect("another screen");
    }

    /// Pages opened from now on run no script of their own.
    pub fn without_script(&self) {
        let body = json!({"cmd": "Emulation.setScriptExecutionDisabled", "params": {"value": true}});
        self.command("/goog/cdp/execute", &body).expect("no script");
    }

    pub fn open(&self, url: &str) {
        self.command("/url", &json!({"url": url})).expect("the page opens");
    }

    /// The result of a script's `return`.
    pub fn run(&self, script: &str) -> Value {
        self.command("/execute/sync", &json!({"script": script, "args": []})).expect(script)
    }

    /// Tries until it works: pages renew themselves, so an element may be gone between finding and touching it.
    fn until<T>(&self, what: &str, mut attempt: impl FnMut() -> Result<T, String>) -> T {
        let started = Instant::now();
        loop {
            match attempt() {
                Ok(done) => return done,
                Err(error) if started.elapsed() > PATIENCE => {
                    let page = self.run("return location.href + '\\n' + document.body.innerText");
                    panic!("{what}: {error}\n{}", page.as_str().unwrap_or_default());
                }
                Err(_) => thread::sleep(Duration::from_millis(40)),
            }
        }
    }

    fn find(&self, css: &str) -> Result<String, String> {
        let found = self.command("/element", &json!({"using": "css selector", "value": css}))?;
        found[ELEMENT].as_str().map(str::to_owned).ok_or_else(|| format!("no {css}"))
    }

    pub fn click(&self, css: &str) {
        self.until(&format!("a touch on {css}"), || {
            let element = self.find(css)?;
            // The bars at the top and bottom of a phone's screen would take the touch.
            let centre = "arguments[0].scrollIntoView({block: 'center'});
                const box = arguments[0].getBoundingClientRect();
                return [box.x + box.width / 2, box.y + box.height / 2];";
            let at = self.command("/execute/sync", &json!({"script": centre, "args": [{ELEMENT: element}]}))?;
            let at = (at[0].as_f64().unwrap_or_default(), at[1].as_f64().unwrap_or_default());
            let before = self.touched.replace(at);
            if (at.0 - before.0).hypot(at.1 - before.1) < AS_NEAR_PX {
                thread::sleep(A_MOMENT);
            }
            self.command(&format!("/element/{element}/click"), &json!({})).map(|_| ())
        });
    }

    pub fn fill(&self, css: &str, text: &str) {
        self.until(&format!("typing into {css}"), || {
            let element = self.find(css)?;
            self.command(&format!("/element/{element}/clear"), &json!({}))?;
            self.command(&format!("/element/{element}/value"), &json!({"text": text})).map(|_| ())
        });
    }

    /// Chooses a file in a file field, as a phone's camera would give it.
    pub fn choose_file(&self, css: &str, path: &Path) {
        self.until(&format!("a file for {css}"), || {
            let element = self.find(css)?;
            self.command(&format!("/element/{element}/value"), &json!({"text": path.display().to_string()})).map(|_| ())
        });
    }

    /// Draws a finger over an element, from one place to another, both as shares of its width and height.
    pub fn drag(&self, css: &str, from: (f64, f64), to: (f64, f64)) {
        let place = "const one = document.querySelector(arguments[0]);
            one.scrollIntoView({block: 'center'});
            const box = one.getBoundingClientRect();
            return [box.x, box.y, box.width, box.height];";
        let found = self.command("/execute/sync", &json!({"script": place, "args": [css]})).expect(css);
        let [x, y, width, height] = [0, 1, 2, 3].map(|i| found[i].as_f64().unwrap_or_default());
        let at = |(h, v): (f64, f64)| {
            json!({"type": "pointerMove", "duration": 60, "origin": "viewport",
            "x": (x + h * width).round() as i64, "y": (y + v * height).round() as i64})
        };
        let half = (f64::midpoint(from.0, to.0), f64::midpoint(from.1, to.1));
        let steps = [
            at(from),
            json!({"type": "pointerDown", "button": 0}),
            at(half),
            at(to),
            json!({"type": "pointerUp", "button": 0}),
        ];
        let finger =
            json!({"type": "pointer", "id": "finger", "parameters": {"pointerType": "touch"}, "actions": steps});
        self.command("/actions", &json!({"actions": [finger]})).expect("a finger");
    }

    /// Waits until the script returns true.
    pub fn wait(&self, script: &str) {
        self.until(script, || match self.command("/execute/sync", &json!({"script": script, "args": []}))? {
            Value::Bool(true) => Ok(()),
            other => Err(other.to_string()),
        });
    }

    /// Waits until the page's text has `words`.
    pub fn wait_for(&self, words: &str) {
        self.wait(&format!("return document.body.innerText.includes({})", Value::from(words)));
    }

    /// The screen as a PNG file, in base64.
    pub fn screenshot(&self) -> String {
        let url = format!("{}/screenshot", self.session);
        let mut answer = self.agent.get(url).call().expect("a picture");
        let value: Value = answer.body_mut().with_config().limit(64 << 20).read_json().expect("a picture");
        value["value"].as_str().expect("a picture").to_owned()
    }

    /// What the browser complained of since the last question.
    pub fn complaints(&self) -> Vec<String> {
        let entries = self.command("/se/log", &json!({"type": "browser"})).expect("the log");
        let entries = entries.as_array().cloned().unwrap_or_default();
        entries.iter().map(|entry| entry["message"].as_str().unwrap_or_default().to_owned()).collect()
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        // The driver closes its browser on the way out; without an answer it is ended all the same.
        let _ = self.agent.delete(&self.session).call();
        let _ = self.driver.kill();
        let _ = self.driver.wait();
    }
}
