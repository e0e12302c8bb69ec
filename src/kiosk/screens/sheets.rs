//! Sheets over a screen.

use bevy_egui::egui::{Align2, Color32, Rect, Vec2, pos2, vec2};

use super::{
    super::{
        i18n::Lang,
        layout::{cut_bottom, cut_right, cut_top, grid},
        paint::{Brush, Icon, Look, Plate},
        targets::ScrollId,
        theme::{self, Type},
        tone,
    },
    Scene,
    hazards::hazards,
    lengths,
    parts::{Flow, hand_of, lines, looks, sum_line, up_to, wearer},
    suits::unsuitable,
    told,
};
use crate::{
    craft::{Colour, Finish, Sort, Wearer},
    guest::{Filters, Overlay, Request, amounts, length},
};

pub(super) fn paint(b: &mut Brush, s: &Scene, sheet: &Overlay) {
    match sheet {
        Overlay::Lines => {
            let rest = card(b, s, vec2(620.0, 720.0), &s.t("lines-title"));
            let (Some(catalog), Some(piece), Some(quote)) =
                (s.catalog(), &s.guest.derived().piece, &s.guest.derived().quote)
            else {
                return;
            };
            let width = rest.width() - b.px(12.0);
            b.scroll(ScrollId::Sheet, rest, |b, at| {
                let y = lines(b, s, catalog, piece, quote, at, width);
                sum_line(b, s, quote, pos2(at.x, y), width)
            });
        }
        Overlay::Cautions => {
            let rest = card(b, s, vec2(760.0, 720.0), &s.t("caution-title"));
            let (Some(catalog), Some(piece)) = (s.catalog(), &s.guest.derived().piece) else { return };
            b.scroll(ScrollId::Sheet, rest, |b, at| {
                let width = rest.width() - b.px(12.0);
                let y = if s.guest.derived().verdict.suitable { at.y } else { unsuitable(b, s, at, width) };
                hazards(b, s, catalog, piece, pos2(at.x, y), width)
            });
        }
        Overlay::Wearer => wearers(b, s),
        Overlay::Neck => necks(b, s),
        Overlay::Filters => filters(b, s),
        Overlay::StartOver => {
            let rest = card(b, s, vec2(600.0, 330.0), &s.t("anew-title"));
            let (buttons, words) = cut_bottom(rest, b.touch_px(theme::TOUCH_MAIN));
            b.text(words, Align2::LEFT_CENTER, &s.t("anew-text"), Type::BODY);
            if let [keep, anew] = grid(buttons, 2, 1, b.gap())[..] {
                b.button(keep, Look::Plain, None, &s.t("anew-keep"), Some(Request::Close));
                b.button(anew, Look::Main, None, &s.t("anew-yes"), Some(Request::StartOver));
            }
        }
        Overlay::Languages => {
            let rest = card(b, s, vec2(560.0, 480.0), &s.t("languages"));
            let (looks, rest) = cut_bottom(rest, b.touch_px(62.0));
            b.button(looks, Look::Plain, Some(Icon::Letters), &s.t("looks"), Some(Request::Open(Overlay::Looks)));
            let rest = rest.with_max_y(rest.bottom() - b.gap());
            for (place, lang) in grid(rest, 2, 2, b.gap()).into_iter().zip(Lang::ALL) {
                let look = if lang == s.texts.lang { Look::Chosen } else { Look::Plain };
                b.button(place, look, None, lang.own_name(), Some(Request::Speak(lang)));
            }
        }
        Overlay::Looks => {
            let rest = card(b, s, vec2(700.0, 500.0), &s.t("looks"));
            let width = rest.width() - b.px(12.0);
            b.scroll(ScrollId::Sheet, rest, |b, at| {
                let y = looks(b, s, s.guest.looks(), at, width, Request::Look);
                if s.layout().portrait {
                    // The trays lie below the piece, where both hands reach them.
                    return y;
                }
                hand_of(b, s, s.guest.left_handed(), pos2(at.x, y + b.gap()), width, Request::TraysLeft)
            });
        }
        Overlay::Told(told) => {
            let (title, text) = told::worded(s, told);
            let rest = card(b, s, vec2(640.0, 380.0), &title);
            let (ok, words) = cut_bottom(rest, b.touch_px(theme::TOUCH_MAIN));
            b.text(words.with_max_y(words.bottom() - b.gap()), Align2::LEFT_CENTER, &text, Type::BODY);
            b.button(ok, Look::Main, None, &s.t("ok"), Some(Request::Back));
        }
    }
}

