//! The seller's part: PIN, menu, pairing.

use bevy_egui::egui::{Align2, Rect, pos2, vec2};
use rust_decimal::Decimal;

use super::{
    super::{
        i18n::Lang,
        layout::{Layout, cut_bottom, grid},
        paint::{Brush, Icon, Look, Plate},
        targets::ScrollId,
        theme::{self, Type},
        tone::Tone,
    },
    Scene, keypad,
    parts::{Flow, bar_title, caption, hand_of, looks, top_bar},
    qr, told,
};
use crate::guest::{
    Request, SellerStep,
    settings::{CARD_CORNER_MM, CARD_HEIGHT_MM, CARD_WIDTH_MM},
};

pub(super) fn paint(b: &mut Brush, s: &Scene, layout: &Layout) {
    let bar = top_bar(b, s, layout.top);
    bar_title(b, bar, &s.t("seller-title"));
    let rest = Rect::from_min_max(pos2(layout.window.left(), layout.top.bottom()), layout.window.max);
    match &s.guest.seller().step {
        SellerStep::Menu => menu(b, s, rest.shrink(b.gap() * 1.5)),
        SellerStep::Pin => keys(b, s, rest, "pin-ask", true, &[]),
        SellerStep::Address => keys(b, s, rest, "pair-address", false, &['.', ':']),
        SellerStep::Code { .. } => keys(b, s, rest, "pair-code", false, &[]),
        SellerStep::Card { px_per_mm } => bank_card(b, s, *px_per_mm, rest),
        SellerStep::Checking | SellerStep::Pairing => {
            b.text(rest, Align2::CENTER_CENTER, &s.t("seller-asking"), Type::HEADING);
        }
    }
}

fn keys(b: &mut Brush, s: &Scene, rest: Rect, prompt: &str, secret: bool, more: &[char]) {
    let seller = s.guest.seller();
    let typed = if secret { "•".repeat(seller.typed.chars().count()) } else { seller.typed.clone() };
    let said = seller.note.as_ref().map_or_else(|| s.t(prompt), |note| told::noted(s, note));
    keypad::paint(b, s, rest, &keypad::Keypad { said, typed, more });
}

fn menu(b: &mut Brush, s: &Scene, rect: Rect) {
    b.card(rect, Plate::Paper);
    let inner = rect.shrink(b.gap() * 1.5);
    let gap = b.gap();
    b.scroll(ScrollId::Sheet, inner, |b, start| {
        let width = inner.width() - b.px(12.0);
        let mut y = start.y;
        if let Some(note) = &s.guest.seller().note {
            y = b.paragraph(pos2(start.x, y), width, &told::noted(s, note), Type::NAME) + gap;
        }
        y = caption(b, s, pos2(start.x, y), width, "seller-language");
        let mut flow = Flow::new(b, pos2(start.x, y), width);
        for lang in Lang::ALL {
            flow.choice(b, lang.own_name(), lang == s.guest.settings().lang, None, Request::DefaultLanguage(lang));
        }
        let at = pos2(start.x, flow.bottom() + gap);
        y = hand_of(b, s, s.guest.settings().left_handed, at, width, Request::LeftHanded);
        y = b.paragraph(pos2(start.x, y + gap * 1.5), width, &s.t("seller-looks"), Type::NAME) + gap * 0.5;
        y = looks(b, s, s.guest.settings().looks, pos2(start.x, y), width, Request::DefaultLooks);
        y = caption(b, s, pos2(start.x, y + gap), width, "seller-screen");
        let measured = match s.guest.settings().px_per_mm.and_then(Decimal::from_f32_retain) {
            Some(px) => s.texts.with("seller-measured", &[("px", s.texts.lang.number(px.round_dp(2)).into())]),
            None => s.t("seller-not-measured"),
        };
        y = b.paragraph(pos2(start.x, y), width, &measured, Type::BODY) + gap * 0.7;
        let mut flow = Flow::new(b, pos2(start.x, y), width);
        flow.choice(b, &s.t("seller-card"), false, None, Request::MatchCard);
        y = caption(b, s, pos2(start.x, flow.bottom() + gap), width, "seller-desk");
        let link = &s.line.link;
        let waiting = s.texts.with("seller-waiting", &[("n", (link.waiting() as i64).into())]);
        let state = match (link.desk(), link.digit()) {
            (Some(desk), Some(digit)) => {
                s.texts.with("seller-paired", &[("desk", desk.into()), ("digit", i64::from(digit).into())])
            }
            _ => s.t("seller-not-paired"),
        };
        let reach = match s.guest.known().in_reach {
            Some(false) => format!(" {}", s.t("desk-away")),
            _ => String::new(),
        };
        let let_go = if s.guest.known().let_go { format!(" {}", s.t("seller-let-go")) } else { String::new() };
        let aside = match link.aside() {
            0 => String::new(),
            n => format!(" {}", s.texts.with("seller-aside", &[("n", (n as i64).into())])),
        };
        let line = format!("{state}{let_go} {waiting}{aside}{reach}");
        y = b.paragraph(pos2(start.x, y), width, &line, Type::BODY) + gap * 0.7;
        let mut flow = Flow::new(b, pos2(start.x, y), width);
        if s.desk_here.is_some() {
            flow.choice(b, &s.t("seller-open-desk"), false, None, Request::OpenDesk);
        }
        flow.choice(b, &s.t("seller-pair"), false, None, Request::StartPairing);
        flow.choice(b, &s.t("seller-leave"), false, None, Request::Leave);
        match s.address_for_a_phone() {
            Some(address) => {
                y = b.paragraph(pos2(start.x, flow.bottom() + gap), width, &s.t("seller-phone"), Type::SMALL)
                    + gap * 0.7;
                let side = b.px(220.0).min(width);
                qr::paint(b, Rect::from_min_size(pos2(start.x, y), vec2(side, side)), &address);
                b.paragraph(pos2(start.x, y + side + gap * 0.5), width, &address, Type::BODY)
            }
            None => flow.bottom(),
        }
    });
}

