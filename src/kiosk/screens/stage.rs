//! Stage: the piece hangs, the trays lie beside or below it, the tag hangs under it.

use std::{borrow::Cow, sync::Arc};

use bevy_egui::egui::{Align2, Pos2, Rect, Shape, Vec2, pos2, vec2};

use super::{
    super::{
        layout::{Layout, cut_left, cut_right, cut_top},
        paint::{Brush, Icon, Look},
        stage::ranks,
        targets::{HungShape, TargetKind},
        theme::Type,
        tone::Tone,
    },
    Scene, lengths,
    parts::{notices, top_bar},
    suits::{cautions_chip, who_chip},
    trays,
};
use crate::{
    catalog::Catalog,
    craft::{DropKind, Token},
    guest::{Overlay, Request},
    hang::seen_ring,
    money::TaxRule,
};

pub(super) fn paint(b: &mut Brush, s: &Scene, layout: &Layout) {
    let bar = top_bar(b, s, layout.top);
    tools(b, s, bar);
    let Some(catalog) = s.catalog() else { return };
    b.targets.stage = Some(layout.stage);
    hung(b, s, catalog, layout);
    let beside = view_buttons(b, s, layout);
    match s.guest.session().selected.and_then(|token| chosen(s, catalog, token)) {
        Some((token, kind)) => strip(b, s, layout.strip(), token, kind),
        None => signs(b, s, layout, beside),
    }
    foot(b, s, layout.foot);
    trays::paint(b, s, catalog, layout);
}

/// Undo, redo, surprise, start over; who it is for.
fn tools(b: &mut Brush, s: &Scene, bar: Rect) {
    let (side, gap) = (bar.height(), b.gap() * 0.5);
    let rest = who_chip(b, s, bar);
    let rest = rest.with_max_x(rest.right() - gap);
    let history = &s.guest.session().history;
    let some = !history.now().drops.is_empty();
    let requests = [
        (Icon::Undo, "stage-undo", history.can_undo().then_some(Request::Undo)),
        (Icon::Redo, "stage-redo", history.can_redo().then_some(Request::Redo)),
        (Icon::Anew, "stage-anew", some.then_some(Request::Open(Overlay::StartOver))),
        (Icon::Spark, "stage-surprise", Some(Request::Surprise)),
    ];
    let mut left = rest.left();
    for (i, (icon, key, request)) in requests.into_iter().enumerate() {
        // What room is left goes to the last, which is worth its words.
        let room = rest.right() - left;
        let width = if i == 3 { room.min(b.px(260.0)).max(b.least) } else { side.max(b.least) };
        let place = Rect::from_min_size(pos2(left, rest.top()), vec2(width, side));
        b.button(place, Look::Quiet, Some(icon), &s.t(key), request);
        left += width + gap;
    }
}

