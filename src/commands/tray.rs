//! `chatelaine tray`: every compartment of a tray cut out of one photo, as files.

use std::{
    fs::{self, File},
    io::{ErrorKind, Read, Write},
    path::{Path, PathBuf},
};

use chatelaine::{
    craft::Home,
    disk::durable::NewFile,
    photo::{Best, MOST_BYTES, Photo, Point, Seen, Straightened, Tray, find_corners, jpeg, look, png},
};
use serde_json::{Value, json};

use super::{Told, answers::print};

#[derive(clap::Args)]
pub(super) struct Options {
    /// The photo, JPEG, PNG or WebP: the tray straight from above.
    photo: PathBuf,
    /// The tray's letter.
    #[arg(long)]
    tray: char,
    /// Compartments from front to back.
    #[arg(long)]
    rows: u32,
    /// Compartments side by side.
    #[arg(long)]
    columns: u32,
    /// Between the tray's left and its right wall, in millimetres.
    #[arg(long)]
    inner_width_mm: f64,
    /// The tray's four inner corners in pixels of the photo as it is shown upright, above left first, then clockwise:
    /// X,Y,X,Y,X,Y,X,Y. Without them they are looked for.
    #[arg(long)]
    corners: Option<String>,
    /// The folder for the pictures; none of their names may be taken in it.
    #[arg(long)]
    out: PathBuf,
    /// Print one JSON object.
    #[arg(long)]
    json: bool,
}

pub(super) fn run(options: &Options) -> Result<(), Told> {
    if !options.tray.is_ascii_uppercase() {
        return Err(Told(format!("{:?} is no tray's letter; write one from A to Z", options.tray)));
    }
    let told = |what: String| Told(format!("{}: {what}", options.photo.display()));
    let photo = Photo::read(&bytes_of(&options.photo)?).map_err(|refused| told(refused.to_string()))?;
    let corners = match &options.corners {
        Some(text) => read_corners(text)?,
        None => find_corners(&photo).ok_or_else(|| {
            told("no tray is seen in it; name its corners with --corners X,Y,X,Y,X,Y,X,Y, above left first".to_owned())
        })?,
    };
    let tray = Tray {
        corners,
        rows: options.rows,
        columns: options.columns,
        inner_width_mm: options.inner_width_mm,
        inner_depth_mm: None,
    };
    let straight = Straightened::new(&photo, tray).map_err(|refused| told(refused.to_string()))?;
    fs::create_dir_all(&options.out).map_err(|error| Told(format!("{}: {error}", options.out.display())))?;
    let (mut compartments, mut lines) = (Vec::new(), Vec::new());
    let cells = (0..options.rows).flat_map(|row| (0..options.columns).map(move |column| (row, column)));
    for ((row, column), n) in cells.zip(1u16..) {
        let home = Home { tray: options.tray, compartment: n };
        let seen = look(&straight.compartment(row, column));
        let file = keep(&options.out, home, &seen)?;
        compartments.push(told_of(home, &seen, file.as_deref()));
        lines.push(line_of(home, &seen, file.as_deref()));
    }
    let object = json!({
        "tray": options.tray.to_string(),
        "corners": corners.map(|p| [p.x, p.y]),
        "inner_depth_mm": straight.depth_mm(),
        "px_per_mm": straight.px_per_mm(),
        "compartments": compartments,
    });
    print(options.json, &object, || lines.join("\n"))
}

/// The photo's bytes; a pipe is as good as a file, but none without end.
fn bytes_of(path: &Path) -> Result<Vec<u8>, Told> {
    let mut bytes = Vec::new();
    File::open(path)
        .and_then(|open| open.take(MOST_BYTES as u64 + 1).read_to_end(&mut bytes))
        .map_err(|error| Told(format!("{}: the photo can't be read ({error})", path.display())))?;
    Ok(bytes)
}

fn read_corners(text: &str) -> Result<[Point; 4], Told> {
    let numbers: Option<Vec<f64>> = text.split(',').map(|word| word.trim().parse().ok()).collect();
    match numbers.as_deref() {
        Some(&[a, b, c, d, e, f, g, h]) => Ok([Point::new(a, b), Point::new(c, d), Point::new(e, f), Point::new(g, h)]),
        _ => Err(Told(format!("{text:?} are no four corners; write X,Y,X,Y,X,Y,X,Y in pixels of the photo"))),
    }
}

/// Keeps a compartment's picture; its file's name, or none where nothing lies there.
fn keep(folder: &Path, home: Home, seen: &Seen) -> Result<Option<String>, Told> {
    let (bytes, end) = match (seen.best(), seen.pieces.first()) {
        (Best::Nothing, _) => return Ok(None),
        (Best::CutOut, Some(piece)) => (png(&piece.picture)?, "png"),
        _ => (jpeg(&seen.tile)?, "jpg"),
    };
    let name = format!("{home}.{end}");
    let path = folder.join(&name);
    let kept = NewFile::begin(&path).and_then(|new| {
        fs::OpenOptions::new().write(true).open(new.unfinished()).and_then(|mut file| file.write_all(&bytes))?;
        new.keep()
    });
    match kept {
        Ok(()) => Ok(Some(name)),
        Err(error) if error.kind() == ErrorKind::AlreadyExists => {
            Err(Told(format!("{} is there already; name an empty folder with --out", path.display())))
        }
        Err(error) => Err(Told(format!("{}: {error}", path.display()))),
    }
}

const fn word(best: Best) -> &'static str {
    match best {
        Best::CutOut => "cut out",
        Best::Tile => "tile",
        Best::Nothing => "nothing",
    }
}

fn told_of(home: Home, seen: &Seen, file: Option<&str>) -> Value {
    let mut object = json!({ "home": home.to_string(), "shown": word(seen.best()), "file": file });
    if let Some(piece) = seen.pieces.first() {
        object["trust"] = json!(piece.confidence);
        object["width_mm"] = json!(piece.width_mm);
        object["height_mm"] = json!(piece.height_mm);
        object["ring_mm"] = json!(piece.ring_mm);
        object["sort"] = json!(piece.looks.sort.name());
        object["colour"] = json!(piece.looks.colour.name());
    }
    object
}

fn line_of(home: Home, seen: &Seen, file: Option<&str>) -> String {
    let (home, what) = (home.to_string(), word(seen.best()));
    match (seen.pieces.first(), file) {
        (Some(piece), Some(file)) => format!(
            "{home:<5} {what:<8} {file:<10} {:>6.1} × {:.1} mm  trust {:.2}  {} {}",
            piece.width_mm,
            piece.height_mm,
            piece.confidence,
            piece.looks.colour.word(),
            piece.looks.sort.word()
        ),
        (None, Some(file)) => format!("{home:<5} {what:<8} {file}"),
        (_, None) => format!("{home:<5} {what}"),
    }
}
