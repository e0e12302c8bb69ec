//! The typefaces in the program, and how words are set in them.

use std::sync::{Arc, LazyLock};

use krilla::text::{Font, GlyphId, KrillaGlyph};
use rustybuzz::{Face, Feature, UnicodeBuffer, ttf_parser::Tag};

use super::document::PaperError;

/// A sans for learning readers.
pub static SANS: &[u8] = include_bytes!("../../assets/fonts/andika-regular.ttf");
/// The same, bold.
pub static SANS_BOLD: &[u8] = include_bytes!("../../assets/fonts/andika-bold.ttf");
/// A serif for names and the total.
pub static SERIF: &[u8] = include_bytes!("../../assets/fonts/serif-semibold.ttf");

/// Which typeface.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Style {
    Sans,
    Bold,
    Serif,
}

/// A typeface that words are set in.
struct Typeface {
    font: Font,
    face: Face<'static>,
    features: Vec<Feature>,
}

/// All of them.
pub(super) struct Typefaces([Typeface; 3]);

static ALL: LazyLock<Option<Arc<Typefaces>>> = LazyLock::new(|| {
    // The serif's own figures have different heights, which suits a text and no sum.
    let level = vec![Feature::new(Tag::from_bytes(b"lnum"), 1, ..), Feature::new(Tag::from_bytes(b"tnum"), 1, ..)];
    let read = |bytes: &'static [u8], features| {
        Some(Typeface { font: Font::new(bytes.into(), 0)?, face: Face::from_slice(bytes, 0)?, features })
    };
    Some(Arc::new(Typefaces([read(SANS, vec![])?, read(SANS_BOLD, vec![])?, read(SERIF, level)?])))
});

/// Words as they are set, at the size of one.
pub(super) struct Set {
    pub font: Font,
    pub glyphs: Vec<KrillaGlyph>,
    width: f32,
}

impl Typefaces {
    /// The program's own.
    pub(super) fn all() -> Result<Arc<Self>, PaperError> {
        ALL.clone().ok_or(PaperError::Typeface)
    }

    fn of(&self, style: Style) -> &Typeface {
        let [sans, bold, serif] = &self.0;
        match style {
            Style::Sans => sans,
            Style::Bold => bold,
            Style::Serif => serif,
        }
    }

    /// Sets `text`. A letter that the typeface does not have is an empty box, from which it can be copied all the same.
    pub(super) fn set(&self, style: Style, text: &str) -> Set {
        let typeface = self.of(style);
        let mut buffer = UnicodeBuffer::new();
        buffer.push_str(text);
        buffer.guess_segment_properties();
        let shaped = rustybuzz::shape(&typeface.face, &typeface.features, buffer);
        let em = typeface.font.units_per_em();
        let starts: Vec<usize> = shaped.glyph_infos().iter().map(|info| info.cluster as usize).collect();
        let mut width = 0.0;
        let mut glyphs = Vec::with_capacity(shaped.len());
        for (info, position) in shaped.glyph_infos().iter().zip(shaped.glyph_positions()) {
            let from = info.cluster as usize;
            let to = starts.iter().copied().filter(|start| *start > from).min().unwrap_or(text.len());
            let part = |units: i32| units as f32 / em;
            width += part(position.x_advance);
            glyphs.push(KrillaGlyph::new(
                GlyphId::new(info.glyph_id),
                part(position.x_advance),
                part(position.x_offset),
                part(position.y_offset),
                part(position.y_advance),
                from..to,
                None,
            ));
        }
        Set { font: typeface.font.clone(), glyphs, width }
    }

    /// How wide `text` is at a size, both in points.
    pub(super) fn width(&self, style: Style, size: f32, text: &str) -> f32 {
        self.set(style, text).width * size
    }
}
