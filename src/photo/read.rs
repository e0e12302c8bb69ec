//! A photo from the bytes of a file, in bounded memory: measured before it is decoded, and reduced as soon as it is.

use std::io::Cursor;

use image::{
    DynamicImage, ImageDecoder, ImageError, ImageFormat, ImageReader, Limits, RgbImage,
    imageops::{self, FilterType},
    metadata::Orientation,
};

/// Photos with more pixels than this are refused: larger than any phone takes.
pub const MOST_PIXELS: u64 = 60_000_000;

/// Bytes of a file at most. A photo of sixty megapixels at the finest grade of JPEG has about forty megabytes.
pub const MOST_BYTES: usize = 64 << 20;

/// The longer side of a photo once read: enough for ten pixels a millimetre on a tray of 40 cm.
const LONGEST_SIDE: u32 = 4096;

/// What the pixels of a decoded photo may take: sixty megapixels in three colours, or with transparency.
const MOST_DECODED_BYTES: u64 = MOST_PIXELS * 4;

/// What a decoder may take besides, as a progressive JPEG does.
const MOST_WORKING_BYTES: u64 = MOST_PIXELS * 6;

/// A photo as it is worked with: upright, opaque, its longer side at most 4096 pixels.
#[derive(Debug, Clone)]
pub struct Photo {
    pub(super) pixels: RgbImage,
}

/// Why a file is no photo that can be worked with.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PhotoRefused {
    /// There is nothing in it.
    #[error("nothing has come; choose a photo")]
    Empty,
    /// The file has more bytes than any photo.
    #[error("the file has more than 64 megabytes; take the photo at the phone's usual size")]
    TooManyBytes,
    /// Neither of the three formats.
    #[error(
        "this is neither JPEG nor PNG nor WebP; save the photo as JPEG, or take it with the phone's camera from this page"
    )]
    OtherFormat,
    /// More pixels than can be held.
    #[error("the photo has {width} × {height} pixels, more than 60 million; take it at the phone's usual size")]
    TooLarge {
        /// Pixels in a row.
        width: u32,
        /// Pixels in a column.
        height: u32,
    },
    /// Too few pixels to see anything.
    #[error("the photo has only {width} × {height} pixels; take a larger one")]
    TooSmall {
        /// Pixels in a row.
        width: u32,
        /// Pixels in a column.
        height: u32,
    },
    /// Sixteen bits a colour at a size that only eight have room for.
    #[error("the photo has more bytes in its pixels than there is room for; save it as JPEG")]
    TooFine,
    /// It begins like a photo and does not go on like one.
    #[error("the file is damaged or not whole; choose the photo again, or take a new one")]
    Damaged,
}

/// The least side of a photo, in pixels.
const LEAST_SIDE: u32 = 64;

/// A file's picture, not yet turned, and how the camera was held.
fn decoded(bytes: &[u8]) -> Result<(DynamicImage, Orientation), PhotoRefused> {
    if bytes.is_empty() {
        return Err(PhotoRefused::Empty);
    }
    if bytes.len() > MOST_BYTES {
        return Err(PhotoRefused::TooManyBytes);
    }
    let mut reader =
        ImageReader::new(Cursor::new(bytes)).with_guessed_format().map_err(|_| PhotoRefused::OtherFormat)?;
    if !matches!(reader.format(), Some(ImageFormat::Jpeg | ImageFormat::Png | ImageFormat::WebP)) {
        return Err(PhotoRefused::OtherFormat);
    }
    if reader.format() == Some(ImageFormat::Jpeg) && is_cut_off(bytes) {
        return Err(PhotoRefused::Damaged);
    }
    let mut limits = Limits::default();
    limits.max_alloc = Some(MOST_WORKING_BYTES);
    reader.limits(limits);
    let mut decoder = reader.into_decoder().map_err(|error| refused(&error))?;
    let (width, height) = decoder.dimensions();
    if u64::from(width) * u64::from(height) > MOST_PIXELS {
        return Err(PhotoRefused::TooLarge { width, height });
    }
    if width.min(height) < LEAST_SIDE {
        return Err(PhotoRefused::TooSmall { width, height });
    }
    if decoder.total_bytes() > MOST_DECODED_BYTES {
        return Err(PhotoRefused::TooFine);
    }
    // A note on how the camera was held that can't be read counts as none.
    let orientation = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    let picture = DynamicImage::from_decoder(decoder).map_err(|error| refused(&error))?;
    Ok((picture, orientation))
}

