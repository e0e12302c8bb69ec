//! Good inputs spoiled step by step, the same in every run.

use std::{
    panic::{AssertUnwindSafe, catch_unwind},
    time::{Duration, Instant},
};

use crate::random::Random;

/// What is put in somewhere.
const ODD: &[&[u8]] = &[
    b"\0",
    b"\r\n",
    b"\x1b[2J",
    b"\xff\xfe",
    b"\xc3",
    b"\xed\xa0\x80",
    "\u{200b}".as_bytes(),
    "\u{202e}".as_bytes(),
    "\u{2066}".as_bytes(),
    "\u{feff}".as_bytes(),
    "\u{2028}".as_bytes(),
    "\u{1f469}\u{200d}\u{1f467}".as_bytes(),
    "e\u{301}\u{301}\u{301}".as_bytes(),
    "\u{0663}".as_bytes(),
    b"(",
    b")",
    b"[",
    b"]",
    b"{",
    b"}",
    b"\"",
    b"\\",
    b",",
    b":",
    b"/*",
    b"//",
    b"null",
    b"-1",
    b"0",
    b"1e999",
    b"NaN",
    b"-0.0",
    b"18446744073709551616",
    b"%00",
    b"%",
    b"&",
    b"=",
    b"+",
];

/// Spoils what is good.
pub struct Spoiler(Random);

impl Spoiler {
    pub fn new(seed: u64) -> Self {
        Self(Random(seed))
    }

    /// One to four changes of `good`.
    pub fn spoiled(&mut self, good: &[u8]) -> Vec<u8> {
        let mut bytes = good.to_vec();
        for _ in 0..1 + self.0.below(4) {
            self.change(&mut bytes);
        }
        bytes
    }

    fn change(&mut self, bytes: &mut Vec<u8>) {
        let len = bytes.len();
        let at = self.0.of(len + 1);
        let end = (at + 1 + self.0.of(40)).min(len);
        match self.0.below(9) {
            0 if at < len => bytes[at] ^= 1 << self.0.below(8),
            1 if at < len => bytes[at] = self.0.below(256) as u8,
            2 => bytes.truncate(at),
            3 if at < end => drop(bytes.drain(at..end)),
            4 if at < end => {
                let again = bytes[at..end].repeat(1 + self.0.of(30));
                bytes.splice(at..at, again);
            }
            5 => {
                let long = ODD[self.0.of(ODD.len())].repeat(if self.0.below(20) == 0 { 2000 } else { 1 });
                bytes.splice(at..at, long);
            }
            6 => {
                // A number without end in the place of a digit.
                if let Some(digit) = (at..len).find(|at| bytes[*at].is_ascii_digit()) {
                    bytes.splice(digit..=digit, std::iter::repeat_n(b'9', 1 + self.0.of(400)));
                }
            }
            7 if at < end => {
                let moved: Vec<u8> = bytes.drain(at..end).collect();
                let to = self.0.of(bytes.len() + 1);
                bytes.splice(to..to, moved);
            }
            _ => {
                let odd = ODD[self.0.of(ODD.len())];
                bytes.splice(at..at, odd.iter().copied());
            }
        }
    }
}

/// How long the spoiling of one target goes on: so many steps, or minutes by the variable CHATELAINE_ODD.
fn is_over(step: usize, steps: usize, began: Instant) -> bool {
    match std::env::var("CHATELAINE_ODD").ok().map(|minutes| minutes.parse::<f64>().expect("minutes")) {
        Some(minutes) => began.elapsed() >= Duration::from_secs_f64(60.0 * minutes),
        None => step >= steps,
    }
}

/// One input takes no longer than this, on a machine with other work as well.
const LONGEST: Duration = Duration::from_secs(20);

/// Spoils the good inputs in turn and hands each to `check`; a panic is told with its input.
pub fn spoil(target: &str, steps: usize, good: &[&[u8]], check: impl Fn(usize, &[u8])) {
    let mut spoiler = Spoiler::new(0x0DD);
    let began = Instant::now();
    let mut step = 0;
    while !is_over(step, steps, began) {
        let which = step % good.len();
        let input = spoiler.spoiled(good[which]);
        let at = Instant::now();
        let outcome = catch_unwind(AssertUnwindSafe(|| check(which, &input)));
        assert!(outcome.is_ok(), "{target}, step {step}: {:?}", String::from_utf8_lossy(&input));
        assert!(at.elapsed() < LONGEST, "{target}, step {step} took {:?}", at.elapsed());
        step += 1;
    }
    println!("{target}: {step} spoiled inputs in {:.1} s", began.elapsed().as_secs_f64());
}
