//! Ways to start: in a window, without one for tests, and into a picture.

use std::{
    cell::Cell,
    panic::{AssertUnwindSafe, catch_unwind, set_hook, take_hook},
    sync::{
        Once,
        atomic::{AtomicU64, Ordering},
    },
    time::Duration,
};

use bevy::{
    app::{PluginGroupBuilder, PluginsState, TaskPoolOptions, TaskPoolPlugin},
    ecs::{
        error::{BevyError, ErrorContext},
        schedule::{Schedules, SingleThreadedExecutor},
    },
    log::LogPlugin,
    prelude::*,
    render::{
        RenderPlugin,
        pipelined_rendering::PipelinedRenderingPlugin,
        render_resource::TextureFormat,
        renderer::initialize_renderer,
        settings::{Backends, RenderCreation, WgpuSettings},
        view::screenshot::{Screenshot, ScreenshotCaptured},
    },
    time::TimeUpdateStrategy,
    window::{ExitCondition, MonitorSelection, WindowMode, WindowResizeConstraints},
    winit::{EventLoopProxyWrapper, WinitPlugin, WinitUserEvent},
};
use bevy_egui::PrimaryEguiContext;

use super::{
    KioskOptions, KioskPlugin, WakeCell,
    bridge::Line,
    i18n::Texts,
    outside::{awake::keep_awake, window::FixedSize},
    stage::open_eyes,
    tablet::Tablet,
};
use crate::guest::{Guest, Settings};

/// The window's size unless told otherwise, in logical pixels.
const WINDOW: (u32, u32) = (1280, 800);
/// No side of a window is shorter, in logical pixels: the screens need the room.
const LEAST_SIDE: u32 = 400;
/// One frame of a test or a picture.
const STEP: Duration = Duration::from_millis(20);
/// A broken system errs in every frame; the log shows the first errors and then every so many.
const LOG_EVERY: u64 = 600;

/// Runs the tablet in a window until the seller leaves it.
///
/// # Errors
/// No display or no graphics driver, in one line.
pub fn run(options: KioskOptions) -> Result<(), String> {
    let gpu = gpu()?;
    let (width, height) = options.window.unwrap_or(WINDOW);
    let wake = options.wake.clone();
    let mode = if options.fullscreen {
        WindowMode::BorderlessFullscreen(MonitorSelection::Current)
    } else {
        WindowMode::Windowed
    };
    let window = Window {
        title: "Chatelaine".into(),
        resolution: (width.max(LEAST_SIDE), height.max(LEAST_SIDE)).into(),
        resize_constraints: WindowResizeConstraints {
            min_width: LEAST_SIDE as f32,
            min_height: LEAST_SIDE as f32,
            ..default()
        },
        mode,
        ..default()
    };
    let mut app = quiet(move || {
        let plugins = DefaultPlugins
            .set(WindowPlugin { primary_window: Some(window), ..default() })
            .set(RenderPlugin { render_creation: gpu, ..default() })
            .disable::<LogPlugin>();
        let mut app = assemble(options, plugins);
        app.add_systems(Startup, |mut commands: Commands| {
            open_eyes(&mut commands, None);
        });
        app
    })
    .map_err(|reason| {
        debug!("no window: {reason}");
        "The kiosk needs a display for its window; start it on a desktop, or the desk alone with `chatelaine desk`."
            .to_owned()
    })?;
    hang_up_the_bell(&app, &wake);
    keep_awake();
    match app.run() {
        AppExit::Success => Ok(()),
        AppExit::Error(code) => Err(format!("the kiosk's window ended with an error (code {code})")),
    }
}