/// Whether a JPEG lacks its end, which its decoder would fill with grey. The mark of the end stands in no picture's data; a
/// small preview at the head has one of its own. Source: ITU-T T.81, B.1.1 (from memory).
fn is_cut_off(jpeg: &[u8]) -> bool {
    !jpeg[jpeg.len() / 2..].windows(2).any(|two| two == [0xff, 0xd9])
}

/// Reads a JPEG, PNG or WebP of up to sixty megapixels as a picture to keep: upright, its longer side at most `side` pixels,
/// with what is transparent left so. Of what the camera noted beside it, nothing is left.
///
/// # Errors
/// It is none of these, too large, too small or damaged.
pub fn read_picture(bytes: &[u8], side: u32) -> Result<DynamicImage, PhotoRefused> {
    let (mut picture, orientation) = decoded(bytes)?;
    if picture.width().max(picture.height()) > side {
        picture = picture.thumbnail(2 * side, 2 * side).resize(side, side, FilterType::Triangle);
    }
    picture.apply_orientation(orientation);
    Ok(picture)
}

impl Photo {
    /// Reads a JPEG, PNG or WebP of up to sixty megapixels, turned as the camera says that it was held.
    ///
    /// # Errors
    /// It is none of these, too large, too small or damaged.
    pub fn read(bytes: &[u8]) -> Result<Self, PhotoRefused> {
        let (picture, orientation) = decoded(bytes)?;
        let mut small = DynamicImage::ImageRgb8(reduced(opaque(picture)));
        small.apply_orientation(orientation);
        Ok(Self { pixels: small.into_rgb8() })
    }

    /// A photo of pixels that are at hand.
    pub fn of(pixels: RgbImage) -> Self {
        Self { pixels: reduced(pixels) }
    }

    /// Pixels in a row.
    pub fn width(&self) -> u32 {
        self.pixels.width()
    }

    /// Pixels in a column.
    pub fn height(&self) -> u32 {
        self.pixels.height()
    }

    /// The pixels, to be shown or kept for as long as the tray is worked on.
    pub fn pixels(&self) -> &RgbImage {
        &self.pixels
    }

    /// The photo with its longer side at most so many pixels.
    pub fn at_most(&self, side: u32) -> RgbImage {
        fitted(&self.pixels, side).unwrap_or_else(|| self.pixels.clone())
    }
}

fn refused(error: &ImageError) -> PhotoRefused {
    match error {
        ImageError::Limits(_) => PhotoRefused::TooFine,
        ImageError::Unsupported(_) => PhotoRefused::OtherFormat,
        _ => PhotoRefused::Damaged,
    }
}

/// Without transparency: what shows through is white.
fn opaque(decoded: DynamicImage) -> RgbImage {
    if !decoded.color().has_alpha() {
        return decoded.into_rgb8();
    }
    let rgba = decoded.into_rgba8();
    let (width, height) = rgba.dimensions();
    // In place, so that no second photo of sixty megapixels is held.
    let mut bytes = rgba.into_raw();
    let pixels = bytes.len() / 4;
    for i in 0..pixels {
        let alpha = u32::from(bytes[4 * i + 3]);
        for c in 0..3 {
            let colour = u32::from(bytes[4 * i + c]);
            bytes[3 * i + c] = ((colour * alpha + 255 * (255 - alpha) + 127) / 255) as u8;
        }
    }
    bytes.truncate(3 * pixels);
    RgbImage::from_raw(width, height, bytes).unwrap_or_default()
}

fn reduced(pixels: RgbImage) -> RgbImage {
    fitted(&pixels, LONGEST_SIDE).unwrap_or(pixels)
}

/// The pixels with the longer side reduced to `side`, where it is longer.
fn fitted(pixels: &RgbImage, side: u32) -> Option<RgbImage> {
    let (width, height) = pixels.dimensions();
    let longest = width.max(height);
    if longest <= side {
        return None;
    }
    let of = |n: u32| ((u64::from(n) * u64::from(side) + u64::from(longest) / 2) / u64::from(longest)).max(1) as u32;
    Some(imageops::thumbnail(pixels, of(width), of(height)))
}
