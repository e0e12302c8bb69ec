//! The rehearsal as a newcomer runs it: no display, no graphics driver, a whole show.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::{ffi::OsStr, fs, path::Path, process::Command};

fn count(folder: &Path, ending: &str) -> usize {
    let files = fs::read_dir(folder).expect("the folder").flatten();
    files.filter(|file| file.path().extension() == Some(OsStr::new(ending))).count()
}

fn chatelaine(in_folder: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_chatelaine"));
    for display in ["DISPLAY", "WAYLAND_DISPLAY", "WAYLAND_SOCKET"] {
        command.env_remove(display);
    }
    // A driver list that names no file: as on a machine without one.
    command.env("VK_ICD_FILENAMES", in_folder.join("no-driver.json")).current_dir(in_folder);
    command
}

const CATALOG: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/catalog");

#[test]
fn a_whole_show_without_a_screen() {
    let dir = tempfile::tempdir().expect("a folder");
    let done = chatelaine(dir.path()).args(["rehearse", "--catalog", CATALOG]).output().expect("it runs");
    let told = String::from_utf8_lossy(&done.stdout).into_owned();
    assert!(done.status.success(), "{told}\n{}", String::from_utf8_lossy(&done.stderr));
    let out = dir.path().join("rehearsal");
    assert!(count(&out, "png") >= 15, "pictures");
    assert!(count(&out, "json") >= 17, "tickets and the close-outs");
    let close_out = |file: &str| -> serde_json::Value {
        serde_json::from_slice(&fs::read(out.join(file)).expect("the close-out")).expect("an object")
    };
    let fair = close_out("close-out.json");
    // Five from the tablets and six threaded by hand; a drop, a piece and one in exchange came back; one is not fetched yet.
    let of = |close: &serde_json::Value, path: &str| close.pointer(path).cloned().unwrap_or_default();
    for (path, wanted) in [("/sold", 11), ("/prepaid_kept", 1), ("/taken_back/times", 3), ("/taken_back/pieces", 2)] {
        assert_eq!(of(&fair, path), wanted, "{path} of {fair}");
    }
    assert!(of(&fair, "/given").get("a friend").is_some() && of(&fair, "/goods").get("Gift box").is_some(), "{fair}");
    let party = close_out("close-out-party.json");
    // Two guests and the host, what came late, and what was fetched.
    for (path, wanted) in [("/sold", 5), ("/late/sold", 2), ("/prepaid_kept", 0), ("/let_go", 0)] {
        assert_eq!(of(&party, path), wanted, "{path} of {party}");
    }
    assert!(of(&party, "/given").get("the host's reward").is_some(), "{party}");
    for words in ["Party piece: ", " given, ", "arrives late and is rung up here", "by card after all"] {
        assert!(told.contains(words), "{words:?} in {told}");
    }
    assert!(told.contains("Every sum, count and state agrees"), "{told}");
}

/// Without a display the program says in one line what is missing and goes on as a rehearsal.
#[cfg(feature = "kiosk")]
#[test]
fn without_a_display_it_says_so_and_rehearses() {
    let dir = tempfile::tempdir().expect("a folder");
    let done = chatelaine(dir.path())
        .args(["--catalog", CATALOG, "--data", "data", "--listen", "127.0.0.1:0"])
        .output()
        .expect("it runs");
    let said = String::from_utf8_lossy(&done.stderr).into_owned();
    assert!(done.status.success(), "{said}");
    let lines: Vec<&str> = said.lines().filter(|line| line.contains("rehearsal")).collect();
    assert_eq!(lines.len(), 1, "{said}");
    assert!(lines[0].contains("needs") && lines[0].contains("chatelaine desk"), "{said}");
    // Words for a person, nothing of what a library says to its makers.
    assert!(!["Err", "Os", ".rs", "{", "/"].iter().any(|sign| lines[0].contains(sign)), "{said}");
    assert!(count(&dir.path().join("rehearsal"), "png") >= 5);
}

