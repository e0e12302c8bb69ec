//! The English of the cautions: one sentence for a hazard, whatever part it is about. The tablet says the same from its
//! language file, and a test holds the two together.

use super::{
    CautionCode, Size,
    find::{Finding, Small},
    form::Form,
};
use crate::craft::{Allergen, Facts};

/// Plain words for a guest. Those of the small ball name the hazard as the label of 16 CFR 1500.19(b) does (from memory).
pub(super) fn text(finding: &Finding<'_>, allergens: &[Allergen]) -> String {
    use CautionCode::*;
    let number = finding.number.unwrap_or_default();
    let words = match (finding.rule.code, finding.form) {
        (SmallPart, Form::Away) => "Small parts: keep away from children under 3.",
        (SmallPart, _) => "Small parts: a child under 3 can choke on them.",
        (SmallBall, _) => "Choking hazard: as large as a small ball. A child under 3 can choke on it.",
        (Magnet, Form::Unknown) => {
            "A magnet, and nobody knows how strong it is. Swallowed magnets can do grave harm: keep it from children, and \
             away from pacemakers."
        }
        (Magnet, Form::Together) => {
            "Several magnets. Swallowed, they can draw together inside the body and do grave harm: keep them from \
             children, and away from pacemakers."
        }
        (Magnet, Form::Within) => {
            "A weak magnet. A swallowed magnet can do harm: watch a child who wears it, and keep it away from pacemakers."
        }
        (Magnet, _) => {
            "A strong magnet. Swallowed magnets can do grave harm: keep it from children, and away from pacemakers."
        }
        (CoinCell, _) => {
            "A button cell: keep it from children. If swallowed, it burns within hours: get medical help at once."
        }
        (Glass, _) => "Glass: it can break into sharp pieces.",
        (Sharp, _) => "A sharp edge or point.",
        (Breakaway, Form::Apart) => {
            "It comes apart when pulled hard, but that may not be enough: take it off a young child for play and sleep. Not \
             recommended under 3."
        }
        (Breakaway, _) => {
            "It does not come apart when pulled: take it off a child for play and sleep. Not recommended under 3."
        }
        (CordLoop, _) => "A long loop can catch: watch a child who wears it.",
        (UnknownMetal, Form::Declared) => {
            "Nobody knows this metal. Its supplier states in writing that lead, cadmium and nickel are within the limits; \
             it was not tested."
        }
        (UnknownMetal, _) => "Nobody knows this metal: it was not tested for all of lead, cadmium and nickel.",
        (FoodAllergen, Form::Known) => {
            let known: Vec<&str> = allergens.iter().map(Allergen::word).collect();
            return format!(
                "A decoration, not to be eaten. It contains: {}. Do not wear it with an allergy to that.",
                known.join(", ")
            );
        }
        (FoodAllergen, _) => {
            "A decoration, not to be eaten. Its allergens are not known: do not wear it with a food allergy."
        }
        (LooksLikeFood, _) => {
            "It looks like food, but is not to be eaten: a child can take it for food and choke on it."
        }
        (Liquid, _) => "A liquid is in it: it can break or leak. Do not drink it.",
        (HeavyOnChild, _) => return format!("It weighs {number} g with all that hangs on it, much for a young neck."),
        (ChainTooShort, Form::Own) => {
            let neck = finding.limit.unwrap_or_default();
            return format!("It closes on necks up to {number} mm round; you gave {neck} mm.");
        }
        (ChainTooShort, _) => return format!("It closes on necks up to {number} mm round: measure the neck."),
        (BangleSize, Form::Slips) => return format!("It is {number} mm round inside and may slip off the hand."),
        (BangleSize, _) => return format!("It goes over hands up to {number} mm round: measure the hand."),
        (Lead | Cadmium | Nickel | Paint, _) => return of_substance(finding),
    };
    words.to_owned()
}

