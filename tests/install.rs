//! The package and the archive, made by the documented command around this very program: unpacked where nothing else is,
//! started there, started again, and gone back by a version.

#![cfg(target_os = "linux")]
#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::{
    env, fs,
    io::{BufRead, BufReader},
    os::unix::fs::PermissionsExt,
    path::{Path, PathBuf},
    process::{Child, Command, Output, Stdio},
    sync::LazyLock,
};

use tempfile::TempDir;
use ureq::Agent;

/// What this version is called.
const VERSION: &str = env!("CARGO_PKG_VERSION");
/// The seller's PIN in these tests.
const PIN: &str = "482913";

/// What was made, for all tests together: the folder, the package, the archive.
static MADE: LazyLock<Option<(TempDir, PathBuf, PathBuf)>> = LazyLock::new(|| {
    let folder = tempfile::tempdir().expect("a folder");
    let (package, archive) = make(folder.path())?;
    Some((folder, package, archive))
});

/// The package and the archive.
fn made() -> Option<(PathBuf, PathBuf)> {
    MADE.as_ref().map(|(_, package, archive)| (package.clone(), archive.clone()))
}

fn make(out: &Path) -> Option<(PathBuf, PathBuf)> {
    if Command::new("dpkg-deb").arg("--version").output().is_err() {
        assert!(env::var_os("CI").is_none(), "dpkg-deb is needed on a build server");
        println!("not run: dpkg-deb is not installed");
        return None;
    }
    let build = Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/package/build");
    let done = Command::new(build)
        .args(["--binary", env!("CARGO_BIN_EXE_chatelaine"), "--out"])
        .arg(out)
        .output()
        .expect("the script runs");
    assert!(done.status.success(), "{}", String::from_utf8_lossy(&done.stderr));
    let told = String::from_utf8(done.stdout).expect("two names");
    let files: Vec<PathBuf> = told.lines().map(PathBuf::from).collect();
    let [package, archive] = &files[..] else { panic!("{told}") };
    Some((package.clone(), archive.clone()))
}

fn run(program: &str, arguments: &[&str], folder: &Path) -> String {
    let done = Command::new(program).args(arguments).current_dir(folder).output().expect("it runs");
    assert!(done.status.success(), "{program}: {}", String::from_utf8_lossy(&done.stderr));
    String::from_utf8_lossy(&done.stdout).into_owned()
}

/// The program in an environment where nothing is known of this machine's own files.
fn bare(program: &Path, home: &Path) -> Command {
    let mut command = Command::new(program);
    command.env_clear().env("HOME", home).env("PATH", "/usr/bin:/bin").current_dir(home);
    command
}

/// A desk of the installed program; it is ended with this value, in an orderly way.
struct Running {
    program: Child,
    url: String,
}

impl Running {
    fn start(program: &Path, home: &Path, arguments: &[&str]) -> Self {
        let mut command = bare(program, home);
        command.args(["desk", "--listen", "127.0.0.1:0"]).args(arguments);
        let mut program = command.stdout(Stdio::piped()).spawn().expect("it starts");
        let mut first = String::new();
        BufReader::new(program.stdout.take().expect("its words")).read_line(&mut first).expect("a line");
        let url = first.split_whitespace().find(|word| word.starts_with("http://"));
        Self { url: url.unwrap_or_else(|| panic!("no address in {first:?}")).to_owned(), program }
    }

    /// Status, where it leads, and the page.
    fn get(&self, path: &str) -> (u16, String, String) {
        let mut answer = agent().get(format!("{}{path}", self.url)).call().expect("an answer");
        let leads = answer.headers().get("location").map(|to| to.to_str().expect("an address").to_owned());
        let text = answer.body_mut().read_to_string().expect("a page");
        (answer.status().as_u16(), leads.unwrap_or_default(), text)
    }
}

impl Drop for Running {
    fn drop(&mut self) {
        let id = self.program.id().to_string();
        let ended = Command::new("kill").args(["-TERM", &id]).status();
        if !ended.is_ok_and(|status| status.success()) {
            let _ = self.program.kill();
        }
        let _ = self.program.wait();
    }
}

fn agent() -> Agent {
    Agent::config_builder().http_status_as_error(false).max_redirects(0).build().into()
}

/// What the package's own note of itself says.
fn field(package: &Path, name: &str) -> String {
    run("dpkg-deb", &["-f", package.to_str().unwrap(), name], Path::new("/")).trim().to_owned()
}

fn mode(file: &Path) -> u32 {
    fs::metadata(file).unwrap_or_else(|error| panic!("{}: {error}", file.display())).permissions().mode() & 0o777
}

/// A value of a desktop entry. Source: Desktop Entry Specification 1.5, "basic format of the file" (from memory).
fn entry(file: &Path, name: &str) -> String {
    let text = fs::read_to_string(file).expect("a desktop entry");
    assert!(text.starts_with("[Desktop Entry]\n"), "{text}");
    let found = text.lines().find_map(|line| line.strip_prefix(name)?.strip_prefix('='));
    found.unwrap_or_else(|| panic!("no {name} in {text}")).to_owned()
}

