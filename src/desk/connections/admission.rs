//! How many may be connected, and who goes when somebody new comes.

use std::{
    collections::HashMap,
    net::IpAddr,
    sync::{Arc, Mutex, MutexGuard, PoisonError},
};

use super::visit::Visit;

/// Connections of one address: a laptop with twenty pages open needs fewer.
const PER_ADDRESS: usize = 64;
/// All connections. Some systems let a program have no more than 256 files open.
const IN_ALL: usize = 192;

/// The connections there are.
#[derive(Default)]
pub(super) struct Admission {
    inside: Mutex<Vec<Arc<Visit>>>,
}

impl Admission {
    fn lock(&self) -> MutexGuard<'_, Vec<Arc<Visit>>> {
        self.inside.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Lets `ip` in, and for that turns somebody away who only waits; `None` where everybody is being answered.
    pub(super) fn let_in(&self, ip: IpAddr) -> Option<Arc<Visit>> {
        let mut inside = self.lock();
        let mut by_address: HashMap<IpAddr, usize> = HashMap::new();
        inside.iter().for_each(|visit| *by_address.entry(visit.ip).or_default() += 1);
        let is_full_for_it = by_address.get(&ip).is_some_and(|count| *count >= PER_ADDRESS);
        if is_full_for_it || inside.len() >= IN_ALL {
            let waiting = inside.iter().enumerate().filter(|(_, visit)| !is_full_for_it || visit.ip == ip);
            let (at, _) = waiting
                .filter_map(|(at, visit)| Some((at, (by_address.get(&visit.ip)?, visit.waits_since()?))))
                .min_by(|(_, (many, since)), (_, (others, later))| others.cmp(many).then(since.cmp(later)))?;
            inside.swap_remove(at).turn_away();
        }
        let visit = Visit::new(ip);
        inside.push(Arc::clone(&visit));
        Some(visit)
    }

    /// A connection has ended.
    pub(super) fn left(&self, visit: &Arc<Visit>) {
        self.lock().retain(|other| !Arc::ptr_eq(other, visit));
    }
}

#[cfg(test)]
mod tests {
    use super::{super::visit::Activity, *};

    fn ip(last: u8) -> IpAddr {
        IpAddr::from([192, 168, 4, last])
    }

    #[test]
    fn who_only_waits_makes_room_and_who_is_answered_stays() {
        let door = Admission::default();
        let answered = door.let_in(ip(1)).unwrap();
        answered.lock().0 = Activity::Busy;
        let first = door.let_in(ip(2)).unwrap();
        let others: Vec<_> = (0..1000).map(|_| door.let_in(ip(2)).unwrap()).collect();
        assert!(first.is_turned_away() && others[0].is_turned_away() && !others[999].is_turned_away());
        assert!(!answered.is_turned_away());
        assert_eq!(door.lock().len(), PER_ADDRESS + 1);
        // Of many addresses the one that has most gives way, and only so many come in at all.
        let crowd: Vec<_> =
            (10..250).flat_map(|last| (0..3).map(move |_| last)).map(|last| door.let_in(ip(last))).collect();
        assert!(crowd.iter().all(Option::is_some));
        assert_eq!(door.lock().len(), IN_ALL);
        let of_two = door.lock().iter().filter(|visit| visit.ip == ip(2)).count();
        assert!(of_two < 5, "{of_two}");
        assert!(!answered.is_turned_away());
        door.left(&answered);
        assert_eq!(door.lock().len(), IN_ALL - 1);
    }

    #[test]
    fn where_everybody_is_answered_nobody_comes_in() {
        let door = Admission::default();
        for last in 0..=255 {
            if let Some(visit) = door.let_in(ip(last)) {
                visit.lock().0 = Activity::Busy;
            }
        }
        assert!(door.let_in(ip(7)).is_none());
        assert_eq!(door.lock().len(), IN_ALL);
    }
}
