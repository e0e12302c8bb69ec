//! Photos as a phone sends them: bounded, turned upright, made as small as a tablet shows them.

use std::{io::Cursor, sync::Arc, time::Duration};

use axum::{
    extract::{Request, State},
    http::{HeaderMap, Method},
    middleware::Next,
    response::Response,
};
use image::{DynamicImage, ImageError, ImageFormat, codecs::jpeg::JpegEncoder};

use super::{connections::LongBody, cookies::session_of, seller::is_running, state::DeskState};
use crate::{
    disk::digest::sha256_hex,
    lang::{Message, message},
    ledger::Role,
    photo::{MOST_PIXELS, PhotoRefused, read_picture},
};

/// Pages to which photos are sent begin with this.
const WITH_PHOTOS: &str = "/table/";
/// The largest file of a photo, in bytes; one of 60 megapixels from a phone has less.
const LARGEST_FILE: usize = 40 * 1024 * 1024;
/// A phone's radio takes that long for one.
const TO_SEND: Duration = Duration::from_secs(90);
/// The longer side of a picture as it is kept, in pixels.
const KEPT_PX: u32 = 1024;
/// Of a hundred, how fine a kept photo is.
const FINENESS: u8 = 88;

/// Lets what may carry a photo be as long as one, if the seller in person sends it.
pub(super) async fn let_photos_in(State(desk): State<Arc<DeskState>>, mut request: Request, next: Next) -> Response {
    if request.method() == Method::POST
        && request.uri().path().starts_with(WITH_PHOTOS)
        && is_the_sellers(&desk, request.headers()).await
    {
        request.extensions_mut().insert(LongBody { bytes: LARGEST_FILE, within: TO_SEND });
    }
    next.run(request).await
}

async fn is_the_sellers(desk: &DeskState, headers: &HeaderMap) -> bool {
    let Some(token_hash) = session_of(headers) else { return false };
    let session = desk.ledger.peek(move |ledger| ledger.session(&token_hash)).await;
    let now = desk.clock.now();
    session.is_ok_and(|session| session.is_some_and(|one| one.role == Role::Seller && is_running(&one, now)))
}

/// A picture as it is kept: its file's name, which follows from what is in it, and its bytes.
#[derive(Debug)]
pub(super) struct Kept {
    pub name: String,
    pub bytes: Vec<u8>,
}

/// Makes a picture to keep of a photo; or says why it can't be, and what to do. Only one at a time is worked on: each may take
/// much memory (`photo_work`).
pub(super) fn kept(photo: &[u8]) -> Result<Kept, Message> {
    let picture = read_picture(photo, KEPT_PX).map_err(|refused| why(&refused))?;
    encoded(&picture).map_err(|_| message!("photo-unreadable"))
}

/// As a file: with what is transparent left so, else as a photo.
fn encoded(picture: &DynamicImage) -> Result<Kept, ImageError> {
    let mut bytes = Vec::new();
    let end = if picture.color().has_alpha() {
        picture.to_rgba8().write_to(&mut Cursor::new(&mut bytes), ImageFormat::Png)?;
        "png"
    } else {
        JpegEncoder::new_with_quality(&mut bytes, FINENESS).encode_image(&picture.to_rgb8())?;
        "jpg"
    };
    let name = format!("photo-{}.{end}", &sha256_hex(&bytes)[..16]);
    Ok(Kept { name, bytes })
}

/// Why a photo can't be read, with what to do.
pub(super) fn why(refused: &PhotoRefused) -> Message {
    let most = MOST_PIXELS / 1_000_000;
    match refused {
        PhotoRefused::Empty | PhotoRefused::OtherFormat => message!("photo-format"),
        PhotoRefused::TooLarge { width, height } => {
            message!("photo-too-large", n = u64::from(*width) * u64::from(*height) / 1_000_000, most = most)
        }
        PhotoRefused::TooManyBytes | PhotoRefused::TooFine => message!("photo-too-large", n = ">60", most = most),
        PhotoRefused::TooSmall { .. } => message!("photo-too-small"),
        PhotoRefused::Damaged => message!("photo-unreadable"),
    }
}

#[cfg(test)]
mod tests {
    use image::{ImageEncoder, Rgb, RgbImage, Rgba, RgbaImage};

