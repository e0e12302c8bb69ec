//! Changes of an open page are sent as changes. The renewing part of a page is cut where an element has an identity (`id`
//! or `data-key`, as `assets/desk/renew.js` knows them); each fragment has a digest, and a page that says which digests it
//! has (`x-has`) gets the fragments that are different, or nothing where none is. Each fragment's text says which others
//! stand in it, and where: so what is gone goes, and what is new finds its place.

use std::{
    collections::{HashMap, HashSet},
    fmt::Write,
    sync::Arc,
};

use axum::{
    extract::Request,
    http::{HeaderMap, Method, StatusCode},
    middleware::Next,
    response::{Html, IntoResponse, Response},
};

use crate::disk::digest::Sha256;

/// The header in which an open page says what it has: `key=digest`, parted by commas.
const HAS: &str = "x-has";
/// A page with more to list than this, in bytes, says only whether it has all of it; a longer header is not read.
const LONGEST_LIST: usize = 32 * 1024;
/// Stands in place of a key before the digest of all fragments together.
const ALL: &str = "*";
/// Hexadecimal digits of a digest: 64 bits.
const DIGEST_DIGITS: usize = 16;
/// Elements that have no end. Source: HTML Living Standard, section 13.1.2, "void elements" (from memory).
const WITHOUT_END: &[&str] =
    &["area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"];

/// A part of a page that is sent by itself: an element with its identity, without the fragments inside it.
#[derive(Debug)]
struct Fragment {
    key: String,
    /// Where another fragment stands in it, an empty element of the same sort says which.
    text: String,
    digest: String,
}

/// The renewing part of a page in fragments, each before those that stand in it.
#[derive(Debug, Clone)]
pub(super) struct Fragments(Arc<[Fragment]>);

/// What a page that says what it has is answered.
#[derive(Debug, PartialEq, Eq)]
enum Answer {
    Same,
    Changes(String),
    Whole,
}

impl Fragments {
    /// Cuts what the pages write: attributes in quotes, everything closed, signs that mean something escaped. `None` for
    /// anything else, and where the first element has no identity.
    pub(super) fn cut(html: &str) -> Option<Self> {
        let mut cutting = Cutting::default();
        let mut rest = html;
        while let Some(at) = rest.find('<') {
            let end = at + rest[at..].find('>')? + 1;
            cutting.add(&rest[..at]);
            cutting.tag(&rest[at..end])?;
            rest = &rest[end..];
        }
        let is_whole = rest.is_empty() && cutting.open.is_empty() && !cutting.texts.is_empty();
        let texts = cutting.texts.into_iter();
        is_whole.then(|| Self(texts.map(|(key, text)| Fragment { key, digest: digest_of(&text), text }).collect()))
    }

    /// What a page with these fragments says that it has.
    pub(super) fn list(&self) -> String {
        let each: Vec<String> = self.0.iter().map(|one| format!("{}={}", one.key, one.digest)).collect();
        let list = each.join(",");
        if list.len() > LONGEST_LIST { format!("{ALL}={}", short(Sha256::default(), &list)) } else { list }
    }

    /// What is sent to a page that has this.
    fn answer(&self, has: &HashMap<&str, &str>) -> Answer {
        if has.contains_key(ALL) {
            let all = self.list();
            let same = all.split_once('=').is_some_and(|(key, digest)| key == ALL && has[ALL] == digest);
            return if same { Answer::Same } else { Answer::Whole };
        }
        let differs = |one: &&Fragment| has.get(&*one.key).is_none_or(|digest| **digest != *one.digest);
        let changed: Vec<&Fragment> = self.0.iter().filter(differs).collect();
        if changed.is_empty() {
            return Answer::Same;
        }
        if changed.len() == self.0.len() {
            return Answer::Whole;
        }
        let mut text = String::from("<!DOCTYPE html>");
        for one in changed {
            // Writing to a String can't fail. Keys and digests have no sign that would have to be escaped.
            let _ = write!(
                text,
                "<template data-key=\"{}\" data-digest=\"{}\">{}</template>",
                one.key, one.digest, one.text
            );
        }
        Answer::Changes(text)
    }
}

/// The work of cutting: the texts so far, and the elements that are open.
#[derive(Default)]
struct Cutting<'t> {
    texts: Vec<(String, String)>,
    /// Each open element's name, and where one is a fragment, the fragment around it.
    open: Vec<(&'t str, Option<usize>)>,
    /// The fragment that what comes next belongs to.
    now: usize,
    keys: HashSet<&'t str>,
}

