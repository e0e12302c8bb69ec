//! Pictures that the desk has kept go when nobody names them any more, and no other file ever does.

use std::{fs, path::PathBuf};

use chatelaine::{
    catalog::{Act, Fields, Seen, TableEditor, read_folder},
    disk::digest::sha256_hex,
};

use super::acts::Bench;

/// A picture as the desk keeps one: its name follows from its bytes.
fn picture(word: &str, shade: u8) -> (String, Vec<u8>) {
    let dots = image::RgbaImage::from_pixel(8, 8, image::Rgba([shade, 40, 90, 255]));
    let mut bytes = std::io::Cursor::new(Vec::new());
    dots.write_to(&mut bytes, image::ImageFormat::Png).unwrap();
    let bytes = bytes.into_inner();
    (format!("{word}-{}.png", &sha256_hex(&bytes)[..16]), bytes)
}

fn path(bench: &Bench, name: &str) -> PathBuf {
    bench.editor.root().join("pictures").join(name)
}

/// An empty table with one tray of two compartments.
fn table() -> Bench {
    let bench = Bench::empty();
    let tray = Act::NewTray { letter: 'A', name: "First".into(), rows: 1, columns: 2 };
    assert!(bench.does(&[tray]).unwrap());
    bench
}

fn lay(bench: &Bench, picture: &str) {
    let fields = Fields::new().text("id", "one").text("price", "4.00").text("picture", picture);
    assert!(bench.does(&[Act::Lay { home: "A1".parse().unwrap(), fields }]).unwrap());
}

/// As many other changes; each is a kept version.
fn others(bench: &Bench, count: usize, from: usize) {
    for n in from..from + count {
        let fields = Fields::new().text("name", &format!("Table {n}"));
        assert!(bench.does(&[Act::Table { fields }]).unwrap(), "{n}");
    }
}

/// The same folders, as after a start.
fn anew(bench: &mut Bench) {
    bench.editor = TableEditor::open(bench.dir.path().join("catalog"), bench.dir.path().join("versions")).unwrap();
}

#[test]
fn a_picture_goes_with_the_last_version_that_names_it() {
    let bench = table();
    let (name, bytes) = picture("tray", 200);
    bench.editor.keep_picture(&name, &bytes).unwrap();
    lay(&bench, &name);
    bench.editor.undo("2026-11-27T22:00:00Z").unwrap();
    // Two versions name it: that which laid it, and that which took it back. The twentieth after those lets go of the last.
    others(&bench, 19, 0);
    assert!(path(&bench, &name).exists(), "the last twenty versions still have it");
    others(&bench, 1, 19);
    assert!(!path(&bench, &name).exists(), "nobody names it any more");
    assert!(bench.catalog().drops.is_empty());
}

#[test]
fn what_the_table_names_stays_for_good() {
    let mut bench = table();
    let (name, bytes) = picture("photo", 20);
    bench.editor.keep_picture(&name, &bytes).unwrap();
    lay(&bench, &name);
    others(&bench, 25, 0);
    anew(&mut bench);
    others(&bench, 25, 25);
    assert_eq!(fs::read(path(&bench, &name)).unwrap(), bytes);
    assert_eq!(bench.catalog().drops[0].picture, name);
}

/// A picture comes before the change that names it, which another phone's change may come before.
#[test]
fn a_picture_that_has_just_come_waits_for_its_change() {
    let mut bench = table();
    let (name, bytes) = picture("photo", 60);
    bench.editor.keep_picture(&name, &bytes).unwrap();
    others(&bench, 25, 0);
    lay(&bench, &name);
    assert_eq!(bench.catalog().drops[0].picture, name);
    // One whose change was refused waits no longer than the program runs.
    let (refused, bytes) = picture("photo", 90);
    bench.editor.keep_picture(&refused, &bytes).unwrap();
    assert!(path(&bench, &refused).exists());
    anew(&mut bench);
    assert!(!path(&bench, &refused).exists() && path(&bench, &name).exists());
    // Sent again, it is kept again.
    bench.editor.keep_picture(&refused, &bytes).unwrap();
    others(&bench, 1, 25);
    assert_eq!(fs::read(path(&bench, &refused)).unwrap(), bytes);
}

