//! The only place where news of the desk comes in.

use std::sync::{Mutex, PoisonError};

use bevy::prelude::*;
use bevy_egui::EguiUserTextures;

use super::{Phase, apply::Answer, known::Known, pictures::Pictures, power::Awake};
use crate::link::{Link, News, NewsReceiver};

/// The line to the desk.
#[derive(Resource)]
pub struct Line {
    /// What asks.
    pub link: Link,
    news: Mutex<NewsReceiver>,
}

impl Line {
    /// A line over `link`, with its news.
    pub fn new(link: Link, news: NewsReceiver) -> Self {
        Self { link, news: Mutex::new(news) }
    }
}

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Known>()
        .init_resource::<Pictures>()
        .add_message::<Answer>()
        .add_systems(Update, take_news_in.in_set(Phase::Intake));
}

fn take_news_in(
    line: Res<Line>,
    mut known: ResMut<Known>,
    mut pictures: ResMut<Pictures>,
    mut images: ResMut<Assets<Image>>,
    mut paper: ResMut<EguiUserTextures>,
    mut answers: MessageWriter<Answer>,
    mut awake: ResMut<Awake>,
) {
    let paired = line.link.is_paired();
    if known.paired != paired {
        known.paired = paired;
    }
    let news = line.news.lock().unwrap_or_else(PoisonError::into_inner);
    while let Ok(one) = news.try_recv() {
        awake.stir();
        match one {
            News::Snapshot(snapshot) => known.snapshot = Some(snapshot),
            News::Picture { name, bytes } => pictures.take_in(name, &bytes, &mut images, &mut paper),
            News::DeskInReach(now) => known.in_reach = Some(now),
            News::LetGo(now) => known.let_go = now,
            News::DiskNearlyFull(now) => known.disk_nearly_full = now,
            News::Delivered { kept, short } => {
                answers.write(Answer::Given { kept, delivered: true, short });
            }
            News::Waiting(kept) => {
                answers.write(Answer::Given { kept, delivered: false, short: vec![] });
            }
            News::Short { kept, parts } => {
                answers.write(Answer::Short { id: kept.id, parts });
            }
            News::Refused { kept, reason } => {
                warn!("the desk refuses {}: {reason}", kept.number);
                answers.write(Answer::Refused { id: kept.id });
            }
            News::NotKept { id, error } => {
                warn!("the piece could not be sent: {error}");
                answers.write(Answer::NotKept { id, error });
            }
            News::Pin(answer) => {
                answers.write(Answer::Pin(answer));
            }
            News::Paired(outcome) => {
                answers.write(Answer::Paired(outcome));
            }
        }
    }
}
