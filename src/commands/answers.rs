//! The computing commands: one answer each, as words or as one JSON object.

use std::{
    fs::File,
    io::{ErrorKind, Read, Write},
    path::{Path, PathBuf},
};

use chatelaine::{
    catalog::{read_folder, read_piece, read_workshop},
    caution::{self, DEFERRAL, Gauge, Solid},
    craft::{self, ClosedEnd, Length, Piece, Ring, Wearer, fit_over},
    disk::plain_file::MEGABYTE,
    quoting::quoted,
    ron_tree::Detail,
};
use serde_json::{Value, json};

use super::Told;

#[derive(clap::Args)]
pub(super) struct Catalogued {
    /// The catalogue's folder.
    #[arg(long, default_value = "catalog")]
    pub(super) catalog: PathBuf,
    /// Print one JSON object.
    #[arg(long)]
    pub(super) json: bool,
}

#[derive(clap::Args)]
pub(super) struct PieceFile {
    /// The piece's file: (base: "…", length: "24in", wearer: From6To12, drops: ["id", "id"])
    piece: PathBuf,
    #[command(flatten)]
    catalogued: Catalogued,
}

#[derive(clap::Args)]
pub(super) struct Caution {
    /// The piece's file: (base: "…", length: "24in", wearer: From6To12, drops: ["id", "id"])
    #[arg(required_unless_present = "table")]
    piece: Option<PathBuf>,
    /// Print every rule of the region on one page instead, over the facts that decide it, to be read by an assessor.
    #[arg(long, conflicts_with_all = ["piece", "wearer", "json"])]
    table: bool,
    #[command(flatten)]
    catalogued: Catalogued,
    /// Who it is for: under3, from3to5, from6to12, from13 or unknown; otherwise as the piece's file says.
    #[arg(long = "for")]
    wearer: Option<String>,
    /// Whose rules: US, EU, UK, or another that the catalogue has a file for; otherwise as the table says.
    #[arg(long)]
    region: Option<String>,
}

#[derive(clap::Args)]
#[group(required = true, multiple = false)]
pub(super) struct Shape {
    /// Diameter of a ball.
    #[arg(long)]
    ball: Option<String>,
    /// Diameter and overall length of a rod with round ends.
    #[arg(long)]
    rod: Option<String>,
    /// Diameter and thickness of a disc.
    #[arg(long)]
    disc: Option<String>,
    /// Diameter and height of a cylinder.
    #[arg(long)]
    cylinder: Option<String>,
    /// Diameter and height of a cone.
    #[arg(long)]
    cone: Option<String>,
    /// The three sides of a box.
    #[arg(long = "box")]
    block: Option<String>,
    /// The three axes of an ellipsoid.
    #[arg(long)]
    ellipsoid: Option<String>,
    /// A file of lines "x y z" in mm.
    #[arg(long)]
    points: Option<PathBuf>,
}

#[derive(clap::Args)]
pub(super) struct Body {
    #[command(flatten)]
    shape: Shape,
    /// The metric cylinder of the EU and the UK instead of the inch one.
    #[arg(long)]
    metric: bool,
    /// Print one JSON object.
    #[arg(long)]
    json: bool,
}

#[derive(clap::Args)]
pub(super) struct Fit {
    /// The ring: outside diameter and wire, as in 10mm,18awg.
    #[arg(long)]
    ring: String,
    /// What it has to go over: an outside diameter, or WIDTHxTHICKNESS.
    #[arg(long)]
    over: String,
    /// Print one JSON object.
    #[arg(long)]
    json: bool,
}

/// Prints an answer. A reader that has heard enough is no mistake; a full disk is one.
pub(super) fn print(json: bool, object: &Value, words: impl FnOnce() -> String) -> Result<(), Told> {
    let answer = if json { object.to_string() } else { words() };
    let mut out = std::io::stdout().lock();
    match writeln!(out, "{answer}").and_then(|()| out.flush()) {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            Err(Told(format!("the answer could not be written ({error})")))
        }
        _ => Ok(()),
    }
}

pub(super) fn piece(file: &Path) -> Result<Piece, Told> {
    Ok(read_piece(&file.display().to_string(), &text_of(file)?)?)
}

/// The longest file of a piece or a body that is read, in bytes.
const LONGEST_FILE: u64 = 4 * MEGABYTE;

