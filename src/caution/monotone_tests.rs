//! Who hears more than whom, held for random pieces: a younger wearer never hears less than an older one, an unknown fact
//! never less than any that is usual, a further drop never less than the piece without it.

use std::collections::{BTreeMap, BTreeSet};

use super::{
    CautionCode, Gauge, PieceFacts, Region, Rules, Sizes, Verdict, cautions,
    table_cases::{bangle, neutral_base, neutral_drop},
};
use crate::craft::{
    Allergen, Base, BaseKind, Body, Day, Declaration, DropKind, Facts, Length, Magnet, Mass, Material, MetalTest,
    Plating, Substance, UsualAllergen, Wearer,
};

/// How many random pieces each test tries.
const PIECES: u64 = 250;

/// Marsaglia's 64-bit xorshift.
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as usize % n
    }

    fn one_in(&mut self, n: usize) -> bool {
        self.below(n) == 0
    }

    fn of<T: Copy>(&mut self, all: &[T]) -> T {
        all[self.below(all.len())]
    }

    fn body(&mut self) -> Body {
        let size = Length::from_mm(self.of(&[6.0, 12.0, 31.0, 40.0, 60.0]));
        match self.below(3) {
            0 => Body::Ball { diameter: size },
            1 => Body::Disc { diameter: size, thickness: Length::from_mm(2.0) },
            _ => Body::Points { points_mm: vec![] },
        }
    }

    /// Facts within what is usual: a test that was passed, a magnet of any strength.
    fn facts(&mut self) -> Facts {
        let materials: Vec<Material> = (0..1 + self.below(3)).map(|_| self.of(Material::ALL)).collect();
        let figure = |dice: &mut Self, most: f64| dice.one_in(2).then_some(most);
        let tested = self.one_in(3).then(|| MetalTest {
            lead_ppm: figure(self, 80.0),
            cadmium_ppm: figure(self, 80.0),
            nickel_ug_cm2_week: figure(self, 0.4),
            paint_lead_ppm: figure(self, 80.0),
        });
        let says = Substance::ALL.iter().copied().filter(|_| self.one_in(2)).collect();
        let dated = Day { year: 2026, month: None, day: None };
        let declared = self.one_in(3).then(|| Declaration { paper: "letter".into(), dated, says });
        let pole = Length::from_mm(5.0);
        let magnet = self.one_in(4).then(|| match self.below(3) {
            0 => Magnet::UNKNOWN,
            1 => Magnet::measured(1.0, pole),
            _ => Magnet::measured(3.0, pole),
        });
        Facts {
            materials,
            plating: self.of(Plating::ALL),
            painted: self.one_in(4),
            tested,
            declared,
            lead_exempt: None,
            magnet,
            coin_cell: self.one_in(6),
            sharp: self.one_in(6),
            allergens: if self.one_in(6) { vec![Allergen::Usual(UsualAllergen::Milk)] } else { vec![] },
            looks_like_food: self.one_in(6),
            liquid: self.one_in(6),
            comes_off: if self.one_in(4) { vec![self.body()] } else { vec![] },
        }
    }

    fn drop(&mut self, id: usize) -> DropKind {
        let (body, facts) = (self.body(), self.facts());
        let weight = Mass::from_g(self.of(&[1.0, 9.0, 40.0]));
        DropKind { id: format!("drop-{id}"), body, facts, weight, ..neutral_drop() }
    }

    fn base(&mut self) -> Base {
        let mut base = if self.one_in(3) { bangle(self.of(&[25.0, 40.0, 46.5, 60.0, 75.0])) } else { neutral_base() };
        if let BaseKind::Necklace(necklace) = &mut base.kind {
            necklace.breakaway = self.one_in(2);
        }
        base.facts = self.facts();
        base
    }
}

struct Piece {
    base: Base,
    length_mm: f64,
    drops: Vec<DropKind>,
    /// For both drawings of the cylinder.
    sizes: [Sizes; 2],
}

impl Piece {
    fn random(dice: &mut Dice) -> Self {
        let drops = (0..dice.below(4)).map(|id| dice.drop(id)).collect();
        Self::new(dice.base(), dice.of(&[280.0, 355.6, 400.0, 460.0, 600.0]), drops)
    }

    fn new(base: Base, length_mm: f64, drops: Vec<DropKind>) -> Self {
        let sizes = [Gauge::Inch, Gauge::Metric].map(|gauge| Sizes::of_all(&drops, gauge).with_bases([&base]));
        Self { base, length_mm, drops, sizes }
    }

    fn judge(&self, wearer: Wearer, rules: &Rules) -> Verdict {
        let drops: Vec<&DropKind> = self.drops.iter().collect();
        let sizes = self.sizes.iter().find(|sizes| sizes.gauge() == rules.gauge).unwrap();
        let (base, length_mm, neck_mm) = (&self.base, Some(self.length_mm), None);
        cautions(&PieceFacts { base, length_mm, neck_mm, drops: &drops, sizes, wearer, rules })
    }
}

/// What is heard: the cautions by what they are about, with the gravest of each.
fn heard(verdict: &Verdict) -> BTreeMap<(CautionCode, Option<String>), (bool, bool)> {
    let mut all = BTreeMap::new();
    for one in &verdict.cautions {
        let gravest: &mut (bool, bool) = all.entry((one.code, one.drop.clone())).or_default();
        *gravest = (gravest.0 || one.forbidden, gravest.1 || one.grave);
    }
    all
}