#[test]
fn nothing_goes_that_may_be_the_makers_own() {
    let mut bench = table();
    let root = bench.editor.root().to_owned();
    fs::create_dir_all(root.join("pictures")).unwrap();
    let put = |word: &str, shade: u8| {
        let (name, bytes) = picture(word, shade);
        fs::write(path(&bench, &name), &bytes).unwrap();
        name
    };
    // Under other names, and under such a name with other bytes in it.
    let (others_name, _) = picture("photo", 1);
    let (_, bytes) = picture("photo", 2);
    fs::write(path(&bench, &others_name), bytes).unwrap();
    let mut stay = vec![others_name, put("leaf", 3), put("photo-of", 4)];
    for name in ["photo-1.png", "photo-0123456789abcdef.gif", "PHOTO-0123456789abcdef.png", "notes.txt"] {
        fs::write(path(&bench, name), "mine").unwrap();
        stay.push(name.to_owned());
    }
    // Named in a remark, in a copy that she keeps of a tray, and in a note of hers.
    for (file, shade) in [("table.ron", 5), ("trays/a.ron.old", 6), ("note.txt", 7)] {
        let name = put("photo", shade);
        let before = fs::read_to_string(root.join(file)).unwrap_or_default();
        fs::write(root.join(file), format!("{before}\n// once there was {name}.\n")).unwrap();
        stay.push(name);
    }
    let goes = put("photo", 8);
    anew(&mut bench);
    for name in &stay {
        assert!(path(&bench, name).exists(), "{name}");
    }
    assert!(!path(&bench, &goes).exists(), "and this one is nobody's");
}

/// What can't be read may name anything.
#[test]
fn nothing_goes_while_a_text_cannot_be_read() {
    let mut bench = table();
    let (name, bytes) = picture("tray", 30);
    fs::create_dir_all(bench.editor.root().join("pictures")).unwrap();
    fs::write(path(&bench, &name), bytes).unwrap();
    let long = bench.editor.root().join("trays/long.txt");
    fs::write(&long, vec![b' '; (4 << 20) + 1]).unwrap();
    anew(&mut bench);
    assert!(path(&bench, &name).exists());
    fs::remove_file(&long).unwrap();
    // A pipe keeps nobody waiting, and a link to a picture is not the picture.
    #[cfg(unix)]
    {
        std::process::Command::new("mkfifo").arg(bench.editor.root().join("pipe")).status().unwrap();
        let (linked, bytes) = picture("photo", 31);
        fs::write(bench.dir.path().join("elsewhere.png"), bytes).unwrap();
        std::os::unix::fs::symlink(bench.dir.path().join("elsewhere.png"), path(&bench, &linked)).unwrap();
        anew(&mut bench);
        assert!(path(&bench, &linked).exists());
    }
    anew(&mut bench);
    assert!(!path(&bench, &name).exists());
}

/// The terminal writes in the same files while a desk runs, to which a photo has just come.
#[test]
fn an_editor_beside_the_desk_leaves_what_has_just_come() {
    let bench = table();
    let (name, bytes) = picture("photo", 77);
    bench.editor.keep_picture(&name, &bytes).unwrap();
    let (root, versions) = (bench.dir.path().join("catalog"), bench.dir.path().join("versions"));
    let beside = TableEditor::open_beside(root, versions).unwrap();
    let loaded = read_folder(&bench.dir.path().join("catalog"));
    let pictures = loaded.map(|loaded| loaded.pictures.clone()).unwrap_or_default();
    let fields = Fields::new().text("name", "From the terminal");
    assert!(
        beside.change(&[Act::Table { fields }], &Seen::new(), &pictures, ("2026-11-28T06:00:00Z", "a name")).unwrap()
    );
    assert!(path(&bench, &name).exists(), "its change is on its way");
    lay(&bench, &name);
    assert!(path(&bench, &name).exists());
}
