//! `chatelaine labels`: price marks and other paper for the table.

use std::{io::Write, path::PathBuf};

use chatelaine::{
    catalog::{Printed, read_folder},
    disk::durable::NewFile,
    lang::{Lang, Texts},
    paper::{Grid, LabelOrder, LabelPart, LabelTable, Labels, Sheet, labels},
};
use serde_json::json;

use super::{
    Told,
    answers::{Catalogued, print},
};

#[derive(clap::Args)]
pub(super) struct Options {
    /// The PDF file to make; it must not exist yet.
    #[arg(long, value_name = "FILE.pdf")]
    out: PathBuf,
    #[command(flatten)]
    catalogued: Catalogued,
    /// Only these, with commas between them: marks, tags, maps, set-up, prices, code.
    #[arg(long, value_name = "PARTS")]
    only: Option<String>,
    /// The sheets: A4 or Letter; otherwise as the table's region has them.
    #[arg(long)]
    paper: Option<String>,
    /// Columns and rows of marks on a sheet; with an even number of rows the two of a compartment lie head to head.
    #[arg(long, value_name = "COLUMNSxROWS", default_value = "4x14")]
    grid: String,
    /// Margins of the sheets with marks: one for all sides as in 10mm, or above and beside as in 12mm,8mm.
    #[arg(long, default_value = "10mm")]
    margin: String,
    /// Only this tray, by its letter.
    #[arg(long)]
    tray: Option<String>,
    /// Only what says something else than the last marks that were printed.
    #[arg(long)]
    changed: bool,
    /// The language: en, es, fr or de.
    #[arg(long, default_value = "en")]
    language: String,
    /// The desk's address in its network, as in http://192.168.4.1:8080, for the code to where a stray drop belongs.
    #[arg(long)]
    desk: Option<String>,
}

pub(super) fn run(options: &Options) -> Result<(), Told> {
    let root = &options.catalogued.catalog;
    let loaded = read_folder(root)?;
    let table = LabelTable::of(&loaded.catalog, options.texts()?).with_put_back(options.put_back()?);
    let table = table.with_pictures(|id| {
        let kind = loaded.catalog.drop_kind(id)?;
        loaded.pictures.get(&kind.picture)?.read().ok()
    });
    let (words, mut printed) = (table.words(), Printed::read(root));
    let order = LabelOrder {
        parts: options.parts()?,
        sheet: options.sheet(Sheet::of(loaded.catalog.table.region))?,
        grid: Grid::USUAL.with_shape(&options.grid)?.with_margins(&options.margin)?,
        tray: options.tray(loaded.catalog.trays.iter().map(|tray| tray.letter))?,
        only: options.changed.then(|| printed.changed(&words)),
    };
    let Some(made) = labels(&table, &order)? else {
        let json = json!({ "file": null, "pages": 0, "printed": [] });
        return print(options.catalogued.json, &json, || {
            if options.changed {
                "Nothing is another than it was at the last print, so no file was made.".to_owned()
            } else {
                "There is nothing of this on the table yet, so no file was made.".to_owned()
            }
        });
    };
    keep(options, &made)?;
    printed.note(&made.printed, &words);
    let noted = printed.keep(root);
    if let Err(error) = &noted {
        eprintln!(
            "The file is made; what was printed could not be noted beside the table ({error}), so that --changed has all of \
             it again."
        );
    }
    let file = options.out.display();
    let json = json!({ "file": options.out, "pages": made.pages, "printed": made.printed, "noted": noted.is_ok() });
    print(options.catalogued.json, &json, || {
        format!("{file} has {} pages. Print it at its true size (100 %), not fitted to the page.", made.pages)
    })
}

/// Writes the file whole, or not at all.
fn keep(options: &Options, made: &Labels) -> Result<(), Told> {
    let file = &options.out;
    let kept = NewFile::begin(file).and_then(|new| {
        std::fs::OpenOptions::new().write(true).open(new.unfinished())?.write_all(&made.pdf)?;
        new.keep()
    });
    kept.map_err(|error| Told(format!("{} can't be made: {error}", file.display())))
}

impl Options {
    fn texts(&self) -> Result<&'static Texts, Told> {
        let known = || Told(format!("there is no language {:?}; there are en, es, fr, de", self.language));
        Lang::from_code(&self.language).map(Texts::of).ok_or_else(known)
    }

    fn parts(&self) -> Result<Vec<LabelPart>, Told> {
        let Some(only) = &self.only else { return Ok(LabelPart::ALL.to_vec()) };
        let part = |name: &str| {
            LabelPart::from_name(name.trim()).ok_or_else(|| {
                let known = LabelPart::ALL.map(LabelPart::name).join(", ");
                Told(format!("there is no part {name:?} of the paper; there are {known}"))
            })
        };
        only.split(',').map(part).collect()
    }

    fn sheet(&self, usual: Sheet) -> Result<Sheet, Told> {
        let Some(name) = &self.paper else { return Ok(usual) };
        Sheet::from_name(name).ok_or_else(|| Told(format!("there are no sheets {name:?}; there are A4 and Letter")))
    }

    fn tray(&self, mut there: impl Iterator<Item = char>) -> Result<Option<char>, Told> {
        let Some(asked) = &self.tray else { return Ok(None) };
        let found = there.find(|letter| letter.to_string().eq_ignore_ascii_case(asked.trim()));
        found
            .map(Some)
            .ok_or_else(|| Told(format!("there is no tray {asked:?} on this table; write its letter, as in B")))
    }

    fn put_back(&self) -> Result<Option<String>, Told> {
        let Some(desk) = &self.desk else { return Ok(None) };
        if !desk.starts_with("http://") || desk.contains(char::is_whitespace) {
            return Err(Told(format!("{desk:?} is no desk's address; write it as in http://192.168.4.1:8080")));
        }
        Ok(Some(format!("{}/put-back", desk.trim_end_matches('/'))))
    }
}