/// The computing commands print one JSON object, and bad input ends with 2 and words, never with a panic.
#[test]
fn answers_in_the_terminal() {
    let dir = tempfile::tempdir().expect("a folder");
    let piece = "(base: \"chain-brass\", length: \"24in\", wearer: Under3, drops: [\"key-heart\", \"key-tiny\"])";
    fs::write(dir.path().join("p.ron"), piece).expect("written");
    let bangle = "(base: \"bangle-brass\", wearer: From13, drops: [\"key-heart\", \"key-heart\"])";
    fs::write(dir.path().join("bangle.ron"), bangle).expect("written");
    fs::write(dir.path().join("bad.ron"), "(base: \"chain-bras\", drops: [])").expect("written");
    let run = &|words: &str| {
        let words = words.replace("CAT", CATALOG);
        let done = chatelaine(dir.path()).args(words.split(' ')).output().expect("it runs");
        let (out, err) = (String::from_utf8_lossy(&done.stdout), String::from_utf8_lossy(&done.stderr));
        (done.status.code(), out.into_owned(), err.into_owned())
    };
    let keys = [
        ("quote p.ron --catalog CAT --json", vec!["currency", "base", "drops", "subtotal", "discount", "tax", "total"]),
        (
            "hang p.ron --catalog CAT --json",
            vec!["kind", "sag_mm", "horizontal_tension_mn", "rings", "lowest_mm", "mass_g"],
        ),
        ("hang --front-length 150mm --width 100mm --chain 12.5g/m --json", vec!["sag_mm", "end_tension_mn"]),
        ("caution p.ron --catalog CAT --for under3 --json", vec!["suitable", "cautions"]),
        ("gauge --rod 5,57 --json", vec!["fits", "margin_mm"]),
        ("fit --ring 10mm,18awg --over 5mm --json", vec!["passes", "clearance_mm"]),
        ("check --catalog CAT --json", vec!["bases", "drops"]),
    ];
    for (words, keys) in keys {
        let (code, out, err) = run(words);
        assert_eq!(code, Some(0), "{words}: {err}");
        let object: serde_json::Value = serde_json::from_str(&out).expect(words);
        for key in keys {
            assert!(!object[key].is_null(), "{words}: no {key} in {out}");
        }
    }
    hang_answers(run);
    for (words, says) in [
        ("quote bad.ron --catalog CAT", "did you mean \"chain-brass\"?"),
        ("quote missing.ron --catalog CAT", "can't be read"),
        ("hang --front-length 90mm --width 100mm --chain 12.5g/m", "does not reach"),
        ("hang --front-length 120mm --width 100mm --rise 70mm --chain 12.5g/m", "across 122.1 mm"),
        ("hang --front-length 120mm --width 100mm", "--chain"),
        ("hang --front-length 120mm --width 100mm --chain 12.5g/m --load 3g --load 3g", "1 gaps"),
        ("hang --front-length 120mm --width 100mm --chain 12.5g/m --load 3g --load 3g --gap 130mm", "1 of them fit"),
        ("hang --front-length 120mm --width 100mm --chain 12.5g/m --load 0g", "above zero"),
        ("hang p.ron --catalog CAT --width 100mm", "--front-length"),
        ("hang bangle.ron --catalog CAT --front-length 120mm --width 100mm", "is a bangle"),
        ("hang --front-length 90 --width 100mm --chain 12.5g/m", "24in"),
        ("gauge --rod 5", "1 where 2 belong"),
        ("gauge --ball 0", "above zero"),
        ("fit --ring 2mm,1mm --over 5mm", "thinner"),
        ("caution p.ron --catalog CAT --for everybody", "under3"),
        ("check --catalog nowhere", "table.ron"),
    ] {
        let (code, _, err) = run(words);
        assert_eq!(code, Some(2), "{words}: {err}");
        assert!(err.contains(says) && !err.contains("panicked"), "{words} should say {says:?}: {err}");
    }
    // Numbers that a refusal tells apart are told apart on the screen.
    let (_, out, _) = run("fit --ring 6.98mm,1mm --over 5mm");
    assert!(out.contains("opens 4.98 mm") && out.contains("5.00 mm"), "{out}");
    // Two points a hundred millimetres apart, wherever they are, and a mark some editors put before the first.
    fs::write(dir.path().join("far.txt"), "\u{feff}2000000 0 0\n2000100 0 0\n").expect("written");
    let (_, out, err) = run("gauge --points far.txt --json");
    assert!(out.contains("\"fits\":false"), "{out}{err}");
    // A scan as it comes from a camera has more points than anybody waits for.
    fs::write(dir.path().join("many.txt"), "0 0 0\n".repeat(5001)).expect("written");
    let (code, _, err) = run("gauge --points many.txt");
    assert!(code == Some(2) && err.contains("5001 points") && err.contains("5000"), "{err}");
}