/// The hung drops as things to touch, and a line round the chosen one.
fn hung(b: &mut Brush, s: &Scene, catalog: &Catalog, layout: &Layout) {
    let drops = &s.guest.session().history.now().drops;
    let known: Vec<(Token, Cow<'_, DropKind>)> =
        drops.iter().filter_map(|hung| Some((hung.token, catalog.drop_kind(&hung.kind)?.hung_as(hung.look)))).collect();
    let ranks = ranks(known.iter().map(|(token, kind)| (*token, kind.as_ref())));
    let before = b.painter.clip_rect();
    b.painter.set_clip_rect(before.intersect(layout.stage));
    for (token, kind) in &known {
        let token = *token;
        let Some(ring) = s.hanger.ring(token) else { continue };
        let chosen = s.guest.session().selected == Some(token);
        let rank = if chosen { drops.len() } else { ranks.get(&token).copied().unwrap_or(0) };
        let shape = shape(s, kind, ring, s.hanger.lean(token), rank);
        let least = vec2(b.least_small_hands, b.least_small_hands);
        let rect = shape.bounds();
        let rect = Rect::from_center_size(rect.center(), rect.size().max(least));
        let label = format!("{}, {}", s.drop_name(kind), kind.home);
        b.target(rect, Request::Select(token), label, TargetKind::Hung { token });
        if chosen {
            line_round(b, &shape);
            b.targets.elsewhere = Some(Request::Select(token));
        }
        b.targets.hung.insert(token, shape);
    }
    b.painter.set_clip_rect(before);
}

/// How a hung drop is seen.
fn shape(s: &Scene, kind: &DropKind, ring: Pos2, lean: f32, rank: usize) -> HungShape {
    let px = |mm: f64| s.hanger.px(mm as f32);
    let middle_mm = s.guest.derived().places.as_ref().map_or(0.0, |at| (at.bounds.left_mm + at.bounds.right_mm) / 2.0);
    let seen = seen_ring(kind, s.hanger.to_mm(ring).x_mm - middle_mm, f64::from(lean));
    HungShape {
        ring,
        lean,
        ring_width: px(kind.ring.outside.mm()),
        ring_oval: vec2(
            px(seen.half_width_mm.abs() + seen.wire_mm / 2.0),
            px(seen.half_height_mm + seen.wire_mm / 2.0),
        ),
        body_top: px(kind.ring.hangs_mm()),
        body: vec2(px(kind.width.mm()), px(kind.height.mm())),
        rank,
        silhouette: s.pictures.silhouette(&kind.picture).map(Arc::clone),
    }
}

/// A line along what shows of the chosen drop and its ring.
fn line_round(b: &Brush, shape: &HungShape) {
    let line = |points: Vec<Pos2>| {
        b.painter.add(Shape::closed_line(points.clone(), b.stroke(6.0, Tone::Paper)));
        b.painter.add(Shape::closed_line(points, b.stroke(3.0, Tone::Plum)));
    };
    let (oval, middle) = (shape.ring_oval + Vec2::splat(2.0), shape.ring_width / 2.0);
    let round = (0..48).map(|step| std::f32::consts::TAU * step as f32 / 48.0);
    line(round.map(|angle| shape.on_window(oval.x * angle.sin(), middle + oval.y * angle.cos())).collect());
    let on_body = |(x, y): (f32, f32)| shape.on_window((x - 0.5) * shape.body.x, shape.body_top + y * shape.body.y);
    match &shape.silhouette {
        Some(silhouette) => {
            for outline in silhouette.outlines() {
                line(outline.iter().copied().map(on_body).collect());
            }
        }
        None => line([(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)].into_iter().map(on_body).collect()),
    }
}

/// The chosen drop, if it hangs.
fn chosen<'a>(s: &Scene, catalog: &'a Catalog, token: Token) -> Option<(Token, &'a DropKind)> {
    let hung = s.guest.session().history.now().drops.iter().find(|hung| hung.token == token)?;
    Some((token, catalog.drop_kind(&hung.kind)?))
}

/// The chosen drop's name, and left, off, right, and let it be: at the top of the stage, where no drop hangs.
fn strip(b: &mut Brush, s: &Scene, strip: Rect, token: Token, kind: &DropKind) {
    let drops = &s.guest.session().history.now().drops;
    let gap = b.gap() * 0.6;
    b.shadow(strip, b.px(18.0), b.px(18.0));
    b.fill(strip, b.px(18.0), Tone::Paper);
    b.outline(strip, b.px(18.0), 1.0, Tone::PlumLine);
    let inner = strip.shrink(gap);
    let side = inner.height();
    let place = drops.iter().position(|hung| hung.token == token).unwrap_or(0);
    let moves = |by: i32, can: bool| can.then_some(Request::Shift { token, by });
    let beside = |rest: Rect| rest.with_max_x(rest.right() - gap);
    let (close, rest) = cut_right(inner, side);
    let (right, rest) = cut_right(beside(rest), side);
    let (off, rest) = cut_right(beside(rest), (rest.width() * 0.32).clamp(side, b.px(170.0).max(side)));
    let (left, name) = cut_right(beside(rest), side);
    b.button(left, Look::Plain, Some(Icon::Back), &s.t("stage-to-left"), moves(-1, place > 0));
    b.button(off, Look::Main, None, &s.t("stage-take-off"), Some(Request::PullOff(token)));
    b.button(right, Look::Plain, Some(Icon::Onward), &s.t("stage-to-right"), moves(1, place + 1 < drops.len()));
    b.button(close, Look::Quiet, Some(Icon::Cross), &s.t("close"), Some(Request::Select(token)));
    // Where it lives is said where there is room; its compartment has the mark of how many hang.
    let room = name.shrink2(vec2(gap, 0.0));
    let home = if kind.is_assortment() {
        s.piece_name(kind).into_owned()
    } else {
        format!("{} · {}", s.drop_name(kind), kind.home)
    };
    let lines = (room.height() / b.line(26.0)).floor().max(1.0);
    let words = if b.has_room(&home, Type::BODY, room.width() * lines * 0.7) { &home } else { s.drop_name(kind) };
    b.text(room, Align2::LEFT_CENTER, words, Type::BODY);
    // A touch on the strip beside its buttons is no touch on the linen.
    b.targets.sheet = Some(strip);
}

