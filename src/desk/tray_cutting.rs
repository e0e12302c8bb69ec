//! A tray's photo at work: its corners looked for, its compartments cut out, one of them mended.

use std::io;

use super::tray_drafts::{Cut, InPhoto, PHOTO, SHOWN, ShownAs, Told, TrayDraft, TrayDrafts, look_file};
use crate::{
    craft::{Home, MOST_LOOKS},
    photo::{
        Best, Compartment, CutOut, MOST_STROKES, Photo, PhotoRefused, Point, Seen, Straightened, Stroke, TRUSTED, Tray,
        TrayRefused, find_corners, jpeg, look, mended, png, usual_corners,
    },
};

/// The longer side of the photo as a page shows it, in pixels.
const SHOWN_PX: u32 = 1280;

/// Why a photo can't be worked on.
#[derive(Debug)]
pub(super) enum CutRefused {
    /// It was laid or thrown away meanwhile.
    Gone,
    /// It does not read.
    Photo(PhotoRefused),
    /// Corners, grid or width are no tray's.
    Tray(TrayRefused),
    /// The disk refuses.
    Disk(io::Error),
}

impl From<io::Error> for CutRefused {
    fn from(error: io::Error) -> Self {
        Self::Disk(error)
    }
}

impl From<PhotoRefused> for CutRefused {
    fn from(refused: PhotoRefused) -> Self {
        Self::Photo(refused)
    }
}

impl From<TrayRefused> for CutRefused {
    fn from(refused: TrayRefused) -> Self {
        Self::Tray(refused)
    }
}

impl From<image::ImageError> for CutRefused {
    fn from(error: image::ImageError) -> Self {
        Self::Disk(io::Error::other(error.to_string()))
    }
}

/// The grid of a tray as it lies on the table.
#[derive(Debug, Clone)]
pub(super) struct Grid {
    pub rows: u32,
    pub columns: u32,
    pub cells: Vec<GridCell>,
}

/// A compartment of the grid.
#[derive(Debug, Clone)]
pub(super) struct GridCell {
    pub home: Home,
    pub row: u32,
    pub column: u32,
    /// What tells how it stands in the table's files.
    pub mark: String,
    /// Whether something lies there already.
    pub taken: bool,
}

/// Begins a draft of a photo as it came in; its id.
pub(super) fn begin(
    drafts: &TrayDrafts,
    bytes: &[u8],
    (tray, begun): (char, jiff::Timestamp),
    inner_width_mm: Option<rust_decimal::Decimal>,
    grid: &Grid,
) -> Result<String, CutRefused> {
    let photo = Photo::read(bytes)?;
    let found = find_corners(&photo).map(|corners| upright(&photo, corners, grid));
    let (width, height) = (photo.width(), photo.height());
    let share = |p: Point| Point::new(p.x / f64::from(width), p.y / f64::from(height));
    let draft = TrayDraft {
        tray,
        begun,
        width,
        height,
        corners: found.unwrap_or_else(|| usual_corners(&photo)).map(share),
        found: found.is_some(),
        inner_width_mm,
        compartments: vec![],
        changes: 0,
    };
    let pictures = [(PHOTO, jpeg(photo.pixels())?), (SHOWN, jpeg(&photo.at_most(SHOWN_PX))?)];
    Ok(drafts.begin(&draft, &pictures)?)
}

/// The corners turned by a quarter where the tray's compartments are nearer to squares then: whoever holds a phone upright
/// has a broad tray lying on its side.
fn upright(photo: &Photo, corners: [Point; 4], grid: &Grid) -> [Point; 4] {
    let any_mm = 200.0;
    let tray = Tray { corners, rows: grid.rows, columns: grid.columns, inner_width_mm: any_mm, inner_depth_mm: None };
    let Ok(straight) = Straightened::new(photo, tray) else { return corners };
    let deep = straight.depth_mm() / any_mm;
    let (rows, columns) = (f64::from(grid.rows), f64::from(grid.columns));
    let off_square = |width: f64, depth: f64| (width / columns / (depth / rows)).ln().abs();
    let mut turned = corners;
    turned.rotate_left(1);
    // Where both are as good, it is as the photo shows it.
    if off_square(deep, 1.0) + 0.1 < off_square(1.0, deep) { turned } else { corners }
}

/// The photo of a draft.
fn photo_of(drafts: &TrayDrafts, id: &str) -> Result<Photo, CutRefused> {
    Ok(Photo::read(&drafts.picture(id, PHOTO).ok_or(CutRefused::Gone)?)?)
}

fn straightened<'p>(photo: &'p Photo, draft: &TrayDraft, grid: &Grid) -> Result<Straightened<'p>, CutRefused> {
    let at = |p: Point| Point::new(p.x * f64::from(photo.width()), p.y * f64::from(photo.height()));
    let width_mm = draft.inner_width_mm.and_then(|width| f64::try_from(width).ok()).unwrap_or(0.0);
    let tray = Tray {
        corners: draft.corners.map(at),
        rows: grid.rows,
        columns: grid.columns,
        inner_width_mm: width_mm,
        inner_depth_mm: None,
    };
    Ok(Straightened::new(photo, tray)?)
}