/// Who listens no more is no mistake; a full disk is one, and neither is a panic.
#[cfg(target_os = "linux")]
#[test]
fn answers_that_nobody_takes() {
    let dir = tempfile::tempdir().expect("a folder");
    let mut asked = chatelaine(dir.path());
    let full = fs::OpenOptions::new().write(true).open("/dev/full").expect("a full disk");
    let done = asked.args(["gauge", "--ball", "10"]).stdout(full).output().expect("it runs");
    let words = String::from_utf8_lossy(&done.stderr);
    assert!(done.status.code() == Some(2) && words.contains("could not be written"), "{words}");
    let (reader, writer) = std::io::pipe().expect("a pipe");
    drop(reader);
    let done = chatelaine(dir.path()).args(["gauge", "--ball", "10"]).stdout(writer).output().expect("it runs");
    assert_eq!((done.status.code(), String::from_utf8_lossy(&done.stderr).as_ref()), (Some(0), ""));
}

/// What `hang` answers, in its numbers.
fn hang_answers(run: &impl Fn(&str) -> (Option<i32>, String, String)) {
    let object = |words: &str| -> serde_json::Value {
        let (_, out, err) = run(words);
        serde_json::from_str(&out).unwrap_or_else(|error| panic!("{words}: {error}: {out}{err}"))
    };
    let is = |value: &serde_json::Value, wanted: f64| {
        let found = value.as_f64().expect("a number");
        assert!((found - wanted).abs() < 1e-7 * wanted.abs().max(1.0), "{found} is not {wanted}");
    };
    // A bare chain half as long again as its span: sag/S 0.502633261648 (from sinh(u)/u = L/S, 30 digits).
    is(&object("hang --front-length 150mm --width 100mm --chain 12.5g/m --json")["sag_mm"], 50.2633261648);
    // The same with the right hang point 0.3 S higher, from √(L² − h²) = 2a·sinh(S/2a), 30 digits.
    let raised = object("hang --front-length 150mm --width 100mm --rise 30mm --chain 12.5g/m --json");
    is(&raised["sag_mm"], 34.9864632049);
    is(&raised["horizontal_tension_mn"], 0.316905698276 * 1.25 * 9.80665);
    // A heavy chain with as much again in its middle (semi-analytic, 30 digits).
    let loaded = object("hang --front-length 150mm --width 100mm --chain 20g/m --load 3g --json");
    is(&loaded["sag_mm"], 55.4242049777);
    is(&loaded["end_tension_mn"], 1.79947033119 * 2.0 * 9.80665);
    is(&loaded["rings"][0]["x_mm"], 50.0);
    assert!(loaded["against"].is_null());
    // Heavy drops at one end of a long row pull its other end to the hang point, and the answer says so.
    let chain = "hang --front-length 150mm --width 110mm --chain 10g/m";
    let row = "--load 1g --load 1g --load 9g --load 9g --gap 30mm --gap 30mm --gap 60mm";
    let leaning = object(&format!("{chain} {row} --json"));
    assert_eq!((&leaning["against"], &leaning["rings"][0]["x_mm"]), (&"left".into(), &0.0.into()));
    let (_, words, _) = run(&format!("{chain} {row}"));
    assert!(words.contains("against the left hang point"), "{words}");
    // In a catalogue: the whole length has its trade name, and everything its place on the body.
    let piece = object("hang p.ron --catalog CAT --json");
    assert_eq!(piece["falls"]["trade_length"], "matinee");
    assert_eq!(piece["falls"]["drops"].as_array().map(Vec::len), Some(2));
    assert_eq!(piece["rings"][1]["id"], "key-tiny");
    let lowest = piece["lowest_mm"].as_f64().expect("a number");
    assert!(lowest > piece["sag_mm"].as_f64().expect("a number") + 5.0, "{piece}");
    // A bangle: two of the same are in balance as far to the left as to the right.
    let bangle = object("hang bangle.ron --catalog CAT --json");
    let angle = |i: usize| bangle["rings"][i]["angle_deg"].as_f64().expect("an angle");
    assert!(angle(0) < -1.0 && (angle(0) + angle(1)).abs() < 1e-9, "{bangle}");
}

