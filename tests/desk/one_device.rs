//! A phone that becomes a till: the desk's address as a camera reads it; and an address that is mistyped.

use std::net::{Ipv4Addr, SocketAddr};

use super::*;

/// Light modules that a code needs on every side. Source: ISO/IEC 18004:2015, the quiet zone (from memory).
const QUIET: usize = 4;
/// Pixels of a module in the picture that is read.
const MODULE: usize = 6;

/// What a camera reads in each code of a page, from the bars of its drawing.
fn codes(page: &str) -> Vec<String> {
    let drawings = page.split("<svg class=\"qr\"").skip(1).map(|rest| rest.split("</svg>").next().unwrap());
    drawings.map(read).collect()
}

fn read(drawing: &str) -> String {
    let value = |name: &str| drawing.split(&format!("{name}=\"")).nth(1).unwrap().split('"').next().unwrap();
    let side: usize = value("viewBox").split(' ').nth(2).unwrap().parse().unwrap();
    let mut dark = vec![vec![false; side]; side];
    // Each bar is `Mx yhNv1h-Nz`: one module high and N wide.
    for bar in value(" d").split('z').filter(|bar| !bar.is_empty()) {
        let (at, long) = bar.strip_prefix('M').unwrap().split_once('h').unwrap();
        let (x, y) =
            at.split_once(' ').map(|(x, y)| (x.parse::<usize>().unwrap(), y.parse::<usize>().unwrap())).unwrap();
        let (long, rest) = long.split_once('v').unwrap();
        assert_eq!(rest, format!("1h-{long}"), "a bar that is none: {bar}");
        dark[y][x..x + long.parse::<usize>().unwrap()].fill(true);
    }
    let all_of = |mut which: Box<dyn FnMut(usize, usize) -> bool + '_>| {
        (0..side).flat_map(|y| (0..side).map(move |x| (x, y))).filter(|(x, y)| dark[*y][*x]).all(|(x, y)| which(x, y))
    };
    let inside = QUIET..side - QUIET;
    assert!(
        all_of(Box::new(|x, y| inside.contains(&x) && inside.contains(&y))),
        "something is drawn in the quiet zone"
    );
    let pixel = |x: usize, y: usize| if dark[y / MODULE][x / MODULE] { 0 } else { 255 };
    let mut picture = rqrr::PreparedImage::prepare_from_greyscale(side * MODULE, side * MODULE, pixel);
    let grids = picture.detect_grids();
    assert_eq!(grids.len(), 1, "one code in the drawing");
    grids[0].decode().expect("a code that can be read").1
}

/// A desk that answers in every network, as one under a table does.
fn in_a_network() -> Table {
    let dir = tempfile::tempdir().expect("a temporary folder");
    support::copy(&support::test_table(), &dir.path().join("catalog")).expect("a copy");
    let mut open = config(dir.path());
    open.listen = SocketAddr::from((Ipv4Addr::UNSPECIFIED, 0));
    Table { desk: Desk::start(open).expect("the desk starts"), dir }
}

fn kiosks_page(seller: &Seller, host: &str) -> String {
    let request = seller.agent.get(format!("{}/kiosks", seller.url)).header("Cookie", &seller.cookie);
    Answer::from(request.header("Host", host).call().unwrap()).text
}

#[test]
fn a_camera_reads_the_desks_address() {
    let table = in_a_network();
    let (seller, port) = (table.seller(), table.desk.addr().port());
    let host = format!("192.168.4.1:{port}");
    let page = kiosks_page(&seller, &host);
    let read = codes(&page);
    assert_eq!(read[0], format!("http://{host}"), "the one by which this page was reached is the likeliest");
    for address in &read {
        assert!(page.contains(&format!("<code>{address}</code>")), "{address} stands there in letters too");
        assert!(page.contains(&format!("aria-label=\"QR code for {address}\"")), "{address}");
    }
    let (shown, others) = page.split_once("<svg class=\"qr\"").unwrap();
    assert!(!shown.contains("<details id=\"other-addresses\""), "the likeliest is seen at once");
    assert_eq!(others.contains("<details id=\"other-addresses\""), read.len() > 1);
    // A phone finds a number, and not always a name.
    let named = codes(&kiosks_page(&seller, &format!("localhost:{port}")));
    assert!(named.iter().all(|address| !address.contains("localhost")), "{named:?}");
}

#[test]
fn what_no_phone_reaches_is_no_code() {
    let table = Table::new();
    let page = table.seller().get("/kiosks").text;
    assert!(codes(&page).is_empty() && page.contains("This desk is in no network"), "{page}");
}

#[test]
fn a_mistyped_address_leads_to_the_tickets() {
    let table = Table::new();
    let seller = table.seller();
    let stranger = Seller { agent: agent(), url: table.desk.url(), cookie: String::new() };
    for path in ["/tikets", "/tickets/3-042-6", "/kiosks/nine/release", "/kiosks/code", "/parts"] {
        let own = seller.get(path);
        assert_eq!(own.status, 404, "{path}");
        assert!(own.text.contains("<h1>There is no such page</h1>") && own.text.contains(path), "{path}: {}", own.text);
        assert!(own.text.contains("<nav") && own.text.contains("href=\"/tickets\">To the tickets"), "{path}");
        assert!(!own.text.contains("aria-current=\"page\""), "{path} is no page of the navigation");
        // Whoever is not signed in learns of no page; where a page is, they are led to signing in.
        let others = stranger.get(path);
        assert!(matches!(others.status, 303 | 404) && !others.text.contains("<nav"), "{path}: {}", others.text);
    }
    let request = seller.agent.get(format!("{}/tikets", seller.url)).header("Cookie", &seller.cookie);
    let german = Answer::from(request.header("Accept-Language", "de").call().unwrap());
    assert!(german.status == 404 && german.text.contains("Diese Seite gibt es nicht"), "{}", german.text);
    assert!(german.text.contains("<html lang=\"de\">") && german.text.contains("Zu den Tickets"));
    let script = "/tickets/<script>alert(1)</script>";
    assert!(!seller.get(&script.replace('<', "%3C").replace('>', "%3E")).text.contains("<script>alert"));
}
