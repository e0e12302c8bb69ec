//! Pictures made for the pages: portraits of pieces, and small copies of large photos.

use std::{
    collections::HashMap,
    io::Cursor,
    sync::{Arc, Mutex, PoisonError},
};

use axum::{
    http::{HeaderMap, HeaderValue, StatusCode, header},
    response::{IntoResponse, Response},
};

use image::{
    DynamicImage, Rgba, RgbaImage,
    codecs::{
        jpeg::JpegEncoder,
        png::{self, CompressionType, PngEncoder},
    },
    imageops::FilterType,
};

use crate::{
    catalog::{Loaded, Picture},
    craft::{BaseKind, Piece},
    disk::digest::sha256_hex,
    portrait::portrait_png,
};

/// Pictures kept at once; a show has fewer pieces and drops than this in view.
const KEPT: usize = 400;
/// A drop's picture on a page, and the drops in the list, are never larger than this on their longer side: twice what they are
/// shown as, for fine screens.
const SMALL_SIDE_PX: u32 = 200;

/// The ground on which pictures stand in the list; the same as in `assets/desk/desk.css`.
const GROUND: [u8; 4] = [0xFB, 0xF6, 0xEA, 0xFF];
/// At this quality nobody sees what was left out of a small picture.
const GOOD_ENOUGH: u8 = 82;

/// Sizes of a portrait, in pixels.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum PortraitSize {
    /// Beside a number in the list.
    Small,
    /// The whole piece on the ticket's own page.
    Large,
    /// The drops alone, near enough to compare them with the piece in the hand.
    Close,
    /// The drops alone, as small as they can be told apart in the list.
    Near,
}

impl PortraitSize {
    /// All sizes that a page asks for.
    pub(super) const ALL: [Self; 4] = [Self::Small, Self::Large, Self::Close, Self::Near];

    /// Its name in addresses.
    pub(super) const fn name(self) -> &'static str {
        match self {
            Self::Small => "small",
            Self::Large => "large",
            Self::Close => "close",
            Self::Near => "near",
        }
    }

    /// What kind of file it is.
    const fn media_type(self) -> &'static str {
        match self {
            Self::Small | Self::Large | Self::Close => "image/png",
            Self::Near => "image/jpeg",
        }
    }

    /// Width and height of the drawing.
    pub(super) const fn px(self) -> (u32, u32) {
        match self {
            Self::Small => (180, 220),
            Self::Large => (540, 660),
            Self::Close => (1620, 1980),
            Self::Near => (540, 660),
        }
    }
}

/// The pictures made so far, by what they show.
#[derive(Default)]
pub(super) struct Gallery {
    made: Mutex<HashMap<String, Arc<Vec<u8>>>>,
    // One at a time: the desk has other work for its processor.
    making: tokio::sync::Mutex<()>,
}

/// Changes exactly when the portrait does.
pub(super) fn portrait_tag(loaded: &Loaded, piece: &Piece, size: PortraitSize) -> String {
    let mut tag = sha256_hex(format!("{}{piece:?}{size:?}", loaded.revision));
    tag.truncate(16);
    tag
}

/// Whether a nearer look at the drops shows more than the whole piece: on a necklace they are small beside the chain.
pub(super) fn shows_drops(loaded: &Loaded, piece: &Piece) -> bool {
    let base = loaded.catalog.base(&piece.base);
    !piece.drops.is_empty() && base.is_some_and(|base| matches!(base.kind, BaseKind::Necklace(_)))
}

impl Gallery {
    /// The picture called `tag`, made by `make` unless it was made before; `None` when it can't be made.
    async fn get(&self, tag: &str, make: impl FnOnce() -> Option<Vec<u8>> + Send + 'static) -> Option<Arc<Vec<u8>>> {
        let find = || self.made.lock().unwrap_or_else(PoisonError::into_inner).get(tag).cloned();
        if let Some(found) = find() {
            return Some(found);
        }
        let _one_at_a_time = self.making.lock().await;
        if let Some(found) = find() {
            return Some(found);
        }
        let made = Arc::new(tokio::task::spawn_blocking(make).await.ok()??);
        let mut all = self.made.lock().unwrap_or_else(PoisonError::into_inner);
        if all.len() >= KEPT {
            all.clear();
        }
        all.insert(tag.to_owned(), Arc::clone(&made));
        Some(made)
    }

    /// The portrait of `piece`; a plain sign where the catalogue can't make it any more.
    pub(super) async fn portrait(
        &self,
        loaded: Arc<Loaded>,
        piece: Piece,
        size: PortraitSize,
        asked: &HeaderMap,
    ) -> Response {
        let tag = portrait_tag(&loaded, &piece, size);
        if is_known(asked, &tag) {
            return not_modified(&tag, PIECE_KEPT);
        }
        let made = self.get(&tag, move || drawn(&loaded, &piece, size)).await;
        match made {
            Some(picture) => answer(size.media_type(), &tag, PIECE_KEPT, picture.to_vec()),
            None => ([(header::CONTENT_TYPE, "image/svg+xml")], NO_PICTURE).into_response(),
        }
    }

    /// A drop's picture, made smaller if it is a large photo.
    pub(super) async fn drop_picture(&self, name: &str, picture: &Picture, asked: &HeaderMap) -> Response {
        let tag = &picture.sha256[..16];
        if is_known(asked, tag) {
            return not_modified(tag, DROP_KEPT);
        }
        if picture.width_px.max(picture.height_px) > SMALL_SIDE_PX {
            let large = picture.clone();
            if let Some(png) = self.get(tag, move || smaller(&large.read().ok()?)).await {
                return answer("image/png", tag, DROP_KEPT, png.to_vec());
            }
        }
        match whole(picture).await {
            Some(bytes) => answer(content_type(name), tag, DROP_KEPT, bytes),
            None => StatusCode::NOT_FOUND.into_response(),
        }
    }
}

