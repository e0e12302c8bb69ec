//! Following the desk's news and keeping them.

use std::{
    fs, io,
    sync::{Arc, atomic::Ordering},
    thread,
};

use super::{
    News, Snapshot,
    ask::{Unanswered, agent},
    shared::{NEWS_TIMEOUT, RETRY, Shared, lock},
    wire::{CatalogContent, DeskNews, in_address},
};
use crate::disk::{self, digest::sha256_hex, durable};

/// Desks of every version name a catalogue by fewer bytes.
const LONGEST_REVISION: usize = 200;

impl Shared {
    /// Follows the desk's news until the end.
    pub(super) fn follow(&self) {
        while !self.ended() {
            self.look_at_disk();
            self.report();
            let (have, revision, practice) = {
                let desk = lock(&self.desk);
                match &desk.state {
                    // The first question after a start asks for everything that is new at once.
                    Some(state) if desk.in_reach == Some(true) => {
                        (state.change, state.revision.clone(), state.practice)
                    }
                    Some(state) => (-1, state.revision.clone(), state.practice),
                    None => (-1, String::new(), false),
                }
            };
            // A spoiled file may say anything here; what no desk ever said is left out, and the desk sends everything.
            let revision = if revision.len() <= LONGEST_REVISION { in_address(&revision) } else { String::new() };
            let path = format!("/link/news?have={have}&revision={revision}&practice={practice}");
            match self.ask::<DeskNews>(&path, None::<&()>, NEWS_TIMEOUT) {
                Ok(_) if self.ended() => return,
                Ok(news) => {
                    if let Err(error) = self.take_in(news) {
                        tracing::warn!("the desk's news could not be kept: {error}");
                        thread::sleep(RETRY);
                    }
                    self.in_reach(true);
                }
                Err(Unanswered::NotPaired) => thread::sleep(RETRY / 5),
                Err(Unanswered::Away(reason)) => {
                    tracing::debug!("no desk: {reason}");
                    self.in_reach(false);
                    thread::sleep(RETRY);
                }
                // It answers, and says itself what is wrong.
                Err(Unanswered::LetGo) => {
                    self.in_reach(true);
                    thread::sleep(RETRY * 5);
                }
                Err(Unanswered::Status(status, reason)) => {
                    tracing::warn!("the desk answers {status}: {reason}");
                    self.in_reach(false);
                    thread::sleep(RETRY);
                }
            }
        }
    }

    /// Keeps the desk's news on disk, then shows them. An answer that says nothing new neither writes nor wakes the screen: it
    /// comes every few seconds, all day.
    fn take_in(&self, mut news: DeskNews) -> io::Result<()> {
        let (wanted, put_away) = (std::mem::take(&mut news.wanted), std::mem::take(&mut news.put_away));
        if news.content.is_some() || lock(&self.desk).state.as_ref() != Some(&news) {
            self.take_in_changes(news)?;
        }
        self.bring_in(&wanted)?;
        for id in put_away {
            lock(&self.outbox).put_away(id)?;
        }
        Ok(())
    }

    fn take_in_changes(&self, mut news: DeskNews) -> io::Result<()> {
        let before = lock(&self.desk).content.clone();
        if let Some(content) = news.content.take() {
            self.fetch_pictures(&content)?;
            durable::write_json(&self.dir.join("catalog.json"), &content)?;
            let mut desk = lock(&self.desk);
            desk.catalog = Some(Arc::new(content.catalog.clone()));
            desk.content = Some(Arc::new(content));
        }
        durable::write_json(&self.dir.join("desk.json"), &news)?;
        let practice = news.practice;
        let practised = lock(&self.desk).state.replace(news).is_some_and(|state| state.practice);
        if practised != practice {
            self.practice_is(practice);
        }
        self.tell_snapshot();
        if before.as_deref() != lock(&self.desk).content.as_deref() {
            self.tell_pictures(before.as_deref());
        }
        Ok(())
    }

