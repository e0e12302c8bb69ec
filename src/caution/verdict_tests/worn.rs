//! What lies round a neck or an arm.

use super::*;

/// The airway of a small child shuts at a pull of 1.6 lb on the mean (Soudek and McLaughlin 2018), long before 15 lbf; neck
/// drawstrings are a hazard up to 12 (cpsc.gov). EN 71-1, 5.4: loops of 380 mm.
#[test]
fn what_lies_round_a_neck_is_said_up_to_12_and_never_silenced_for_the_small() {
    for region in REGIONS {
        let of = |apart: bool, code: Code, wearer: Wearer| {
            let mut base = neutral_base();
            if let BaseKind::Necklace(necklace) = &mut base.kind {
                necklace.breakaway = apart;
            }
            find(&judge(&base, &[], wearer, region), code).map(|one| (one.form.clone(), one.grave, one.text.clone()))
        };
        for wearer in [Under3, From3To5, Unknown] {
            let (form, grave, text) = of(true, Code::Breakaway, wearer).unwrap();
            assert!(form == "apart" && text.contains("for play and sleep"), "{text}");
            assert_eq!(grave, wearer != From3To5);
        }
        assert_eq!(of(true, Code::Breakaway, From6To12), None);
        assert!(of(false, Code::Breakaway, From6To12).is_some() && of(false, Code::Breakaway, From13).is_none());
        assert!(of(true, Code::CordLoop, From6To12).is_some() && of(true, Code::CordLoop, From13).is_none());
        let loop_of = |length: f64| {
            let rules = rules(region);
            let (sizes, base) = (&Sizes::empty(rules.gauge), &neutral_base());
            let facts =
                PieceFacts { base, length_mm: Some(length), neck_mm: None, drops: &[], sizes, wearer: Under3, rules };
            find(&cautions(&facts), Code::CordLoop).map(|one| one.grave)
        };
        let figure = if region == Region::US { 355.6 } else { 380.0 };
        assert_eq!((loop_of(figure - 0.1), loop_of(figure)), (None, Some(true)), "{region}");
        assert_eq!(loop_of(Length::from_inches(14.0).mm()).is_some(), region == Region::US);
    }
}

/// A necklace is judged for a large neck of its band: 443 mm for grown-ups (ANSUR II, 95th percentile of men), 330 mm for
/// growing boys (abstract), with half an inch of slack (common practice, no source).
#[test]
fn a_length_is_judged_for_a_large_neck_or_for_the_guests_own() {
    let of = |length: f64, neck_mm: Option<f64>, wearer: Wearer| {
        let rules = rules(Region::EU);
        let (sizes, base) = (&Sizes::empty(rules.gauge), &neutral_base());
        let facts = PieceFacts { base, length_mm: Some(length), neck_mm, drops: &[], sizes, wearer, rules };
        find(&cautions(&facts), Code::ChainTooShort).map(|one| (one.grave, one.text.clone()))
    };
    assert_eq!(of(456.0, None, From13), None);
    let (grave, text) = of(355.6, None, From13).unwrap();
    assert!(!grave && text == "It closes on necks up to 342 mm round: measure the neck.", "{text}");
    assert_eq!(of(342.0, None, From6To12).map(|(grave, _)| grave), Some(true));
    assert_eq!(of(344.0, None, From6To12).map(|(grave, _)| grave), Some(false), "it closes on this child");
    assert_eq!(of(355.6, Some(340.0), From13), None);
    let (grave, text) = of(355.6, Some(343.0), From6To12).unwrap();
    assert!(grave && text == "It closes on necks up to 342 mm round; you gave 343 mm.", "{text}");
}

/// Hands from memory; 60 mm inside are 188 mm round, far more than a small child's hand of 122 mm.
#[test]
fn bangles_are_judged_by_the_hand() {
    let of = |inside: f64, wearer: Wearer| {
        let verdict = judge(&bangle(inside), &[], wearer, Region::US);
        let all: Vec<(String, bool)> = verdict
            .cautions
            .iter()
            .filter(|one| one.code == Code::BangleSize)
            .map(|one| (one.form.clone(), one.grave))
            .collect();
        all
    };
    assert!(of(60.0, From3To5).contains(&("slips".into(), true)));
    assert!(!of(46.5, From3To5).iter().any(|(form, _)| form == "slips"), "a child's bangle stays on");
    assert!(!of(60.0, From13).iter().any(|(form, grave)| form == "slips" || *grave));
    assert_eq!(of(60.0, From13), [(String::new(), false)], "188 mm do not go over a man's hand");
}

/// Weights by age: common practice, no source. 460 mm of chain weigh 4.6 g, a drop 10 g.
#[test]
fn a_piece_can_be_heavy_on_a_child() {
    let drop = DropKind { weight: Mass::from_g(10.0), ..neutral_drop() };
    let heavy = |count, wearer| {
        let verdict = judge(&neutral_base(), &vec![&drop; count], wearer, Region::US);
        find(&verdict, Code::HeavyOnChild).map(|one| one.number.unwrap().to_string())
    };
    assert_eq!((heavy(2, Under3), heavy(3, Under3)), (None, Some("35".into())));
    assert_eq!((heavy(5, From3To5), heavy(6, From3To5)), (None, Some("65".into())));
    assert_eq!((heavy(11, From6To12), heavy(12, From6To12), heavy(99, From13)), (None, Some("125".into()), None));
}
