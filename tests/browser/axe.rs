//! The accessibility checker axe-core, where whoever runs the tests has put it beside them (DEVELOPERS.md says how).

use std::{env, fs, path::PathBuf, sync::LazyLock};

use serde_json::{Value, json};

/// The checker's script, where `CHATELAINE_AXE` names it.
static AXE: LazyLock<Option<String>> = LazyLock::new(|| {
    let file = env::var_os("CHATELAINE_AXE").map(PathBuf::from)?;
    Some(fs::read_to_string(&file).unwrap_or_else(|error| panic!("{}: {error}", file.display())))
});

/// What has to hold: levels A and AA of WCAG 2.0, 2.1 and 2.2, as the checker names them.
const LEVELS: [&str; 5] = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/// Gives what the checker objects to. What a bar at the edge of the screen covers can be scrolled out from under it, which the
/// checker does not know: the bars lie still meanwhile.
pub const JUDGE: &str = "
    const [options, done] = arguments;
    const still = new CSSStyleSheet();
    still.replaceSync('.bar, .top, .banner { position: static !important }');
    document.adoptedStyleSheets = [still];
    const told = (node) => node.html.slice(0, 160) + ' ' + node.failureSummary;
    window.axe.run(document, options)
      .then((found) => found.violations.map((one) => [one.id, one.help, ...one.nodes.map(told)]), (error) => [String(error)])
      .then((objections) => { document.adoptedStyleSheets = []; done(objections); });";

/// The checker's script, where there is one.
pub fn script() -> Option<&'static str> {
    AXE.as_deref()
}

/// What [`JUDGE`] is asked with.
pub fn options() -> Value {
    json!({"runOnly": {"type": "tag", "values": LEVELS}, "resultTypes": ["violations"]})
}
