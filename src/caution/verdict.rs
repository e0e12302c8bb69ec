//! What to say of a piece and its wearer.

use serde::{Deserialize, Serialize};

use super::{CautionCode, Region, is_hazardous, small_part};
use crate::craft::{Base, BaseKind, DropKind, Material, Wearer};

/// Said with every list of cautions.
pub const DEFERRAL: &str = "A guide, not a test report; local rules and a qualified safety assessment decide.";

/// A loop this long or longer can catch on things a young child climbs. Common practice, no source.
const LONG_LOOP_MM: f64 = 460.0;
/// A piece this heavy is too much for a young neck all day. Common practice, no source.
const HEAVY_G: f64 = 60.0;

/// One caution.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Caution {
    /// What it is about.
    pub code: CautionCode,
    /// Id of the drop, or none for the whole piece.
    pub drop: Option<String>,
    /// The rule it rests on; "(from memory)" is added where that is so.
    pub rule: String,
    /// Plain words for a guest.
    pub text: String,
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
    /// The drops.
    pub drops: &'a [&'a DropKind],
    /// Who it is for.
    pub wearer: Wearer,
    /// Whose rules.
    pub region: Region,
}

/// The cautions for a piece: one for each code and kind of drop, however many of it hang. A wearer who is not known may
/// be a young child.
pub fn cautions(facts: &PieceFacts<'_>) -> Verdict {
    let mut list = List { ages: Ages::of(facts.wearer), region: facts.region, found: Vec::new() };
    for (i, kind) in facts.drops.iter().enumerate() {
        if !facts.drops[..i].iter().any(|earlier| earlier.id == kind.id) {
            list.of_drop(kind);
        }
    }
    list.of_base(facts.base, facts.length_mm);
    list.of_weight(facts.drops.iter().map(|kind| kind.weight.g()).sum());
    let mut cautions = list.found;
    cautions.sort_by_key(|caution| (!caution.grave, caution.code));
    Verdict { suitable: cautions.iter().all(|caution| !caution.grave), cautions }
}

/// The age bands that the rules tell apart.
#[derive(Clone, Copy)]
struct Ages {
    /// Known to be under 3.
    toddler: bool,
    /// Under 6, or possibly so.
    young: bool,
    /// 12 or younger, or possibly so.
    child: bool,
}

impl Ages {
    fn of(wearer: Wearer) -> Self {
        Self {
            toddler: wearer == Wearer::Under3,
            young: matches!(wearer, Wearer::Under3 | Wearer::From3To5 | Wearer::Unknown),
            child: wearer != Wearer::From13,
        }
    }
}

struct List {
    ages: Ages,
    region: Region,
    found: Vec<Caution>,
}

impl List {
    fn say(&mut self, code: CautionCode, kind: Option<&DropKind>, grave: bool, text: String) {
        let rule = code.rule(self.region);
        let from_memory = if rule.from_memory { " (from memory)" } else { "" };
        let rule = format!("{}{from_memory}", rule.name);
        self.found.push(Caution { code, drop: kind.map(|kind| kind.id.clone()), rule, text, grave });
    }

    fn of_drop(&mut self, kind: &DropKind) {
        use CautionCode::{CoinCell, FoodAllergen, Glass, Magnet, Sharp, SmallPart, UnknownMetal};
        let Ages { toddler, young, child } = self.ages;
        let (name, of) = (&kind.name, Some(kind));
        let made_of = |material| kind.materials.contains(&material);
        if young && small_part(kind, self.region.gauge()) {
            self.say(SmallPart, of, toddler, format!("{name} is a small part. A child under 3 can choke on it."));
        }
        if let Some(hazardous) = kind.magnet.as_ref().map(is_hazardous)
            && (child || hazardous)
        {
            let text = format!("{name} holds a magnet. Swallowed magnets can do grave harm; keep it from children.");
            self.say(Magnet, of, child && hazardous, text);
        }
        if kind.coin_cell {
            let text = format!("{name} holds a button cell. Swallowed, it burns within hours; keep it from children.");
            self.say(CoinCell, of, toddler, text);
        }
        if child && (made_of(Material::Glass) || made_of(Material::CrystalGlass)) {
            self.say(Glass, of, false, format!("{name} is glass and can break into sharp pieces."));
        }
        if child && kind.sharp {
            self.say(Sharp, of, toddler, format!("{name} has a sharp edge or point."));
        }
        if child && made_of(Material::UnknownMetal) {
            let text = format!("{name} is old metal that nobody tested for lead, cadmium or nickel.");
            self.say(UnknownMetal, of, toddler, text);
        }
        if made_of(Material::Food) || !kind.allergens.is_empty() {
            let contains = format!(" It contains {}.", kind.allergens.join(", "));
            let with = if kind.allergens.is_empty() { "" } else { &contains };
            self.say(FoodAllergen, of, false, format!("{name} is a decoration, not to be eaten.{with}"));
        }
    }

    fn of_base(&mut self, base: &Base, length_mm: Option<f64>) {
        let Ages { toddler, young, child } = self.ages;
        if child && base.materials.contains(&Material::UnknownMetal) {
            let text = format!("{} is metal that nobody tested for lead, cadmium or nickel.", base.name);
            self.say(CautionCode::UnknownMetal, None, toddler, text);
        }
        if let BaseKind::Necklace(necklace) = &base.kind
            && young
        {
            let length_mm = length_mm.unwrap_or(necklace.lengths.usual.mm());
            if !necklace.breakaway {
                let text =
                    "This necklace does not come apart when pulled. Take it off a young child for play and sleep.";
                self.say(CautionCode::CordLoop, None, toddler, text.into());
            } else if length_mm >= LONG_LOOP_MM {
                let text = "A loop this long can catch. Watch a young child who wears it.";
                self.say(CautionCode::CordLoop, None, false, text.into());
            }
        }
    }

    fn of_weight(&mut self, drops_g: f64) {
        if self.ages.young && drops_g > HEAVY_G {
            let text = format!("The drops weigh {drops_g:.0} g together, much for a young neck.");
            self.say(CautionCode::HeavyOnChild, None, false, text);
        }
    }
}