    use super::*;

    fn words(photo: &[u8]) -> String {
        let texts = crate::lang::Texts::of(crate::lang::Lang::En);
        texts.say(&kept(photo).unwrap_err())
    }

    /// A photo of which the upper left quarter is red, as a JPEG that says by EXIF how it was held.
    fn held(orientation: u8) -> Vec<u8> {
        let mut photo = RgbImage::from_pixel(400, 300, Rgb([240, 240, 235]));
        for (x, y) in (0..200).flat_map(|x| (0..150).map(move |y| (x, y))) {
            photo.put_pixel(x, y, Rgb([200, 20, 20]));
        }
        let mut bytes = Vec::new();
        let mut encoder = JpegEncoder::new_with_quality(&mut bytes, 90);
        // Source: Exif 2.32 and TIFF 6.0 (from memory): little-endian, one entry 0x0112 (Orientation), SHORT, one value.
        let exif =
            [b"II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0".as_slice(), &[orientation, 0, 0, 0], &[0; 4]].concat();
        encoder.set_exif_metadata(exif).unwrap();
        encoder.encode_image(&photo).unwrap();
        bytes
    }

    /// Where the red quarter lies once the photo is upright. Source: Exif 2.32, table of Orientation (from memory).
    #[test]
    fn photos_are_turned_as_they_were_held() {
        for (orientation, width, red) in
            [(1, 400, (0.25, 0.25)), (3, 400, (0.75, 0.75)), (6, 300, (0.75, 0.25)), (8, 300, (0.25, 0.75))]
        {
            let kept = kept(&held(orientation)).unwrap();
            let picture = image::load_from_memory(&kept.bytes).unwrap().to_rgb8();
            assert_eq!(picture.width(), width, "{orientation}");
            let at = |x: f64, y: f64| {
                let (w, h) = (f64::from(picture.width()), f64::from(picture.height()));
                picture.get_pixel((x * w) as u32, (y * h) as u32).0
            };
            let [r, g, _] = at(red.0, red.1);
            assert!(r > 150 && g < 80, "{orientation}: {r} {g}");
            let [r, g, _] = at(1.0 - red.0, 1.0 - red.1);
            assert!(r > 200 && g > 200, "{orientation}: {r} {g}");
            assert!(kept.name.ends_with(".jpg"));
        }
    }

    #[test]
    fn large_photos_are_made_small_and_what_is_transparent_stays() {
        let large = RgbaImage::from_fn(3000, 2000, |x, _| Rgba([10, 200, 30, if x < 1500 { 0 } else { 255 }]));
        for format in [ImageFormat::Png, ImageFormat::WebP] {
            let mut bytes = Vec::new();
            large.write_to(&mut Cursor::new(&mut bytes), format).unwrap();
            let kept = kept(&bytes).unwrap();
            let picture = image::load_from_memory(&kept.bytes).unwrap().to_rgba8();
            assert_eq!((picture.width(), picture.height()), (1024, 683), "{format:?}");
            assert_eq!((picture.get_pixel(100, 300)[3], picture.get_pixel(900, 300)[3]), (0, 255));
            assert!(kept.name.ends_with(".png"));
        }
    }

    #[test]
    fn what_is_no_photo_is_refused_with_what_to_do() {
        assert!(words(b"").contains("JPEG"));
        assert!(words(b"%PDF-1.7").contains("JPEG"));
        assert!(words(b"\0\0\0\x18ftypheic\0\0\0\0mif1heic").contains("JPEG"), "a phone's own format");
        let good = held(1);
        assert!(words(&good[..good.len() / 3]).contains("again"));
        // A head that promises 100 megapixels is refused before anything is taken for it.
        let mut huge = Vec::new();
        let encoder = image::codecs::png::PngEncoder::new(&mut huge);
        encoder.write_image(&vec![0; 10_000 * 10_000], 10_000, 10_000, image::ExtendedColorType::L8).unwrap();
        assert!(words(&huge).contains("60"));
        let mut tiny = Vec::new();
        RgbImage::new(8, 8).write_to(&mut Cursor::new(&mut tiny), ImageFormat::Png).unwrap();
        assert!(words(&tiny).contains("small"));
    }
}
