//! What others wrote, repeated in a message: in one line, cut short where it is long, and with nothing in it that is
//! there and can't be seen.

mod hidden;

pub use hidden::{Hidden, hidden_in, is_never_seen};

/// Characters of somebody's words that a message repeats; the beginning is enough to find them.
const EXCERPT: usize = 60;
/// Characters of a whole message. Longer ones are no messages any more.
const LONGEST_LINE: usize = 600;

/// The beginning of `text` in quotes, with control characters and hidden ones as codes.
pub fn quoted(text: &str) -> String {
    format!("{:?}", cut(text, EXCERPT))
}

/// The beginning of `text` as [`quoted`] has it, without quotes.
pub fn excerpt(text: &str) -> String {
    escaped(&cut(text, EXCERPT))
}

/// `text` as one line that can be shown anywhere: control characters and hidden ones as codes, and not longer than a message
/// may be.
pub fn one_line(text: &str) -> String {
    escaped(&cut(text, LONGEST_LINE))
}

fn escaped(text: &str) -> String {
    let mut line = String::with_capacity(text.len());
    for c in text.chars() {
        if c.is_control() || is_never_seen(c) {
            line.extend(c.escape_debug());
        } else {
            line.push(c);
        }
    }
    line
}

fn cut(text: &str, most: usize) -> String {
    match text.char_indices().nth(most) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_repeated_is_short_and_visible() {
        assert_eq!(quoted("key"), "\"key\"");
        assert_eq!(quoted("a\0b\u{202e}c\n"), "\"a\\0b\\u{202e}c\\n\"");
        let long = quoted(&"é".repeat(3000));
        assert!(long.ends_with("é…\"") && long.chars().count() == EXCERPT + 3, "{long}");
        assert_eq!(one_line("two\nlines,\ta bell\u{7} and \u{feff}"), "two\\nlines,\\ta bell\\u{7} and \\u{feff}");
        assert_eq!(excerpt("\u{202e}3"), "\\u{202e}3");
        assert_eq!(one_line("a paragraph\u{2029}ends"), "a paragraph\\u{2029}ends");
        assert_eq!(one_line("Zoë’s clé, 8 g"), "Zoë’s clé, 8 g");
        assert_eq!(one_line(&"x".repeat(100_000)).chars().count(), LONGEST_LINE + 1);
    }
}
