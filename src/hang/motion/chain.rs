//! A chain between two hang points, with its drops, as it moves.

use super::{
    Feel,
    grip::{Grip, Limit, REACH_SHARE, What, within_limits, within_oval},
    hung::{Hanging, Hung, Line, gaps_mm},
    ladder::{Ladder, Sym},
    vector::{V, v},
};
use crate::hang::{HangError, Load, NecklaceLoad, necklace};

/// How stiff a link is against being pulled longer, in µN/mm: drops of 20 g stretch it by 0.02 %.
const LINK_STIFF: f64 = 1e9;
/// How stiff a link is against being pushed together: hardly, chain folds.
const FOLD_STIFF: f64 = 2e5;
/// How stiff a finger holds the chain.
const FINGER_STIFF: f64 = 5e6;
/// How stiff it holds a drop: less, so that two fingers that pull apart do not stretch what is between them.
const DROP_STIFF: f64 = 5e4;
/// Rounds of correction in a step, as long as a link is too long by more than this share.
const ROUNDS: usize = 8;
const OFF_SHARE: f64 = 1e-3;
/// No point moves faster than this, in mm/s.
pub(super) const FASTEST_MM_S: f64 = 6000.0;

/// What a chain is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChainPlan {
    /// Length between the hang points.
    pub front_length_mm: f64,
    /// Distance of the hang points.
    pub width_mm: f64,
    /// Mass per length.
    pub g_per_mm: f64,
    /// How many links are drawn.
    pub links: usize,
}

impl ChainPlan {
    /// The chain with these drops, left to right, as it hangs between level hang points.
    pub fn load(&self, drops: &[Hanging], rho: f64) -> NecklaceLoad {
        NecklaceLoad {
            front_length_mm: self.front_length_mm,
            width_mm: self.width_mm,
            rise_mm: 0.0,
            chain_g_per_mm: self.g_per_mm,
            loads: drops.iter().map(|drop| Load { mass_g: drop.mass_g }).collect(),
            gaps_mm: gaps_mm(drops, rho),
        }
    }
}

/// Chain points for each link that is drawn; long chains do with one.
const fn fineness(links: usize) -> usize {
    if links > 170 { 1 } else { 2 }
}

/// On a chain of `links` links, `link_mm` long each: the number of the link at `arc`, and how far along it is, 0 to 1.
fn link_at(arc: f64, link_mm: f64, links: usize) -> (usize, f64) {
    let along = (arc / link_mm).clamp(0.0, links as f64);
    let left = (along as usize).min(links - 1);
    (left, along - left as f64)
}

/// A body in the equations of one step.
#[derive(Debug, Clone, Copy, Default)]
struct Body {
    /// The link its ring is on, and where on it.
    left: usize,
    share: f64,
    /// Where a finger holds it.
    held: Option<V>,
    /// Where it would go freely.
    free: V,
    down: V,
    off: f64,
    all: Sym,
    inverse: Sym,
    right: V,
}

/// The chain in motion.
#[derive(Debug, Clone)]
pub(super) struct Chain {
    plan: ChainPlan,
    points: Vec<V>,
    before: Vec<V>,
    velocity: Vec<V>,
    /// Where each point would go freely in this step.
    free: Vec<V>,
    /// Direction of each link in this round, and by how much it is too long.
    spans: Vec<(V, f64)>,
    /// Pull of each link in the last round, in µN, and whether it was taut.
    pulls: Vec<f64>,
    taut: Vec<bool>,
    link_mm: f64,
    point_g: f64,
    bodies: Vec<Body>,
    ladder: Ladder,
}

impl Chain {
    /// At rest, with its drops.
    pub(super) fn at_rest(plan: ChainPlan, drops: &[Hanging], rho: f64) -> Result<(Self, Vec<Hung>), HangError> {
        let rest = necklace(&plan.load(drops, rho))?;
        let links = plan.links.max(1) * fineness(plan.links);
        let points: Vec<V> = rest.polyline(links + 1).into_iter().map(|(x, y)| v(x, y)).collect();
        let link_mm = plan.front_length_mm / links as f64;
        let hung =
            drops.iter().zip(&rest.rings).map(|(is, ring)| Hung::at_rest(*is, ring.arc_mm, v(ring.x_mm, ring.y_mm)));
        let chain = Self {
            plan,
            before: points.clone(),
            velocity: vec![V::ZERO; links + 1],
            free: points.clone(),
            pulls: vec![rest.end_tension_mn * 1000.0; links],
            taut: vec![true; links],
            spans: vec![(V::ZERO, 0.0); links],
            points,
            link_mm,
            // A light chain is given no less than a speck.
            point_g: (plan.g_per_mm * link_mm).max(1e-4),
            bodies: Vec::new(),
            ladder: Ladder::default(),
        };
        Ok((chain, hung.collect()))
    }