/// Whether `more` hears all that `less` does, as gravely. How a chain closes on a neck is graver for the larger one, so
/// there the hearing alone counts.
fn hears_all_of(more: &Verdict, less: &Verdict) -> Result<(), String> {
    let more = heard(more);
    for (what, (forbidden, grave)) in heard(less) {
        let Some((forbidden_more, grave_more)) = more.get(&what) else { return Err(format!("{what:?} is not heard")) };
        let fit = what.0 == CautionCode::ChainTooShort;
        if forbidden && !forbidden_more || grave && !grave_more && !fit {
            return Err(format!("{what:?} is less grave"));
        }
    }
    Ok(())
}

fn regions() -> impl Iterator<Item = &'static Rules> {
    [Region::US, Region::EU, Region::UK].into_iter().filter_map(Rules::of_region)
}

#[test]
fn a_younger_wearer_never_hears_less_than_an_older_one() {
    let mut seen = BTreeSet::new();
    for seed in 1..=PIECES {
        let piece = Piece::random(&mut Dice(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15)));
        for rules in regions() {
            let by_age = Wearer::ANSWERS.map(|wearer| piece.judge(wearer, rules));
            for (younger, pair) in by_age.windows(2).enumerate() {
                if let Err(why) = hears_all_of(&pair[0], &pair[1]) {
                    panic!("{seed} {} {:?}: {why}", rules.region, Wearer::ANSWERS[younger]);
                }
            }
            let unknown = piece.judge(Wearer::Unknown, rules);
            for verdict in &by_age {
                if let Err(why) = hears_all_of(&unknown, verdict) {
                    panic!("{seed} {} who is not known: {why}", rules.region);
                }
            }
            seen.extend(by_age[0].cautions.iter().map(|one| one.code));
        }
    }
    assert_eq!(seen.len(), CautionCode::ALL.len(), "the pieces show every caution: {seen:?}");
}

#[test]
fn a_further_drop_never_takes_a_caution_away() {
    for seed in 1..=PIECES {
        let mut dice = Dice(seed.wrapping_mul(0x2545_f491_4f6c_dd1d));
        let mut piece = Piece::random(&mut dice);
        let (wearer, more) = (dice.of(&Wearer::ANSWERS), dice.drop(9));
        let rules: Vec<_> = regions().collect();
        let before: Vec<_> = rules.iter().map(|rules| piece.judge(wearer, rules)).collect();
        piece.drops.push(more);
        let piece = Piece::new(piece.base, piece.length_mm, piece.drops);
        for (rules, before) in rules.iter().zip(before) {
            if let Err(why) = hears_all_of(&piece.judge(wearer, rules), &before) {
                panic!("{seed} {} {wearer:?}: {why}", rules.region);
            }
        }
    }
}

/// Which fact is put back to "not known", and how.
type Forget = (&'static str, fn(&mut Facts));

/// The facts one by one put back to "not known". A test that was failed is not what is usual, and not tried here.
#[test]
fn an_unknown_fact_never_hears_less_than_one_that_is_usual() {
    let forget: [Forget; 6] = [
        ("tested", |facts| facts.tested = None),
        ("declared", |facts| facts.declared = None),
        ("plating", |facts| facts.plating = Plating::Unknown),
        ("magnet", |facts| facts.magnet = Some(Magnet::UNKNOWN)),
        ("metal", |facts| {
            let metals: &[Material] = &[
                Material::Brass,
                Material::Bronze,
                Material::CopperMetal,
                Material::SilverMetal,
                Material::GoldMetal,
                Material::GoldFilled,
                Material::SteelMetal,
                Material::StainlessSteel,
                Material::Titanium,
                Material::NickelSilver,
                Material::Pewter,
                Material::ZincAlloy,
                Material::Aluminium,
            ];
            facts.materials.iter_mut().filter(|one| metals.contains(one)).for_each(|one| *one = Material::UnknownMetal);
        }),
        ("what comes off", |facts| facts.comes_off.push(Body::Points { points_mm: vec![] })),
    ];
    for seed in 1..=PIECES {
        let mut dice = Dice(seed.wrapping_mul(0xd134_2543_de82_ef95));
        let piece = Piece::random(&mut dice);
        let (what, forget) = dice.of(&forget);
        let (mut base, mut drops) = (piece.base.clone(), piece.drops.clone());
        forget(&mut base.facts);
        drops.iter_mut().for_each(|kind| forget(&mut kind.facts));
        let unknown = Piece::new(base, piece.length_mm, drops);
        for rules in regions() {
            for wearer in Wearer::ANSWERS {
                if let Err(why) = hears_all_of(&unknown.judge(wearer, rules), &piece.judge(wearer, rules)) {
                    panic!("{seed} {} {wearer:?}, {what} not known: {why}", rules.region);
                }
            }
        }
    }
}

/// Nobody whose piece holds a small part reads that there is nothing to be careful about.
#[test]
fn nobody_with_a_small_part_reads_nothing() {
    for seed in 1..=PIECES {
        let piece = Piece::random(&mut Dice(seed.wrapping_mul(0x6c62_272e_07bb_0142)));
        for rules in regions() {
            let small =
                |wearer| piece.judge(wearer, rules).cautions.iter().any(|one| one.code == CautionCode::SmallPart);
            for wearer in Wearer::ANSWERS {
                assert_eq!(small(wearer), small(Wearer::Under3), "{seed} {} {wearer:?}", rules.region);
            }
        }
    }
}
