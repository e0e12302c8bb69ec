//! What is cut from which spool.

use crate::{
    catalog::{There, Workshop},
    prep::cuts::{CutError, CutJob, Stock, Tenths, Wanted},
    quoting::quoted,
};

/// Beginning a whole spool counts as losing so much, so that remnants and begun spools go first.
const OPENING: Tenths = Tenths(500);

/// Why no cuts can be planned.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum ChainError {
    /// There is no such part.
    #[error("no part is called {}; parts.ron has {}", quoted(.0), .1)]
    NoPart(String, String),
    /// The part is not cut.
    #[error("{} lies in a drawer and is not cut from spools", quoted(.0))]
    NotCut(String),
    /// The cuts themselves.
    #[error(transparent)]
    Cut(#[from] CutError),
}

/// Cuts of one part.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Chains {
    /// The name that the maker gave it.
    pub name: String,
    /// What is cut from what.
    pub job: CutJob,
}

/// The job of cutting `wanted` from the spools of `part`.
///
/// # Errors
/// There is no such part, or nothing of the kind can be cut.
pub fn chains(workshop: &Workshop, part: &str, wanted: &[Wanted]) -> Result<Chains, ChainError> {
    let found = workshop.part(part).ok_or_else(|| {
        let cut = workshop.parts.iter().filter(|part| matches!(part.there, There::Spools { .. }));
        let known: Vec<&str> = cut.map(|part| part.id.as_str()).collect();
        ChainError::NoPart(part.to_owned(), known.join(", "))
    })?;
    let There::Spools { lengths, whole, kerf, keep_from } = &found.there else {
        return Err(ChainError::NotCut(part.to_owned()));
    };
    let mut stock: Vec<Stock> = Vec::new();
    for length in lengths {
        match stock.iter_mut().find(|one| one.length == *length) {
            Some(one) => one.count += 1,
            None => {
                let opening = if length >= whole { OPENING } else { Tenths(0) };
                stock.push(Stock { length: *length, count: 1, opening });
            }
        }
    }
    Ok(Chains { name: found.name.clone(), job: CutJob::new(stock, wanted, *kerf, Some(*keep_from))? })
}
