//! A guest's hand on a tablet without a window: real plugins, a real link whose desk is away, touches as messages.

mod options;

use std::{
    sync::atomic::Ordering,
    time::{Duration, Instant},
};

use bevy::{
    input::{
        ButtonState,
        keyboard::{Key, KeyCode, KeyboardInput},
        mouse::MouseButtonInput,
        touch::{TouchInput, TouchPhase},
    },
    prelude::*,
    window::{CursorMoved, WindowEvent, WindowFocused},
};
use bevy_egui::egui::{Pos2, Rect, pos2, vec2};
use chatelaine::{
    craft::Token,
    guest::{
        Derived, Request, Screen, Session,
        settings::{CARD_WIDTH_MM, USUAL_PX_PER_MM},
    },
    kiosk::{
        Pictures, Proof, Tablet,
        stage::Hanger,
        targets::{Target, TargetKind, Targets},
    },
};
#[allow(unused_imports, reason = "not every test needs all of it")]
pub use options::{SOLD_OUT, Surroundings, options, options_beside, options_with};

/// Megabytes that the system says this process has; nothing where it does not say so.
pub fn resident_mb() -> f64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmRSS:")).unwrap_or("0 kB");
    line.trim().trim_end_matches(" kB").trim().parse::<f64>().unwrap_or(0.0) / 1024.0
}

/// A guest at a tablet.
pub struct Hand {
    /// The tablet.
    pub app: App,
    /// What is around it.
    pub around: Surroundings,
    next_finger: u64,
}

impl Hand {
    /// A tablet of this size, at Welcome, with its catalogue.
    pub fn at(size: (u32, u32)) -> Self {
        let (options, around) = options();
        let app = chatelaine::kiosk::headless(options, size);
        Self::on(app, around)
    }

    /// A hand on a tablet that is there already.
    pub fn on(app: App, around: Surroundings) -> Self {
        let mut hand = Self { app, around, next_finger: 1 };
        hand.wait_for("the catalogue", |world| world.resource::<Tablet>().known().snapshot.is_some());
        hand.frames(3);
        hand
    }

    /// From here on the test answers for the desk.
    pub fn play_the_desk(&mut self) {
        self.around.desk_is_mine.store(true, Ordering::Relaxed);
    }

    /// Lets so many frames go by.
    pub fn frames(&mut self, count: usize) {
        for _ in 0..count {
            self.app.update();
        }
    }

    /// Lets seconds of the tablet's time go by.
    pub fn seconds(&mut self, seconds: f32) {
        self.frames((seconds * 50.0).ceil() as usize);
    }

    /// Lets frames go by until `done`; at most half a minute of real time.
    pub fn wait_for(&mut self, what: &str, done: impl Fn(&World) -> bool) {
        let start = Instant::now();
        while !done(self.app.world()) {
            assert!(start.elapsed() < Duration::from_secs(30), "waited in vain for {what}");
            std::thread::sleep(Duration::from_millis(2));
            self.app.update();
        }
        self.app.update();
    }

    /// Asks for something that no target on the screen asks for now.
    pub fn ask(&mut self, request: Request) {
        self.app.world_mut().write_message(request);
        self.frames(3);
    }

    /// Has the screen measured with a bank card: so many logical pixels to the millimetre.
    pub fn measure(&mut self, px_per_mm: f32) {
        self.ask(Request::MatchCard);
        let by_px = (px_per_mm - USUAL_PX_PER_MM) * CARD_WIDTH_MM;
        self.ask(Request::WidenCard { by_px, most_px: f32::INFINITY });
        self.ask(Request::KeepCard);
    }

    /// Everything that is written on the screen, line by line.
    pub fn reads(&mut self) -> String {
        self.app.world_mut().resource_mut::<Proof>().on = true;
        self.frames(1);
        let texts = &self.app.world().resource::<Proof>().texts;
        texts.iter().map(|written| written.text.as_str()).collect::<Vec<_>>().join("\n")
    }

