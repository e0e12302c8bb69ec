//! What is there to be careful about: findings without words, so that thousands of drops are asked in no time.

use rust_decimal::Decimal;

use super::{
    CautionCode, Limit, PartSize, Rule, Rules, Size,
    form::Form,
    metals::{Judged, judge},
    part::{ball_mm, flux_index_kg2mm2, is_ball_beyond_the_cylinder},
    rules::{Source, is_about},
};
use crate::craft::{
    BAND_HANDS, BAND_NECKS, Bangle, Base, BaseKind, Body, Facts, Girth, Length, Material, Necklace, Substance, Wearer,
    closes_on_mm, slips_over_hand_mm,
};

/// Why a small part is one.
#[derive(Debug, Clone, Copy)]
pub(super) enum Small {
    Drop(PartSize),
    Ends(PartSize),
    Hoop(PartSize),
}

impl Small {
    pub(super) const fn size(self) -> PartSize {
        match self {
            Self::Drop(size) | Self::Ends(size) | Self::Hoop(size) => size,
        }
    }
}

/// One thing to be careful about.
#[derive(Debug, Clone, Copy)]
pub(super) struct Finding<'r> {
    pub rule: &'r Rule,
    /// The citation that applies: the rule's own, or that of a limit for other wearers.
    pub source: Source<'r>,
    pub form: Form,
    /// Whether it makes the piece unsuitable for the wearer.
    pub grave: bool,
    /// Whether the part may not be sold at all.
    pub forbidden: bool,
    /// The figure in its words: grams of something heavy, millimetres of neck or hand, what a test found.
    pub number: Option<Decimal>,
    /// What it is compared with, in the same unit.
    pub limit: Option<Decimal>,
    pub small: Option<Small>,
}

/// Looks at one wearer's things and hands on what it finds.
pub(super) struct Finder<'r, F> {
    pub wearer: Wearer,
    pub rules: &'r Rules,
    pub found: F,
}

/// A part as it is judged, drop or base.
pub(super) struct Judgable<'a> {
    pub facts: &'a Facts,
    /// The body of a drop; a base has none.
    pub body: Option<&'a Body>,
    pub small: Small,
    /// Whether it is one of unlike pieces, and the body is only that of one of them.
    pub mixed: bool,
    /// How many magnets the whole piece holds.
    pub magnets: usize,
}

/// A base as it is worn.
pub(super) struct Worn<'a> {
    pub base: &'a Base,
    pub length_mm: Option<f64>,
    /// The wearer's own neck, where they said it.
    pub neck_mm: Option<f64>,
    /// All drops together.
    pub drops_g: f64,
}

/// Lengths that differ by less are the same: 14 in are not quite 355.6 mm in binary fractions.
const NEARLY_MM: f64 = 0.05;

/// A figure as people write it, no finer than a thousandth.
fn decimal(value: f64) -> Option<Decimal> {
    Some(Decimal::try_from(value).ok()?.round_dp(3).normalize())
}

