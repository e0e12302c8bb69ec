//! What a rules file gets wrong that reads: each rule by itself, and all of them together.

use super::{CautionCode, Dated, Limit, Rule, Status};
use crate::{
    craft::Wearer,
    quoting::quoted,
    ron_tree::{Detail, Fields, Reader, detail, keep_one},
};

/// Says which rules there are twice and, where every rule did read, which are missing. `list_at` is the place of the list,
/// `rules` are its items with their places.
pub(super) fn check_region(reader: &mut Reader<'_>, list_at: usize, rules: &[(usize, Option<Rule>)]) {
    let places = |code: CautionCode| {
        rules.iter().filter(move |(_, rule)| rule.as_ref().is_some_and(|rule| rule.code == code)).map(|(at, _)| *at)
    };
    let all_read = rules.iter().all(|(_, rule)| rule.is_some());
    for code in CautionCode::ALL {
        for again in places(code).skip(1) {
            let found = detail!("wrong-rule-twice", "a second rule for {code}", code = code.code());
            reader.wrong(again, found, keep_one());
        }
        if all_read && places(code).next().is_none() {
            let found = detail!("wrong-no-rule", "no rule for {code}", code = code.code());
            reader.wrong(
                list_at,
                found,
                detail!("right-rule", "add one; {field} where nothing is said", field = "says: []"),
            );
        }
    }
}

/// Where a rule is wrong and what would be right there.
struct Wrong {
    /// The field near which it stands.
    field: &'static str,
    found: Detail,
    expected: Detail,
}

/// Says what one rule with the fields `f` gets wrong.
pub(super) fn check_rule(reader: &mut Reader<'_>, f: &Fields<'_>, rule: &Rule) {
    for Wrong { field, found, expected } in of_rule(rule) {
        // What is left out is told where the rule says what it is about.
        let at = f.get(field).or_else(|| f.get("code")).map_or(f.at(), |node| node.at);
        let found = detail!("wrong-rule", "{code} {found}", code = rule.code.code(), found = found);
        reader.wrong(at, found, expected);
    }
}

/// What one rule gets wrong: near which field, what, and what would be right.
fn of_rule(rule: &Rule) -> Vec<Wrong> {
    let mut all = Vec::new();
    let mut wrong = |field, found, expected| all.push(Wrong { field, found, expected });
    if let Some(examples) = rule.limit.unlike(rule.code) {
        let found = detail!("rule-limit", "with {limit}", limit = format!("{:?}", rule.limit));
        let expected = match *examples {
            [one, other] => detail!("right-limit-either", "expected {one} or {other}", one = one, other = other),
            [one] => detail!("right-limit", "expected {one}", one = one),
            _ => detail!("right-no-limit", "expected no limit"),
        };
        wrong("limit", found, expected);
    }
    let practice = rule.status == Status::Practice;
    for (field, words) in [("rule", &rule.rule), ("title", &rule.title)] {
        match (words.trim().is_empty(), practice) {
            (true, false) => wrong("code", detail!("rule-without", "without {field}", field = field), some_words()),
            (false, true) => wrong(
                field,
                detail!("rule-with-words", "with {field}", field = format!("{field}: {}", quoted(words))),
                detail!("right-no-rule", "common practice has no rule: leave it out"),
            ),
            _ => {}
        }
    }
    let weak_seller = rule.within.as_ref().map(|within| &within.seller);
    let words = [("figure", Some(&rule.figure)), ("seller", Some(&rule.seller)), ("within", weak_seller)];
    for (field, words) in words {
        if words.is_some_and(|words| words.trim().is_empty()) {
            wrong(field, detail!("rule-with-nothing", "with nothing in {field}", field = field), some_words());
        }
    }
    match &rule.dated {
        Dated::Edition(edition) if edition.trim().is_empty() => wrong(
            "dated",
            detail!("rule-edition", "with an edition without a name"),
            detail!("right-edition", "name it, or leave dated out"),
        ),
        Dated::NotNoted => {}
        _ if practice => wrong(
            "dated",
            detail!("rule-date", "with a date"),
            detail!("right-no-date", "common practice has no date: leave it out"),
        ),
        _ => {}
    }
    to_no_effect(rule, &mut wrong);
    all
}

