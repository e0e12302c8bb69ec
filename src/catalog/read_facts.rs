//! What is known of a part, drop or base: the same fields for both.

use super::read_sizes::length;
use crate::{
    craft::{
        Allergen, Body, Day, Declaration, Facts, Finish, LeadExemption, Length, Magnet, Material, MetalTest, Plating,
        Substance, UsualAllergen,
    },
    ron_tree::{Fields, Node, Reader, Value, detail, names_of, what},
};

/// The fields in which a part's facts are written.
pub(super) const FACTS: [&str; 13] = [
    "materials",
    "plating",
    "painted",
    "tested",
    "declared",
    "lead_exempt",
    "magnet",
    "coin_cell",
    "sharp",
    "allergens",
    "looks_like_food",
    "liquid",
    "comes_off",
];

/// Reads a part's facts. Without `plating` nobody knows what lies over a metal whose colour the finish is not. Of a part that
/// has no `materials` those that are `usual` count, but for what is told all the same; and so does whatever else is `usual`.
pub(super) fn facts(reader: &mut Reader<'_>, f: &Fields<'_>, finish: Option<Finish>, usual: Facts) -> Option<Facts> {
    let materials = if f.get("materials").is_some() { materials(reader, f) } else { Some(usual.materials) };
    let plating = match f.get("plating") {
        Some(node) => reader.word(node, what("a-plating", "a plating"), names_of!(Plating)),
        None => materials.as_ref().map(|materials| Facts::usual_plating(finish, materials)),
    };
    let lead_exempt = match f.get("lead_exempt") {
        Some(node) => reader
            .word(node, what("what-the-rule-exempts", "what the rule exempts"), names_of!(LeadExemption))
            .map(Some),
        None => Some(None),
    };
    let magnet = match f.get("magnet") {
        Some(node) => magnet(reader, node).map(Some),
        None => Some(None),
    };
    let allergens = each(reader, f, "allergens", allergen);
    let comes_off = match f.get("comes_off") {
        Some(_) => each(reader, f, "comes_off", body),
        None => Some(usual.comes_off),
    };
    let (tested, declared) = (metal_test(reader, f), declaration(reader, f));
    let mut flag = |name: &str, usual: bool| match f.get(name) {
        Some(node) => reader.flag(node),
        None => Some(usual),
    };
    let (painted, coin_cell) = (flag("painted", usual.painted), flag("coin_cell", usual.coin_cell));
    let (sharp, liquid) = (flag("sharp", usual.sharp), flag("liquid", usual.liquid));
    let looks_like_food = flag("looks_like_food", usual.looks_like_food);
    Some(Facts {
        materials: materials?,
        plating: plating?,
        painted: painted?,
        tested: tested?,
        declared: declared?,
        lead_exempt: lead_exempt?,
        magnet: magnet?,
        coin_cell: coin_cell?,
        sharp: sharp?,
        allergens: allergens?,
        looks_like_food: looks_like_food?,
        liquid: liquid?,
        comes_off: comes_off?,
    })
}

