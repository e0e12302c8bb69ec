//! From millimetres of the piece to pixels of the window, and from a finger to a place on the base.

use bevy::prelude::*;
use bevy_egui::egui::{Pos2, Rect, Vec2 as Span, pos2, vec2};

use crate::kiosk::{layout::Layout, outside::window::WindowSize, power::Awake, tablet::Tablet, theme};
use crate::{
    craft::{DropKind, Token},
    guest::{Derived, Screen},
    hang::{BangleAt, Bounds, Motion, PiecePlaces, Point},
};

/// How much of a bare base is seen at least from near, in millimetres.
const NEAR_MM: f32 = 130.0;
/// How much of the base is seen round the drops from near, in millimetres.
const AROUND_MM: f32 = 26.0;
/// However few the drops are, so much is seen, in millimetres.
const LEAST_MM: f32 = 84.0;
/// The view stays as it is while the piece fills at least this share of what it could.
const KEEP_SHARE: f32 = 0.8;
/// How fast the view follows, per second.
const VIEW_RATE: f32 = 7.0;

/// Where the piece is on the screen.
#[derive(Resource, Debug, Default)]
pub struct Hanger {
    /// Pixels a millimetre takes now.
    pub px_per_mm: f32,
    /// Where the piece's (0, 0) is.
    pub origin: Pos2,
    /// Where the piece may be.
    pub area: Option<Rect>,
    wanted: Option<(f32, Pos2)>,
    /// The line drops hang on at rest, in pixels, left to right, and as it is now.
    rest_line: Vec<Pos2>,
    line: Vec<Pos2>,
    /// Where each ring rests, in pixels, left to right, and where it is now.
    rest_rings: Vec<(Token, Pos2)>,
    rings: Vec<(Token, Pos2)>,
    /// How far each drop leans now, in radians.
    leans: Vec<(Token, f32)>,
    /// From the hung drops' rings down to the lowest of them at rest, in pixels.
    cluster: Option<Rect>,
    screen: Screen,
    /// It is shown as large as it is.
    true_size: bool,
    /// A finger has the base itself.
    pub(super) carried: bool,
}

impl Hanger {
    /// A length in pixels.
    pub fn px(&self, mm: f32) -> f32 {
        mm * self.px_per_mm
    }

    /// A place of the piece on the window.
    pub fn at(&self, x_mm: f32, y_mm: f32) -> Pos2 {
        self.origin + vec2(x_mm, y_mm) * self.px_per_mm
    }

    /// A place of the window on the piece.
    pub fn to_mm(&self, p: Pos2) -> Point {
        let from = (p - self.origin) / self.px_per_mm.max(0.01);
        Point { x_mm: f64::from(from.x), y_mm: f64::from(from.y) }
    }

    /// The place of the base nearest to `p`.
    pub fn nearest(&self, p: Pos2) -> Option<Pos2> {
        nearest_on(&self.line, p)
    }

    /// How far `p` is from the base.
    fn distance(&self, p: Pos2) -> f32 {
        self.nearest(p).map_or(f32::INFINITY, |near| near.distance(p))
    }

    /// How far `p` is from the base as it rests.
    fn rest_distance(&self, p: Pos2) -> f32 {
        nearest_on(&self.rest_line, p).map_or(f32::INFINITY, |near| near.distance(p))
    }

    /// Whether a drop let go at `p` takes hold: near the base, or among the drops that hang there.
    pub fn takes_hold(&self, p: Pos2) -> bool {
        let reach = theme::HOLD_PX.max(self.px(20.0));
        self.distance(p) < reach || self.cluster.is_some_and(|cluster| cluster.expand(reach).contains(p))
    }

    /// The number from the left that a new drop let go at `p` gets: between those that are seen there.
    pub fn number_at(&self, p: Pos2) -> usize {
        self.rest_rings.iter().filter(|(token, _)| self.ring(*token).is_some_and(|ring| ring.x < p.x)).count()
    }

    /// The number from the left that a hung drop thrown to `p` gets: between those that rest there.
    pub fn thrown_to(&self, p: Pos2, token: Token) -> usize {
        self.rest_rings.iter().filter(|(other, ring)| *other != token && ring.x < p.x).count()
    }