fn some_words() -> Detail {
    detail!("right-some-words", "write some words")
}

/// Wearers and materials that change nothing, and wearers who hear less than an older one.
///
/// Who does not hear of a thing can't be told that it counts against the piece, so `against` belongs into `says`. Beyond
/// its limit a magnet or substance is said to everyone: there it may name more.
fn to_no_effect(rule: &Rule, wrong: &mut impl FnMut(&'static str, Detail, Detail)) {
    use CautionCode::{Breakaway, FoodAllergen, Lead, LooksLikeFood, Magnet, Paint, UnknownMetal};
    let substance = is_substance(rule.code);
    wearers(rule, wrong);
    weights(rule, wrong);
    let mut no_effect = |field: &'static str, expected| {
        wrong(field, detail!("rule-no-effect", "with {field} to no effect", field = field), expected);
    };
    if !rule.untested.is_empty() && (!substance || rule.materials.is_empty() && rule.code != Paint) {
        let right = detail!("right-untested", "it is for lead, cadmium and nickel with their materials, and for paint");
        no_effect("untested", right);
    }
    if rule.within.is_some() && !matches!(rule.code, Magnet | Breakaway) {
        no_effect("within", detail!("right-within", "it is for magnets and breakaway"));
    }
    for (field, some) in [("others", !rule.others.is_empty()), ("platings", !rule.platings.is_empty())] {
        if some && !substance {
            no_effect(field, detail!("right-substances-only", "it is for lead, cadmium, nickel and paint"));
        }
    }
    if !rule.exempts.is_empty() && rule.code != Lead {
        no_effect("exempts", detail!("right-exempts", "it is for lead"));
    }
    if rule.forbids && !substance && rule.code != Magnet {
        let right = detail!("right-forbids", "it is for magnets and substances beyond their limit");
        no_effect("forbids", right);
    }
    let by_material = matches!(rule.code, UnknownMetal | FoodAllergen | LooksLikeFood);
    if !rule.materials.is_empty() && !substance && !by_material {
        let right = detail!(
            "right-rule-materials",
            "they are for unknown_metal, lead, cadmium, nickel, food_allergen and looks_like_food"
        );
        no_effect("materials", right);
    }
}

const fn is_substance(code: CautionCode) -> bool {
    matches!(code, CautionCode::Lead | CautionCode::Cadmium | CautionCode::Nickel | CautionCode::Paint)
}

/// Wearers who are named and hear of nothing, and those who are left out beside an older one.
fn wearers(rule: &Rule, wrong: &mut impl FnMut(&'static str, Detail, Detail)) {
    let mut heard = |field: &'static str, wearers: &[Wearer]| {
        for wearer in wearers.iter().filter(|wearer| !rule.says.contains(wearer)) {
            wrong(field, unheard(*wearer, field), name_it_in_says());
        }
    };
    if !is_substance(rule.code) && rule.code != CautionCode::Magnet {
        heard("against", &rule.against);
    }
    heard("untested", &rule.untested);
    if let Some(within) = &rule.within {
        for wearers in [&within.says, &within.against, &within.together] {
            heard("within", wearers);
        }
    }
    let within = rule.within.iter();
    let lists = [("says", &rule.says), ("against", &rule.against), ("untested", &rule.untested)];
    let lists = lists
        .into_iter()
        .chain(within.flat_map(|one| [("within", &one.says), ("within", &one.against), ("within", &one.together)]));
    for (field, wearers) in lists {
        if let Some((older, younger)) = out_of_order(wearers) {
            let found = detail!(
                "rule-order",
                "with {older} in {field} without {younger}",
                older = in_files(older),
                field = field,
                younger = in_files(younger)
            );
            let expected = detail!("right-order", "a younger wearer hears at least as much: name it as well");
            wrong(field, found, expected);
        }
    }
}

