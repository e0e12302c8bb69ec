//! Somebody who helps the seller, signed in by name and PIN.

use crate::{
    kit::{Table, agent},
    seller::Seller,
};

/// Somebody's browser in which nobody is signed in.
pub fn nobody(table: &Table) -> Seller {
    Seller { agent: agent(), url: table.desk.url(), cookie: String::new() }
}

/// The PIN that a page tells once.
pub fn told_pin(page: &str) -> String {
    let code = page.split("<p class=\"code\">").nth(1).and_then(|rest| rest.split("</p>").next());
    code.unwrap_or_else(|| panic!("no PIN is told: {page}")).replace(' ', "")
}

/// A helper whom `seller` has added, signed in, and their PIN.
pub fn helper(table: &Table, seller: &Seller, name: &str) -> (Seller, String) {
    let added = seller.post("/staff", &[("name", name)]);
    assert_eq!(added.status, 200, "{}", added.text);
    let (mut helper, pin) = (nobody(table), told_pin(&added.text));
    let answer = helper.post("/sign-in", &[("who", name), ("pin", &pin)]);
    assert_eq!((answer.status, answer.location.as_str()), (303, "/tickets"), "{}", answer.text);
    helper.cookie = answer.cookie.expect("a session");
    (helper, pin)
}