    /// The number from the left to which a hung drop has slid, among the drops of the design in their order: behind the
    /// one that is now to its left.
    pub fn number_of(&self, token: Token, design: impl Iterator<Item = Token>) -> Option<usize> {
        let place = self.rings.iter().position(|(t, _)| *t == token)?;
        let Some(left) = place.checked_sub(1).map(|left| self.rings[left].0) else { return Some(0) };
        design.filter(|other| *other != token).position(|other| other == left).map(|left| left + 1)
    }

    /// Whether a hung drop comes off when a finger that took it at `from` is at `now`.
    ///
    /// The base follows a drop that is pulled, so it is measured from where the base rests; while another finger carries
    /// the base about, from where that one holds it.
    pub fn pulls_off(&self, from: Pos2, now: Pos2) -> bool {
        let far = if self.carried { self.distance(now) } else { self.rest_distance(now) };
        far - self.rest_distance(from) > self.pull_off_px()
    }

    /// How far a drop has to be pulled to come off.
    fn pull_off_px(&self) -> f32 {
        self.px(theme::PULL_OFF_MM).clamp(theme::PULL_OFF_PX, theme::PULL_OFF_PX * 2.0)
    }

    /// Where the ring of a hung drop is, or is going to be while it is on its way.
    pub fn ring(&self, token: Token) -> Option<Pos2> {
        find(&self.rings, token).or_else(|| self.rest_ring(token))
    }

    /// How far a hung drop leans now, in radians; positive to the right.
    pub fn lean(&self, token: Token) -> f32 {
        self.leans.iter().find(|(t, _)| *t == token).map_or(0.0, |(_, lean)| *lean)
    }

    /// Where the ring of a drop rests that hangs, or is on its way to the base.
    pub fn rest_ring(&self, token: Token) -> Option<Pos2> {
        find(&self.rest_rings, token)
    }

    /// Takes in where the piece rests.
    fn take(&mut self, derived: &Derived, tokens: &[Token]) {
        let Some(places) = &derived.places else {
            self.rest_line.clear();
            self.rest_rings.clear();
            self.cluster = None;
            return;
        };
        let at = |p: &Point| self.at(p.x_mm as f32, p.y_mm as f32);
        self.rest_line = match &places.bangle {
            Some(bangle) => lower_arc(bangle).iter().map(at).collect(),
            None => places.chain.iter().map(at).collect(),
        };
        let rings = places.rings.iter().zip(tokens);
        self.rest_rings = rings.map(|(r, token)| (*token, self.at(r.x_mm as f32, r.y_mm as f32))).collect();
        let bottom = self.at(0.0, places.bounds.bottom_mm as f32).y;
        let around =
            self.rest_rings.iter().map(|(_, ring)| Rect::from_min_max(*ring, pos2(ring.x, bottom.max(ring.y))));
        self.cluster = around.reduce(Rect::union);
    }

    /// Takes in where the piece is now.
    pub(super) fn take_live(&mut self, motion: Option<&Motion>) {
        let at = |p: Point| self.at(p.x_mm as f32, p.y_mm as f32);
        let Some(motion) = motion else {
            (self.line, self.rings, self.leans) = (Vec::new(), Vec::new(), Vec::new());
            return;
        };
        let first = motion.links().next().map(|(left, _)| left);
        let chain = first.into_iter().chain(motion.links().map(|(_, right)| right)).map(at);
        self.line = match motion.hoop() {
            Some((middle, _)) => {
                let moved = self.at(middle.x_mm as f32, middle.y_mm as f32) - self.at(0.0, 0.0);
                self.rest_line.iter().map(|p| *p + moved).collect()
            }
            None => chain.collect(),
        };
        self.leans = motion.rings().map(|(token, ring)| (token, ring.lean_rad as f32)).collect();
        self.rings = motion.rings().map(|(token, ring)| (token, self.at(ring.x_mm as f32, ring.y_mm as f32))).collect();
    }
}

