//! A text with something set into one of its places: a figure that stands out, a number in its own type.

use maud::{Markup, html};

/// Stands in the place until the part is set there. It is in no text.
pub(super) const HERE: &str = "\u{1}";

/// The text with `part` in the place of [`HERE`].
pub(super) fn inset(text: &str, part: &Markup) -> Markup {
    let (before, after) = text.split_once(HERE).unwrap_or((text, ""));
    html! { (before) (part) (after) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_part_stands_where_the_language_has_its_place() {
        let part = html! { b { "2 < 3" } };
        assert_eq!(inset("Gift & \u{1} now", &part).into_string(), "Gift &amp; <b>2 &lt; 3</b> now");
        assert_eq!(inset("\u{1} now", &part).into_string(), "<b>2 &lt; 3</b> now");
    }
}