/// The tablet without window and graphics driver, `size` logical pixels large: for tests of everything but pixels.
/// Every `App::update` is one frame of 20 ms.
pub fn headless(options: KioskOptions, size: (u32, u32)) -> App {
    let settings = WgpuSettings { backends: None, ..default() };
    let window = Window { resolution: (size.0, size.1).into(), ..default() };
    let plugins = DefaultPlugins
        .set(RenderPlugin { render_creation: settings.into(), ..default() })
        .set(WindowPlugin { primary_window: Some(window), ..default() })
        .disable::<WinitPlugin>()
        .disable::<PipelinedRenderingPlugin>()
        .disable::<LogPlugin>();
    let mut app = assemble(options, plugins);
    app.insert_resource(TimeUpdateStrategy::ManualDuration(STEP)).add_systems(Startup, |mut commands: Commands| {
        open_eyes(&mut commands, None);
    });
    finish(&mut app);
    app
}

/// The tablet drawn into a picture, without a display; [`shoot`] takes it.
///
/// # Errors
/// There is no graphics driver, not even one in software.
pub fn offscreen(options: KioskOptions, size: (u32, u32)) -> Result<App, String> {
    let render_creation = gpu()?;
    let plugins = DefaultPlugins
        .set(WindowPlugin { primary_window: None, exit_condition: ExitCondition::DontExit, ..default() })
        .set(RenderPlugin { render_creation, synchronous_pipeline_compilation: true, ..default() })
        .disable::<WinitPlugin>()
        .disable::<PipelinedRenderingPlugin>()
        .disable::<LogPlugin>();
    quiet(move || {
        let mut app = assemble(options, plugins);
        app.insert_resource(TimeUpdateStrategy::ManualDuration(STEP))
            .insert_resource(FixedSize(size.0, size.1))
            .init_resource::<Shots>();
        let picture = Image::new_target_texture(size.0, size.1, TextureFormat::Rgba8UnormSrgb, None);
        let handle = app.world_mut().resource_mut::<Assets<Image>>().add(picture);
        open_eyes(&mut app.world_mut().commands(), Some(&handle));
        app.world_mut().flush();
        app.insert_resource(Picture(handle));
        finish(&mut app);
        app
    })
}

#[derive(Resource)]
struct Picture(Handle<Image>);

#[derive(Resource, Default)]
struct Shots(Vec<Image>);

/// Whether an [`offscreen`] tablet is drawn in every frame, or only when [`shoot`] looks at it. Everything else goes on
/// while it is not: a driver in software takes most of a frame's time for pixels that nobody looks at.
pub fn draw_all(app: &mut App, on: bool) {
    let mut eyes = app.world_mut().query_filtered::<&mut Camera, With<PrimaryEguiContext>>();
    for mut eye in eyes.iter_mut(app.world_mut()) {
        eye.is_active = on;
    }
}

/// The picture of the next frame of an [`offscreen`] tablet; `None` if none comes.
pub fn shoot(app: &mut App) -> Option<image::RgbaImage> {
    let mut eyes = app.world_mut().query_filtered::<&Camera, With<PrimaryEguiContext>>();
    let drawn_anyway = eyes.iter(app.world()).all(|eye| eye.is_active);
    draw_all(app, true);
    let picture = shoot_drawn(app);
    draw_all(app, drawn_anyway);
    picture
}

fn shoot_drawn(app: &mut App) -> Option<image::RgbaImage> {
    let handle = app.world().get_resource::<Picture>()?.0.clone();
    app.world_mut()
        .spawn(Screenshot::image(handle))
        .observe(|taken: On<ScreenshotCaptured>, mut shots: ResMut<Shots>| shots.0.push(taken.image.clone()));
    for _ in 0..100 {
        app.update();
        let shot = app.world_mut().resource_mut::<Shots>().0.pop();
        if let Some(shot) = shot {
            return shot.try_into_dynamic().ok().map(|picture| picture.to_rgba8());
        }
    }
    None
}

