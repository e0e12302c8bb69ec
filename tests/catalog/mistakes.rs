//! Every slip in a file of the folder is told with its place, and all at once.

use super::*;

/// A mistake a seller would make: the file, the words changed into what, and what the message has to say.
/// The place is found from where the wrong words then stand.
const SLIPS: &[(&str, &str, &str, &str, &str)] = &[
    ("table.ron", "currency: \"USD\"", "currency: \"usd\"", "\"usd\"", "currency code"),
    ("table.ron", "currency: \"USD\"", "currency: USD", "USD", "in quotes"),
    ("table.ron", "region: US", "region: \"US\"", "\"US\"", "without quotes"),
    ("table.ron", "region: US", "region: USA", "USA", "region"),
    ("table.ron", "rho: 0.6", "rho: 6", "6,", "0.1 to 1.5"),
    ("table.ron", "rho: 0.6", "rho: \"0.6\"", "\"0.6\"", "without quotes"),
    ("table.ron", "hold_minutes: 45", "hold_minutes: 0", "0,", "1 to 1440"),
    ("table.ron", "hold_minutes: 45", "hold_minutes: soon", "soon", "whole number"),
    ("table.ron", "hold_minutes", "hold_minuts", "hold_minuts", "did you mean hold_minutes?"),
    ("table.ron", "idle_warning_seconds: 60", "idle_warning_seconds: 5", "5,\n    //", "20 to 300"),
    ("table.ron", "\"Voucher\"", "\"Cash\"", "\"Cash\"]", "not in the list yet"),
    ("table.ron", "\"Voucher\"", "Voucher", "Voucher", "in quotes"),
    ("table.ron", "drops: 3", "drops: 0", "0)", "1 to 200"),
    ("table.ron", "reward: Percent(", "reward: Percents(", "Percents", "FreePieces"),
    ("table.ron", "helper_reduction: \"10\"", "helper_reduction: \"110\"", "\"110\"", "0 to 100"),
    ("table.ron", "paper: (", "paper: (printer: \"usb\",", "\"usb\"", "tcp:192.168.4.9:9100"),
    (
        "table.ron",
        "paper: (",
        "paper: (printer: \"tcp:printer.local\",",
        "\"tcp:printer.local\"",
        "number in the network",
    ),
    (
        "table.ron",
        "paper: (",
        "paper: (printer: \"tcp:192.168.4.9:0\",",
        "\"tcp:192.168.4.9:0\"",
        "number in the network",
    ),
    ("table.ron", "paper: (", "paper: (printer: \"device:lp0\",", "\"device:lp0\"", "from the top of the disk"),
    ("table.ron", "paper: (", "paper: (printer: \"file:\",", "\"file:\"", "from the top of the disk"),
    ("table.ron", "paper: (", "paper: (printers: \"file:/prints\",", "printers", "did you mean printer?"),
    ("table.ron", "paper: (", "paper: (columns: 40,", "40,", "32, 42, 48"),
    ("table.ron", "paper: (", "paper: (columns: \"42\",", "\"42\"", "without quotes"),
    ("table.ron", "paper: (", "paper: (slip_picture: 1,", "1,", "yes or no"),
    ("table.ron", "\"12 Mill Lane\"", "\"12 Mill\\nLane\"", "\"12 Mill\\nLane\"", "without a line break"),
    ("table.ron", "\"12 Mill Lane\"", "\"\"", "\"\",", "1 to 48 letters"),
    ("table.ron", "head: [", "head: [\"1\", \"2\", \"3\", \"4\", \"5\", ", "[\"1\"", "at most 6 lines"),
    ("table.ron", "en: \"Keep", "it: \"Keep", "it: ", "the fields en, es, fr, de"),
    ("table.ron", "percent: \"6.25\"", "percent: \"6,25\"", "\"6,25\"", "percentage"),
    ("table.ron", "percent: \"6.25\"", "percent: 6.25", "6.25", "in quotes"),
    ("table.ron", "Added(", "Plus(", "Plus", "Included"),
    ("table.ron", "rounding: HalfUp", "rounding: Up", "Up", "HalfUp"),
    (
        "bases.ron",
        "id: \"chain-silver\"",
        "id: \"chain-brass\"",
        "\"chain-brass\", name: \"Antique silver",
        "a second time",
    ),
    ("bases.ron", "id: \"chain-silver\"", "id: \"Chain Silver\"", "\"Chain Silver\"", "small letters"),
    ("bases.ron", "finish: Copper", "finish: Coper", "Coper", "did you mean Copper?"),
    ("bases.ron", "price: \"14.00\"", "price: \"14.005\"", "\"14.005\"", "at most 2 decimals"),
    ("bases.ron", "price: \"14.00\"", "price: \"-14\"", "\"-14\"", "a price"),
    ("bases.ron", "price: \"14.00\"", "price: \"0.00\"", "\"0.00\"", "above zero"),
    ("bases.ron", "price: \"14.00\"", "price: \"1400000\"", "\"1400000\"", "up to"),
    ("bases.ron", "usual_length: \"24in\"", "usual_length: \"24\"", "\"24\"", "with its unit"),
    ("bases.ron", "usual_length: \"24in\"", "usual_length: \"24 inch\"", "\"24 inch\"", "24in"),
    (
        "bases.ron",
        "outside: \"5mm\", wire: \"20awg\"",
        "outside: \"5mm\", wire: \"3mm\"",
        "(outside: \"5mm\", wire: \"3mm\"",
        "thinner",
    ),
    ("bases.ron", "link: Rolo", "link: Rollo", "Rollo", "did you mean Rolo?"),
    ("bases.ron", "Bangle(", "Bracelet(", "Bracelet", "Necklace(…) or Bangle(…)"),
    ("bases.ron", "free_arc_deg: 240", "free_arc_deg: 400", "400", "10 to 340"),
    ("bases.ron", "stock: 20", "stock: -2", "-2,", "0 to 100000"),
    ("bases.ron", "breakaway: false", "breakaway: no", "no,", "yes or no"),
    ("trays/a.ron", "letter: \"A\"", "letter: \"a\"", "\"a\"", "from \"A\" to \"Z\""),
    ("trays/d.ron", "letter: \"D\"", "letter: \"A\"", "\"A\"", "trays/a.ron"),
    ("trays/a.ron", "sort: Key", "sort: Keys", "Keys,", "did you mean Key?"),
    ("trays/a.ron", "materials: [ZincAlloy]", "materials: []", "[]", "at least one material"),
    ("trays/a.ron", "body: Box(", "body: Cube(", "Cube", "Cylinder(diameter, height)"),
    (
        "trays/a.ron",
        "picture: \"key-heart.png\"",
        "picture: \"key-hart.png\"",
        "\"key-hart.png\"",
        "did you mean \"key-heart.png\"?",
    ),
    ("trays/a.ron", "\"key-heart.png\"", "\"key-heart.png", "\"key-heart.png,", "closing quote"),
    ("trays/a.ron", "ring: (outside", "ring: outside", ": \"10mm\"", "comma"),
    ("names/de.ron", "id: \"key-heart\"", "id: \"key-hart\"", "\"key-hart\"", "did you mean \"key-heart\"?"),
    ("names/de.ron", "name: \"Feder\"", "name: \" \"", "\" \"", "1 to 60 letters"),
    ("names/fr.ron", "name: \"Plume\"", "nom: \"Plume\"", "nom", "the fields id, name"),
    (
        "names/es.ron",
        "id: \"key-round\"",
        "id: \"key-heart\"",
        "\"key-heart\", name: \"Llave con rueda",
        "a second name",
    ),
    ("trays/d.ron", "[Milk, Wheat]", "[Milk, Weat]", "Weat]", "did you mean Wheat?"),
    ("trays/d.ron", "[Milk, Wheat]", "[Milk, \"\"]", "\"\"]", "an allergen in 1 to 60 letters"),
    ("trays/d.ron", "[Milk, Wheat]", "[\"  \", Wheat]", "\"  \"", "an allergen in 1 to 60 letters"),
    ("trays/a.ron", "weight: \"4.", "weigth: \"4.", "weigth", "did you mean weight?"),
    // What is known of a part, in a drop and in a base.
    ("bases.ron", "plating: NickelFree", "plating: NickelFre", "NickelFre,", "did you mean NickelFree?"),
    ("bases.ron", "breakaway: true", "breakaway: true, magnet: strong", "strong", "Unknown, or (surface_kilogauss"),
    ("bases.ron", "dated: \"2026-02-20\"", "dated: \"2026-02-30\"", "\"2026-02-30\"", "a date as in"),
    ("bases.ron", "says: [Lead, Cadmium, Nickel]", "says: []", "[]", "at least one of Lead"),
    ("bases.ron", "says: [Lead, ", "says: [Leed, ", "Leed", "did you mean Lead?"),
    ("trays/c.ron", "comes_off: [Cylinder(", "comes_off: [Cork(", "Cork(", "a body: "),
    ("trays/c.ron", "lead_exempt: CrystalGlass", "lead_exempt: Crystal", "Crystal,\n", "did you mean CrystalGlass?"),
    ("trays/d.ron", "coin_cell: true", "coin_cell: true, liquid: some", "some", "yes or no"),
    // A body and its picture differ by a quarter at most; 16 cm for 16 mm asks again.
    (
        "trays/a.ron",
        "width: \"16mm\", height: \"38mm\", ring",
        "width: \"21mm\", height: \"38mm\", ring",
        "\"21mm\", height",
        "16 mm of the body",
    ),
    (
        "trays/a.ron",
        "width: \"16mm\", height: \"38mm\", ring",
        "width: \"16cm\", height: \"38mm\", ring",
        "\"16cm\", height",
        "write large: true",
    ),
];

