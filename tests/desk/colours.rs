//! The colours of the desk's pages, read off its style.

use std::{fs, path::Path};

fn style() -> String {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("assets/desk/desk.css");
    fs::read_to_string(file).expect("the style")
}

/// What the rule of exactly this selector, outside every `@media`, says of a property.
fn said(style: &str, selector: &str, property: &str) -> String {
    let rule = style.split('}').filter_map(|rule| rule.rsplit_once('{'));
    let of = |of: &str| of.rsplit_once(['\n', ';']).map_or(of, |(_, last)| last).trim().to_owned();
    let mut rules = rule.filter(|(one, _)| of(one) == selector).map(|(_, says)| says);
    let says = rules.next().unwrap_or_else(|| panic!("there is no rule {selector}"));
    let mut lines = says.split(';').filter_map(|line| line.split_once(':'));
    let found = lines.find(|(name, _)| name.trim() == property);
    found.unwrap_or_else(|| panic!("{selector} says nothing of {property}")).1.trim().to_owned()
}

/// Red, green and blue of the first colour in a value: `#RRGGBB`, or a name of the style's own for one.
fn colour(style: &str, value: &str) -> [u8; 3] {
    if let Some((_, name)) = value.split_once("var(") {
        let name = name.split(')').next().unwrap();
        return colour(style, &said(style, ":root", name));
    }
    let (_, digits) = value.split_once('#').unwrap_or_else(|| panic!("{value} has no colour"));
    [0, 2, 4].map(|at| u8::from_str_radix(&digits[at..at + 2], 16).unwrap())
}

/// Source: WCAG 2.2, relative luminance.
fn luminance(colour: [u8; 3]) -> f64 {
    let [r, g, b] = colour.map(|part| {
        let part = f64::from(part) / 255.0;
        if part <= 0.04045 { part / 12.92 } else { ((part + 0.055) / 1.055).powf(2.4) }
    });
    0.2126 * r + 0.7152 * g + 0.0722 * b
}

/// Source: WCAG 2.2, contrast ratio.
fn contrast(one: [u8; 3], other: [u8; 3]) -> f64 {
    let (one, other) = (luminance(one), luminance(other));
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

/// What is said of a border or a ring, and the grounds that it stands on.
const EDGES: [(&str, &str, &[&str]); 6] = [
    ("input, select", "border", &["--paper", "--linen"]),
    (".quiet", "border-color", &["--paper", "--linen"]),
    (".who span", "border", &["--paper", "--linen"]),
    (":focus-visible", "outline", &["--paper", "--linen", "--plum-pale", "--brass-pale", "--leaf-pale", "--rust-pale"]),
    (".who input:focus-visible + span", "outline", &["--paper", "--linen"]),
    (
        ".top :focus-visible, .bar:focus-visible, .practice :focus-visible",
        "outline",
        &["--plum", "--plum-deep", ".banner.practice"],
    ),
];

/// Source: WCAG 2.2, success criterion 1.4.11, 3 to 1 for what shows where a control is and that it has the focus. The two
/// examples have the ratios that its understanding document gives for grey on white (#949494: 3.03, #767676: 4.54).
#[test]
fn fields_and_the_ring_of_the_focus_stand_out_from_their_ground() {
    let grey = |level| contrast([level; 3], [255; 3]);
    assert!((grey(0x94) - 3.03).abs() < 0.01 && (grey(0x76) - 4.54).abs() < 0.01);
    let style = style();
    for (selector, property, grounds) in EDGES {
        let edge = colour(&style, &said(&style, selector, property));
        for ground in grounds {
            let of = if ground.starts_with("--") {
                said(&style, ":root", ground)
            } else {
                said(&style, ground, "background")
            };
            let ratio = contrast(edge, colour(&style, &of));
            assert!(ratio >= 3.0, "{selector} on {ground}: {ratio:.2} to 1");
        }
    }
}
