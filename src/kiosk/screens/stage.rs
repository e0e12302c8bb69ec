//! Stage: the piece hangs, the trays lie beside or below it, the tag hangs under it.

use bevy_egui::egui::{Align2, Rect, pos2, vec2};

use super::{
    super::{
        act::Act,
        layout::{Layout, cut_left, cut_right, cut_top},
        length::trouble_key,
        paint::{Brush, Icon, Look},
        session::Overlay,
        targets::TargetKind,
        theme::Type,
        tone::Tone,
    },
    Scene,
    parts::{notices, top_bar},
    suits::{cautions_chip, who_chip},
    trays,
};
use crate::{catalog::Catalog, money::TaxRule};

pub(super) fn paint(b: &mut Brush, s: &Scene, layout: &Layout) {
    let bar = top_bar(b, s, layout.top);
    tools(b, s, bar);
    let Some(catalog) = s.catalog() else { return };
    b.targets.stage = Some(layout.stage);
    hung(b, s, catalog, layout);
    if s.session.selected.is_none() {
        signs(b, s, layout);
    }
    foot(b, s, layout.foot);
    trays::paint(b, s, catalog, layout);
}

/// Undo, redo, surprise, start over; who it is for.
fn tools(b: &mut Brush, s: &Scene, bar: Rect) {
    let (side, gap) = (bar.height(), b.gap() * 0.5);
    let rest = who_chip(b, s, bar);
    let rest = rest.with_max_x(rest.right() - gap);
    let history = &s.session.history;
    let some = !history.now().drops.is_empty();
    let acts = [
        (Icon::Undo, "stage-undo", history.can_undo().then_some(Act::Undo)),
        (Icon::Redo, "stage-redo", history.can_redo().then_some(Act::Redo)),
        (Icon::Anew, "stage-anew", some.then_some(Act::Open(Overlay::StartOver))),
        (Icon::Spark, "stage-surprise", Some(Act::Surprise)),
    ];
    let mut left = rest.left();
    for (i, (icon, key, act)) in acts.into_iter().enumerate() {
        // What room is left goes to the last, which is worth its words.
        let room = rest.right() - left;
        let width = if i == 3 { room.min(b.px(260.0)).max(b.least) } else { side.max(b.least) };
        let place = Rect::from_min_size(pos2(left, rest.top()), vec2(width, side));
        b.button(place, Look::Quiet, Some(icon), &s.t(key), act);
        left += width + gap;
    }
}

/// The hung drops as things to touch, and the buttons of the chosen one.
fn hung(b: &mut Brush, s: &Scene, catalog: &Catalog, layout: &Layout) {
    let drops = &s.session.history.now().drops;
    let before = b.painter.clip_rect();
    b.painter.set_clip_rect(before.intersect(layout.stage));
    let mut chosen = None;
    for hung in drops {
        let (Some(kind), Some(ring)) = (catalog.drop_kind(&hung.kind), s.hanger.ring(hung.token)) else { continue };
        let down = kind.ring.outside.mm() + kind.height.mm();
        let half = (s.hanger.px(kind.width.mm() as f32) / 2.0).max(b.least_small_hands / 2.0);
        let bottom = (ring.y + s.hanger.px(down as f32)).max(ring.y + b.least_small_hands);
        let rect = Rect::from_min_max(pos2(ring.x - half, ring.y - 6.0), pos2(ring.x + half, bottom));
        let label = format!("{}, {}", s.drop_name(kind), kind.home);
        b.target(rect, Act::Select(hung.token), label, TargetKind::Hung { token: hung.token });
        if s.session.selected == Some(hung.token) {
            chosen = Some((hung.token, rect, kind));
        }
    }
    b.painter.set_clip_rect(before);
    let Some((token, rect, kind)) = chosen else { return };
    b.outline(rect.expand(4.0).intersect(layout.stage.shrink(2.0)), b.px(14.0), 2.5, Tone::Plum);
    // Its name and left, off, right: at the top of the stage, where no drop hangs.
    let (side, gap) = (b.touch_px(60.0), b.gap() * 0.6);
    let room = layout.stage.shrink(b.gap());
    let strip = Rect::from_min_size(room.min, vec2(room.width(), side + 2.0 * gap));
    b.shadow(strip, b.px(18.0), b.px(18.0));
    b.fill(strip, b.px(18.0), Tone::Paper);
    let place = drops.iter().position(|hung| hung.token == token).unwrap_or(0);
    let moves = |by: i32, can: bool| can.then_some(Act::Shift { token, by });
    let (right, rest) = cut_right(strip.shrink(gap), side);
    let (off, rest) = cut_right(rest.with_max_x(rest.right() - gap), (rest.width() * 0.36).max(side));
    let (left, name) = cut_right(rest.with_max_x(rest.right() - gap), side);
    b.button(left, Look::Plain, Some(Icon::Back), &s.t("stage-to-left"), moves(-1, place > 0));
    b.button(right, Look::Plain, Some(Icon::Onward), &s.t("stage-to-right"), moves(1, place + 1 < drops.len()));
    b.button(off, Look::Main, None, &s.t("stage-take-off"), Some(Act::PullOff(token)));
    let words = format!("{} · {}", s.drop_name(kind), kind.home);
    b.text(name.shrink2(vec2(gap, 0.0)), Align2::LEFT_CENTER, &words, Type::BODY);
}

