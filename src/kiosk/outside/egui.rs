//! egui as a painter only: it is told the screen's size and nothing else, so that it never asks for another frame.

use std::sync::Arc;

use bevy::prelude::*;
use bevy_egui::{
    EguiContexts, EguiGlobalSettings, EguiInput, EguiInputSystemSettings, EguiPlugin, EguiPreUpdateSet,
    EguiPrimaryContextPass, egui,
};

use crate::kiosk::screens;

pub(in crate::kiosk) fn plugin(app: &mut App) {
    app.add_plugins(EguiPlugin::default())
        .add_systems(
            PreUpdate,
            drop_all_events.after(EguiPreUpdateSet::ProcessInput).before(EguiPreUpdateSet::BeginPass),
        )
        .add_systems(EguiPrimaryContextPass, (load_fonts, screens::paint_screen).chain());
    let mut settings = app.world_mut().resource_mut::<EguiGlobalSettings>();
    settings.auto_create_primary_context = false;
    settings.enable_absorb_bevy_input_system = false;
    settings.enable_cursor_icon_updates = false;
    settings.enable_ime = false;
    settings.input_system_settings = EguiInputSystemSettings {
        run_write_modifiers_keys_state_system: false,
        run_write_window_pointer_moved_messages: false,
        run_write_pointer_button_messages: false,
        run_write_window_touch_messages_system: false,
        run_write_non_window_pointer_moved_messages_system: false,
        run_write_mouse_wheel_messages_system: false,
        run_write_pinch_gesture_messages_system: false,
        run_write_non_window_touch_messages_system: false,
        run_write_keyboard_input_messages_system: false,
        run_write_ime_messages_system: false,
        run_write_file_dnd_messages_system: false,
    };
}

/// bevy_egui 0.42 tells egui of the modifier keys in every frame, and egui 0.36 answers any event with another frame.
fn drop_all_events(mut inputs: Query<&mut EguiInput>) {
    for mut input in &mut inputs {
        input.0.events.clear();
    }
}

/// Gives egui the house's typefaces, once.
fn load_fonts(mut contexts: EguiContexts, mut done: Local<bool>) -> Result {
    if !*done {
        let context = contexts.ctx_mut()?;
        context.set_fonts(fonts());
        context.options_mut(|options| {
            options.zoom_with_keyboard = false;
            options.theme_preference = egui::ThemePreference::Light;
        });
        *done = true;
    }
    Ok(())
}

/// The typefaces that are part of the program.
pub(in crate::kiosk) fn fonts() -> egui::FontDefinitions {
    let files: [(&str, &'static [u8]); 3] = [
        ("sans", include_bytes!("../../../assets/fonts/andika-regular.ttf")),
        ("bold", include_bytes!("../../../assets/fonts/andika-bold.ttf")),
        ("serif", include_bytes!("../../../assets/fonts/serif-semibold.ttf")),
    ];
    let mut fonts = egui::FontDefinitions::empty();
    for (name, bytes) in files {
        fonts.font_data.insert(name.into(), Arc::new(egui::FontData::from_static(bytes)));
    }
    let family = |first: &str| vec![first.to_owned(), "sans".to_owned()];
    fonts.families.insert(egui::FontFamily::Proportional, vec!["sans".to_owned()]);
    fonts.families.insert(egui::FontFamily::Monospace, vec!["sans".to_owned()]);
    fonts.families.insert(egui::FontFamily::Name("bold".into()), family("bold"));
    fonts.families.insert(egui::FontFamily::Name("serif".into()), family("serif"));
    fonts
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kiosk::i18n::Lang;

    fn u16_at(file: &[u8], at: usize) -> usize {
        usize::from(u16::from_be_bytes([file[at], file[at + 1]]))
    }

    fn u32_at(file: &[u8], at: usize) -> usize {
        u16_at(file, at) << 16 | u16_at(file, at + 2)
    }

    /// Whether a TrueType file maps `c` (of the basic plane) to a glyph. Source: OpenType 1.9, cmap, format 4.
    fn maps(file: &[u8], c: char) -> bool {
        let tables = (0..u16_at(file, 4)).map(|i| 12 + 16 * i);
        let cmap = tables.into_iter().find(|at| &file[*at..at + 4] == b"cmap").map(|at| u32_at(file, at + 8)).unwrap();
        let subtables = (0..u16_at(file, cmap + 2)).map(|i| cmap + u32_at(file, cmap + 4 + 8 * i + 4));
        let table = subtables.into_iter().find(|at| u16_at(file, *at) == 4).expect("a format 4 table");
        let (code, twice) = (c as usize, u16_at(file, table + 6));
        let segment = (0..twice / 2).find(|i| u16_at(file, table + 14 + 2 * i) >= code).unwrap();
        let start_at = table + 16 + twice + 2 * segment;
        let (start, delta, offset_at) = (u16_at(file, start_at), u16_at(file, start_at + twice), start_at + 2 * twice);
        let offset = u16_at(file, offset_at);
        let glyph = match offset {
            0 => (code + delta) & 0xFFFF,
            _ => u16_at(file, offset_at + offset + 2 * code.saturating_sub(start)),
        };
        start <= code && glyph != 0
    }

    #[test]
    fn every_character_of_every_language_is_in_the_typefaces() {
        let fonts = fonts();
        assert!(!maps(&fonts.font_data["sans"].font, '\u{4e00}'), "the reading itself sees what is missing");
        let names = |lang: Lang| {
            let file = format!("{}/catalog/names/{}.ron", env!("CARGO_MANIFEST_DIR"), lang.code());
            match lang {
                // The catalogue itself is in English.
                Lang::En => String::new(),
                _ => std::fs::read_to_string(&file).unwrap_or_else(|error| panic!("{file}: {error}")),
            }
        };
        for (name, data) in &fonts.font_data {
            for lang in Lang::ALL {
                let names = names(lang);
                let texts = lang
                    .sources()
                    .concat()
                    .chars()
                    .collect::<Vec<_>>()
                    .into_iter()
                    .chain(names.chars())
                    .chain(lang.own_name().chars())
                    .chain("$€£¥−…\u{a0}×•·".chars());
                for c in texts.filter(|c| *c != '\n') {
                    assert!(maps(&data.font, c), "{c:?} ({:#x}) of {lang:?} is not in {name}", c as u32);
                }
            }
        }
    }
}
