//! The answer to a pairing is lost on the line: the desk has paired the tablet, which does not hear it and asks again. It is
//! the same tablet, with the same digit, and whatever it has made before arrives.

use super::*;

/// A line to a desk that can lose the answers to pairings, and be cut altogether.
struct Line {
    desk: FakeDesk,
    /// So many answers to pairings are lost from now on.
    loses: Arc<Mutex<u32>>,
    cut: Arc<AtomicBool>,
}

impl Line {
    fn to(desk: &Desk) -> Self {
        let (loses, cut) = (Arc::new(Mutex::new(0u32)), Arc::new(AtomicBool::new(false)));
        let (to_lose, is_cut, url) = (Arc::clone(&loses), Arc::clone(&cut), desk.url());
        let desk = FakeDesk::start(move |asked: &Asked| {
            let (method, path) = asked.line.trim_end_matches(" HTTP/1.1").split_once(' ')?;
            // Pictures are no text, and nobody looks at them here.
            if is_cut.load(Ordering::Relaxed) || path.starts_with("/link/picture") {
                return None;
            }
            let key = format!("Bearer {}", asked.key.unwrap_or_default());
            let agent = kit::agent();
            let mut answer = match method {
                "GET" => agent.get(format!("{url}{path}")).header("authorization", key).call(),
                _ => {
                    let request = agent.post(format!("{url}{path}")).header("authorization", key);
                    request.header("content-type", "application/json").send(asked.body)
                }
            }
            .ok()?;
            let text = answer.body_mut().with_config().limit(64 << 20).read_to_string().ok()?;
            let mut to_lose = to_lose.lock().expect("a number");
            if path == "/link/pair" && *to_lose > 0 {
                *to_lose -= 1;
                return None;
            }
            Some((answer.status().as_u16(), text))
        });
        Self { desk, loses, cut }
    }

    fn lose(&self, answers: u32) {
        *self.loses.lock().expect("a number") = answers;
    }

    fn pair(&self, tablet: &Tablet, code: String) -> Result<u8, PairError> {
        tablet.link.pair(format!("http://{}", self.desk.addr), code);
        tablet.hear("the pairing", |news| match news {
            News::Paired(outcome) => Some(outcome),
            _ => None,
        })
    }
}

fn digits(desk: &Desk) -> Vec<u8> {
    let kiosks = desk.with_ledger(|ledger| ledger.kiosks()).expect("open").expect("kiosks");
    kiosks.into_iter().map(|kiosk| kiosk.digit).collect()
}

#[test]
fn a_pairing_whose_answer_is_lost_comes_to_the_same_digit() {
    let (table, dir) = (Table::new(), tempfile::tempdir().expect("a folder"));
    let (seller, line) = (table.seller(), Line::to(&table.desk));
    let tablet = Tablet::open(dir.path(), None);
    line.lose(2);
    // The first time, and once more after the tablet was switched off.
    let lost = line.pair(&tablet, new_code(&seller));
    assert!(matches!(lost, Err(PairError::NotReached { .. })), "{lost:?}");
    drop(tablet);
    let tablet = Tablet::open(dir.path(), None);
    assert!(!tablet.link.is_paired());
    let lost = line.pair(&tablet, new_code(&seller));
    assert!(matches!(lost, Err(PairError::NotReached { .. })), "{lost:?}");
    assert_eq!(line.pair(&tablet, new_code(&seller)), Ok(1));
    assert_eq!(digits(&table.desk), [1], "it is one tablet");
    tablet.is_in_reach();

    // It makes a ticket with the desk away, and is paired anew: the same with what it has made before.
    line.cut.store(true, Ordering::Relaxed);
    let before = tablet.send();
    tablet.hear_waiting(before);
    line.cut.store(false, Ordering::Relaxed);
    release(&table.desk, 1);
    line.lose(1);
    let lost = line.pair(&tablet, new_code(&seller));
    assert!(matches!(lost, Err(PairError::NotReached { .. })), "{lost:?}");
    drop(tablet);
    let tablet = Tablet::open(dir.path(), None);
    assert_eq!(line.pair(&tablet, new_code(&seller)), Ok(1));
    tablet.hear_arrived(before);
    assert_eq!((digits(&table.desk), numbers(&table.desk)), (vec![1], vec![before.number.to_string()]));
}

#[test]
fn a_tablet_that_was_released_before_it_heard_of_its_pairing_gets_the_same_digit() {
    let (table, dir) = (Table::new(), tempfile::tempdir().expect("a folder"));
    let (seller, line) = (table.seller(), Line::to(&table.desk));
    let tablet = Tablet::open(dir.path(), None);
    line.lose(1);
    line.pair(&tablet, new_code(&seller)).expect_err("the answer is lost");
    // The seller sees a tablet that says nothing, and lets it go; another one is paired meanwhile.
    release(&table.desk, 1);
    assert_eq!(table.desk.pair_local().expect("a digit").digit, 2);
    assert_eq!(line.pair(&tablet, new_code(&seller)), Ok(1));
    assert_eq!(digits(&table.desk), [1, 2]);
}

#[test]
fn a_tablet_of_an_earlier_version_sends_no_key_and_a_poor_one_is_refused_in_words() {
    let table = Table::new();
    let seller = table.seller();
    let pair = |message: serde_json::Value| {
        let mut answer = kit::agent().post(format!("{}/link/pair", table.desk.url())).send_json(message).expect("one");
        (answer.status().as_u16(), answer.body_mut().read_to_string().expect("words"))
    };
    for key in ["", "12ab", &"g".repeat(64)] {
        let (status, words) = pair(serde_json::json!({ "code": new_code(&seller), "key": key }));
        assert_eq!(status, 400, "{key:?}: {words}");
        assert!(words.contains("64 hexadecimal digits"), "{words}");
    }
    assert_eq!(digits(&table.desk), Vec::<u8>::new());
    let (status, words) = pair(serde_json::json!({ "code": new_code(&seller) }));
    assert_eq!(status, 200, "{words}");
    let pairing: Pairing = serde_json::from_str(&words).expect("a pairing");
    assert!(pairing.digit == 1 && table.desk.knows(&pairing));
}
