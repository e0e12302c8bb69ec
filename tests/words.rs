//! How the texts of tablet and desk are written, read off the files of the four languages.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use std::{fs, path::Path};

/// No-break space.
const NBSP: char = '\u{a0}';

/// The languages there are.
fn languages() -> Vec<String> {
    let files = fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/lang")).expect("the languages");
    let name = |file: fs::DirEntry| file.file_name().to_str()?.strip_suffix(".ftl").map(str::to_owned);
    let all: Vec<String> = files.filter_map(|file| name(file.expect("a file"))).collect();
    assert!(all.len() >= 4, "{all:?}");
    all
}

/// The texts of a language, each with its place in its file: the tablet's, then the desk's by their rooms.
fn texts(lang: &str) -> Vec<(String, String)> {
    let rooms = fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/lang").join(lang)).expect("the rooms");
    let mut rooms: Vec<String> =
        rooms.map(|room| format!("assets/lang/{lang}/{}", room.expect("a file").file_name().display())).collect();
    rooms.sort();
    let tablets = texts_of(&format!("assets/lang/{lang}.ftl"));
    assert!(tablets.len() > 150, "the tablet's were not read");
    let desks: Vec<_> = rooms.iter().flat_map(|room| texts_of(room)).collect();
    assert!(rooms.len() > 6 && desks.len() > 150, "the desk's were not read");
    tablets.into_iter().chain(desks).collect()
}

/// The texts of one file.
fn texts_of(file: &str) -> Vec<(String, String)> {
    let whole = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(file)).expect("a language's file");
    let lines = whole.lines().enumerate().filter(|(_, line)| !line.starts_with('#'));
    let texts = lines.map(|(n, line)| {
        let text = match line.split_once(" = ") {
            Some((_, text)) if !line.starts_with(' ') => text,
            _ => line,
        };
        (format!("{file}:{}", n + 1), text.to_owned())
    });
    texts.filter(|(_, text)| !text.trim().is_empty()).collect()
}

/// The places where a French sign stands on a plain space or on none. Source: Lexique des règles typographiques en usage
/// à l'Imprimerie nationale (from memory); the wide no-break space for all of them, since many typefaces lack the narrow.
fn loose_french(text: &str) -> bool {
    let chars: Vec<char> = text.chars().collect();
    let after = |i: usize| chars.get(i + 1).copied();
    let before = |i: usize| i.checked_sub(1).map(|i| chars[i]);
    (0..chars.len()).any(|i| match chars[i] {
        // A word for a machine, as `ticket:ID`, is no sentence.
        ':' if after(i).is_some_and(char::is_alphabetic) => false,
        ':' | ';' | '!' | '?' | '»' => before(i) != Some(NBSP),
        '«' => after(i) != Some(NBSP),
        _ => false,
    })
}

/// Whether a number, or a place for one, can be parted from its unit.
fn loose_unit(text: &str) -> bool {
    let parts: Vec<&str> = text.split(' ').collect();
    let number = |word: &str| word.ends_with(|c: char| c.is_ascii_digit() || c == '}');
    let unit =
        |word: &str| ["mm", "cm", "g", "kg", "min", "h"].contains(&word.trim_end_matches(|c: char| !c.is_alphabetic()));
    parts.windows(2).any(|pair| number(pair[0]) && unit(pair[1]))
}

/// The first word of formal address: guest and seller are du, tu and tú throughout.
fn formal<'a>(lang: &str, text: &'a str) -> Option<&'a str> {
    let is_formal = |word: &&str| {
        let small = word.to_lowercase();
        match lang {
            // At the head of a sentence "Sie" may mean them; such a sentence is written in another way.
            "de" => ["Sie", "Ihnen", "Ihr", "Ihre", "Ihrem", "Ihren", "Ihrer", "Ihres"].contains(word),
            "fr" => {
                let not_verbs = ["chez", "assez", "nez"];
                ["vous", "votre", "vos"].contains(&&*small) || small.ends_with("ez") && !not_verbs.contains(&&*small)
            }
            "es" => [
                "usted",
                "ustedes",
                "apoye",
                "compruebe",
                "elija",
                "espere",
                "haga",
                "mantenga",
                "mire",
                "pulse",
                "toque",
                "vaya",
            ]
            .contains(&&*small),
            _ => false,
        }
    };
    text.split(|c: char| !c.is_alphabetic()).find(is_formal)
}

#[test]
fn no_line_breaks_before_a_sign_or_a_unit() {
    assert!(loose_french("Où ?") && loose_french("Où?") && loose_french("« a\u{a0}»") && loose_french("a : b"));
    assert!(!loose_french("«\u{a0}Où\u{a0}?\u{a0}»"));
    assert!(loose_unit("{ $opens } mm; so") && loose_unit("3 cm.") && !loose_unit("{ $opens }\u{a0}mm; so"));
    let mut loose = Vec::new();
    for lang in languages() {
        let wrong = |text: &str| loose_unit(text) || lang == "fr" && loose_french(text);
        loose.extend(texts(&lang).into_iter().filter(|(_, text)| wrong(text)));
    }
    assert!(loose.is_empty(), "a no-break space is missing: {loose:#?}");
}

#[test]
fn nobody_is_addressed_formally() {
    let caught = [("de", "Halten Sie"), ("fr", "Touchez ici"), ("fr", "votre bijou"), ("es", "Haga clic")];
    assert!(caught.iter().all(|(lang, text)| formal(lang, text).is_some()));
    assert_eq!(formal("fr", "chez toi, c’est assez"), None);
    let mut stiff = Vec::new();
    for lang in ["es", "fr", "de"] {
        let words = |(place, text): &(String, String)| Some(format!("{place}: {}", formal(lang, text)?));
        stiff.extend(texts(lang).iter().filter_map(words));
    }
    assert!(stiff.is_empty(), "{stiff:#?}");
}

/// What guests read says charm and bead as the trade does: "drop" is the maker's word, in files and on the desk. And "show"
/// is only ever something to do: the event of that name is the seller's.
#[test]
fn guests_read_the_words_of_the_trade() {
    let whole = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/lang/en.ftl")).expect("English");
    let (mut key, mut read, mut faults) = ("", 0, Vec::new());
    for line in whole.lines().filter(|line| !line.starts_with('#')) {
        let text = match line.split_once(" = ") {
            Some((name, text)) if !line.starts_with(' ') => {
                key = name;
                text
            }
            _ => line,
        };
        if ["seller-", "pair-", "pin-"].iter().any(|sellers| key.starts_with(sellers)) {
            continue;
        }
        read += 1;
        let words: Vec<String> =
            text.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty()).map(str::to_lowercase).collect();
        let is_event = |pair: &[String]| pair[1] == "show" && ["a", "the", "this", "any"].contains(&pair[0].as_str());
        if words.iter().any(|word| word == "drop" || word == "drops")
            || words == ["show"]
            || words.windows(2).any(is_event)
        {
            faults.push(format!("{key}: {text}"));
        }
    }
    assert!(read > 200, "{read}");
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
