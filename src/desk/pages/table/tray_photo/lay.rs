//! All that a tray's photo gave, laid on the table: the pictures into its folder, and then one act that can be undone.

use std::sync::Arc;

use axum::{
    Router,
    extract::{Path, State},
    response::{IntoResponse, Redirect, Response},
    routing::post,
};
use maud::{Markup, html};

use super::{
    suggested::suggested_name,
    work::{Work, grid, with_drafts},
};
use crate::{
    catalog::{Act, EditRefusal, Fields, Place},
    craft::{DropKind, Guess},
    desk::{
        editing,
        pages::table::{
            form::{TableForm, mark_fields},
            ids::TakenIds,
            lay::written,
            refused::refused,
        },
        refusal::Refusal,
        state::DeskState,
        tray_drafts::{Cut, InPhoto, ShownAs, look_file},
    },
    disk::digest::sha256_hex,
    lang::{Texts, say},
    ron_tree::in_quotes,
};

/// Sizes that are written as they were measured, in millimetres. What seems larger may be two pieces that lie together.
const MEASURED_MM: std::ops::RangeInclusive<f64> = 2.0..=150.0;

pub(super) fn routes() -> Router<Arc<DeskState>> {
    Router::new().route("/table/tray/{letter}/photo/{id}/lay", post(lay))
}

/// A button for all of it. What it carries says how the compartments stood when they were cut out.
pub(super) fn lay_form(texts: &Texts, work: &Work) -> Markup {
    let marks: Vec<(Place, &str)> = work.shown().map(|one| (Place::Home(one.home), one.mark.as_str())).collect();
    html! {
        @if !marks.is_empty() {
            form method="post" action=(work.address("/lay")) {
                (mark_fields(&marks))
                button.main { (say!(texts, "tray-photo-lay", n = marks.len())) }
            }
        }
    }
}

async fn lay(
    State(desk): State<Arc<DeskState>>,
    Path((letter, id)): Path<(char, String)>,
    form: TableForm,
) -> Result<Response, Refusal> {
    let texts = form.seller.texts;
    let table = format!("/table#tray-{letter}");
    let Ok(work) = Work::find(&desk, letter, id).await else {
        // Sent twice, it lies there already.
        grid(&desk, letter).await?;
        return Ok(Redirect::to(&table).into_response());
    };
    if work.to_price().iter().any(|one| one.told.price.is_none()) {
        return Ok(Redirect::to(&work.address("/prices")).into_response());
    }
    let (action, back) = (work.address("/lay"), work.address("/pieces"));
    let acts = match acts(texts, &work).await? {
        Ok(acts) => acts,
        Err(error) => return Ok(refused(&desk, &form, &error, (&action, &back)).await),
    };
    let did = say!(texts, "table-did-photo", letter = letter.to_string(), n = work.shown().count());
    match editing::change(&desk, acts, form.seen(), did).await {
        Ok(_) => {
            let done = work.id.clone();
            with_drafts(&desk, move |drafts| {
                drafts.remove(&done);
                Ok(())
            })
            .await?;
            Ok(Redirect::to(&table).into_response())
        }
        Err(error) => Ok(refused(&desk, &form, &error, (&action, &back)).await),
    }
}

/// What is done to the table, with every picture kept before. The inner result is why the disk keeps none.
async fn acts(texts: &Texts, work: &Work) -> Result<Result<Vec<Act>, EditRefusal>, Refusal> {
    // By the files themselves: what somebody writes by hand is in the catalogue a moment later.
    let files = match editing::files(&work.desk).await {
        Ok(files) => files,
        Err(error) => return Ok(Err(error)),
    };
    let mut taken = TakenIds::read(&work.desk, work.catalog()).await?;
    let mut acts = Vec::new();
    if let Some(width) = work.draft.inner_width_mm {
        let fields = Fields::new().text("inner_width", &format!("{width}mm"));
        acts.push(Act::TellTray { letter: work.letter, fields });
    }
    for one in work.shown() {
        let (id, file) = (work.id.clone(), one.shown.file(one.home));
        let Some(bytes) = with_drafts(&work.desk, move |drafts| Ok(drafts.picture(&id, &file))).await? else {
            continue;
        };
        let end = if one.shown == ShownAs::Cut { "png" } else { "jpg" };
        let name = match kept(work, end, bytes).await {
            Ok(name) => name,
            Err(error) => return Ok(Err(error)),
        };
        let mix = match mix(work, one).await? {
            Ok(mix) => mix,
            Err(error) => return Ok(Err(error)),
        };
        let home = one.home;
        acts.push(if files.is_taken(home) {
            Act::Tell { home, fields: told_anew(work, one, work.drop_at(home), &name).and(mix) }
        } else {
            Act::Lay { home, fields: new_entry(texts, work, one, &name, &mut taken).and(mix) }
        });
    }
    Ok(Ok(acts))
}

