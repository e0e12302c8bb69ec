//! What a maker does at the desk, in files that she also writes by hand.

use std::{collections::BTreeMap, fs, path::Path};

use chatelaine::{
    catalog::{
        Act, Catalog, EditRefusal, Fields, Place, Seen, TableEditor, begin_empty, begin_like, is_there, read_folder,
    },
    caution::Region,
    craft::{Guess, Home, Wearer},
    money::Currency,
};
use tempfile::TempDir;

use crate::{random::Random, support};

/// A copy of the test table with comments as a maker writes them, and its editor.
pub struct Bench {
    pub dir: TempDir,
    pub editor: TableEditor,
}

impl Bench {
    pub fn new() -> Self {
        let dir = tempfile::tempdir().unwrap();
        let root = dir.path().join("catalog");
        support::copy(&support::test_table(), &root).unwrap();
        for tray in ["a", "b", "c", "d"] {
            let path = root.join(format!("trays/{tray}.ron"));
            let text = fs::read_to_string(&path).unwrap();
            let mut n = 0;
            let lines = text.lines().map(|line| {
                n += 1;
                match line.trim() {
                    "(" => format!("            // {tray}{n}: from the green box ( [\n{line}"),
                    words if words.ends_with(',') && n % 3 == 0 => format!("{line} // {tray}{n}: \"sic\""),
                    _ => line.to_owned(),
                }
            });
            let text: Vec<String> = lines.collect();
            fs::write(&path, text.join("\n") + "\n// the end\n").unwrap();
        }
        Self { editor: editor(dir.path()), dir }
    }

    pub fn empty() -> Self {
        let dir = tempfile::tempdir().unwrap();
        begin_empty(&dir.path().join("catalog"), Currency::from_code("EUR").unwrap(), Region::EU).unwrap();
        Self { editor: editor(dir.path()), dir }
    }

    pub fn catalog(&self) -> Catalog {
        let read = read_folder(self.editor.root());
        (*read.unwrap_or_else(|mistakes| panic!("{mistakes}")).catalog).clone()
    }

    pub fn does(&self, acts: &[Act]) -> Result<bool, EditRefusal> {
        self.editor.change(acts, &Seen::new(), &BTreeMap::new(), ("2026-11-27T21:00:00Z", "done"))
    }

    pub fn text(&self, file: &str) -> String {
        fs::read_to_string(self.editor.root().join(file)).unwrap()
    }

    pub fn by_hand(&self, file: &str, text: &str) {
        fs::write(self.editor.root().join(file), text).unwrap();
    }
}

fn editor(dir: &Path) -> TableEditor {
    TableEditor::open(dir.join("catalog"), dir.join("versions")).unwrap()
}

pub fn home(text: &str) -> Home {
    text.parse().unwrap()
}

fn price(price: &str) -> Fields {
    Fields::new().text("price", price)
}

/// A file in pieces that no act may change: its comments, and each entry under its id.
fn comments(text: &str) -> Vec<String> {
    text.lines().filter_map(|line| line.split_once("// ").map(|(_, words)| words.trim().to_owned())).collect()
}

/// The entries of a table's files as they are written, by their ids.
fn entries(bench: &Bench, catalog: &Catalog) -> BTreeMap<String, String> {
    let files = bench.editor.files().unwrap();
    catalog.drops.iter().map(|kind| (kind.id.clone(), files.written(&Place::Home(kind.home)))).collect()
}

