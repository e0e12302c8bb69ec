//! What `table.ron` says of paper: lines of the head, how a piece is kept, the printer.

use std::{
    net::{IpAddr, SocketAddr},
    path::{Path, PathBuf},
};

use super::paper::{Columns, Paper, Printer};
use crate::{
    quoting::one_line,
    ron_tree::{Detail, Node, Reader, Value, What, detail, either, what},
};

/// So many lines stand below the table's name at most.
const MOST_LINES: usize = 6;
/// The longest of them, which fits on the widest roll.
const LONGEST_LINE: usize = 48;
/// The longest words on how a piece is kept.
const LONGEST_CARE: usize = 400;
/// The languages that paper can be in.
const LANGUAGES: [&str; 4] = ["en", "es", "fr", "de"];
/// The port on which receipt printers take what is sent to them as it is (common practice, no source).
const RAW_PORT: u16 = 9100;

/// Reads it. Without it nothing stands below the table's name, and no printer is known.
pub(super) fn read(reader: &mut Reader<'_>, node: &Node) -> Option<Paper> {
    let f =
        reader.fields(node, what("the-paper", "the paper"), &["head", "care", "printer", "columns", "slip_picture"])?;
    let usual = Paper::default();
    let head = match f.get("head") {
        Some(node) => head(reader, node),
        None => Some(usual.head),
    };
    let care = match f.get("care") {
        Some(node) => care(reader, node),
        None => Some(usual.care),
    };
    let printer = match f.get("printer") {
        Some(node) => printer(reader, node).map(Some),
        None => Some(None),
    };
    let columns = match f.get("columns") {
        Some(node) => columns(reader, node),
        None => Some(usual.columns),
    };
    let slip_picture = match f.get("slip_picture") {
        Some(node) => reader.flag(node),
        None => Some(usual.slip_picture),
    };
    Some(Paper { head: head?, care: care?, printer: printer?, columns: columns?, slip_picture: slip_picture? })
}

fn head(reader: &mut Reader<'_>, node: &Node) -> Option<Vec<String>> {
    let nodes = reader.list(node, what("list-lines", "lines"))?;
    if nodes.len() > MOST_LINES {
        return reader.unlike(node, detail!("right-lines", "at most {most} lines", most = MOST_LINES));
    }
    let mut lines = Some(Vec::new());
    for node in nodes {
        match (words(reader, node, what("a-line", "a line"), LONGEST_LINE), &mut lines) {
            (Some(one), Some(all)) => all.push(one),
            _ => lines = None,
        }
    }
    lines
}

/// Words in one line, no longer than `longest`.
fn words(reader: &mut Reader<'_>, node: &Node, of: What, longest: usize) -> Option<String> {
    let text = reader.text(node, of)?.trim().to_owned();
    if !text.is_empty() && text.chars().count() <= longest && one_line(&text) == text {
        Some(text)
    } else {
        let wanted = detail!(
            "right-letters",
            "{what} of 1 to {longest} letters without a line break",
            what = of,
            longest = longest
        );
        reader.unlike(node, wanted)
    }
}

fn care(reader: &mut Reader<'_>, node: &Node) -> Option<Vec<(String, String)>> {
    match &node.value {
        Value::Text(_) => Some(vec![(String::new(), words(reader, node, what("a-text", "a text"), LONGEST_CARE)?)]),
        Value::Struct { .. } => {
            let f = reader.fields(node, what("the-care-by-language", "the care by language"), &LANGUAGES)?;
            let mut all = Some(Vec::new());
            for (code, node) in LANGUAGES.iter().filter_map(|code| Some((*code, f.get(code)?))) {
                match (words(reader, node, what("a-text", "a text"), LONGEST_CARE), &mut all) {
                    (Some(text), Some(all)) => all.push((code.to_owned(), text)),
                    _ => all = None,
                }
            }
            all
        }
        _ => reader.unlike(
            node,
            detail!(
                "a-care",
                "a text in quotes, or one for each language, as in {example}",
                example = "(en: \"Keep it dry.\")"
            ),
        ),
    }
}

fn printer(reader: &mut Reader<'_>, node: &Node) -> Option<Printer> {
    let text = reader.text(node, what("where-the-printer-is", "where the printer is"))?;
    let path = |text: &str| Some(PathBuf::from(text)).filter(|path: &PathBuf| Path::is_absolute(path));
    let found = match text.split_once(':') {
        Some(("tcp", place)) => match address(place) {
            Some(at) => Some(Printer::Network(at)),
            // A name would have to be asked for in the network, and nobody says how long that takes.
            None => {
                return reader.unlike(
                    node,
                    detail!(
                        "a-printers-number",
                        "the printer's number in the network, as in {example}",
                        example = "\"tcp:192.168.4.9:9100\""
                    ),
                );
            }
        },
        Some(("device", place)) => path(place).map(Printer::Device),
        Some(("file", place)) => path(place).map(Printer::Folder),
        _ => return reader.unlike(node, places()),
    };
    match found {
        Some(printer) => Some(printer),
        None => {
            let wanted = detail!("a-whole-path", "a path from the top of the disk, as in {places}", places = places());
            reader.unlike(node, wanted)
        }
    }
}

/// The ways to say where a printer is.
fn places() -> Detail {
    either("\"tcp:192.168.4.9:9100\", \"device:/dev/usb/lp0\"", "\"file:/home/table/prints\"")
}

fn address(text: &str) -> Option<SocketAddr> {
    let with_port = text.parse().ok();
    let alone = || Some(SocketAddr::new(text.trim_matches(['[', ']']).parse::<IpAddr>().ok()?, RAW_PORT));
    with_port.or_else(alone).filter(|at| at.port() != 0)
}

fn columns(reader: &mut Reader<'_>, node: &Node) -> Option<Columns> {
    let all: Vec<String> = Columns::ALL.iter().map(|one| one.count().to_string()).collect();
    let found = match &node.value {
        Value::Number(number) => Columns::ALL.into_iter().find(|one| one.count().to_string() == *number),
        _ => None,
    };
    match found {
        Some(columns) => Some(columns),
        None => reader.unlike(node, detail!("right-columns", "one of {all}, without quotes", all = all.join(", "))),
    }
}
