//! The page on which everything is counted.

use std::collections::BTreeMap;

use jiff::Timestamp;
use maud::{Markup, html};
use uuid::Uuid;

use super::{COUNTED, HERE, REFILLED};
use crate::{
    catalog::Catalog,
    craft::Home,
    desk::pages::{sign_in::alert, words},
    lang::{Message, Texts, say},
    ledger::{Count, LastCount, Reason},
};

/// What was typed and not entered yet.
#[derive(Default)]
pub(super) struct Typed {
    pub form: Option<Uuid>,
    /// The entry at which the page stood on which it was typed.
    pub seen: Option<i64>,
    pub fields: Vec<(String, String)>,
}

impl Typed {
    pub(super) fn read(fields: &[(String, String)]) -> Self {
        let text = |name: &str| fields.iter().find(|(one, _)| one == name).map(|(_, text)| text.as_str());
        Self {
            form: text("form").and_then(|form| form.parse().ok()),
            seen: text("seen").and_then(|seen| seen.parse().ok()),
            fields: fields.to_vec(),
        }
    }

    fn text(&self, name: &str) -> &str {
        self.fields.iter().find(|(one, _)| one == name).map_or("", |(_, text)| text)
    }
}

/// The counts with their reader.
pub(super) struct Shown<'a> {
    pub texts: &'static Texts,
    pub catalog: &'a Catalog,
    pub seen: i64,
    pub counts: BTreeMap<String, Count>,
    pub last: BTreeMap<String, LastCount>,
    pub now: Timestamp,
}

/// All of the page.
pub(super) fn whole(shown: &Shown<'_>, typed: &Typed, told: &Markup, trouble: Option<&Message>) -> Markup {
    let texts = shown.texts;
    // What was typed was counted when the page stood where it stood, and is entered by the form that it was.
    let (seen, form) = (typed.seen.unwrap_or(shown.seen), typed.form.unwrap_or_else(Uuid::now_v7));
    let key = form.simple().to_string();
    html! {
        h1 { (say!(texts, "count-title")) }
        (alert(texts, trouble))
        p { (say!(texts, "count-about")) }
        (shown.differences())
        form.counting method="post" action=(HERE) data-stands data-key={ "count-" (key) } {
            input type="hidden" name="form" value=(form);
            input type="hidden" name="seen" value=(seen);
            @for tray in &shown.catalog.trays {
                section.card {
                    h2 { (say!(texts, "tray", letter = tray.letter.to_string())) " " (words::tray_name(texts, shown.catalog, tray)) }
                    (shown.heads())
                    ul.count-lines {
                        @for (home, id) in tray.compartments() {
                            @if let Some(id) = id { (shown.line(id, Some(home), typed)) }
                        }
                    }
                }
            }
            section.card {
                h2 { (say!(texts, "trays-bases")) }
                (shown.heads())
                ul.count-lines { @for base in &shown.catalog.bases { (shown.line(&base.id, None, typed)) } }
            }
            div.bar { button.main { (say!(texts, "count-keep")) } }
        }
        (shown.change_form())
        (told)
        p.links { a href="/trays" { (say!(texts, "to-trays")) } }
    }
}