/// A drawn bank card to be matched by a real one, and buttons that size it.
fn bank_card(b: &mut Brush, s: &Scene, px_per_mm: f32, rest: Rect) {
    let gap = b.gap();
    let height = b.touch_px(theme::TOUCH_MAIN);
    let (same, above) = cut_bottom(rest.shrink(gap), height);
    // Upright there is height enough for a row of their own.
    let upright = rest.height() > rest.width();
    let (buttons, above) =
        if upright { cut_bottom(above.with_max_y(above.bottom() - gap), height) } else { (same, above) };
    let drawn = vec2(CARD_WIDTH_MM, CARD_HEIGHT_MM) * px_per_mm;
    let card = Rect::from_min_size(pos2(b.window.left() + gap, above.top()), drawn);
    b.fill(card, CARD_CORNER_MM * px_per_mm, Tone::Tag);
    b.outline(card, CARD_CORNER_MM * px_per_mm, 2.0, Tone::Ink);
    // Its corner can be taken by a finger, wherever there is room for one.
    let side = b.touch_px(64.0);
    let corner = Rect::from_center_size(card.right_bottom(), vec2(side, side)).intersect(above.expand(gap));
    b.targets.corner = Some(corner);
    let (at, r, arm) = (card.right_bottom() - vec2(1.0, 1.0) * b.px(4.0), b.px(22.0), b.px(9.0));
    b.painter.circle(at, r, b.color(Tone::Plum), b.stroke(2.0, Tone::Paper));
    for way in [-1.0, 1.0] {
        let tip = at + vec2(arm, arm) * way;
        for wing in [vec2(-arm * way, 0.0), vec2(0.0, -arm * way), -vec2(arm, arm) * way] {
            b.painter.line_segment([tip, tip + wing], b.stroke(2.5, Tone::Paper));
        }
    }
    // The words stand on the drawn card: beside it there may be no room.
    let words = card.intersect(above).shrink(CARD_CORNER_MM * px_per_mm);
    b.text(words, Align2::LEFT_TOP, &s.t("card-ask"), Type::BODY);
    let sizes = [
        (Icon::Minus, "card-much-smaller", -10),
        (Icon::Minus, "card-smaller", -1),
        (Icon::Plus, "card-larger", 1),
        (Icon::Plus, "card-much-larger", 10),
    ];
    let places = grid(buttons, if upright { 4 } else { 5 }, 1, gap * 0.7);
    for (place, (icon, key, steps)) in places.iter().zip(sizes) {
        b.button(
            *place,
            Look::Plain,
            Some(icon),
            &s.t(key),
            Some(Request::SizeCard { steps, most_px: b.window.width() }),
        );
    }
    let place = if upright { Some(&same) } else { places.last() };
    if let Some(place) = place {
        b.button(*place, Look::Main, Some(Icon::Tick), &s.t("card-same"), Some(Request::KeepCard));
    }
}
