//! How often somebody may guess a secret. Everybody has a budget of their own, so that nobody can use up another's: a
//! tablet, a browser that was signed in before, an address. Only strangers have one together as well, since addresses
//! are cheap.

use std::{
    collections::HashMap,
    mem::discriminant,
    net::IpAddr,
    sync::{Mutex, PoisonError},
    time::{Duration, Instant},
};

use crate::ledger::SELLER;

/// What is guessed.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub(super) enum Secret {
    /// A PIN, and by which name it was tried.
    Pin(String),
    /// The code that pairs a tablet.
    PairCode,
    /// The code by which the PIN is set from another machine.
    SetupCode,
}

impl Secret {
    /// The seller's PIN.
    pub(super) fn sellers_pin() -> Self {
        Self::Pin(SELLER.to_owned())
    }

    /// Whether tries at both count together: everybody's PINs do, so that trying many names gives no more tries.
    fn is_of_the_sort_of(&self, other: &Self) -> bool {
        discriminant(self) == discriminant(other)
    }
}

/// Who tries to guess a secret, as far as they can be told apart.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub(super) enum Guesser {
    /// Somebody of whom only the address is known.
    Address(IpAddr),
    /// A browser in which somebody was signed in before, by the hash of its key.
    Browser(String),
    /// A helper who is signed in, from wherever, and types the seller's PIN.
    Helper(String),
    /// A paired tablet.
    Tablet(u8),
}

impl Guesser {
    /// A stranger at `address`. Whoever has one address of version 6 has all of its network's (RFC 4291, section 2.5.4:
    /// 64 bits of the interface's own), so these count as one.
    pub(super) fn at(address: IpAddr) -> Self {
        Self::Address(match address.to_canonical() {
            IpAddr::V6(v6) => IpAddr::V6((u128::from(v6) >> 64 << 64).into()),
            v4 => v4,
        })
    }

    const fn is_stranger(&self) -> bool {
        matches!(self, Self::Address(_))
    }
}

/// So many tries in so much time.
type Limit = (usize, Duration);

const MINUTE: Duration = Duration::from_secs(60);
const HOUR: Duration = Duration::from_secs(3600);
/// For each guesser. A PIN of six digits stands these for more than two years on average.
const EACH: [Limit; 2] = [(5, MINUTE), (20, HOUR)];
/// For all strangers together.
const STRANGERS: [Limit; 2] = [(60, MINUTE), (300, HOUR)];

/// The tries of the last hour.
#[derive(Default)]
pub(super) struct GuessBudgets {
    tries: Mutex<HashMap<(Secret, Guesser), Vec<Instant>>>,
}

impl GuessBudgets {
    /// Counts a try; the seconds to wait where there were too many.
    pub(super) fn guess(&self, secret: &Secret, who: &Guesser, now: Instant) -> Result<(), u32> {
        let mut tries = self.tries.lock().unwrap_or_else(PoisonError::into_inner);
        tries.values_mut().for_each(|times| times.retain(|time| now.saturating_duration_since(*time) < HOUR));
        tries.retain(|_, times| !times.is_empty());
        let of = |is_theirs: &dyn Fn(&Guesser) -> bool| -> Vec<Instant> {
            let counted = tries.iter().filter(|((of, by), _)| of.is_of_the_sort_of(secret) && is_theirs(by));
            counted.flat_map(|(_, times)| times.iter().copied()).collect()
        };
        let mine = of(&|by| by == who);
        let mut wait = EACH.iter().filter_map(|limit| wait_for(&mine, *limit, now)).max();
        if who.is_stranger() {
            let all = of(&Guesser::is_stranger);
            wait = wait.max(STRANGERS.iter().filter_map(|limit| wait_for(&all, *limit, now)).max());
        }
        match wait {
            Some(wait) => Err(wait.as_secs() as u32 + 1),
            None => {
                tries.entry((secret.clone(), who.clone())).or_default().push(now);
                Ok(())
            }
        }
    }

    /// Who was right has the tries at this secret again, and no others: a helper's own PIN gives no more at the seller's.
    pub(super) fn was_right(&self, secret: &Secret, who: &Guesser) {
        self.tries.lock().unwrap_or_else(PoisonError::into_inner).remove(&(secret.clone(), who.clone()));
    }
}

