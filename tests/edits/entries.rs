//! Random changes of random files, beside a small model of what they come to.

use chatelaine::ron_tree::{Document, EditError, Node, Step, Value, in_quotes};

use crate::random::Random;

/// A value without its place and its comments.
#[derive(Debug, Clone, PartialEq)]
enum Plain {
    Text(String),
    Word(String),
    Number(String),
    Struct(Option<String>, Vec<(String, Plain)>),
    List(Vec<Plain>),
}

fn plain(node: &Node) -> Plain {
    match &node.value {
        Value::Text(text) => Plain::Text(text.clone()),
        Value::Word(word) => Plain::Word(word.clone()),
        Value::Number(number) => Plain::Number(number.clone()),
        Value::Struct { name, fields } => {
            Plain::Struct(name.clone(), fields.iter().map(|field| (field.name.clone(), plain(&field.node))).collect())
        }
        Value::List(items) => Plain::List(items.iter().map(plain).collect()),
        Value::Tuple { .. } => panic!("none is written here"),
    }
}

/// Comments in their order. Each of these is another one, and no text has a slash.
fn comments(source: &str) -> Vec<&str> {
    let mut found = Vec::new();
    let mut rest = source;
    while let Some(at) = rest.find('/') {
        rest = &rest[at..];
        let end = if rest.starts_with("//") { rest.find('\n').unwrap() } else { rest.find("*/").unwrap() + 2 };
        found.push(rest[..end].trim_end());
        rest = &rest[end..];
    }
    found
}

/// A hand that writes as people do, and differently every time.
struct Hand {
    random: Random,
    comments: usize,
    lines: &'static str,
}

impl Hand {
    fn chance(&mut self, percent: u64) -> bool {
        self.random.below(100) < percent
    }

    fn blank(&mut self) -> String {
        self.comments += 1;
        match self.random.below(12) {
            0 => format!(" // remark {}, (with [signs{}", self.comments, self.lines),
            1 => format!(" /* note {}: \" ) */ ", self.comments),
            2 => format!("{}    ", self.lines),
            3 => format!("{0}{0}  // above {1}{0}  ", self.lines, self.comments),
            4..=7 => " ".to_owned(),
            _ => String::new(),
        }
    }

    fn value(&mut self, depth: usize) -> String {
        let kinds = if depth == 0 { 3 } else { 6 };
        match self.random.below(kinds) {
            0 => in_quotes(["", "a \"b\" \\ c", "Ünï\tcode", "two\nlines"][self.random.of(4)]),
            1 => ["Empty", "true", "Charm"][self.random.of(3)].to_owned(),
            2 => ["3", "-1.5", "240"][self.random.of(3)].to_owned(),
            3 => {
                let items = (0..self.random.of(5)).map(|_| self.value(depth - 1)).collect();
                self.bracket("[", items, "]")
            }
            _ => {
                let fields = (0..self.random.of(5))
                    .map(|i| format!("f{i}{}:{}{}", self.blank(), self.blank(), self.value(depth - 1)))
                    .collect();
                let name = if self.chance(30) { format!("Ring{}", self.blank()) } else { String::new() };
                self.bracket(&format!("{name}("), fields, ")")
            }
        }
    }

    fn bracket(&mut self, open: &str, entries: Vec<String>, close: &str) -> String {
        let mut text = format!("{open}{}", self.blank());
        let count = entries.len();
        for (i, entry) in entries.into_iter().enumerate() {
            text += &format!("{entry}{}", self.blank());
            if i + 1 < count || self.chance(50) {
                text.push(',');
            }
            text += &self.blank();
        }
        text + close
    }
}

/// A place of the tree, chosen by chance, that is a list or a struct.
fn some_bracket<'n>(node: &'n Node, random: &mut Random, path: &mut Vec<Step<'n>>) {
    let inner: Vec<(Step<'n>, &'n Node)> = match &node.value {
        Value::List(items) => items.iter().enumerate().map(|(i, item)| (Step::Item(i), item)).collect(),
        Value::Struct { fields, .. } => fields.iter().map(|field| (Step::Field(&field.name), &field.node)).collect(),
        _ => vec![],
    };
    let inner: Vec<_> =
        inner.into_iter().filter(|(_, node)| matches!(node.value, Value::List(_) | Value::Struct { .. })).collect();
    if inner.is_empty() || random.below(4) == 0 {
        return;
    }
    let (step, next) = inner[random.of(inner.len())];
    path.push(step);
    some_bracket(next, random, path);
}

