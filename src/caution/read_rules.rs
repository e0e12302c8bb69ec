//! Reading a region's rules file, every mistake with its place.

use super::{
    CautionCode, Dated, Gauge, Limit, OtherLimit, Region, Rule, Rules, Status, Within,
    check_rules::{check_region, check_rule},
};
use crate::{
    craft::{Day, LeadExemption, Material, Plating, Wearer},
    ron_tree::{Fields, Mistake, Node, Reader, Value, What, detail, names_of, what},
};

const WEARERS: [(&str, Wearer); 5] = [
    ("Under3", Wearer::Under3),
    ("From3To5", Wearer::From3To5),
    ("From6To12", Wearer::From6To12),
    ("From13", Wearer::From13),
    ("Unknown", Wearer::Unknown),
];
const A_WEARER: What = what("a-wearer", "a wearer");
const STATUS: [(&str, Status); 4] = [
    ("Read", Status::Read),
    ("SecondHand", Status::SecondHand),
    ("FromMemory", Status::FromMemory),
    ("Practice", Status::Practice),
];
/// The fields of a rule.
const RULE: [&str; 17] = [
    "code",
    "says",
    "against",
    "untested",
    "materials",
    "platings",
    "exempts",
    "forbids",
    "rule",
    "title",
    "dated",
    "status",
    "limit",
    "figure",
    "seller",
    "within",
    "others",
];
/// Beyond every figure that a rule can have; what is none for its caution is told by what is right.
const BEYOND: f64 = 1e9;

/// Reads the rules file `file` with the text `source`.
pub(super) fn read(file: &str, source: &str) -> Result<Rules, Vec<Mistake>> {
    let (mut reader, node) = Reader::open(file, source);
    let rules = node.and_then(|node| region(&mut reader, &node));
    match rules {
        Some(rules) if reader.mistakes.is_empty() => Ok(rules),
        _ => {
            reader.mistakes.sort();
            Err(reader.mistakes)
        }
    }
}

fn region(reader: &mut Reader<'_>, node: &Node) -> Option<Rules> {
    let f = reader.fields(node, what("a-regions-rules", "a region's rules"), &["region", "name", "gauge", "rules"])?;
    let region = reader.required(&f, "region").and_then(|node| {
        let code = reader.text(node, what("a-region", "a region"))?;
        let known = Region::from_code(code);
        known.or_else(|| {
            reader.unlike(node, detail!("a-region-as-in", "a region of two to four capital letters, as in \"US\""))
        })
    });
    let name = reader.name(&f, "name");
    let gauge = reader.required(&f, "gauge").and_then(|node| {
        reader.word(
            node,
            what("a-test-cylinder", "a test cylinder"),
            &[("Inch", Gauge::Inch), ("Metric", Gauge::Metric)],
        )
    });
    let list = reader.required(&f, "rules")?;
    let items = reader.list(list, what("list-rules", "rules"))?;
    let read: Vec<(usize, Option<Rule>)> = items.iter().map(|item| (item.at, rule(reader, item))).collect();
    check_region(reader, list.at, &read);
    let rules = read.into_iter().map(|(_, rule)| rule).collect::<Option<Vec<_>>>()?;
    Some(Rules { region: region?, name: name?, gauge: gauge?, rules })
}

fn rule(reader: &mut Reader<'_>, node: &Node) -> Option<Rule> {
    let f = reader.fields(node, what("a-rule", "a rule"), &RULE)?;
    let codes = CautionCode::ALL.map(|code| (code.code(), code));
    let code = reader.required(&f, "code").and_then(|node| reader.word(node, what("a-caution", "a caution"), &codes));
    let says = reader.required(&f, "says").and_then(|node| words(reader, node, A_WEARER, &WEARERS));
    let against = reader.required(&f, "against").and_then(|node| words(reader, node, A_WEARER, &WEARERS));
    let untested = wearers(reader, &f, "untested");
    let materials = some_words(reader, &f, "materials", what("a-material", "a material"), names_of!(Material));
    let platings = some_words(reader, &f, "platings", what("a-plating", "a plating"), names_of!(Plating));
    let exempts = some_words(
        reader,
        &f,
        "exempts",
        what("what-the-rule-exempts", "what the rule exempts"),
        names_of!(LeadExemption),
    );
    let forbids = if_there(reader, &f, "forbids", |reader, node| reader.flag(node));
    let (rule, title) = (if_there(reader, &f, "rule", text), if_there(reader, &f, "title", text));
    let dated = if_there(reader, &f, "dated", dated);
    let status = required_status(reader, &f);
    let limit = if_there(reader, &f, "limit", limit);
    let (figure, seller) = (required_text(reader, &f, "figure"), required_text(reader, &f, "seller"));
    let within = if_there(reader, &f, "within", within);
    let others = if_there(reader, &f, "others", others);
    let rule = Rule {
        code: code?,
        says: says?,
        against: against?,
        untested: untested?,
        materials: materials?,
        platings: platings?,
        exempts: exempts?,
        forbids: forbids?,
        rule: rule?,
        title: title?,
        dated: dated?,
        status: status?,
        limit: limit?,
        figure: figure?,
        seller: seller?,
        within: within?,
        others: others?,
    };
    check_rule(reader, &f, &rule);
    Some(rule)
}

