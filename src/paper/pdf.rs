//! Pages as a PDF file: the typefaces in it as far as they are used, the words to be copied, title and language set.

use krilla::{
    color::rgb,
    geom::{PathBuilder, Point, Rect, Size, Transform},
    image::Image,
    metadata::Metadata,
    num::NormalizedF32,
    page::PageSettings,
    paint::{Fill, FillRule, Stroke},
    surface::Surface,
};

use super::{
    document::{Document, PaperError, Sheet},
    layout::{INK, LINE, Mark, Rgb, pages},
    typeface::Typefaces,
};
use crate::qr::Squares;

/// `document` as a PDF file.
///
/// # Errors
/// The file can't be made.
pub fn pdf(document: &Document, sheet: Sheet) -> Result<Vec<u8>, PaperError> {
    let picture = document.picture.as_ref().and_then(|png| Image::from_png(png.clone().into(), true).ok());
    let typefaces = Typefaces::all()?;
    let (width, height) = sheet.points();
    let mut file = krilla::Document::new();
    for marks in pages(document, sheet, picture.as_ref().map(Image::size))? {
        let settings = PageSettings::from_wh(width, height).ok_or_else(|| PaperError::Pdf("no such sheet".into()))?;
        let mut page = file.start_page_with(settings);
        let mut surface = page.surface();
        for mark in marks {
            draw(&mut surface, &typefaces, picture.as_ref(), mark);
        }
        surface.finish();
        page.finish();
    }
    file.set_metadata(
        Metadata::new()
            .title(document.title.clone())
            .language(document.language.to_owned())
            .creator("Chatelaine".to_owned()),
    );
    file.finish().map_err(|error| PaperError::Pdf(format!("{error:?}")))
}

fn colour([red, green, blue]: Rgb) -> rgb::Color {
    rgb::Color::new(red, green, blue)
}

fn draw(surface: &mut Surface<'_>, typefaces: &Typefaces, picture: Option<&Image>, mark: Mark) {
    match mark {
        Mark::Words { x, y, style, size, colour: of, text } => {
            let set = typefaces.set(style, &text);
            let fill = Fill { paint: colour(of).into(), opacity: NormalizedF32::ONE, rule: FillRule::default() };
            surface.set_fill(Some(fill));
            surface.set_stroke(None);
            surface.draw_glyphs(Point::from_xy(x, y), &set.glyphs, set.font, &text, size, false);
        }
        Mark::Line { left, right, y } => {
            let mut path = PathBuilder::new();
            path.move_to(left, y);
            path.line_to(right, y);
            stroke(surface, path, LINE, 0.6);
        }
        Mark::Square { x, y, side } => {
            let mut path = PathBuilder::new();
            if let Some(square) = Rect::from_xywh(x, y, side, side) {
                path.push_rect(square);
            }
            stroke(surface, path, INK, 0.9);
        }
        Mark::Code { x, y, side, squares } => code(surface, x, y, side, &squares),
        Mark::Picture { x, y, width, height } => {
            if let (Some(picture), Some(size)) = (picture, Size::from_wh(width, height)) {
                surface.push_transform(&Transform::from_translate(x, y));
                surface.draw_image(picture.clone(), size);
                surface.pop();
            }
        }
    }
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

fn stroke(surface: &mut Surface<'_>, path: PathBuilder, of: Rgb, width: f32) {
    surface.set_fill(None);
    surface.set_stroke(Some(Stroke { paint: colour(of).into(), width, ..Stroke::default() }));
    if let Some(path) = path.finish() {
        surface.draw_path(&path);
    }
}