/// A card in the middle with a name and a cross; touching beside it closes it. `size` is at scale 1.
fn card(b: &mut Brush, s: &Scene, size: Vec2, title: &str) -> Rect {
    b.over_all();
    b.targets.elsewhere = Some(Request::Close);
    let most = b.window.size() - Vec2::splat(b.gap() * 2.0);
    // Small screens keep the least sizes of things to touch and need more of the window.
    let grown = size * b.u.max(0.72);
    let rect = Rect::from_center_size(b.window.center(), grown.min(most));
    b.targets.sheet = Some(rect);
    b.card(rect, Plate::Paper);
    let inner = rect.shrink(b.gap() * 1.5);
    let (head, rest) = cut_top(inner, b.touch_px(52.0));
    let (cross, name) = cut_right(head, head.height());
    b.text(name, Align2::LEFT_CENTER, title, Type::HEADING);
    b.button(cross, Look::Quiet, Some(Icon::Cross), &s.t("close"), Some(Request::Close));
    rest.with_min_y(rest.top() + b.gap() * 0.7)
}

fn wearers(b: &mut Brush, s: &Scene) {
    let rest = card(b, s, vec2(640.0, 640.0), &s.t("wearer-ask"));
    let (words, answers) = cut_top(rest, b.line(64.0).max(50.0));
    b.text(words, Align2::LEFT_TOP, &s.t("wearer-why"), Type::SMALL);
    let columns = if answers.height() < b.touch_px(70.0) * 4.0 + b.gap() * 3.0 { 2 } else { 1 };
    let places = grid(answers, columns, 4 / columns, b.gap());
    for (place, who) in places.into_iter().zip(Wearer::ANSWERS) {
        let look = if s.guest.session().history.now().wearer == who { Look::Chosen } else { Look::Plain };
        b.button(place, look, None, &wearer(s, who), Some(Request::For(who)));
    }
}

/// How far round the neck is, for the guest who wants to know whether the chain closes on it.
fn necks(b: &mut Brush, s: &Scene) {
    let rest = card(b, s, vec2(760.0, 560.0), &s.t("neck-title"));
    let Some(catalog) = s.catalog() else { return };
    let (region, now) = (catalog.table.region, s.guest.session().history.now().neck);
    let width = rest.width() - b.px(12.0);
    b.scroll(ScrollId::Sheet, rest, |b, at| {
        let y = b.paragraph(at, width, &s.t("neck-why"), Type::SMALL) + b.gap();
        let mut flow = Flow::new(b, pos2(at.x, y), width);
        flow.choice(b, &s.t("neck-unknown"), now.is_none(), None, Request::Neck(None));
        for neck in length::necks(region) {
            let label = lengths::written(neck, region, s.texts.lang);
            flow.choice(b, &label, now == Some(neck), None, Request::Neck(Some(neck)));
        }
        flow.bottom()
    });
}