/// What a field says that may be left out; left out, it says what is usual.
fn if_there<T: Default>(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    name: &str,
    read: impl Fn(&mut Reader<'_>, &Node) -> Option<T>,
) -> Option<T> {
    f.get(name).map_or_else(|| Some(T::default()), |node| read(reader, node))
}

/// Every item of a list of words.
fn words<T: Copy>(reader: &mut Reader<'_>, node: &Node, of: What, all: &[(&str, T)]) -> Option<Vec<T>> {
    let items = reader.list(node, what("list-words", "words"))?;
    let read: Vec<_> = items.iter().map(|item| reader.word(item, of, all)).collect();
    read.into_iter().collect()
}

fn some_words<T: Copy>(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    name: &str,
    of: What,
    all: &[(&str, T)],
) -> Option<Vec<T>> {
    if_there(reader, f, name, |reader, node| words(reader, node, of, all))
}

fn wearers(reader: &mut Reader<'_>, f: &Fields<'_>, name: &str) -> Option<Vec<Wearer>> {
    some_words(reader, f, name, A_WEARER, &WEARERS)
}

fn text(reader: &mut Reader<'_>, node: &Node) -> Option<String> {
    reader.text(node, what("some-words", "words")).map(str::to_owned)
}

fn required_text(reader: &mut Reader<'_>, f: &Fields<'_>, name: &str) -> Option<String> {
    reader.required(f, name).and_then(|node| text(reader, node))
}

fn required_status(reader: &mut Reader<'_>, f: &Fields<'_>) -> Option<Status> {
    reader
        .required(f, "status")
        .and_then(|node| reader.word(node, what("how-far-a-rule-is-known", "how far a rule is known"), &STATUS))
}

/// The value in `Name(value)`.
fn named(node: &Node) -> Option<(&str, &Node)> {
    match &node.value {
        Value::Tuple { name: Some(name), items } if items.len() == 1 => Some((name, &items[0])),
        _ => None,
    }
}

fn is_word(node: &Node, word: &str) -> bool {
    matches!(&node.value, Value::Word(found) if found == word)
}

fn dated(reader: &mut Reader<'_>, node: &Node) -> Option<Dated> {
    if is_word(node, "NotNoted") {
        return Some(Dated::NotNoted);
    }
    let of_day = match named(node) {
        Some(("Edition", inner)) => {
            return reader.text(inner, what("an-edition", "an edition")).map(|name| Dated::Edition(name.to_owned()));
        }
        Some(("AsOf", _)) => Dated::AsOf,
        Some(("Of", _)) => Dated::Of,
        Some(("InForce", _)) => Dated::InForce,
        Some(("Applies", _)) => Dated::Applies,
        Some(("MadeAfter", _)) => Dated::MadeAfter,
        _ => {
            let wanted = detail!(
                "a-dating",
                "NotNoted, Edition(\"…\"), or AsOf, Of, InForce, Applies or MadeAfter with a date as in AsOf(\"2026-06\")"
            );
            return reader.unlike(node, wanted);
        }
    };
    let (_, inner) = named(node)?;
    let day = Day::from_iso(reader.text(inner, what("a-date", "a date"))?);
    let day = day.or_else(|| {
        reader.unlike(
            inner,
            detail!("a-date-in-part", "a date as in \"2023\", \"2023-10\" or \"2023-10-23\", as the calendar has it"),
        )
    });
    day.map(of_day)
}

fn limit(reader: &mut Reader<'_>, node: &Node) -> Option<Limit> {
    if is_word(node, "None") {
        return Some(Limit::None);
    }
    let of_figure = match named(node) {
        Some(("HeavierThanG", inner)) => return weights(reader, inner),
        Some(("BallBelowMm", _)) => Limit::BallBelowMm,
        Some(("FluxBelow", _)) => Limit::FluxBelow,
        Some(("LoopFromMm", _)) => Limit::LoopFromMm,
        Some(("Below", _)) => Limit::Below,
        Some(("AtMost", _)) => Limit::AtMost,
        _ => {
            let wanted = detail!(
                "a-limit",
                "None, or BallBelowMm, FluxBelow, LoopFromMm, HeavierThanG, Below or AtMost with a figure, as in Below(100.0)"
            );
            return reader.unlike(node, wanted);
        }
    };
    let (_, inner) = named(node)?;
    reader.number(inner, -BEYOND, BEYOND).map(of_figure)
}

/// A weight for each of some wearers: `[(Under3, 30.0), (From3To5, 60.0)]`.
fn weights(reader: &mut Reader<'_>, node: &Node) -> Option<Limit> {
    let items = reader.list(node, what("list-weights", "weights"))?;
    let one = |item: &Node| match &item.value {
        Value::Tuple { name: None, items } if items.len() == 2 => {
            let wearer = reader.word(&items[0], A_WEARER, &WEARERS);
            let grams = reader.number(&items[1], -BEYOND, BEYOND);
            Some((wearer?, grams?))
        }
        _ => reader.unlike(item, detail!("a-wearers-weight", "a wearer with a weight in grams, as in (Under3, 30.0)")),
    };
    let read: Vec<_> = items.iter().map(one).collect();
    read.into_iter().collect::<Option<_>>().map(Limit::HeavierThanG)
}

fn within(reader: &mut Reader<'_>, node: &Node) -> Option<Option<Within>> {
    if is_word(node, "None") {
        return Some(None);
    }
    let inner = named(node).filter(|(name, _)| *name == "Some").map_or(node, |(_, inner)| inner);
    let f = reader.fields(
        inner,
        what("what-is-said-within-the-limit", "what is said within the limit"),
        &["says", "against", "together", "seller"],
    )?;
    let (says, together) = (wearers(reader, &f, "says"), wearers(reader, &f, "together"));
    let against = reader.required(&f, "against").and_then(|node| words(reader, node, A_WEARER, &WEARERS));
    let seller = required_text(reader, &f, "seller");
    Some(Some(Within { says: says?, against: against?, together: together?, seller: seller? }))
}

fn others(reader: &mut Reader<'_>, node: &Node) -> Option<Vec<OtherLimit>> {
    let items = reader.list(node, what("list-limits-for-other-wearers", "limits for other wearers"))?;
    let read: Vec<_> = items.iter().map(|item| other(reader, item)).collect();
    read.into_iter().collect()
}

fn other(reader: &mut Reader<'_>, node: &Node) -> Option<OtherLimit> {
    let names = ["wearers", "rule", "title", "dated", "status", "limit", "figure"];
    let f = reader.fields(node, what("a-limit-for-other-wearers", "a limit for other wearers"), &names)?;
    let wearers = reader.required(&f, "wearers").and_then(|node| words(reader, node, A_WEARER, &WEARERS));
    let (rule, title) = (required_text(reader, &f, "rule"), required_text(reader, &f, "title"));
    let (dated, limit) = (if_there(reader, &f, "dated", dated), if_there(reader, &f, "limit", limit));
    let (status, figure) = (required_status(reader, &f), required_text(reader, &f, "figure"));
    Some(OtherLimit {
        wearers: wearers?,
        rule: rule?,
        title: title?,
        dated: dated?,
        status: status?,
        limit: limit?,
        figure: figure?,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_rule_that_does_not_read_is_told_and_so_is_what_others_get_wrong() {
        let whole = include_str!("../../assets/rules/us.ron");
        let broken = whole
            .replacen("gauge: Inch", "gauge: Inches", 1)
            .replacen("code: glass", "code: glas", 1)
            .replacen("status: Practice", "status: Practise", 1)
            .replacen("limit: LoopFromMm(355.6), ", "", 1);
        let told = Rules::from_ron("rules/us.ron", &broken).expect_err("four mistakes");
        let words: Vec<&str> = ["Inches", "glas,", "cord_loop", "Practise"].to_vec();
        assert_eq!(told.len(), words.len(), "{told:?}");
        for word in words {
            let line = 1 + broken[..broken.find(word).unwrap()].matches('\n').count();
            let one = told.iter().find(|one| one.line == line).unwrap_or_else(|| panic!("{word}: {told:?}"));
            let at: String = broken.lines().nth(line - 1).unwrap().chars().skip(one.column - 1).collect();
            assert!(one.found.english().contains(word.trim_end_matches(',')) && at.starts_with(word), "{one}: {at}");
            assert!(one.to_string().starts_with(&format!("rules/us.ron:{line}:")), "{one}");
        }
        assert!(told.is_sorted(), "in the order of their places");
    }

    #[test]
    fn brackets_in_texts_and_remarks_are_none() {
        let whole = include_str!("../../assets/rules/uk.ron");
        let rules = Rules::from_ron("uk.ron", whole).unwrap();
        let odd = whole.replacen("seller: \"", "seller: \") ] \\\" ( ", 1).replacen(
            "        (\n",
            "        ( // ] ) \"\n",
            1,
        );
        let mut read = Rules::from_ron("uk.ron", &odd).unwrap();
        assert!(read.rules[0].seller.starts_with(") ] \" ( "));
        read.rules[0].seller.clone_from(&rules.rules[0].seller);
        assert_eq!(read, rules);
    }

    /// The tablet gets the rules with the catalogue: what the reader makes of a file is what serde makes of it.
    #[test]
    fn the_reader_and_serde_agree_on_the_files_of_the_program() {
        for source in crate::caution::rules::SOURCES {
            assert_eq!(Rules::from_ron("a region", source).unwrap(), ron::from_str::<Rules>(source).unwrap());
        }
    }

    #[test]
    fn a_file_that_ends_early_is_told_and_no_panic() {
        let whole = include_str!("../../assets/rules/us.ron");
        for end in (0..whole.len()).filter(|end| whole.is_char_boundary(*end)).step_by(97) {
            assert!(Rules::from_ron("us.ron", &whole[..end]).is_err());
        }
    }
}
