//! What of a catalogue stands on labels, in one language.

use std::{
    collections::{BTreeMap, BTreeSet},
    io::Cursor,
};

use image::{ImageFormat, imageops::FilterType};

use super::{LabelOrder, LabelPart};
use crate::{
    catalog::{Catalog, Tray},
    craft::{BaseKind, Home},
    lang::{Texts, say},
    money::TaxRule,
};

/// A picture on a map is no larger than this on its longer side: 300 dots to the inch on 25 mm.
const PICTURE_SIDE_PX: u32 = 300;

/// A table as it stands on labels.
pub struct LabelTable {
    pub(super) texts: &'static Texts,
    pub(super) name: String,
    pub(super) trays: Vec<Tray>,
    pub(super) tray_names: BTreeMap<char, String>,
    pub(super) drops: Vec<Labelled>,
    pub(super) bases: Vec<Labelled>,
    /// What is to be said of tax beside prices.
    pub(super) tax: Option<String>,
    /// Where a phone finds the home of a stray drop.
    pub(super) put_back: Option<String>,
    /// PNG files.
    pub(super) pictures: Vec<Vec<u8>>,
}

/// A drop or a base as it stands on labels.
pub(super) struct Labelled {
    /// What it is known by from one print to the next: a drop's home, a base's id.
    pub key: String,
    pub home: Option<Home>,
    pub name: String,
    /// Of a base, the lengths that it is made in; of an assortment, that a piece is one from its compartment.
    pub note: Option<String>,
    pub price: String,
    pub count: u32,
    /// Which of the pictures, with its width and height.
    pub picture: Option<(usize, f32, f32)>,
    id: String,
}

impl Labelled {
    /// Its name with what has to be noted of it.
    pub(super) fn noted(&self) -> String {
        let note = self.note.as_ref().map(|note| format!(", {note}")).unwrap_or_default();
        format!("{}{note}", self.name)
    }

    pub(super) fn is_in(&self, tray: char) -> bool {
        self.home.is_some_and(|home| home.tray == tray)
    }
}

impl LabelTable {
    /// The table of `catalog` in the language of `texts`, without pictures.
    pub fn of(catalog: &Catalog, texts: &'static Texts) -> Self {
        let (language, currency) = (texts.lang.code(), catalog.table.prices.currency);
        let called = |id: &str, own: &str| catalog.called(language, id, own).to_owned();
        let drops = catalog.drops.iter().map(|kind| Labelled {
            key: kind.home.to_string(),
            home: Some(kind.home),
            name: called(&kind.id, &kind.name),
            note: kind.is_assortment().then(|| say!(texts, "mix-one", home = kind.home.to_string())),
            price: texts.lang.money(kind.price, currency),
            count: kind.stock,
            picture: None,
            id: kind.id.clone(),
        });
        let bases = catalog.bases.iter().map(|base| Labelled {
            key: base.id.clone(),
            home: None,
            name: called(&base.id, &base.name),
            note: match &base.kind {
                BaseKind::Necklace(necklace) => {
                    let (from, to) = (necklace.lengths.shortest, necklace.lengths.longest);
                    let figure = |value: f64| texts.lang.number(rust_decimal::Decimal::from(value.round() as i64));
                    Some(say!(
                        texts,
                        "labels-lengths",
                        from_in = figure(from.inches()),
                        to_in = figure(to.inches()),
                        from_cm = figure(from.mm() / 10.0),
                        to_cm = figure(to.mm() / 10.0)
                    ))
                }
                BaseKind::Bangle(_) => None,
            },
            price: texts.lang.money(base.price, currency),
            count: base.stock,
            picture: None,
            id: base.id.clone(),
        });
        let percent = |percent: rust_decimal::Decimal| texts.lang.number(percent.normalize());
        let tax = match catalog.table.prices.tax {
            TaxRule::None => None,
            TaxRule::Added { percent: of } => Some(say!(texts, "labels-tax-added", percent = percent(of))),
            TaxRule::Included { percent: of } => Some(say!(texts, "labels-tax-included", percent = percent(of))),
        };
        let name = |tray: &Tray| (tray.letter, called(&tray.letter.to_string(), &tray.name));
        Self {
            texts,
            name: catalog.table.name.clone(),
            trays: catalog.trays.clone(),
            tray_names: catalog.trays.iter().map(name).collect(),
            drops: drops.collect(),
            bases: bases.collect(),
            tax,
            put_back: None,
            pictures: vec![],
        }
    }

    /// The same with where a phone finds the home of a stray drop.
    #[must_use]
    pub fn with_put_back(mut self, address: Option<String>) -> Self {
        self.put_back = address;
        self
    }

    /// The same with the drops' pictures, each as the file of it that `read` gives. One that does not read is left out.
    #[must_use]
    pub fn with_pictures(mut self, read: impl Fn(&str) -> Option<Vec<u8>>) -> Self {
        for one in &mut self.drops {
            let small = read(&one.id).and_then(|bytes| smaller(&bytes));
            if let Some((png, width, height)) = small {
                one.picture = Some((self.pictures.len(), width, height));
                self.pictures.push(png);
            }
        }
        self
    }

    /// What stands on the marks of each compartment and on the tag of each base, by home or id: what it has to be compared
    /// with for whether it is another than the last one that was printed.
    pub fn words(&self) -> BTreeMap<String, String> {
        let all = self.drops.iter().chain(&self.bases);
        let words = |one: &Labelled| {
            let note = one.note.as_deref().unwrap_or_default();
            [self.texts.lang.code(), &one.name, note, &one.price].join("\n")
        };
        all.map(|one| (one.key.clone(), words(one))).collect()
    }

    /// The keys of what has its marks or its tag on paper that is made by `order`.
    pub fn marked(&self, order: &LabelOrder) -> BTreeSet<String> {
        let drops = self.drops.iter().filter(|_| order.wants(LabelPart::Marks));
        let bases = self.bases.iter().filter(|_| order.wants(LabelPart::Tags));
        drops.chain(bases).filter(|one| order.is_asked(one)).map(|one| one.key.clone()).collect()
    }

    pub(super) fn tray_name(&self, letter: char) -> &str {
        self.tray_names.get(&letter).map_or("", String::as_str)
    }

    pub(super) fn at(&self, home: Home) -> Option<&Labelled> {
        self.drops.iter().find(|one| one.home == Some(home))
    }
}

/// A picture as small as it is needed on paper, as a PNG file with its width and height.
fn smaller(bytes: &[u8]) -> Option<(Vec<u8>, f32, f32)> {
    let picture = image::load_from_memory(bytes).ok()?;
    let picture = if picture.width().max(picture.height()) > PICTURE_SIDE_PX {
        picture.resize(PICTURE_SIDE_PX, PICTURE_SIDE_PX, FilterType::CatmullRom)
    } else {
        picture
    };
    // A few shades more than eight bits have are lost on paper, and not every reader takes them.
    let picture = image::DynamicImage::ImageRgba8(picture.into_rgba8());
    let mut png = Cursor::new(Vec::new());
    picture.write_to(&mut png, ImageFormat::Png).ok()?;
    Some((png.into_inner(), picture.width() as f32, picture.height() as f32))
}
