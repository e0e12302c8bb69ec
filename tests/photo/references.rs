//! Published values: Otsu's threshold, the homography of four points, measures of plain shapes. Made with numpy 2.4,
//! scikit-image 0.26 and OpenCV 5.0 where nothing else is said.

use image::{GrayImage, Luma};
use imageproc::{
    contrast::otsu_level,
    region_labelling::{Connectivity, connected_components},
};

use crate::photo::{Homography, Point, Shape};

fn near(found: f64, expected: f64, within: f64) {
    assert!((found - expected).abs() <= within, "{found} for {expected}");
}

/// A bank card of ISO/IEC 7810 ID-1 at four corners of a photo.
fn card() -> ([Point; 4], [Point; 4]) {
    let px = [(100.0, 120.0), (520.0, 150.0), (500.0, 430.0), (80.0, 380.0)].map(|(x, y)| Point::new(x, y));
    let mm = [(0.0, 0.0), (85.6, 0.0), (85.6, 53.98), (0.0, 53.98)].map(|(x, y)| Point::new(x, y));
    (px, mm)
}

#[test]
fn four_points_give_the_published_homography() {
    let (px, mm) = card();
    let to_mm = Homography::from_points(px, mm).unwrap();
    let expected = [
        [0.222865862750, 0.017143527904, -24.343809623455],
        [-0.015118708418, 0.211661917846, -23.887559299717],
        [0.000183456852, 0.000027409408, 1.0],
    ];
    for (found, expected) in to_mm.rows().into_iter().flatten().zip(expected.into_iter().flatten()) {
        near(found, expected, 1e-11);
    }
    let back = to_mm.inverse().unwrap();
    let expected = [
        [4.476288789775, -0.375506011533, 100.0],
        [0.226355770595, 4.792856263671, 120.0],
        [-0.000827410127, -0.000062480202, 1.0],
    ];
    for (found, expected) in back.rows().into_iter().flatten().zip(expected.into_iter().flatten()) {
        near(found, expected, 1e-9);
    }
    let cases = [
        ((300.0, 270.0), (44.37409023, 27.03739599)),
        ((400.0, 200.0), (63.24356147, 11.49109967)),
        ((600.0, 300.0), (102.40461451, 27.30919677)),
        ((310.0, 135.0), (44.37132867, 0.0)),
    ];
    for ((x, y), (u, v)) in cases {
        let found = to_mm.at(Point::new(x, y));
        near(found.x, u, 1e-8);
        near(found.y, v, 1e-8);
    }
    let middle = back.at(Point::new(42.8, 26.99));
    near(middle.x, 292.29422067, 1e-8);
    near(middle.y, 269.02802102, 1e-8);
    let length = |a: (f64, f64), b: (f64, f64)| to_mm.at(Point::new(a.0, a.1)).to(to_mm.at(Point::new(b.0, b.1)));
    near(length((250.0, 200.0), (250.0, 260.0)), 12.07432486, 1e-8);
    near(length((250.0, 200.0), (350.0, 200.0)), 20.33414431, 1e-8);
}

/// By hand: the unit square to (0,0), (4,0), (3,2), (1,2) is [[4,2,0],[0,4,0],[0,1,1]], its middle goes to (2, 4/3).
#[test]
fn the_homography_of_a_trapezium_is_exact_and_three_points_on_a_line_have_none() {
    let square = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)].map(|(x, y)| Point::new(x, y));
    let to = [(0.0, 0.0), (4.0, 0.0), (3.0, 2.0), (1.0, 2.0)].map(|(x, y)| Point::new(x, y));
    let found = Homography::from_points(square, to).unwrap();
    for (found, expected) in found.rows().into_iter().flatten().zip([4.0, 2.0, 0.0, 0.0, 4.0, 0.0, 0.0, 1.0, 1.0]) {
        near(found, expected, 1e-12);
    }
    let middle = found.at(Point::new(0.5, 0.5));
    near(middle.x, 2.0, 1e-12);
    near(middle.y, 4.0 / 3.0, 1e-12);
    let line = [(0.0, 0.0), (1.0, 0.0), (2.0, 0.0), (0.0, 1.0)].map(|(x, y)| Point::new(x, y));
    assert!(Homography::from_points(line, to).is_none_or(|map| map.inverse().is_none()));
}