/// Cuts every compartment out. What was told of one before stays told.
pub(super) fn cut_all(drafts: &TrayDrafts, id: &str, grid: &Grid) -> Result<(), CutRefused> {
    let draft = drafts.read(id).ok_or(CutRefused::Gone)?;
    let photo = photo_of(drafts, id)?;
    let straight = straightened(&photo, &draft, grid)?;
    let (mut compartments, mut pictures) = (Vec::new(), Vec::new());
    for cell in &grid.cells {
        let compartment = straight.compartment(cell.row, cell.column);
        let seen = look(&compartment);
        let before = draft.at(cell.home);
        let is_mix = before.is_some_and(|one| one.shown == ShownAs::Mix);
        let looks = if is_mix { mix_of(&seen, cell.home, &mut pictures)? } else { vec![] };
        let best = match seen.best() {
            _ if is_mix => ShownAs::Mix,
            Best::CutOut => ShownAs::Cut,
            // What lies there keeps the picture it has, rather than getting a worse one.
            Best::Tile if !cell.taken => ShownAs::Tile,
            Best::Tile | Best::Nothing => ShownAs::Nothing,
        };
        let cut = seen.pieces.first();
        if let Some(cut) = cut {
            pictures.push((ShownAs::Cut.file(cell.home), png(&cut.picture)?));
        }
        pictures.push((ShownAs::Tile.file(cell.home), jpeg(&seen.tile)?));
        pictures.push((ShownAs::Whole.file(cell.home), jpeg(&compartment.pixels)?));
        compartments.push(InPhoto {
            home: cell.home,
            mark: cell.mark.clone(),
            shown: best,
            cut: cut.map(facts),
            looks,
            strokes: vec![],
            px_per_mm: compartment.px_per_mm,
            size_px: compartment.pixels.dimensions(),
            told: before.map_or_else(Told::default, |one| one.told.clone()),
        });
    }
    let changed = drafts.change(id, &pictures, |draft| draft.compartments = compartments)?;
    changed.map(|_| ()).ok_or(CutRefused::Gone)
}

/// The looks of a mix with their pictures: the pieces that can be told apart, where there are several. Its own picture is its
/// tile.
fn mix_of(seen: &Seen, home: Home, pictures: &mut Vec<(String, Vec<u8>)>) -> Result<Vec<Cut>, CutRefused> {
    pictures.push((ShownAs::Mix.file(home), jpeg(&seen.tile)?));
    let sure = || seen.pieces.iter().filter(|cut| cut.confidence >= TRUSTED);
    if sure().count() < 2 {
        return Ok(vec![]);
    }
    let mut looks = Vec::new();
    for (number, cut) in sure().take(MOST_LOOKS).enumerate() {
        pictures.push((look_file(home, number), png(&cut.picture)?));
        looks.push(facts(cut));
    }
    Ok(looks)
}

/// Makes a compartment a mix of unlike pieces; how many of them were told apart.
pub(super) fn mix(drafts: &TrayDrafts, id: &str, grid: &Grid, home: Home) -> Result<usize, CutRefused> {
    let draft = drafts.read(id).ok_or(CutRefused::Gone)?;
    let cell = grid.cells.iter().find(|cell| cell.home == home).ok_or(CutRefused::Gone)?;
    let photo = photo_of(drafts, id)?;
    let seen = look(&straightened(&photo, &draft, grid)?.compartment(cell.row, cell.column));
    let mut pictures = Vec::new();
    let looks = mix_of(&seen, home, &mut pictures)?;
    let count = looks.len();
    let changed = drafts.change(id, &pictures, |draft| {
        if let Some(one) = draft.at_mut(home) {
            (one.shown, one.looks) = (ShownAs::Mix, looks);
        }
    })?;
    changed.map(|_| count).ok_or(CutRefused::Gone)
}

fn facts(cut: &CutOut) -> Cut {
    Cut { width_mm: cut.width_mm, height_mm: cut.height_mm, trust: cut.confidence, looks: cut.looks }
}

/// Cuts one compartment out as its strokes say; whether anything is left of it.
pub(super) fn mend(
    drafts: &TrayDrafts,
    id: &str,
    grid: &Grid,
    home: Home,
    mut strokes: Vec<Stroke>,
) -> Result<bool, CutRefused> {
    strokes.truncate(MOST_STROKES);
    let draft = drafts.read(id).ok_or(CutRefused::Gone)?;
    let cell = grid.cells.iter().find(|cell| cell.home == home).ok_or(CutRefused::Gone)?;
    let photo = photo_of(drafts, id)?;
    let compartment: Compartment = straightened(&photo, &draft, grid)?.compartment(cell.row, cell.column);
    let cut = mended(&compartment, &strokes);
    let pictures = match &cut {
        Some(cut) => vec![(ShownAs::Cut.file(home), png(&cut.picture)?)],
        None => vec![],
    };
    let changed = drafts.change(id, &pictures, |draft| {
        if let Some(one) = draft.at_mut(home) {
            one.strokes = strokes;
            one.shown = if cut.is_some() { ShownAs::Cut } else { ShownAs::Tile };
            one.cut = cut.as_ref().map(facts);
        }
    })?;
    changed.map(|_| cut.is_some()).ok_or(CutRefused::Gone)
}
