//! The same from the terminal.

use std::{fs, path::Path, process::Command};

use crate::scene::{Floor, Lying, Scene, picture};

fn photo() -> Vec<u8> {
    let mut scene =
        Scene { rows: 2, columns: 2, inner_mm: (120.0, 100.0), photo: (1200, 900), ..Scene::new(Floor::Velvet) };
    for (i, name) in ["charm-star", "charm-leaf", "bead-lapis"].into_iter().enumerate() {
        let at = scene.middle(i as u32 / 2, i as u32 % 2);
        let picture = picture(name);
        let height_mm = f64::from(picture.height()) / 10.0;
        scene.lying.push(Lying { picture, height_mm, at, degrees: 8.0 });
    }
    scene.taken().jpeg
}

fn run(photo: &Path, out: &Path, more: &[&str]) -> (Option<i32>, String, String) {
    let mut command = Command::new(env!("CARGO_BIN_EXE_chatelaine"));
    command.arg("tray").arg(photo).arg("--out").arg(out).args(["--tray", "B", "--rows", "2", "--columns", "2"]);
    let output = command.args(more).output().expect("it runs");
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    (output.status.code(), text(&output.stdout), text(&output.stderr))
}

#[test]
fn the_terminal_cuts_a_tray_out_of_one_photo() {
    let dir = tempfile::tempdir().unwrap();
    let (file, out) = (dir.path().join("tray.jpg"), dir.path().join("out"));
    fs::write(&file, photo()).unwrap();
    let (code, words, errors) = run(&file, &out, &["--inner-width-mm", "120", "--json"]);
    assert_eq!(code, Some(0), "{errors}");
    let told: serde_json::Value = serde_json::from_str(&words).unwrap();
    let depth = told["inner_depth_mm"].as_f64().unwrap();
    assert!((depth / 100.0 - 1.0).abs() < 0.05, "{depth}");
    let compartments = told["compartments"].as_array().unwrap();
    let shown: Vec<&str> = compartments.iter().map(|one| one["shown"].as_str().unwrap()).collect();
    assert_eq!(shown, ["cut out", "cut out", "cut out", "nothing"]);
    for one in &compartments[..3] {
        let picture = image::open(out.join(one["file"].as_str().unwrap())).unwrap().into_rgba8();
        let mm = f64::from(picture.height()) / told["px_per_mm"].as_f64().unwrap();
        assert!((mm - one["height_mm"].as_f64().unwrap()).abs() < 0.01);
        assert_eq!(picture.get_pixel(0, 0).0[3], 0, "nothing of the floor");
    }
    let plain = run(&file, &dir.path().join("other"), &["--inner-width-mm", "120"]);
    assert!(plain.1.contains("B1") && plain.1.contains("trust") && plain.1.contains("B4    nothing"), "{}", plain.1);
}

#[test]
fn the_terminal_says_what_is_wrong_and_overwrites_nothing() {
    let dir = tempfile::tempdir().unwrap();
    let (file, out) = (dir.path().join("tray.jpg"), dir.path().join("out"));
    fs::write(&file, photo()).unwrap();
    fs::create_dir(&out).unwrap();
    fs::write(out.join("B1.png"), "hers").unwrap();
    let none = dir.path().join("none.jpg");
    fs::write(&none, b"\0\0\0\x18ftypheic").unwrap();
    for (photo, more, words) in [
        (&file, &["--inner-width-mm", "120"][..], "is there already"),
        (&file, &["--inner-width-mm", "7"], "40 mm to 2000 mm"),
        (&file, &["--inner-width-mm", "120", "--corners", "1,2,3"], "four corners"),
        (&file, &["--inner-width-mm", "120", "--corners", "0,0,0,0,0,0,0,0"], "make no tray"),
        (&none, &["--inner-width-mm", "120"], "JPEG"),
    ] {
        let (code, _, errors) = run(photo, &out, more);
        assert!(code == Some(2) && errors.contains(words), "{code:?}: {errors}");
    }
    assert_eq!(fs::read(out.join("B1.png")).unwrap(), b"hers");
    let (code, _, errors) = run(&dir.path().join("missing.jpg"), &out, &["--inner-width-mm", "120"]);
    assert!(code == Some(2) && errors.contains("can't be read"), "{errors}");
}