    pub(super) const fn plan(&self) -> &ChainPlan {
        &self.plan
    }

    /// The points, and how many links between them make one that is drawn.
    pub(super) fn points(&self) -> (&[V], usize) {
        (&self.points, fineness(self.plan.links))
    }

    /// The left point of the link at `arc` and how far along the link it is, 0 to 1.
    fn link_at(&self, arc: f64) -> (usize, f64) {
        link_at(arc, self.link_mm, self.pulls.len())
    }

    /// Brings the held places to where the chain can follow.
    pub(super) fn restrain(&self, grips: &mut [Grip], hung: &[Hung]) {
        let length = self.plan.front_length_mm;
        let ends = [(self.points[0], 0.0), (self.points[self.points.len() - 1], length)];
        let mut limits = Vec::new();
        for i in 0..grips.len() {
            match grips[i].what {
                What::Base(arc) => {
                    limits.extend(ends.map(|(end, from)| Limit::to_place(&grips[i], i, end, (arc - from).abs())));
                    let others = grips[..i].iter().enumerate();
                    limits.extend(others.filter_map(|(k, other)| match other.what {
                        What::Base(from) => Some(Limit::between((&grips[i], i), (other, k), (arc - from).abs())),
                        What::Body(_) => None,
                    }));
                }
                // A drop's ring slides: wherever it is, both ends are within the chain's length and twice the drop's.
                What::Body(token) => {
                    let swing = hung.iter().find(|one| one.is.token == token).map_or(0.0, |one| one.is.swing_mm);
                    let sum = REACH_SHARE * (length + 2.0 * swing);
                    grips[i].now = within_oval(grips[i].now, ends[0].0, ends[1].0, sum);
                }
            }
        }
        within_limits(grips, &limits);
    }

    /// One small step: the points fall freely, then they and the bodies are brought to where all lengths are kept.
    pub(super) fn step(&mut self, hung: &mut [Hung], grips: &[Grip], feel: &Feel, fall: V, h: f64) {
        let last = self.points.len() - 1;
        for i in 1..last {
            self.before[i] = self.points[i];
            self.points[i] += (self.velocity[i] + fall) * h;
            self.free[i] = self.points[i];
        }
        self.bodies.clear();
        for one in &*hung {
            let (left, share) = self.link_at(one.at);
            let held = grips.iter().find(|grip| grip.what == What::Body(one.is.token)).map(|grip| grip.now);
            self.bodies.push(Body { left, share, held, free: one.place, ..Body::default() });
        }
        for _ in 0..ROUNDS {
            let changed = self.correct(hung, grips, h);
            if !changed && self.longest_share() < OFF_SHARE {
                break;
            }
        }
        for i in 0..=last {
            let velocity = (self.points[i] - self.before[i]) * (1.0 / h);
            self.velocity[i] = feel.slowed(velocity, h).at_most(FASTEST_MM_S);
        }
    }