impl<'r, F: FnMut(Finding<'r>)> Finder<'r, F> {
    /// Says a thing that is there or not, in the rule's own way.
    fn say_if(&mut self, there: bool, code: CautionCode) {
        if there && let Some(rule) = self.heard(code) {
            self.say(rule, Form::Usual, self.is_one_of(&rule.against));
        }
    }

    fn say(&mut self, rule: &'r Rule, form: Form, grave: bool) {
        self.say_numbers(rule, form, grave, (None, None));
    }

    fn say_numbers(&mut self, rule: &'r Rule, form: Form, grave: bool, (number, limit): (Option<f64>, Option<f64>)) {
        let (number, limit) = (number.and_then(decimal), limit.and_then(decimal));
        let source = Source::of(rule);
        (self.found)(Finding { rule, source, form, grave, forbidden: false, number, limit, small: None });
    }

    fn is_one_of(&self, wearers: &[Wearer]) -> bool {
        is_about(wearers, self.wearer)
    }

    /// The rule on `code`, where this wearer hears of it.
    fn heard(&self, code: CautionCode) -> Option<&'r Rule> {
        self.rules.of(code).filter(|rule| self.is_one_of(&rule.says))
    }

    /// Everything about one part by itself, whether it is a drop or a base.
    pub(super) fn part(&mut self, part: &Judgable<'_>) {
        use CautionCode::{CoinCell, FoodAllergen, Glass, Liquid, LooksLikeFood, Sharp, SmallBall};
        let facts = part.facts;
        self.small_part(part.small);
        let below = |mm: f64| {
            let rule = self.rules.of(SmallBall);
            rule.is_some_and(|rule| matches!(rule.limit, Limit::BallBelowMm(below) if mm < below))
        };
        // What fits the cylinder, or may, is a small part already.
        let ball_is_large = |body: &Body| is_ball_beyond_the_cylinder(body, self.rules.gauge);
        // Beside a smaller piece of its assortment, a large ball is one all the same.
        let body =
            part.body.filter(|body| part.small.size().body == Size::TooLarge || part.mixed && ball_is_large(body));
        let mut balls = body.into_iter().chain(facts.comes_off.iter().filter(|body| ball_is_large(body)));
        let ball = balls.any(|body| ball_mm(body).is_some_and(below));
        self.say_if(ball, SmallBall);
        self.magnet(facts, part.magnets);
        self.say_if(facts.coin_cell, CoinCell);
        let glass = facts.materials.iter().any(|one| matches!(one, Material::Glass | Material::CrystalGlass));
        self.say_if(glass, Glass);
        self.say_if(facts.sharp, Sharp);
        self.unknown_metal(facts);
        self.substances(facts);
        if let Some(rule) = self.heard(FoodAllergen)
            && (self.is_of(FoodAllergen, &facts.materials) || !facts.allergens.is_empty())
        {
            let form = if facts.allergens.is_empty() { Form::Usual } else { Form::Known };
            self.say(rule, form, self.is_one_of(&rule.against));
        }
        self.say_if(facts.looks_like_food || self.is_of(LooksLikeFood, &facts.materials), LooksLikeFood);
        self.say_if(facts.liquid, Liquid);
    }

    /// Nobody with a small part in the piece hears nothing of it: those for whom it is none keep it from those for whom
    /// it is.
    fn small_part(&mut self, small: Small) {
        if small.size().is_small()
            && let Some(rule) = self.heard(CautionCode::SmallPart)
        {
            let grave = self.is_one_of(&rule.against);
            let form = if matches!(self.wearer, Wearer::From6To12 | Wearer::From13) { Form::Away } else { Form::Usual };
            let source = Source::of(rule);
            let small = Some(small);
            (self.found)(Finding { rule, source, form, grave, forbidden: false, number: None, limit: None, small });
        }
    }

    /// Whether one of `materials` calls for `code`.
    fn is_of(&self, code: CautionCode, materials: &[Material]) -> bool {
        self.rules.of(code).is_some_and(|rule| materials.iter().any(|one| rule.materials.contains(one)))
    }

    /// Metal of which nobody knows what it is, and that was not tested for all of lead, cadmium and nickel.
    fn unknown_metal(&mut self, facts: &Facts) {
        let test = facts.tested.unwrap_or_default();
        let open = [Substance::Lead, Substance::Cadmium, Substance::Nickel].map(|one| (test.of(one).is_none(), one));
        let mut open = open.into_iter().filter_map(|(open, one)| open.then_some(one)).peekable();
        if open.peek().is_none() || !self.is_of(CautionCode::UnknownMetal, &facts.materials) {
            return;
        }
        if let Some(rule) = self.heard(CautionCode::UnknownMetal) {
            let declared = open.all(|one| facts.declares(one));
            let form = if declared { Form::Declared } else { Form::Usual };
            self.say(rule, form, !declared && self.is_one_of(&rule.against));
        }
    }

    /// Lead, cadmium, nickel and the lead in paint: what a test found decides; without one, what is usual counts.
    fn substances(&mut self, facts: &Facts) {
        use CautionCode::{Cadmium, Lead, Nickel, Paint};
        for (code, substance) in [
            (Lead, Substance::Lead),
            (Cadmium, Substance::Cadmium),
            (Nickel, Substance::Nickel),
            (Paint, Substance::Paint),
        ] {
            let Some(rule) = self.rules.of(code) else { continue };
            if let Some(Judged { source, form, grave, forbidden, number, limit }) =
                judge(rule, substance, facts, self.wearer)
            {
                let (number, limit) = (number.and_then(decimal), limit.and_then(decimal));
                (self.found)(Finding { rule, source, form, grave, forbidden, number, limit, small: None });
            }
        }
    }

    /// A magnet, once loose, fits the cylinder: the index alone decides whether it is beyond the limit, and one of which
    /// nobody knows the index counts as beyond it. Below it, two that can come together are graver than one.
    fn magnet(&mut self, facts: &Facts, magnets: usize) {
        let Some((magnet, rule)) = facts.magnet.as_ref().zip(self.rules.of(CautionCode::Magnet)) else { return };
        let index = flux_index_kg2mm2(magnet);
        if index.is_none_or(|index| rule.limit.is_broken_by(index)) {
            let form = if index.is_none() { Form::Unknown } else { Form::Usual };
            let (grave, forbidden) = (self.is_one_of(&rule.against), rule.forbids);
            let source = Source::of(rule);
            let (number, limit) = (None, None);
            (self.found)(Finding { rule, source, form, grave, forbidden, number, limit, small: None });
        } else if self.is_one_of(&rule.says) {
            let (form, against) = match &rule.within {
                Some(within) if magnets > 1 => (Form::Together, &within.together),
                Some(within) => (Form::Within, &within.against),
                None => (Form::Within, &rule.against),
            };
            self.say(rule, form, self.is_one_of(against));
        }
    }

    /// Everything about how the base is worn; what is known of it as a part is said by [`Self::part`].
    pub(super) fn worn(&mut self, worn: &Worn<'_>) {
        match &worn.base.kind {
            BaseKind::Necklace(necklace) => self.necklace(necklace, worn),
            BaseKind::Bangle(bangle) => self.bangle(bangle),
        }
    }

    fn necklace(&mut self, necklace: &Necklace, worn: &Worn<'_>) {
        use CautionCode::{Breakaway, CordLoop, HeavyOnChild};
        if let Some(rule) = self.heard(Breakaway) {
            match (&rule.within, necklace.breakaway) {
                // What comes apart is still not for play and sleep.
                (Some(within), true) if self.is_one_of(&within.says) => {
                    self.say(rule, Form::Apart, self.is_one_of(&within.against));
                }
                (_, true) => {}
                (_, false) => self.say(rule, Form::Usual, self.is_one_of(&rule.against)),
            }
        }
        let length_mm = worn.length_mm.unwrap_or(necklace.lengths.usual.mm());
        let long = self.rules.of(CordLoop).is_some_and(
            // Not known counts as long.
            |rule| matches!(rule.limit, Limit::LoopFromMm(from) if length_mm + NEARLY_MM >= from || length_mm.is_nan()),
        );
        self.say_if(long, CordLoop);
        let whole_g = necklace.chain.g_per_mm() * length_mm + worn.drops_g;
        if let Some(rule) = self.heard(HeavyOnChild)
            && let Limit::HeavierThanG(by_wearer) = &rule.limit
            && by_wearer.iter().any(|(wearer, g)| self.is_one_of(&[*wearer]) && whole_g > *g)
        {
            self.say_numbers(rule, Form::Usual, self.is_one_of(&rule.against), (Some(whole_g.round()), None));
        }
        self.too_short(Length::from_mm(length_mm), worn.neck_mm);
    }

    /// A necklace has to close on a large neck of the wearer's band and of every older one, or on the neck that the guest
    /// gave. It is grave where it may not close on this wearer.
    fn too_short(&mut self, length: Length, neck_mm: Option<f64>) {
        let Some(rule) = self.heard(CautionCode::ChainTooShort) else { return };
        let closes = closes_on_mm(length);
        let against = self.is_one_of(&rule.against);
        let number = Some(closes.floor().max(0.0));
        match neck_mm {
            Some(neck) if closes < neck => self.say_numbers(rule, Form::Own, against, (number, Some(neck.ceil()))),
            Some(_) => {}
            None => {
                if self.own_and_older(&BAND_NECKS).any(|neck| closes < neck.large_mm) {
                    let mine =
                        |(wearer, neck): (Wearer, Girth)| is_about(&rule.against, wearer) && closes < neck.large_mm;
                    let grave = self.own(&BAND_NECKS).any(mine);
                    self.say_numbers(rule, Form::Usual, grave, (number, None));
                }
            }
        }
    }

    /// Whether a bangle goes over a large hand of the band and of every older one, and stays on a small one.
    fn bangle(&mut self, bangle: &Bangle) {
        let Some(rule) = self.heard(CautionCode::BangleSize) else { return };
        let around = bangle.around_mm();
        let number = Some(around.floor());
        if self.own(&BAND_HANDS).any(|(_, hand)| around > slips_over_hand_mm(hand)) {
            self.say_numbers(rule, Form::Slips, self.is_one_of(&rule.against), (number, None));
        }
        if self.own_and_older(&BAND_HANDS).any(|hand| around < hand.large_mm) {
            self.say_numbers(rule, Form::Usual, false, (number, None));
        }
    }

    /// The wearer's band; who is not known may be of each.
    fn own<'g>(&self, bands: &'g [(Wearer, Girth); 4]) -> impl Iterator<Item = (Wearer, Girth)> + use<'g, 'r, F> {
        let wearer = self.wearer;
        bands.iter().copied().filter(move |(band, _)| is_about(&[*band], wearer))
    }

    /// The wearer's band and the older ones.
    fn own_and_older<'g>(&self, bands: &'g [(Wearer, Girth); 4]) -> impl Iterator<Item = Girth> + use<'g, 'r, F> {
        let wearer = self.wearer;
        bands.iter().skip_while(move |(band, _)| !is_about(&[*band], wearer)).map(|(_, girth)| *girth)
    }
}
