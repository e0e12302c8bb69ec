//! What is wrong in the maker's files, and what the maker should know of them, in the reader's language.

use maud::{Markup, html};

use super::words::{capital, stopped};
use crate::{
    lang::{Lang, Texts, say},
    ron_tree::{Detail, Mistake, Mistakes},
};

/// Every mistake with its place.
pub(super) fn list(texts: &Texts, mistakes: &Mistakes) -> Markup {
    html! { ul { @for mistake in &mistakes.0 { li { (one(texts, mistake)) } } } }
}

fn one(texts: &Texts, mistake: &Mistake) -> Markup {
    html! {
        code {
            (mistake.file)
            @if mistake.line > 0 { (say!(texts, "mistake-at", line = mistake.line, column = mistake.column)) }
        }
        p { (detail(texts, &mistake.found)) " " (detail(texts, &mistake.expected)) }
    }
}

/// A detail as a sentence. What a library or the system says is marked as English.
pub(super) fn detail(texts: &Texts, detail: &Detail) -> Markup {
    let stretches = texts.detail(detail);
    let last = stretches.len().saturating_sub(1);
    html! {
        @for (i, stretch) in stretches.iter().enumerate() {
            @let words = if i == 0 { begun(&stretch.words) } else { stretch.words.clone() };
            @let words = if i == last { stopped(&words) } else { words };
            @if stretch.is_foreign { span lang=(Lang::En.code()) { (words) } } @else { (words) }
        }
    }
}

/// With a capital, unless a file or a field is named first: that is written as it is written.
fn begun(words: &str) -> String {
    let first = words.split(' ').next().unwrap_or_default();
    if first.contains(['/', '.', '_', '(']) { words.to_owned() } else { capital(words) }
}
