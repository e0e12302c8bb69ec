//! Guests who wait for a seat: giving numbers, calling the next, who has not come, when a seat is free again.

use std::sync::Arc;

use axum::{
    Form, Router,
    extract::State,
    response::{IntoResponse, Redirect, Response},
    routing::get,
};
use maud::{Markup, html};
use serde::Deserialize;

use super::{
    board::minutes,
    frame::{Tab, page},
};
use crate::{
    desk::{refusal::Refusal, signed_in::Seller, state::DeskState},
    disk::digest::sha256_hex,
    lang::{Texts, message, say},
    quoting::quoted,
    waiting::{Line, Step},
};

/// The page's address.
const HERE: &str = "/waiting";
/// Seats of a table of which nobody has said how many it has. Common practice, no source.
const USUAL_SEATS: usize = 4;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/waiting", get(show).post(take))
}

/// What is done on the page.
#[derive(Deserialize)]
struct Taken {
    /// Steps with commas between them, as in `seat_free,call:7`.
    step: String,
    /// How many steps the page had seen: a form that is sent twice says the same.
    #[serde(default)]
    seen: String,
    /// How many seats there are.
    #[serde(default)]
    seats: String,
}

impl Taken {
    fn steps(&self) -> Result<Vec<Step>, Refusal> {
        self.step.split(',').map(|word| self.step_of(word)).collect()
    }

    fn step_of(&self, word: &str) -> Result<Step, Refusal> {
        let unknown = || Refusal::wrong(message!("waiting-no-step", found = quoted(word)));
        let (name, number) = word.split_once(':').unwrap_or((word, ""));
        let number = || number.parse().map_err(|_| unknown());
        Ok(match name {
            // What is no number at all is refused as a number of seats like any other.
            "seats" => Step::Seats(self.seats.trim().parse().unwrap_or(0)),
            "take" => Step::Take,
            "sit_down" => Step::SitDown,
            "seat_free" => Step::SeatFree,
            "call" => Step::Call(number()?),
            "came" => Step::Came(number()?),
            "not_come" => Step::NotCome(number()?),
            "late" => Step::Late(number()?),
            "gone" => Step::Gone(number()?),
            _ => return Err(unknown()),
        })
    }
}

async fn show(State(desk): State<Arc<DeskState>>, seller: Seller) -> Result<Response, Refusal> {
    let line = desk.ledger.run(|ledger, _| ledger.waiting()).await?;
    let texts = seller.texts;
    let view = View { texts, line: &line, now_ms: desk.clock.now().as_millisecond() };
    let title = say!(texts, "waiting-title");
    let main = html! {
        h1 { (title) }
        @if line.seats() == 0 {
            p { (say!(texts, "waiting-about")) }
            (view.seats())
        } @else {
            (view.at_the_table())
            (view.called())
            (view.line())
            (view.not_come())
            p { a.button.quiet href="/board" { (say!(texts, "waiting-board")) } }
            p.faint { (say!(texts, "waiting-board-hint")) }
            details { summary { (say!(texts, "waiting-seats-change")) } (view.seats()) }
        }
    };
    Ok(page(&desk, texts, Tab::Tickets, &title, &main).into_response())
}

/// What the line looks like to its reader.
struct View<'a> {
    texts: &'static Texts,
    line: &'a Line,
    now_ms: i64,
}

