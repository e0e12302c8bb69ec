//! The facts over which the page of all rules is made.

use super::{CautionCode, Rule, Rules};
use crate::craft::{
    Allergen, Bangle, Base, BaseKind, Body, Clasp, Declaration, DropKind, Facts, Finish, Home, LeadExemption, Length,
    LengthRange, LinearDensity, LinkKind, Magnet, Mass, Material, MetalTest, Necklace, Plating, Ring, Sort, Substance,
    UsualAllergen,
};

/// One row: the piece that is judged for every wearer, and the caution that is looked at.
pub(crate) struct Case {
    pub code: CautionCode,
    /// The facts in words.
    pub what: String,
    pub base: Base,
    pub length_mm: Option<f64>,
    pub neck_mm: Option<f64>,
    pub drops: Vec<DropKind>,
}

/// What the base's row adds to the words of the drop's.
pub(super) const IN_THE_BASE: &str = ", in the base";

const fn mm(mm: f64) -> Length {
    Length::from_mm(mm)
}

/// A necklace in which nothing is a small part and nothing is to be said of what it is made of.
pub(super) fn neutral_base() -> Base {
    let ring = Ring { outside: mm(40.0), wire: mm(2.0) };
    Base {
        id: "base".into(),
        name: "Base".into(),
        finish: Finish::Copper,
        facts: Facts::of([Material::CopperMetal]),
        price: rust_decimal::Decimal::TEN,
        stock: 1,
        kind: BaseKind::Necklace(Necklace {
            chain: LinearDensity::from_g_per_m(10.0),
            link: LinkKind::Cable,
            link_length: mm(4.0),
            link_width: mm(3.0),
            end_ring: ring,
            clasp: Clasp { length: mm(70.0), width: mm(6.0), thickness: mm(3.0), ring },
            lengths: LengthRange { usual: mm(500.0), shortest: mm(250.0), longest: mm(900.0) },
            breakaway: true,
        }),
        counted: None,
        guessed: vec![],
    }
}

/// A drop too large for every test, of which nothing is to be said.
pub(super) fn neutral_drop() -> DropKind {
    DropKind {
        id: "drop".into(),
        name: "Drop".into(),
        sort: Sort::Charm,
        finish: Some(Finish::Copper),
        colours: vec![],
        facts: Facts::of([Material::CopperMetal]),
        body: Body::Disc { diameter: mm(60.0), thickness: mm(2.0) },
        width: mm(60.0),
        height: mm(60.0),
        ring: Ring { outside: mm(40.0), wire: mm(2.0) },
        weight: Mass::from_g(5.0),
        price: rust_decimal::Decimal::ONE,
        stock: 9,
        home: Home { tray: 'A', compartment: 1 },
        picture: String::new(),
        assortment: None,
        counted: None,
        guessed: vec![],
    }
}

/// A bangle of this inside diameter.
pub(super) fn bangle(inside_mm: f64) -> Base {
    let kind = BaseKind::Bangle(Bangle {
        inside: mm(inside_mm),
        wire: mm(2.0),
        weight: Mass::from_g(8.0),
        hook_width: mm(4.0),
        hook_thickness: mm(3.0),
        hook_weight: Mass::from_g(1.0),
        free_arc_deg: 240.0,
    });
    Base { kind, ..neutral_base() }
}

/// The rows under `rules`, whose limits some of them stand at.
pub(crate) fn cases(rules: &Rules) -> Vec<Case> {
    let mut all = Cases(Vec::new());
    all.small_parts();
    all.objects();
    for code in [CautionCode::Lead, CautionCode::Cadmium, CautionCode::Nickel, CautionCode::Paint] {
        if let Some(rule) = rules.of(code) {
            all.tested(rule);
        }
    }
    all.untested();
    all.worn();
    all.0
}

struct Cases(Vec<Case>);

impl Cases {
    fn add(&mut self, code: CautionCode, what: impl Into<String>, base: Base, drops: Vec<DropKind>) {
        self.0.push(Case { code, what: what.into(), base, length_mm: Some(500.0), neck_mm: None, drops });
    }

    /// The same facts in a drop and in the base.
    fn facts(&mut self, code: CautionCode, what: &str, facts: &Facts) {
        self.add(code, what, neutral_base(), vec![DropKind { facts: facts.clone(), ..neutral_drop() }]);
        self.add(code, format!("{what}{IN_THE_BASE}"), Base { facts: facts.clone(), ..neutral_base() }, vec![]);
    }

