//! A page that asks before something that can't be taken back.

use maud::{Markup, html};

use crate::lang::{Texts, say};

/// What is asked.
pub(super) struct Question<'a> {
    /// In whose words the rest of the page is.
    pub texts: &'a Texts,
    /// What is asked, as the page's heading.
    pub title: String,
    /// What will happen.
    pub text: String,
    /// Where yes is sent.
    pub action: String,
    /// What yes says.
    pub yes: String,
    /// A hidden field that says what exactly was asked about.
    pub field: Option<(&'a str, String)>,
    /// Where no leads.
    pub back: String,
}

/// The page's content.
pub(super) fn ask(question: &Question<'_>) -> Markup {
    html! {
        section.card.ask {
            h1 { (question.title) }
            p { (question.text) }
            form method="post" action=(question.action) {
                @if let Some((name, value)) = &question.field {
                    input type="hidden" name=(name) value=(value);
                }
                div.row {
                    button.grave { (question.yes) }
                    a.button.quiet href=(question.back) { (say!(question.texts, "go-back")) }
                }
            }
        }
    }
}
