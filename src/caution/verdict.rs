//! What to say of a piece and its wearer.

use serde::{Deserialize, Serialize};

use super::{
    CautionCode, Limit, Rule, Rules, Size, Sizes, flux_index_kg2mm2,
    part::{ball_mm, has_small_ends},
};
use crate::craft::{Base, BaseKind, DropKind, Material, MetalTest, Wearer};

/// Said with every list of cautions.
pub const DEFERRAL: &str = "A guide, not a test report; local rules and a qualified safety assessment decide.";

/// One caution.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Caution {
    /// What it is about.
    pub code: CautionCode,
    /// Id of the drop, or none for the whole piece.
    pub drop: Option<String>,
    /// The rule it rests on with its date, and how far it is known where it was not read.
    pub rule: String,
    /// Which of several ways to say it, as a language file's key `caution-CODE-FORM` has it; empty for the usual one.
    #[serde(default)]
    pub form: String,
    /// Plain words for a guest, in English.
    pub text: String,
    /// Plain words for the seller: what to say or to offer.
    #[serde(default)]
    pub seller: String,
    /// Whether it makes the piece unsuitable for the wearer.
    pub grave: bool,
}

/// All cautions of a piece for one wearer.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Verdict {
    /// Whether nothing speaks plainly against the piece for this wearer.
    pub suitable: bool,
    /// The cautions, those that speak against it first.
    pub cautions: Vec<Caution>,
}

/// What the rules look at.
#[derive(Debug, Clone, Copy)]
pub struct PieceFacts<'a> {
    /// The base.
    pub base: &'a Base,
    /// Whole length of a necklace; without it, the usual one.
    pub length_mm: Option<f64>,
    /// How much a necklace lacks to go round the wearer's neck, in millimetres.
    pub short_by_mm: Option<f64>,
    /// The drops.
    pub drops: &'a [&'a DropKind],
    /// How the drops stand to the test cylinder.
    pub sizes: &'a Sizes,
    /// Who it is for.
    pub wearer: Wearer,
    /// Whose rules.
    pub rules: &'a Rules,
}

/// The cautions for a piece: one for each code and kind of drop, however many of it hang. A wearer who is not known may
/// be a young child.
pub fn cautions(facts: &PieceFacts<'_>) -> Verdict {
    let mut list = List { wearer: facts.wearer, rules: facts.rules, sizes: facts.sizes, found: Vec::new() };
    for (i, kind) in facts.drops.iter().enumerate() {
        if !facts.drops[..i].iter().any(|earlier| earlier.id == kind.id) {
            list.of_drop(kind);
        }
    }
    list.of_base(facts);
    list.verdict()
}

/// The cautions of one drop by itself.
pub fn drop_cautions(kind: &DropKind, sizes: &Sizes, wearer: Wearer, rules: &Rules) -> Verdict {
    let mut list = List { wearer, rules, sizes, found: Vec::new() };
    list.of_drop(kind);
    list.verdict()
}

struct List<'a> {
    wearer: Wearer,
    rules: &'a Rules,
    sizes: &'a Sizes,
    found: Vec<Caution>,
}

