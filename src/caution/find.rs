//! What is there to be careful about: findings without words, so that thousands of drops are asked in no time.

use super::{
    CautionCode, Limit, PartSize, Rule, Rules, Size, Sizes, flux_index_kg2mm2,
    part::{ball_mm, size_of_ends, size_of_hoop},
    rules::is_about,
};
use crate::craft::{Base, BaseKind, DropKind, Material, MetalTest, Wearer};

/// Which of several ways to say a caution.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Form {
    /// The usual one.
    Usual,
    /// Of a base.
    Base,
    /// A test found it.
    Found,
    /// The allergens are known.
    Known,
    /// A magnet below the limit.
    Within,
}

impl Form {
    /// The end of a language file's key, `caution-CODE-FORM`.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Usual => "",
            Self::Base => "base",
            Self::Found => "found",
            Self::Known => "known",
            Self::Within => "within",
        }
    }
}

/// Why a small part is one.
#[derive(Debug, Clone, Copy)]
pub(super) enum Small {
    Drop(PartSize),
    Ends(Size),
    Hoop(Size),
}

/// One thing to be careful about.
#[derive(Debug, Clone, Copy)]
pub(super) struct Finding<'r> {
    pub rule: &'r Rule,
    pub form: Form,
    /// Whether it makes the piece unsuitable for the wearer.
    pub grave: bool,
    /// The figure in its words: whole grams of something heavy, whole millimetres of something short.
    pub number: Option<u32>,
    pub small: Option<Small>,
}

/// Looks at one wearer's things and hands on what it finds.
pub(super) struct Finder<'r, F> {
    pub wearer: Wearer,
    pub rules: &'r Rules,
    pub found: F,
}

/// A base as it is worn.
pub(super) struct Worn<'a> {
    pub base: &'a Base,
    pub length_mm: Option<f64>,
    pub short_by_mm: Option<f64>,
    /// All drops together.
    pub drops_g: f64,
}

