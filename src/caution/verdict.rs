//! What to say of a piece and its wearer.

use std::{
    collections::HashMap,
    f64::consts::PI,
    sync::{LazyLock, Mutex, PoisonError},
};

use serde::{Deserialize, Serialize};

use super::{CautionCode, Gauge, Region, Solid, fits};
use crate::craft::{Base, BaseKind, DropKind, Magnet, Material, Wearer};

/// Said with every list of cautions.
pub const DEFERRAL: &str = "A guide, not a test report; local rules and a qualified safety assessment decide.";

/// A magnet at or above this index is hazardous where it can be swallowed. Source: 16 CFR 1262.2(a).
const HAZARDOUS_FLUX_KG2MM2: f64 = 50.0;
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
    /// Whole length of a necklace.
    pub length_mm: Option<f64>,
    /// The drops.
    pub drops: &'a [&'a DropKind],
    /// Who it is for.
    pub wearer: Wearer,
    /// Whose rules.
    pub region: Region,
}

/// (surface field in kG)² × pole area in mm². Source: ASTM F963 as 16 CFR 1262.4 cites it (wording from memory).
pub fn flux_index_kg2mm2(magnet: &Magnet) -> f64 {
    magnet.surface_kilogauss.powi(2) * PI / 4.0 * magnet.pole_diameter.mm().powi(2)
}

/// Whether a drop is a small part: its body or its ring alone fits the cylinder. (Both together are larger than either,
/// so they fit only where these do.)
pub fn is_small_part(kind: &DropKind, gauge: Gauge) -> bool {
    // The search is the same for every copy of a shape; kiosks ask with every touch.
    static KNOWN: LazyLock<Mutex<HashMap<String, bool>>> = LazyLock::new(Mutex::default);
    let shape = format!("{:?} {:?} {:?} {:?} {gauge:?}", kind.body, kind.ring, kind.width, kind.height);
    let known = || KNOWN.lock().unwrap_or_else(PoisonError::into_inner);
    if let Some(&small) = known().get(&shape) {
        return small;
    }
    let body = Solid::of_body(&kind.body, (kind.width.mm(), kind.height.mm()));
    let small = fits(&Solid::of_ring(kind.ring), gauge) || fits(&body, gauge);
    known().insert(shape, small);
    small
}

