//! Colour science for the tests: contrast, CIE Lab, the CIEDE2000 difference, and how colour-blind eyes see.

/// One channel of sRGB made linear. Source: WCAG 2.2, definition of relative luminance (IEC 61966-2-1).
fn linear(channel: u8) -> f64 {
    let c = f64::from(channel) / 255.0;
    if c <= 0.04045 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
}

/// A colour with linear channels.
pub fn linear_rgb(rgb: [u8; 3]) -> [f64; 3] {
    rgb.map(linear)
}

/// Contrast of two colours. Source: WCAG 2.2, definition of contrast ratio.
pub fn contrast(a: [u8; 3], b: [u8; 3]) -> f64 {
    let luminance = |rgb: [u8; 3]| {
        let [r, g, b] = linear_rgb(rgb);
        0.2126 * r + 0.7152 * g + 0.0722 * b
    };
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

/// CIE Lab of linear sRGB, white D65. Source: IEC 61966-2-1 matrix and CIE 15.
pub fn lab([r, g, b]: [f64; 3]) -> [f64; 3] {
    let xyz = [
        (0.4124 * r + 0.3576 * g + 0.1805 * b) / 0.9505,
        0.2126 * r + 0.7152 * g + 0.0722 * b,
        (0.0193 * r + 0.1192 * g + 0.9505 * b) / 1.089,
    ];
    let [x, y, z] = xyz.map(|t: f64| if t > 216.0 / 24389.0 { t.cbrt() } else { (24389.0 / 27.0 * t + 16.0) / 116.0 });
    [116.0 * y - 16.0, 500.0 * (x - y), 200.0 * (y - z)]
}

/// Colour difference. Source: Sharma, Wu and Dalal, Color Research and Application 30 (1), 2005.
pub fn ciede2000([l1, a1, b1]: [f64; 3], [l2, a2, b2]: [f64; 3]) -> f64 {
    let seventh = |c: f64| (c.powi(7) / (c.powi(7) + 25f64.powi(7))).sqrt();
    let g = 0.5 * (1.0 - seventh((a1.hypot(b1) + a2.hypot(b2)) / 2.0));
    let (a1, a2) = (a1 * (1.0 + g), a2 * (1.0 + g));
    let (c1, c2) = (a1.hypot(b1), a2.hypot(b2));
    let hue = |a: f64, b: f64| if a == 0.0 && b == 0.0 { 0.0 } else { b.atan2(a).to_degrees().rem_euclid(360.0) };
    let (h1, h2) = (hue(a1, b1), hue(a2, b2));
    let grey = c1 * c2 == 0.0;
    let turn = match h2 - h1 {
        _ if grey => 0.0,
        d if d > 180.0 => d - 360.0,
        d if d < -180.0 => d + 360.0,
        d => d,
    };
    let (dl, dc) = (l2 - l1, c2 - c1);
    let dh = 2.0 * (c1 * c2).sqrt() * (turn / 2.0).to_radians().sin();
    let (l, c) = ((l1 + l2) / 2.0, (c1 + c2) / 2.0);
    let h = match h1 + h2 {
        sum if grey => sum,
        sum if (h1 - h2).abs() <= 180.0 => sum / 2.0,
        sum if sum < 360.0 => (sum + 360.0) / 2.0,
        sum => (sum - 360.0) / 2.0,
    };
    let cos = |degrees: f64| degrees.to_radians().cos();
    let t = 1.0 - 0.17 * cos(h - 30.0) + 0.24 * cos(2.0 * h) + 0.32 * cos(3.0 * h + 6.0) - 0.2 * cos(4.0 * h - 63.0);
    let sl = 1.0 + 0.015 * (l - 50.0).powi(2) / (20.0 + (l - 50.0).powi(2)).sqrt();
    let (sc, sh) = (1.0 + 0.045 * c, 1.0 + 0.015 * c * t);
    let around_blue = 30.0 * (-((h - 275.0) / 25.0).powi(2)).exp();
    let rt = -2.0 * seventh(c) * (2.0 * around_blue).to_radians().sin();
    let (l, c, h) = (dl / sl, dc / sc, dh / sh);
    (l * l + c * c + h * h + rt * c * h).sqrt()
}

/// How eyes without one kind of cone see linear sRGB. Source: Machado, Oliveira and Fernandes, IEEE TVCG 15 (6), 2009,
/// severity 1; the figures from memory.
pub const BLINDNESS: [(&str, [[f64; 3]; 3]); 3] = [
    ("protan", [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]]),
    ("deutan", [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]]),
    ("tritan", [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]]),
];

/// A colour as such eyes see it.
pub fn seen(by: &[[f64; 3]; 3], rgb: [f64; 3]) -> [f64; 3] {
    by.map(|row| row.iter().zip(rgb).map(|(m, c)| m * c).sum::<f64>().clamp(0.0, 1.0))
}

