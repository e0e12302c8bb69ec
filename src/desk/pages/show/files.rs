//! A show in files: tables for spreadsheets, and all of it in one.

use axum::{
    http::{StatusCode, header},
    response::{IntoResponse, Response},
};
use maud::{Markup, html};
use serde::Deserialize;

use crate::{
    desk::{refusal::Refusal, state::DeskState},
    export::DecimalMark,
    lang::{Texts, message, say},
    ledger::ShowTable,
};

/// How numbers are written in a file.
#[derive(Deserialize)]
pub(super) struct Written {
    decimal: Option<String>,
}

impl Written {
    fn mark(&self) -> DecimalMark {
        if self.decimal.as_deref() == Some("comma") { DecimalMark::Comma } else { DecimalMark::Point }
    }
}

/// What is asked for by the last part of an address: `3.json`, `3.csv`, or `tax.csv` below `3`.
pub(super) enum File {
    Whole,
    Table(ShowTable),
}

impl File {
    /// The number of a show and the file of it, if `name` is one.
    pub(super) fn of_show(name: &str) -> Option<(i64, Self)> {
        let (show, file) = match name.split_once('.')? {
            (show, "json") => (show, Self::Whole),
            (show, "csv") => (show, Self::Table(ShowTable::Lines)),
            _ => return None,
        };
        Some((show.parse().ok()?, file))
    }

    /// The table called so.
    pub(super) fn table(name: &str) -> Option<Self> {
        Some(Self::Table(ShowTable::from_name(name.strip_suffix(".csv")?)?))
    }
}

/// A file of a show.
pub(super) async fn file(desk: &DeskState, show: i64, file: File, written: &Written) -> Result<Response, Refusal> {
    let report = desk.ledger.look(move |ledger| ledger.report(show)).await?;
    let Some(report) = report else {
        return Err(Refusal::Said(StatusCode::NOT_FOUND, message!("refused-no-show", show = show)));
    };
    let failed = |error: String| {
        tracing::error!("show {show} can't be written to a file: {error}");
        Refusal::Said(StatusCode::INTERNAL_SERVER_ERROR, message!("refused-no-file"))
    };
    // A file of practice says so where it lies, too.
    let of = if desk.practice.is_on() { "practice-show" } else { "show" };
    let (name, kind, bytes) = match file {
        File::Whole => {
            let text = serde_json::to_string_pretty(&report).map_err(|error| failed(error.to_string()))?;
            (format!("{of}-{show}.json"), "application/json", (text + "\n").into_bytes())
        }
        File::Table(table) => {
            let bytes = report.table(table, written.mark()).map_err(|error| failed(error.to_string()))?;
            (format!("{of}-{show}-{}.csv", table.name()), "text/csv; charset=utf-8", bytes)
        }
    };
    let disposition = format!("attachment; filename=\"{name}\"");
    Ok(([(header::CONTENT_TYPE, kind.to_owned()), (header::CONTENT_DISPOSITION, disposition)], bytes).into_response())
}

/// Where the files of a show are.
pub(super) fn links(texts: &Texts, show: i64) -> Markup {
    html! {
        section.card.no-print aria-label=(say!(texts, "files")) data-key="files" {
            h2 { (say!(texts, "files")) }
            p.faint { (say!(texts, "files-hint")) }
            ul.links {
                @for table in ShowTable::ALL {
                    @let address = format!("/shows/{show}/{}.csv", table.name());
                    li.row {
                        span { (texts.get(&format!("files-{}", table.name()))) }
                        a href=(address) download { "8.50" }
                        a href={ (address) "?decimal=comma" } download { "8,50" }
                    }
                }
                li { a href={ "/shows/" (show) ".json" } download { (say!(texts, "files-all")) } }
            }
        }
    }
}
