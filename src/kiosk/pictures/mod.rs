//! The drops' pictures: small ones for trays and lists, and large ones with their relief for what hangs, flies or is in the
//! hand.
//!
//! Files are read and decoded off the frame, what is needed first before the rest, and little is shown anew in one frame. The
//! small ones stay; of the large ones, those that were used last, within [`LARGE_BUDGET_BYTES`].

mod decode;
mod relief;
mod silhouette;
mod texture;

use std::{
    collections::{HashMap, HashSet},
    path::PathBuf,
    sync::Arc,
};

use bevy::{
    prelude::*,
    tasks::{AsyncComputeTaskPool, Task, block_on, poll_once},
};
use bevy_egui::{EguiTextureHandle, EguiUserTextures, egui};

use super::{
    Phase,
    pointer::{Drag, Fingers},
    power::Awake,
    stage::{Flights, Moving},
    tablet::Tablet,
};
use crate::{catalog::relief_name, craft::LookNumber, guest::Guest};
use decode::Decoded;
pub(super) use silhouette::Silhouette;
pub(super) use texture::{lit_texture, relief_map, texture};

/// What large pictures may take in all; what is in use stays in any case.
const LARGE_BUDGET_BYTES: usize = 64 << 20;
/// So many files are decoded at once: a photo of 640 pixels takes 1.6 MB meanwhile.
const AT_ONCE: usize = 12;
/// So many of these at most are of pictures that nobody waits for: what is needed next does not stand behind them.
const AHEAD_AT_ONCE: usize = 2;
/// What is given to the graphics driver in one frame, at most: two large pictures with their reliefs, or as much of small
/// ones, so that a whole tray is there within a few frames.
const GIVEN_A_FRAME_BYTES: usize = 2 * LARGE_BYTES;
/// A large picture of 512 × 512 pixels with its relief and all their smaller sizes.
const LARGE_BYTES: usize = 2 * 4 * (512 * 512 * 4 / 3);

/// A picture as it is painted on the paper.
#[derive(Debug, Clone)]
pub struct OnPaper {
    /// The texture, premultiplied.
    pub texture: egui::TextureId,
    /// Size of the picture in pixels; only the proportion counts.
    pub size: egui::Vec2,
}

/// A picture as it hangs on the stage.
#[derive(Debug, Clone)]
pub struct OnStage {
    /// The picture, premultiplied.
    pub image: Handle<Image>,
    /// How its surface leans, for the light.
    pub relief: Handle<Image>,
}

#[derive(Debug)]
struct Small {
    image: Handle<Image>,
    paper: OnPaper,
    silhouette: Arc<Silhouette>,
}

#[derive(Debug)]
struct Large {
    stage: OnStage,
    bytes: usize,
    /// The frame in which it was used last.
    used: u64,
}

/// One picture of the catalogue.
#[derive(Debug, Default)]
struct Picture {
    file: PathBuf,
    small: Option<Small>,
    large: Option<Large>,
    /// Its file has changed, or its relief's: what is shown is shown until the new one has come.
    stale_small: bool,
    stale_large: bool,
    /// It does not decode; its drop is shown by its name.
    broken: bool,
}

/// A file that is being decoded.
struct UnderWay {
    name: String,
    is_large: bool,
    task: Task<Result<Decoded, String>>,
}

/// All pictures, by file name.
#[derive(Resource, Default)]
pub struct Pictures {
    all: HashMap<String, Picture>,
    /// The files of the reliefs that came with the catalogue, by their file names.
    reliefs: HashMap<String, PathBuf>,
    under_way: Vec<UnderWay>,
    flat: Handle<Image>,
    frame: u64,
    /// Bytes of the large textures that are kept.
    large_bytes: usize,
    /// Every small picture has come or is broken: nobody has to look for one that is missing.
    all_small: bool,
    /// Pictures that left the stage or were replaced since the stage looked last.
    times_changed: u64,
}

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Pictures>()
        .add_systems(Startup, make_a_flat_relief)
        .add_systems(Update, keep_at_hand.in_set(Phase::Derive));
}

/// What has no relief of its own yet lies flat, and is nowhere clear: the relief's opacity is where the body is.
fn make_a_flat_relief(mut pictures: ResMut<Pictures>, mut images: ResMut<Assets<Image>>) {
    let flat = image::RgbaImage::from_pixel(1, 1, image::Rgba([128, 128, 255, 0]));
    pictures.flat = images.add(relief_map(flat));
}

