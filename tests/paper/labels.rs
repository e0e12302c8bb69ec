//! Paper for the table, measured as it comes out of a printer that keeps the size.

use std::{collections::BTreeSet, sync::Arc};

use chatelaine::{
    catalog::{Catalog, read_folder},
    lang::{Lang, Texts},
    money::Currency,
    paper::{Grid, LabelOrder, LabelPart, LabelTable, Labels, Sheet, labels},
};
use image::GrayImage;

use crate::{
    pdf_reader::{boxes, drawn, has_poppler, keep_picture, known, language, lines, scanned, typefaces},
    support::test_table,
};

/// Dots to the inch at which pages are measured: one is 0.042 mm.
const DOTS: u32 = 600;
/// How far a line may be from where scissors expect it, in millimetres.
const RIGHT_TO_MM: f64 = 0.2;

fn whole() -> Catalog {
    Arc::unwrap_or_clone(read_folder(&test_table()).expect("a good catalogue").catalog)
}

fn order(parts: &[LabelPart], sheet: Sheet, grid: Grid) -> LabelOrder {
    LabelOrder { parts: parts.to_vec(), sheet, grid, tray: None, only: None }
}

fn made(catalog: &Catalog, lang: Lang, order: &LabelOrder) -> Labels {
    labels(&LabelTable::of(catalog, Texts::of(lang)), order).expect("paper").expect("something on it")
}

fn grid(shape: &str, margins: &str) -> Grid {
    Grid::USUAL.with_shape(shape).expect("a grid").with_margins(margins).expect("margins")
}

/// Width and height of a sheet in millimetres. Source: ISO 216; ANSI/ASME Y14.1, size A (from memory).
const fn size_mm(sheet: Sheet) -> (f64, f64) {
    match sheet {
        Sheet::A4 => (210.0, 297.0),
        Sheet::Letter => (215.9, 279.4),
    }
}

fn mm(dots: f64) -> f64 {
    dots / f64::from(DOTS) * 25.4
}

fn at_dot(mm: f64) -> u32 {
    (mm / 25.4 * f64::from(DOTS)).round() as u32
}

/// The middles of the lines that go through at least `share` of what lies between two places, in millimetres. `upright`
/// lines are looked for from left to right, the others from top to bottom.
fn found_lines(page: &GrayImage, upright: bool, (from, to): (f64, f64), share: f64) -> Vec<f64> {
    let (from, to) = (at_dot(from), at_dot(to));
    let across = if upright { page.width() } else { page.height() };
    let is_line = |at: u32| {
        let grey = |along: u32| if upright { page.get_pixel(at, along) } else { page.get_pixel(along, at) }.0[0];
        let dark = (from..to).filter(|along| grey(*along) < 225).count();
        dark as f64 >= share * f64::from(to - from)
    };
    let mut found = Vec::new();
    let mut run: Option<(u32, u32)> = None;
    for at in 0..across {
        match (is_line(at), run) {
            (true, None) => run = Some((at, at)),
            (true, Some((first, _))) => run = Some((first, at)),
            (false, Some((first, last))) => {
                found.push(mm(f64::from(first + last + 1) / 2.0));
                run = None;
            }
            (false, None) => {}
        }
    }
    found
}

/// The largest difference between lines that are found and those that are expected, which are as many.
fn furthest(found: &[f64], wanted: &[f64]) -> f64 {
    assert_eq!(found.len(), wanted.len(), "{found:?} {wanted:?}");
    found.iter().zip(wanted).map(|(one, other)| (one - other).abs()).fold(0.0, f64::max)
}

