//! How a piece, or a chain without a catalogue, hangs.

use std::{f64::consts::PI, path::PathBuf};

use chatelaine::{
    catalog::read_folder,
    craft::{
        Bangle, Base, BaseKind, DropKind, Length, LinearDensity, Mass, Necklace, Piece, Wearer, closes_on_mm,
        trade_length,
    },
    hang::{
        BangleRest, BodyFalls, Load, NecklaceLoad, NecklaceRest, Side, bangle, bangle_load, falls, front_of_body,
        necklace, necklace_load, reach_mm, worn_neck_mm,
    },
};
use serde_json::{Value, json};

use super::{
    Told,
    answers::{Catalogued, piece, print},
};

#[derive(clap::Args)]
pub(super) struct Options {
    /// The piece's file; without it, a chain is described by --front-length, --width and --chain.
    piece: Option<PathBuf>,
    /// Length of the chain between the hang points; otherwise as the wearer's neck has it.
    #[arg(long, requires = "width")]
    front_length: Option<Length>,
    /// Horizontal distance of the hang points.
    #[arg(long, requires = "front_length")]
    width: Option<Length>,
    /// How much higher the right hang point is than the left one.
    #[arg(long, requires = "front_length")]
    rise: Option<Length>,
    /// Weight of the chain per length, as in "12.5g/m".
    #[arg(long, conflicts_with = "piece")]
    chain: Option<LinearDensity>,
    /// Weight of a drop, left to right; repeat it.
    #[arg(long, conflicts_with = "piece")]
    load: Vec<Mass>,
    /// Arc distance of neighbouring rings; repeat it.
    #[arg(long, conflicts_with = "piece")]
    gap: Vec<Length>,
    #[command(flatten)]
    catalogued: Catalogued,
}

/// An answer in both forms.
struct Answer {
    object: Value,
    words: String,
}

pub(super) fn run(options: &Options) -> Result<(), Told> {
    let answer = match &options.piece {
        Some(file) => hang_piece(options, &piece(file)?)?,
        None => hang_bare(options)?,
    };
    print(options.catalogued.json, &answer.object, || answer.words)
}

fn hang_bare(options: &Options) -> Result<Answer, Told> {
    let (Some(chain), Some(front), Some(width)) = (options.chain, options.front_length, options.width) else {
        return Err(Told("without a piece, --front-length, --width and --chain are needed".into()));
    };
    let rest = necklace(&NecklaceLoad {
        front_length_mm: front.mm(),
        width_mm: width.mm(),
        rise_mm: options.rise.map_or(0.0, Length::mm),
        chain_g_per_mm: chain.g_per_mm(),
        loads: options.load.iter().map(|mass| Load { mass_g: mass.g() }).collect(),
        gaps_mm: options.gap.iter().map(|gap| gap.mm()).collect(),
    })?;
    let mass_g = chain.g_per_mm() * front.mm() + options.load.iter().map(|mass| mass.g()).sum::<f64>();
    Ok(of_necklace(&rest, &[], rest.lowest_mm, mass_g, None))
}

fn hang_piece(options: &Options, piece: &Piece) -> Result<Answer, Told> {
    let catalog = read_folder(&options.catalogued.catalog)?.catalog;
    let (base, hung) = catalog.hung(piece)?;
    let kinds: Vec<&DropKind> = hung.iter().map(AsRef::as_ref).collect();
    match &base.kind {
        BaseKind::Necklace(n) => hang_necklace(options, piece, (base, n), &kinds, catalog.table.rho),
        BaseKind::Bangle(_) if options.front_length.is_some() => {
            Err(Told(format!("{:?} is a bangle; --front-length, --width and --rise are for necklaces", base.id)))
        }
        BaseKind::Bangle(b) => {
            let rest = bangle(&bangle_load(b, &kinds, catalog.table.rho))?;
            Ok(of_bangle(&rest, &piece.drops, b))
        }
    }
}

