//! The sizes and weights of a base: what its file holds of them, whether that is a guess, and what was typed.

use std::str::FromStr;

use maud::{Markup, html};

use super::form::TableForm;
use crate::{
    catalog::Fields,
    craft::{Bangle, Base, BaseKind, Guess, Length, LinearDensity, Mass, Necklace, Ring},
    desk::pages::{
        typed::typed_measure,
        words::{capital, sentence},
    },
    lang::{Texts, say},
    quoting::excerpt,
    ron_tree::in_quotes,
};

/// The field that says that the page had all of these.
const ASKED: &str = "sizes";

/// What a figure is measured in.
#[derive(Clone, Copy, PartialEq)]
enum Unit {
    Millimetres,
    Grams,
    GramsAMetre,
    Degrees,
}

/// One figure of a base.
struct Figure {
    /// Its field in the form.
    name: &'static str,
    unit: Unit,
    /// As the catalogue has it.
    now: f64,
}

/// What stands in one field of the file: one figure, or several in ( ).
struct Entry {
    guess: Guess,
    figures: Vec<Figure>,
}

fn mm(name: &'static str, length: Length) -> Figure {
    Figure { name, unit: Unit::Millimetres, now: length.mm() }
}

fn one(guess: Guess, figure: Figure) -> Entry {
    Entry { guess, figures: vec![figure] }
}

