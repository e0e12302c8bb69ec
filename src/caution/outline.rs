//! The convex hull of a flat outline.

/// Corners of the convex hull of `corners`, in order; fewer than three distinct corners come back as they are.
/// Source: A. M. Andrew, Another efficient algorithm for convex hulls in two dimensions, 1979.
pub fn hull(corners: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut sorted = corners.to_vec();
    sorted.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.total_cmp(&b.1)));
    sorted.dedup();
    if sorted.len() < 3 {
        return sorted;
    }
    let mut all = chain(sorted.iter().copied());
    all.extend(chain(sorted.iter().rev().copied()));
    all
}

/// One side of the hull, without its last corner, which begins the other side.
fn chain(corners: impl Iterator<Item = (f64, f64)>) -> Vec<(f64, f64)> {
    let mut side: Vec<(f64, f64)> = Vec::new();
    for c in corners {
        while let [.., a, b] = side[..]
            && (b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0) <= 0.0
        {
            side.pop();
        }
        side.push(c);
    }
    side.pop();
    side
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_the_outer_corners_remain() {
        let corners = [(0.0, 0.0), (2.0, 0.0), (1.0, 0.0), (1.0, 1.0), (2.0, 2.0), (0.0, 2.0), (0.5, 1.5), (0.0, 0.0)];
        assert_eq!(hull(&corners), [(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)]);
        assert_eq!(hull(&[(1.0, 1.0), (1.0, 1.0)]), [(1.0, 1.0)]);
        assert_eq!(hull(&[]), []);
    }
}