    fn small_parts(&mut self) {
        use CautionCode::{SmallBall, SmallPart};
        let body = |body: Body| DropKind { body, ..neutral_drop() };
        let ball = |size| Body::Ball { diameter: mm(size) };
        self.add(SmallPart, "nothing small", neutral_base(), vec![neutral_drop()]);
        self.add(SmallPart, "a body of 12 mm", neutral_base(), vec![body(ball(12.0))]);
        let ring = Ring { outside: mm(10.0), wire: mm(1.0) };
        self.add(SmallPart, "a ring of 10 mm", neutral_base(), vec![DropKind { ring, ..neutral_drop() }]);
        let off = Facts { comes_off: vec![ball(6.0)], ..Facts::of([Material::CopperMetal]) };
        self.facts(SmallPart, "something of 6 mm comes off", &off);
        let soft = DropKind { facts: Facts::of([Material::Cotton]), ..body(ball(20.0)) };
        self.add(SmallPart, "a cotton ball of 20 mm, as delivered", neutral_base(), vec![soft]);
        self.add(
            SmallPart,
            "a picture's outline that nobody read",
            neutral_base(),
            vec![body(Body::Outline { thickness: mm(3.0), shape: None })],
        );
        self.add(SmallPart, "a clasp of 12 mm", Self::with_usual_ends(), vec![]);
        self.add(SmallPart, "a bangle of 25 mm inside", bangle(25.0), vec![]);
        for size in [31.0, 40.0, 50.0] {
            self.add(SmallBall, format!("a ball of {size} mm"), neutral_base(), vec![body(ball(size))]);
        }
        let off = Facts { comes_off: vec![ball(40.0)], ..Facts::of([Material::CopperMetal]) };
        self.facts(SmallBall, "a ball of 40 mm comes off", &off);
    }

    fn with_usual_ends() -> Base {
        let mut base = neutral_base();
        if let BaseKind::Necklace(necklace) = &mut base.kind {
            necklace.clasp.length = mm(12.0);
        }
        base
    }

    /// What a part holds or is.
    fn objects(&mut self) {
        use CautionCode::{
            CoinCell, FoodAllergen, Glass, Liquid, LooksLikeFood, Magnet as MagnetCode, Sharp, UnknownMetal,
        };
        let plain = || Facts::of([Material::CopperMetal]);
        let magnet = |one: Magnet| Facts { magnet: Some(one), ..plain() };
        let weak = magnet(Magnet::measured(1.5, mm(5.0)));
        self.facts(MagnetCode, "a magnet of 44 kG²mm²", &weak);
        self.facts(MagnetCode, "a magnet of 177 kG²mm²", &magnet(Magnet::measured(3.0, mm(5.0))));
        self.facts(MagnetCode, "a magnet of which nobody knows how strong it is", &magnet(Magnet::UNKNOWN));
        let drop = DropKind { facts: weak.clone(), ..neutral_drop() };
        let clasp = Base { facts: weak, ..neutral_base() };
        self.add(MagnetCode, "two weak magnets, in drops", neutral_base(), vec![drop.clone(), drop.clone()]);
        self.add(MagnetCode, "two weak magnets, one in the clasp", clasp, vec![drop]);
        self.facts(CoinCell, "a button cell", &Facts { coin_cell: true, ..plain() });
        self.facts(Glass, "glass", &Facts::of([Material::Glass]));
        self.facts(Glass, "crystal glass", &Facts::of([Material::CrystalGlass]));
        self.facts(Sharp, "a sharp point", &Facts { sharp: true, ..plain() });
        let unknown = Facts::of([Material::UnknownMetal]);
        self.facts(UnknownMetal, "a metal nobody knows, not tested", &unknown);
        let says = vec![Substance::Lead, Substance::Cadmium, Substance::Nickel];
        self.facts(UnknownMetal, "a metal nobody knows, stated by its supplier", &declared(unknown.clone(), says));
        let whole = MetalTest { cadmium_ppm: Some(0.0), nickel_ug_cm2_week: Some(0.0), ..lead(0.0) };
        self.facts(UnknownMetal, "a metal nobody knows, wholly tested", &Facts { tested: Some(whole), ..unknown });
        let known = vec![Allergen::Usual(UsualAllergen::Milk)];
        self.facts(FoodAllergen, "lacquered food, its allergens not known", &Facts::of([Material::Food]));
        self.facts(
            FoodAllergen,
            "lacquered food with milk",
            &Facts { allergens: known, ..Facts::of([Material::Food]) },
        );
        self.facts(LooksLikeFood, "looks like food", &Facts { looks_like_food: true, ..Facts::of([Material::Resin]) });
        self.facts(LooksLikeFood, "lacquered food", &Facts::of([Material::Food]));
        self.facts(Liquid, "a liquid", &Facts { liquid: true, ..Facts::of([Material::Acrylic]) });
    }

