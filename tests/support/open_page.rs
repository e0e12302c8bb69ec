//! A page as an open browser keeps it: taken apart into the fragments that the desk has named, with what the desk says is
//! different put in. It is read as text, in another way than the desk cuts it and than the page's script does.

use std::collections::BTreeMap;

/// What an open page has.
pub struct OpenPage {
    /// By key: the digest, and the text with an empty element where another fragment stands.
    known: BTreeMap<String, (String, String)>,
    /// For a page with too much to list: what it says in place of a list.
    all: Option<String>,
}

/// The renewing part of a whole page.
pub fn main_of(html: &str) -> &str {
    let from = html.find("<main id=\"main\">").unwrap_or_else(|| panic!("no page: {html}"));
    &html[from..html.find("</main>").expect("its end") + "</main>".len()]
}

/// The words of times change by themselves.
pub fn without_times(html: &str) -> String {
    let mut parts = html.split("<time ");
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |text, part| {
        let (tag, words) = part.split_once('>').expect("a tag");
        let after = words.split_once("</time>").expect("its end").1;
        format!("{text}<time {tag}></time>{after}")
    })
}

/// Where the element with a key begins and ends, and its name.
fn element<'t>(html: &'t str, key: &str) -> (usize, usize, &'t str) {
    let named = [format!(" id=\"{key}\""), format!(" data-key=\"{key}\"")];
    let at = named.iter().filter_map(|name| html.find(name)).min().unwrap_or_else(|| panic!("no {key} in {html}"));
    let from = html[..at].rfind('<').expect("a tag");
    let name = html[from + 1..].split([' ', '>']).next().expect("a name");
    let (opens, closes) = ([format!("<{name} "), format!("<{name}>")], format!("</{name}>"));
    let mut depth = 0;
    let mut at = from;
    loop {
        let rest = &html[at..];
        if opens.iter().any(|opens| rest.starts_with(opens)) {
            depth += 1;
        } else if rest.starts_with(&closes) {
            depth -= 1;
            if depth == 0 {
                return (from, at + closes.len(), name);
            }
        }
        at += 1 + html[at + 1..].find('<').expect("its end");
    }
}

impl OpenPage {
    /// What a browser keeps of a whole page.
    pub fn read(html: &str) -> Self {
        let list = html.split_once("data-has=\"").expect("what it has").1.split_once('"').expect("a list").0;
        if list.starts_with('*') {
            return Self { known: BTreeMap::new(), all: Some(list.to_owned()) };
        }
        let mut main = main_of(html).to_owned();
        let mut known = BTreeMap::new();
        for (key, digest) in list.split(',').rev().map(|pair| pair.split_once('=').expect("a digest")) {
            let (from, to, name) = element(&main, key);
            let hole = format!("<{name} data-at=\"{key}\"></{name}>");
            let text = main[from..to].to_owned();
            main.replace_range(from..to, &hole);
            known.insert(key.to_owned(), (digest.to_owned(), text));
        }
        Self { known, all: None }
    }

    /// What it tells the desk.
    pub fn has(&self) -> String {
        let list =
            || self.known.iter().map(|(key, (digest, _))| format!("{key}={digest}")).collect::<Vec<_>>().join(",");
        self.all.clone().unwrap_or_else(list)
    }

    /// Takes an answer in, whole or not.
    pub fn take(&mut self, answer: &str) {
        if answer.contains("<main id=\"main\">") && answer.contains("data-has=\"") {
            *self = Self::read(answer);
            return;
        }
        for part in answer.split("<template data-key=\"").skip(1) {
            let (key, rest) = part.split_once("\" data-digest=\"").expect("a digest");
            let (digest, rest) = rest.split_once("\">").expect("a tag");
            let text = rest.strip_suffix("</template>").expect("its end");
            self.known.insert(key.to_owned(), (digest.to_owned(), text.to_owned()));
        }
        let (_, kept) = self.build("main");
        self.known.retain(|key, _| kept.contains(key));
    }

    /// The renewing part as it is shown now.
    pub fn main(&self) -> String {
        self.build("main").0
    }

    /// An element with all that stands in it, and the keys of it all.
    fn build(&self, key: &str) -> (String, Vec<String>) {
        let (_, text) = self.known.get(key).unwrap_or_else(|| panic!("{key} was never sent"));
        let (mut whole, mut keys) = (String::new(), vec![key.to_owned()]);
        let mut rest = text.as_str();
        while let Some((before, after)) = rest.split_once(" data-at=\"") {
            let (inner, after) = after.split_once("\"></").expect("a hole");
            let (built, more) = self.build(inner);
            whole.push_str(&before[..before.rfind('<').expect("a hole")]);
            whole.push_str(&built);
            keys.extend(more);
            rest = after.split_once('>').expect("a hole").1;
        }
        whole.push_str(rest);
        (whole, keys)
    }
}
