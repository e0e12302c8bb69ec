//! A small client of Firefox's own remote control, Marionette: JSON over a socket, each message behind its length. Source: the
//! protocol's page in Firefox's source documentation, "Marionette: Protocol" (from memory); its commands are those of W3C
//! WebDriver.

use std::{
    env, fs,
    io::{Read, Write},
    net::TcpStream,
    path::PathBuf,
    process::{Child, Command, Stdio},
    thread,
    time::{Duration, Instant},
};

use serde_json::{Value, json};
use tempfile::TempDir;

/// What a browser may take to start and to answer, on a busy machine that has not read it from disk yet.
const PATIENCE: Duration = Duration::from_secs(120);

/// A Firefox without a window; gone with this value.
pub struct Firefox {
    line: TcpStream,
    asked: u64,
    program: Child,
    _profile: TempDir,
}

fn on_path(names: &[&str]) -> Option<PathBuf> {
    let path = env::var_os("PATH")?;
    names.iter().find_map(|name| env::split_paths(&path).map(|dir| dir.join(name)).find(|file| file.is_file()))
}

impl Firefox {
    /// Starts one; `None` where none is installed.
    pub fn start() -> Option<Self> {
        let binary = on_path(&["firefox-esr", "firefox"])?;
        let profile = tempfile::tempdir().expect("a temporary folder");
        let settings = [
            "\"marionette.port\", 0",
            "\"app.update.enabled\", false",
            "\"datareporting.policy.dataSubmissionEnabled\", false",
            "\"network.captive-portal-service.enabled\", false",
            "\"network.connectivity-service.enabled\", false",
        ];
        let settings: String = settings.iter().map(|one| format!("user_pref({one});\n")).collect();
        fs::write(profile.path().join("user.js"), settings).expect("settings");
        let program = Command::new(binary)
            .args(["--headless", "--no-remote", "--marionette", "--profile"])
            .arg(profile.path())
            .env("HOME", profile.path())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("Firefox starts");
        let told = profile.path().join("MarionetteActivePort");
        let port: u16 = until("its port", || fs::read_to_string(&told).ok()?.trim().parse().ok());
        let line = until("its line", || TcpStream::connect(("127.0.0.1", port)).ok());
        line.set_read_timeout(Some(PATIENCE)).expect("a time limit");
        let mut firefox = Self { line, asked: 0, program, _profile: profile };
        firefox.read();
        firefox.command("WebDriver:NewSession", &json!({"strictFileInteractability": true}));
        Some(firefox)
    }

    fn read(&mut self) -> Value {
        let mut length = String::new();
        loop {
            let mut byte = [0];
            self.line.read_exact(&mut byte).expect("an answer");
            match byte[0] {
                b':' => break,
                digit => length.push(char::from(digit)),
            }
        }
        let mut text = vec![0; length.parse().expect("a length")];
        self.line.read_exact(&mut text).expect("an answer");
        serde_json::from_slice(&text).expect("JSON")
    }

    /// Does what a command says; its result.
    pub fn command(&mut self, name: &str, parameters: &Value) -> Value {
        self.asked += 1;
        let text = json!([0, self.asked, name, parameters]).to_string();
        write!(self.line, "{}:{text}", text.len()).expect("a question");
        let answer = self.read();
        assert_eq!(answer[1], self.asked, "{answer}");
        assert!(answer[2].is_null(), "{name}: {}", answer[2]);
        answer[3].clone()
    }

    pub fn open(&mut self, url: &str) {
        self.command("WebDriver:Navigate", &json!({"url": url}));
    }

    /// The result of a script's `return`.
    pub fn run(&mut self, script: &str) -> Value {
        self.command("WebDriver:ExecuteScript", &json!({"script": script, "args": []}))["value"].clone()
    }

    /// What a script hands to the last of its arguments.
    pub fn run_to_its_end(&mut self, script: &str, argument: &Value) -> Value {
        self.command("WebDriver:ExecuteAsyncScript", &json!({"script": script, "args": [argument]}))["value"].clone()
    }

    /// Waits until the script returns true.
    pub fn wait(&mut self, script: &str) {
        let started = Instant::now();
        while self.run(script) != Value::Bool(true) {
            assert!(started.elapsed() < PATIENCE, "{script}\n{}", self.run("return document.body.innerText"));
            thread::sleep(Duration::from_millis(50));
        }
    }
}

impl Drop for Firefox {
    fn drop(&mut self) {
        let _ = self.program.kill();
        let _ = self.program.wait();
    }
}

fn until<T>(what: &str, mut attempt: impl FnMut() -> Option<T>) -> T {
    let started = Instant::now();
    loop {
        match attempt() {
            Some(done) => return done,
            None => assert!(started.elapsed() < PATIENCE, "Firefox does not tell {what}"),
        }
        thread::sleep(Duration::from_millis(50));
    }
}
