//! A compartment of unlike pieces: made of a tray's photo, sold as one from its compartment, counted together.

use chatelaine::{
    craft::{Guess, LookNumber, MOST_LOOKS},
    link::wire::PieceToThread,
    paper::LabelTable,
};

use super::{
    own_table::{begun, enter, home, with_marks},
    photo::Point,
    scene::{Dice, Floor, Lying, Scene, picture},
    tray_photo::{price_all, taken},
    *,
};

const UNLIKE: [&str; 5] = ["charm-moon", "charm-sun", "key-heart", "charm-anchor", "charm-heart"];
const INNER_MM: f64 = 240.0;

/// A tray of two compartments: five unlike pieces in the first, nothing in the second.
fn unlike() -> Vec<u8> {
    let mut scene =
        Scene { rows: 1, columns: 2, inner_mm: (INNER_MM, 120.0), photo: (1600, 1000), ..Scene::new(Floor::Velvet) };
    let mut dice = Dice(5);
    let middle = scene.middle(0, 0);
    for (i, name) in UNLIKE.iter().enumerate() {
        let (column, row) = ((i % 3) as f64 - 1.0, (i / 3) as f64 - 0.5);
        let at = Point::new(middle.x + 36.0 * column + dice.next(), middle.y + 48.0 * row + dice.next());
        scene.lying.push(Lying { picture: picture(name), height_mm: 26.0, at, degrees: (dice.next() - 0.5) * 20.0 });
    }
    scene.taken().jpeg
}

fn with_photo() -> (Table, Seller, String) {
    let (table, seller) = begun();
    let answer = seller.post("/table/trays", &[("letter", "B"), ("name", "Mix"), ("rows", "1"), ("columns", "2")]);
    assert_eq!(answer.location, "/table/at/B1", "{}", answer.text);
    let at = taken(&seller, &unlike());
    tray_photo::cut_out_of(&seller, &at, INNER_MM);
    (table, seller, at)
}

#[test]
fn unlike_pieces_in_one_compartment_become_its_looks() {
    let (table, seller, at) = with_photo();
    let before = fs::read_to_string(table.catalog_file("trays/b.ron")).unwrap();
    let answer = seller.post(&format!("{at}/pieces/B1"), &[("shown", "mix")]);
    assert_eq!(answer.location, format!("{at}/pieces/B1"), "{}", answer.text);
    let page = seller.get(&answer.location).text;
    assert!(page.contains("a mix, 5 told apart"), "{page}");
    for number in 0..UNLIKE.len() {
        let look = format!("{at}/picture/B1-look-{number}.png");
        assert!(page.contains(&look) && seller.get(&look).status == 200, "{look}");
    }
    for odd in ["B1-look-99.png", "B1-look-00.png", "B1-look-0.jpg", "B9-look-0.png"] {
        assert_ne!(seller.get(&format!("{at}/picture/{odd}")).status, 200, "{odd}");
    }
    // The corners once more: it stays a mix.
    tray_photo::cut_out_of(&seller, &at, INNER_MM);
    assert!(seller.get(&format!("{at}/pieces")).text.contains("a mix, 5 told apart"));
    assert_eq!(price_all(&seller, &at, "4.00"), 1);
    let page = seller.get(&format!("{at}/prices")).text;
    let answer = seller.post(&format!("{at}/lay"), &with_marks(&page, &format!("{at}/lay"), &[]));
    assert_eq!(answer.status, 303, "{}", answer.text);
    let catalog = table.catalog();
    let kind = catalog.drop_at(home("B1")).expect("a mix");
    assert_eq!((kind.name.as_str(), kind.looks().len(), kind.stock), ("Mixed pieces", UNLIKE.len(), 7));
    assert!(UNLIKE.len() <= MOST_LOOKS && kind.picture.ends_with(".jpg"), "{}", kind.picture);
    for look in kind.looks() {
        // All were drawn 26 mm high; what was turned upright may lie a little aslant.
        assert!(look.picture.starts_with("tray-") && look.picture.ends_with(".png"), "{}", look.picture);
        assert!((15.0..40.0).contains(&look.height.mm()), "{look:?}");
    }
    assert!(kind.guessed.contains(&Guess::Body) && kind.facts.sharp, "nobody knows what is in it");
    // On the compartment's own page all of its looks are to be seen; tablets get all of the pictures.
    let page = seller.get("/table/at/B1").text;
    assert!(page.contains("A mix with 5 looks."), "{page}");
    let content = table.kiosk().news(-1, "").content.expect("a catalogue");
    assert!(kind.pictures().all(|name| content.pictures.contains_key(name)));
    let page = seller.get("/table").text;
    let answer = seller.post("/table/undo", &with_marks(&page, "/table/undo", &[]));
    assert_eq!(answer.status, 303, "{}", answer.text);
    assert_eq!(fs::read_to_string(table.catalog_file("trays/b.ron")).unwrap(), before);
}

/// Where nothing is to be told apart, the tile is all there is.
#[test]
fn what_can_not_be_told_apart_hangs_plain() {
    let (table, seller, at) = with_photo();
    let answer = seller.post(&format!("{at}/pieces/B2"), &[("shown", "mix")]);
    assert_eq!(answer.status, 303, "{}", answer.text);
    assert!(seller.get(&answer.location).text.contains("a mix, nothing told apart"));
    seller.post(&format!("{at}/pieces/B1"), &[("shown", "nothing")]);
    price_all(&seller, &at, "4.00");
    let page = seller.get(&format!("{at}/prices")).text;
    assert_eq!(seller.post(&format!("{at}/lay"), &with_marks(&page, &format!("{at}/lay"), &[])).status, 303);
    let catalog = table.catalog();
    let kind = catalog.drop_at(home("B2")).expect("a mix");
    assert!(kind.is_assortment() && kind.looks().is_empty());
}