    /// So many frames of what children do: anything anywhere. `below` draws a number below the one it is given.
    pub fn play(&mut self, frames: usize, mut below: impl FnMut(u64) -> u64) {
        let anywhere = |below: &mut dyn FnMut(u64) -> u64| pos2(below(1280) as f32, below(800) as f32);
        for _ in 0..frames / 4 {
            let at = anywhere(&mut below);
            if below(3) == 0 {
                let to = anywhere(&mut below);
                self.drag(at, to);
            } else {
                self.tap_at(at);
            }
        }
    }

    /// The screen.
    pub fn screen(&self) -> Screen {
        self.app.world().resource::<Tablet>().screen()
    }

    /// The guest's things.
    pub fn session(&self) -> &Session {
        self.app.world().resource::<Tablet>().session()
    }

    /// What follows from them.
    pub fn derived(&self) -> &Derived {
        self.app.world().resource::<Tablet>().derived()
    }

    /// Ids of the hung drops, left to right.
    pub fn hung(&self) -> Vec<String> {
        self.session().history.now().drops.iter().map(|hung| hung.kind.clone()).collect()
    }

    /// The token of the drop at this place.
    pub fn token(&self, place: usize) -> Token {
        self.session().history.now().drops[place].token
    }

    /// What can be touched.
    pub fn targets(&self) -> &Targets {
        self.app.world().resource::<Targets>()
    }

    /// The target with this request.
    pub fn find(&self, request: &Request) -> &Target {
        let all = &self.targets().all;
        let labels = || all.iter().map(|target| target.label.as_str()).collect::<Vec<_>>();
        all.iter()
            .find(|target| target.request == *request)
            .unwrap_or_else(|| panic!("no target {request:?} among {:?}", labels()))
    }

    /// Whether there is a target with this request.
    pub fn sees(&self, request: &Request) -> bool {
        self.targets().all.iter().any(|target| target.request == *request)
    }

    /// The middle of a compartment; its tray is turned up first.
    pub fn compartment(&mut self, kind: &str) -> Pos2 {
        let (tray, _) = self.home(kind);
        self.tap(&Request::ShowTray(tray));
        for _ in 0..8 {
            let hang = Request::Hang { kind: kind.into(), at: None };
            if let Some(target) = self.targets().all.iter().find(|target| target.request == hang) {
                return target.rect.center();
            }
            let turn =
                self.targets().all.iter().find(|t| matches!(t.request, Request::TurnTray(rows) if rows > 0)).cloned();
            self.tap(&turn.unwrap_or_else(|| panic!("{kind} is not in tray {tray}")).request);
        }
        panic!("{kind} is not in tray {tray}");
    }

    fn home(&self, kind: &str) -> (usize, u16) {
        let catalog = self.app.world().resource::<Tablet>().known().catalog().unwrap();
        let home = catalog.drop_kind(kind).unwrap().home;
        (catalog.trays.iter().position(|tray| tray.letter == home.tray).unwrap(), home.compartment)
    }

    /// A place of a hung drop that nothing lies over, as near to its middle as there is one.
    pub fn hung_at(&self, place: usize) -> Pos2 {
        let hung = TargetKind::Hung { token: self.token(place) };
        let targets = self.targets();
        let rect = targets.all.iter().find(|target| target.kind == hung).expect("a hung drop on the screen").rect;
        let steps = || (1..20).map(|step| step as f32 / 20.0);
        let places = steps().flat_map(|x| steps().map(move |y| rect.lerp_inside(vec2(x, y))));
        let touched = places.filter(|p| targets.at(*p).is_some_and(|target| target.kind == hung));
        let middle = rect.center();
        touched
            .min_by(|a, b| a.distance_sq(middle).total_cmp(&b.distance_sq(middle)))
            .expect("a hung drop can be touched")
    }

    /// Waits until all pictures have come.
    pub fn see_pictures(&mut self) {
        self.wait_for("the pictures", |world| world.resource::<Pictures>().are_settled());
    }