impl List<'_> {
    fn verdict(mut self) -> Verdict {
        self.found.sort_by_key(|caution| (!caution.grave, caution.code));
        Verdict { suitable: self.found.iter().all(|caution| !caution.grave), cautions: self.found }
    }

    /// The rule on `code`, where this wearer hears of it.
    fn heard(&self, code: CautionCode) -> Option<&Rule> {
        self.rules.of(code).filter(|rule| rule.says.contains(&self.wearer))
    }

    fn say(&mut self, rule: &Rule, drop: Option<&DropKind>, grave: bool, form: &str, text: String) {
        self.found.push(Caution {
            code: rule.code,
            drop: drop.map(|kind| kind.id.clone()),
            rule: rule.cited(),
            form: form.to_owned(),
            text,
            seller: rule.seller.clone(),
            grave,
        });
    }

    /// Says a thing that is there or not.
    fn say_if(
        &mut self,
        there: bool,
        code: CautionCode,
        drop: Option<&DropKind>,
        form: &str,
        text: impl FnOnce() -> String,
    ) {
        if there && let Some(rule) = self.heard(code).cloned() {
            self.say(&rule, drop, rule.against.contains(&self.wearer), form, text());
        }
    }

    fn of_drop(&mut self, kind: &DropKind) {
        use CautionCode::{CoinCell, FoodAllergen, Glass, Sharp, SmallBall, SmallPart, UnknownMetal};
        let (name, of) = (&kind.name, Some(kind));
        if let Some(rule) = self.heard(SmallPart).cloned() {
            let size = self.sizes.of(kind);
            if size.is_small() {
                let rule = Rule { seller: format!("{} {}", size.words(), rule.seller), ..rule };
                let grave = rule.against.contains(&self.wearer);
                self.say(&rule, of, grave, "", format!("{name} is a small part. A child under 3 can choke on it."));
            }
        }
        let ball = self.rules.of(SmallBall).is_some_and(
            |rule| matches!(rule.limit, Limit::BallBelowMm(below) if ball_mm(&kind.body).is_some_and(|mm| mm < below)),
        );
        // What fits the cylinder, or may, is a small part already.
        let large = ball && matches!(self.sizes.of(kind).body, Size::TooLarge | Size::LeftOut);
        self.say_if(large, SmallBall, of, "", || {
            format!("{name} is as large as a small ball, which as a toy is not for a child under 3.")
        });
        self.of_magnet(kind);
        self.say_if(kind.coin_cell, CoinCell, of, "", || {
            format!("{name} holds a button cell. Swallowed, it burns within hours; keep it from children.")
        });
        let glass = kind.materials.iter().any(|one| matches!(one, Material::Glass | Material::CrystalGlass));
        self.say_if(glass, Glass, of, "", || format!("{name} is glass and can break into sharp pieces."));
        self.say_if(kind.sharp, Sharp, of, "", || format!("{name} has a sharp edge or point."));
        self.say_if(self.is_of(UnknownMetal, &kind.materials), UnknownMetal, of, "", || {
            format!("{name} is old metal that nobody tested for lead, cadmium or nickel.")
        });
        self.of_metals(of, name, kind.tested, &kind.materials);
        let food = self.is_of(FoodAllergen, &kind.materials) || !kind.allergens.is_empty();
        let (form, contains) = match kind.allergens.as_slice() {
            [] => ("", String::new()),
            known => ("known", format!(" It contains {}.", known.join(", "))),
        };
        self.say_if(food, FoodAllergen, of, form, || format!("{name} is a decoration, not to be eaten.{contains}"));
    }

    /// Whether one of `materials` calls for `code`.
    fn is_of(&self, code: CautionCode, materials: &[Material]) -> bool {
        self.rules.of(code).is_some_and(|rule| materials.iter().any(|one| rule.materials.contains(one)))
    }

    fn of_magnet(&mut self, kind: &DropKind) {
        let Some((magnet, rule)) = kind.magnet.as_ref().zip(self.rules.of(CautionCode::Magnet).cloned()) else {
            return;
        };
        // A magnet in a drop, once loose, fits the cylinder: the index alone decides.
        let hazardous = rule.limit.is_broken_by(flux_index_kg2mm2(magnet));
        if hazardous || rule.says.contains(&self.wearer) {
            let grave = hazardous && rule.against.contains(&self.wearer);
            let text =
                format!("{} holds a magnet. Swallowed magnets can do grave harm; keep it from children.", kind.name);
            self.say(&rule, Some(kind), grave, "", text);
        }
    }

    /// Lead, cadmium and nickel: what a test found decides; without a test, what is usual in the material is said.
    fn of_metals(&mut self, of: Option<&DropKind>, name: &str, tested: Option<MetalTest>, materials: &[Material]) {
        use CautionCode::{Cadmium, Lead, Nickel};
        let test = tested.unwrap_or_default();
        for (code, found, what) in [
            (Lead, test.lead_ppm, "lead"),
            (Cadmium, test.cadmium_ppm, "cadmium"),
            (Nickel, test.nickel_ug_cm2_week, "nickel"),
        ] {
            let Some(rule) = self.rules.of(code).cloned() else { continue };
            // Nickel matters where metal lies on the skin for long: the base.
            let usual = self.is_of(code, materials) && (code != Nickel || of.is_none());
            match found {
                Some(found) if rule.limit.is_broken_by(found) => {
                    let grave = rule.against.contains(&self.wearer);
                    if grave || rule.says.contains(&self.wearer) {
                        self.say(&rule, of, grave, "found", format!("{name} has more {what} than the rule allows."));
                    }
                }
                None if usual && rule.says.contains(&self.wearer) => {
                    self.say(&rule, of, false, "", format!("{name} may contain {what}; it was not tested."));
                }
                _ => {}
            }
        }
    }

    fn of_base(&mut self, facts: &PieceFacts<'_>) {
        use CautionCode::{Breakaway, ChainTooShort, CordLoop, HeavyOnChild, SmallPart, UnknownMetal};
        let (base, name) = (facts.base, &facts.base.name);
        self.say_if(self.is_of(UnknownMetal, &base.materials), UnknownMetal, None, "", || {
            format!("{name} is metal that nobody tested for lead, cadmium or nickel.")
        });
        self.of_metals(None, name, base.tested, &base.materials);
        let BaseKind::Necklace(necklace) = &base.kind else { return };
        self.say_if(has_small_ends(necklace, self.rules.gauge), SmallPart, None, "base", || {
            format!("The clasp and rings of {name} are small parts. A child under 3 can choke on them.")
        });
        self.say_if(!necklace.breakaway, Breakaway, None, "", || {
            "This necklace does not come apart when pulled. Take it off a young child for play and sleep.".into()
        });
        let length_mm = facts.length_mm.unwrap_or(necklace.lengths.usual.mm());
        let long = self
            .rules
            .of(CordLoop)
            .is_some_and(|rule| matches!(rule.limit, Limit::LoopFromMm(from) if length_mm >= from));
        self.say_if(long, CordLoop, None, "", || {
            "A loop this long can catch. Watch a young child who wears it.".into()
        });
        let whole_g =
            necklace.chain.g_per_mm() * length_mm + facts.drops.iter().map(|kind| kind.weight.g()).sum::<f64>();
        let heavy = self.rules.of(HeavyOnChild).is_some_and(|rule| {
            let Limit::HeavierThanG(by_wearer) = &rule.limit else { return false };
            by_wearer.iter().any(|(wearer, g)| *wearer == self.wearer && whole_g > *g)
        });
        self.say_if(heavy, HeavyOnChild, None, "", || {
            format!("The necklace weighs {whole_g:.0} g with its drops, much for a young neck.")
        });
        let short_mm = facts.short_by_mm.unwrap_or(0.0);
        self.say_if(short_mm > 0.0, ChainTooShort, None, "", || {
            format!("This necklace is about {short_mm:.0} mm too short to go round the neck.")
        });
    }
}