impl Pictures {
    /// The small picture called `name`, once it has come and if it is one.
    pub fn small(&self, name: &str) -> Option<&OnPaper> {
        Some(&self.all.get(name)?.small.as_ref()?.paper)
    }

    /// The picture for the stage; the small one until the large one has come.
    pub fn on_stage(&self, name: &str) -> Option<OnStage> {
        let picture = self.all.get(name)?;
        let small = || {
            let image = picture.small.as_ref()?.image.clone();
            Some(OnStage { image, relief: self.flat.clone() })
        };
        picture.large.as_ref().map(|large| large.stage.clone()).or_else(small)
    }

    /// What of the picture shows.
    pub fn silhouette(&self, name: &str) -> Option<&Arc<Silhouette>> {
        Some(&self.all.get(name)?.small.as_ref()?.silhouette)
    }

    /// Whether everything that is needed now has come, as far as it decodes.
    pub fn are_settled(&self) -> bool {
        self.under_way.is_empty() && self.all.values().all(|one| one.broken || one.small.is_some() && !one.stale_small)
    }

    /// Bytes of all textures that are kept.
    pub fn bytes(&self) -> usize {
        let small = self.all.values().filter(|one| one.small.is_some()).count();
        let side = decode::SMALL_PX;
        small * texture::bytes_of(UVec2::splat(side)) + self.large_bytes
    }

    /// How often pictures of the stage have left or been replaced.
    pub(super) const fn times_changed(&self) -> u64 {
        self.times_changed
    }

    /// Takes note of a picture's file, a new one or another one than before.
    pub(super) fn take_in(&mut self, name: String, file: PathBuf) {
        if name.ends_with(".normal.png") {
            for (picture, one) in &mut self.all {
                one.stale_large |= relief_name(picture) == name;
            }
            self.reliefs.insert(name, file);
            return;
        }
        let one = self.all.entry(name).or_default();
        (one.file, one.stale_small, one.stale_large, one.broken) = (file, true, true, false);
        self.all_small = false;
    }

    /// The next file to decode: what hangs, flies or is in the hand first, then the tray that is shown, then the rest.
    fn next(&self, large: &HashSet<&str>, seen: &HashSet<&str>) -> Option<(String, bool)> {
        let busy =
            |name: &str, is_large: bool| self.under_way.iter().any(|one| one.name == name && one.is_large == is_large);
        let fresh = |name: &str, is_large: bool| {
            let missing = |one: &Picture| match is_large {
                true => one.large.is_none() || one.stale_large,
                false => one.small.is_none() || one.stale_small,
            };
            self.all.get(name).is_some_and(|one| !one.broken && missing(one)) && !busy(name, is_large)
        };
        let on_stage = || large.iter().copied();
        let first = on_stage().chain(seen.iter().copied()).find(|name| fresh(name, false)).map(|name| (name, false));
        let then = || on_stage().find(|name| fresh(name, true)).map(|name| (name, true));
        // What is under way fills the threads already; a few more would only stand before what a guest turns to next.
        let is_quiet = !self.all_small && self.under_way.len() < AHEAD_AT_ONCE;
        let rest = || self.all.keys().filter(|_| is_quiet).map(String::as_str);
        let last = || rest().find(|name| fresh(name, false)).map(|name| (name, false));
        first.or_else(then).or_else(last).map(|(name, is_large)| (name.to_owned(), is_large))
    }

    fn start(&mut self, name: String, is_large: bool) {
        let Some(one) = self.all.get(&name) else { return };
        let (file, relief) = (one.file.clone(), self.reliefs.get(&relief_name(&name)).cloned());
        let task = AsyncComputeTaskPool::get().spawn(async move {
            if is_large { decode::large(&file, relief.as_deref()) } else { decode::small(&file) }
        });
        self.under_way.push(UnderWay { name, is_large, task });
    }

