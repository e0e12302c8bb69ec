//! Pipes, sockets, devices and folders in the place of a catalogue's files.

use std::{fs, os::unix::net::UnixListener, path::Path, process::Command, sync::mpsc, thread, time::Duration};

use chatelaine::{
    catalog::read_folder,
    desk::{Desk, DeskConfig},
};

use crate::{
    checks::catalogue::write_good,
    folders::{good, says},
};

fn make_pipe(path: &Path) {
    assert!(Command::new("mkfifo").arg(path).status().expect("mkfifo").success());
}

#[test]
fn pipes_and_devices_in_the_folder_keep_nobody_waiting() {
    for file in ["table.ron", "bases.ron", "trays/a.ron", "trays/b.ron", "names/de.ron", "rules/us.ron"] {
        let dir = good();
        let path = dir.path().join(file);
        fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
        let _ = fs::remove_file(&path);
        make_pipe(&path);
        says(dir.path(), file, "the file is a pipe and no file");
        fs::remove_file(&path).expect("removed");
        std::os::unix::fs::symlink("/dev/zero", &path).expect("a link");
        says(dir.path(), file, "the file is a device and no file");
        fs::remove_file(&path).expect("removed");
        let _socket = UnixListener::bind(&path).expect("a socket");
        says(dir.path(), file, "the file is a socket and no file");
        fs::remove_file(&path).expect("removed");
        fs::create_dir(&path).expect("a folder");
        says(dir.path(), file, "the file is a folder and no file");
    }
    for (picture, what) in [("key.png", "a pipe"), ("leaf.jpg", "a pipe"), ("key.png", "a device")] {
        let dir = good();
        let path = dir.path().join("pictures").join(picture);
        fs::remove_file(&path).expect("removed");
        match what {
            "a pipe" => make_pipe(&path),
            _ => std::os::unix::fs::symlink("/dev/zero", &path).expect("a link"),
        }
        says(dir.path(), "trays/a.ron", &format!("pictures/{picture} is {what} and no file"));
    }
}

/// A pipe that nothing asks for, beside what the catalogue is read from, also keeps no desk from starting.
#[test]
fn a_desk_starts_beside_a_pipe_and_keeps_its_copy() {
    let dir = tempfile::tempdir().expect("a folder");
    write_good(&dir.path().join("catalog"));
    make_pipe(&dir.path().join("catalog/notes"));
    make_pipe(&dir.path().join("catalog/pictures/other.png"));
    let config = DeskConfig {
        catalog_dir: dir.path().join("catalog"),
        data_dir: dir.path().join("data"),
        listen: "127.0.0.1:0".parse().expect("an address"),
    };
    let (tell, told) = mpsc::channel();
    thread::spawn(move || tell.send(Desk::start(config)));
    let desk = told.recv_timeout(Duration::from_secs(30)).expect("it starts before long");
    assert!(desk.is_ok(), "{:?}", desk.err());
    let copy = dir.path().join("data/last-good");
    assert!(copy.join("table.ron").is_file() && !copy.join("notes").exists(), "the copy is kept without the pipe");
}

/// Pictures that lie on another disk are in the copy all the same; a link to its own folder is no folder without end.
#[test]
fn a_copy_has_what_a_linked_folder_holds() {
    let dir = tempfile::tempdir().expect("a folder");
    let (table, elsewhere) = (dir.path().join("catalog"), dir.path().join("elsewhere"));
    write_good(&table);
    fs::rename(table.join("pictures"), &elsewhere).expect("moved");
    std::os::unix::fs::symlink(&elsewhere, table.join("pictures")).expect("a link");
    std::os::unix::fs::symlink(&table, table.join("itself")).expect("a link");
    let config = DeskConfig {
        catalog_dir: table,
        data_dir: dir.path().join("data"),
        listen: "127.0.0.1:0".parse().expect("an address"),
    };
    let desk = Desk::start(config).unwrap_or_else(|error| panic!("{error}"));
    let copy = dir.path().join("data/last-good");
    fs::remove_dir_all(&elsewhere).expect("the other disk is gone");
    assert!(read_folder(&copy).is_ok(), "{:?}", read_folder(&copy).err());
    assert!(copy.join("itself/table.ron").is_file() && !copy.join("itself/itself").exists());
    desk.stop();
}
