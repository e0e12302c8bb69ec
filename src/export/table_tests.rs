//! CSV against RFC 4180, read back by a small reader of its own, and against what other readers make of it.

use rust_decimal::Decimal;

use super::*;

/// A reader by the grammar of RFC 4180, section 2, with any separator: records of fields, plain or in quotes. Lenient where
/// the grammar is broken, as spreadsheets are: what follows a closing quote belongs to the field, and a lone CR or LF ends a
/// line too where `breaks` is set.
fn read(text: &str, separator: char, breaks: bool) -> Vec<Vec<String>> {
    let mut records = vec![];
    let (mut record, mut field, mut in_quotes) = (vec![], String::new(), false);
    let mut begins = true;
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        if in_quotes {
            match c {
                '"' if chars.peek() == Some(&'"') => field.extend(chars.next()),
                '"' => in_quotes = false,
                c => field.push(c),
            }
            continue;
        }
        let ends_line = (c == '\r' && chars.peek() == Some(&'\n')) || (breaks && matches!(c, '\r' | '\n'));
        if c == '"' && begins {
            (in_quotes, begins) = (true, false);
        } else if c == separator || ends_line {
            record.push(std::mem::take(&mut field));
            begins = true;
            if ends_line {
                chars.next_if(|next| c == '\r' && *next == '\n');
                records.push(std::mem::take(&mut record));
            }
        } else {
            field.push(c);
            begins = false;
        }
    }
    if !field.is_empty() || !record.is_empty() {
        record.push(field);
        records.push(record);
    }
    records
}

fn text(bytes: Vec<u8>) -> String {
    let text = String::from_utf8(bytes).expect("UTF-8");
    text.strip_prefix('\u{feff}').expect("a byte order mark").to_owned()
}

fn d(text: &str) -> Decimal {
    text.parse().unwrap()
}

fn words<'a>(cells: &[&'a str]) -> Vec<Cell<'a>> {
    cells.iter().map(|cell| Cell::Text(cell)).collect()
}

/// The examples of RFC 4180, section 2, of rules 1, 3, 6 and 7, each after its own reading. Quotes may be left out where they
/// are not needed (rule 5).
#[test]
fn the_examples_of_rfc_4180_are_written() {
    let plain = csv(
        DecimalMark::Point,
        &["field_name", "field_name", "field_name"],
        [words(&["aaa", "bbb", "ccc"]), words(&["zzz", "yyy", "xxx"])],
    );
    assert_eq!(text(plain.unwrap()), "field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n");
    let broken = csv(DecimalMark::Point, &["aaa", "b\r\nbb", "ccc"], [words(&["zzz", "yyy", "xxx"])]);
    assert_eq!(text(broken.unwrap()), "aaa,\"b\r\nbb\",ccc\r\nzzz,yyy,xxx\r\n");
    let doubled = csv(DecimalMark::Point, &["aaa", "b\"bb", "ccc"], [[Cell::Text(""); 3]]);
    assert_eq!(text(doubled.unwrap()), "aaa,\"b\"\"bb\",ccc\r\n,,\r\n");
    assert_eq!(
        read("aaa,\"b\r\nbb\",\"c\"\"c\"\r\nzzz,yyy,xxx", ',', false),
        [["aaa", "b\r\nbb", "c\"c"], ["zzz", "yyy", "xxx"]]
    );
}

#[test]
fn numbers_and_times_are_written_for_the_place() {
    let moment = Moment::new([2026, 2, 28], [9, 5, 0]).unwrap();
    let rows = [
        [Cell::Time(moment), Cell::Number(d("-3.50")), Cell::Text("-3.50")],
        [Cell::Text("a;b"), Cell::Number(d("1234567.125")), Cell::Text("a,b")],
        [Cell::Text("x"), Cell::Number(-d("0.00")), Cell::Text("B3")],
    ];
    let head = ["when", "sum", "what"];
    let point = text(csv(DecimalMark::Point, &head, rows).unwrap());
    assert_eq!(point, "when,sum,what\r\n2026-02-28 09:05:00,-3.50,'-3.50\r\na;b,1234567.125,\"a,b\"\r\nx,0.00,B3\r\n");
    let comma = text(csv(DecimalMark::Comma, &head, rows).unwrap());
    assert_eq!(comma, "when;sum;what\r\n2026-02-28 09:05:00;-3,50;'-3.50\r\n\"a;b\";1234567,125;a,b\r\nx;0,00;B3\r\n");
    for (date, clock) in [([2026, 2, 29], [0, 0, 0]), ([2026, 13, 1], [0, 0, 0]), ([2026, 1, 1], [24, 0, 0])] {
        assert_eq!(Moment::new(date, clock), None);
    }
    assert_eq!(Moment::new([2026, 1, 1], [23, 60, 0]), None);
    assert_eq!(Moment::new([2026, 1, 1], [23, 59, 60]), None);
}