#[test]
fn a_compartment_becomes_a_mix_and_is_one_from_there_on_every_paper() {
    let (table, seller) = begun();
    for at in ["A1", "A2"] {
        let answer =
            own_table::lay(&seller, at, &[("price", "4.00"), ("sort", "Key"), ("count", "2"), ("name", "Odd keys")]);
        assert_eq!(answer.status, 303, "{}", answer.text);
    }
    let written = || fs::read_to_string(table.catalog_file("trays/a.ron")).unwrap();
    fs::write(table.catalog_file("trays/a.ron"), written() + "// by hand\n").unwrap();
    let answer = enter(&seller, "/table/at/A1", "/table/at/A1", &[("mix", "1"), ("sort", "Key")]);
    assert_eq!(answer.status, 303, "{}", answer.text);
    assert!(written().contains("assortment: []") && written().ends_with("// by hand\n"), "{}", written());
    assert!(seller.get("/table/at/A1").text.contains("it hangs plain"));
    let catalog = table.catalog();
    let (mix, other) = (catalog.drop_at(home("A1")).expect("it"), catalog.drop_at(home("A2")).expect("it"));
    assert!(mix.is_assortment() && !other.is_assortment());
    let kiosk = table.kiosk();
    let ticket = kiosk.ticket(1, &[&mix.id, &other.id, &mix.id], Wearer::From13);
    assert!(matches!(kiosk.deliver(&ticket, true), Receipt::Stored { .. }));
    let page = seller.get(&format!("/tickets/{}", ticket.id)).text;
    assert!(page.contains("Odd keys, one from A1") && !page.contains("one from A2"), "{page}");
    // Both of the mix are held: none is left, however unlike they are.
    let again = kiosk.ticket(2, &[&mix.id], Wearer::From13);
    assert!(!matches!(kiosk.deliver(&again, true), Receipt::Stored { .. }), "the count is one for all of them");
    for page in ["/put-back", "/new?homes=A1"] {
        let text = seller.get(page).text;
        assert!(text.contains("one from A1"), "{page}: {text}");
    }
    let marks = LabelTable::of(&catalog, Texts::of(Lang::De)).words();
    assert!(marks["A1"].contains("einer aus A1") && !marks["A2"].contains("aus"), "{marks:?}");
    // And back again.
    let answer = enter(&seller, "/table/at/A1", "/table/at/A1", &[("sort", "Key")]);
    assert_eq!(answer.status, 303, "{}", answer.text);
    assert!(!written().contains("assortment"), "{}", written());
}

/// Each hung drop keeps its look whatever the seller does with the others.
#[test]
fn at_the_desk_looks_stay_through_swaps_and_removals() {
    let (table, seller) = begun();
    for at in ["A1", "A2"] {
        assert_eq!(own_table::lay(&seller, at, &[("price", "4.00"), ("count", "9")]).status, 303);
    }
    assert_eq!(enter(&seller, "/table/at/A1", "/table/at/A1", &[("mix", "1")]).status, 303);
    let catalog = table.catalog();
    let ids = ["A1", "A2"].map(|at| catalog.drop_at(home(at)).expect("it").id.clone());
    let kiosk = table.kiosk();
    let mut ticket = kiosk.ticket(1, &[&ids[0], &ids[0], &ids[1], &ids[0]], Wearer::From13);
    ticket.piece.looks = vec![2, 0, 0, 1];
    assert!(matches!(kiosk.deliver(&ticket, true), Receipt::Stored { .. }));
    let id = ticket.id;
    let numbers = || -> Vec<LookNumber> {
        let url = format!("{}/link/piece/{}", kiosk.pairing.desk, ticket.number);
        let mut answer = kiosk.agent.get(url).header("Authorization", kiosk.bearer()).call().expect("an answer");
        let PieceToThread { piece } = answer.body_mut().read_json().expect("a piece");
        piece.hung().filter(|(kind, _)| *kind == ids[0]).map(|(_, look)| look).collect()
    };
    assert_eq!(numbers(), [2, 0, 1], "another tablet sees it as the one on which it was made");
    let post = |what: &str, fields: &[(&str, &str)]| {
        let answer = seller.post(&format!("/tickets/{id}/{what}"), fields);
        assert_eq!(answer.status, 303, "{what}: {}", answer.text);
    };
    post("remove", &[("line", "1")]);
    assert_eq!(numbers(), [2, 1]);
    post("missing/0", &[("to", &ids[1])]);
    assert_eq!(numbers(), [1]);
    post("add", &[("home", "A1")]);
    assert_eq!(numbers(), [1, 0], "another one gets the lowest number that is free");
    // So it is after a start as well.
    drop(table.desk);
    let desk = Desk::start(config(table.dir.path())).expect("the desk starts");
    let kept = desk.with_ledger(move |ledger| ledger.ticket(id)).expect("an answer").expect("it reads");
    let kept: Vec<LookNumber> = kept.piece.hung().filter(|(kind, _)| *kind == ids[0]).map(|(_, look)| look).collect();
    assert_eq!(kept, [1, 0]);
}
