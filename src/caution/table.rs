//! All rules on one page: every caution, for every wearer, over the facts that decide it, as whoever assesses the table can
//! read it. Nothing on it is written by hand but the facts: what follows is what a piece would be told.

use std::fmt::Write;

use super::{
    Caution, CautionCode, PieceFacts, Rules, Sizes, cautions,
    table_cases::{Case, IN_THE_BASE, cases},
};
use crate::craft::Wearer;

/// The wearers in the order of the columns.
const WEARERS: [Wearer; 5] = [Wearer::Under3, Wearer::From3To5, Wearer::From6To12, Wearer::From13, Wearer::Unknown];

/// Width of a wearer's column, in letters.
const COLUMN: usize = 14;

/// The page for one region, in English.
pub fn table(rules: &Rules) -> String {
    let mut page = format!(
        "Cautions under the rules of {} ({})\n\
         -           nothing is said of it\n\
         told        it is said; the piece may be sold\n\
         NOT FOR     the piece is not for this wearer\n\
         NO SALE     it may not be sold to anybody\n\
         A drop and a base with the same facts are judged alike; where they are not, the row says which it is about.\n\
         {}\n",
        rules.name,
        rules.region,
        super::DEFERRAL
    );
    for code in CautionCode::ALL {
        let Some(rule) = rules.of(code) else { continue };
        let _ = write!(page, "\n{}\n  rule    {}\n  figure  {}\n", code.code(), rule.cited(), rule.figure);
        for other in &rule.others {
            let who: Vec<&str> = other.wearers.iter().map(|wearer| wearer.code()).collect();
            let _ = writeln!(page, "  {}  {}: {}", who.join(", "), other.cited(), other.figure);
        }
        let _ = write!(page, "  {:COLUMN$}", "");
        for wearer in WEARERS {
            let _ = write!(page, "{:COLUMN$}", wearer.code());
        }
        page.push('\n');
        for (whats, outcome) in rows(code, rules) {
            for what in whats {
                let _ = writeln!(page, "  {what}");
            }
            let _ = writeln!(page, "{outcome}");
        }
    }
    let lines: Vec<&str> = page.lines().map(str::trim_end).collect();
    lines.join("\n") + "\n"
}

/// What a case comes to for every wearer.
fn found(case: &Case, rules: &Rules) -> [Vec<Caution>; 5] {
    let drops: Vec<_> = case.drops.iter().collect();
    let sizes = &Sizes::of_all(&case.drops, rules.gauge).with_bases([&case.base]);
    WEARERS.map(|wearer| {
        let (base, length_mm, neck_mm) = (&case.base, case.length_mm, case.neck_mm);
        let facts = PieceFacts { base, length_mm, neck_mm, drops: &drops, sizes, wearer, rules };
        cautions(&facts).cautions.into_iter().filter(|one| one.code == case.code).collect()
    })
}

/// The outcome of a case: a word for every wearer, and the sentences that are said with their rules.
fn outcome(case: &Case, rules: &Rules) -> String {
    let mut words = format!("  {:COLUMN$}", "");
    let mut sentences: Vec<String> = Vec::new();
    for found in found(case, rules) {
        let word = match found.iter().max_by_key(|one| (one.forbidden, one.grave)) {
            None => "-",
            Some(one) if one.forbidden => "NO SALE",
            Some(one) if one.grave => "NOT FOR",
            Some(_) => "told",
        };
        let _ = write!(words, "{word:COLUMN$}");
        for one in found {
            let said = format!("      {} [{}]", one.text, one.cited());
            if !sentences.contains(&said) {
                sentences.push(said);
            }
        }
    }
    std::iter::once(words).chain(sentences).collect::<Vec<_>>().join("\n")
}

/// The facts that come to the same, with what they come to.
fn rows(code: CautionCode, rules: &Rules) -> Vec<(Vec<String>, String)> {
    let mut rows: Vec<(Vec<String>, String)> = Vec::new();
    for case in cases(rules).iter().filter(|case| case.code == code) {
        let outcome = outcome(case, rules);
        match rows.iter_mut().find(|(_, known)| *known == outcome) {
            // The base is judged like the drop: it needs no line of its own.
            Some((whats, _)) if case.what.strip_suffix(IN_THE_BASE).is_some_and(|of| whats.iter().any(|w| w == of)) => {
            }
            Some((whats, _)) => whats.push(case.what.clone()),
            None => rows.push((vec![case.what.clone()], outcome)),
        }
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A fact that nobody is told of, whoever the wearer is, would be no fact.
    #[test]
    fn every_caution_stands_on_every_page_with_a_case_in_which_it_is_said() {
        for rules in Rules::built_in() {
            for code in CautionCode::ALL {
                let mut cases = cases(rules).into_iter().filter(|case| case.code == code);
                let said = cases.any(|case| found(&case, rules).iter().any(|found| !found.is_empty()));
                assert!(said, "{} {}", rules.region, code.code());
            }
        }
    }
}