/// What has to be said on the stage: nothing hung yet, the desk is away, the piece is too short; `beside` the buttons for
/// the view.
fn signs(b: &mut Brush, s: &Scene, layout: &Layout, beside: Rect) {
    let gap = b.gap();
    let room = beside.width();
    let mut y = notices(b, s, beside.min, room);
    let trouble = s.guest.derived().trouble.as_ref().map(|trouble| s.t(lengths::trouble_key(trouble)));
    let hint = s.guest.session().history.now().drops.is_empty().then(|| s.t("stage-hint"));
    for text in [trouble, hint].into_iter().flatten() {
        let size = b.measure(&text, Type::BODY, room - 2.0 * gap);
        let card = Rect::from_min_size(pos2(layout.stage.left() + gap, y), size + vec2(2.0 * gap, gap));
        b.fill(card, b.px(12.0), Tone::Paper);
        b.text(card.shrink2(vec2(gap, gap * 0.5)).expand(1.0), Align2::LEFT_CENTER, &text, Type::BODY);
        y = card.bottom() + gap;
    }
}

/// Near or whole, and as large as it is, in the upper right corner. Gives what is left beside them. A bangle is always
/// seen whole.
pub(super) fn view_buttons(b: &mut Brush, s: &Scene, layout: &Layout) -> Rect {
    let (gap, glass) = (b.gap(), layout.glass());
    let is_bangle = s.guest.derived().places.as_ref().is_some_and(|places| places.bangle.is_some());
    let below = glass.translate(vec2(0.0, glass.height() + gap * 0.7));
    if !is_bangle {
        b.fill(glass, glass.height() / 2.0, Tone::Paper);
        let label = s.t(if s.guest.session().whole_view { "stage-nearer" } else { "stage-whole" });
        b.button(glass, Look::Quiet, Some(Icon::Glass), &label, Some(Request::WholeView));
    }
    true_size(b, s, if is_bangle { glass } else { below });
    layout.stage.shrink(gap).with_max_x(glass.left() - gap)
}

/// As large as it is, or as before; only where the screen has been measured.
fn true_size(b: &mut Brush, s: &Scene, place: Rect) {
    if s.guest.settings().px_per_mm.is_none() {
        return;
    }
    let on = s.guest.session().true_size;
    b.fill(place, place.height() / 2.0, Tone::Paper);
    let look = if on { Look::Chosen } else { Look::Quiet };
    let label = s.t(if on { "stage-usual-size" } else { "stage-true-size" });
    b.button(place, look, Some(Icon::Rule), &label, Some(Request::TrueSize));
}

/// The tag, the cautions, the way onwards.
fn foot(b: &mut Brush, s: &Scene, foot: Rect) {
    b.fill(foot, 0.0, Tone::Strip);
    let gap = b.gap() * 0.8;
    let inner = foot.shrink2(vec2(gap, ((foot.height() - b.touch_px(68.0)) / 2.0).max(1.0)));
    let (tag, rest) = cut_left(inner, inner.width() * 0.34);
    total_tag(b, s, tag);
    let (onward, rest) = cut_right(rest, inner.width() * 0.34);
    let good = s.guest.derived().quote.is_some() && s.guest.derived().trouble.is_none();
    b.button(onward, Look::Main, Some(Icon::Onward), &s.t("stage-review"), good.then_some(Request::Review));
    cautions_chip(b, s, rest.shrink2(vec2(gap, 0.0)));
}

/// The paper tag with the running total.
pub(super) fn total_tag(b: &mut Brush, s: &Scene, rect: Rect) {
    let total = s.guest.derived().quote.as_ref().map(|quote| s.money(quote.total)).unwrap_or_default();
    let angle = s.moves.tag_angle();
    let words = b.tag(rect, b.pressed(rect), angle);
    let rules = s.catalog().map(|catalog| &catalog.table.prices.tax);
    // The marks on the trays are net: what makes the sum more than them is always said.
    let (text, small) = (s.t("tag-with-tax"), Type::SMALL.sized(14.0));
    let taxed = matches!(rules, Some(TaxRule::Added { .. }));
    let line = b.measure(&text, small, f32::INFINITY).y.min(words.height() * 0.42);
    let (sum, under) = cut_top(words, words.height() - if taxed { line } else { 0.0 });
    b.text_turned(sum, &total, Type::FIGURE, b.tag_hole(rect), angle);
    if taxed {
        b.text_turned(under, &text, small, b.tag_hole(rect), angle);
    }
    let label = format!("{} {total}", s.t("lines-total"));
    b.button_target(rect, Request::Open(Overlay::Lines), label);
}