/// Fifty acts by chance on files full of comments: every comment stays, in files in which nothing was moved also its order;
/// every drop that was not touched is written as it was, byte for byte; and the table is what a small model says.
#[test]
#[allow(clippy::too_many_lines, reason = "one story, in the order in which it happens")]
fn fifty_acts_leave_comments_and_untouched_entries_as_they_were() {
    for seed in [17, 2026] {
        let bench = Bench::new();
        let mut random = Random(seed);
        let all_comments = |bench: &Bench| {
            let mut all: Vec<String> = ["a", "b", "c", "d"]
                .iter()
                .flat_map(|tray| comments(&bench.text(&format!("trays/{tray}.ron"))))
                .collect();
            all.sort();
            all
        };
        let noted = all_comments(&bench);
        assert!(noted.len() > 80, "{}", noted.len());
        let (mut after, mut gone) = (bench.catalog(), Vec::new());
        for step in 0..50 {
            let (before, written) = (after.clone(), entries(&bench, &after));
            let kind = &before.drops[random.of(before.drops.len())];
            let other = &before.drops[random.of(before.drops.len())];
            let empty: Vec<Home> = before
                .trays
                .iter()
                .flat_map(|tray| tray.compartments())
                .filter(|(_, id)| id.is_none())
                .map(|(home, _)| home)
                .collect();
            let free = (!empty.is_empty()).then(|| empty[random.of(empty.len())]);
            let mut touched = vec![kind.id.clone()];
            let new = format!("new-{step}");
            let act = match (random.below(6), free) {
                (0, Some(to)) => Act::Move { from: kind.home, to },
                (1, Some(home)) => {
                    touched = vec![new.clone()];
                    Act::Lay { home, fields: price("7.50").text("id", &new) }
                }
                (2, Some(to)) => {
                    touched = vec![new.clone()];
                    Act::Copy { from: kind.home, to, id: new.clone() }
                }
                (3, _) => {
                    touched.push(other.id.clone());
                    Act::Move { from: kind.home, to: other.home }
                }
                (4, _) if before.drops.len() > 30 => Act::Retire { home: kind.home },
                _ => Act::Tell { home: kind.home, fields: price("9.25").text("name", "Another “name”") },
            };
            bench.does(std::slice::from_ref(&act)).unwrap_or_else(|error| panic!("{act:?}: {error}"));
            after = bench.catalog();
            let now = entries(&bench, &after);
            for (id, text) in &written {
                if !touched.contains(id) {
                    assert_eq!(now.get(id), Some(text), "seed {seed}, {act:?}");
                }
            }
            let at = |catalog: &Catalog, id: &str| catalog.drop_kind(id).map(|kind| kind.home);
            match &act {
                Act::Move { from, to } => {
                    assert_eq!(at(&after, &kind.id), Some(*to));
                    if let Some(moved) = before.drop_at(*to).filter(|_| from != to) {
                        assert_eq!(at(&after, &moved.id), Some(*from));
                    }
                    assert_eq!(now[&kind.id], written[&kind.id], "what moves is written as it was");
                }
                Act::Lay { home, .. } => assert_eq!(at(&after, &new), Some(*home)),
                Act::Copy { to, .. } => {
                    assert_eq!((at(&after, &new), at(&after, &kind.id)), (Some(*to), Some(kind.home)))
                }
                Act::Retire { home } => assert_eq!((at(&after, &kind.id), after.drop_at(*home)), (None, None)),
                _ => {
                    let told = after.drop_kind(&kind.id).unwrap();
                    assert_eq!((told.price.to_string().as_str(), told.name.as_str()), ("9.25", "Another “name”"));
                    assert_eq!((told.weight, &told.body, told.stock), (kind.weight, &kind.body, kind.stock));
                }
            }
            let there = all_comments(&bench);
            let lost: Vec<_> = noted.iter().filter(|one| !there.contains(one)).collect();
            // Comments inside a drop that was retired go with it, and come back when that is undone.
            if let Act::Retire { .. } = act {
                gone.extend(comments(&written[&kind.id]));
            }
            assert!(lost.iter().all(|one| gone.contains(*one)), "seed {seed}, {act:?}: {lost:?}");
            assert!(there.iter().any(|one| one == "the end"));
        }
        assert_eq!(bench.editor.list().len(), 20, "the last twenty changes are kept");
    }
}