fn model_at<'p>(root: &'p mut Plain, path: &[Step<'_>]) -> &'p mut Plain {
    path.iter().fold(root, |place, step| match (place, step) {
        (Plain::List(items), Step::Item(i)) => &mut items[*i],
        (Plain::Struct(_, fields), Step::Field(name)) => {
            &mut fields.iter_mut().find(|field| field.0 == *name).unwrap().1
        }
        other => panic!("no such place: {other:?}"),
    })
}

/// Fifty changes of one file. The file reads after each, as the model has it; every comment is there in its order but for
/// those inside a value that was taken out or replaced; and what stands before and behind the place is as it was.
fn fifty_changes(seed: u64) -> usize {
    let lines = if seed.is_multiple_of(3) { "\r\n" } else { "\n" };
    let mut hand = Hand { random: Random(seed), comments: 0, lines };
    let items = (0..4).map(|_| hand.value(3)).collect();
    let source = format!("{}{}{lines}", hand.blank(), hand.bracket("[", items, "]"));
    let mut file = Document::read("f", source).unwrap();
    let mut made = 0;
    for _ in 0..50 {
        let (before, mut model) = (file.clone(), plain(file.root()));
        let mut path = Vec::new();
        some_bracket(before.root(), &mut hand.random, &mut path);
        let place = before.find(&path).unwrap();
        let fresh = Document::read("f", hand.value(1)).unwrap();
        let value = fresh.text();
        let mut gone = Vec::new();
        match (&place.value, model_at(&mut model, &path)) {
            (Value::List(items), Plain::List(plains)) => {
                let i = hand.random.of(items.len() + 1);
                match hand.random.below(3) {
                    0 => {
                        file.insert_item(&path, i, value).unwrap();
                        plains.insert(i, plain(fresh.root()));
                    }
                    1 if i < items.len() => {
                        file.remove_item(&path, i).unwrap();
                        plains.remove(i);
                        gone = comments(&before.text()[items[i].at..items[i].end]);
                    }
                    _ if i < items.len() => {
                        let place = [path.as_slice(), &[Step::Item(i)]].concat();
                        file.replace(&place, value).unwrap();
                        plains[i] = plain(fresh.root());
                        gone = comments(&before.text()[items[i].at..items[i].end]);
                        let (head, tail) = (&before.text()[..items[i].at], &before.text()[items[i].end..]);
                        assert!(file.text().starts_with(head) && file.text().ends_with(tail), "seed {seed}");
                    }
                    _ => continue,
                }
            }
            (Value::Struct { fields, .. }, Plain::Struct(_, plains)) => {
                let name = format!("f{}", hand.random.of(6));
                let at = fields.iter().position(|field| field.name == name);
                if hand.chance(60) {
                    file.set_field(&path, &name, value).unwrap();
                    match at {
                        Some(i) => plains[i].1 = plain(fresh.root()),
                        None => plains.push((name, plain(fresh.root()))),
                    }
                    gone =
                        at.map(|i| &fields[i].node).map_or(vec![], |node| comments(&before.text()[node.at..node.end]));
                } else {
                    file.remove_field(&path, &name).unwrap();
                    if let Some(i) = at {
                        plains.remove(i);
                        gone = comments(&before.text()[fields[i].at..fields[i].node.end]);
                    }
                }
            }
            other => panic!("{other:?}"),
        }
        let told = format!("seed {seed}\n--- before\n{}\n--- after\n{}", before.text(), file.text());
        assert_eq!(plain(file.root()), model, "{told}");
        let new = comments(value);
        let left: Vec<_> = comments(before.text()).into_iter().filter(|one| !gone.contains(one)).collect();
        let there: Vec<_> = comments(file.text()).into_iter().filter(|one| !new.contains(one)).collect();
        assert_eq!(there, left, "{told}");
        let again = Document::read("f", file.text()).unwrap();
        assert_eq!(again, file);
        made += 1;
    }
    made
}

#[test]
fn every_comment_and_every_other_entry_stays() {
    let made: usize = (0..400).map(|seed| fifty_changes(seed * 7919 + 1)).sum();
    println!("{made} changes of 400 files");
    assert!(made > 10_000, "only {made}");
}

/// What a maker would see in the file: the new field below the last, in the same hand.
#[test]
fn what_is_written_stands_as_somebody_would_write_it() {
    let source = "[\n    // the red ones\n    (\n        id: \"a\", price: \"3.00\", // in May\n    ),\n    Empty, // later\n    (id: \"c\")\n]\n";
    let mut file = Document::read("f", source).unwrap();
    file.set_field(&[Step::Item(0)], "price", "\"3.50\"").unwrap();
    file.set_field(&[Step::Item(0)], "stock", "5").unwrap();
    file.set_field(&[Step::Item(2)], "stock", "7").unwrap();
    file.insert_item(&[], 3, "Empty").unwrap();
    assert_eq!(
        file.text(),
        "[\n    // the red ones\n    (\n        id: \"a\", price: \"3.50\", // in May\n        stock: 5,\n    ),\n    Empty, // later\n    \
         (id: \"c\", stock: 7),\n    Empty\n]\n"
    );
    file.remove_field(&[Step::Item(0)], "stock").unwrap();
    file.remove_item(&[], 3).unwrap();
    file.remove_field(&[Step::Item(2)], "stock").unwrap();
    file.set_field(&[Step::Item(0)], "price", "\"3.00\"").unwrap();
    assert_eq!(file.text(), source.replace("(id: \"c\")", "(id: \"c\", ),"));
    // The comment above an entry goes where the entry goes, that in the line of another does not.
    assert_eq!(
        file.written_with_comments(&[], 0),
        Some("// the red ones\n    (\n        id: \"a\", price: \"3.00\", // in May\n    )")
    );
    assert_eq!(file.written_with_comments(&[], 1), Some("Empty"));
    assert_eq!(file.written_with_comments(&[], 2), Some("(id: \"c\", )"));
    for (bare, grown) in
        [("[]", "[x]"), ("[ ]", "[ x]"), ("[\n]", "[\n    x,\n]"), ("[a]", "[x, a]"), ("[\n  a\n]", "[\n  x,\n  a\n]")]
    {
        let mut file = Document::read("f", bare).unwrap();
        file.insert_item(&[], 0, "x").unwrap();
        assert_eq!(file.text(), grown);
    }
}

/// What is no value changes nothing, whoever sends it.
#[test]
fn what_does_not_read_is_not_written() {
    let source = "(rows: [(price: \"3.00\")])";
    let mut file = Document::read("f", source).unwrap();
    let place = [Step::Field("rows"), Step::Item(0)];
    for value in ["", "\"", "(", "a b", "1, stock: 2", "\"x\" // ", "]", "/*"] {
        let refused = file.set_field(&place, "price", value);
        assert!(matches!(refused, Err(EditError::WouldNotRead(_))), "{value:?}: {refused:?}");
    }
    for path in [&[Step::Item(0)][..], &[Step::Field("rows"), Step::Item(1)], &[Step::Field("none")]] {
        assert!(matches!(file.set_field(path, "price", "1"), Err(EditError::NoPlace(_))));
    }
    assert!(file.insert_item(&[Step::Field("rows")], 2, "Empty").is_err());
    assert!(file.remove_item(&[Step::Field("rows")], 1).is_err());
    assert_eq!(file.text(), source);
    for words in ["", "\"", "\\", "a\nb\tc", "(]//", "\u{1F48D}"] {
        file.set_field(&place, "name", &in_quotes(words)).unwrap();
        let node = file.find(&[place[0], place[1], Step::Field("name")]).unwrap();
        assert_eq!(node.value, Value::Text(words.to_owned()));
    }
    assert!(Document::read("f", "(a: 1").is_err());
}
