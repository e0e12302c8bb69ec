//! Outside judges of the pages: the accessibility checker axe-core in the browser, and what is served kept for a checker of
//! HTML. Both are put beside the tests by whoever runs them; DEVELOPERS.md says how.

use std::{env, fs, path::PathBuf};

use serde_json::{Value, json};

use super::{axe, driver::Browser};

/// The page as it is in the browser has nothing that the checker objects to.
pub fn by_axe(browser: &Browser, name: &str) {
    let Some(script) = axe::script() else { return };
    browser.run(&format!("if (!window.axe) {{ {script} }} return true"));
    let asked = json!({"script": axe::JUDGE, "args": [axe::options()]});
    let found = browser.command("/execute/async", &asked).expect("a judgement");
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