/// What has to be said on the stage: nothing hung yet, the desk is away, the piece is too short; and near or whole.
fn signs(b: &mut Brush, s: &Scene, layout: &Layout) {
    let gap = b.gap();
    let beside = view_buttons(b, s, layout.stage);
    let room = beside.width();
    let mut y = notices(b, s, beside.min, room);
    let trouble = s.derived.trouble.as_ref().map(|trouble| s.t(trouble_key(trouble)));
    let hint = s.session.history.now().drops.is_empty().then(|| s.t("stage-hint"));
    for text in [trouble, hint].into_iter().flatten() {
        let size = b.measure(&text, Type::BODY, room - 2.0 * gap);
        let card = Rect::from_min_size(pos2(layout.stage.left() + gap, y), size + vec2(2.0 * gap, gap));
        b.fill(card, b.px(12.0), Tone::Paper);
        b.text(card.shrink2(vec2(gap, gap * 0.5)).expand(1.0), Align2::LEFT_CENTER, &text, Type::BODY);
        y = card.bottom() + gap;
    }
}

/// Near or whole, and as large as it is, in the upper right corner. Gives what is left beside them.
pub(super) fn view_buttons(b: &mut Brush, s: &Scene, stage: Rect) -> Rect {
    let (gap, side) = (b.gap(), b.touch_px(58.0));
    let glass = Rect::from_min_size(stage.right_top() + vec2(-gap - side, gap), vec2(side, side));
    b.fill(glass, side / 2.0, Tone::Paper);
    let label = s.t(if s.session.whole_view { "stage-nearer" } else { "stage-whole" });
    b.button(glass, Look::Quiet, Some(Icon::Glass), &label, Some(Act::WholeView));
    true_size(b, s, Rect::from_min_size(glass.min + vec2(0.0, side + gap * 0.7), glass.size()));
    stage.shrink(gap).with_max_x(glass.left() - gap)
}

/// As large as it is, or as before; only where the screen has been measured.
fn true_size(b: &mut Brush, s: &Scene, place: Rect) {
    if s.settings.px_per_mm.is_none() {
        return;
    }
    let on = s.session.true_size;
    b.fill(place, place.height() / 2.0, Tone::Paper);
    let look = if on { Look::Chosen } else { Look::Quiet };
    let label = s.t(if on { "stage-usual-size" } else { "stage-true-size" });
    b.button(place, look, Some(Icon::Rule), &label, Some(Act::TrueSize));
}

/// The tag, the cautions, the way onwards.
fn foot(b: &mut Brush, s: &Scene, foot: Rect) {
    b.fill(foot, 0.0, Tone::Strip);
    let gap = b.gap() * 0.8;
    let inner = foot.shrink2(vec2(gap, ((foot.height() - b.touch_px(68.0)) / 2.0).max(1.0)));
    let (tag, rest) = cut_left(inner, inner.width() * 0.34);
    total_tag(b, s, tag);
    let (onward, rest) = cut_right(rest, inner.width() * 0.34);
    let good = s.derived.quote.is_some() && s.derived.trouble.is_none();
    b.button(onward, Look::Main, Some(Icon::Onward), &s.t("stage-review"), good.then_some(Act::Review));
    cautions_chip(b, s, rest.shrink2(vec2(gap, 0.0)));
}

/// The paper tag with the running total.
pub(super) fn total_tag(b: &mut Brush, s: &Scene, rect: Rect) {
    let total = s.derived.quote.as_ref().map(|quote| s.money(quote.total)).unwrap_or_default();
    let angle = s.moves.tag_angle();
    let words = b.tag(rect, b.pressed(rect), angle);
    let rules = s.catalog().map(|catalog| &catalog.table.prices.tax);
    // The marks on the trays are net: what makes the sum more than them is said where there is room.
    let (text, small) = (s.t("tag-with-tax"), Type::SMALL.sized(14.0));
    let size = b.measure(&text, small, f32::INFINITY);
    let taxed = matches!(rules, Some(TaxRule::Added { .. }));
    let told = taxed && size.y <= words.height() * 0.4 && size.x <= words.width();
    let (sum, under) = cut_top(words, words.height() - if told { size.y } else { 0.0 });
    b.text_turned(sum, &total, Type::FIGURE, b.tag_hole(rect), angle);
    if told {
        b.text_turned(under, &text, small, b.tag_hole(rect), angle);
    }
    let label = format!("{} {total}", s.t("lines-total"));
    b.button_target(rect, Act::Open(Overlay::Lines), label);
}