/// What is said of lead, cadmium, nickel and the lead in paint.
fn of_substance(finding: &Finding<'_>) -> String {
    let (substance, unit, is_said) = match finding.rule.code {
        CautionCode::Cadmium => ("cadmium", "ppm", "It may contain cadmium"),
        CautionCode::Nickel => ("nickel", "µg/cm² a week", "It may give off nickel"),
        CautionCode::Paint => ("lead in the paint", "ppm", "Its paint may contain lead"),
        _ => ("lead", "ppm", "It may contain lead"),
    };
    let found = format!("A test found {} {unit} of {substance}", finding.number.unwrap_or_default());
    let found = if finding.rule.code == CautionCode::Paint { found.replace(" of lead", " lead") } else { found };
    let limit = finding.limit.unwrap_or_default();
    let allergy = if finding.rule.code == CautionCode::Nickel { " Do not wear it with a nickel allergy." } else { "" };
    match finding.form {
        Form::Found => format!("{found}, beyond the limit of {limit}.{allergy}"),
        Form::Elsewhere => {
            format!("{found}: within the limit of {limit} here, yet more than some rules allow for children.{allergy}")
        }
        Form::Children => {
            format!("{found}: beyond the limit of {limit} for children. No limit for this age is known to us.{allergy}")
        }
        Form::Exempt => format!("{found}. The rule exempts it from its limit of {limit}."),
        Form::Declared => {
            format!(
                "{is_said}; its supplier states in writing that it is within the limit. It was not tested.{allergy}"
            )
        }
        _ => format!("{is_said}; it was not tested.{allergy}"),
    }
}

/// Plain words for the seller: how it was found, and what to say or to do.
pub(super) fn seller(finding: &Finding<'_>, facts: &Facts) -> String {
    let rule = finding.rule;
    let words = match finding.form {
        // The rule's own words are for what was not tested, or for what nobody stated.
        Form::Found if finding.forbidden => {
            format!("A test found more than the rule allows ({}): it may not be sold.", rule.figure)
        }
        Form::Found if finding.grave => {
            format!("A test found more than the rule allows ({}): do not sell it for this wearer.", rule.figure)
        }
        Form::Found | Form::Children => format!("A test found more than is allowed for children ({}).", rule.figure),
        Form::Elsewhere => "A test found it within the limit here. Say what was found to whom it concerns.".to_owned(),
        Form::Exempt => {
            let why = facts.lead_exempt.map_or("", |exempt| exempt.word());
            format!("The rule exempts {why}, under its conditions; keep what proves it.")
        }
        Form::Declared => match &facts.declared {
            Some(declared) => format!(
                "Its supplier states it in writing ({}, {}); that is not a test report. Keep the paper.",
                declared.paper,
                declared.dated.english()
            ),
            None => rule.seller.clone(),
        },
        Form::Within | Form::Together | Form::Apart => {
            rule.within.as_ref().map_or_else(|| rule.seller.clone(), |within| within.seller.clone())
        }
        _ => rule.seller.clone(),
    };
    match finding.small {
        Some(small) => format!("{} {words}", of_small(small)),
        None => words,
    }
}

/// How a small part was found.
fn of_small(small: Small) -> String {
    let off = |size: Option<Size>| match size {
        Some(Size::Fits) => " What comes off fits the test cylinder.",
        Some(Size::Measure) => " What comes off is too close to call: measure it.",
        _ => "",
    };
    match small {
        Small::Drop(size) => size.words(),
        Small::Ends(size) => {
            let words = match size.ring.min(size.body) {
                Size::Fits => "Clasp or end rings fit the test cylinder.",
                Size::Measure => "Clasp or end rings are too close to call: measure them against the test cylinder.",
                Size::TooLarge => "Clasp and end rings do not fit the test cylinder.",
            };
            format!("{words}{}", off(size.off))
        }
        Small::Hoop(size) => {
            let words = match size.body {
                Size::Fits => "The whole bangle fits the test cylinder.",
                Size::Measure => "It is too close to call: measure it against the test cylinder.",
                Size::TooLarge => "The bangle itself does not fit the test cylinder.",
            };
            format!("{words}{}", off(size.off))
        }
    }
}