    /// The place of the base nearest to `p` that is on the stage.
    pub fn nearest_on_the_base(&self, p: Pos2) -> Pos2 {
        let hanger = self.app.world().resource::<Hanger>();
        hanger.nearest(p).expect("there is a base").clamp(self.stage().min, self.stage().max - vec2(1.0, 1.0))
    }

    /// The bare stage.
    pub fn stage(&self) -> Rect {
        self.targets().stage.expect("the stage is on the screen")
    }

    /// Writes one touch.
    pub fn touch(&mut self, id: u64, phase: TouchPhase, at: Pos2) {
        let position = Vec2::new(at.x, at.y);
        let touch = TouchInput { phase, position, window: Entity::PLACEHOLDER, force: None, id };
        self.app.world_mut().write_message(WindowEvent::TouchInput(touch));
    }

    /// A finger that is not in use.
    pub fn finger(&mut self) -> u64 {
        self.next_finger += 1;
        self.next_finger
    }

    /// Taps a place.
    pub fn tap_at(&mut self, at: Pos2) {
        let id = self.finger();
        self.touch(id, TouchPhase::Started, at);
        self.frames(2);
        self.touch(id, TouchPhase::Ended, at + vec2(3.0, -2.0));
        self.frames(3);
    }

    /// Taps the target with this request.
    pub fn tap(&mut self, request: &Request) {
        let at = self.find(request).rect.center();
        self.tap_at(at);
    }

    /// Drags in steps and lets go.
    pub fn drag(&mut self, from: Pos2, to: Pos2) {
        let id = self.finger();
        self.press_and_carry(id, from, to);
        self.touch(id, TouchPhase::Ended, to);
        self.frames(3);
    }

    /// Drags in steps and stays down.
    pub fn press_and_carry(&mut self, id: u64, from: Pos2, to: Pos2) {
        self.touch(id, TouchPhase::Started, from);
        self.frames(1);
        for step in 1..=8 {
            self.touch(id, TouchPhase::Moved, from + (to - from) * (step as f32 / 8.0));
            self.frames(1);
        }
    }

    /// Presses a key and lets it go.
    pub fn key(&mut self, key: Key) {
        for state in [ButtonState::Pressed, ButtonState::Released] {
            self.key_state(key.clone(), state);
        }
        self.frames(2);
    }

    /// Presses a key with Control held.
    pub fn control(&mut self, key: &str) {
        self.key_state(Key::Control, ButtonState::Pressed);
        self.key(Key::Character(key.into()));
        self.key_state(Key::Control, ButtonState::Released);
        self.frames(1);
    }

    fn key_state(&mut self, logical_key: Key, state: ButtonState) {
        let input = KeyboardInput {
            key_code: KeyCode::KeyA,
            logical_key,
            state,
            text: None,
            repeat: false,
            window: Entity::PLACEHOLDER,
        };
        self.app.world_mut().write_message(WindowEvent::KeyboardInput(input));
    }

    /// Moves the mouse and clicks.
    pub fn click(&mut self, at: Pos2) {
        let window = Entity::PLACEHOLDER;
        let moved = CursorMoved { window, position: Vec2::new(at.x, at.y), delta: None };
        self.app.world_mut().write_message(WindowEvent::CursorMoved(moved));
        for state in [ButtonState::Pressed, ButtonState::Released] {
            let input = MouseButtonInput { button: MouseButton::Left, state, window };
            self.app.world_mut().write_message(WindowEvent::MouseButtonInput(input));
            self.frames(2);
        }
    }

    /// The window is no longer in front.
    pub fn lose_the_window(&mut self) {
        let lost = WindowFocused { window: Entity::PLACEHOLDER, focused: false };
        self.app.world_mut().write_message(WindowEvent::WindowFocused(lost));
        self.frames(2);
    }

    /// From Welcome to the stage, with the base that is offered first.
    pub fn reach_the_stage(&mut self) {
        self.tap(&Request::Begin);
        assert_eq!(self.screen(), Screen::Base);
        self.tap(&Request::ToStage);
        assert_eq!(self.screen(), Screen::Stage);
        self.frames(10);
    }
}
