//! The texts in the guest's language, for all systems.

use bevy::prelude::{Deref, DerefMut, Resource};

pub use crate::lang::Lang;

/// The texts of the language that the tablet speaks now.
#[derive(Resource, Deref, DerefMut)]
pub struct Texts(crate::lang::Texts);

impl Texts {
    /// The texts of `lang`.
    pub fn new(lang: Lang) -> Self {
        Self(crate::lang::Texts::new(lang))
    }

    /// The texts of `lang` as long as other languages may be; see [`crate::lang::Texts::stretched`].
    pub fn stretched(lang: Lang) -> Self {
        Self(crate::lang::Texts::stretched(lang))
    }
}