fn hang_necklace(
    options: &Options,
    piece: &Piece,
    (base, necklace_base): (&Base, &Necklace),
    kinds: &[&DropKind],
    rho: f64,
) -> Result<Answer, Told> {
    let length = piece.length.unwrap_or(necklace_base.lengths.usual);
    let neck_mm = worn_neck_mm(base, piece);
    let (front, width) = match (options.front_length, options.width) {
        (Some(front), Some(width)) => (front.mm(), width.mm()),
        _ => front_of_body(length.mm(), neck_mm)?,
    };
    let rise_mm = options.rise.map_or(0.0, Length::mm);
    let rest = necklace(&NecklaceLoad { rise_mm, ..necklace_load(necklace_base, kinds, rho, (front, width)) })?;
    let reaches: Vec<f64> = rest.rings.iter().zip(kinds).map(|(ring, kind)| ring.y_mm + reach_mm(kind)).collect();
    let lowest_mm = reaches.iter().copied().fold(rest.lowest_mm, f64::max);
    let mass_g = kinds.iter().map(|kind| kind.weight.g()).sum::<f64>() + necklace_base.chain.g_per_mm() * length.mm();
    let fallen = falls(rest.lowest_mm, &reaches, width * PI)?;
    let mut answer = of_necklace(&rest, &piece.drops, lowest_mm, mass_g, Some((length, fallen)));
    let closes_on_mm = closes_on_mm(length).floor();
    answer.object["closes_on_mm"] = json!(closes_on_mm);
    let known = match (piece.neck, piece.wearer) {
        (Some(_), _) => "as given",
        (None, Wearer::From13 | Wearer::Unknown) => "between the medians of women and men",
        (None, _) => "a child's, from memory",
    };
    answer.words.push_str(&format!(
        "\nIt closes on necks up to {closes_on_mm:.0} mm. It is drawn on a neck of {neck_mm:.0} mm ({known})."
    ));
    Ok(answer)
}

fn of_necklace(
    rest: &NecklaceRest,
    ids: &[String],
    lowest_mm: f64,
    mass_g: f64,
    fallen: Option<(Length, BodyFalls)>,
) -> Answer {
    let rings: Vec<Value> = rest
        .rings
        .iter()
        .enumerate()
        .map(|(i, ring)| json!({ "id": ids.get(i), "arc_mm": ring.arc_mm, "x_mm": ring.x_mm, "y_mm": ring.y_mm }))
        .collect();
    let mut object = json!({
        "kind": "necklace", "front_length_mm": rest.front_length_mm, "width_mm": rest.width_mm, "sag_mm": rest.sag_mm,
        "horizontal_tension_mn": rest.horizontal_tension_mn, "end_tension_mn": rest.end_tension_mn,
        "rings": rings, "lowest_mm": lowest_mm, "mass_g": mass_g,
    });
    let mut words = format!(
        "{:.1} mm of chain across {:.1} mm sag by {:.1} mm and pull with {:.1} mN; the lowest point is {lowest_mm:.1} mm \
         down, the whole weighs {mass_g:.1} g.",
        rest.front_length_mm, rest.width_mm, rest.sag_mm, rest.end_tension_mn
    );
    for (i, ring) in rest.rings.iter().enumerate() {
        let name = ids.get(i).cloned().unwrap_or_else(|| format!("drop {}", i + 1));
        words.push_str(&format!("\n{name:<24} {:>7.1} mm across {:>7.1} mm down", ring.x_mm, ring.y_mm));
        if let Some(place) = fallen.as_ref().and_then(|(_, fallen)| fallen.drops.get(i)) {
            words.push_str(&format!("   {}", place.words()));
        }
    }
    if let Some((length, fallen)) = fallen {
        let trade = trade_length(length).map(|one| one.name);
        let drops: Vec<&str> = fallen.drops.iter().map(|place| place.words()).collect();
        object["falls"] = json!({ "trade_length": trade, "chain": fallen.chain.words(), "drops": drops });
        let name = trade.map_or_else(String::new, |name| format!(", a {name} length"));
        words.push_str(&format!("\nThe chain is {length} long{name}; it falls here: {}.", fallen.chain.words()));
    }
    if let Some(side) = rest.against {
        object["against"] = json!(side_word(side));
        let end = side_word(side);
        words
            .push_str(&format!("\nThe drops find no balance between the ends: they lie against the {end} hang point."));
    }
    Answer { object, words }
}

fn of_bangle(rest: &BangleRest, ids: &[String], base: &Bangle) -> Answer {
    let mass_g = rest.mass_g + base.weight.g();
    let placed = || ids.iter().zip(&rest.angles_deg);
    let rings: Vec<Value> = placed().map(|(id, angle)| json!({ "id": id, "angle_deg": angle })).collect();
    let mut object = json!({
        "kind": "bangle", "rings": rings, "free_arc_deg": base.free_arc_deg, "mass_g": mass_g,
    });
    let mut words = format!("Drops have {:.0}° of the bangle; the whole weighs {mass_g:.1} g.", base.free_arc_deg);
    for (id, angle) in placed() {
        words.push_str(&format!("\n{id:<24} {angle:>7.1}° from straight down"));
    }
    if rest.turn_deg != 0.0 {
        object["turn_deg"] = json!(rest.turn_deg);
        words.push_str(&format!("\nThe bangle turns by {:.1}° on the wrist.", rest.turn_deg));
    }
    if let Some(side) = rest.against {
        object["against"] = json!(side_word(side));
        let end = side_word(side);
        words.push_str(&format!("\nIts hook comes down until the {end} end of the free arc lies against the drops."));
    }
    Answer { object, words }
}

const fn side_word(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
    }
}