#[test]
fn scissors_and_folds_are_right_to_a_fifth_of_a_millimetre() {
    if !has_poppler() {
        return;
    }
    let catalog = whole();
    for (sheet, shape, margins) in [
        (Sheet::A4, "4x14", "10mm"),
        (Sheet::Letter, "4x14", "10mm"),
        (Sheet::A4, "5x13", "10.7mm,4.7mm"),
        (Sheet::Letter, "3x10", "0.5in,0.25in"),
    ] {
        let grid = grid(shape, margins);
        let out = made(&catalog, Lang::En, &order(&[LabelPart::Marks], sheet, grid));
        let page = drawn(&out.pdf, 1, DOTS);
        let (width, height) = size_mm(sheet);
        assert!(
            (mm(f64::from(page.width())) - width).abs() < 0.1 && (mm(f64::from(page.height())) - height).abs() < 0.1
        );
        let (above, beside) = (grid.above.mm(), grid.beside.mm());
        let columns = (0..=grid.columns).map(f64::from);
        let columns: Vec<f64> =
            columns.map(|n| beside + n * (width - 2.0 * beside) / f64::from(grid.columns)).collect();
        let rows = (0..=grid.rows).map(f64::from);
        let rows: Vec<f64> = rows.map(|n| above + n * (height - 2.0 * above) / f64::from(grid.rows)).collect();
        let upright = found_lines(&page, true, (above + 1.0, height - above - 1.0), 0.9);
        // The dashes of a fold go through three fifths of its length; nothing else goes through as much.
        let least = if grid.rows.is_multiple_of(2) { 0.55 } else { 0.9 };
        let level = found_lines(&page, false, (beside + 1.0, width - beside - 1.0), least);
        let off = furthest(&upright, &columns).max(furthest(&level, &rows));
        println!("{sheet:?} {shape}: {off:.3} mm");
        assert!(off < RIGHT_TO_MM, "{sheet:?} {shape}: {off} mm");
        let solid = found_lines(&page, false, (beside + 1.0, width - beside - 1.0), 0.95).len();
        let folds = if grid.rows.is_multiple_of(2) { usize::from(grid.rows) / 2 } else { 0 };
        assert_eq!(solid, rows.len() - folds, "folds are dashed, cuts are not");
    }
}

/// The line at the foot by which a maker sees whether her printer keeps the size.
#[test]
fn the_line_to_measure_is_as_long_as_it_says() {
    if !has_poppler() {
        return;
    }
    for sheet in Sheet::ALL {
        let out = made(&whole(), Lang::En, &order(&[LabelPart::Marks], sheet, Grid::USUAL));
        let page = drawn(&out.pdf, 1, DOTS);
        let foot = page.height() - at_dot(4.5);
        let is_dark = |x: &u32| page.get_pixel(*x, foot).0[0] < 128;
        let first = (0..at_dot(20.0)).find(is_dark).expect("a line");
        let long = mm((first..page.width()).take_while(is_dark).count() as f64);
        assert!((long - 50.0).abs() < RIGHT_TO_MM, "{long} mm");
        assert!(lines(&out.pdf).iter().any(|line| line.contains("50 mm if printed at true size")));
    }
}

/// The longest names that a catalogue takes, in words as each language has them.
const LONGEST: [(Lang, &str, &str); 4] = [
    (Lang::En, "Extraordinarily intricate hand-engraved heart locket, large", "$"),
    (Lang::De, "Donaudampfschifffahrtskapitänsmützenanhängerchen, altgolden", "€"),
    (Lang::Fr, "Médaillon très ancien gravé à l’étoile, émaillé élégamment.", "€"),
    (Lang::Es, "Colgante antiguísimo con ñandú grabado y piedrecita añil, ¡sí", "CHF"),
];

/// What lies on the table under names that are as long as names may be, at prices as long as prices get.
fn long_names(lang: Lang, name: &str, currency: &str) -> Catalog {
    let mut catalog = whole();
    let code = ["USD", "EUR", "CHF"]
        .into_iter()
        .find(|code| Currency::from_code(code).is_some_and(|known| known.symbol == currency || *code == currency));
    catalog.table.prices.currency = Currency::from_code(code.expect("a currency")).expect("known");
    catalog.names = Default::default();
    for kind in &mut catalog.drops {
        kind.name = name.to_owned();
        kind.price = "12345.67".parse().expect("a price");
    }
    for base in &mut catalog.bases {
        base.name = name.to_owned();
        base.price = "12345.67".parse().expect("a price");
    }
    assert!(name.chars().count() >= 59 && name.chars().count() <= 61, "{lang:?}");
    catalog
}

