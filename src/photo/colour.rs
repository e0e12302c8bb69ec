//! Colours as evenly spaced as the eye sees them: Björn Ottosson's Oklab (2020), from and to sRGB.

/// Lightness from 0 to 1, red against green, yellow against blue.
pub(super) type Lab = [f32; 3];

/// sRGB's 256 steps in linear light (IEC 61966-2-1).
fn linear() -> &'static [f32; 256] {
    static STEPS: std::sync::LazyLock<[f32; 256]> = std::sync::LazyLock::new(|| {
        std::array::from_fn(|step| {
            let s = step as f32 / 255.0;
            if s <= 0.040_45 { s / 12.92 } else { ((s + 0.055) / 1.055).powf(2.4) }
        })
    });
    &STEPS
}

/// A pixel as it is seen.
pub(super) fn seen(pixel: [u8; 3]) -> Lab {
    let [r, g, b] = pixel.map(|step| linear()[step as usize]);
    let long = cube_root(0.412_221_46 * r + 0.536_332_55 * g + 0.051_445_995 * b);
    let middle = cube_root(0.211_903_5 * r + 0.680_699_5 * g + 0.107_396_96 * b);
    let short = cube_root(0.088_302_46 * r + 0.281_718_85 * g + 0.629_978_7 * b);
    [
        0.210_454_26 * long + 0.793_617_8 * middle - 0.004_072_047 * short,
        1.977_998_5 * long - 2.428_592_2 * middle + 0.450_593_7 * short,
        0.025_904_037 * long + 0.782_771_77 * middle - 0.808_675_77 * short,
    ]
}

/// From 0 to 1, right to a thousandth of a step of eight bits: a first guess by the bits, two steps of Halley's.
fn cube_root(x: f32) -> f32 {
    if x <= 0.0 {
        return 0.0;
    }
    let mut root = f32::from_bits(x.to_bits() / 3 + 709_921_077);
    for _ in 0..2 {
        let cube = root * root * root;
        root *= (cube + x + x) / (cube + cube + x);
    }
    root
}

/// How strong a colour is beside grey.
pub(super) fn chroma(lab: Lab) -> f32 {
    lab[1].hypot(lab[2])
}

/// Its hue in degrees, from 0 to 360.
pub(super) fn hue(lab: Lab) -> f32 {
    lab[2].atan2(lab[1]).to_degrees().rem_euclid(360.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Values published with the space (Ottosson, "A perceptual color space for image processing", and its reference code
    /// as used by CSS Color 4): white is (1, 0, 0), and sRGB's primaries to three places.
    #[test]
    fn primaries_have_their_published_places() {
        let known = [
            ([255, 255, 255], [1.0, 0.0, 0.0]),
            ([0, 0, 0], [0.0, 0.0, 0.0]),
            ([255, 0, 0], [0.627_96, 0.224_86, 0.125_85]),
            ([0, 255, 0], [0.866_44, -0.233_89, 0.179_5]),
            ([0, 0, 255], [0.452_01, -0.032_46, -0.311_53]),
        ];
        for (pixel, expected) in known {
            for (found, expected) in seen(pixel).into_iter().zip(expected) {
                assert!((found - expected).abs() < 2e-4, "{pixel:?}: {found} for {expected}");
            }
        }
    }
}