fn ring(guess: Guess, [outside, wire]: [&'static str; 2], ring: Ring) -> Entry {
    Entry { guess, figures: vec![mm(outside, ring.outside), mm(wire, ring.wire)] }
}

/// The entries of a base in the order of the page.
fn entries(base: &Base) -> Vec<Entry> {
    match &base.kind {
        BaseKind::Necklace(necklace) => of_necklace(necklace),
        BaseKind::Bangle(bangle) => of_bangle(bangle),
    }
}

fn of_necklace(necklace: &Necklace) -> Vec<Entry> {
    let (lengths, clasp) = (necklace.lengths, necklace.clasp);
    let chain = Figure { name: "chain", unit: Unit::GramsAMetre, now: necklace.chain.g_per_m() };
    let of_clasp = vec![
        mm("clasp_length", clasp.length),
        mm("clasp_width", clasp.width),
        mm("clasp_thickness", clasp.thickness),
        mm("clasp_outside", clasp.ring.outside),
        mm("clasp_wire", clasp.ring.wire),
    ];
    vec![
        one(Guess::UsualLength, mm("usual_length", lengths.usual)),
        one(Guess::Shortest, mm("shortest", lengths.shortest)),
        one(Guess::Longest, mm("longest", lengths.longest)),
        one(Guess::LinkLength, mm("link_length", necklace.link_length)),
        one(Guess::LinkWidth, mm("link_width", necklace.link_width)),
        one(Guess::Chain, chain),
        ring(Guess::EndRing, ["end_outside", "end_wire"], necklace.end_ring),
        Entry { guess: Guess::Clasp, figures: of_clasp },
    ]
}

fn of_bangle(bangle: &Bangle) -> Vec<Entry> {
    let grams = |name, weight: Mass| Figure { name, unit: Unit::Grams, now: weight.g() };
    let arc = Figure { name: "free_arc_deg", unit: Unit::Degrees, now: bangle.free_arc_deg };
    vec![
        one(Guess::Inside, mm("inside", bangle.inside)),
        one(Guess::Wire, mm("wire", bangle.wire)),
        one(Guess::Weight, grams("weight", bangle.weight)),
        one(Guess::HookWidth, mm("hook_width", bangle.hook_width)),
        one(Guess::HookThickness, mm("hook_thickness", bangle.hook_thickness)),
        one(Guess::HookWeight, grams("hook_weight", bangle.hook_weight)),
        one(Guess::FreeArc, arc),
    ]
}

impl Figure {
    /// The figure as it is shown and typed: inches where a length is whole ones, else a number.
    fn shown(&self, texts: &Texts) -> String {
        let inches = self.now / Length::from_inches(1.0).mm();
        if self.unit == Unit::Millimetres && inches >= 6.0 && (inches - inches.round()).abs() < 1e-6 {
            return format!("{inches:.0}in");
        }
        trimmed(self.now).replace('.', texts.lang.decimal_mark())
    }

    /// What was typed, as the file has it: a number alone has the figure's own unit.
    fn written(&self, texts: &Texts, typed: &str) -> Result<String, String> {
        let end = match self.unit {
            Unit::Millimetres => "mm",
            Unit::Grams => "g",
            Unit::GramsAMetre => "g/m",
            Unit::Degrees => "",
        };
        if let Some(number) = typed_measure(typed) {
            return Ok(format!("{number}{end}"));
        }
        let text = typed.replace(',', ".").replace(' ', "");
        let reads = match self.unit {
            Unit::Millimetres => Length::from_str(&text).is_ok(),
            Unit::Grams => Mass::from_str(&text).is_ok(),
            Unit::GramsAMetre => LinearDensity::from_str(&text).is_ok(),
            Unit::Degrees => false,
        };
        let like = match self.unit {
            Unit::Millimetres => "24in, 61cm, 20awg",
            Unit::Grams => "3.4g, 0.5oz",
            Unit::GramsAMetre => "12.5g/m, 3.8g/ft",
            Unit::Degrees => "240",
        };
        if reads { Ok(text) } else { Err(say!(texts, "base-no-size", found = excerpt(typed), like = like)) }
    }

    /// As the file has it, where nothing else was typed.
    fn as_before(&self) -> String {
        let number = trimmed(self.now);
        match self.unit {
            Unit::Millimetres => format!("{number}mm"),
            Unit::Grams => format!("{number}g"),
            Unit::GramsAMetre => format!("{number}g/m"),
            Unit::Degrees => number,
        }
    }

    fn label(&self, texts: &Texts, of: &str) -> String {
        match self.unit {
            Unit::Millimetres => say!(texts, "base-in-mm", what = of),
            Unit::Grams => say!(texts, "base-in-g", what = of),
            Unit::GramsAMetre => say!(texts, "base-in-g-per-m", what = of),
            Unit::Degrees => say!(texts, "base-in-degrees", what = of),
        }
    }
}

/// At most three decimals, none of them a trailing zero.
fn trimmed(value: f64) -> String {
    let text = format!("{value:.3}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

fn name_of(texts: &Texts, guess: Guess) -> String {
    capital(&texts.get(&format!("guess-{}", guess.field())))
}

/// The fields of all figures, with what is a guess.
pub(super) fn fields(texts: &Texts, base: &Base) -> Markup {
    let entries = entries(base);
    let guesses = entries.iter().filter(|entry| base.guessed.contains(&entry.guess)).count();
    html! {
        details open[guesses > 0] {
            summary {
                (say!(texts, "base-sizes"))
                @if guesses > 0 { " " span.faint { "≈ " (say!(texts, "table-guesses", n = guesses)) } }
            }
            div.stack {
                input type="hidden" name=(ASKED) value="1";
                p.faint { (say!(texts, "base-sizes-hint")) }
                @for entry in &entries { (entry_fields(texts, entry, base.guessed.contains(&entry.guess))) }
                @if let BaseKind::Necklace(necklace) = &base.kind {
                    div {
                        label for="breakaway" { (say!(texts, "base-breakaway")) }
                        select #breakaway name="breakaway" {
                            option value="true" selected[necklace.breakaway] { (say!(texts, "base-breakaway-yes")) }
                            option value="false" selected[!necklace.breakaway] { (say!(texts, "base-breakaway-no")) }
                        }
                    }
                }
            }
        }
    }
}

fn entry_fields(texts: &Texts, entry: &Entry, is_guess: bool) -> Markup {
    let name = name_of(texts, entry.guess);
    let guess = html! {
        label.choose {
            input type="checkbox" name="guess" value=(entry.guess.field()) checked[is_guess];
            span { @if is_guess { "≈ " } (say!(texts, "base-is-guess", what = name.as_str())) }
        }
    };
    if let [figure] = &*entry.figures {
        return html! { div.size { (input(texts, figure, &name)) (guess) } };
    }
    html! {
        fieldset.size {
            legend { (name) }
            @for figure in &entry.figures { (input(texts, figure, &texts.get(&format!("base-{}", figure.name)))) }
            (guess)
        }
    }
}

fn input(texts: &Texts, figure: &Figure, of: &str) -> Markup {
    html! {
        div {
            label for=(figure.name) { (figure.label(texts, of)) }
            input #(figure.name) name=(figure.name) value=(figure.shown(texts)) autocomplete="off" maxlength="12";
        }
    }
}

/// What was typed of them, as the file has it; what is wrong in words. What is as before is left as somebody wrote it.
pub(super) fn read(texts: &Texts, form: &TableForm, base: &Base) -> Result<Fields, String> {
    let mut fields = Fields::new();
    if form.told(ASKED).is_none() {
        return Ok(fields);
    }
    let (mut still, mut marked) = (base.guessed.clone(), false);
    for entry in entries(base) {
        let ticked = form.all("guess").any(|field| field == entry.guess.field());
        let was_guess = base.guessed.contains(&entry.guess);
        let mut figures = Vec::new();
        let mut is_another = false;
        for figure in &entry.figures {
            let typed = form.told(figure.name).filter(|typed| *typed != figure.shown(texts));
            is_another |= typed.is_some();
            figures.push(match typed {
                Some(typed) => figure.written(texts, typed).map_err(|words| sentence(&words))?,
                None => figure.as_before(),
            });
        }
        // A figure that is typed is told, whatever the tick beside it still says.
        if is_another || was_guess && !ticked {
            fields = fields.written(entry.guess.field(), value(entry.guess, &figures));
        }
        if (is_another || !ticked) && was_guess {
            still.retain(|guess| *guess != entry.guess);
        }
        if ticked && !was_guess {
            still.push(entry.guess);
            marked = true;
        }
    }
    if let BaseKind::Necklace(necklace) = &base.kind
        && let Some(breakaway) = form.told("breakaway").and_then(|word| word.parse::<bool>().ok())
        && breakaway != necklace.breakaway
    {
        fields = fields.written("breakaway", breakaway.to_string());
    }
    // Only what becomes a guess is noted as one: what is told is taken off the list as it is written.
    if marked {
        still.sort();
        let names: Vec<&str> = still.iter().map(|guess| guess.field()).collect();
        fields = fields.written("guessed", format!("[{}]", names.join(", ")));
    }
    Ok(fields)
}

/// The figures as one value of the file.
fn value(guess: Guess, figures: &[String]) -> String {
    let quoted: Vec<String> = figures.iter().map(|figure| in_quotes(figure)).collect();
    match (guess, &*quoted) {
        (Guess::Clasp, [length, width, thickness, outside, wire]) => format!(
            "(length: {length}, width: {width}, thickness: {thickness}, ring: (outside: {outside}, wire: {wire}))"
        ),
        (_, [outside, wire]) => format!("(outside: {outside}, wire: {wire})"),
        (Guess::FreeArc, _) => figures.concat(),
        _ => quoted.concat(),
    }
}