/// The cautions for a piece. A wearer who is not known may be a young child.
pub fn cautions(facts: &PieceFacts<'_>) -> Verdict {
    use CautionCode::{CoinCell, CordLoop, FoodAllergen, Glass, HeavyOnChild, Magnet, Sharp, SmallPart, UnknownMetal};
    let young = matches!(facts.wearer, Wearer::Under3 | Wearer::From3To5 | Wearer::Unknown);
    let child = facts.wearer != Wearer::From13;
    let toddler = facts.wearer == Wearer::Under3;
    let mut found: Vec<Caution> = Vec::new();
    let mut say = |code: CautionCode, kind: Option<&DropKind>, grave: bool, text: String| {
        let drop = kind.map(|kind| kind.id.clone());
        if found.iter().any(|one| one.code == code && one.drop == drop) {
            return;
        }
        let rule = code.rule(facts.region);
        let from_memory = if rule.from_memory { " (from memory)" } else { "" };
        found.push(Caution { code, drop, rule: format!("{}{from_memory}", rule.name), text, grave });
    };
    for kind in facts.drops {
        let name = &kind.name;
        let of = Some(*kind);
        if young && is_small_part(kind, facts.region.gauge()) {
            let text = format!("{name} is a small part. A child under 3 can choke on it.");
            say(SmallPart, of, toddler, text);
        }
        if let Some(magnet) = &kind.magnet {
            let hazardous = flux_index_kg2mm2(magnet) >= HAZARDOUS_FLUX_KG2MM2;
            let text = format!("{name} holds a magnet. Swallowed magnets can do grave harm; keep it from children.");
            if child || hazardous {
                say(Magnet, of, child && hazardous, text);
            }
        }
        if kind.coin_cell {
            let text = format!("{name} holds a button cell. Swallowed, it burns within hours; keep it from children.");
            say(CoinCell, of, toddler, text);
        }
        let glass = [Material::Glass, Material::CrystalGlass];
        if child && kind.materials.iter().any(|material| glass.contains(material)) {
            say(Glass, of, false, format!("{name} is glass and can break into sharp pieces."));
        }
        if child && kind.sharp {
            say(Sharp, of, toddler, format!("{name} has a sharp edge or point."));
        }
        if child && kind.materials.contains(&Material::UnknownMetal) {
            let text = format!("{name} is old metal that nobody tested for lead, cadmium or nickel.");
            say(UnknownMetal, of, toddler, text);
        }
        if kind.materials.contains(&Material::Food) {
            let with = if kind.allergens.is_empty() {
                String::new()
            } else {
                format!(" It contains {}.", kind.allergens.join(", "))
            };
            say(FoodAllergen, of, false, format!("{name} is a decoration, not to be eaten.{with}"));
        }
    }
    if facts.base.materials.contains(&Material::UnknownMetal) && child {
        let text = format!("{} is metal that nobody tested for lead, cadmium or nickel.", facts.base.name);
        say(UnknownMetal, None, toddler, text);
    }
    if let (BaseKind::Necklace(necklace), Some(length_mm)) = (&facts.base.kind, facts.length_mm)
        && young
    {
        if !necklace.breakaway {
            let text = "This necklace does not come apart when pulled. Take it off a young child for play and sleep.";
            say(CordLoop, None, toddler, text.into());
        } else if length_mm >= LONG_LOOP_MM {
            say(CordLoop, None, false, "A loop this long can catch. Watch a young child who wears it.".into());
        }
    }
    let weight_g: f64 = facts.drops.iter().map(|kind| kind.weight.g()).sum();
    if young && weight_g > HEAVY_G {
        say(HeavyOnChild, None, false, format!("The drops weigh {weight_g:.0} g together, much for a young neck."));
    }
    found.sort_by_key(|caution| (!caution.grave, caution.code));
    Verdict { suitable: found.iter().all(|caution| !caution.grave), cautions: found }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::{Body, Length};

    fn mm(x: f64) -> Length {
        Length::from_mm(x)
    }

    fn body(body: Body) -> Solid {
        Solid::of_body(&body, (0.0, 0.0))
    }

    fn boxed(a: f64, b: f64, c: f64) -> Solid {
        body(Body::Box { width: mm(a), depth: mm(b), height: mm(c) })
    }

    fn rod(d: f64, l: f64) -> Solid {
        body(Body::Rod { diameter: mm(d), length: mm(l) })
    }

    fn cylinder(d: f64, h: f64) -> Solid {
        body(Body::Cylinder { diameter: mm(d), height: mm(h) })
    }

    /// Critical sizes of the cylinder of 16 CFR 1501.4 (inch figures) and of the metric drawing, by closed forms and
    /// checked by an independent optimiser; tested 0.05 mm to either side.
    #[test]
    fn critical_sizes() {
        let at = |solid: Solid, gauge, wanted: bool, what: &str| assert_eq!(fits(&solid, gauge), wanted, "{what}");
        for (d, inch, metric) in [(1.0, 64.40, 64.33), (5.0, 60.49, 60.42), (10.0, 55.60, 55.53), (20.0, 45.83, 45.77)]
        {
            for (gauge, l) in [(Gauge::Inch, inch), (Gauge::Metric, metric)] {
                at(rod(d, l - 0.05), gauge, true, &format!("rounded rod {d} × {l}, shorter"));
                at(rod(d, l + 0.05), gauge, false, &format!("rounded rod {d} × {l}, longer"));
            }
        }
        for (d, l) in [(2.0, 62.15), (10.0, 49.29), (12.0, 46.09), (15.0, 42.15), (25.0, 32.15)] {
            at(cylinder(d, l - 0.05), Gauge::Inch, true, &format!("rod {d} × {l}, shorter"));
            at(cylinder(d, l + 0.05), Gauge::Inch, false, &format!("rod {d} × {l}, longer"));
        }
        for (w, t, l) in
            [(10.0, 2.0, 60.68), (15.0, 3.0, 57.15), (20.0, 5.0, 51.14), (25.0, 2.0, 51.62), (20.0, 20.0, 33.60)]
        {
            at(boxed(w, t, l - 0.05), Gauge::Inch, true, &format!("box {w} × {t} × {l}, shorter"));
            at(boxed(w, t, l + 0.05), Gauge::Inch, false, &format!("box {w} × {t} × {l}, longer"));
        }
        at(boxed(22.40, 22.40, 22.40), Gauge::Inch, true, "cube 22.40");
        at(boxed(22.50, 22.50, 22.50), Gauge::Inch, false, "cube 22.50");
        for (d, wanted) in [(31.70, true), (31.80, false)] {
            at(body(Body::Ball { diameter: mm(d) }), Gauge::Inch, wanted, &format!("ball {d}"));
            at(cylinder(d, 1.0), Gauge::Inch, wanted, &format!("disc {d}"));
        }
        at(cylinder(12.0, 46.06), Gauge::Inch, true, "a vial that fits only the inch cylinder");
    }

    /// Source: 16 CFR 1262, with the index of ASTM F963; values computed.
    #[test]
    fn magnets_by_their_flux_index() {
        for (kilogauss, pole, index) in [(2.0, 3.0, 28.2743), (1.5, 5.0, 44.1786), (3.0, 5.0, 176.7146)] {
            let magnet = Magnet { surface_kilogauss: kilogauss, pole_diameter: mm(pole) };
            assert!((flux_index_kg2mm2(&magnet) - index).abs() < 1e-4);
        }
    }
}
