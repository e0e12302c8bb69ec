//! What comes in as a photo and is none, or is meant to fill the memory.

use std::io::Cursor;

use image::{DynamicImage, ImageFormat, Rgb, RgbImage, Rgba, RgbaImage};

use crate::{
    photo::{Photo, PhotoRefused, Point, Straightened, Tray, TrayRefused, find_corners, look},
    scene::Dice,
};

fn small() -> RgbImage {
    RgbImage::from_fn(120, 80, |x, y| match (x < 60, y < 40) {
        (true, true) => Rgb([220, 20, 20]),
        (false, true) => Rgb([20, 200, 20]),
        (true, false) => Rgb([20, 20, 220]),
        (false, false) => Rgb([240, 240, 240]),
    })
}

fn kept(picture: &DynamicImage, format: ImageFormat) -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    picture.write_to(&mut bytes, format).unwrap();
    bytes.into_inner()
}

/// A JPEG with an Exif note of how the camera was held (Exif 2.3, tag 0x0112).
fn held(orientation: u8) -> Vec<u8> {
    let jpeg = kept(&small().into(), ImageFormat::Jpeg);
    let mut note = b"Exif\0\0MM\0\x2a\0\0\0\x08\0\x01\x01\x12\0\x03\0\0\0\x01".to_vec();
    note.extend([0, orientation, 0, 0, 0, 0, 0, 0]);
    let mut bytes = vec![0xff, 0xd8, 0xff, 0xe1];
    bytes.extend((note.len() as u16 + 2).to_be_bytes());
    bytes.extend(note);
    bytes.extend(&jpeg[2..]);
    bytes
}

/// The eight ways to hold a camera (Exif 2.3, table of orientation): which corner of what was seen comes above left, and
/// which above right.
#[test]
fn a_photo_is_turned_as_the_camera_was_held() {
    let (red, green, blue, white) = (0, 1, 2, 3);
    let expected = [
        (1, red, green),
        (2, green, red),
        (3, white, blue),
        (4, blue, white),
        (5, red, blue),
        (6, blue, red),
        (7, white, green),
        (8, green, white),
    ];
    for (orientation, left, right) in expected {
        let photo = Photo::read(&held(orientation)).unwrap();
        let turned = orientation >= 5;
        assert_eq!((photo.width(), photo.height()), if turned { (80, 120) } else { (120, 80) }, "{orientation}");
        let named = |x: u32, y: u32| match photo.pixels().get_pixel(x, y).0 {
            [r, g, b] if r > 150 && g > 150 && b > 150 => white,
            [r, g, b] if r > g && r > b => red,
            [_, g, b] if g > b => green,
            _ => blue,
        };
        assert_eq!((named(10, 10), named(photo.width() - 10, 10)), (left, right), "{orientation}");
    }
    // A note that makes no sense counts as none.
    assert_eq!(Photo::read(&held(77)).unwrap().width(), 120);
}

#[test]
fn what_is_no_photo_is_refused_in_words() {
    assert_eq!(Photo::read(&[]).unwrap_err(), PhotoRefused::Empty);
    for other in [b"GIF89a\x01\0\x01\0\0\0\0".as_slice(), b"%PDF-1.7 and so on", b"<html>no photo</html>", &[0; 4000]] {
        assert_eq!(Photo::read(other).unwrap_err(), PhotoRefused::OtherFormat);
    }
    let tiny = kept(&RgbImage::new(20, 300).into(), ImageFormat::Png);
    assert_eq!(Photo::read(&tiny).unwrap_err(), PhotoRefused::TooSmall { width: 20, height: 300 });
    let many = vec![0xff; (64 << 20) + 1];
    assert_eq!(Photo::read(&many).unwrap_err(), PhotoRefused::TooManyBytes);
    assert!(PhotoRefused::TooLarge { width: 9, height: 7 }.to_string().contains("9 × 7"));
}

/// CRC-32 as PNG has it (ISO/IEC 15948, annex D).
fn crc(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(!0u32, |crc, byte| {
        (0..8).fold(crc ^ u32::from(*byte), |crc, _| if crc & 1 == 1 { (crc >> 1) ^ 0xedb8_8320 } else { crc >> 1 })
    })
}

/// A PNG that says that it is as large as this and has nothing in it.
fn boast(width: u32, height: u32, depth: u8, colour: u8) -> Vec<u8> {
    let mut head = b"IHDR".to_vec();
    head.extend(width.to_be_bytes());
    head.extend(height.to_be_bytes());
    head.extend([depth, colour, 0, 0, 0]);
    let mut bytes = b"\x89PNG\r\n\x1a\n\0\0\0\x0d".to_vec();
    bytes.extend(&head);
    bytes.extend(crc(&head).to_be_bytes());
    let data = b"IDAT\x78\x9c\x03\0\0\0\0\x01";
    bytes.extend((data.len() as u32 - 4).to_be_bytes());
    bytes.extend(data);
    bytes.extend(crc(data).to_be_bytes());
    bytes
}