/// Around each mark nothing stands within a millimetre of where the scissors go, whichever way up it lies.
#[test]
fn no_name_runs_out_of_its_mark_in_any_language() {
    if !has_poppler() {
        return;
    }
    for (lang, name, currency) in LONGEST {
        let catalog = long_names(lang, name, currency);
        for (parts, shape) in [(LabelPart::Marks, "4x14"), (LabelPart::Tags, "4x14"), (LabelPart::Marks, "9x27")] {
            let grid = grid(shape, "10mm");
            let sheet = Sheet::A4;
            let out = made(&catalog, lang, &order(&[parts], sheet, grid));
            let page = drawn(&out.pdf, 1, DOTS);
            let (width, height) = grid.mark_mm(sheet);
            let count = if parts == LabelPart::Tags { catalog.bases.len() } else { catalog.drops.len() };
            let per_row = usize::from(grid.columns);
            let rows = if grid.rows.is_multiple_of(2) {
                (count.div_ceil(per_row) * 2).min(14)
            } else {
                (count * 2).div_ceil(per_row)
            };
            for row in 0..rows.min(usize::from(grid.rows)) {
                for column in 0..per_row {
                    let (x, y) = (10.0 + column as f64 * width, 10.0 + row as f64 * height);
                    ring_is_white(&page, (x, y, width, height), &format!("{lang:?} {shape} {parts:?} {column},{row}"));
                }
            }
            keep_picture(&out.pdf, &format!("long-{}-{}-{shape}", lang.code(), parts.name()));
            if shape == "4x14" && parts == LabelPart::Marks {
                let read: String = boxes(&out.pdf, 1).into_iter().map(|(word, _)| word).collect();
                let whole: String = name.split_whitespace().map(escaped).collect();
                assert!(!read.contains('…'), "at the usual size nothing is cut short: {read}");
                assert!(read.contains(&whole), "{whole} is not whole in {read}");
            }
        }
    }
}

/// As words stand in poppler's answer.
fn escaped(word: &str) -> String {
    word.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}

/// From 0.3 to 1.0 mm inside the edges of a place nothing is drawn.
fn ring_is_white(page: &GrayImage, (x, y, width, height): (f64, f64, f64, f64), what: &str) {
    let (left, right) = (at_dot(x + 0.3), at_dot(x + width - 0.3));
    let (top, bottom) = (at_dot(y + 0.3), at_dot(y + height - 0.3));
    let (inner_left, inner_right) = (at_dot(x + 1.0), at_dot(x + width - 1.0));
    let (inner_top, inner_bottom) = (at_dot(y + 1.0), at_dot(y + height - 1.0));
    for py in top..bottom {
        for px in left..right {
            let is_inside = (inner_left..inner_right).contains(&px) && (inner_top..inner_bottom).contains(&py);
            if !is_inside && page.get_pixel(px, py).0[0] < 240 {
                panic!("{what}: something stands at {:.2} × {:.2} mm", mm(f64::from(px)), mm(f64::from(py)));
            }
        }
    }
}

#[test]
fn every_compartment_has_a_mark_for_each_rim_with_its_price_as_the_language_writes_it() {
    if !has_poppler() {
        return;
    }
    let catalog = whole();
    for (lang, price) in
        [(Lang::En, "$4.50"), (Lang::De, "4,50\u{a0}$"), (Lang::Fr, "4,50\u{a0}$"), (Lang::Es, "4,50\u{a0}$")]
    {
        let out = made(&catalog, lang, &order(&[LabelPart::Marks], Sheet::A4, Grid::USUAL));
        let pages: usize = known(&out.pdf, "Pages").parse().expect("a number");
        assert_eq!((pages, out.pages), (catalog.drops.len().div_ceil(28), pages));
        let words: Vec<(String, [f64; 4])> = (1..=pages).flat_map(|page| boxes(&out.pdf, page)).collect();
        for kind in &catalog.drops {
            let home = kind.home.to_string();
            assert_eq!(words.iter().filter(|(word, _)| *word == home).count(), 2, "{lang:?} {home}");
        }
        let first = price.split('\u{a0}').next().expect("figures");
        assert!(words.iter().any(|(word, _)| word.starts_with(first)), "{lang:?}: no {price}");
        assert_eq!(out.printed.len(), catalog.drops.len());
        assert_eq!(language(&out.pdf), lang.code());
        assert!(
            typefaces(&out.pdf).iter().all(|line| line.contains(" yes yes ")),
            "typefaces go along, as far as used"
        );
        keep_picture(&out.pdf, &format!("marks-{}", lang.code()));
    }
}