/// Source: WCAG 2.2; the ratios computed from its formula, to six decimals.
#[test]
fn contrast_agrees_with_the_known_pairs() {
    let hex = |rgb: u32| [(rgb >> 16) as u8, (rgb >> 8) as u8, rgb as u8];
    for (a, b, ratio) in [
        (0x000000, 0xFFFFFF, 21.0),
        (0x777777, 0xFFFFFF, 4.478089),
        (0x767676, 0xFFFFFF, 4.542225),
        (0x757575, 0xFFFFFF, 4.607518),
        (0x949494, 0xFFFFFF, 3.033470),
        (0x959595, 0xFFFFFF, 2.995346),
        (0x595959, 0xFFFFFF, 7.004729),
        (0x5A5A5A, 0xFFFFFF, 6.896926),
        (0xFF0000, 0xFFFFFF, 3.998477),
        (0x0000FF, 0xFFFFFF, 8.592471),
        (0x00FF00, 0xFFFFFF, 1.372190),
        (0xFF0000, 0x000000, 5.252000),
        (0x808080, 0x000000, 5.317210),
        (0x0000FF, 0xFFFF00, 8.001637),
        (0xFFD700, 0x333333, 9.008012),
    ] {
        for (a, b) in [(a, b), (b, a)] {
            let found = contrast(hex(a), hex(b));
            assert!((found - ratio).abs() < 1e-6, "{a:06x} on {b:06x}: {found}");
        }
    }
}

/// Lab of well-known colours under D65; computed from the standard's matrix, tolerance 0.01.
#[test]
fn lab_of_well_known_colours() {
    for (rgb, wanted) in [
        ([0, 255, 0], [87.7370, -86.1884, 83.1861]),
        ([0, 0, 255], [32.3026, 79.1936, -107.8537]),
        ([128, 128, 128], [53.5850, 0.0, 0.0]),
        ([255, 215, 0], [86.9286, -1.9289, 87.1419]),
        ([0xB8, 0x73, 0x33], [54.7524, 21.6527, 45.3992]),
    ] {
        let found = lab(linear_rgb(rgb));
        assert!(found.iter().zip(wanted).all(|(a, b)| (a - b).abs() < 0.01), "{rgb:?}: {found:?}");
    }
}

/// Source: Sharma, Wu and Dalal 2005, table 1, all 34 pairs.
#[test]
fn ciede2000_agrees_with_the_published_pairs() {
    #[rustfmt::skip]
    const PAIRS: [[f64; 7]; 34] = [
        [50.0, 2.6772, -79.7751, 50.0, 0.0, -82.7485, 2.0425],
        [50.0, 3.1571, -77.2803, 50.0, 0.0, -82.7485, 2.8615],
        [50.0, 2.8361, -74.0200, 50.0, 0.0, -82.7485, 3.4412],
        [50.0, -1.3802, -84.2814, 50.0, 0.0, -82.7485, 1.0000],
        [50.0, -1.1848, -84.8006, 50.0, 0.0, -82.7485, 1.0000],
        [50.0, -0.9009, -85.5211, 50.0, 0.0, -82.7485, 1.0000],
        [50.0, 0.0, 0.0, 50.0, -1.0, 2.0, 2.3669],
        [50.0, -1.0, 2.0, 50.0, 0.0, 0.0, 2.3669],
        [50.0, 2.4900, -0.0010, 50.0, -2.4900, 0.0009, 7.1792],
        [50.0, 2.4900, -0.0010, 50.0, -2.4900, 0.0010, 7.1792],
        [50.0, 2.4900, -0.0010, 50.0, -2.4900, 0.0011, 7.2195],
        [50.0, 2.4900, -0.0010, 50.0, -2.4900, 0.0012, 7.2195],
        [50.0, -0.0010, 2.4900, 50.0, 0.0009, -2.4900, 4.8045],
        [50.0, -0.0010, 2.4900, 50.0, 0.0010, -2.4900, 4.8045],
        [50.0, -0.0010, 2.4900, 50.0, 0.0011, -2.4900, 4.7461],
        [50.0, 2.5, 0.0, 50.0, 0.0, -2.5, 4.3065],
        [50.0, 2.5, 0.0, 73.0, 25.0, -18.0, 27.1492],
        [50.0, 2.5, 0.0, 61.0, -5.0, 29.0, 22.8977],
        [50.0, 2.5, 0.0, 56.0, -27.0, -3.0, 31.9030],
        [50.0, 2.5, 0.0, 58.0, 24.0, 15.0, 19.4535],
        [50.0, 2.5, 0.0, 50.0, 3.1736, 0.5854, 1.0000],
        [50.0, 2.5, 0.0, 50.0, 3.2972, 0.0, 1.0000],
        [50.0, 2.5, 0.0, 50.0, 1.8634, 0.5757, 1.0000],
        [50.0, 2.5, 0.0, 50.0, 3.2592, 0.3350, 1.0000],
        [60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644],
        [63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864, 1.2630],
        [61.2901, 3.7196, -5.3901, 61.4292, 2.2480, -4.9620, 1.8731],
        [35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901, 1.8645],
        [22.7233, 20.0904, -46.6940, 23.0331, 14.9730, -42.5619, 2.0373],
        [36.4612, 47.8580, 18.3852, 36.2715, 50.5065, 21.2231, 1.4146],
        [90.8027, -2.0831, 1.4410, 91.1528, -1.6435, 0.0447, 1.4441],
        [90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239, 1.5381],
        [6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377],
        [2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514, 0.9082],
    ];
    for (number, [l1, a1, b1, l2, a2, b2, wanted]) in PAIRS.into_iter().enumerate() {
        let found = ciede2000([l1, a1, b1], [l2, a2, b2]);
        assert!((found - wanted).abs() < 1e-4, "pair {}: {found} instead of {wanted}", number + 1);
    }
}