    /// One round of Newton's method towards the step's end: where inertia, the pull of every link, ring and finger
    /// are in balance. The pulls' turning with the links is part of it, so light links under heavy drops stay calm.
    /// Gives whether a link has become taut or slack.
    fn correct(&mut self, hung: &mut [Hung], grips: &[Grip], h: f64) -> bool {
        let per_h2 = 1.0 / (h * h);
        let last = self.points.len() - 1;
        let Self { ladder, points, pulls, taut, spans, .. } = self;
        let stiff = |taut: bool| if taut { LINK_STIFF } else { FOLD_STIFF };
        let inertia = self.point_g * per_h2;
        ladder.clear(last + 1, inertia);
        for (right, (free, point)) in ladder.right.iter_mut().zip(self.free.iter().zip(&*points)) {
            *right = (*free - *point) * inertia;
        }
        for (i, pull) in pulls.iter().enumerate() {
            let (along, length) = (points[i + 1] - points[i]).split();
            let (stiff, off) = (stiff(taut[i]), length - self.link_mm);
            spans[i] = (along, off);
            let all = Sym::along(along, stiff, pull.max(0.0) / length.max(self.link_mm));
            ladder.own[i] = ladder.own[i].plus(all);
            ladder.own[i + 1] = ladder.own[i + 1].plus(all);
            ladder.next[i] = all.times(-1.0);
            ladder.right[i] += along * (stiff * off);
            ladder.right[i + 1] -= along * (stiff * off);
        }
        for (body, one) in self.bodies.iter_mut().zip(&*hung) {
            let (left, share) = (body.left, body.share);
            let (down, length) = (one.place - points[left].lerp(points[left + 1], share)).split();
            // Thrown up, a drop is free; nothing stands on its head.
            let (stiff, off) = (if one.taut { LINK_STIFF } else { 0.0 }, length - one.is.swing_mm);
            let all = Sym::along(down, stiff, one.pull.max(0.0) / length.max(one.is.swing_mm));
            let inertia = one.is.mass_g * per_h2;
            let mut own = Sym::even(inertia).plus(all);
            let mut right = (body.free - one.place) * inertia - down * (stiff * off);
            if let Some(held) = body.held {
                own = own.plus(Sym::even(DROP_STIFF));
                right += (held - one.place) * DROP_STIFF;
            }
            // The body's own equation is solved for it and put into those of the chain.
            let inverse = own.inverse();
            let rest = all.plus(all.around(inverse).times(-1.0));
            let pushed = down * (stiff * off) + all.on(inverse.on(right));
            ladder.add(left, share, rest, pushed);
            (body.down, body.off, body.all, body.inverse, body.right) = (down, off, all, inverse, right);
        }
        for grip in grips {
            let What::Base(arc) = grip.what else { continue };
            let (left, share) = link_at(arc, self.link_mm, last);
            let pull = (grip.now - points[left].lerp(points[left + 1], share)) * FINGER_STIFF;
            ladder.add(left, share, Sym::even(FINGER_STIFF), pull);
        }
        ladder.fix(0);
        ladder.fix(last);
        ladder.solve();
        let moves = &ladder.right;
        let mut changed = false;
        for (i, pull) in pulls.iter_mut().enumerate() {
            let (along, was) = spans[i];
            let off = was + along.dot(moves[i + 1] - moves[i]);
            *pull = stiff(taut[i]) * off;
            // Pushed together it goes slack; it is taut again once it would be too long.
            if taut[i] != (off > 0.0) {
                (taut[i], changed) = (off > 0.0, true);
            }
        }
        for (body, one) in self.bodies.iter().zip(hung) {
            let ring = moves[body.left].lerp(moves[body.left + 1], body.share);
            let own = body.inverse.on(body.right + body.all.on(ring));
            one.place += own;
            let off = body.off + body.down.dot(own - ring);
            one.pull = if one.taut { LINK_STIFF * off } else { 0.0 };
            changed |= one.taut != (off > 0.0);
            one.taut = off > 0.0;
        }
        for (point, by) in points.iter_mut().zip(moves) {
            *point += *by;
        }
        changed
    }

    /// The largest share of a link's length by which one is too long.
    fn longest_share(&self) -> f64 {
        let over = |pair: &[V]| (pair[1] - pair[0]).length() / self.link_mm - 1.0;
        self.points.windows(2).map(over).fold(0.0, f64::max)
    }

    /// The fastest of all points, in mm/s.
    pub(super) fn fastest(&self) -> f64 {
        self.velocity.iter().map(|velocity| velocity.length()).fold(0.0, f64::max)
    }

    /// Every point stops.
    /// Takes all but this share of its speed away.
    pub(super) fn slow(&mut self, kept: f64) {
        for velocity in &mut self.velocity {
            *velocity = *velocity * kept;
        }
    }
}

impl Line for Chain {
    fn length(&self) -> f64 {
        self.plan.front_length_mm
    }

    fn at(&self, arc: f64) -> V {
        let (left, share) = self.link_at(arc);
        self.points[left].lerp(self.points[left + 1], share)
    }

    /// Directions of the chain to both sides of `arc`: those of the links next to the one there, which a ring bends.
    fn directions(&self, arc: f64) -> (V, V) {
        let left = self.link_at(arc).0;
        let link = |i: usize| (self.points[i + 1] - self.points[i]).split().0;
        (link(left.saturating_sub(1)), link((left + 1).min(self.points.len() - 2)))
    }

    /// Arc of the place nearest to `p`.
    fn nearest(&self, p: V) -> f64 {
        let along = |(i, pair): (usize, &[V])| {
            let d = pair[1] - pair[0];
            let share = ((p - pair[0]).dot(d) / d.dot(d).max(1e-12)).clamp(0.0, 1.0);
            ((p - pair[0].lerp(pair[1], share)).length(), (i as f64 + share) * self.link_mm)
        };
        let nearest = self.points.windows(2).enumerate().map(along).min_by(|a, b| a.0.total_cmp(&b.0));
        nearest.map_or(0.0, |(_, arc)| arc)
    }
}
