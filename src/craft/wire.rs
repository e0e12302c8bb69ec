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

    /// ASTM B258 (formula) and published conversion tables.
    #[test]
    fn gauges_agree_with_the_published_tables() {
        for (n, mm) in
            [(10, 2.58819), (16, 1.2908), (18, 1.0237), (20, 0.811821), (22, 0.6438), (26, 0.4049), (30, 0.254639)]
        {
            assert!((awg_mm(n).unwrap() - mm).abs() < 5e-5, "AWG {n}");
        }
        for (n, mm) in
            [(10, 3.2512), (16, 1.6256), (18, 1.2192), (20, 0.9144), (22, 0.7112), (26, 0.4572), (30, 0.3150)]
        {
            assert!((swg_mm(n).unwrap() - mm).abs() < 5e-5, "SWG {n}");
        }
        assert_eq!((awg_mm(41), swg_mm(9), swg_mm(31), swg_mm(i32::MIN)), (None, None, None, None));
    }
}