/// A tray's whole life, from nothing but prices.
#[test]
fn a_table_is_begun_with_nothing_but_prices() {
    let bench = Bench::empty();
    let bare = bench.catalog();
    assert!(bare.drops.is_empty() && bare.bases.is_empty() && bare.trays.is_empty());
    assert!(is_there(bench.editor.root()));
    assert!(begin_empty(bench.editor.root(), Currency::from_code("USD").unwrap(), Region::US).is_err(), "once");
    let lay = |at: &str, id: &str, cost: &str| Act::Lay { home: home(at), fields: price(cost).text("id", id) };
    let tray = Act::NewTray { letter: 'A', name: "Charms \"red\"".into(), rows: 2, columns: 3 };
    bench.does(&[tray.clone(), lay("A1", "one", "3.00"), lay("A5", "two", "4.00")]).unwrap();
    let base = Act::NewBase { form: "Necklace", fields: price("12.00").text("id", "chain") };
    let bangle = Act::NewBase { form: "Bangle", fields: price("9.00").text("id", "bangle") };
    bench.does(&[base, bangle]).unwrap();
    let catalog = bench.catalog();
    assert_eq!(catalog.trays[0].name, "Charms \"red\"");
    let one = catalog.drop_kind("one").unwrap();
    assert_eq!((one.home, one.price.to_string().as_str()), (home("A1"), "3.00"));
    for guess in [Guess::Materials, Guess::Body, Guess::Weight, Guess::Ring, Guess::Stock, Guess::Picture, Guess::Name]
    {
        assert!(one.guessed.contains(&guess), "{guess:?}");
    }
    assert!(one.guessed.is_sorted(), "the gravest first");
    // Nobody knows what it is, so that it is for no small child, and nobody of its metal.
    for wearer in [Wearer::Under3, Wearer::From3To5, Wearer::Unknown] {
        let verdict = catalog.drop_cautions(one, wearer);
        let codes: Vec<&str> = verdict.cautions.iter().map(|caution| caution.code.code()).collect();
        assert!(
            codes.contains(&"small_part") && codes.iter().any(|code| code.contains("lead")),
            "{wearer:?}: {codes:?}"
        );
        assert!(!catalog.suits(one, Wearer::Under3));
    }
    // Each of its guesses gives way to what is told, and is then none any more.
    let told =
        Fields::new().written("materials", "[Brass]").text("weight", "2g").text("name", "Heart").written("stock", "7");
    bench.does(&[Act::Tell { home: home("A1"), fields: told }]).unwrap();
    let told = bench.catalog().drop_kind("one").unwrap().clone();
    assert_eq!((told.weight.g(), told.stock, told.name.as_str()), (2.0, 7, "Heart"));
    for guess in [Guess::Materials, Guess::Weight, Guess::Stock, Guess::Name] {
        assert!(!told.guessed.contains(&guess), "{guess:?}");
    }
    for (act, why) in [
        (tray, "a tray A"),
        (lay("A1", "three", "1.00"), "something lies in A1"),
        (lay("A7", "three", "1.00"), "no compartment A7"),
        (lay("B1", "three", "1.00"), "no tray B"),
        (lay("A2", "one", "1.00"), "a second time"),
        (lay("A2", "Three", "1.00"), "small letters"),
        (lay("A2", "three", "0"), "above"),
        (Act::Retire { home: home("A3") }, "nothing lies in A3"),
        (Act::Tell { home: home("A3"), fields: price("1.00") }, "nothing lies in A3"),
        (Act::Tell { home: home("A1"), fields: Fields::new().text("picture", "none.png") }, "no pictures/none.png"),
        (Act::NewTray { letter: 'B', name: "B".into(), rows: 0, columns: 3 }, "1 to 40"),
        (Act::NewTray { letter: 'B', name: String::new(), rows: 1, columns: 3 }, "a name of 1 to 60"),
        (Act::RetireBase { id: "none".into() }, "no base none"),
    ] {
        let before = bench.text("trays/a.ron");
        let refused = bench.does(std::slice::from_ref(&act)).unwrap_err().to_string();
        assert!(refused.contains(why), "{act:?}: {refused}");
        assert_eq!(bench.text("trays/a.ron"), before);
    }
    assert!(!bench.editor.root().join("trays/b.ron").exists());
    // What is sent twice is done once.
    assert!(!bench.does(&[lay("A5", "two", "4.00")]).unwrap());
    let count = bench.editor.list().len();
    assert!(!bench.does(&[Act::Tell { home: home("A5"), fields: price("4.00") }]).unwrap());
    assert_eq!(bench.editor.list().len(), count);
    bench
        .does(&[Act::AddRow { letter: 'A' }, Act::TellTray { letter: 'A', fields: Fields::new().text("name", "All") }])
        .unwrap();
    assert_eq!((bench.catalog().trays[0].rows.len(), bench.catalog().trays[0].rows[2].len()), (3, 3));
}

