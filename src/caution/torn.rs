//! What is wrong in a rules file that does not read: not only in the first rule that is.

use std::ops::Range;

use super::{Rule, Rules, RulesMistake, slips::place};

/// One mistake for every rule that does not read, and one for what stands around them; what `whole` says where each part
/// by itself reads.
pub(super) fn all_mistakes(source: &str, whole: &ron::error::SpannedError) -> Vec<RulesMistake> {
    let Some((list, places)) = elements(source) else { return vec![told(whole, source, 0)] };
    let around = format!("{}{}", &source[..list.start], &source[list.end..]);
    let mut all: Vec<RulesMistake> = Vec::new();
    if let Err(error) = ron::from_str::<Rules>(&around) {
        let before = error.span.start.line <= place(source, list.start).0;
        // What stands after the rules is as many lines further down as they take.
        let rules_lines = if before { 0 } else { source[list].matches('\n').count() };
        let mistake = told(&error, source, 0);
        all.push(RulesMistake { line: mistake.line + rules_lines, ..mistake });
    }
    for place in places {
        if let Err(error) = ron::from_str::<Rule>(&source[place.clone()]) {
            all.push(told(&error, source, place.start));
        }
    }
    if all.is_empty() { vec![told(whole, source, 0)] } else { all }
}

/// An error in a part of `source` that begins at `from`.
fn told(error: &ron::error::SpannedError, source: &str, from: usize) -> RulesMistake {
    let (line, column) = place(source, from);
    let at = error.span.start;
    RulesMistake {
        line: line + at.line - 1,
        column: if at.line == 1 { column + at.col - 1 } else { at.col },
        found: error.code.to_string(),
        expected: "write it as in the rules that come with the program".into(),
    }
}

/// Where the list of rules begins and ends, and each of them in it. `None` where brackets do not match.
fn elements(source: &str) -> Option<(Range<usize>, Vec<Range<usize>>)> {
    let name = "rules:";
    let start = outside_text(source).find(|(at, _)| source[*at..].starts_with(name))?.0 + name.len();
    let open = start + source[start..].find('[')? + 1;
    let (mut depth, mut from, mut places) = (0usize, None, Vec::new());
    for (at, c) in outside_text(source).filter(|(at, _)| *at >= open) {
        match c {
            '(' | '[' | '{' => {
                from = from.or(Some(at));
                depth += 1;
            }
            ']' if depth == 0 => return Some((open..at, places)),
            ')' | ']' | '}' => {
                depth = depth.checked_sub(1)?;
                if let (0, Some(from)) = (depth, from.take_if(|_| depth == 0)) {
                    places.push(from..at + 1);
                }
            }
            _ => {}
        }
    }
    None
}

/// The letters of `source` that stand in no text and no remark.
fn outside_text(source: &str) -> impl Iterator<Item = (usize, char)> {
    let (mut in_text, mut in_remark, mut escaped) = (false, false, false);
    source.char_indices().filter(move |&(at, c)| {
        if in_remark {
            in_remark = c != '\n';
            return false;
        }
        if in_text {
            in_text = escaped || c != '"';
            escaped = !escaped && c == '\\';
            return false;
        }
        in_remark = source[at..].starts_with("//");
        in_text = c == '"';
        !in_remark && !in_text
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_rule_that_does_not_read_is_told() {
        let whole = include_str!("../../assets/rules/us.ron");
        let broken = whole
            .replacen("gauge: Inch", "gauge: Inches", 1)
            .replacen("code: glass", "code: glas", 1)
            .replacen("status: Practice", "status: Practise", 1);
        let told = Rules::from_ron(&broken).expect_err("three mistakes");
        let place = |words: &str| {
            let before = &broken[..broken.find(words).unwrap()];
            before.matches('\n').count() + 1
        };
        let lines: Vec<usize> = told.iter().map(|one| one.line).collect();
        assert_eq!(lines, [place("Inches"), place("glas,"), place("Practise")], "{told:?}");
        for (one, word) in told.iter().zip(["Inches", "glas", "Practise"]) {
            let line = broken.lines().nth(one.line - 1).unwrap();
            let at: String = line.chars().skip(one.column - 1).collect();
            assert!(one.found.contains(word) && at.starts_with(word), "{one}: {at}");
        }
    }

    #[test]
    fn brackets_in_texts_and_remarks_are_none() {
        let whole = include_str!("../../assets/rules/uk.ron");
        let count = Rules::from_ron(whole).unwrap().rules.len();
        let odd = whole.replacen("seller: \"", "seller: \") ] \\\" ( ", 1).replacen(
            "        (\n",
            "        ( // ] ) \"\n",
            1,
        );
        assert!(Rules::from_ron(&odd).is_ok());
        assert_eq!(elements(&odd).unwrap().1.len(), count);
        assert!(elements(&whole[..whole.len() / 2]).is_none());
    }
}
