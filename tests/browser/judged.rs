//! Outside judges of the pages: the accessibility checker axe-core in the browser, and what is served kept for a checker of
//! HTML. Both are put beside the tests by whoever runs them; DEVELOPERS.md says how.

use std::{env, fs, path::PathBuf, sync::LazyLock};

use serde_json::{Value, json};

use super::driver::Browser;

/// The checker's script, where `CHATELAINE_AXE` names it.
static AXE: LazyLock<Option<String>> = LazyLock::new(|| {
    let file = env::var_os("CHATELAINE_AXE").map(PathBuf::from)?;
    Some(fs::read_to_string(&file).unwrap_or_else(|error| panic!("{}: {error}", file.display())))
});

/// What has to hold: levels A and AA of WCAG 2.0, 2.1 and 2.2, as the checker names them.
const LEVELS: [&str; 5] = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"];

/// Gives what the checker objects to. What a bar at the edge of the screen covers can be scrolled out from under it, which the
/// checker does not know: the bars lie still meanwhile.
const JUDGE: &str = "
    const [options, done] = arguments;
    const still = new CSSStyleSheet();
    still.replaceSync('.bar, .top, .banner { position: static !important }');
    document.adoptedStyleSheets = [still];
    const told = (node) => node.html.slice(0, 160) + ' ' + node.failureSummary;
    window.axe.run(document, options)
      .then((found) => found.violations.map((one) => [one.id, one.help, ...one.nodes.map(told)]), (error) => [String(error)])
      .then((objections) => { document.adoptedStyleSheets = []; done(objections); });";

/// The page as it is in the browser has nothing that the checker objects to.
pub fn by_axe(browser: &Browser, name: &str) {
    let Some(axe) = &*AXE else { return };
    browser.run(&format!("if (!window.axe) {{ {axe} }} return true"));
    let options = json!({"runOnly": {"type": "tag", "values": LEVELS}, "resultTypes": ["violations"]});
    let found = browser.command("/execute/async", &json!({"script": JUDGE, "args": [options]})).expect("a judgement");
    assert_eq!(found, json!([]), "{name}: {}", serde_json::to_string_pretty(&found).unwrap_or_default());
}

/// Keeps what the desk serves for this page, where `CHATELAINE_PAGES` names a folder.
pub fn keep_served(browser: &Browser, name: &str) {
    let Some(folder) = env::var_os("CHATELAINE_PAGES").map(PathBuf::from) else { return };
    let script = "const done = arguments[arguments.length - 1];
        fetch(location.href).then((answer) => answer.ok ? answer.text() : '', () => '').then(done)";
    let served = browser.command("/execute/async", &json!({"script": script, "args": []})).expect("the page once more");
    // What was answered to a form can't be asked for again.
    if let Some(text) = served.as_str().filter(|text| !text.is_empty()) {
        fs::create_dir_all(&folder).expect("the folder for pages");
        fs::write(folder.join(format!("{name}.html")), text).expect("a page");
    }
    assert!(matches!(served, Value::String(_)), "{served}");
}
