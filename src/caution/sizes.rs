//! What a whole catalogue's drops and bases are to the cylinder, each shape tried once.

use std::collections::{BTreeMap, HashMap};

use serde::{Deserialize, Serialize};

use super::{Gauge, PartSize};
use crate::craft::{Base, DropKind};

/// The size of every drop and base by its id, for one drawing of the cylinder.
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

    /// Tries all drops. Those of the same body, looks, ring, materials, loose parts and guesses are tried once.
    pub fn of_all<'a>(kinds: impl IntoIterator<Item = &'a DropKind>, gauge: Gauge) -> Self {
        let mut tried: HashMap<String, PartSize> = HashMap::new();
        let known = kinds.into_iter().map(|kind| {
            let (materials, off) = (&kind.facts.materials, &kind.facts.comes_off);
            let (body, looks) = (&kind.body, &kind.assortment);
            let shape = format!("{body:?} {looks:?} {:?} {materials:?} {off:?} {:?}", kind.ring, kind.guessed);
            (kind.id.clone(), *tried.entry(shape).or_insert_with(|| PartSize::of(kind, gauge)))
        });
        Self { gauge, known: known.collect() }
    }

    /// Tries the bases as well.
    #[must_use]
    pub fn with_bases<'a>(mut self, bases: impl IntoIterator<Item = &'a Base>) -> Self {
        let gauge = self.gauge;
        self.known.extend(bases.into_iter().map(|base| (base.id.clone(), PartSize::of_base(base, gauge))));
        self
    }

    /// The drawing they were tried with.
    pub const fn gauge(&self) -> Gauge {
        self.gauge
    }

    /// The size of a base.
    pub fn of_base(&self, base: &Base) -> PartSize {
        self.known.get(&base.id).copied().unwrap_or_else(|| PartSize::of_base(base, self.gauge))
    }

    /// The size of one drop.
    pub fn of(&self, kind: &DropKind) -> PartSize {
        self.known.get(&kind.id).copied().unwrap_or_else(|| PartSize::of(kind, self.gauge))
    }
}
