//! kill -9 at any moment between the pictures of a tray's photo and the act that lays them: the table is as it was or as it
//! was to become, and what was told of the photo is there yet.

use std::{
    io::{BufRead, BufReader},
    path::Path,
    process::{Child, Command, Stdio},
};

use chatelaine::catalog::read_folder;

use super::{
    tray_photo::{cut_out, price_all, taken, with_tray},
    tray_scene::sixteen,
    *,
};
use crate::{own_table::with_marks, support::copy};

const TRIES: u64 = 8;

/// A desk of its own process; where it answers.
fn desk(dir: &Path) -> (Child, String) {
    let mut child = Command::new(env!("CARGO_BIN_EXE_chatelaine"))
        .args(["desk", "--listen", "127.0.0.1:0"])
        .arg("--catalog")
        .arg(dir.join("catalog"))
        .arg("--data")
        .arg(dir.join("data"))
        .stdout(Stdio::piped())
        .spawn()
        .expect("a desk");
    let mut line = String::new();
    BufReader::new(child.stdout.as_mut().expect("its words")).read_line(&mut line).expect("a line");
    let url = line.split_whitespace().find(|word| word.starts_with("http://"));
    (child, url.unwrap_or_else(|| panic!("no address in {line}")).trim_end_matches(['/', '.', ',']).to_owned())
}

/// How many drops lie in tray B; the folder has to be whole.
fn laid_in(dir: &Path) -> usize {
    let loaded = read_folder(&dir.join("catalog")).unwrap_or_else(|mistakes| panic!("{mistakes}"));
    loaded.catalog.drops.iter().filter(|kind| kind.home.tray == 'B').count()
}

#[test]
fn a_desk_killed_while_it_lays_a_tray_leaves_all_of_it_or_nothing() {
    let (table, seller) = with_tray();
    let at = taken(&seller, sixteen());
    cut_out(&seller, &at);
    price_all(&seller, &at, "4.00");
    let page = seller.get(&format!("{at}/prices")).text;
    let (cookie, lay) = (seller.cookie.clone(), format!("{at}/lay"));
    let Table { desk: in_process, dir } = table;
    drop(in_process);
    let (mut nothing, mut all) = (0, 0);
    for n in 0..TRIES {
        let own = tempfile::tempdir().expect("a folder");
        copy(dir.path(), own.path()).expect("a copy");
        let (mut child, url) = desk(own.path());
        let phone = Seller { agent: agent(), url, cookie: cookie.clone() };
        let fields: Vec<(String, String)> =
            with_marks(&page, &lay, &[]).iter().map(|(a, b)| ((*a).to_owned(), (*b).to_owned())).collect();
        let (agent, address) = (phone.agent.clone(), format!("{}{lay}", phone.url));
        let (for_post, sent) = (cookie.clone(), fields.clone());
        let posting = thread::spawn(move || {
            let request = agent.post(address).header("Cookie", &for_post);
            request.send_form(sent.iter().map(|(a, b)| (a.as_str(), b.as_str()))).is_ok()
        });
        thread::sleep(Duration::from_millis(15 + n * n * 9));
        child.kill().expect("kill -9");
        child.wait().expect("its end");
        let _ = posting.join();
        let killed = laid_in(own.path());
        let (mut child, url) = desk(own.path());
        let begun_again = laid_in(own.path());
        assert!([0, 16].contains(&killed) && [0, 16].contains(&begun_again), "{killed}, {begun_again}");
        assert!(begun_again >= killed, "what was laid stays laid");
        nothing += usize::from(begun_again == 0);
        all += usize::from(begun_again == 16);
        // Sent once more it lies there, once.
        let phone = Seller { url, ..phone };
        let fields: Vec<(&str, &str)> = fields.iter().map(|(a, b)| (a.as_str(), b.as_str())).collect();
        let answer = phone.post(&lay, &fields);
        assert_eq!(answer.status, 303, "{}", answer.text);
        assert_eq!(laid_in(own.path()), 16);
        child.kill().expect("kill -9");
        child.wait().expect("its end");
    }
    println!("killed {TRIES} times: {nothing} times nothing was laid, {all} times all of it");
}
