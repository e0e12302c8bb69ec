//! Style, script and fonts, all inside the program: the pages need no internet.

use std::sync::LazyLock;

use axum::{
    Router,
    extract::Path,
    http::{HeaderValue, StatusCode, header},
    response::{IntoResponse, Response},
    routing::get,
};

use crate::{disk::digest::sha256_hex, paper};

const STYLE: &str = include_str!("../../assets/desk/desk.css");
/// One file for the browser; each part uses those before it.
const SCRIPT: &str = concat!(
    include_str!("../../assets/desk/renew.js"),
    include_str!("../../assets/desk/fragments.js"),
    include_str!("../../assets/desk/hold.js"),
    include_str!("../../assets/desk/line.js"),
    include_str!("../../assets/desk/tray_photo.js"),
    include_str!("../../assets/desk/desk.js"),
);
/// The board of numbers needs nothing of the others.
const BOARD: &str = include_str!("../../assets/desk/board.js");
const ICON: &str = include_str!("../../assets/desk/icon.svg");
const LIGHT_SANS: &[u8] = include_bytes!("../../assets/fonts/desk-sans-regular.woff2");
const LIGHT_SANS_BOLD: &[u8] = include_bytes!("../../assets/fonts/desk-sans-bold.woff2");
const LIGHT_SERIF: &[u8] = include_bytes!("../../assets/fonts/desk-serif-semibold.woff2");
/// Stands in the addresses of style and script, so that a browser keeps them exactly until they change.
pub(super) static VERSION: LazyLock<String> =
    LazyLock::new(|| sha256_hex(format!("{STYLE}{SCRIPT}{BOARD}"))[..12].to_owned());

pub(super) fn routes<S: Clone + Send + Sync + 'static>() -> Router<S> {
    Router::new().route("/assets/desk/{name}", get(asset))
}

async fn asset(Path(name): Path<String>) -> Response {
    let (kind, bytes): (&str, &'static [u8]) = match name.as_str() {
        "desk.css" => ("text/css; charset=utf-8", STYLE.as_bytes()),
        "desk.js" => ("text/javascript; charset=utf-8", SCRIPT.as_bytes()),
        "board.js" => ("text/javascript; charset=utf-8", BOARD.as_bytes()),
        "icon.svg" => ("image/svg+xml", ICON.as_bytes()),
        "sans.woff2" => ("font/woff2", LIGHT_SANS),
        "sans-bold.woff2" => ("font/woff2", LIGHT_SANS_BOLD),
        "serif.woff2" => ("font/woff2", LIGHT_SERIF),
        // The whole typefaces, for letters that the light ones do not have.
        "sans.ttf" => ("font/ttf", paper::SANS),
        "sans-bold.ttf" => ("font/ttf", paper::SANS_BOLD),
        "serif.ttf" => ("font/ttf", paper::SERIF),
        _ => return StatusCode::NOT_FOUND.into_response(),
    };
    let kept = HeaderValue::from_static("public, max-age=604800");
    ([(header::CONTENT_TYPE, HeaderValue::from_static(kind)), (header::CACHE_CONTROL, kept)], bytes).into_response()
}