#[test]
fn every_slip_is_told_with_its_place() {
    let dir = tempfile::tempdir().expect("a folder");
    copy(&test_table(), dir.path()).expect("a copy");
    let mut faults = Vec::new();
    for (file, right, wrong, stands, says) in SLIPS {
        let path = dir.path().join(file);
        let whole = fs::read_to_string(&path).expect("a file");
        assert!(whole.contains(right), "{file} has no {right}");
        let broken = whole.replacen(right, wrong, 1);
        fs::write(&path, &broken).expect("written");
        let mistakes = read_folder(dir.path()).expect_err(&format!("{file}: {wrong} was taken")).0;
        worded::all_in_every_language(&Mistakes(mistakes.clone()));
        let (line, column) = place(&broken, stands);
        let told =
            |m: &Mistake| m.file == *file && m.line == line && m.column == column && m.to_string().contains(says);
        if !mistakes.iter().any(told) {
            faults.push(format!("{file}:{line}:{column} should say {says:?}, told were {mistakes:?}"));
        }
        fs::write(&path, &whole).expect("written");
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn all_mistakes_of_a_folder_are_told_at_once() {
    let dir = tempfile::tempdir().expect("a folder");
    copy(&test_table(), dir.path()).expect("a copy");
    for (file, right, wrong) in [
        ("table.ron", "rho: 0.6", "rho: 9"),
        ("bases.ron", "stock: 20", "stock: x"),
        ("trays/c.ron", "sort: Bead", "sort: Bed"),
    ] {
        let path = dir.path().join(file);
        let text = fs::read_to_string(&path).expect("a file").replacen(right, wrong, 1);
        fs::write(path, text).expect("written");
    }
    fs::write(dir.path().join("pictures/key-round.png"), b"no picture").expect("written");
    fs::remove_file(dir.path().join("trays/d.ron")).expect("removed");
    let mistakes = read_folder(dir.path()).expect_err("it is broken").0;
    worded::all_in_every_language(&Mistakes(mistakes.clone()));
    let files: Vec<&str> = mistakes.iter().map(|mistake| mistake.file.as_str()).collect();
    assert_eq!(files, ["table.ron", "bases.ron", "trays/a.ron", "trays/c.ron"], "{mistakes:#?}");
}

#[test]
fn files_that_are_damaged_anywhere_end_in_a_message() {
    let dir = tempfile::tempdir().expect("a folder");
    copy(&test_table(), dir.path()).expect("a copy");
    fs::remove_dir_all(dir.path().join("pictures")).expect("removed");
    let path = dir.path().join("bases.ron");
    let whole = fs::read(&path).expect("a file");
    for end in (0..whole.len()).step_by(7) {
        fs::write(&path, &whole[..end]).expect("written");
        assert!(read_folder(dir.path()).is_err(), "cut at byte {end}");
    }
    fs::write(&path, b"[ \xFF ]").expect("written");
    assert!(read_folder(dir.path()).is_err());
}

#[test]
fn a_piece_reads_from_a_file_and_its_slips_are_told() {
    let piece =
        read_piece("p.ron", "(base: \"chain-brass\", length: \"24in\", wearer: From6To12, drops: [\"key-heart\"])");
    assert_eq!(piece.expect("a piece").drops, ["key-heart"]);
    for (text, says) in [
        ("(base: \"chain-brass\")", "add the field drops"),
        ("(base: chain, drops: [])", "in quotes"),
        ("(base: \"x\", wearer: Adult, drops: [])", "wearer"),
        ("(base: \"x\", length: \"long\", drops: [])", "24in"),
        ("", "expected a value"),
    ] {
        let mistakes = read_piece("p.ron", text).expect_err(text);
        worded::all_in_every_language(&mistakes);
        let told = mistakes.to_string();
        assert!(told.contains(says) && told.starts_with("p.ron:1:"), "{told}");
    }
}