/// The safety commands' answers against the closed forms for the drawing of 16 CFR 1501.4, and what each region says.
#[test]
fn a_sellers_questions_in_the_terminal() {
    let dir = tempfile::tempdir().expect("a folder");
    let piece =
        "(base: \"chain-gunmetal\", length: \"16in\", drops: [\"key-heart\", \"lantern-glow\", \"sweet-swirl\"])";
    fs::write(dir.path().join("p.ron"), piece).expect("written");
    fs::write(dir.path().join("points"), "0 0 0\n20 0 0\n0 20 0\n0 0 40\n").expect("written");
    let run = |words: &str| {
        let words = format!("{words} --json").replace("CAT", CATALOG);
        let done = chatelaine(dir.path()).args(words.split(' ')).output().expect("it runs");
        assert!(done.status.success(), "{words}: {}", String::from_utf8_lossy(&done.stderr));
        serde_json::from_slice::<serde_json::Value>(&done.stdout).expect("an object")
    };
    println!("| body | fits | margin mm |");
    for (body, fits) in [
        ("--ball 31.6", true),
        ("--ball 31.9", false),
        ("--rod 5,60.2", true),
        ("--rod 5,60.8", false),
        ("--disc 31.6,2", true),
        ("--cylinder 10,48.5", true),
        ("--cylinder 10,50", false),
        ("--box 25,2,51", true),
        ("--box 25,2,52", false),
        ("--box 23,23,23", false),
        ("--ball 31.5 --metric", true),
        ("--rod 5,60.8 --metric", false),
        ("--points points", true),
    ] {
        let answer = run(&format!("gauge {body}"));
        println!("| {body} | {} | {} |", answer["fits"], answer["margin_mm"]);
        assert_eq!((&answer["fits"], &answer["certain"]), (&fits.into(), &true.into()), "{body}: {answer}");
    }
    assert_eq!(run("gauge --ball 31.74")["certain"], false);

    let said = |who: &str, region: &str| {
        let answer = run(&format!("caution p.ron --catalog CAT --for {who} --region {region}"));
        assert_eq!(answer["deferral"], chatelaine::caution::DEFERRAL);
        let list = answer["cautions"].as_array().expect("a list").clone();
        for one in &list {
            for key in ["code", "rule", "text", "seller"] {
                assert!(one[key].as_str().is_some_and(|words| !words.is_empty()), "{key} of {one}");
            }
        }
        let mut codes: Vec<String> = list.iter().map(|one| one["code"].as_str().expect("a code").to_owned()).collect();
        codes.dedup();
        (answer["suitable"] == true, codes.join(" "), list[0]["rule"].as_str().expect("a rule").to_owned())
    };
    let (suitable, codes, rule) = said("under3", "US");
    assert!(!suitable && rule.starts_with("16 CFR 1501.4"), "{rule}");
    for code in
        ["small_part", "coin_cell", "breakaway", "cord_loop", "lead", "nickel", "food_allergen", "looks_like_food"]
    {
        assert!(codes.contains(code), "{code} in {codes}");
    }
    for region in ["US", "EU", "UK"] {
        let heard = "small_part coin_cell nickel food_allergen looks_like_food chain_too_short";
        assert_eq!(said("from13", region).1, heard, "{region}: a grown-up hears of what concerns them");
    }
    assert!(said("under3", "UK").2.starts_with("BS EN 71-1"));
    assert!(!said("from6to12", "EU").0, "a button cell is not for a child");
    let fit = run("fit --ring 10mm,18awg --over 5x3");
    assert!((fit["clearance_mm"].as_f64().expect("a number") - 2.1216).abs() < 1e-3, "{fit}");
}