/// A picture's file as the catalogue has it, read off the threads that answer.
pub(super) async fn whole(picture: &Picture) -> Option<Vec<u8>> {
    let picture = picture.clone();
    match tokio::task::spawn_blocking(move || picture.read()).await {
        Ok(Ok(bytes)) => Some(bytes),
        Ok(Err(error)) => {
            tracing::warn!("a picture can't be had: {error}");
            None
        }
        Err(_) => None,
    }
}

/// The media type of a catalogue picture; the reader takes PNG and JPEG only.
pub(super) fn content_type(name: &str) -> &'static str {
    if name.to_ascii_lowercase().ends_with(".png") { "image/png" } else { "image/jpeg" }
}

/// A portrait as a picture's file; none where the catalogue can't make the piece any more.
pub(super) fn drawn(loaded: &Loaded, piece: &Piece, size: PortraitSize) -> Option<Vec<u8>> {
    let (width, height) = size.px();
    match portrait_png(&loaded.catalog, &loaded.pictures, piece, width, height) {
        Ok(png) if size == PortraitSize::Close => lower_part(&png),
        Ok(png) if size == PortraitSize::Near => lower_part(&png).and_then(|part| on_the_ground(&part)),
        Ok(png) => Some(png),
        Err(error) => {
            tracing::warn!("no portrait: {error}");
            None
        }
    }
}

/// What hangs in the lower part of a portrait, without the empty ground around it.
fn lower_part(png: &[u8]) -> Option<Vec<u8>> {
    let whole = image::load_from_memory(png).ok()?.into_rgba8();
    let filled = |from: u32| {
        whole.enumerate_pixels().filter(move |(_, y, pixel)| *y >= from && pixel.0[3] > 24).map(|(x, y, _)| (x, y))
    };
    let top = filled(0).map(|(_, y)| y).min()?;
    let bottom = filled(0).map(|(_, y)| y).max()?;
    // Drops are at most about a fifth as long as the necklace they hang on; a third shows the chain's ends as well.
    let from = bottom - (bottom - top) / 3;
    let left = filled(from).map(|(x, _)| x).min()?;
    let right = filled(from).map(|(x, _)| x).max()?;
    let part = image::imageops::crop_imm(&whole, left, from, right - left + 1, bottom - from + 1).to_image();
    let mut png = Cursor::new(Vec::new());
    part.write_to(&mut png, image::ImageFormat::Png).ok()?;
    Some(png.into_inner())
}

/// Small, and on the list's own ground: so it weighs a quarter of what it does with a ground that lets others through, and
/// a list of them comes over a thin line too.
fn on_the_ground(part: &[u8]) -> Option<Vec<u8>> {
    let small = in_small(part)?.into_rgba8();
    let mut whole = RgbaImage::from_pixel(small.width(), small.height(), Rgba(GROUND));
    image::imageops::overlay(&mut whole, &small, 0, 0);
    let mut jpeg = Vec::new();
    let encoder = JpegEncoder::new_with_quality(&mut jpeg, GOOD_ENOUGH);
    DynamicImage::from(whole).into_rgb8().write_with_encoder(encoder).ok()?;
    Some(jpeg)
}

fn in_small(bytes: &[u8]) -> Option<DynamicImage> {
    let whole = image::load_from_memory(bytes).ok()?;
    Some(whole.resize(SMALL_SIDE_PX, SMALL_SIDE_PX, FilterType::CatmullRom))
}

fn smaller(bytes: &[u8]) -> Option<Vec<u8>> {
    let picture = in_small(bytes)?;
    let mut png = Vec::new();
    let encoder = PngEncoder::new_with_quality(&mut png, CompressionType::Best, png::FilterType::Adaptive);
    picture.write_with_encoder(encoder).ok()?;
    Some(png)
}

fn is_known(asked: &HeaderMap, tag: &str) -> bool {
    asked.get(header::IF_NONE_MATCH).and_then(|value| value.to_str().ok()).is_some_and(|known| known.contains(tag))
}

/// What a guest made is kept in no browser: a signed-out one must not show it.
const PIECE_KEPT: &str = "no-store";
/// The addresses carry the tag as well, so a browser need not ask twice in a show.
const DROP_KEPT: &str = "private, max-age=86400";

fn headers_of(tag: &str, kept: &'static str) -> [(header::HeaderName, HeaderValue); 2] {
    let quoted = HeaderValue::from_str(&format!("\"{tag}\"")).unwrap_or(HeaderValue::from_static("\"\""));
    [(header::ETAG, quoted), (header::CACHE_CONTROL, HeaderValue::from_static(kept))]
}

fn not_modified(tag: &str, kept: &'static str) -> Response {
    (StatusCode::NOT_MODIFIED, headers_of(tag, kept)).into_response()
}

fn answer(kind: &'static str, tag: &str, kept: &'static str, bytes: Vec<u8>) -> Response {
    (headers_of(tag, kept), [(header::CONTENT_TYPE, kind)], bytes).into_response()
}

const NO_PICTURE: &str = r##"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 180 220"><path d="M30 30c0 160 120 160 120 0" fill="none" stroke="#8A6A2F" stroke-width="4" stroke-dasharray="2 9" stroke-linecap="round"/></svg>"##;