    /// Shows what has been decoded, a few at a time; whether anything is still to come.
    fn show(&mut self, images: &mut Assets<Image>, paper: &mut EguiUserTextures) {
        let mut given = 0;
        let mut at = 0;
        while at < self.under_way.len() && given < GIVEN_A_FRAME_BYTES {
            let Some(outcome) = block_on(poll_once(&mut self.under_way[at].task)) else {
                at += 1;
                continue;
            };
            let UnderWay { name, is_large, .. } = self.under_way.swap_remove(at);
            given += if is_large { LARGE_BYTES } else { texture::bytes_of(UVec2::splat(decode::SMALL_PX)) };
            let frame = self.frame;
            let Some(one) = self.all.get_mut(&name) else { continue };
            match outcome {
                Ok(Decoded::Small(small)) => {
                    let image = images.add(small.image);
                    let texture = paper.add_image(EguiTextureHandle::Strong(image.clone()));
                    let fresh =
                        Small { image, paper: OnPaper { texture, size: small.size }, silhouette: small.silhouette };
                    if let Some(old) = one.small.replace(fresh) {
                        paper.remove_image(&old.image);
                    }
                    one.stale_small = false;
                }
                Ok(Decoded::Large(large)) => {
                    let (image_size, relief_size) = (large.image.size(), large.relief.size());
                    let stage = OnStage { image: images.add(large.image), relief: images.add(large.relief) };
                    let bytes = texture::bytes_of(image_size) + texture::bytes_of(relief_size);
                    let fresh = Large { stage, bytes, used: frame };
                    self.large_bytes += bytes;
                    if let Some(old) = one.large.replace(fresh) {
                        self.large_bytes -= old.bytes;
                    }
                    one.stale_large = false;
                    self.times_changed += 1;
                }
                Err(error) => {
                    warn!("the picture {name} does not decode: {error}");
                    one.broken = true;
                }
            }
        }
    }

    /// Lets go of the large pictures that were used longest ago, until what is kept is within the budget.
    fn let_go(&mut self) {
        while self.large_bytes > LARGE_BUDGET_BYTES {
            let unused = self.all.values_mut().filter(|one| one.large.as_ref().is_some_and(|l| l.used < self.frame));
            let Some(oldest) = unused.min_by_key(|one| one.large.as_ref().map_or(0, |large| large.used)) else {
                return;
            };
            if let Some(large) = oldest.large.take() {
                self.large_bytes -= large.bytes;
            }
            self.times_changed += 1;
        }
    }
}

/// The pictures with which drops of these kinds hang, each by the number of its look.
fn as_hung<'a>(guest: &'a Guest, kinds: impl Iterator<Item = (&'a str, LookNumber)>) -> impl Iterator<Item = &'a str> {
    let catalog = guest.known().catalog();
    kinds.filter_map(move |(id, look)| Some(catalog?.drop_kind(id)?.picture_as(look)))
}

/// Has decoded what is needed, and keeps it.
#[expect(clippy::too_many_arguments, reason = "a system's parameters are what it reads")]
fn keep_at_hand(
    mut pictures: ResMut<Pictures>,
    mut images: ResMut<Assets<Image>>,
    mut paper: ResMut<EguiUserTextures>,
    awake: Res<Awake>,
    tablet: Res<Tablet>,
    moving: Res<Moving>,
    flights: Res<Flights>,
    fingers: Res<Fingers>,
) {
    let pictures = &mut *pictures;
    pictures.frame += 1;
    let carried = fingers.iter().filter_map(|finger| match &finger.drag {
        Drag::Carry { kind } => Some((kind.as_str(), tablet.session().history.now().next_look(kind))),
        _ => None,
    });
    let flying = flights.all.iter().map(|flight| (flight.kind.as_str(), flight.look));
    let hung = tablet.derived().piece.iter().flat_map(|piece| piece.hung());
    let large: HashSet<&str> = as_hung(&tablet, hung.chain(flying).chain(carried)).chain(moving.pictures()).collect();
    let catalog = tablet.known().catalog();
    let tray = catalog.and_then(|catalog| catalog.trays.get(tablet.session().tray));
    let lying = tray.iter().flat_map(|tray| tray.compartments()).filter_map(|(_, id)| id);
    let seen: HashSet<&str> = lying.filter_map(|id| Some(catalog?.drop_kind(id)?.picture.as_str())).collect();
    for name in &large {
        if let Some(kept) = pictures.all.get_mut(*name).and_then(|one| one.large.as_mut()) {
            kept.used = pictures.frame;
        }
    }
    pictures.show(&mut images, &mut paper);
    pictures.let_go();
    while pictures.under_way.len() < AT_ONCE
        && let Some((name, is_large)) = pictures.next(&large, &seen)
    {
        pictures.start(name, is_large);
    }
    if pictures.under_way.is_empty() {
        pictures.all_small = true;
    } else {
        awake.stir();
    }
}
