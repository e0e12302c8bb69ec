//! Pages as a PDF file: the typefaces in it as far as they are used, the words to be copied, title and language set.

use krilla::{
    color::rgb,
    geom::{PathBuilder, Point, Rect, Size, Transform},
    image::Image,
    metadata::Metadata,
    num::NormalizedF32,
    page::PageSettings,
    paint::{Fill, FillRule, Stroke, StrokeDash},
    surface::Surface,
};

use super::{
    document::{Document, PaperError, Sheet},
    layout::pages,
    marks::{self, Mark, Page, Rgb},
    typeface::Typefaces,
};
use crate::qr::Squares;

/// `document` as a PDF file.
///
/// # Errors
/// The file can't be made.
pub fn pdf(document: &Document, sheet: Sheet) -> Result<Vec<u8>, PaperError> {
    let picture = document.picture.as_deref().and_then(read_picture);
    let pages = pages(document, sheet, picture.as_ref().map(Image::size))?;
    let pictures: Vec<Image> = picture.into_iter().collect();
    file(pages, &pictures, sheet, (&document.title, document.language))
}

/// A PNG file as it is put into PDF files.
pub(super) fn read_picture(png: &[u8]) -> Option<Image> {
    Image::from_png(png.to_vec().into(), true).ok()
}

/// Pages of one sheet as a PDF file with a title and the code of a language.
pub(super) fn file(
    pages: Vec<Page>,
    pictures: &[Image],
    sheet: Sheet,
    (title, language): (&str, &str),
) -> Result<Vec<u8>, PaperError> {
    let typefaces = Typefaces::all()?;
    let (width, height) = sheet.points();
    let mut file = krilla::Document::new();
    for marks in pages {
        let settings = PageSettings::from_wh(width, height).ok_or_else(|| PaperError::Pdf("no such sheet".into()))?;
        let mut page = file.start_page_with(settings);
        let mut surface = page.surface();
        for mark in marks {
            draw(&mut surface, &typefaces, pictures, mark);
        }
        surface.finish();
        page.finish();
    }
    let about = Metadata::new().title(title.to_owned()).language(language.to_owned());
    file.set_metadata(about.creator("Chatelaine".to_owned()));
    file.finish().map_err(|error| PaperError::Pdf(format!("{error:?}")))
}

fn colour([red, green, blue]: Rgb) -> rgb::Color {
    rgb::Color::new(red, green, blue)
}

fn draw(surface: &mut Surface<'_>, typefaces: &Typefaces, pictures: &[Image], mark: Mark) {
    match mark {
        Mark::Words { x, y, style, size, colour: of, text } => {
            let set = typefaces.set(style, &text);
            let fill = Fill { paint: colour(of).into(), opacity: NormalizedF32::ONE, rule: FillRule::default() };
            surface.set_fill(Some(fill));
            surface.set_stroke(None);
            surface.draw_glyphs(Point::from_xy(x, y), &set.glyphs, set.font, &text, size, false);
        }
        Mark::Line { from, to, pen } => {
            let mut path = PathBuilder::new();
            path.move_to(from.0, from.1);
            path.line_to(to.0, to.1);
            stroke(surface, path, pen);
        }
        Mark::Box { x, y, width, height, pen } => {
            let mut path = PathBuilder::new();
            if let Some(square) = Rect::from_xywh(x, y, width, height) {
                path.push_rect(square);
            }
            stroke(surface, path, pen);
        }
        Mark::Ring { x, y, across, pen } => stroke(surface, ring(x, y, across / 2.0), pen),
        Mark::Code { x, y, side, squares } => code(surface, x, y, side, &squares),
        Mark::Picture { of, x, y, width, height } => {
            if let (Some(picture), Some(size)) = (pictures.get(of), Size::from_wh(width, height)) {
                surface.push_transform(&Transform::from_translate(x, y));
                surface.draw_image(picture.clone(), size);
                surface.pop();
            }
        }
        Mark::Turned { about: (x, y), marks } => {
            surface.push_transform(&Transform::from_row(-1.0, 0.0, 0.0, -1.0, 2.0 * x, 2.0 * y));
            for mark in marks {
                draw(surface, typefaces, pictures, mark);
            }
            surface.pop();
        }
    }
}

/// A circle as four curves; the share of the radius that brings each nearest to a quarter of it is 4/3 · (√2 − 1).
fn ring(x: f32, y: f32, r: f32) -> PathBuilder {
    let k = r * 4.0 / 3.0 * (2.0_f32.sqrt() - 1.0);
    let mut path = PathBuilder::new();
    path.move_to(x + r, y);
    path.cubic_to(x + r, y + k, x + k, y + r, x, y + r);
    path.cubic_to(x - k, y + r, x - r, y + k, x - r, y);
    path.cubic_to(x - r, y - k, x - k, y - r, x, y - r);
    path.cubic_to(x + k, y - r, x + r, y - k, x + r, y);
    path.close();
    path
}

/// All dark squares as one shape, so that no hairlines lie between them.
fn code(surface: &mut Surface<'_>, x: f32, y: f32, side: f32, squares: &Squares) {
    let square = side / squares.side as f32;
    let mut path = PathBuilder::new();
    for bar in &squares.bars {
        let (left, top) = (x + bar.x as f32 * square, y + bar.y as f32 * square);
        if let Some(bar) = Rect::from_xywh(left, top, bar.long as f32 * square, square) {
            path.push_rect(bar);
        }
    }
    surface.set_stroke(None);
    surface.set_fill(Some(Fill {
        paint: colour([0, 0, 0]).into(),
        opacity: NormalizedF32::ONE,
        rule: FillRule::default(),
    }));
    if let Some(path) = path.finish() {
        surface.draw_path(&path);
    }
}

fn stroke(surface: &mut Surface<'_>, path: PathBuilder, pen: marks::Stroke) {
    let dash = pen.dashed.then(|| StrokeDash { array: vec![3.0, 2.0], offset: 0.0 });
    surface.set_fill(None);
    surface.set_stroke(Some(Stroke { paint: colour(pen.colour).into(), width: pen.width, dash, ..Stroke::default() }));
    if let Some(path) = path.finish() {
        surface.draw_path(&path);
    }
}
