//! A range, what is there and what to take, as one bar. The same is said in words beside it.

use maud::{Markup, html};

use crate::prep::HowMany;

/// How wide a bar is drawn, in its own units.
const WIDTH: f64 = 100.0;

/// The largest figure of all bars, so that they can be compared.
pub(super) fn scale<'a>(numbers: impl Iterator<Item = (&'a HowMany, u32)>) -> u32 {
    numbers.map(|(one, there)| one.take.max(one.usually_to).max(there)).max().unwrap_or(1).max(1)
}

/// One bar: pale from and to what is usually wanted, filled up to what is there, a line at what to take.
pub(super) fn bar(number: &HowMany, there: u32, scale: u32) -> Markup {
    let at = |count: u32| format!("{:.1}", f64::from(count) / f64::from(scale) * (WIDTH - 2.0) + 1.0);
    let wide =
        |from: u32, to: u32| format!("{:.1}", (f64::from(to - from) / f64::from(scale) * (WIDTH - 2.0)).max(1.5));
    html! {
        svg.range viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true" {
            rect.all x="0" y="4" width="100" height="2" {}
            rect.usual x=(at(number.usually_from)) y="0.5" width=(wide(number.usually_from, number.usually_to)) height="9" {}
            @if there > 0 { rect.there x="1" y="3" width=(wide(0, there)) height="4" {} }
            @if number.take > 0 { rect.take x=(at(number.take)) y="0" width="1.2" height="10" {} }
        }
    }
}