#[test]
fn a_row_with_other_columns_is_refused() {
    let told = csv(DecimalMark::Point, &["a", "b"], [words(&["1", "2"]), words(&["3"])]).unwrap_err();
    assert_eq!(told.to_string(), "row 2 has 1 cells under 2 columns");
    assert!(csv(DecimalMark::Point, &["a"], [words(&["1", "2"])]).is_err());
}

/// SplitMix64, a public domain algorithm.
struct Seeded(u64);

impl Seeded {
    fn below(&mut self, most: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) % most as u64) as usize
    }

    fn cell(&mut self) -> String {
        const PARTS: &[&str] = &[
            "=",
            "+",
            "-",
            "@",
            "\t",
            "\r",
            "\n",
            "\r\n",
            "\"",
            "'",
            ",",
            ";",
            "|",
            " ",
            "\u{a0}",
            "\0",
            "\u{feff}",
            "＝",
            "－",
            "﹢",
            "1",
            "A1",
            "cmd",
            "HYPERLINK(",
            ")",
            "é",
            "星",
        ];
        (0..self.below(8)).map(|_| PARTS[self.below(PARTS.len())]).collect()
    }
}

/// What is left of a cell when the guards are taken out.
fn unguarded(text: &str) -> String {
    text.replace('\'', "")
}

/// Random rows: the reader by the grammar and the csv crate's find every cell again, but for guards; and whatever separator
/// somebody reads with, no cell begins a formula unless it is a number of ours.
#[test]
fn random_cells_come_back_and_begin_no_formula() {
    let mut seeded = Seeded(14);
    let numbers = ["-3.50", "0.05", "-1200"];
    let mut guards = 0;
    for round in 0..4_000 {
        let mark = if round % 2 == 0 { DecimalMark::Point } else { DecimalMark::Comma };
        let separator = char::from(mark.separator());
        let rows: Vec<[String; 3]> = (0..1 + seeded.below(3)).map(|_| [(); 3].map(|()| seeded.cell())).collect();
        let number = d(numbers[seeded.below(3)]);
        let cells: Vec<[Cell<'_>; 4]> = rows
            .iter()
            .map(|[one, two, three]| [Cell::Text(one), Cell::Number(number), Cell::Text(two), Cell::Text(three)])
            .collect();
        let head = rows[0].each_ref().map(String::as_str);
        let head = [head[0], "sum", head[1], head[2]];
        let bytes = csv(mark, &head, &cells).unwrap();
        let written = text(bytes.clone());

        let back = read(&written, separator, false);
        let mut reader =
            ::csv::ReaderBuilder::new().delimiter(mark.separator()).has_headers(false).from_reader(bytes.as_slice());
        let crates: Vec<Vec<String>> =
            reader.records().map(|record| record.unwrap().iter().map(str::to_owned).collect()).collect();
        assert_eq!(back, crates, "{written:?}");
        assert_eq!(back.len(), rows.len() + 1, "{written:?}");
        assert_eq!(back[0].iter().map(|cell| unguarded(cell)).collect::<Vec<_>>(), head.map(unguarded));
        for (record, [one, two, three]) in back[1..].iter().zip(&rows) {
            assert_eq!(record[1], mark.number(number));
            assert_eq!([0, 2, 3].map(|at| unguarded(&record[at])), [one, two, three].map(|cell| unguarded(cell)));
            guards += record.iter().map(|cell| cell.matches('\'').count()).sum::<usize>();
        }

        for (other, breaks) in [',', ';', '\t'].into_iter().flat_map(|other| [(other, false), (other, true)]) {
            for cell in read(&written, other, breaks).into_iter().flatten() {
                let shown = cell.trim_start_matches(|c: char| c.is_whitespace() || c.is_control() || c == '\u{feff}');
                let formula = shown.starts_with(['=', '+', '-', '@', '＝', '－', '﹢']);
                // With the decimal comma for a separator, the number is two cells.
                let is_number = ["-3.50", "-3,50", "-3", "-1200"].contains(&cell.as_str());
                assert!(!formula || is_number, "{cell:?} read with {other:?} from {written:?}");
            }
        }
    }
    assert!(guards > 2_000, "{guards} guards were set");
}