impl<'t> Cutting<'t> {
    fn add(&mut self, text: &str) {
        if let Some((_, own)) = self.texts.get_mut(self.now) {
            own.push_str(text);
        }
    }

    /// Takes in a tag with its brackets; `None` where it does not belong there.
    fn tag(&mut self, tag: &'t str) -> Option<()> {
        let inner = &tag[1..tag.len() - 1];
        if let Some(name) = inner.strip_prefix('/') {
            let (opened, around) = self.open.pop()?;
            self.add(tag);
            self.now = around.unwrap_or(self.now);
            return (opened == name).then_some(());
        }
        let name = &inner[..inner.find(' ').unwrap_or(inner.len())];
        let has_end = !WITHOUT_END.contains(&name);
        let in_a_drawing = name == "svg" || self.open.iter().any(|(open, _)| *open == "svg");
        // The first element with a key has it; browsers find that one too.
        let key = key_of(inner).filter(|key| self.keys.insert(key));
        let key = key.filter(|key| has_end && !in_a_drawing && is_plain(key));
        let mut around = None;
        if let Some(key) = key {
            self.add(&format!("<{name} data-at=\"{key}\"></{name}>"));
            around = Some(self.now);
            self.now = self.texts.len();
            self.texts.push((key.to_owned(), String::new()));
        }
        // Only one element holds all, and it is a fragment.
        if self.open.is_empty() && self.texts.len() != 1 {
            return None;
        }
        self.add(tag);
        if has_end {
            self.open.push((name, around));
        }
        Some(())
    }
}

/// An element's `id`, or else its `data-key`.
fn key_of(inner: &str) -> Option<&str> {
    let value = |name: &str| inner.split_once(name).and_then(|(_, after)| Some(after.split_once('"')?.0));
    value(" id=\"").or_else(|| value(" data-key=\"")).filter(|key| !key.is_empty())
}

/// Whether a key can stand in a header and in an attribute as it is.
fn is_plain(key: &str) -> bool {
    key.bytes().all(|byte| byte.is_ascii_alphanumeric() || b"-._~".contains(&byte))
}

/// The digest of a fragment's text. The words of a time don't count: they change by themselves, in an open page as well.
fn digest_of(text: &str) -> String {
    let mut hash = Sha256::default();
    let mut rest = text;
    while let Some((_, words)) = rest.split_once("<time ").and_then(|(_, after)| after.split_once('>')) {
        hash.update(&rest[..rest.len() - words.len()]);
        rest = words.find("</time>").map_or("", |end| &words[end..]);
    }
    short(hash, rest)
}

/// The first digits of the digest of what `hash` took in, with this behind it.
fn short(mut hash: Sha256, rest: &str) -> String {
    hash.update(rest);
    let mut digest = hash.into_hex();
    digest.truncate(DIGEST_DIGITS);
    digest
}

/// What an open page says that it has; `None` where it says nothing, or nothing that can be read.
fn what_it_has(headers: &HeaderMap) -> Option<HashMap<&str, &str>> {
    let mut all = headers.get_all(HAS).iter();
    let list = all.next()?.to_str().ok().filter(|list| list.len() <= LONGEST_LIST)?;
    if all.next().is_some() {
        return None;
    }
    let is_digest = |text: &str| text.len() == DIGEST_DIGITS && text.bytes().all(|byte| byte.is_ascii_hexdigit());
    list.split(',').map(|one| one.split_once('=').filter(|(_, digest)| is_digest(digest))).collect()
}

/// A page whose renewing part is known in fragments; it looks like any other.
pub(super) struct RenewingPage {
    /// All of it.
    pub html: String,
    pub fragments: Option<Fragments>,
}

impl IntoResponse for RenewingPage {
    fn into_response(self) -> Response {
        let mut response = Html(self.html).into_response();
        if let Some(fragments) = self.fragments {
            response.extensions_mut().insert(fragments);
        }
        response
    }
}

/// Lets a page that says what it has be answered with what is different.
pub(super) async fn send_changes(request: Request, next: Next) -> Response {
    let asks =
        (request.method() == Method::GET && request.headers().contains_key(HAS)).then(|| request.headers().clone());
    let mut response = next.run(request).await;
    let fragments = response.extensions_mut().remove::<Fragments>();
    let (Some(headers), Some(fragments), StatusCode::OK) = (asks, fragments, response.status()) else {
        return response;
    };
    match what_it_has(&headers).map(|has| fragments.answer(&has)) {
        None | Some(Answer::Whole) => response,
        Some(Answer::Same) => StatusCode::NO_CONTENT.into_response(),
        Some(Answer::Changes(changes)) => Html(changes).into_response(),
    }
}

