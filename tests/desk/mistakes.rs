//! What is wrong in the maker's files, told on the desk's pages in the language of whoever reads them.

use super::*;

/// Waits until a page shows `words`.
fn until_shown(seller: &Seller, page: &str, words: &str) -> String {
    let started = Instant::now();
    loop {
        let text = seller.get(page).text;
        if text.contains(words) {
            return text;
        }
        assert!(started.elapsed() < Duration::from_secs(20), "{page} does not say {words}: {text}");
        thread::sleep(Duration::from_millis(50));
    }
}

/// The same seller, who reads another language.
fn reading(seller: &Seller, lang: Lang) -> Seller {
    let cookie = format!("{}; language={}", seller.cookie, lang.code());
    Seller { agent: agent(), url: seller.url.clone(), cookie }
}

/// What is wrong in a file is told in the reader's language; only what the system or a library says is English, and marked.
#[test]
fn a_mistake_in_the_files_is_told_in_the_readers_language() {
    let table = Table::new();
    let seller = table.seller();
    let file = table.catalog_file("bases.ron");
    let whole = fs::read_to_string(&file).unwrap();
    let broken = whole.replacen("price:", "prize:", 1).replacen("link: Rolo", "link: Rollo", 1);
    fs::write(&file, broken.replacen("stock: 20", "stock: \"many\"", 1)).unwrap();
    until_shown(&seller, "/trays", "id=\"mistakes\"");
    for (lang, words) in [
        (
            Lang::En,
            ["Open each file in a text editor", "Unknown field prize.", "Did you mean Rolo?", "The text \"many\"."],
        ),
        (
            Lang::De,
            [
                "Öffne jede Datei in einem Texteditor",
                "Das Feld „prize“ gibt es hier nicht. Meintest du price?",
                "„Rollo“ passt hier nicht; gemeint ist eine Art von Glied. Meintest du Rolo?",
                "Hier steht der Text \"many\". Erwartet wird eine ganze Zahl von 0 bis 100000, ohne Anführungszeichen.",
            ],
        ),
        (
            Lang::Fr,
            [
                "Ouvre chaque fichier dans un éditeur de texte",
                "Le champ «\u{a0}prize\u{a0}» n’existe pas ici. Voulais-tu dire price\u{a0}?",
                "où l’on attend une sorte de maillon. Voulais-tu dire Rolo\u{a0}?",
                "On trouve ici le texte \"many\".",
            ],
        ),
        (
            Lang::Es,
            [
                "Abre cada archivo en un editor de texto",
                "El campo «prize» no existe aquí. ¿Querías decir price?",
                "donde se espera un tipo de eslabón.",
                "Aquí está el texto \"many\".",
            ],
        ),
    ] {
        let text = reading(&seller, lang).get("/trays").text.replace("&quot;", "\"");
        for words in words {
            assert!(text.contains(words), "{lang:?} should say {words}: {text}");
        }
        let list = text.split("id=\"mistakes\"").nth(1).and_then(|rest| rest.split("</section>").next()).unwrap();
        assert!(list.contains("bases.ron") && !list.contains("lang=\"en\""), "{lang:?}: nothing of it is English");
    }
    // What a decoder says stays as it is, inside a sentence of the reader's.
    fs::write(&file, &whole).unwrap();
    fs::write(table.catalog_file("pictures/key-heart.png"), b"no picture").unwrap();
    let text = until_shown(&reading(&seller, Lang::De), "/trays", "ist kein ganzes Bild");
    let marked = text.split("pictures/key-heart.png ist kein ganzes Bild (").nth(1).unwrap();
    assert!(marked.starts_with("<span lang=\"en\">") && marked.contains("</span>). Erwartet wird"), "{marked:.200}");
    let english = seller.get("/trays").text;
    assert!(english.contains("is not a whole picture (") && !english.contains("<span lang=\"en\">"), "{english}");
}

/// The workshop's own file is read by the bench alone, and told there.
#[test]
fn a_mistake_in_the_workshops_file_is_told_in_the_readers_language() {
    let table = Table::new();
    let seller = table.seller();
    let file = table.catalog_file("parts.ron");
    let whole = fs::read_to_string(&file).unwrap();
    fs::write(&file, whole.replacen("(sort: Locket,", "(", 1)).unwrap();
    for (lang, words) in [
        (Lang::En, "A recipe of nobody, or of two. Give id for one drop or base"),
        (Lang::De, "Dieses Rezept ist für nichts, oder für zweierlei. Gib „id“ für einen Anhänger"),
        (Lang::Fr, "Cette recette n’est pour rien, ou pour deux choses. Indique «\u{a0}id\u{a0}» pour"),
        (Lang::Es, "Esta receta no es de nada, o es de dos cosas. Indica «id» para"),
    ] {
        let text = reading(&seller, lang).get("/bench/parts").text;
        assert!(text.contains(words), "{lang:?}: {text}");
    }
}

/// Why an edit at the desk is refused is told as well, with everything that the table would have wrong.
#[test]
fn a_refused_edit_is_told_in_the_readers_language() {
    let table = Table::new();
    let seller = table.seller();
    // Written by hand a moment ago, and not mended yet: the desk can change nothing in such a table.
    let file = table.catalog_file("trays/b.ron");
    let whole = fs::read_to_string(&file).unwrap();
    fs::write(&file, whole.replacen("sort: Charm", "sort: Charmed", 1)).unwrap();
    for (lang, words) in [
        (Lang::En, ["The table would not be whole then", "Charmed is not a sort of drop. Did you mean Charm?"]),
        (Lang::De, ["Der Tisch wäre dann nicht in Ordnung", "gemeint ist eine Sorte Anhänger. Meintest du Charm?"]),
        (
            Lang::Fr,
            ["La table ne serait alors pas en ordre", "où l’on attend une sorte de pendentif. Voulais-tu dire Charm"],
        ),
        (Lang::Es, ["La mesa no quedaría bien entonces", "donde se espera un tipo de colgante. ¿Querías decir Charm?"]),
    ] {
        let answer = reading(&seller, lang).post("/table/bases/chain-brass", &[("price", "99.00")]);
        assert_eq!(answer.status, 400, "{lang:?}");
        for words in words {
            assert!(answer.text.contains(words), "{lang:?} should say {words}: {}", answer.text);
        }
        assert!(answer.text.contains("trays/b.ron"), "{lang:?}: the place is told");
    }
    // A tray that is no table of rows any more has no such place.
    fs::write(&file, whole.replacen("rows: [", "lines: [", 1)).unwrap();
    let answer = reading(&seller, Lang::De).post("/table/trays/row", &[("letter", "B")]);
    assert_eq!(answer.status, 409, "{}", answer.text);
    assert!(answer.text.contains("In der Datei gibt es rows: [[…]] (trays/b.ron) nicht"), "{}", answer.text);
}