#[test]
fn a_picture_that_would_fill_the_memory_is_refused_before_it_is_decoded() {
    assert_eq!(
        Photo::read(&boast(60_000, 60_000, 8, 2)).unwrap_err(),
        PhotoRefused::TooLarge { width: 60_000, height: 60_000 }
    );
    // Sixty megapixels with sixteen bits a colour and transparency would be half a gigabyte.
    assert_eq!(Photo::read(&boast(10_000, 5_900, 16, 6)).unwrap_err(), PhotoRefused::TooFine);
    assert_eq!(Photo::read(&boast(8000, 7000, 8, 2)).unwrap_err(), PhotoRefused::Damaged);
    // A JPEG whose frame says 65,500 by 65,500.
    let mut jpeg = kept(&small().into(), ImageFormat::Jpeg);
    let frame = jpeg.windows(2).position(|mark| mark == [0xff, 0xc0]).unwrap();
    jpeg[frame + 5..frame + 9].copy_from_slice(&[0xff, 0xdc, 0xff, 0xdc]);
    assert!(matches!(Photo::read(&jpeg), Err(PhotoRefused::TooLarge { .. } | PhotoRefused::Damaged)));
}

#[test]
fn cut_short_or_spoiled_nothing_panics() {
    let mut dice = Dice(5);
    for format in [ImageFormat::Jpeg, ImageFormat::Png, ImageFormat::WebP] {
        let whole = kept(&small().into(), format);
        assert!(Photo::read(&whole).is_ok(), "{format:?}");
        for end in (0..whole.len()).step_by(7) {
            let _ = Photo::read(&whole[..end]);
        }
        assert!(Photo::read(&whole[..whole.len() / 3]).is_err(), "a third of a {format:?} is none");
        for _ in 0..150 {
            let mut spoiled = whole.clone();
            for _ in 0..3 {
                let at = (dice.next() * spoiled.len() as f64) as usize;
                spoiled[at] = (dice.next() * 256.0) as u8;
            }
            let _ = Photo::read(&spoiled);
        }
    }
}

#[test]
fn what_shows_through_is_white_and_large_photos_are_reduced() {
    let clear = RgbaImage::from_pixel(100, 100, Rgba([200, 0, 0, 128]));
    let photo = Photo::read(&kept(&clear.into(), ImageFormat::Png)).unwrap();
    assert_eq!(photo.pixels().get_pixel(50, 50).0, [227, 127, 127]);
    let wide = RgbImage::from_pixel(5000, 100, Rgb([9, 9, 9]));
    let photo = Photo::read(&kept(&wide.into(), ImageFormat::Png)).unwrap();
    assert_eq!((photo.width(), photo.height()), (4096, 82));
}

/// Pictures in which there is no tray: one colour, noise, a chequerboard, and corners that make no tray.
#[test]
fn where_there_is_no_tray_none_is_made_up() {
    let mut dice = Dice(11);
    let noise = RgbImage::from_fn(300, 200, |_, _| Rgb(std::array::from_fn(|_| (dice.next() * 256.0) as u8)));
    let board = RgbImage::from_fn(300, 200, |x, y| Rgb([if (x / 20 + y / 20) % 2 == 0 { 250 } else { 5 }; 3]));
    for pixels in [RgbImage::from_pixel(300, 200, Rgb([120, 110, 90])), noise, board] {
        let photo = Photo::of(pixels);
        assert_eq!(find_corners(&photo), None);
        let whole = [(1.0, 1.0), (298.0, 1.0), (298.0, 198.0), (1.0, 198.0)].map(|(x, y)| Point::new(x, y));
        let tray = Tray { corners: whole, rows: 2, columns: 3, inner_width_mm: 120.0, inner_depth_mm: None };
        let straight = Straightened::new(&photo, tray).unwrap();
        for piece in look(&straight.compartment(1, 2)).pieces {
            assert!((0.0..=1.0).contains(&piece.confidence));
        }
    }
    let photo = Photo::of(small());
    let at = |corners: [(f64, f64); 4]| Tray {
        corners: corners.map(|(x, y)| Point::new(x, y)),
        rows: 4,
        columns: 4,
        inner_width_mm: 280.0,
        inner_depth_mm: None,
    };
    let square = [(10.0, 10.0), (100.0, 10.0), (100.0, 70.0), (10.0, 70.0)];
    assert!(Straightened::new(&photo, at(square)).is_ok());
    let crossed = [(10.0, 10.0), (100.0, 70.0), (100.0, 10.0), (10.0, 70.0)];
    let line = [(10.0, 10.0), (50.0, 10.0), (100.0, 10.0), (10.0, 70.0)];
    let none = [(f64::NAN, 10.0), (100.0, 10.0), (100.0, 70.0), (10.0, 70.0)];
    for corners in [crossed, line, none, [(5.0, 5.0); 4]] {
        assert_eq!(Straightened::new(&photo, at(corners)).err(), Some(TrayRefused::Corners));
    }
    for (rows, columns) in [(0, 4), (31, 2), (30, 30)] {
        assert_eq!(Straightened::new(&photo, Tray { rows, columns, ..at(square) }).err(), Some(TrayRefused::Grid));
    }
    for inner_width_mm in [0.0, -5.0, f64::NAN, 1e9] {
        let tray = Tray { inner_width_mm, ..at(square) };
        assert_eq!(Straightened::new(&photo, tray).err(), Some(TrayRefused::Width));
    }
}
