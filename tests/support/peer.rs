//! The same chain in a general-purpose rigid-body library: every link a body, jointed to the next.

use chatelaine::hang::{ChainPlan, Hanging, necklace};
use rapier2d::prelude::*;

/// A front of 430 mm with a cluster of unlike drops.
pub fn scene(links: usize, drops: u32) -> (ChainPlan, Vec<Hanging>) {
    let chain = ChainPlan { front_length_mm: 429.6, width_mm: 114.6, g_per_mm: 0.0142, links };
    let one = |token| Hanging {
        token,
        mass_g: 1.0 + f64::from(token * 7 % 5),
        wire_mm: 1.02,
        width_mm: 7.0 + f64::from(token * 5 % 9),
        swing_mm: 18.0 + f64::from(token * 11 % 24),
    };
    (chain, (0..drops).map(one).collect())
}

/// The scene in the library. Its unit is a metre, its masses are kilograms.
pub struct Peer {
    world: PhysicsWorld,
    links: Vec<RigidBodyHandle>,
    half_m: f32,
    exact_mm: Vec<(f64, f64)>,
}

impl Peer {
    /// At the exact rest. Rings do not slide in it: each drop is jointed to the link that its ring rests on.
    pub fn at_rest(chain: &ChainPlan, drops: &[Hanging], iterations: usize) -> Self {
        let rest = necklace(&chain.load(drops, 0.6)).expect("the scene hangs");
        let exact_mm = rest.polyline(chain.links + 1);
        let link_mm = chain.front_length_mm / chain.links as f64;
        let metres = |(x, y): (f64, f64)| Vector::new(x as f32 / 1000.0, y as f32 / -1000.0);
        let mut world = PhysicsWorld { gravity: Vector::new(0.0, -9.80665), ..PhysicsWorld::default() };
        world.integration_parameters.dt = 1.0 / 60.0;
        world.integration_parameters.num_solver_iterations = iterations;
        world.integration_parameters.length_unit = 0.01;
        let half_m = (link_mm / 2000.0) as f32;
        let mass_kg = (chain.g_per_mm * link_mm / 1000.0) as f32;
        let joint = |world: &mut PhysicsWorld, a, b, at_a: Vector, at_b: Vector| {
            let joint = RevoluteJointBuilder::new().local_anchor1(at_a).local_anchor2(at_b).contacts_enabled(false);
            world.insert_impulse_joint(a, b, joint);
        };
        let body = |at: Vector, angle: f32, mass: MassProperties| {
            RigidBodyBuilder::dynamic()
                .translation(at)
                .rotation(angle)
                .can_sleep(false)
                .linear_damping(1.0)
                .additional_mass_properties(mass)
        };
        let start = world.insert_body(RigidBodyBuilder::fixed().translation(metres(exact_mm[0])));
        let end = world.insert_body(RigidBodyBuilder::fixed().translation(metres(exact_mm[chain.links])));
        let mut links: Vec<RigidBodyHandle> = Vec::new();
        for pair in exact_mm.windows(2) {
            let (a, b) = (metres(pair[0]), metres(pair[1]));
            let mass = MassProperties::new(Vector::ZERO, mass_kg, mass_kg * half_m * half_m / 3.0);
            let link = world.insert_body(body((a + b) * 0.5, (b - a).y.atan2((b - a).x), mass));
            let (left, anchor) = links.last().map_or((start, Vector::ZERO), |left| (*left, Vector::new(half_m, 0.0)));
            joint(&mut world, left, link, anchor, Vector::new(-half_m, 0.0));
            links.push(link);
        }
        joint(&mut world, links[chain.links - 1], end, Vector::new(half_m, 0.0), Vector::ZERO);
        for (drop, ring) in drops.iter().zip(&rest.rings) {
            let along = ring.arc_mm / link_mm;
            let link = (along as usize).min(chain.links - 1);
            let anchor = Vector::new((2.0 * (along - link as f64) - 1.0) as f32 * half_m, 0.0);
            let (swing, mass) = ((drop.swing_mm / 1000.0) as f32, (drop.mass_g / 1000.0) as f32);
            let at = metres((ring.x_mm, ring.y_mm)) - Vector::new(0.0, swing);
            let hung = world.insert_body(body(at, 0.0, MassProperties::new(Vector::ZERO, mass, mass * 4e-6)));
            joint(&mut world, links[link], hung, anchor, Vector::new(0.0, swing));
        }
        Self { world, links, half_m, exact_mm }
    }

    /// One frame of a sixtieth of a second.
    pub fn frame(&mut self) {
        self.world.step();
    }

    /// How far the ends of its links are from the exact rest at most, in millimetres.
    pub fn off_mm(&self) -> f64 {
        let off = |(link, exact): (&RigidBodyHandle, &(f64, f64))| {
            let body = &self.world.bodies[*link];
            let end = body.translation() + *body.rotation() * Vector::new(self.half_m, 0.0);
            (f64::from(end.x) * 1000.0 - exact.0).hypot(f64::from(end.y) * -1000.0 - exact.1)
        };
        self.links.iter().zip(&self.exact_mm[1..]).map(off).fold(0.0, f64::max)
    }
}
