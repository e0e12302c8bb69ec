//! The only place where news of the desk comes in.

use std::sync::{Mutex, PoisonError};

use bevy::prelude::*;

use super::{Phase, pictures::Pictures, power::Awake, tablet::Heard};
use crate::link::{Link, News, NewsReceiver};

/// The line to the desk.
#[derive(Resource)]
pub(super) struct Line {
    /// What asks.
    pub link: Link,
    news: Mutex<NewsReceiver>,
}

impl Line {
    /// A line over `link`, with its news.
    pub(super) fn new(link: Link, news: NewsReceiver) -> Self {
        Self { link, news: Mutex::new(news) }
    }
}

pub(super) fn plugin(app: &mut App) {
    app.add_systems(Update, take_news_in.in_set(Phase::Intake));
}

fn take_news_in(line: Res<Line>, mut pictures: ResMut<Pictures>, mut heard: MessageWriter<Heard>, awake: Res<Awake>) {
    let news = line.news.lock().unwrap_or_else(PoisonError::into_inner);
    while let Ok(one) = news.try_recv() {
        awake.stir();
        match one {
            News::Picture { name, file } => pictures.take_in(name, file),
            other => {
                heard.write(Heard(other));
            }
        }
    }
}