/// Six grey levels of 8, 7, 2, 6, 9 and 4 pixels: the last level of the ground is 2. Two spikes and two triangles as
/// scikit-image and OpenCV judge them.
#[test]
fn otsus_threshold_is_the_published_one() {
    let of = |counts: &[(u8, usize)]| {
        let pixels: Vec<u8> = counts.iter().flat_map(|&(level, n)| std::iter::repeat_n(level, n)).collect();
        otsu_level(&GrayImage::from_raw(pixels.len() as u32, 1, pixels).unwrap())
    };
    assert_eq!(of(&[(0, 8), (1, 7), (2, 2), (3, 6), (4, 9), (5, 4)]), 2);
    assert_eq!(of(&[(60, 600), (180, 400)]), 60);
    let triangle = |first: u8| (0..21u8).map(move |i| (first + i, usize::from(11 - i.abs_diff(10))));
    assert_eq!(of(&triangle(40).chain(triangle(190)).collect::<Vec<_>>()), 60);
}

fn drawn(shows: impl Fn(f64, f64) -> bool) -> Shape {
    let mask = GrayImage::from_fn(300, 200, |x, y| Luma([if shows(f64::from(x), f64::from(y)) { 255 } else { 0 }]));
    Shape::of(&mask, 1.0).unwrap()
}

#[test]
fn shapes_measure_what_image_libraries_say() {
    let from = |x: f64, y: f64| (x - 80.0).powi(2) + (y - 100.0).powi(2);
    let disc = drawn(|x, y| from(x, y) <= 1600.0);
    assert_eq!((disc.area, disc.bounds, disc.holes.len()), (5025.0, [40, 60, 121, 141], 0));
    near(disc.middle.x, 80.0, 1e-9);
    near(disc.middle.y, 100.0, 1e-9);
    near(disc.axes.0, 79.98829765, 1e-6);
    near(disc.axes.1, 79.98829765, 1e-6);
    let rectangle = drawn(|x, y| (160.0..=259.0).contains(&x) && (70.0..=129.0).contains(&y));
    assert_eq!((rectangle.area, rectangle.bounds), (6000.0, [160, 70, 260, 130]));
    near(rectangle.middle.x, 209.5, 1e-9);
    near(rectangle.middle.y, 99.5, 1e-9);
    near(rectangle.axes.0, 115.46428019, 1e-6);
    near(rectangle.axes.1, 69.27240913, 1e-6);
    let ring = drawn(|x, y| from(x, y) <= 1600.0 && from(x, y) > 400.0);
    assert_eq!((ring.area, ring.holes.len(), ring.holes[0].area), (3768.0, 1, 1257.0));
    near(ring.axes.0, 89.43455304, 1e-6);
    let (sin, cos) = 30.0f64.to_radians().sin_cos();
    let ellipse = drawn(|x, y| {
        let (x, y) = (x - 150.0, y - 100.0);
        ((x * cos + y * sin) / 80.0).powi(2) + ((y * cos - x * sin) / 30.0).powi(2) <= 1.0
    });
    assert_eq!(ellipse.area, 7539.0);
    near(ellipse.axes.0, 159.930394, 1e-5);
    near(ellipse.axes.1, 60.018812, 1e-5);
    // As it was drawn, up to what whole pixels make of it.
    near(ellipse.lies_degrees, 30.0, 0.1);
}

#[test]
fn parts_are_joined_as_image_libraries_join_them() {
    let rows = [[1, 1, 0, 0, 0, 1], [0, 1, 0, 1, 0, 1], [0, 0, 1, 0, 0, 0], [1, 0, 0, 0, 1, 1], [1, 0, 1, 0, 1, 0u8]];
    let mask = GrayImage::from_fn(6, 5, |x, y| Luma([rows[y as usize][x as usize]]));
    let sizes = |connectivity| {
        let labels = connected_components(&mask, connectivity, Luma([0]));
        let mut sizes = vec![0; 1 + labels.iter().max().copied().unwrap() as usize];
        labels.iter().for_each(|label| sizes[*label as usize] += 1);
        sizes.remove(0);
        sizes
    };
    assert_eq!(sizes(Connectivity::Four), [3, 2, 1, 1, 2, 3, 1]);
    assert_eq!(sizes(Connectivity::Eight), [5, 2, 2, 3, 1]);
}
