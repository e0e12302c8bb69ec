//! Wire gauges: AWG by its formula, SWG by its table.

/// Diameter in millimetres of an American (AWG) number, `0` to `40`.
///
/// Source: ASTM B258, d = 0.005 in × 92^((36 − n)/39).
pub fn awg_mm(number: i32) -> Option<f64> {
    (0..=40).contains(&number).then(|| 0.005 * 25.4 * 92f64.powf(f64::from(36 - number) / 39.0))
}

/// Imperial standard wire gauge 10 to 30, in inches. Source: BS 3737:1964 (withdrawn); 27 to 30 from memory.
const SWG_INCHES: [f64; 21] = [
    0.128, 0.116, 0.104, 0.092, 0.080, 0.072, 0.064, 0.056, 0.048, 0.040, 0.036, 0.032, 0.028, 0.024, 0.022, 0.020,
    0.018, 0.0164, 0.0148, 0.0136, 0.0124,
];

/// Diameter in millimetres of an imperial (SWG) number, `10` to `30`.
pub fn swg_mm(number: i32) -> Option<f64> {
    let index = usize::try_from(number.checked_sub(10)?).ok()?;
    SWG_INCHES.get(index).map(|inches| inches * 25.4)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// AWG: ASTM B258 (formula), spot checks against published conversion tables. SWG: BS 3737:1964, a published
    /// conversion table for 10 to 26; 27 to 30 from memory.
    #[test]
    fn gauges_agree_with_the_published_tables() {
        let table = [
            (10, 2.5882, 3.2512),
            (11, 2.3048, 2.9464),
            (12, 2.0525, 2.6416),
            (13, 1.8278, 2.3368),
            (14, 1.6277, 2.0320),
            (15, 1.4495, 1.8288),
            (16, 1.2908, 1.6256),
            (17, 1.1495, 1.4224),
            (18, 1.0237, 1.2192),
            (19, 0.9116, 1.0160),
            (20, 0.8118, 0.9144),
            (21, 0.7229, 0.8128),
            (22, 0.6438, 0.7112),
            (23, 0.5733, 0.6096),
            (24, 0.5106, 0.5588),
            (25, 0.4547, 0.5080),
            (26, 0.4049, 0.4572),
            (27, 0.3606, 0.4166),
            (28, 0.3211, 0.3759),
            (29, 0.2859, 0.3454),
            (30, 0.2546, 0.3150),
        ];
        println!("| No. | AWG mm | wanted | SWG mm | wanted |");
        for (n, awg, swg) in table {
            let found = (awg_mm(n).unwrap(), swg_mm(n).unwrap());
            println!("| {n} | {:.4} | {awg:.4} | {:.4} | {swg:.4} |", found.0, found.1);
            assert!((found.0 - awg).abs() < 5.1e-5 && (found.1 - swg).abs() < 5.1e-5, "{n}: {found:?}");
        }
        // Areas of AWG 10 and 20, and six numbers further a 2.0050th of the diameter.
        let area = |n| std::f64::consts::PI / 4.0 * awg_mm(n).unwrap().powi(2);
        assert!((area(20) - 0.51762).abs() < 1e-5 && (area(10) - 5.2612).abs() < 1e-4);
        assert!((awg_mm(12).unwrap() / awg_mm(18).unwrap() - 2.0050).abs() < 5e-5);
        assert!((swg_mm(18).unwrap() - awg_mm(18).unwrap() - 0.1955).abs() < 5e-5);
        assert_eq!((awg_mm(41), swg_mm(9), swg_mm(31), swg_mm(i32::MIN)), (None, None, None, None));
    }
}