fn assemble(options: KioskOptions, plugins: PluginGroupBuilder) -> App {
    let settings = Settings::open(options.settings_file, options.language.as_deref());
    // Without chance every tablet surprises in the same order; that is all.
    let chance = getrandom::u64().unwrap_or_default();
    let mut app = App::new();
    app.set_error_handler(log_error)
        .add_plugins(plugins.set(TaskPoolPlugin { task_pool_options: decoding_on_several() }))
        .insert_resource(Line::new(options.link, options.news))
        .insert_resource(Texts::new(settings.lang))
        .insert_resource(Tablet::new(Guest::new(settings, chance)))
        .add_plugins(KioskPlugin);
    if let Some(here) = options.desk_here {
        app.insert_resource(here);
    }
    one_after_the_other(&mut app);
    app
}

/// The tablet's own systems are short: handing them to other threads costs a quarter of a frame and more, most of all where
/// the desk works beside them. What is large, as decoding and drawing, has threads of its own.
fn one_after_the_other(app: &mut App) {
    for (_, schedule) in app.world_mut().resource_mut::<Schedules>().iter_mut() {
        schedule.set_executor(SingleThreadedExecutor::new());
    }
}

/// Pictures are decoded on half of the cores, at least two: a tray that is turned to for the first time waits for them.
fn decoding_on_several() -> TaskPoolOptions {
    let mut options = TaskPoolOptions::default();
    let decoding = &mut options.async_compute;
    (decoding.min_threads, decoding.max_threads, decoding.percent) = (2, 8, 0.5);
    options
}

/// Plugins have to be finished by hand when no runner does it.
fn finish(app: &mut App) {
    while app.plugins_state() == PluginsState::Adding {
        bevy::tasks::tick_global_task_pools_on_main_thread();
    }
    app.finish();
    app.cleanup();
}

/// Nothing panics in front of a guest.
fn log_error(error: BevyError, context: ErrorContext) {
    static SEEN: AtomicU64 = AtomicU64::new(0);
    let seen = SEEN.fetch_add(1, Ordering::Relaxed);
    if seen < 10 || seen.is_multiple_of(LOG_EVERY) {
        error!("{} {} (error {}): {error}", context.kind(), context.name(), seen + 1);
    }
}

fn hang_up_the_bell(app: &App, wake: &WakeCell) {
    if let Some(proxy) = app.world().get_resource::<EventLoopProxyWrapper>() {
        let proxy = (**proxy).clone();
        wake.hang_up(Box::new(move || {
            // The loop is gone only when the window is.
            let _ = proxy.send_event(WinitUserEvent::WakeUp);
        }));
    }
}

/// A graphics driver, before there is an app: without one Bevy would panic.
fn gpu() -> Result<RenderCreation, String> {
    let backends = Backends::VULKAN | Backends::GL | Backends::METAL | Backends::DX12;
    let settings = WgpuSettings { backends: Some(backends), ..default() };
    quiet(|| bevy::tasks::block_on(initialize_renderer(backends, None, &settings)))
        .map(RenderCreation::from)
        .map_err(|reason| {
            debug!("no graphics driver: {reason}");
            "The kiosk needs a graphics driver, if only one in software (on Linux that of Mesa); install one, or start the \
             desk alone with `chatelaine desk`."
                .to_owned()
        })
}

thread_local! {
    /// Whether this thread's panics are told by what it gives back, and not by the hook.
    static IS_QUIET: Cell<bool> = const { Cell::new(false) };
}

/// Does `work` with this thread's panics kept quiet, and those of no other; a panic becomes its first line.
fn quiet<T>(work: impl FnOnce() -> T) -> Result<T, String> {
    static HOOK: Once = Once::new();
    HOOK.call_once(|| {
        let usual = take_hook();
        set_hook(Box::new(move |panic| {
            if !IS_QUIET.get() {
                usual(panic);
            }
        }));
    });
    let before = IS_QUIET.replace(true);
    let outcome = catch_unwind(AssertUnwindSafe(work));
    IS_QUIET.set(before);
    outcome.map_err(|panic| {
        let text = panic.downcast_ref::<String>().cloned();
        let text = text.or_else(|| panic.downcast_ref::<&str>().map(|text| (*text).to_owned()));
        text.unwrap_or_default().lines().next().unwrap_or("an unknown reason").to_owned()
    })
}