/// Every item of a list that may be left out.
fn each<T>(
    reader: &mut Reader<'_>,
    f: &Fields<'_>,
    name: &str,
    read: impl Fn(&mut Reader<'_>, &Node) -> Option<T>,
) -> Option<Vec<T>> {
    let Some(node) = f.get(name) else { return Some(vec![]) };
    let items = reader.list(node, name)?;
    let all: Vec<_> = items.iter().map(|item| read(reader, item)).collect();
    all.into_iter().collect()
}

fn materials(reader: &mut Reader<'_>, f: &Fields<'_>) -> Option<Vec<Material>> {
    let node = reader.required(f, "materials")?;
    let items = reader.list(node, what("list-materials", "materials"))?;
    if items.is_empty() {
        return reader.unlike(
            node,
            detail!("right-materials", "at least one material; write UnknownMetal for a metal nobody tested"),
        );
    }
    let read: Vec<_> =
        items.iter().map(|item| reader.word(item, what("a-material", "a material"), names_of!(Material))).collect();
    read.into_iter().collect()
}

/// What a laboratory found: `tested: (lead_ppm: 20, cadmium_ppm: 5, nickel: 0.1, paint_lead_ppm: 3)`, as far as it was
/// tested.
fn metal_test(reader: &mut Reader<'_>, f: &Fields<'_>) -> Option<Option<MetalTest>> {
    let Some(node) = f.get("tested") else { return Some(None) };
    let f = reader.fields(
        node,
        what("a-test-report", "a test report"),
        &["lead_ppm", "cadmium_ppm", "nickel", "paint_lead_ppm"],
    )?;
    let mut figure = |name: &str, most: f64| match f.get(name) {
        Some(node) => reader.number(node, 0.0, most).map(Some),
        None => Some(None),
    };
    let (lead_ppm, cadmium_ppm, paint_lead_ppm) =
        (figure("lead_ppm", 1e6), figure("cadmium_ppm", 1e6), figure("paint_lead_ppm", 1e6));
    let nickel_ug_cm2_week = figure("nickel", 1000.0)?;
    Some(Some(MetalTest {
        lead_ppm: lead_ppm?,
        cadmium_ppm: cadmium_ppm?,
        nickel_ug_cm2_week,
        paint_lead_ppm: paint_lead_ppm?,
    }))
}

/// What a supplier states: `declared: (paper: "letter of the founder", dated: "2026-03-02", says: [Lead, Cadmium])`.
fn declaration(reader: &mut Reader<'_>, f: &Fields<'_>) -> Option<Option<Declaration>> {
    let Some(node) = f.get("declared") else { return Some(None) };
    let f =
        reader.fields(node, what("a-suppliers-statement", "a supplier's statement"), &["paper", "dated", "says"])?;
    let paper = reader.name(&f, "paper");
    let dated = reader.required(&f, "dated").and_then(|node| {
        let text = reader.text(node, what("a-date", "a date"))?;
        let day = Day::from_iso(text);
        day.or_else(|| {
            reader.unlike(node, detail!("a-date-as-in", "a date as in \"2026-03-02\", as the calendar has it"))
        })
    });
    let says = reader.required(&f, "says").and_then(|node| {
        let items = reader.list(node, what("list-substances", "substances"))?;
        if items.is_empty() {
            return reader.unlike(node, detail!("right-substances", "at least one of Lead, Cadmium, Nickel, Paint"));
        }
        let read: Vec<_> = items
            .iter()
            .map(|item| reader.word(item, what("a-substance", "a substance"), names_of!(Substance)))
            .collect();
        read.into_iter().collect()
    });
    Some(Some(Declaration { paper: paper?, dated: dated?, says: says? }))
}

/// An allergen: a usual one by its name, or the maker's own words in quotes.
fn allergen(reader: &mut Reader<'_>, node: &Node) -> Option<Allergen> {
    if let Value::Text(_) = &node.value {
        let text = reader.text(node, what("an-allergen", "an allergen"))?;
        let short = text.trim().chars().count() <= 60;
        return match Allergen::from_words(text).filter(|_| short) {
            Some(allergen) => Some(allergen),
            None => reader.unlike(
                node,
                detail!("an-allergen-of-letters", "an allergen in 1 to 60 letters, or no list where the food has none"),
            ),
        };
    }
    let usual = what("an-allergen-or-own", "an allergen (other ones go in quotes)");
    reader.word(node, usual, names_of!(UsualAllergen)).map(Allergen::Usual)
}

/// A solid body by its form and sizes.
pub(super) fn body(reader: &mut Reader<'_>, node: &Node) -> Option<Body> {
    if let Value::Struct { name: Some(name), .. } = &node.value
        && let Some((_, sizes)) = Body::FORMS.iter().find(|(form, _)| form == name)
    {
        let f = reader.fields(node, what("a-body", "a body"), sizes)?;
        let read: Vec<Option<Length>> = sizes.iter().map(|size| length(reader, &f, size, 0.1, 300.0)).collect();
        let read: Vec<Length> = read.into_iter().collect::<Option<_>>()?;
        return Body::from_form(name, &read);
    }
    let forms: Vec<String> = Body::FORMS.iter().map(|(form, sizes)| format!("{form}({})", sizes.join(", "))).collect();
    reader.unlike(node, detail!("a-body-of", "a body: {forms}", forms = forms.join(", ")))
}

/// A magnet's two figures, or `Unknown` where nobody measured it.
fn magnet(reader: &mut Reader<'_>, node: &Node) -> Option<Magnet> {
    if matches!(&node.value, Value::Word(word) if word == "Unknown") {
        return Some(Magnet::UNKNOWN);
    }
    let Value::Struct { .. } = &node.value else {
        return reader.unlike(
            node,
            detail!(
                "a-magnet-as-measured",
                "Unknown, or {example} as measured",
                example = "(surface_kilogauss: 1.5, pole: \"5mm\")"
            ),
        );
    };
    let f = reader.fields(node, what("a-magnet", "a magnet"), &["surface_kilogauss", "pole"])?;
    let surface = reader.required(&f, "surface_kilogauss").and_then(|node| reader.number(node, 0.01, 20.0));
    let pole = length(reader, &f, "pole", 0.5, 60.0);
    Some(Magnet::measured(surface?, pole?))
}