/// The text of a file that somebody named; a pipe is as good, but none without end.
fn text_of(file: &Path) -> Result<String, Told> {
    let told = |why: String| Told(format!("{}: {why}", file.display()));
    let mut bytes = Vec::new();
    File::open(file)
        .and_then(|open| open.take(LONGEST_FILE + 1).read_to_end(&mut bytes))
        .map_err(|error| told(format!("the file can't be read ({error})")))?;
    if bytes.len() as u64 > LONGEST_FILE {
        return Err(told(format!("the file is larger than {} MB", LONGEST_FILE / MEGABYTE)));
    }
    String::from_utf8(bytes).map_err(|_| told("the file is no UTF-8 text".to_owned()))
}

pub(super) fn check(options: &Catalogued) -> Result<(), Told> {
    let loaded = read_folder(&options.catalog)?;
    let catalog = &loaded.catalog;
    read_workshop(&options.catalog, catalog)?;
    let (bases, trays, drops) = (catalog.bases.len(), catalog.trays.len(), catalog.drops.len());
    let remarks: Vec<&str> = loaded.remarks.iter().map(Detail::english).collect();
    let object = json!({ "bases": bases, "trays": trays, "drops": drops, "remarks": remarks });
    print(options.json, &object, || {
        let mut words = format!("{}: {bases} bases, {trays} trays, {drops} drops, no mistakes", catalog.table.name);
        for remark in &loaded.remarks {
            words.push_str(&format!("\nremark: {remark}"));
        }
        words
    })
}

pub(super) fn quote(options: &PieceFile) -> Result<(), Told> {
    let catalog = read_folder(&options.catalogued.catalog)?.catalog;
    let quote = catalog.quote(&piece(&options.piece)?)?;
    print(options.catalogued.json, &serde_json::to_value(&quote)?, || {
        let plain = |amount| quote.currency.plain(amount);
        let mut words = format!("{:<24}{:>12}", quote.base.id, plain(quote.base.price));
        for drop in &quote.drops {
            words.push_str(&format!("\n{:<20}{:<4}{:>12}", drop.id, drop.home.to_string(), plain(drop.price)));
        }
        for (name, amount) in
            [("subtotal", quote.subtotal), ("discount", quote.discount), ("tax", quote.tax), ("total", quote.total)]
        {
            words.push_str(&format!("\n{name:<24}{:>12}", plain(amount)));
        }
        words
    })
}

pub(super) fn caution(options: &Caution) -> Result<(), Told> {
    let catalogued = &options.catalogued;
    let loaded = read_folder(&catalogued.catalog)?;
    let rules = match &options.region {
        Some(code) => loaded.rules.iter().find(|rules| rules.region.code() == code).ok_or_else(|| {
            let known: Vec<&str> = loaded.rules.iter().map(|rules| rules.region.code()).collect();
            Told(format!("there are no rules for the region {code:?}; write one of {}", known.join(", ")))
        })?,
        None => &loaded.catalog.rules,
    };
    let Some(file) = &options.piece else {
        return print(false, &Value::Null, || caution::table(rules).trim_end().to_owned());
    };
    let mut piece = piece(file)?;
    if let Some(code) = &options.wearer {
        piece.wearer = Wearer::from_code(code).ok_or_else(|| {
            Told(format!("{code:?} is no wearer; write under3, from3to5, from6to12, from13 or unknown"))
        })?;
    }
    let catalog = &loaded.catalog;
    let verdict = catalog.cautions_under(&piece, rules)?;
    let list: Vec<Value> = verdict
        .cautions
        .iter()
        .map(|one| {
            json!({
                "code": one.code.code(), "drop": one.drop, "rule": one.cited(), "text": one.text, "seller": one.seller,
                "grave": one.grave, "forbidden": one.forbidden,
            })
        })
        .collect();
    print(catalogued.json, &json!({ "suitable": verdict.suitable, "cautions": list, "deferral": DEFERRAL }), || {
        let mut words = String::from(match (verdict.suitable, piece.wearer) {
            (false, _) if verdict.is_forbidden() => "A part of it may not be sold to anybody.",
            (true, _) => "Nothing speaks plainly against it.",
            (false, Wearer::Unknown) => "Not for everyone, and it is not said who it is for.",
            (false, _) => "Not for this wearer.",
        });
        for hazard in verdict.hazards() {
            let one = hazard.spokesman();
            let drops = hazard.drops().filter_map(|id| Some(catalog.drop_kind(id)?.name.as_str()));
            let base = catalog.base(&piece.base).filter(|_| hazard.is_of_the_base()).map(|base| base.name.as_str());
            let parts: Vec<&str> = base.into_iter().chain(drops).collect();
            let (parts, cited) = (parts.join(", "), one.cited());
            words.push_str(&format!("\n- {parts}: {} ({cited})\n  For the seller: {}", one.text, one.seller));
        }
        format!("{words}\n{DEFERRAL}")
    })
}