/// Keeps a picture in the table's folder, named after its contents; its name.
async fn kept(work: &Work, end: &str, bytes: Vec<u8>) -> Result<String, EditRefusal> {
    let name = format!("tray-{}.{end}", &sha256_hex(&bytes)[..16]);
    editing::keep_picture(&work.desk, name.clone(), bytes).await?;
    Ok(name)
}

/// The looks of a mix as a field of its entry, with their pictures kept; nothing for what is none.
async fn mix(work: &Work, one: &InPhoto) -> Result<Result<Fields, EditRefusal>, Refusal> {
    if one.shown != ShownAs::Mix {
        return Ok(Ok(Fields::new()));
    }
    let mut looks = Vec::new();
    for (number, cut) in one.looks.iter().enumerate() {
        let (id, file) = (work.id.clone(), look_file(one.home, number));
        let Some(bytes) = with_drafts(&work.desk, move |drafts| Ok(drafts.picture(&id, &file))).await? else {
            continue;
        };
        let name = match kept(work, "png", bytes).await {
            Ok(name) => name,
            Err(error) => return Ok(Err(error)),
        };
        let sizes = sizes(*cut).into_iter().map(|(name, value)| format!(", {name}: {value}"));
        looks.push(format!("(picture: {}{})", in_quotes(&name), sizes.collect::<String>()));
    }
    Ok(Ok(Fields::new().written("assortment", format!("[{}]", looks.join(", ")))))
}

/// Width and height of a cut-out as fields of an entry.
fn measures(one: &InPhoto) -> Vec<(&'static str, String)> {
    one.cut.filter(|_| one.shown == ShownAs::Cut).map(sizes).unwrap_or_default()
}

fn sizes(cut: Cut) -> Vec<(&'static str, String)> {
    let sizes = [("width", cut.width_mm), ("height", cut.height_mm)];
    let all_measured = sizes.iter().all(|(_, mm)| MEASURED_MM.contains(mm));
    sizes.into_iter().filter(|_| all_measured).map(|(name, mm)| (name, in_quotes(&format!("{mm:.1}mm")))).collect()
}

/// What lies there already gets its picture, and its size where nobody has told that.
fn told_anew(work: &Work, one: &InPhoto, kind: Option<&DropKind>, picture: &str) -> Fields {
    let mut fields = Fields::new().text("picture", picture);
    let is_guessed = |guess| kind.is_some_and(|kind| kind.guessed.contains(&guess));
    let both_guessed = is_guessed(Guess::Width) && is_guessed(Guess::Height);
    for (name, value) in measures(one).into_iter().filter(|_| both_guessed) {
        fields = fields.written(name, value);
    }
    // It was empty when its price was typed, and somebody laid something there since: hers counts.
    if let Some(price) = one.told.price {
        fields = fields.text("price", &written(price, &work.loaded));
    }
    if let Some(name) = &one.told.name {
        fields = fields.text("name", name);
    }
    fields
}

/// All that is told of a new drop, its id first; what only looks so is marked as a guess.
fn new_entry(texts: &Texts, work: &Work, one: &InPhoto, picture: &str, taken: &mut TakenIds) -> Fields {
    let mut guessed = Vec::new();
    let name = one.told.name.clone().unwrap_or_else(|| {
        guessed.push("name");
        suggested_name(texts, one)
    });
    let mut fields = Fields::new().text("id", &taken.fresh(&name)).text("name", &name);
    let looks = one.cut.filter(|_| one.shown == ShownAs::Cut).map(|cut| cut.looks);
    match (one.told.sort, looks) {
        (Some(sort), _) => fields = fields.written("sort", sort.name()),
        (None, Some(looks)) => {
            fields = fields.written("sort", looks.sort.name());
            guessed.push("sort");
        }
        (None, None) => {}
    }
    if let Some(looks) = looks {
        fields = fields.written("colours", format!("[{}]", looks.colour.name()));
        guessed.push("colours");
    }
    for (name, value) in measures(one) {
        fields = fields.written(name, value);
    }
    if let Some(price) = one.told.price {
        fields = fields.text("price", &written(price, &work.loaded));
    }
    if let Some(count) = one.told.count {
        fields = fields.written("stock", count.to_string());
    }
    fields = fields.text("picture", picture);
    if guessed.is_empty() { fields } else { fields.written("guessed", format!("[{}]", guessed.join(", "))) }
}
