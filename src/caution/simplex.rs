//! A small linear program: the step that opens the tightest contact the most.

/// Unknowns: six of the step, one for what is gained.
const N: usize = 7;

/// A contact in straight-line form: distance `room` now, changing by `rates` per unit of each part of the step.
#[derive(Debug, Clone, Copy)]
pub(super) struct Contact {
    pub room: f64,
    pub rates: [f64; 6],
}

/// The step, each part from −1 to 1, that makes the least `room + rates · step` greatest, and that least.
/// Source: G. Dantzig's simplex method, in the condensed tableau, from a corner where all conditions hold.
pub(super) fn best_step(contacts: &[Contact]) -> ([f64; 6], f64) {
    let spread = |c: &Contact| c.rates.iter().map(|rate| rate.abs()).sum::<f64>();
    let floor = contacts.iter().map(|c| c.room - spread(c)).fold(f64::INFINITY, f64::min);
    // Unknowns u = step + 1 ≥ 0 and g = gain − floor ≥ 0. Rows: g − rates · u ≤ room − Σ rates − floor, and u ≤ 2.
    let mut rows: Vec<[f64; N + 1]> = contacts
        .iter()
        .map(|c| {
            let mut row = [1.0; N + 1];
            (0..6).for_each(|j| row[j] = -c.rates[j]);
            row[N] = c.room - c.rates.iter().sum::<f64>() - floor;
            row
        })
        .collect();
    for j in 0..6 {
        let mut row = [0.0; N + 1];
        (row[j], row[N]) = (1.0, 2.0);
        rows.push(row);
    }
    let mut goal = [0.0_f64; N + 1];
    goal[6] = -1.0;
    let mut outside: [usize; N] = std::array::from_fn(|j| j);
    let mut inside: Vec<usize> = (N..N + rows.len()).collect();
    // More turns than such a program needs; a cycle ends here with a corner that is still allowed.
    for _ in 0..80 {
        let Some(enter) = (0..N).filter(|&j| goal[j] < -1e-11).min_by(|&a, &b| goal[a].total_cmp(&goal[b])) else {
            break;
        };
        let ratio = |row: &[f64; N + 1]| row[N] / row[enter];
        let leave = (0..rows.len())
            .filter(|&i| rows[i][enter] > 1e-11)
            .min_by(|&a, &b| ratio(&rows[a]).total_cmp(&ratio(&rows[b])));
        let Some(leave) = leave else { break };
        pivot(&mut rows, &mut goal, leave, enter);
        std::mem::swap(&mut outside[enter], &mut inside[leave]);
    }
    let mut values = [0.0; N];
    for (row, &name) in rows.iter().zip(&inside) {
        if name < N {
            values[name] = row[N];
        }
    }
    (std::array::from_fn(|j| values[j] - 1.0), values[6] + floor)
}

fn pivot(rows: &mut [[f64; N + 1]], goal: &mut [f64; N + 1], leave: usize, enter: usize) {
    let by = 1.0 / rows[leave][enter];
    let mut line = rows[leave].map(|x| x * by);
    line[enter] = by;
    let clear = |row: &mut [f64; N + 1]| {
        let factor = row[enter];
        row[enter] = 0.0;
        row.iter_mut().zip(&line).for_each(|(x, l)| *x -= factor * l);
    };
    rows.iter_mut().enumerate().filter(|(i, _)| *i != leave).for_each(|(_, row)| clear(row));
    clear(goal);
    rows[leave] = line;
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked by hand: x = (1 + y) / 2 balances 1 + x and 2 − x + y at (3 + y) / 2, and 3 − 2 y meets that at y = 3/5.
    #[test]
    fn a_program_worked_by_hand() {
        let contact = |room: f64, x: f64, y: f64| Contact { room, rates: [x, y, 0.0, 0.0, 0.0, 0.0] };
        let (step, least) = best_step(&[contact(1.0, 1.0, 0.0), contact(2.0, -1.0, 1.0), contact(3.0, 0.0, -2.0)]);
        assert!((least - 1.8).abs() < 1e-12 && (step[0] - 0.8).abs() < 1e-12 && (step[1] - 0.6).abs() < 1e-12);
        let (step, least) = best_step(&[contact(0.0, 3.0, -2.0)]);
        assert_eq!((step[0], step[1], least), (1.0, -1.0, 5.0));
    }
}