#[test]
fn the_package_runs_where_nothing_else_is() {
    let folder = tempfile::tempdir().unwrap();
    let Some((package, _)) = made() else { return };
    assert_eq!((field(&package, "Package"), field(&package, "Version")), ("chatelaine".into(), VERSION.into()));
    assert!(field(&package, "Depends").contains("libc6") && field(&package, "Installed-Size").parse::<u32>().is_ok());
    let (root, home) = (folder.path().join("root"), folder.path().join("home"));
    fs::create_dir(&home).unwrap();
    run("dpkg-deb", &["-x", package.to_str().unwrap(), root.to_str().unwrap()], folder.path());
    // Everything lies where a system looks for it, may be read by everybody, and belongs together.
    let program = root.join("usr/bin/chatelaine");
    let session = root.join("usr/lib/chatelaine/kiosk-session");
    assert_eq!((mode(&program), mode(&session)), (0o755, 0o755));
    let application = root.join("usr/share/applications/chatelaine.desktop");
    let icon = format!("usr/share/icons/hicolor/scalable/apps/{}.svg", entry(&application, "Icon"));
    assert_eq!(entry(&application, "Exec"), "chatelaine");
    assert!(fs::read_to_string(root.join(icon)).unwrap().contains("<svg"));
    let kiosk = entry(&root.join("usr/share/xsessions/chatelaine-kiosk.desktop"), "Exec");
    assert_eq!(root.join(kiosk.trim_start_matches('/')), session);
    let service = fs::read_to_string(root.join("usr/lib/systemd/user/chatelaine-desk.service")).unwrap();
    assert!(service.contains("ExecStart=/usr/bin/chatelaine desk\n"), "{service}");
    for text in ["copyright", "LICENSE", "LICENSE-andika.txt", "LICENSE-serif.txt", "README.md"] {
        assert_eq!(mode(&root.join("usr/share/doc/chatelaine").join(text)), 0o644, "{text}");
    }
    let told = bare(&program, &home).arg("--version").output().unwrap();
    assert_eq!(String::from_utf8_lossy(&told.stdout).trim(), format!("chatelaine {VERSION}"));
    // The demo's table comes along whole.
    let catalog = root.join("usr/share/chatelaine/catalog");
    let catalog = catalog.to_str().unwrap();
    let checked = bare(&program, &home).args(["check", "--catalog", catalog]).output().unwrap();
    assert!(checked.status.success(), "{}", String::from_utf8_lossy(&checked.stderr));

    // A desk is started, a PIN is chosen, and the next start, as after an update, knows it.
    let desk = Running::start(&program, &home, &["--catalog", catalog]);
    let (status, _, page) = desk.get("/setup");
    assert!(status == 200 && page.contains("Choose"), "{page}");
    let chosen = agent().post(format!("{}/setup", desk.url)).send_form([("pin", PIN), ("again", PIN)]).unwrap();
    assert_eq!(chosen.status(), 303);
    drop(desk);
    let ledger = home.join(".local/share/chatelaine/desk/ledger.sqlite");
    assert!(ledger.is_file(), "the ledger lies in the seller's own folder");
    let desk = Running::start(&program, &home, &["--catalog", catalog]);
    assert_eq!(desk.get("/setup").1, "/sign-in", "the PIN is kept");
    drop(desk);
    a_later_ledger_is_left_alone(&program, &home, catalog, &ledger);
}

/// Who goes back to an earlier version is told, and the ledger of the later one stays as it was, byte for byte.
fn a_later_ledger_is_left_alone(program: &Path, home: &Path, catalog: &str, ledger: &Path) {
    let db = rusqlite::Connection::open(ledger).unwrap();
    let layout: i64 = db.query_row("PRAGMA user_version", [], |row| row.get(0)).unwrap();
    db.pragma_update(None, "user_version", layout + 1).unwrap();
    drop(db);
    let before = fs::read(ledger).unwrap();
    let refused: Output =
        bare(program, home).args(["desk", "--listen", "127.0.0.1:0", "--catalog", catalog]).output().unwrap();
    let words = String::from_utf8_lossy(&refused.stderr);
    assert_eq!(refused.status.code(), Some(2), "{words}");
    assert!(words.contains("later version") && words.contains(&(layout + 1).to_string()), "{words}");
    assert!(!words.contains("panicked"), "{words}");
    assert_eq!(fs::read(ledger).unwrap(), before, "nothing in it was changed");
}

#[test]
fn the_archive_runs_from_anywhere() {
    let folder = tempfile::tempdir().unwrap();
    let Some((_, archive)) = made() else { return };
    let home = folder.path().join("a folder with blanks");
    fs::create_dir(&home).unwrap();
    run("tar", &["-xzf", archive.to_str().unwrap()], &home);
    let inside: Vec<PathBuf> = fs::read_dir(&home).unwrap().map(|entry| entry.unwrap().path()).collect();
    let [whole] = &inside[..] else { panic!("{inside:?}") };
    assert!(whole.file_name().unwrap().to_str().unwrap().starts_with(&format!("chatelaine-{VERSION}-")));
    let program = whole.join("chatelaine");
    assert_eq!(mode(&program), 0o755);
    let checked = bare(&program, whole).arg("check").output().unwrap();
    assert!(checked.status.success(), "{}", String::from_utf8_lossy(&checked.stderr));
    let desk = Running::start(&program, whole, &["--data", "kept"]);
    assert_eq!(desk.get("/").0, 303);
    drop(desk);
    assert!(whole.join("kept/ledger.sqlite").is_file());
    println!(
        "{} bytes of program, {} of archive",
        fs::metadata(&program).unwrap().len(),
        fs::metadata(&archive).unwrap().len()
    );
}

/// A program of another version is not packed under this one's name.
#[test]
fn a_program_of_another_version_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    if made().is_none() {
        return;
    }
    let old = folder.path().join("old");
    fs::write(&old, "#!/bin/sh\necho chatelaine 0.0.1\n").unwrap();
    fs::set_permissions(&old, fs::Permissions::from_mode(0o755)).unwrap();
    let build = Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/package/build");
    let done = Command::new(build).args(["--binary", old.to_str().unwrap()]).arg("--out").arg(folder.path()).output();
    let done = done.unwrap();
    let words = String::from_utf8_lossy(&done.stderr);
    assert!(!done.status.success() && words.contains("0.0.1") && words.contains(VERSION), "{words}");
}
