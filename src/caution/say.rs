//! The English of the cautions. The tablet says the same from its language file, and a test holds the two together.

use super::{
    CautionCode, Size,
    find::{Finding, Form, Small},
};
use crate::craft::Allergen;

/// Plain words for a guest. The small ball's name the hazard as the label of 16 CFR 1500.19(b) does (from memory).
pub(super) fn text(finding: &Finding<'_>, name: &str, allergens: &[Allergen]) -> String {
    use CautionCode::*;
    let found = finding.form == Form::Found;
    let number = finding.number.unwrap_or_default();
    match finding.rule.code {
        SmallPart if finding.form == Form::Base => {
            format!("The clasp and rings of {name} are small parts. A child under 3 can choke on them.")
        }
        SmallPart => format!("{name} is a small part. A child under 3 can choke on it."),
        SmallBall => format!("Choking hazard: {name} is as large as a small ball. A child under 3 can choke on it."),
        Magnet if finding.form == Form::Within => {
            format!("{name} holds a weak magnet. Swallowed magnets can do harm; watch a child who wears it.")
        }
        Magnet => format!("{name} holds a magnet. Swallowed magnets can do grave harm; keep it from children."),
        CoinCell => format!("{name} holds a button cell. Swallowed, it burns within hours; keep it from children."),
        Glass => format!("{name} is glass and can break into sharp pieces."),
        Sharp => format!("{name} has a sharp edge or point."),
        Breakaway => {
            "This necklace does not come apart when pulled. Take it off a young child for play and sleep.".into()
        }
        CordLoop => "A loop this long can catch. Watch a young child who wears it.".into(),
        UnknownMetal => format!("{name} has metal that nobody tested for lead, cadmium or nickel."),
        Lead if found => format!("{name} has more lead than the rule allows."),
        Lead => format!("{name} may contain lead; it was not tested."),
        Cadmium if found => format!("{name} has more cadmium than the rule allows."),
        Cadmium => format!("{name} may contain cadmium; it was not tested."),
        Nickel if found => format!("{name} gives off more nickel than the rule allows."),
        Nickel => {
            format!("{name} may give off nickel; it was not tested. Do not wear it with a nickel allergy.")
        }
        FoodAllergen if finding.form == Form::Known => {
            let known: Vec<&str> = allergens.iter().map(Allergen::word).collect();
            let known = known.join(", ");
            format!(
                "{name} is a decoration, not to be eaten. It contains: {known}. Do not wear it with an allergy to that."
            )
        }
        FoodAllergen => format!(
            "{name} is a decoration, not to be eaten. Its allergens are not known; do not wear it with a food allergy."
        ),
        HeavyOnChild => format!("The necklace weighs {number} g with its drops, much for a young neck."),
        ChainTooShort => format!("This necklace is about {number} mm too short to go round the neck."),
    }
}

/// Plain words for the seller: how it was found, and what to say or to offer.
pub(super) fn seller(finding: &Finding<'_>) -> String {
    let rule = finding.rule;
    let words = match &rule.within {
        Some(within) if finding.form == Form::Within => &within.seller,
        _ => &rule.seller,
    };
    match finding.small {
        Some(Small::Drop(size)) => format!("{} {words}", size.words()),
        Some(Small::Ends(Size::Measure)) => {
            format!("Clasp or end rings are too close to call: measure them against the test cylinder. {words}")
        }
        Some(Small::Hoop(Size::Measure)) => {
            format!("It is too close to call: measure it against the test cylinder. {words}")
        }
        Some(Small::Hoop(_)) => format!("The whole bangle fits the test cylinder. {words}"),
        Some(Small::Ends(_)) => format!("Clasp or end rings fit the test cylinder. {words}"),
        // The rule's own words may be for what was not tested.
        None if finding.form == Form::Found => {
            format!("A test found more than the rule allows: do not sell it for this wearer. {words}")
        }
        None => words.clone(),
    }
}