fn find(rings: &[(Token, Pos2)], token: Token) -> Option<Pos2> {
    rings.iter().find(|(t, _)| *t == token).map(|(_, at)| *at)
}

fn nearest_on(line: &[Pos2], p: Pos2) -> Option<Pos2> {
    let on_segment = |pair: &[Pos2]| {
        let (a, d) = (pair[0], pair[1] - pair[0]);
        let t = if d.length_sq() > 0.0 { ((p - a).dot(d) / d.length_sq()).clamp(0.0, 1.0) } else { 0.0 };
        a + d * t
    };
    line.windows(2).map(on_segment).min_by(|a, b| a.distance_sq(p).total_cmp(&b.distance_sq(p)))
}

/// The part of a bangle where drops can hang, left to right.
fn lower_arc(bangle: &BangleAt) -> Vec<Point> {
    let radius = bangle.inside_radius_mm + bangle.wire_mm / 2.0;
    (-50..=50)
        .map(|i| f64::from(i) / 50.0 * 1.9)
        .map(|a| Point { x_mm: bangle.centre.x_mm + radius * a.sin(), y_mm: bangle.centre.y_mm + radius * a.cos() })
        .collect()
}

/// What has to be seen of a piece from near: the drops with some of the base, or the lowest part of a bare chain; of a
/// bangle all of it, since all of it is near.
fn near_mm(places: &PiecePlaces, kinds: &[&DropKind]) -> Option<Span> {
    let rings = || places.rings.iter().zip(kinds);
    if places.bangle.is_some() {
        return None;
    }
    if kinds.is_empty() {
        return Some(vec2(NEAR_MM * 0.5, NEAR_MM));
    }
    let left = rings().map(|(ring, kind)| ring.x_mm - kind.width.mm() / 2.0).fold(f64::INFINITY, f64::min);
    let right = rings().map(|(ring, kind)| ring.x_mm + kind.width.mm() / 2.0).fold(f64::NEG_INFINITY, f64::max);
    let top = rings().map(|(ring, _)| ring.y_mm).fold(f64::INFINITY, f64::min);
    let size = vec2((right - left) as f32, (places.bounds.bottom_mm - top) as f32) + Span::splat(AROUND_MM);
    Some(size.max(Span::splat(LEAST_MM)))
}

/// The scale and origin at which a piece is seen in `area`: whole, or with what is `near` as large as it goes.
fn view_of(bounds: &Bounds, area: Rect, near: Option<Span>) -> (f32, Pos2) {
    let size = vec2((bounds.right_mm - bounds.left_mm) as f32, (bounds.bottom_mm - bounds.top_mm) as f32);
    let fitting = |size: Span| (area.width() / size.x.max(1.0)).min(area.height() / size.y.max(1.0));
    let whole = fitting(size);
    let scale = near.map_or(whole, |near| whole.max(fitting(near)));
    (scale, origin_at(bounds, area, scale))
}

/// Where the piece's (0, 0) is at a scale: what does not fit runs out at the top; what fits hangs in the middle.
fn origin_at(bounds: &Bounds, area: Rect, scale: f32) -> Pos2 {
    let middle = (bounds.left_mm + bounds.right_mm) as f32 / 2.0;
    let below = ((area.height() - (bounds.bottom_mm - bounds.top_mm) as f32 * scale) / 2.0).max(0.0);
    pos2(area.center().x - middle * scale, area.bottom() - below - bounds.bottom_mm as f32 * scale)
}