/// The two marks of a compartment lie head to head: the same words turned about the middle of their fold.
#[test]
fn the_two_marks_of_a_compartment_lie_head_to_head() {
    if !has_poppler() {
        return;
    }
    let out = made(&whole(), Lang::En, &order(&[LabelPart::Marks], Sheet::A4, Grid::USUAL));
    let page = drawn(&out.pdf, 1, 150);
    let (width, height) = Grid::USUAL.mark_mm(Sheet::A4);
    let dot = |mm: f64| mm / 25.4 * 150.0;
    let fold = 10.0 + height;
    // Turned, dots fall between dots: one is there if a dot beside it is.
    let is_dark = |x: f64, y: f64, least: u8| page.get_pixel(x as u32, y as u32).0[0] < least;
    let near = [-1.0, 0.0, 1.0];
    let (mut missing, mut all) = (0, 0);
    for y in 0..dot(height - 1.5) as u32 {
        for x in 0..dot(width - 3.0) as u32 {
            let (from_fold, from_left) = (dot(0.8) + f64::from(y), dot(1.5) + f64::from(x));
            if is_dark(dot(10.0) + from_left, dot(fold) + from_fold, 100) {
                let (x, y) = (dot(10.0 + width) - from_left, dot(fold) - from_fold);
                all += 1;
                missing += u32::from(!near.iter().any(|dx| near.iter().any(|dy| is_dark(x + dx, y + dy, 180))));
            }
        }
    }
    assert!(all > 500 && missing * 10 < all, "{missing} of {all}");
}

#[test]
fn maps_lists_tags_and_the_code_say_what_the_table_has() {
    if !has_poppler() {
        return;
    }
    let loaded = read_folder(&test_table()).expect("a good catalogue");
    let catalog = &loaded.catalog;
    for lang in Lang::ALL {
        let texts = Texts::of(lang);
        let address = "http://192.168.4.1:8080/put-back";
        let table = LabelTable::of(catalog, texts)
            .with_put_back(Some(address.to_owned()))
            .with_pictures(|id| loaded.pictures.get(&catalog.drop_kind(id)?.picture)?.read().ok());
        let of = |part| {
            let out = labels(&table, &order(&[part], Sheet::A4, Grid::USUAL)).expect("paper").expect("something");
            keep_picture(&out.pdf, &format!("{}-{}", part.name(), lang.code()));
            out
        };
        let maps = of(LabelPart::Maps);
        assert_eq!(maps.pages, catalog.trays.len());
        let words = lines(&maps.pdf).join(" ");
        for part in [LabelPart::SetUp, LabelPart::Prices] {
            let out = of(part);
            let all = lines(&out.pdf).join(" ");
            for kind in &catalog.drops {
                assert!(all.contains(&kind.home.to_string()), "{lang:?} {part:?} {}", kind.home);
                assert!(words.contains(&kind.home.to_string()), "{lang:?} map {}", kind.home);
            }
            let name = catalog.called(lang.code(), "key-heart", "Heart-bow key");
            assert!(all.contains(name), "{lang:?} {part:?}: no {name}");
        }
        let tags = lines(&of(LabelPart::Tags).pdf).join(" ");
        assert!(tags.contains("cm") && tags.contains("in"), "{tags}");
        assert_eq!(scanned(&of(LabelPart::Code).pdf, 1), [address]);
    }
}

#[test]
fn one_tray_or_what_is_new_comes_alone() {
    let catalog = whole();
    let table = LabelTable::of(&catalog, Texts::of(Lang::En));
    let in_b: BTreeSet<String> =
        catalog.drops.iter().filter(|kind| kind.home.tray == 'B').map(|kind| kind.home.to_string()).collect();
    let all = order(&LabelPart::ALL, Sheet::A4, Grid::USUAL);
    let tray_b = labels(&table, &LabelOrder { tray: Some('B'), ..all.clone() }).expect("paper").expect("tray B");
    assert_eq!(tray_b.printed, in_b);
    assert_eq!(tray_b.pages, 2, "its marks and its map");
    let only = BTreeSet::from(["A1".to_owned(), "chain-brass".to_owned()]);
    let new = labels(&table, &LabelOrder { only: Some(only.clone()), ..all.clone() }).expect("paper").expect("news");
    assert_eq!(new.printed, only);
    let nothing = LabelOrder { only: Some(BTreeSet::new()), ..all.clone() };
    assert!(labels(&table, &nothing).expect("an answer").is_none());
    let small = LabelOrder { grid: grid("10x28", "10mm"), ..all };
    assert!(labels(&table, &small).expect_err("too small").to_string().contains("too small to be read"));
}