#[cfg(test)]
mod tests {
    use axum::http::HeaderValue;

    use super::*;

    const PAGE: &str = "<main id=\"main\"><h1>All &lt;3&gt;</h1><ul data-key=\"list\"><li id=\"a\">1<br>2</li>\
                        <li data-key=\"b\"><time datetime=\"x\">just now</time></li></ul><input id=\"number\"></main>";

    fn texts(html: &str) -> Vec<(String, String)> {
        let cut = Fragments::cut(html).expect("a page");
        cut.0.iter().map(|one| (one.key.clone(), one.text.clone())).collect()
    }

    fn answer(html: &str, list: &str) -> Answer {
        let headers = [(axum::http::HeaderName::from_static(HAS), HeaderValue::from_str(list).unwrap())];
        let headers: HeaderMap = headers.into_iter().collect();
        let has = what_it_has(&headers);
        has.map_or(Answer::Whole, |has| Fragments::cut(html).expect("a page").answer(&has))
    }

    #[test]
    fn a_page_is_cut_where_an_element_has_an_identity() {
        let expected = [
            ("main", "<main id=\"main\"><h1>All &lt;3&gt;</h1><ul data-at=\"list\"></ul><input id=\"number\"></main>"),
            ("list", "<ul data-key=\"list\"><li data-at=\"a\"></li><li data-at=\"b\"></li></ul>"),
            ("a", "<li id=\"a\">1<br>2</li>"),
            ("b", "<li data-key=\"b\"><time datetime=\"x\">just now</time></li>"),
        ];
        let expected: Vec<_> = expected.map(|(key, text)| (key.to_owned(), text.to_owned())).into();
        assert_eq!(texts(PAGE), expected);
        let keys = |html: &str| texts(html).into_iter().map(|(key, _)| key).collect::<Vec<_>>();
        assert_eq!(
            keys("<p id=\"a\"><b id=\"a\"></b><svg id=\"b\"><g id=\"c\"></g></svg><i id=\"d e\"></i></p>"),
            ["a"]
        );
        for html in [
            "",
            "text",
            "<p></p>",
            "<p id=\"a\">",
            "<p id=\"a\"></b>",
            "<p id=\"a\"></p><p id=\"b\"></p>",
            "<p id=\"a\"></p>x",
            "</p>",
        ] {
            assert!(Fragments::cut(html).is_none(), "{html}");
        }
    }

    #[test]
    fn only_what_differs_is_sent() {
        let list = Fragments::cut(PAGE).unwrap().list();
        assert_eq!(answer(PAGE, &list), Answer::Same);
        assert_eq!(answer(&PAGE.replace("just now", "1 min ago"), &list), Answer::Same, "time passes by itself");
        let Answer::Changes(text) = answer(&PAGE.replace("1<br>", "3<br>"), &list) else { panic!("changes") };
        assert!(
            text.contains("<li id=\"a\">3<br>2</li>") && !text.contains("main") && !text.contains("data-at"),
            "{text}"
        );
        let Answer::Changes(text) = answer(&PAGE.replace("<li id=\"a\">1<br>2</li>", ""), &list) else {
            panic!("changes")
        };
        assert!(
            text.contains("<ul data-key=\"list\"><li data-at=\"b\"></li></ul>") && !text.contains("just now"),
            "{text}"
        );
        for garbled in [
            "",
            "main",
            "main=",
            "main=0123",
            "main=0123456789abcdeg",
            ",",
            "a=0123456789abcdef,",
            "*=0123456789abcdef",
        ] {
            assert_eq!(answer(PAGE, garbled), Answer::Whole, "{garbled}");
        }
    }

    /// A page with too much to list says only whether it has all.
    #[test]
    fn a_long_list_is_one_digest() {
        let rows: String = (0..2000).map(|n| format!("<li id=\"row-{n}\">{n}</li>")).collect();
        let page = format!("<main id=\"main\">{rows}</main>");
        let list = Fragments::cut(&page).unwrap().list();
        assert!(list.starts_with("*=") && list.len() < 20, "{list}");
        assert_eq!(answer(&page, &list), Answer::Same);
        assert_eq!(answer(&page.replace(">7<", ">8<"), &list), Answer::Whole);
    }
}
