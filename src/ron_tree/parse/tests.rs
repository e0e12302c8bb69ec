//! What is read, and where it is told that something can't be.

use super::*;

fn parsed(source: &str) -> (Option<Node>, Vec<String>) {
    let mut mistakes = Vec::new();
    let node = parse("f", source, &mut mistakes);
    (node, mistakes.iter().map(ToString::to_string).collect())
}

#[test]
fn structs_tuples_lists_words_and_comments() {
    let (node, mistakes) = parsed("// a\n( a: \"x\\\"y\", b: [Ring(1), Two], /* c */ c: Deep(d: Empty()), )");
    assert_eq!(mistakes, Vec::<String>::new());
    let Some(Node { value: Value::Struct { fields, .. }, .. }) = node else { panic!("a struct") };
    assert_eq!(fields.iter().map(|f| f.name.as_str()).collect::<Vec<_>>(), ["a", "b", "c"]);
    assert_eq!(fields[0].node.value, Value::Text("x\"y".into()));
}

#[test]
fn several_broken_places_are_all_told() {
    let (_, mistakes) = parsed("(\n a: ,\n b: \"open\n c 3,\n d: \"fine\" e: \"too\",\n)");
    assert_eq!(mistakes.len(), 4, "{mistakes:#?}");
    assert!(mistakes[0].starts_with("f:2:5"), "{}", mistakes[0]);
    assert!(mistakes[1].starts_with("f:3:5"), "{}", mistakes[1]);
}

#[test]
fn damaged_files_end_in_a_message_not_in_a_panic() {
    let whole = "( a: [\"x\", Ring(outside: \"5mm\", /* é */ wire: \"1mm\")], b: Two )";
    for end in (0..whole.len()).filter(|end| whole.is_char_boundary(*end)) {
        assert!(!parsed(&whole[..end]).1.is_empty(), "{}", &whole[..end]);
    }
    assert!(!parsed(&"(".repeat(10_000)).1.is_empty());
    assert!(!parsed(&"[".repeat(10_000)).1.is_empty());
}

/// Each of these has one bracket or quote too few: one message, with the place where it was opened.
#[test]
fn what_is_never_closed_is_told_where_it_was_opened() {
    for (source, told) in [
        (
            "(\n  a: 1,\n",
            "f:1:1: the bracket ( that is opened here is never closed; close it with ) before the end of the file",
        ),
        (
            "[\n  (\n    a: 1,\n  ]",
            "f:2:3: the bracket ( that is opened here is never closed; close it with ) before \"]\" in line 4",
        ),
        (
            "(\n  a: [\n    \"x\",\n  b: 3,\n)",
            "f:2:6: the bracket [ that is opened here is never closed; close it with ] before \"b\" in line 4",
        ),
        (
            "[\n  Ring( a: 1,\n  Ring(a: 2),\n]",
            "f:2:7: the bracket ( that is opened here is never closed; close it with ) before \"Ring\" in line 3",
        ),
        (
            "(rows: [\n [ (a: 1), (a: 2) ],\n [ (a: \"x\", (a: \"y\") ],\n])",
            "f:3:4: the bracket ( that is opened here is never closed; close it with ) before \"(\" in line 3",
        ),
        ("(\n  a: \"x,\n  b: 3,\n)", "f:2:6: a text whose closing quote is missing; end it with \" on the same line"),
        ("(a: 1) /* and\n", "f:1:8: a comment /* that never ends; end it with */"),
    ] {
        let (_, mistakes) = parsed(source);
        assert_eq!(mistakes, [told], "{source}");
    }
    // A quote that is missing in the middle of a line pairs with the next one of it.
    let (_, mistakes) = parsed("(\n  a: \"x, b: \"y\",\n)");
    assert!(mistakes[0].starts_with("f:2:14: \"y\"") && mistakes[0].contains("quote is missing"), "{mistakes:?}");
}

/// A file full of mistakes is told with a hundred of them, however long it is.
#[test]
fn a_file_of_nothing_but_mistakes_is_told_with_some_of_them() {
    for (piece, count) in
        [(",", 2_000_000), ("(,", 1_000_000), ("\"\n", 1_000_000), ("a:", 1_000_000), ("x ", 1_000_000)]
    {
        let (_, mistakes) = parsed(&format!("[{}", piece.repeat(count)));
        assert!((1..=MOST).contains(&mistakes.len()), "{piece:?}: {}", mistakes.len());
    }
}