impl View<'_> {
    /// A button that takes a step.
    fn step(&self, step: &str, words: &str, class: &str) -> Markup {
        html! {
            form method="post" action=(HERE) {
                input type="hidden" name="seen" value=(self.line.steps());
                button class=(class) name="step" value=(step) { (words) }
            }
        }
    }

    fn wait(&self, ahead: usize) -> String {
        minutes(self.texts, self.line.wait(ahead, self.now_ms))
    }

    fn seats(&self) -> Markup {
        let seats = if self.line.seats() == 0 { USUAL_SEATS } else { self.line.seats() };
        html! {
            form.card.stack method="post" action=(HERE) {
                input type="hidden" name="seen" value=(self.line.steps());
                div {
                    label for="seats" { (say!(self.texts, "waiting-seats")) }
                    input #seats name="seats" type="number" inputmode="numeric" min="1" max="99" value=(seats) required;
                }
                button.main name="step" value="seats" { (say!(self.texts, "waiting-seats-enter")) }
            }
        }
    }

    /// The number that was given last, to be told to the guest.
    fn given(&self) -> Markup {
        let ahead = self.line.waiting().position(|number| number == self.line.last());
        html! {
            @if let Some(ahead) = ahead {
                p.given {
                    (say!(self.texts, "waiting-given", number = self.line.last(), wait = self.wait(ahead)))
                }
            }
        }
    }

    fn at_the_table(&self) -> Markup {
        let (texts, line) = (self.texts, self.line);
        let next = line.waiting().next();
        html! {
            section.card.stack aria-label=(say!(texts, "waiting-table")) {
                p {
                    strong { (say!(texts, "waiting-sitting", n = line.sitting(), of = line.seats())) } " · "
                    (say!(texts, "waiting-tally", n = line.waiting().len()))
                }
                p.faint { (say!(texts, "waiting-new-guest", wait = self.wait(line.waiting().len()))) }
                (self.given())
                @match next {
                    Some(number) if line.free() > 0 => {
                        (self.step(&format!("call:{number}"), &say!(texts, "waiting-call", number = number), "main wide"))
                    }
                    Some(number) if line.sitting() > 0 => {
                        (self.step(&format!("seat_free,call:{number}"), &say!(texts, "waiting-free-and-call", number = number), "main wide"))
                    }
                    _ => {}
                }
                div.row.wraps {
                    @if next.is_none() && line.free() > 0 {
                        (self.step("sit_down", &say!(texts, "waiting-sit-down"), "main"))
                    }
                    (self.step("take", &say!(texts, "waiting-take", number = line.last() + 1), if line.free() == 0 && next.is_none() { "main" } else { "quiet" }))
                    @if line.sitting() > 0 { (self.step("seat_free", &say!(texts, "waiting-seat-free"), "quiet")) }
                }
            }
        }
    }

    fn called(&self) -> Markup {
        let texts = self.texts;
        html! {
            @if !self.line.called().is_empty() {
                section aria-label=(say!(texts, "waiting-called")) {
                    h2 { (say!(texts, "waiting-called")) }
                    ul.cards.line-of-guests {
                        @for number in self.line.called() {
                            li.card data-key={ "called-" (number) } {
                                p.number { (number) }
                                div.row.wraps {
                                    (self.step(&format!("came:{number}"), &say!(texts, "waiting-came"), "main"))
                                    (self.step(&format!("not_come:{number}"), &say!(texts, "waiting-not-come"), "quiet"))
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    fn line(&self) -> Markup {
        let texts = self.texts;
        html! {
            section aria-label=(say!(texts, "waiting-line")) {
                h2 { (say!(texts, "waiting-line")) " " span.tally { (self.line.waiting().len()) } }
                @if self.line.waiting().len() == 0 { p.faint { (say!(texts, "waiting-nobody")) } }
                ul.cards.line-of-guests {
                    @for (ahead, number) in self.line.waiting().enumerate() {
                        li.card data-key={ "waits-" (number) } {
                            p.number { (number) }
                            p.faint { (self.wait(ahead)) }
                            div.row.wraps {
                                @if self.line.free() > 0 {
                                    (self.step(&format!("call:{number}"), &say!(texts, "waiting-call", number = number), "quiet"))
                                }
                                (self.step(&format!("gone:{number}"), &say!(texts, "waiting-gone"), "quiet"))
                            }
                        }
                    }
                }
            }
        }
    }

    fn not_come(&self) -> Markup {
        let (texts, all) = (self.texts, self.line.not_come());
        html! {
            @if !all.is_empty() {
                section aria-label=(say!(texts, "waiting-absent")) {
                    h2 { (say!(texts, "waiting-absent")) }
                    ul.cards.line-of-guests {
                        @for number in all {
                            li.card data-key={ "absent-" (number) } {
                                p.number { (number) }
                                div.row.wraps {
                                    (self.step(&format!("late:{number}"), &say!(texts, "waiting-late"), "quiet"))
                                    (self.step(&format!("gone:{number}"), &say!(texts, "waiting-gone"), "quiet"))
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

async fn take(
    State(desk): State<Arc<DeskState>>,
    seller: Seller,
    Form(taken): Form<Taken>,
) -> Result<Response, Refusal> {
    let steps = taken.steps()?;
    // Two phones may well do the same at the same time; one phone that does it twice has sent one form twice.
    let form = sha256_hex(format!("{} {} {}", seller.token_hash, taken.seen, taken.step));
    desk.ledger.enter_by(&seller, move |ledger, now| ledger.take_steps(&form[..16], &steps, now)).await?;
    desk.beat();
    Ok(Redirect::to(HERE).into_response())
}
