//! Characters that are there and can't be seen: they make two names that look the same, or turn what is read around.

use std::fmt;

/// A hidden character that has no business where it stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Hidden(pub char);

impl fmt::Display for Hidden {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "the hidden character U+{:04X}", u32::from(self.0))
    }
}

/// The first hidden character of `text` that hides something.
///
/// Some scripts need characters that can't be seen: joiners (U+200C, U+200D) between the letters of Arabic, of the scripts
/// of South and South-East Asia and of Mongolian, and between signs that make one picture; marks of direction (U+200E,
/// U+200F, U+061C) in names with letters that are written from right to left. These are let stand right behind a character
/// of such a script, or in such a name beside a character that is seen.
/// Source: Unicode Standard, chapter 23.2, layout controls (from memory).
pub fn hidden_in(text: &str) -> Option<Hidden> {
    let has_right_to_left = text.chars().any(is_right_to_left);
    let mut before = None;
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        let has_reason = if is_joiner(c) {
            before.is_some_and(takes_joiners)
        } else if is_direction(c) {
            let beside = |c: char| !c.is_whitespace() && !is_unseen(c);
            has_right_to_left && (before.is_some_and(beside) || chars.peek().is_some_and(|next| beside(*next)))
        } else {
            !c.is_control() && !is_never_seen(c)
        };
        if !has_reason {
            return Some(Hidden(c));
        }
        before = Some(c);
    }
    None
}

/// Zero width space and word joiner, the byte order mark, what turns the order of whole passages, breaks of lines that are no
/// control characters, and tags.
/// Source: Unicode Standard, general categories Cf, Zl and Zp (from memory).
pub const fn is_never_seen(c: char) -> bool {
    matches!(
        c,
        '\u{ad}'
            | '\u{180e}'
            | '\u{200b}'
            | '\u{2028}'..='\u{202e}'
            | '\u{2060}'..='\u{206f}'
            | '\u{feff}'
            | '\u{fff9}'..='\u{fffb}'
            | '\u{e0000}'..='\u{e007f}'
    )
}

const fn is_joiner(c: char) -> bool {
    matches!(c, '\u{200c}' | '\u{200d}')
}

const fn is_direction(c: char) -> bool {
    matches!(c, '\u{200e}' | '\u{200f}' | '\u{61c}')
}

fn is_unseen(c: char) -> bool {
    c.is_control() || is_joiner(c) || is_direction(c) || is_never_seen(c)
}

/// Hebrew, Arabic, Syriac, Thaana, N'Ko and their neighbours, with their presentation forms.
const fn is_right_to_left(c: char) -> bool {
    matches!(c, '\u{590}'..='\u{61b}' | '\u{61d}'..='\u{8ff}' | '\u{fb1d}'..='\u{fdff}' | '\u{fe70}'..='\u{fefc}')
}

/// Whether a joiner behind this character changes what is seen.
const fn takes_joiners(c: char) -> bool {
    matches!(
        c,
        // Arabic to N'Ko; the scripts of India, Sri Lanka, Thailand, Laos, Tibet and Burma; Khmer and Mongolian.
        '\u{620}'..='\u{109f}' | '\u{1780}'..='\u{18af}' | '\u{a840}'..='\u{abff}' | '\u{fb50}'..='\u{fdff}'
            // Signs and pictures, their variation selectors and tones.
            | '\u{2190}'..='\u{2bff}' | '\u{fe00}'..='\u{fe0f}' | '\u{1f000}'..='\u{1faff}'
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_scripts_need_stands_and_what_hides_is_found() {
        for good in [
            "Heart-bow key",
            "Clé à cœur, 8 g",
            // A Persian plural with a joiner that keeps apart, and a letter that ends in its joining form.
            "ستاره\u{200c}ها",
            "ه\u{200d}",
            // A half form of Devanagari and a conjunct of Sinhala.
            "क्\u{200d}",
            "ක්\u{200d}ෂ",
            // A family as one picture; a heart on fire.
            "\u{1f469}\u{200d}\u{1f467}",
            "\u{2764}\u{fe0f}\u{200d}\u{1f525}",
            // Hebrew with a sign of another direction at its end.
            "מפתח C++\u{200e}",
            "\u{200f}מפתח",
        ] {
            assert_eq!(hidden_in(good), None, "{good:?}");
        }
        for (bad, found) in [
            ("key\u{200b}heart", '\u{200b}'),
            ("\u{feff}key", '\u{feff}'),
            ("key\u{202e}traeh", '\u{202e}'),
            ("\u{2066}key\u{2069}", '\u{2066}'),
            ("ke\u{200d}y", '\u{200d}'),
            ("\u{200c}key", '\u{200c}'),
            ("key\u{200e}", '\u{200e}'),
            ("מפתח\u{200e}\u{200e}\u{200e}", '\u{200e}'),
            ("ستاره\u{200c}\u{200c}ها", '\u{200c}'),
            ("a\0b", '\0'),
            ("a\u{9b}b", '\u{9b}'),
            ("k\u{e0065}ey", '\u{e0065}'),
        ] {
            assert_eq!(hidden_in(bad), Some(Hidden(found)), "{bad:?}");
        }
        assert_eq!(Hidden('\u{200b}').to_string(), "the hidden character U+200B");
    }
}