fn filters(b: &mut Brush, s: &Scene) {
    let rest = card(b, s, vec2(1000.0, 760.0), &s.t("filters-title"));
    let Some(catalog) = s.catalog() else { return };
    let (buttons, rest) = cut_bottom(rest, b.touch_px(62.0));
    let on = &s.guest.session().filters;
    if let [clear, show] = grid(buttons, 2, 1, b.gap())[..] {
        let some = *on != Filters::default();
        b.button(clear, Look::Plain, None, &s.t("filters-clear"), some.then_some(Request::ClearFilters));
        b.button(show, Look::Main, Some(Icon::Tick), &s.t("filters-show"), Some(Request::Close));
    }
    let rest = rest.with_max_y(rest.bottom() - b.gap());
    let (width, gap) = (rest.width() - b.px(12.0), b.gap());
    b.scroll(ScrollId::Sheet, rest, |b, at| {
        let mut y = b.paragraph(at, width, &s.t("filters-budget"), Type::SMALL) + gap * 0.4;
        let mut flow = Flow::new(b, pos2(at.x, y), width);
        flow.choice(b, &s.t("filters-any"), on.budget.is_none(), None, Request::Budget(None));
        let currency = catalog.table.prices.currency;
        for amount in amounts::budgets(currency) {
            flow.choice(b, &s.money(amount), on.budget == Some(amount), None, Request::Budget(Some(amount)));
        }
        y = b.paragraph(pos2(at.x, flow.bottom() + gap), width, &s.t("filters-price"), Type::SMALL) + gap * 0.4;
        let mut flow = Flow::new(b, pos2(at.x, y), width);
        flow.choice(b, &s.t("filters-any"), on.up_to.is_none(), None, Request::UpTo(None));
        for amount in amounts::dearest_drops(currency) {
            flow.choice(b, &up_to(s, amount), on.up_to == Some(amount), None, Request::UpTo(Some(amount)));
        }
        y = b.paragraph(pos2(at.x, flow.bottom() + gap), width, &s.t("wearer-ask"), Type::SMALL) + gap * 0.4;
        let mut flow = Flow::new(b, pos2(at.x, y), width);
        flow.choice(b, &s.t("filters-any"), on.suits.is_none(), None, Request::OnlySuiting(None));
        for who in Wearer::ANSWERS {
            flow.choice(b, &wearer(s, who), on.suits == Some(who), None, Request::OnlySuiting(Some(who)));
        }
        y = b.paragraph(pos2(at.x, flow.bottom() + gap), width, &s.t("filters-sort"), Type::SMALL) + gap * 0.4;
        let mut flow = Flow::new(b, pos2(at.x, y), width);
        flow.choice(b, &s.t("filters-any"), on.sort.is_none(), None, Request::OnlySort(None));
        for sort in Sort::ALL.iter().filter(|sort| catalog.drops.iter().any(|kind| kind.sort == **sort)) {
            let label = s.t(&format!("sort-{}", sort.name()));
            flow.choice(b, &label, on.sort == Some(*sort), None, Request::OnlySort(Some(*sort)));
        }
        y = b.paragraph(pos2(at.x, flow.bottom() + gap), width, &s.t("filters-colour"), Type::SMALL) + gap * 0.4;
        let mut flow = Flow::new(b, pos2(at.x, y), width);
        flow.choice(b, &s.t("filters-any"), on.colour.is_none(), None, Request::OnlyColour(None));
        flow.break_row();
        for colour in Colour::ALL.iter().filter(|c| catalog.drops.iter().any(|kind| kind.colours.contains(c))) {
            let label = s.t(&format!("colour-{}", colour.name()));
            let swatch = tone::swatch(*colour);
            flow.disc(b, &label, on.colour == Some(*colour), swatch, Request::OnlyColour(Some(*colour)));
        }
        y = b.paragraph(pos2(at.x, flow.bottom() + gap), width, &s.t("filters-finish"), Type::SMALL) + gap * 0.4;
        let mut flow = Flow::new(b, pos2(at.x, y), width);
        flow.choice(b, &s.t("filters-any"), on.finish.is_none(), None, Request::OnlyFinish(None));
        flow.break_row();
        for finish in Finish::ALL.iter().filter(|f| catalog.drops.iter().any(|kind| kind.finish == Some(**f))) {
            let label = s.t(&format!("finish-{}", finish.name()));
            let [r, g, blue] = finish.tones().body;
            let swatch = Color32::from_rgb(r, g, blue);
            flow.disc(b, &label, on.finish == Some(*finish), swatch, Request::OnlyFinish(Some(*finish)));
        }
        flow.bottom()
    });
}

/// The question to a guest who may have left. Any touch answers it.
pub(super) fn still_there(b: &mut Brush, s: &Scene, left: f32, of: f32) {
    b.over_all();
    b.targets.elsewhere = Some(Request::StillHere);
    let size = (vec2(560.0, 520.0) * b.u.max(0.72)).min(b.window.size() - Vec2::splat(b.gap() * 2.0));
    let rect = Rect::from_center_size(b.window.center(), size);
    b.card(rect, Plate::Paper);
    let inner = rect.shrink(b.gap() * 2.0);
    let (button, rest) = cut_bottom(inner, b.touch_px(84.0));
    let (head, ring) = cut_top(rest, rest.height() * 0.42);
    let (title, text) = cut_top(head, head.height() * 0.45);
    b.text(title, Align2::CENTER_CENTER, &s.t("idle-title"), Type::HEADING);
    b.text(text, Align2::CENTER_CENTER, &s.t("idle-text"), Type::BODY);
    let radius = (ring.height().min(ring.width()) * 0.36).max(20.0);
    b.countdown(ring.center(), radius, left / of.max(1.0));
    let seconds = format!("{:.0}", left.max(0.0).ceil());
    b.text(
        Rect::from_center_size(ring.center(), Vec2::splat(radius * 1.5)),
        Align2::CENTER_CENTER,
        &seconds,
        Type::FIGURE,
    );
    b.button(button, Look::Main, None, &s.t("idle-here"), Some(Request::StillHere));
}
