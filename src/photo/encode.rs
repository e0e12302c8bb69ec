//! Pictures as the bytes of files. What the camera noted beside them is not in the pixels, and so in none of these.

use std::io::Cursor;

use image::{
    ImageError, RgbImage, RgbaImage,
    codecs::{
        jpeg::JpegEncoder,
        png::{CompressionType, FilterType, PngEncoder},
    },
};

/// Of a hundred, how fine a kept photo is.
const FINENESS: u8 = 90;

/// A cut-out as a PNG file.
///
/// # Errors
/// It has no pixels.
pub fn png(picture: &RgbaImage) -> Result<Vec<u8>, ImageError> {
    let mut bytes = Cursor::new(Vec::new());
    let encoder = PngEncoder::new_with_quality(&mut bytes, CompressionType::Default, FilterType::Adaptive);
    picture.write_with_encoder(encoder)?;
    Ok(bytes.into_inner())
}

/// A photo as a JPEG file.
///
/// # Errors
/// It has no pixels, or more in a row than such a file can have.
pub fn jpeg(picture: &RgbImage) -> Result<Vec<u8>, ImageError> {
    let mut bytes = Vec::new();
    JpegEncoder::new_with_quality(&mut bytes, FINENESS).encode_image(picture)?;
    Ok(bytes)
}
