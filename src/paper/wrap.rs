//! Lines of a width out of words.

/// `text` in lines that are no wider than `width`, as `measure` has it. It is parted at plain spaces, which a no-break space
/// is not; a word that is too wide for a line goes on in the next one.
pub(super) fn wrap(text: &str, width: f32, measure: impl Fn(&str) -> f32) -> Vec<String> {
    let mut lines = Vec::new();
    let mut line = String::new();
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        let longer = if line.is_empty() { word.to_owned() } else { format!("{line} {word}") };
        if measure(&longer) <= width {
            line = longer;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
        }
        for letter in word.chars() {
            line.push(letter);
            if line.chars().count() > 1 && measure(&line) > width {
                line.pop();
                lines.push(std::mem::take(&mut line));
                line.push(letter);
            }
        }
    }
    lines.push(line);
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    fn counted(text: &str, width: f32) -> Vec<String> {
        wrap(text, width, |line| line.chars().count() as f32)
    }

    #[test]
    fn words_keep_together_unless_they_are_too_wide() {
        assert_eq!(counted("a key and a moon", 9.0), ["a key and", "a moon"]);
        assert_eq!(counted("24\u{a0}in and  more", 5.0), ["24\u{a0}in", "and", "more"]);
        assert_eq!(counted("a mothermoon", 6.0), ["a", "mother", "moon"]);
        assert_eq!(counted("", 6.0), [""]);
        assert_eq!(counted("äöü", 0.0), ["ä", "ö", "ü"], "never without end");
    }
}
