//! What a whole catalogue's drops are to the cylinder, each shape tried once.

use std::collections::{BTreeMap, HashMap};

use serde::{Deserialize, Serialize};

use super::{Gauge, PartSize};
use crate::craft::DropKind;

/// Every drop's size by its id, for one drawing of the cylinder.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sizes {
    gauge: Gauge,
    known: BTreeMap<String, PartSize>,
}

impl Sizes {
    /// None known beforehand: each drop is tried when it is asked for.
    pub const fn empty(gauge: Gauge) -> Self {
        Self { gauge, known: BTreeMap::new() }
    }

    /// Tries all drops. Those of the same body, ring and materials are tried once.
    pub fn of_all<'a>(kinds: impl IntoIterator<Item = &'a DropKind>, gauge: Gauge) -> Self {
        let mut tried: HashMap<String, PartSize> = HashMap::new();
        let known = kinds.into_iter().map(|kind| {
            let shape = format!("{:?} {:?} {:?}", kind.body, kind.ring, kind.materials);
            (kind.id.clone(), *tried.entry(shape).or_insert_with(|| PartSize::of(kind, gauge)))
        });
        Self { gauge, known: known.collect() }
    }

    /// The drawing they were tried with.
    pub const fn gauge(&self) -> Gauge {
        self.gauge
    }

    /// The size of one drop.
    pub fn of(&self, kind: &DropKind) -> PartSize {
        self.known.get(&kind.id).copied().unwrap_or_else(|| PartSize::of(kind, self.gauge))
    }
}