    /// Figures of a test at and above a limit.
    fn tested(&mut self, rule: &Rule) {
        let nickel = rule.code == CautionCode::Nickel;
        let figures: &[f64] = if nickel { &[0.1, 0.5, 0.6] } else { &[50.0, 95.0, 150.0, 301.0, 499.0, 600.0] };
        for figure in figures {
            let test = test(rule.code, *figure);
            let facts = Facts { tested: Some(test), painted: true, ..Facts::of([Material::ZincAlloy]) };
            let unit = if nickel { "µg/cm² a week" } else { "ppm" };
            self.facts(rule.code, &format!("a test found {figure} {unit}"), &facts);
            if rule.code == CautionCode::Lead && *figure == 600.0 {
                for exempt in LeadExemption::ALL {
                    let claimed = Facts { lead_exempt: Some(*exempt), ..facts.clone() };
                    let what = format!("a test found {figure} ppm in zinc alloy, said to be {}", exempt.word());
                    self.facts(rule.code, &what, &claimed);
                    let materials = match exempt {
                        LeadExemption::CrystalGlass => Material::CrystalGlass,
                        LeadExemption::Enamel => Material::Enamel,
                        LeadExemption::NaturalStone | LeadExemption::Before1961 => Material::Stone,
                    };
                    let what = format!("a test found {figure} ppm in {}", exempt.word());
                    self.facts(rule.code, &what, &Facts { materials: vec![materials], ..claimed });
                }
            }
        }
    }

    /// Materials, platings and paint that nobody tested.
    fn untested(&mut self) {
        use CautionCode::{Cadmium, Lead, Nickel, Paint};
        for code in [Lead, Cadmium, Nickel] {
            for material in Material::ALL {
                self.facts(code, &format!("{}, not tested", material.word()), &Facts::of([*material]));
            }
            for plating in Plating::ALL {
                let facts = Facts { plating: *plating, ..Facts::of([Material::CopperMetal]) };
                self.facts(code, &format!("copper with {}, not tested", plating.word()), &facts);
            }
            let all = vec![Substance::Lead, Substance::Cadmium, Substance::Nickel];
            let facts = declared(Facts::of([Material::ZincAlloy]), all);
            self.facts(code, "zinc alloy, stated by its supplier", &facts);
        }
        for exempt in LeadExemption::ALL {
            let materials = [Material::CrystalGlass, Material::Enamel, Material::Stone];
            let facts = Facts { lead_exempt: Some(*exempt), ..Facts::of(materials) };
            self.facts(Lead, &format!("crystal glass, enamel and stone, not tested; {}", exempt.word()), &facts);
        }
        let painted = Facts { painted: true, ..Facts::of([Material::Wood]) };
        self.facts(Paint, "painted, not tested", &painted);
        self.facts(Paint, "painted, stated by its supplier", &declared(painted, vec![Substance::Paint]));
    }

    /// What follows from how a base is worn.
    fn worn(&mut self) {
        use CautionCode::{BangleSize, Breakaway, ChainTooShort, CordLoop, HeavyOnChild};
        for (apart, what) in [(true, "comes apart when pulled"), (false, "does not come apart")] {
            let mut base = neutral_base();
            if let BaseKind::Necklace(necklace) = &mut base.kind {
                necklace.breakaway = apart;
            }
            self.add(Breakaway, what, base, vec![]);
        }
        self.add(Breakaway, "a bangle", bangle(60.0), vec![]);
        for length in [350.0, 356.0, 380.0, 500.0] {
            self.long(CordLoop, length, None);
        }
        for count in [1, 5, 12, 25] {
            let drops = vec![neutral_drop(); count];
            let what = format!("{} g with its drops", 5 * (count + 1));
            self.add(HeavyOnChild, what, neutral_base(), drops);
        }
        for length in [280.0, 300.0, 342.0, 355.6, 456.0] {
            self.long(ChainTooShort, length, None);
        }
        self.long(ChainTooShort, 400.0, Some(387.0));
        self.long(ChainTooShort, 400.0, Some(388.0));
        for inside in [38.0, 46.5, 58.0, 65.0, 75.0] {
            self.add(BangleSize, format!("{inside} mm inside"), bangle(inside), vec![]);
        }
    }

    fn long(&mut self, code: CautionCode, length_mm: f64, neck_mm: Option<f64>) {
        let neck = neck_mm.map(|neck| format!(", for a neck of {neck} mm")).unwrap_or_default();
        let what = format!("a necklace of {length_mm} mm{neck}");
        let length_mm = Some(length_mm);
        self.0.push(Case { code, what, base: neutral_base(), length_mm, neck_mm, drops: vec![] });
    }
}

fn lead(ppm: f64) -> MetalTest {
    MetalTest { lead_ppm: Some(ppm), ..MetalTest::default() }
}

/// A test of nothing but the substance `code` is about.
fn test(code: CautionCode, figure: f64) -> MetalTest {
    let figure = Some(figure);
    match code {
        CautionCode::Cadmium => MetalTest { cadmium_ppm: figure, ..MetalTest::default() },
        CautionCode::Nickel => MetalTest { nickel_ug_cm2_week: figure, ..MetalTest::default() },
        CautionCode::Paint => MetalTest { paint_lead_ppm: figure, ..MetalTest::default() },
        _ => MetalTest { lead_ppm: figure, ..MetalTest::default() },
    }
}

fn declared(facts: Facts, says: Vec<Substance>) -> Facts {
    let dated = crate::craft::Day { year: 2026, month: Some(3), day: Some(2) };
    Facts { declared: Some(Declaration { paper: "supplier's letter".into(), dated, says }), ..facts }
}
