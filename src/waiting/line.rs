//! The line itself: which numbers were given, and what became of each. It follows from the steps that were taken, in their order;
//! their times only say how long seats were in use.

use std::collections::{BTreeMap, VecDeque};

use serde::{Deserialize, Serialize};

use super::estimate::{Seen, WaitRange, wait_range};

/// No table has more seats.
const MOST_SEATS: u16 = 99;
/// No line is longer.
const LONGEST: usize = 400;
/// Where nothing happens for longer, nobody has told what happened at the seats.
const LONGEST_SILENCE_MS: i64 = 60 * 60 * 1000;

/// What happens in the line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Step {
    /// The table has so many seats.
    Seats(u16),
    /// A guest gets the next number.
    Take,
    /// A guest sits down without a number, since nobody waits.
    SitDown,
    /// A number is called to a free seat.
    Call(u32),
    /// Who was called has come and sits.
    Came(u32),
    /// Who was called has not come.
    NotCome(u32),
    /// Who had not come is here after all, too late, and is next.
    Late(u32),
    /// Who has the number does not wait any more.
    Gone(u32),
    /// Somebody got up: a seat is free.
    SeatFree,
}

/// Where a number stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// It waits.
    Waiting,
    /// It was called, and a seat is kept for it.
    Called,
    /// It was called and did not come.
    NotCome,
    /// Its guest has sat down.
    Seated,
    /// Its guest has gone without a seat.
    Gone,
}

/// Why a step is none.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum WaitingError {
    /// The number was never given, or stands elsewhere by now.
    #[error("number {0} does not stand there any more; look at the line again")]
    Elsewhere(u32),
    /// All seats are taken, or kept for who was called.
    #[error("no seat is free; wait until somebody gets up, or say that who was called has not come")]
    NoSeat,
    /// Nobody sits.
    #[error("nobody sits at the table, so no seat becomes free")]
    NobodySits,
    /// Others wait, and come first.
    #[error("others wait and come first; give a number")]
    OthersWait,
    /// It is no number of seats.
    #[error("{0} is no number of seats; it is 1 to 99")]
    Seats(u16),
    /// Too many wait.
    #[error("400 wait already; nobody would wait that long")]
    Full,
}

/// Everybody who waits, and how many sit.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Line {
    seats: u16,
    sitting: u16,
    last: u32,
    waiting: VecDeque<u32>,
    called: Vec<u32>,
    places: BTreeMap<u32, Place>,
    ended: u32,
    seat_ms: i64,
    at_ms: Option<i64>,
    steps: usize,
}

impl Line {
    /// Takes a step at a time of any clock that is in milliseconds. A clock that is set back tells nothing of the seats.
    ///
    /// # Errors
    /// The step is none; then nothing is changed.
    pub fn take(&mut self, step: Step, at_ms: i64) -> Result<(), WaitingError> {
        let seat_ms = self.seat_ms_until(at_ms);
        self.step(step)?;
        (self.seat_ms, self.at_ms) = (seat_ms, Some(at_ms));
        self.steps += 1;
        Ok(())
    }

    /// How long seats were in use until a time, all together.
    fn seat_ms_until(&self, at_ms: i64) -> i64 {
        let passed = at_ms.saturating_sub(self.at_ms.unwrap_or(at_ms)).clamp(0, LONGEST_SILENCE_MS);
        self.seat_ms.saturating_add(passed * i64::from(self.sitting))
    }

    /// Each step is looked at before anything of it is done.
    fn step(&mut self, step: Step) -> Result<(), WaitingError> {
        match step {
            Step::Seats(seats) => {
                self.seats = Some(seats).filter(|n| (1..=MOST_SEATS).contains(n)).ok_or(WaitingError::Seats(seats))?;
            }
            Step::Take => {
                if self.waiting.len() >= LONGEST {
                    return Err(WaitingError::Full);
                }
                self.last += 1;
                self.waiting.push_back(self.last);
                self.places.insert(self.last, Place::Waiting);
            }
            Step::SitDown => {
                if !self.waiting.is_empty() {
                    return Err(WaitingError::OthersWait);
                }
                self.free_seat()?;
                self.sitting += 1;
            }
            Step::Call(number) => {
                self.stands(number, Place::Waiting)?;
                self.free_seat()?;
                self.waiting.retain(|one| *one != number);
                self.called.push(number);
                self.places.insert(number, Place::Called);
            }
            Step::Came(number) => {
                self.stands(number, Place::Called)?;
                self.leaves(number, Place::Seated);
                self.sitting += 1;
            }
            Step::NotCome(number) => {
                self.stands(number, Place::Called)?;
                self.leaves(number, Place::NotCome);
            }
            Step::Late(number) => {
                self.stands(number, Place::NotCome)?;
                self.waiting.push_front(number);
                self.places.insert(number, Place::Waiting);
            }
            Step::Gone(number) => {
                if !matches!(self.place(number), Some(Place::Waiting | Place::Called | Place::NotCome)) {
                    return Err(WaitingError::Elsewhere(number));
                }
                self.leaves(number, Place::Gone);
            }
            Step::SeatFree => {
                self.sitting = self.sitting.checked_sub(1).ok_or(WaitingError::NobodySits)?;
                self.ended += 1;
            }
        }
        Ok(())
    }

    fn stands(&self, number: u32, place: Place) -> Result<(), WaitingError> {
        if self.place(number) == Some(place) { Ok(()) } else { Err(WaitingError::Elsewhere(number)) }
    }

    fn free_seat(&self) -> Result<(), WaitingError> {
        if self.free() > 0 { Ok(()) } else { Err(WaitingError::NoSeat) }
    }

    fn leaves(&mut self, number: u32, place: Place) {
        self.waiting.retain(|one| *one != number);
        self.called.retain(|one| *one != number);
        self.places.insert(number, place);
    }

    /// Seats at the table; 0 until somebody has said how many.
    pub const fn seats(&self) -> usize {
        self.seats as usize
    }

    /// How many sit.
    pub const fn sitting(&self) -> usize {
        self.sitting as usize
    }

    /// Seats that nobody sits on and that are kept for nobody.
    pub fn free(&self) -> usize {
        self.seats().saturating_sub(self.sitting() + self.called.len())
    }

    /// Who waits, in the order in which they come.
    pub fn waiting(&self) -> impl ExactSizeIterator<Item = u32> {
        self.waiting.iter().copied()
    }

    /// Who was called and has not come yet, the first called first.
    pub fn called(&self) -> &[u32] {
        &self.called
    }

    /// Who was called and did not come.
    pub fn not_come(&self) -> Vec<u32> {
        self.places.iter().filter(|(_, place)| **place == Place::NotCome).map(|(number, _)| *number).collect()
    }

    /// Where a number stands; none where it was never given.
    pub fn place(&self, number: u32) -> Option<Place> {
        self.places.get(&number).copied()
    }

    /// The number that was given last; 0 where none was.
    pub const fn last(&self) -> u32 {
        self.last
    }

    /// How many steps were taken.
    pub const fn steps(&self) -> usize {
        self.steps
    }

    /// What the day has shown until `now_ms`, by the clock of the steps.
    pub fn seen(&self, now_ms: i64) -> Seen {
        Seen { ended: self.ended, seat_minutes: self.seat_ms_until(now_ms) as f64 / 60_000.0 }
    }

    /// How long a guest waits who has `ahead` others before them.
    pub fn wait(&self, ahead: usize, now_ms: i64) -> WaitRange {
        wait_range(ahead, self.free(), self.seats(), self.seen(now_ms))
    }
}