    /// The desk practises from now on, or no longer.
    fn practice_is(&self, now: bool) {
        if !now {
            lock(&self.outbox).forget_practice();
        }
        self.tell(News::Practice(now));
        // What had to wait for that can go.
        lock(&self.tries).clear();
        self.outbox_changed.notify_all();
    }

    /// Fetches the pictures that are not kept yet. One that can't be had now is asked for again with the next catalogue.
    fn fetch_pictures(&self, content: &CatalogContent) -> io::Result<()> {
        let Some(pairing) = lock(&self.pairing).clone() else { return Ok(()) };
        let agent = agent(NEWS_TIMEOUT);
        let folder = self.dir.join("pictures");
        for (name, hash) in &content.pictures {
            let path = folder.join(hash);
            if !hash.bytes().all(|b| b.is_ascii_hexdigit()) || path.exists() {
                continue;
            }
            let answer = agent
                .get(format!("{}/link/picture/{}", pairing.desk, in_address(name)))
                .header("authorization", format!("Bearer {}", pairing.key))
                .call()
                .and_then(|mut response| response.body_mut().with_config().limit(32 * 1024 * 1024).read_to_vec());
            match answer {
                Ok(bytes) if sha256_hex(&bytes) == *hash => durable::write(&path, &bytes)?,
                Ok(_) => tracing::warn!("picture {name:?}: what came is another one"),
                Err(error) => tracing::warn!("picture {name:?}: {error}"),
            }
        }
        for file in fs::read_dir(&folder)?.flatten() {
            let name = file.file_name();
            if !content.pictures.values().any(|hash| name == hash.as_str()) {
                fs::remove_file(file.path())?;
            }
        }
        Ok(())
    }

    /// The counts less what lies in the outbox, which the desk may not know of yet.
    pub(super) fn tell_snapshot(&self) {
        let snapshot = {
            let desk = lock(&self.desk);
            let (Some(state), Some(catalog)) = (&desk.state, &desk.catalog) else { return };
            let mut available = state.available.clone();
            // What is practice takes nothing of what is real, nor the other way round.
            for entry in lock(&self.outbox).entries().filter(|entry| entry.ticket.practice == state.practice) {
                let piece = &entry.ticket.piece;
                for id in std::iter::once(&piece.base).chain(&piece.drops) {
                    if let Some(count) = available.get_mut(id) {
                        *count = count.saturating_sub(1);
                    }
                }
            }
            Snapshot {
                catalog: Arc::clone(catalog),
                available,
                revision: state.revision.clone(),
                waiting: state.waiting.clone(),
            }
        };
        self.tell(News::Snapshot(Arc::new(snapshot)));
    }

    /// Tells every kept picture that was not the same `before`.
    pub(super) fn tell_pictures(&self, before: Option<&CatalogContent>) {
        let Some(content) = lock(&self.desk).content.clone() else { return };
        for (name, hash) in &content.pictures {
            if before.is_some_and(|before| before.pictures.get(name) == Some(hash)) {
                continue;
            }
            let file = self.dir.join("pictures").join(hash);
            if file.is_file() {
                self.tell(News::Picture { name: name.clone(), file });
            }
        }
    }

    fn in_reach(&self, now: bool) {
        let before = lock(&self.desk).in_reach.replace(now);
        if before != Some(now) {
            // A desk that is back may be able to take what it could not take before.
            lock(&self.tries).clear();
            // And a desk that was started anew knows nothing of what lies here.
            *lock(&self.reported) = None;
            self.tell(News::DeskInReach(now));
            self.outbox_changed.notify_all();
        }
    }

    fn look_at_disk(&self) {
        let now = disk::is_nearly_full(&self.dir);
        if self.disk_nearly_full.swap(now, Ordering::Relaxed) != now {
            self.tell(News::DiskNearlyFull(now));
        }
    }
}
