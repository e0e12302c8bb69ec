//! Forms of the table's pages: plain ones and such with a photo, and what the page had seen.

use std::sync::Arc;

use axum::{
    Form, RequestExt,
    extract::{DefaultBodyLimit, FromRequest, FromRequestParts, Multipart, Request},
    http::header,
    response::{IntoResponse, Response},
};
use maud::{Markup, html};

use crate::{
    catalog::{LotKey, Place, Seen, TableFiles},
    desk::{refusal::Refusal, seller::Owner, signed_in::Seller, state::DeskState},
    lang::message,
};

/// The field that says how a place was when the page was made.
const SEEN: &str = "seen";

/// What the seller sent.
pub(in crate::desk::pages) struct TableForm {
    pub seller: Seller,
    pub fields: Vec<(String, String)>,
    /// A photo, where one was chosen.
    pub photo: Option<Vec<u8>>,
}

impl FromRequest<Arc<DeskState>> for TableForm {
    type Rejection = Response;

    async fn from_request(request: Request, desk: &Arc<DeskState>) -> Result<Self, Response> {
        let (mut parts, body) = request.into_parts();
        let owner = Owner::from_request_parts(&mut parts, desk).await.map_err(IntoResponse::into_response)?;
        let kind = parts.headers.get(header::CONTENT_TYPE).and_then(|kind| kind.to_str().ok()).unwrap_or_default();
        let with_photo = kind.starts_with("multipart/form-data");
        let mut request = Request::from_parts(parts, body);
        // How long it may be was looked at before.
        DefaultBodyLimit::disable().apply(&mut request);
        let (fields, photo) = if with_photo { parts_of(request).await? } else { (plain(request).await?, None) };
        Ok(Self { seller: owner.0, fields, photo })
    }
}

async fn plain(request: Request) -> Result<Vec<(String, String)>, Response> {
    let Form(fields) = request.extract().await.map_err(IntoResponse::into_response)?;
    Ok(fields)
}

type Parts = (Vec<(String, String)>, Option<Vec<u8>>);

async fn parts_of(request: Request) -> Result<Parts, Response> {
    let broken = |_| Refusal::wrong(message!("refused-broke-off")).into_response();
    let mut form: Multipart = request.extract().await.map_err(IntoResponse::into_response)?;
    let (mut fields, mut photo) = (Vec::new(), None);
    while let Some(part) = form.next_field().await.map_err(broken)? {
        let name = part.name().unwrap_or_default().to_owned();
        let bytes = part.bytes().await.map_err(broken)?;
        if name == "photo" {
            // Without a choice a browser sends a file of nothing.
            photo = if bytes.is_empty() { photo } else { Some(bytes.to_vec()) };
        } else {
            fields.push((name, String::from_utf8_lossy(&bytes).into_owned()));
        }
    }
    Ok((fields, photo))
}

impl TableForm {
    /// What was typed into a field, without blanks around it; nothing where there is no such field.
    pub(in crate::desk::pages) fn text(&self, name: &str) -> &str {
        self.fields.iter().find(|(one, _)| one == name).map_or("", |(_, text)| text.trim())
    }

    /// What was typed into a field, unless that is nothing.
    pub(in crate::desk::pages) fn told(&self, name: &str) -> Option<&str> {
        Some(self.text(name)).filter(|text| !text.is_empty())
    }

    /// Everything of this name.
    pub(in crate::desk::pages) fn all<'a>(&'a self, name: &'a str) -> impl Iterator<Item = &'a str> {
        self.fields.iter().filter(move |(one, _)| one == name).map(|(_, text)| text.as_str())
    }

    /// How the page's places were.
    pub(in crate::desk::pages) fn seen(&self) -> Seen {
        self.all(SEEN).filter_map(read_mark).collect()
    }

    /// The same fields for another try, but for what was seen and the photo.
    pub(in crate::desk::pages) fn again(&self) -> Vec<(String, String)> {
        self.fields.iter().filter(|(name, _)| name != SEEN).cloned().collect()
    }
}

/// Fields that say how places are now.
pub(in crate::desk::pages) fn marks(files: Option<&TableFiles>, places: &[Place]) -> Markup {
    let marks: Vec<(Place, String)> =
        files.map(|files| places.iter().map(|place| (place.clone(), files.mark(place))).collect()).unwrap_or_default();
    mark_fields(&marks)
}

/// Fields that say how places were when something was made of them.
pub(in crate::desk::pages) fn mark_fields(marks: &[(Place, impl AsRef<str>)]) -> Markup {
    html! {
        @for (place, mark) in marks {
            input type="hidden" name=(SEEN) value={ (address(place)) " " (mark.as_ref()) };
        }
    }
}

/// A place in one word.
fn address(place: &Place) -> String {
    match place {
        Place::Home(home) => format!("at-{home}"),
        Place::Tray(letter) => format!("tray-{letter}"),
        Place::Base(id) => format!("base-{id}"),
        Place::Part(id) => format!("part-{id}"),
        Place::Lot(key) => format!("lot-{}/{}/{}", key.part, key.day, key.lot),
        Place::Table => "table".to_owned(),
    }
}

fn read_mark(text: &str) -> Option<(Place, String)> {
    // A lot's name may have blanks in it; a mark has none.
    let (address, mark) = text.rsplit_once(' ')?;
    let place = match address.split_once('-') {
        Some(("at", home)) => Place::Home(home.parse().ok()?),
        Some(("tray", letter)) => Place::Tray(letter.chars().next()?),
        Some(("base", id)) => Place::Base(id.to_owned()),
        Some(("part", id)) => Place::Part(id.to_owned()),
        Some(("lot", key)) => {
            let mut key = key.splitn(3, '/').map(str::to_owned);
            let (part, day, lot) = (key.next()?, key.next()?, key.next()?);
            Place::Lot(LotKey { part, lot, day })
        }
        _ if address == "table" => Place::Table,
        _ => return None,
    };
    Some((place, mark.to_owned()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_are_read_as_they_are_written() {
        let lot = LotKey { part: "ring-10".into(), lot: "R 10/26 - a".into(), day: "2026-02-11".into() };
        let places = [
            Place::Home("B3".parse().unwrap()),
            Place::Tray('Q'),
            Place::Base("chain-brass".into()),
            Place::Part("ring-10".into()),
            Place::Lot(lot),
            Place::Table,
        ];
        for place in places {
            assert_eq!(read_mark(&format!("{} abc", address(&place))), Some((place, "abc".to_owned())));
        }
        for text in ["", "at-B3", "at-b3 x", "none x", "tray- x", "lot-ring-10/2026-02-11 x"] {
            assert_eq!(read_mark(text), None, "{text}");
        }
    }
}