/// Keeps the view on the piece: still while drops are hung, gliding when it has to change.
pub(super) fn fit_the_view(
    mut hanger: ResMut<Hanger>,
    tablet: Res<Tablet>,
    size: WindowSize,
    time: Res<Time<Real>>,
    awake: Res<Awake>,
) {
    let (screen, derived) = (tablet.screen(), tablet.derived());
    let layout = Layout::new(size.get(), &tablet);
    let area = piece_area(screen, &layout, tablet.known().notices().count());
    let shown = |screen: Screen| {
        matches!(screen, Screen::Base | Screen::Stage | Screen::Review | Screen::Threading | Screen::Sent)
    };
    let turned = hanger.screen != screen;
    // From screen to screen the guest's piece glides to its new place.
    let goes_along = turned && shown(hanger.screen) && shown(screen);
    let jump = hanger.px_per_mm <= 0.0 || !goes_along && (turned || hanger.area != Some(area));
    (hanger.area, hanger.screen) = (Some(area), screen);
    if let Some(places) = &derived.places {
        let near = (screen == Screen::Sent
            || matches!(screen, Screen::Stage | Screen::Review | Screen::Threading) && !tablet.session().whole_view)
            .then(|| {
                let catalog = tablet.known().catalog();
                let hung = derived.piece.iter().flat_map(|piece| piece.hung());
                let hung: Vec<_> = hung.filter_map(|(id, look)| Some(catalog?.drop_kind(id)?.hung_as(look))).collect();
                near_mm(places, &hung.iter().map(AsRef::as_ref).collect::<Vec<&DropKind>>())
            });
        let near = near.flatten();
        let real = tablet.settings().px_per_mm.filter(|_| tablet.session().true_size);
        let (scale, origin) = match real {
            Some(real) => (real, origin_at(&places.bounds, area, real)),
            None => view_of(&places.bounds, area, near),
        };
        let asked = jump || turned || real.is_some() || hanger.true_size;
        hanger.true_size = real.is_some();
        let fits = |kept: f32| kept <= scale * 1.001 && kept >= scale * KEEP_SHARE;
        let keep = hanger.wanted.filter(|(kept, _)| !asked && fits(*kept));
        let wanted = match keep {
            Some((kept, _)) => (kept, origin_at(&places.bounds, area, kept)),
            None => (scale, origin),
        };
        hanger.wanted = Some(wanted);
        let (scale, origin) = wanted;
        let step = if jump { 1.0 } else { 1.0 - (-VIEW_RATE * time.delta_secs().min(0.1)).exp() };
        let far = (scale - hanger.px_per_mm).abs() * 100.0 + origin.distance(hanger.origin);
        if far < 0.3 || jump || tablet.looks().calm {
            (hanger.px_per_mm, hanger.origin) = (scale, origin);
        } else {
            hanger.px_per_mm += (scale - hanger.px_per_mm) * step;
            hanger.origin = hanger.origin + (origin - hanger.origin) * step;
            awake.stir();
        }
    }
    let tokens: Vec<Token> = tablet.session().history.now().drops.iter().map(|hung| hung.token).collect();
    hanger.take(derived, &tokens);
}

/// Where the piece may be on a screen.
fn piece_area(screen: Screen, layout: &Layout, notices: usize) -> Rect {
    let margin = 26.0 * layout.u;
    if screen == Screen::Sent {
        let place = layout.keepsake().shrink(margin * 0.6);
        // Under it stands the table's name.
        return place.with_max_y(place.bottom() - 46.0 * layout.u);
    }
    let mut area = layout.stage.shrink(margin);
    if screen != Screen::Welcome {
        area.min.y += notices as f32 * theme::NOTICE * layout.u;
    }
    if screen == Screen::Stage {
        // Neither the buttons of a chosen drop nor those of the view ever lie over a drop.
        area.min.y = area.min.y.max(layout.strip().bottom());
    }
    area
}

#[cfg(test)]
mod tests {
    use super::*;

    /// One finger carries the base down, another one has a drop of it: the drop goes with the base.
    #[test]
    fn a_drop_that_goes_with_its_base_stays_on() {
        let (rest_line, down) = (vec![pos2(0.0, 100.0), pos2(400.0, 100.0)], vec2(0.0, 200.0));
        let line = rest_line.iter().map(|p| *p + down).collect();
        let mut hanger = Hanger { px_per_mm: 2.0, rest_line, line, ..Hanger::default() };
        let from = pos2(200.0, 120.0);
        assert!(hanger.pulls_off(from, from + down));
        hanger.carried = true;
        assert!(!hanger.pulls_off(from, from + down));
        assert!(hanger.pulls_off(from, from + down * 2.0), "it can still be pulled off");
    }
}