/// A drop that was written by hand without an id keeps the one that it had by its home.
#[test]
fn what_is_known_by_its_home_stays_the_same_drop_elsewhere() {
    let bench = Bench::empty();
    bench.by_hand(
        "trays/k.ron",
        "(letter: \"K\", name: \"By hand\", rows: [[(price: \"2.00\"), Empty, (price: \"3.00\")]])",
    );
    assert_eq!(bench.catalog().drop_kind("k1").unwrap().home, home("K1"));
    bench.does(&[Act::Move { from: home("K1"), to: home("K3") }]).unwrap();
    let catalog = bench.catalog();
    assert_eq!(catalog.drop_kind("k1").unwrap().home, home("K3"));
    assert_eq!(catalog.drop_kind("k3").unwrap().home, home("K1"));
}

#[test]
fn both_ways_at_once_lose_nobodys_work() {
    let bench = Bench::new();
    let files = bench.editor.files().unwrap();
    let seen = |text: &str| vec![(Place::Home(home(text)), files.mark(&Place::Home(home(text))))];
    let change = |at: &str, cost: &str| {
        let act = Act::Tell { home: home(at), fields: price(cost) };
        bench.editor.change(&[act], &seen(at), &BTreeMap::new(), ("t", "w"))
    };
    // Somebody writes another price beside in the same tray: both stay.
    let by_hand = bench.text("trays/b.ron").replacen("price: \"3.00\"", "price: \"3.10\"", 1);
    bench.by_hand("trays/b.ron", &by_hand);
    change("B3", "5.00").unwrap();
    let catalog = bench.catalog();
    assert_eq!(catalog.drop_at(home("B1")).unwrap().price.to_string(), "3.10");
    assert_eq!(catalog.drop_at(home("B3")).unwrap().price.to_string(), "5.00");
    // The same drop: it is told as it is now, and nothing is written.
    match change("B1", "6.00") {
        Err(EditRefusal::Changed { place: Place::Home(at), now }) => {
            assert_eq!(at, home("B1"));
            assert!(now.contains("3.10"), "{now}");
        }
        other => panic!("{other:?}"),
    }
    assert_eq!(bench.catalog().drop_at(home("B1")).unwrap().price.to_string(), "3.10");
    // What does not read is mended by hand first, and nothing is written over it.
    let broken = bench.text("trays/b.ron").replacen("(\n", "(\n oh", 1);
    bench.by_hand("trays/b.ron", &broken);
    assert!(matches!(change("A1", "6.00"), Err(EditRefusal::Mistakes(_))));
    assert_eq!(bench.text("trays/b.ron"), broken);
}

