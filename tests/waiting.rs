//! How long guests wait: the room's range held against simulated queues, these against a published closed form, and the line's
//! steps in every order that a clumsy hand finds.

#![allow(
    unreachable_pub,
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "tests may end in a panic and print what they measured, and share their helpers"
)]

use chatelaine::waiting::{Line, Place, Seen, Step, WaitingError, minutes_shown, wait_range};
use statrs::distribution::{Beta, ContinuousCDF};

/// Numbers that look like chance and are the same in every run. Source: Steele, Lea, Flood, Fast splittable pseudorandom number
/// generators (2014), the mixing function (from memory).
struct Chance(u64);

impl Chance {
    fn unit(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// Exponential, by its inverse.
    fn exponential(&mut self, mean: f64) -> f64 {
        -(1.0 - self.unit()).ln() * mean
    }
}

/// The chance to wait in a queue with `c` seats and an offered load of `a`, and the mean wait in mean sittings. Source: A. K.
/// Erlang's formula of waiting (1917), as in Gross and others, Fundamentals of Queueing Theory, section 3.3 (from memory).
fn erlang(c: u32, a: f64) -> (f64, f64) {
    let c_full = f64::from(c);
    // Erlang's loss formula by its recursion, and waiting from loss.
    let loss = (1..=c).fold(1.0, |b, n| a * b / (f64::from(n) + a * b));
    let wait = c_full * loss / (c_full - a * (1.0 - loss));
    (wait, wait / (c_full - a))
}

/// Worked examples: one seat waits with the chance ρ; two with 2ρ²/(1+ρ); three at a load of two with 4/9 (all from memory, of
/// the same book).
#[test]
fn the_closed_form_gives_the_worked_examples() {
    for (c, a, wanted) in [(1, 0.7, 0.7), (2, 1.5, 2.0 * 0.75 * 0.75 / 1.75), (3, 2.0, 4.0 / 9.0)] {
        assert!((erlang(c, a).0 - wanted).abs() < 1e-12, "{c} {a}");
    }
    assert!((erlang(3, 2.0).1 - 4.0 / 9.0).abs() < 1e-12, "and waits as long in mean sittings");
}

/// What one guest met.
struct Met {
    ahead: usize,
    free: usize,
    waited_minutes: f64,
    range: (f64, f64),
}

/// Guests of a day who come at random and sit for random times, through the line's own steps. Whoever is called comes at once.
fn day(chance: &mut Chance, seats: u16, every_minutes: f64, sitting_minutes: f64, guests: usize) -> Vec<Met> {
    let ms = |minutes: f64| (minutes * 60_000.0) as i64;
    let mut line = Line::default();
    line.take(Step::Seats(seats), 0).unwrap();
    let mut arrives = chance.exponential(every_minutes);
    let mut leaves: Vec<f64> = Vec::new();
    let mut waiting: Vec<(u32, f64, usize)> = Vec::new();
    let mut met: Vec<Met> = Vec::new();
    while met.len() < guests || !waiting.is_empty() {
        let next_leave = leaves.iter().copied().fold(f64::INFINITY, f64::min);
        let now = if arrives < next_leave && met.len() < guests { arrives } else { next_leave };
        if now < next_leave {
            arrives = now + chance.exponential(every_minutes);
            let (ahead, free) = (line.waiting().len(), line.free());
            let range = line.wait(ahead, ms(now));
            line.take(Step::Take, ms(now)).unwrap();
            waiting.push((line.last(), now, met.len()));
            met.push(Met { ahead, free, waited_minutes: f64::NAN, range: (range.from_minutes, range.to_minutes) });
        } else {
            leaves.retain(|at| *at > now);
            line.take(Step::SeatFree, ms(now)).unwrap();
        }
        while line.free() > 0 && !waiting.is_empty() {
            let (number, since, at) = waiting.remove(0);
            line.take(Step::Call(number), ms(now)).unwrap();
            line.take(Step::Came(number), ms(now)).unwrap();
            leaves.push(now + chance.exponential(sitting_minutes));
            met[at].waited_minutes = now - since;
        }
    }
    met
}

/// The simulated queues are the ones of the closed form: chance to wait and mean wait over a long day.
#[test]
fn simulated_queues_wait_as_the_closed_form_says() {
    let mut chance = Chance(1);
    for (seats, every, sitting) in [(1_u16, 20.0, 12.0), (3, 6.0, 12.0), (4, 4.0, 12.0)] {
        let met = day(&mut chance, seats, every, sitting, 20_000);
        let met = &met[1000..];
        let (wanted_chance, wanted_wait) = erlang(seats.into(), sitting / every);
        let waits = met.iter().filter(|one| one.waited_minutes > 0.0).count() as f64 / met.len() as f64;
        let mean = met.iter().map(|one| one.waited_minutes).sum::<f64>() / met.len() as f64;
        println!(
            "{seats} seats: waits {waits:.3} of {wanted_chance:.3}, mean {mean:.2} of {:.2}",
            wanted_wait * sitting
        );
        assert!((waits - wanted_chance).abs() < 0.03, "{seats}: {waits} {wanted_chance}");
        assert!((mean / (wanted_wait * sitting) - 1.0).abs() < 0.12, "{seats}: {mean} {}", wanted_wait * sitting);
    }
}

/// Eight of ten waits lie in the range that was told: from the first guest on where days are as the room expects them before it
/// has seen any, and once a day has gone on also where its sittings are much longer or shorter.
#[test]
fn eight_of_ten_waits_lie_in_the_range() {
    let mut chance = Chance(2);
    let share = |met: &[Met]| {
        let waits: Vec<&Met> = met.iter().filter(|one| one.ahead >= one.free).collect();
        let inside = waits.iter().filter(|one| (one.range.0..=one.range.1).contains(&one.waited_minutes)).count();
        (inside as f64 / waits.len() as f64, waits.len())
    };
    // A rate from the room's own prior: gamma of shape two and rate thirty minutes, the sum of two exponentials.
    let mut first = Vec::new();
    for _ in 0..1500 {
        let rate = chance.exponential(1.0 / 30.0) + chance.exponential(1.0 / 30.0);
        first.extend(day(&mut chance, 3, 1.0 / rate / 3.6, 1.0 / rate, 12));
    }
    let (inside, of) = share(&first);
    println!("first guests of days as expected: {inside:.3} of {of}");
    assert!((inside - 0.8).abs() < 0.03, "{inside} of {of}");
    for sitting in [4.0, 15.0, 40.0] {
        let mut late = Vec::new();
        for _ in 0..60 {
            let mut met = day(&mut chance, 4, sitting / 4.2, sitting, 220);
            late.extend(met.split_off(120));
        }
        let (inside, of) = share(&late);
        println!("sittings of {sitting} min: {inside:.3} of {of}");
        assert!((inside - 0.8).abs() < 0.06, "{sitting}: {inside} of {of}");
    }
}

/// The bounds are those of the published predictive distribution, by another library's beta distribution: c · wait / b is
/// distributed as B / (1 − B). Source: the gamma prior's predictive is a beta prime distribution (from memory).
#[test]
fn the_bounds_are_those_of_the_predictive_distribution() {
    for (ahead, seats, ended, minutes) in [(0, 1, 0, 0.0), (3, 4, 7, 96.0), (20, 4, 120, 1400.0), (399, 2, 300, 4000.0)]
    {
        let range = wait_range(ahead, 0, seats, Seen { ended, seat_minutes: minutes });
        let share = Beta::new(ahead as f64 + 1.0, 2.0 + f64::from(ended)).unwrap();
        for (tail, found) in [(0.1, range.from_minutes), (0.9, range.to_minutes)] {
            let of = share.inverse_cdf(tail);
            let wanted = (30.0 + minutes) / seats as f64 * of / (1.0 - of);
            assert!((found / wanted - 1.0).abs() < 1e-3, "{ahead} {seats} {ended}: {found} {wanted}");
        }
    }
}

#[test]
fn few_data_are_told_widely_and_a_free_seat_at_once() {
    let width = |seen| {
        let range = wait_range(2, 0, 4, seen);
        range.to_minutes / range.from_minutes
    };
    let nothing = width(Seen::default());
    let much = width(Seen { ended: 80, seat_minutes: 1200.0 });
    assert!(nothing > 2.0 * much, "{nothing} {much}");
    let now = wait_range(0, 1, 4, Seen::default());
    assert_eq!(minutes_shown(now), (0, 0));
    let told = minutes_shown(wait_range(0, 0, 4, Seen::default()));
    assert!(told.0 == 0 && told.1.is_multiple_of(5) && told.1 >= 10, "{told:?}");
    let slow = wait_range(0, 0, 4, Seen { ended: 0, seat_minutes: 200.0 });
    assert!(
        slow.to_minutes > wait_range(0, 0, 4, Seen::default()).to_minutes,
        "those who sit long count before they get up"
    );
}

fn taken(steps: &[Step]) -> Line {
    let mut line = Line::default();
    steps.iter().enumerate().for_each(|(at, step)| line.take(*step, at as i64 * 60_000).unwrap());
    line
}

#[test]
fn a_number_is_called_comes_comes_late_or_goes() {
    use Step::{Call, Came, Gone, Late, NotCome, SeatFree, Seats, SitDown, Take};
    let mut line = taken(&[Seats(2), SitDown, SitDown, Take, Take, Take]);
    assert_eq!((line.free(), line.sitting(), line.last()), (0, 2, 3));
    assert_eq!(line.take(Call(1), 0), Err(WaitingError::NoSeat));
    line.take(SeatFree, 0).unwrap();
    line.take(Call(1), 0).unwrap();
    assert_eq!((line.free(), line.called()), (0, &[1][..]), "the seat is kept");
    assert_eq!(line.take(Call(2), 0), Err(WaitingError::NoSeat));
    assert_eq!(line.take(Call(1), 0), Err(WaitingError::Elsewhere(1)), "called once");
    line.take(NotCome(1), 0).unwrap();
    assert_eq!((line.free(), line.not_come()), (1, vec![1]));
    line.take(Call(2), 0).unwrap();
    line.take(Came(2), 0).unwrap();
    line.take(Late(1), 0).unwrap();
    assert_eq!(line.waiting().collect::<Vec<_>>(), [1, 3], "too late is next");
    line.take(Gone(3), 0).unwrap();
    assert_eq!((line.place(2), line.place(3), line.place(9)), (Some(Place::Seated), Some(Place::Gone), None));
    for step in [Came(2), NotCome(2), Late(2), Gone(2), Gone(3), Gone(9), Call(9), Came(1)] {
        let before = line.clone();
        assert!(line.take(step, 0).is_err(), "{step:?}");
        assert_eq!(line, before, "what is refused changes nothing");
    }
    assert_eq!(line.take(SitDown, 0), Err(WaitingError::OthersWait));
    assert_eq!(taken(&[Seats(1)]).take(SeatFree, 0), Err(WaitingError::NobodySits));
    assert_eq!(Line::default().take(Seats(0), 0), Err(WaitingError::Seats(0)));
    assert_eq!(Line::default().take(Seats(100), 0), Err(WaitingError::Seats(100)));
}

/// Fewer seats than sit, a clock that is set back or a year forward, a line without end: nothing breaks and nothing is invented.
#[test]
fn odd_days_break_nothing() {
    let mut line = taken(&[Step::Seats(4), Step::SitDown, Step::SitDown, Step::SitDown, Step::Seats(1), Step::Take]);
    assert_eq!(line.free(), 0);
    let seen = line.seen(i64::MAX);
    assert!(seen.seat_minutes < 60.0 * 3.0 + 20.0, "an hour of silence is all that counts: {seen:?}");
    line.take(Step::SeatFree, i64::MIN).unwrap();
    assert!(line.seen(i64::MIN).seat_minutes >= 0.0);
    for _ in 1..400 {
        line.take(Step::Take, 0).unwrap();
    }
    assert_eq!(line.take(Step::Take, 0), Err(WaitingError::Full));
    let range = line.wait(399, 0);
    assert!(range.from_minutes.is_finite() && range.to_minutes > range.from_minutes, "{range:?}");
    let mut chance = Chance(3);
    let mut line = Line::default();
    for at in 0..20_000 {
        let number = (chance.unit() * 30.0) as u32;
        let step = match (chance.unit() * 9.0) as u32 {
            0 => Step::Seats(number as u16),
            1 => Step::Take,
            2 => Step::SitDown,
            3 => Step::Call(number),
            4 => Step::Came(number),
            5 => Step::NotCome(number),
            6 => Step::Late(number),
            7 => Step::Gone(number),
            _ => Step::SeatFree,
        };
        let _ = line.take(step, at * 1000);
        let stands = |place| (1..=line.last()).filter(|number| line.place(*number) == Some(place)).count();
        assert_eq!(line.waiting().len(), stands(Place::Waiting));
        assert_eq!(line.called().len(), stands(Place::Called));
    }
}