/// Plain numbers are millimetres; units may be written.
/// Points of a body: a scan thinned out to a few per square millimetre has fewer, and more would keep one waiting for minutes.
const MOST_POINTS: usize = 5000;

fn sizes(text: &str, wanted: usize) -> Result<Vec<Length>, Told> {
    let read = |part: &str| match part.trim().parse::<f64>() {
        Ok(mm) if mm.is_finite() && mm > 0.0 => Ok(Length::from_mm(mm)),
        Ok(_) => Err(Told(format!("{part:?} is no size; it has to be above zero"))),
        Err(_) => Ok(part.parse::<Length>()?),
    };
    let sizes = text.split(',').map(read).collect::<Result<Vec<_>, _>>()?;
    if sizes.len() != wanted {
        return Err(Told(format!("{text:?} has {} where {wanted} belong, with commas between", sizes.len())));
    }
    if sizes.iter().any(|size| size.mm() <= 0.0) {
        return Err(Told(format!("{text:?} has a size of nothing")));
    }
    Ok(sizes)
}

fn body(shape: &Shape) -> Result<craft::Body, Told> {
    if let Some(file) = &shape.points {
        let text = text_of(file)?;
        // Some editors begin a file with a mark of their own.
        let text = text.trim_start_matches('\u{feff}');
        let mut points_mm = Vec::new();
        for (n, line) in text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty()) {
            let numbers: Option<Vec<f64>> =
                line.split_whitespace().map(|word| word.parse().ok().filter(|x: &f64| x.is_finite())).collect();
            match numbers.as_deref() {
                Some(&[x, y, z]) => points_mm.push([x, y, z]),
                _ => {
                    return Err(Told(format!(
                        "{}:{}: {} is no point; write \"x y z\"",
                        file.display(),
                        n + 1,
                        quoted(line)
                    )));
                }
            }
        }
        if points_mm.is_empty() {
            return Err(Told(format!("{}: no points", file.display())));
        }
        if points_mm.len() > MOST_POINTS {
            return Err(Told(format!(
                "{}: {} points, and no more than {MOST_POINTS} are gauged; keep those that lie outermost",
                file.display(),
                points_mm.len()
            )));
        }
        return Ok(craft::Body::Points { points_mm });
    }
    let forms = [
        ("Ball", &shape.ball),
        ("Rod", &shape.rod),
        ("Disc", &shape.disc),
        ("Cylinder", &shape.cylinder),
        ("Cone", &shape.cone),
        ("Box", &shape.block),
        ("Ellipsoid", &shape.ellipsoid),
    ];
    for (form, text) in forms {
        if let Some(text) = text {
            let wanted = craft::Body::FORMS.iter().find(|(name, _)| *name == form).map_or(0, |(_, sizes)| sizes.len());
            let sizes = sizes(text, wanted)?;
            return craft::Body::from_form(form, &sizes).ok_or_else(|| Told("no such body".into()));
        }
    }
    Err(Told("name one body, as in --ball 12".into()))
}

pub(super) fn gauge(options: &Body) -> Result<(), Told> {
    let solid = Solid::of_body(&body(&options.shape)?);
    let which = if options.metric { Gauge::Metric } else { Gauge::Inch };
    let result = caution::gauge(&solid, which);
    print(
        options.json,
        &json!({ "fits": result.fits, "margin_mm": result.margin_mm, "certain": result.certain }),
        || {
            let words = match (result.certain, result.fits) {
                (false, _) => "is too close to call: measure it",
                (true, true) => "fits the cylinder: a small part",
                (true, false) => "does not fit the cylinder",
            };
            format!("{words} ({:+.2} mm to spare)\n{DEFERRAL}", result.margin_mm)
        },
    )
}

pub(super) fn fit(options: &Fit) -> Result<(), Told> {
    let ring = sizes(&options.ring, 2)?;
    let ring = Ring::new(ring[0], ring[1])?;
    let end = match options.over.split_once('x') {
        Some((width, thickness)) => ClosedEnd::Flat { width: sizes(width, 1)?[0], thickness: sizes(thickness, 1)?[0] },
        None => ClosedEnd::Round(sizes(&options.over, 1)?[0]),
    };
    let fit = fit_over(ring, end);
    print(options.json, &json!({ "passes": fit.passes, "clearance_mm": fit.clearance_mm }), || {
        format!("{}: {fit}", if fit.passes { "passes" } else { "does not pass" })
    })
}