#[test]
fn what_was_done_is_undone_one_after_the_other() {
    let bench = Bench::new();
    let texts = |bench: &Bench| ["table.ron", "bases.ron", "trays/a.ron", "trays/b.ron"].map(|file| bench.text(file));
    let begun = texts(&bench);
    assert!(matches!(bench.editor.undo("t"), Err(EditRefusal::NothingToUndo)));
    let mut steps = vec![begun.clone()];
    for act in [
        Act::Tell { home: home("A1"), fields: price("9.00") },
        Act::Move { from: home("A2"), to: home("B2") },
        Act::Retire { home: home("B1") },
        Act::NewTray { letter: 'Q', name: "Q".into(), rows: 1, columns: 1 },
        Act::Table { fields: Fields::new().text("name", "Another") },
        Act::RetireBase { id: "chain-copper".into() },
    ] {
        bench.does(&[act]).unwrap();
        steps.push(texts(&bench));
    }
    for step in steps.iter().rev().skip(1) {
        bench.editor.undo("t").unwrap();
        assert_eq!(texts(&bench), *step);
    }
    assert!(!bench.editor.root().join("trays/q.ron").exists());
    assert!(matches!(bench.editor.undo("t"), Err(EditRefusal::NothingToUndo)));
    // What somebody wrote since is not undone with it.
    bench.does(&[Act::Tell { home: home("A1"), fields: price("9.00") }]).unwrap();
    bench.by_hand("trays/a.ron", &(bench.text("trays/a.ron") + "// mine\n"));
    match bench.editor.undo("t") {
        Err(EditRefusal::WrittenSince { file, now, would_be }) => {
            assert_eq!((file.as_str(), would_be.as_str()), ("trays/a.ron", begun[2].as_str()));
            assert!(now.ends_with("// mine\n"));
        }
        other => panic!("{other:?}"),
    }
}

/// A change across two trays is cut short between them, as by a power cut: the next start finishes it. What somebody wrote in
/// the meantime stays.
#[test]
fn a_change_that_was_cut_short_is_finished_at_the_next_start() {
    for written_by_hand in [false, true] {
        let bench = Bench::new();
        let before = bench.text("trays/a.ron");
        bench.does(&[Act::Move { from: home("A1"), to: home("B1") }]).unwrap();
        let (a, b) = (bench.text("trays/a.ron"), bench.text("trays/b.ron"));
        let changes = fs::read_dir(bench.dir.path().join("versions")).unwrap().map(|entry| entry.unwrap().path());
        let newest = changes.filter(|path| path.is_dir()).max().unwrap();
        let record = newest.join("change.json");
        fs::write(&record, fs::read_to_string(&record).unwrap().replace("\"done\":true", "\"done\":false")).unwrap();
        let meanwhile = if written_by_hand { format!("{before}// mine\n") } else { before.clone() };
        bench.by_hand("trays/a.ron", &meanwhile);
        let Bench { dir, editor: old } = bench;
        drop(old);
        let again = Bench { editor: editor(dir.path()), dir };
        assert_eq!(again.text("trays/b.ron"), b);
        assert_eq!(again.text("trays/a.ron"), if written_by_hand { meanwhile } else { a });
    }
}

#[test]
fn files_with_the_marks_of_other_editors_keep_them() {
    let bench = Bench::new();
    let windows = format!("\u{feff}{}", bench.text("trays/a.ron").replace('\n', "\r\n"));
    bench.by_hand("trays/a.ron", &windows);
    bench.does(&[Act::Tell { home: home("A1"), fields: price("9.75").written("large", "false") }]).unwrap();
    let after = bench.text("trays/a.ron");
    assert!(after.starts_with('\u{feff}') && after.matches('\n').count() == after.matches("\r\n").count());
    assert_eq!(after.matches("9.75").count(), 1);
    let (gone, new): (Vec<&str>, Vec<&str>) = (
        windows.lines().filter(|line| !after.contains(line)).collect(),
        after.lines().filter(|line| !windows.contains(line)).collect(),
    );
    assert!(gone.len() <= 1 && new.len() <= 2, "{gone:?} {new:?}");
}

#[test]
fn a_table_like_the_demo_is_the_demo() {
    let bench = Bench::empty();
    begin_like(bench.editor.root(), &support::demo_catalog()).unwrap();
    let demo = read_folder(&support::demo_catalog()).unwrap();
    assert_eq!(read_folder(bench.editor.root()).unwrap().revision, demo.revision);
    assert!(begin_like(bench.editor.root(), &support::demo_catalog()).is_err(), "only over nothing");
}