/// A wearer as the files write it.
fn in_files(wearer: Wearer) -> String {
    format!("{wearer:?}")
}

fn unheard(wearer: Wearer, field: &str) -> Detail {
    let wearer = in_files(wearer);
    detail!("rule-unheard", "with {wearer} in {field} who is not in says", wearer = wearer, field = field)
}

fn name_it_in_says() -> Detail {
    detail!("right-heard", "name it in says as well, or leave it out")
}

/// A weight for each who hears of it, and none smaller for an older wearer.
fn weights(rule: &Rule, wrong: &mut impl FnMut(&'static str, Detail, Detail)) {
    let Limit::HeavierThanG(limits) = &rule.limit else { return };
    let of = |wearer: &Wearer| limits.iter().find(|(named, _)| named == wearer).map(|(_, g)| *g);
    for (wearer, _) in limits.iter().filter(|(wearer, _)| !rule.says.contains(wearer)) {
        wrong("limit", unheard(*wearer, "limit"), name_it_in_says());
    }
    for wearer in rule.says.iter().filter(|wearer| of(wearer).is_none()) {
        let found = detail!("rule-no-weight", "without a weight for {wearer}", wearer = in_files(*wearer));
        wrong("limit", found, detail!("right-give-weight", "give one, or leave the wearer out of says"));
    }
    let by_age: Vec<f64> = Wearer::ANSWERS.iter().filter_map(of).collect();
    if !by_age.is_sorted() {
        let found = detail!("rule-weights", "with a smaller weight for an older wearer");
        wrong("limit", found, detail!("right-weights", "a younger one may not carry more"));
    }
}

/// A wearer in the list together with a younger one who is not.
fn out_of_order(wearers: &[Wearer]) -> Option<(Wearer, Wearer)> {
    let (mut missing, mut found) = (None, None);
    for wearer in Wearer::ANSWERS {
        match (wearers.contains(&wearer), missing) {
            (true, Some(younger)) => found = found.or(Some((wearer, younger))),
            (false, None) => missing = Some(wearer),
            _ => {}
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use crate::caution::Rules;

    #[test]
    fn slips_in_a_file_are_told_with_their_place() {
        let whole = include_str!("../../assets/rules/us.ron");
        for (right, wrong, says) in [
            ("code: glass,", "code: glas,", "glas"),
            ("says: [Under3, From3To5]", "says: [Under2]", "Under2"),
            ("gauge: Inch", "gauge: Inches", "Inches"),
            ("region: \"US\"", "region: \"us\"", "capital letters"),
            ("name: \"United States\"", "name: \" \"", "a name of 1 to 60 letters"),
            ("code: glass,", "code: sharp,", "a second rule for sharp"),
            ("code: glass,", "code: sharp,", "no rule for glass"),
            ("FluxBelow(50.0)", "FluxBelow(-1.0)", "expected limit: FluxBelow"),
            ("limit: LoopFromMm(355.6), ", "", "expected limit: LoopFromMm"),
            ("AsOf(\"2026-06\")", "AsOf(\"2026-13\")", "2026-13"),
            ("AsOf(\"2026-06\")", "Edition(\"\")", "small_part with an edition without a name"),
            ("rule: \"16 CFR 1501.4\"", "rule: \"\"", "small_part without rule"),
            ("title: \"US small-parts rule\"", "title: \" \"", "small_part without title"),
            ("figure: \"lies entirely", "figure: \"\", // \"", "small_part with nothing in figure"),
            ("seller: \"Not for a child", "seller: \"\", // \"", "small_part with nothing in seller"),
            ("seller: \"It is below", "seller: \" \", // \"", "magnet with nothing in within"),
            ("status: Practice,", "status: Practice, rule: \"somewhere\",", "common practice has no rule"),
            ("status: Practice,", "status: Practice, dated: Of(\"2020\"),", "common practice has no date"),
            ("status: Read,", "", "status"),
            ("status: Read,", "status: Read, colour: Red,", "colour"),
            (
                "code: glass, says: [Under3, From3To5, From6To12], against: [Under3]",
                "code: glass, says: [Under3, From3To5, From6To12], against: [Under3, From3To5, From6To12, From13]",
                "glass with From13 in against who is not in says",
            ),
            ("untested: [Under3,", "untested: [From13, Under3,", "lead with From13 in untested"),
            // A younger wearer hears at least as much as an older one.
            ("code: glass, says: [Under3, ", "code: glass, says: [", "glass with From3To5 in says without Under3"),
            ("against: [Under3]", "against: [From3To5]", "small_part with From3To5 in against without Under3"),
            ("together: [Under3, ", "together: [", "magnet with From3To5 in within without Under3"),
            ("(Under3, 30.0)", "(Under3, 90.0)", "with a smaller weight for an older wearer"),
            ("code: glass,", "code: glass, untested: [Under3],", "glass with untested to no effect"),
            ("code: glass,", "code: glass, materials: [Glass],", "glass with materials to no effect"),
            ("code: glass,", "code: glass, platings: [Nickel],", "glass with platings to no effect"),
            ("code: glass,", "code: glass, forbids: true,", "glass with forbids to no effect"),
            ("code: cadmium,", "code: cadmium, exempts: [Enamel],", "cadmium with exempts to no effect"),
            (
                "code: glass,",
                "code: glass, within: Some((against: [], seller: \"No.\")),",
                "glass with within to no effect",
            ),
            ("(Under3, 30.0), ", "", "heavy_on_child without a weight for Under3"),
            ("(Under3, 30.0), ", "(Under3, 30.0), (From13, 190.0), ", "heavy_on_child with From13 in limit"),
        ] {
            assert!(whole.contains(right), "{right}");
            let broken = whole.replacen(right, wrong, 1);
            let mistakes = Rules::from_ron("us.ron", &broken).expect_err(wrong);
            let told = mistakes.iter().find(|mistake| mistake.to_string().contains(says));
            let told = told.unwrap_or_else(|| panic!("{wrong} should say {says}: {mistakes:?}"));
            assert!(told.line > 0 && told.column > 0, "{told}");
        }
    }

    #[test]
    fn a_mistake_stands_where_the_value_of_its_field_does() {
        let whole = include_str!("../../assets/rules/eu.ron");
        let broken = whole.replacen("code: glass, says", "code : glass , says", 1);
        let broken = broken.replacen(
            "against: [Under3],\n            rule: \"EN 71-1, 5.7\"",
            "against: [From3To5],\n            rule: \"EN 71-1, 5.7\"",
            1,
        );
        let mistakes = Rules::from_ron("us.ron", &broken).unwrap_err();
        let before = &broken[..broken.find("[From3To5],\n            rule: \"EN 71-1, 5.7\"").unwrap()];
        let place = (before.matches('\n').count() + 1, before.lines().last().unwrap().chars().count() + 1);
        assert_eq!((mistakes.len(), (mistakes[0].line, mistakes[0].column)), (1, place), "{mistakes:?}");
    }

    /// How far a rule is known is said by its status alone.
    #[test]
    fn no_rule_carries_two_marks() {
        for rules in Rules::built_in() {
            for rule in &rules.rules {
                let words = format!("{} {} {} {}", rule.rule, rule.title, rule.figure, rule.seller);
                for mark in ["from memory", "second-hand", "not read", "no source", "not noted"] {
                    assert!(!words.contains(mark), "{} {}: {words}", rules.region, rule.code.code());
                }
                assert!(rule.cited().matches("from memory").count() <= 1);
            }
        }
    }
}
