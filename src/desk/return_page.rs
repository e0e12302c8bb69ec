//! Where signing in leads: to the page on which the seller was.

use std::convert::Infallible;

use axum::{
    extract::FromRequestParts,
    http::{Method, Uri, header, request::Parts},
};

/// Pages that signing in leads back to; everything else begins at the tickets.
const PAGES: &[&str] = &[
    "/tickets",
    "/number",
    "/bills",
    "/sales",
    "/new",
    "/trays",
    "/table",
    "/put-back",
    "/waiting",
    "/parts",
    "/show",
    "/shows",
    "/bench",
    "/practice",
    "/kiosks",
    "/pin",
    "/staff",
];
/// Signs in an address that need no further coding there (RFC 3986, section 2.3), and the slash.
const PLAIN: &[u8] = b"-._~/";

/// A page of this desk, and whether something that was entered there was lost.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct ReturnPage {
    page: Option<String>,
    lost: bool,
}

impl<S: Send + Sync> FromRequestParts<S> for ReturnPage {
    type Rejection = Infallible;
    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Infallible> {
        Ok(Self::of(parts))
    }
}

impl ReturnPage {
    /// From a request that nobody signed in has made. A form's own address is no page: there it is the one it stood on.
    pub(super) fn of(parts: &Parts) -> Self {
        if parts.method == Method::GET {
            return Self { page: path_of(&parts.uri).and_then(|path| Self::checked(&path)), lost: false };
        }
        let before = parts.headers.get(header::REFERER).and_then(|from| from.to_str().ok());
        let page = before.and_then(path_of_address).and_then(|path| Self::checked(&path));
        Self { page, lost: true }
    }

    /// From what a sign-in page was asked with.
    pub(super) fn to(page: &str) -> Self {
        Self { page: Self::checked(page), lost: false }
    }

    /// A page of this desk and no other: another site must not be able to send a seller somewhere.
    fn checked(page: &str) -> Option<String> {
        let is_page =
            PAGES.iter().any(|one| page.strip_prefix(one).is_some_and(|rest| rest.is_empty() || rest.starts_with('/')));
        let is_plain = page.bytes().all(|b| b.is_ascii_alphanumeric() || PLAIN.contains(&b));
        (is_page && is_plain && !page.contains("//") && !page.contains("..")).then(|| page.to_owned())
    }

    /// The page's address; the tickets where there is none.
    pub(super) fn page(&self) -> &str {
        self.page.as_deref().unwrap_or("/tickets")
    }

    /// The address of the sign-in page that leads back there.
    pub(super) fn sign_in(&self) -> String {
        let mut address = "/sign-in".to_owned();
        let page = self.page.as_ref().filter(|page| *page != "/tickets").map(|page| format!("back={page}"));
        let asked: Vec<String> = page.into_iter().chain(self.lost.then(|| "lost=1".to_owned())).collect();
        if !asked.is_empty() {
            address.push('?');
            address.push_str(&asked.join("&"));
        }
        address
    }
}

/// The path of an address as a browser says where a form stood.
pub(super) fn path_of_address(address: &str) -> Option<String> {
    path_of(&address.parse().ok()?)
}

fn path_of(uri: &Uri) -> Option<String> {
    Some(uri.path().to_owned()).filter(|path| path.starts_with('/'))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_pages_of_this_desk_are_led_back_to() {
        let ticket = "/tickets/0197f1c2-0000-7000-8000-000000000000";
        for page in [ticket, "/trays", "/parts/key-heart", "/kiosks", "/show", "/shows/1", "/practice"] {
            assert_eq!(ReturnPage::to(page).page(), page);
            assert_eq!(ReturnPage::to(page).sign_in(), format!("/sign-in?back={page}"));
        }
        for page in [
            "",
            "//shop.example",
            "http://shop.example/tickets",
            "/\\shop.example",
            "/tickets//shop.example",
            "/sign-out",
            "/tickets/../sign-out",
            "/ticketsx",
            "/tickets?x=1",
            "/tickets/a&lost=1",
            "/tickets/\r\nset-cookie: a",
            "/events",
        ] {
            assert_eq!(ReturnPage::to(page).page(), "/tickets", "{page:?}");
            assert_eq!(ReturnPage::to(page).sign_in(), "/sign-in", "{page:?}");
        }
    }
}