impl<'r, F: FnMut(Finding<'r>)> Finder<'r, F> {
    /// Says a thing that is there or not.
    fn say_if(&mut self, there: bool, code: CautionCode, form: Form) {
        self.say_number_if(there, code, form, None);
    }

    fn say_number_if(&mut self, there: bool, code: CautionCode, form: Form, number: Option<u32>) {
        self.say_as(there, code, form, number, None);
    }

    fn say_as(&mut self, there: bool, code: CautionCode, form: Form, number: Option<u32>, small: Option<Small>) {
        if there && let Some(rule) = self.heard(code) {
            let grave = self.is_one_of(&rule.against);
            (self.found)(Finding { rule, form, grave, number, small });
        }
    }

    fn is_one_of(&self, wearers: &[Wearer]) -> bool {
        is_about(wearers, self.wearer)
    }

    /// The rule on `code`, where this wearer hears of it.
    fn heard(&self, code: CautionCode) -> Option<&'r Rule> {
        self.rules.of(code).filter(|rule| self.is_one_of(&rule.says))
    }

    /// Everything about one drop by itself.
    pub fn drop(&mut self, kind: &DropKind, sizes: &Sizes) {
        use CautionCode::{CoinCell, FoodAllergen, Glass, Sharp, SmallBall, UnknownMetal};
        let part = sizes.of(kind);
        self.say_as(part.is_small(), CautionCode::SmallPart, Form::Usual, None, Some(Small::Drop(part)));
        let ball = self.rules.of(SmallBall).is_some_and(
            |rule| matches!(rule.limit, Limit::BallBelowMm(below) if ball_mm(&kind.body).is_some_and(|mm| mm < below)),
        );
        // What fits the cylinder, or may, is a small part already.
        self.say_if(ball && matches!(part.body, Size::TooLarge | Size::LeftOut), SmallBall, Form::Usual);
        self.magnet(kind);
        self.say_if(kind.coin_cell, CoinCell, Form::Usual);
        let glass = kind.materials.iter().any(|one| matches!(one, Material::Glass | Material::CrystalGlass));
        self.say_if(glass, Glass, Form::Usual);
        self.say_if(kind.sharp, Sharp, Form::Usual);
        self.say_if(self.is_untested(kind.tested, &kind.materials), UnknownMetal, Form::Usual);
        self.metals(false, kind.tested, &kind.materials);
        let known = !kind.allergens.is_empty();
        let food = self.is_of(FoodAllergen, &kind.materials) || known;
        self.say_if(food, FoodAllergen, if known { Form::Known } else { Form::Usual });
    }

    /// Whether one of `materials` calls for `code`.
    fn is_of(&self, code: CautionCode, materials: &[Material]) -> bool {
        self.rules.of(code).is_some_and(|rule| materials.iter().any(|one| rule.materials.contains(one)))
    }

    /// Whether there is metal that was not tested for all of lead, cadmium and nickel, and ought to have been.
    fn is_untested(&self, tested: Option<MetalTest>, materials: &[Material]) -> bool {
        let test = tested.unwrap_or_default();
        let whole = test.lead_ppm.is_some() && test.cadmium_ppm.is_some() && test.nickel_ug_cm2_week.is_some();
        !whole && self.is_of(CautionCode::UnknownMetal, materials)
    }

    /// A magnet in a drop, once loose, fits the cylinder: the index alone decides whether it is beyond the limit.
    fn magnet(&mut self, kind: &DropKind) {
        let Some((magnet, rule)) = kind.magnet.as_ref().zip(self.rules.of(CautionCode::Magnet)) else { return };
        let hazardous = rule.limit.is_broken_by(flux_index_kg2mm2(magnet));
        if hazardous || self.is_one_of(&rule.says) {
            let within = rule.within.as_ref().filter(|_| !hazardous);
            let grave = match within {
                Some(within) => self.is_one_of(&within.against),
                None => hazardous && self.is_one_of(&rule.against),
            };
            let form = if within.is_some() { Form::Within } else { Form::Usual };
            (self.found)(Finding { rule, form, grave, number: None, small: None });
        }
    }

    /// Lead, cadmium and nickel: what a test found decides; without a test, what is usual in the material counts.
    fn metals(&mut self, base: bool, tested: Option<MetalTest>, materials: &[Material]) {
        use CautionCode::{Cadmium, Lead, Nickel};
        let test = tested.unwrap_or_default();
        for (code, found) in [(Lead, test.lead_ppm), (Cadmium, test.cadmium_ppm), (Nickel, test.nickel_ug_cm2_week)] {
            let Some(rule) = self.rules.of(code) else { continue };
            let says = self.is_one_of(&rule.says);
            // Nickel matters where metal lies on the skin for long: the base.
            let usual = || self.is_of(code, materials) && (code != Nickel || base);
            let (form, grave, said) = match found {
                Some(found) if rule.limit.is_broken_by(found) => {
                    let grave = self.is_one_of(&rule.against);
                    (Form::Found, grave, grave || says)
                }
                None if says && usual() => (Form::Usual, self.is_one_of(&rule.untested), true),
                _ => continue,
            };
            if said {
                (self.found)(Finding { rule, form, grave, number: None, small: None });
            }
        }
    }

    /// Everything about the base and the piece as a whole.
    pub fn base(&mut self, worn: &Worn<'_>) {
        use CautionCode::{Breakaway, ChainTooShort, CordLoop, HeavyOnChild, UnknownMetal};
        let base = worn.base;
        self.say_if(self.is_untested(base.tested, &base.materials), UnknownMetal, Form::Usual);
        self.metals(true, base.tested, &base.materials);
        let heard = self.heard(CautionCode::SmallPart).is_some();
        let necklace = match &base.kind {
            BaseKind::Necklace(necklace) => necklace,
            BaseKind::Bangle(bangle) if heard => {
                let hoop = size_of_hoop(bangle, self.rules.gauge);
                let small = Some(Small::Hoop(hoop));
                return self.say_as(hoop != Size::TooLarge, CautionCode::SmallPart, Form::Usual, None, small);
            }
            BaseKind::Bangle(_) => return,
        };
        if heard {
            let ends = size_of_ends(necklace, self.rules.gauge);
            self.say_as(ends != Size::TooLarge, CautionCode::SmallPart, Form::Base, None, Some(Small::Ends(ends)));
        }
        self.say_if(!necklace.breakaway, Breakaway, Form::Usual);
        let length_mm = worn.length_mm.unwrap_or(necklace.lengths.usual.mm());
        let long = self
            .rules
            .of(CordLoop)
            .is_some_and(|rule| matches!(rule.limit, Limit::LoopFromMm(from) if length_mm >= from));
        self.say_if(long, CordLoop, Form::Usual);
        let whole_g = necklace.chain.g_per_mm() * length_mm + worn.drops_g;
        let heavy = self.rules.of(HeavyOnChild).is_some_and(|rule| {
            let Limit::HeavierThanG(by_wearer) = &rule.limit else { return false };
            by_wearer.iter().any(|(wearer, g)| self.is_one_of(&[*wearer]) && whole_g > *g)
        });
        self.say_number_if(heavy, HeavyOnChild, Form::Usual, Some(whole_g.round() as u32));
        let short_mm = worn.short_by_mm.unwrap_or(0.0);
        // What is missing is at least one.
        let number = Some(short_mm.round().max(1.0) as u32);
        self.say_number_if(short_mm > 0.0, ChainTooShort, Form::Usual, number);
    }
}
