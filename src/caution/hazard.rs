//! Cautions gathered by hazard: one card for each, graver first, with the parts that it is about.

use super::{Caution, CautionCode, Verdict};

/// One hazard of a piece.
#[derive(Debug, Clone, PartialEq)]
pub struct Hazard<'v> {
    /// Its cautions, alike in all but the part they are about and their figures; there is at least one.
    pub cautions: Vec<&'v Caution>,
}

impl<'v> Hazard<'v> {
    /// The caution that speaks for all of them: the one with the largest figure.
    pub fn spokesman(&self) -> &'v Caution {
        let mut first = self.cautions[0];
        for one in &self.cautions {
            if one.number > first.number {
                first = one;
            }
        }
        first
    }

    /// What it is about.
    pub fn code(&self) -> CautionCode {
        self.cautions[0].code
    }

    /// Whether it makes the piece unsuitable.
    pub fn is_grave(&self) -> bool {
        self.cautions[0].grave
    }

    /// Ids of the drops that it is about.
    pub fn drops(&self) -> impl Iterator<Item = &'v str> {
        self.cautions.iter().filter_map(|one| one.drop.as_deref())
    }

    /// Whether it is about the base, or the piece as a whole.
    pub fn is_of_the_base(&self) -> bool {
        self.cautions.iter().any(|one| one.drop.is_none())
    }
}

impl Verdict {
    /// Its hazards, graver first. What nobody knows of a metal stands on one card: the part is not named again for lead,
    /// cadmium and nickel that it was not tested for.
    pub fn hazards(&self) -> Vec<Hazard<'_>> {
        use CautionCode::{Cadmium, Lead, Nickel, UnknownMetal};
        let unknown: Vec<_> = self.cautions.iter().filter(|one| one.code == UnknownMetal).collect();
        let said_already = |one: &Caution| {
            matches!(one.code, Lead | Cadmium | Nickel)
                && unknown.iter().any(|metal| (&metal.drop, &metal.form) == (&one.drop, &one.form))
        };
        let mut all: Vec<Hazard<'_>> = Vec::new();
        for one in self.cautions.iter().filter(|one| !said_already(one)) {
            let alike = |hazard: &&mut Hazard<'_>| {
                let first = hazard.cautions[0];
                (first.code, &first.form, first.grave, first.forbidden) == (one.code, &one.form, one.grave, one.forbidden)
                    && (&first.rule, &first.title, &first.dated, first.status)
                        == (&one.rule, &one.title, &one.dated, one.status)
                    // Allergens are those of one food.
                    && (first.form != "known" || first.text == one.text)
            };
            match all.iter_mut().find(alike) {
                Some(hazard) => hazard.cautions.push(one),
                None => all.push(Hazard { cautions: vec![one] }),
            }
        }
        all
    }
}