impl Shown<'_> {
    fn heads(&self) -> Markup {
        let texts = self.texts;
        html! {
            p.count-heads aria-hidden="true" {
                span { (say!(texts, "count-counted")) }
                span { (say!(texts, "count-refilled")) }
            }
        }
    }

    pub(super) fn name(&self, id: &str) -> String {
        let home = self.catalog.drop_kind(id).map(|kind| format!("{} ", kind.home)).unwrap_or_default();
        format!("{home}{}", words::part_name(self.texts, self.catalog, id))
    }

    /// One compartment with its two fields.
    fn line(&self, id: &str, home: Option<Home>, typed: &Typed) -> Markup {
        let texts = self.texts;
        let count = self.counts.get(id).copied().unwrap_or(Count { on_hand: 0, held: 0 });
        let name = words::part_name(texts, self.catalog, id);
        let (counted, refilled) = (format!("{COUNTED}{id}"), format!("{REFILLED}{id}"));
        html! {
            li {
                span.what {
                    @if let Some(home) = home { span.home { (home) } " " }
                    span.name { (name) } " "
                    span.faint {
                        (say!(texts, "count-expected", n = count.free()))
                        @if count.held > 0 { " " (say!(texts, "count-held", n = count.held)) }
                        @if let Some(last) = self.last.get(id) {
                            " " (say!(texts, "count-last", n = last.counted, when = words::clock(texts, last.at, self.now)))
                        }
                    }
                }
                input name=(counted) value=(typed.text(&counted)) inputmode="numeric" pattern="[0-9]{1,4}" autocomplete="off"
                    aria-label=(say!(texts, "count-counted-of", name = name.as_ref()));
                input name=(refilled) value=(typed.text(&refilled)) inputmode="numeric" pattern="[0-9]{1,4}" autocomplete="off"
                    aria-label=(say!(texts, "count-refilled-of", name = name.as_ref()));
            }
        }
    }

    /// What differs without a reason, each with a form for one.
    fn differences(&self) -> Markup {
        let texts = self.texts;
        let open: Vec<(&String, &LastCount)> = self.last.iter().filter(|(_, last)| last.missing != 0).collect();
        html! {
            @if !open.is_empty() {
                section.card aria-label=(say!(texts, "count-differences")) {
                    h2 { (say!(texts, "count-differences")) " " span.tally { (open.len()) } }
                    ul.differences { @for (id, last) in open { li { (self.difference(id, last)) } } }
                }
            }
        }
    }

    fn difference(&self, id: &str, last: &LastCount) -> Markup {
        let (texts, many) = (self.texts, last.missing.unsigned_abs());
        let name = self.name(id);
        let field = format!("many-{id}");
        html! {
            p {
                strong { (name) } ": "
                @if last.missing > 0 { (say!(texts, "count-missing", n = many)) } @else { (say!(texts, "count-more", n = many)) }
            }
            form.row.wraps method="post" action={ (HERE) "/reason" } {
                input type="hidden" name="form" value=(Uuid::now_v7());
                input type="hidden" name="part" value=(id);
                label for=(field) { (say!(texts, "count-of-these")) }
                input.few id=(field) name="many" value=(many) inputmode="numeric" pattern="[0-9]{1,4}" autocomplete="off" required;
                @for reason in Reason::ALL.into_iter().filter(|reason| reason.adds() == (last.missing < 0)) {
                    button.quiet name="reason" value=(reason.code()) { (reason_word(texts, reason)) }
                }
            }
        }
    }

    /// Strays, and what broke or was found while nobody counted.
    fn change_form(&self) -> Markup {
        let texts = self.texts;
        html! {
            section.card aria-label=(say!(texts, "count-change")) {
                h2 { (say!(texts, "count-change")) }
                p.faint { (say!(texts, "count-change-about")) }
                form.stack method="post" action={ (HERE) "/change" } {
                    input type="hidden" name="form" value=(Uuid::now_v7());
                    div.row.wraps {
                        div {
                            label for="home" { (say!(texts, "count-home")) }
                            input #home name="home" autocomplete="off" required;
                        }
                        div {
                            label for="many" { (say!(texts, "count-many")) }
                            input #many name="many" value="1" inputmode="numeric" pattern="[0-9]{1,4}" autocomplete="off" required;
                        }
                    }
                    div.row.wraps {
                        button name="what" value="stray" { (say!(texts, "count-stray")) }
                        @for reason in Reason::ALL {
                            button.quiet name="what" value=(reason.code()) { (reason_word(texts, reason)) }
                        }
                    }
                }
            }
        }
    }
}

/// A reason in words.
pub(super) fn reason_word(texts: &Texts, reason: Reason) -> String {
    texts.get(&format!("count-reason-{}", reason.code()))
}