/// How long until one more try is within the limit; `None` if it is now.
fn wait_for(times: &[Instant], (most, within): Limit, now: Instant) -> Option<Duration> {
    let mut recent: Vec<Duration> =
        times.iter().map(|time| now.saturating_duration_since(*time)).filter(|age| *age < within).collect();
    if recent.len() < most {
        return None;
    }
    recent.sort_unstable();
    // The try that has to grow too old first.
    recent.get(most - 1).map(|age| within - *age)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn address(last: u8) -> Guesser {
        Guesser::at(IpAddr::from([192, 168, 4, last]))
    }

    /// Four addresses that guess for two minutes kept the right PIN out of everybody's reach.
    #[test]
    fn guessing_strangers_lock_nobody_else_out() {
        let (budgets, began) = (GuessBudgets::default(), Instant::now());
        let known = Guesser::Browser("a browser".into());
        for second in 0..120 {
            let now = began + Duration::from_secs(second);
            for last in 1..=4 {
                let _ = budgets.guess(&Secret::sellers_pin(), &address(last), now);
            }
            if second % 5 == 0 {
                assert_eq!(budgets.guess(&Secret::sellers_pin(), &known, now), Ok(()), "second {second}");
                budgets.was_right(&Secret::sellers_pin(), &known);
                let new_phone = address(50 + (second / 5) as u8);
                assert_eq!(budgets.guess(&Secret::sellers_pin(), &new_phone, now), Ok(()), "second {second}");
                budgets.was_right(&Secret::sellers_pin(), &new_phone);
            }
        }
        let later = began + Duration::from_secs(119);
        assert!(budgets.guess(&Secret::sellers_pin(), &address(1), later).is_err());
    }

    #[test]
    fn each_guesser_and_each_secret_has_its_own_budget() {
        let (budgets, now) = (GuessBudgets::default(), Instant::now());
        for who in [address(1), Guesser::Browser("b".into()), Guesser::Tablet(3)] {
            for secret in [Secret::sellers_pin(), Secret::PairCode, Secret::SetupCode] {
                for _ in 0..5 {
                    assert_eq!(budgets.guess(&secret, &who, now), Ok(()), "{who:?} {secret:?}");
                }
                let wait = budgets.guess(&secret, &who, now + Duration::from_secs(10)).unwrap_err();
                assert_eq!(wait, 51, "{who:?} {secret:?}");
            }
        }
        // A refused try does not make the wait longer.
        assert_eq!(budgets.guess(&Secret::sellers_pin(), &address(1), now + MINUTE), Ok(()));
    }

    /// 20 tries an hour and 300 of all strangers: whoever tries without end gets 7,200 a day, and half of a million PINs
    /// take 69 days; with one address 480 a day.
    #[test]
    fn patience_does_not_help() {
        let budgets = GuessBudgets::default();
        let began = Instant::now();
        let (mut one, mut all) = (0, 0);
        for second in 0..24 * 3600 {
            let now = began + Duration::from_secs(second);
            one += usize::from(budgets.guess(&Secret::sellers_pin(), &address(1), now).is_ok());
            all += usize::from(budgets.guess(&Secret::PairCode, &address((second % 200) as u8), now).is_ok());
        }
        assert!((400..=480).contains(&one), "{one}");
        assert!((7000..=7200).contains(&all), "{all}");
    }

    #[test]
    fn one_network_of_version_6_is_one_stranger() {
        let (budgets, now) = (GuessBudgets::default(), Instant::now());
        let host = |n: u128| Guesser::at(IpAddr::V6((0x2001_0db8_0000_0001_u128 << 64 | n).into()));
        assert!((0..5).all(|n| budgets.guess(&Secret::sellers_pin(), &host(n), now).is_ok()));
        assert!(budgets.guess(&Secret::sellers_pin(), &host(77), now).is_err());
        let mapped = IpAddr::V6(std::net::Ipv4Addr::new(192, 168, 4, 1).to_ipv6_mapped());
        assert_eq!(Guesser::at(mapped), address(1));
    }

    #[test]
    fn many_names_give_no_more_tries_and_ones_own_pin_gives_none_back() {
        let (budgets, now, phone) = (GuessBudgets::default(), Instant::now(), Guesser::Browser("a phone".into()));
        let of = |name: &str| Secret::Pin(name.into());
        for name in ["Mia", "Jo", "Mia", "nobody"] {
            assert_eq!(budgets.guess(&of(name), &phone, now), Ok(()));
        }
        assert_eq!(budgets.guess(&Secret::sellers_pin(), &phone, now), Ok(()));
        assert!(budgets.guess(&of("Ida"), &phone, now).is_err(), "five a minute, whoever's");
        assert_eq!(budgets.guess(&Secret::PairCode, &phone, now), Ok(()), "another secret");
        budgets.was_right(&of("Mia"), &phone);
        for _ in 0..2 {
            assert_eq!(budgets.guess(&Secret::sellers_pin(), &phone, now), Ok(()), "her two tries");
        }
        assert!(budgets.guess(&Secret::sellers_pin(), &phone, now).is_err());
    }
}
