//! What a receipt printer gets, read back: a machine over the commands, which fails on every byte that it does not know.

use std::{env, fs, path::PathBuf};

/// One line as it comes out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Printed {
    pub text: String,
    pub bold: bool,
    pub middle: bool,
    /// Times as wide and as high.
    pub wide: usize,
    pub high: usize,
}

/// All that came out.
#[derive(Debug, Default)]
pub struct Out {
    pub lines: Vec<Printed>,
    /// Each in rows of dots, each dot a bool.
    pub pictures: Vec<Vec<Vec<bool>>>,
    pub cuts: usize,
}

/// Code page 858 from 0x80. Source: CPython's codec `cp858`.
const HIGH: &str = "ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜø£Ø×ƒáíóúñÑªº¿®¬½¼¡«»░▒▓│┤ÁÂÀ©╣║╗╝¢¥┐└┴┬├─┼ãÃ╚╔╩╦╠═╬¤ðÐÊËÈ€ÍÎÏ┘┌█▄¦Ì▀ÓßÔÒõÕµþÞÚÛÙýÝ¯´\u{ad}±‗¾¶§÷¸°¨·¹³²■\u{a0}";

/// Reads bytes. Commands are known from memory of their published reference: ESC @, R, t, a, E, d; GS !, V, v 0.
pub fn read(bytes: &[u8]) -> Out {
    let mut out = Out::default();
    let mut bytes = bytes.iter().copied();
    let mut next = |what: &str| bytes.next().unwrap_or_else(|| panic!("the end in {what}"));
    let mut now = Printed { text: String::new(), bold: false, middle: false, wide: 1, high: 1 };
    let (mut begun, mut page) = (false, 0);
    loop {
        let byte = next("the whole");
        assert!(begun || byte == 0x1b, "it begins with other bytes than ESC @");
        match byte {
            0x1b => match next("ESC") {
                b'@' => begun = true,
                b'R' => assert_eq!(next("ESC R"), 0, "the signs of ASCII"),
                b't' => page = next("ESC t"),
                b'a' => now.middle = next("ESC a") == 1,
                b'E' => now.bold = next("ESC E") == 1,
                b'd' => assert!((1..=5).contains(&next("ESC d")), "some paper is let out"),
                other => panic!("ESC {other:#x}"),
            },
            0x1d => match next("GS") {
                b'!' => {
                    let size = next("GS !");
                    (now.wide, now.high) = (usize::from(size >> 4) + 1, usize::from(size & 15) + 1);
                    assert!(now.wide <= 8 && now.high <= 8, "{size:#x}");
                }
                b'v' => {
                    assert_eq!((next("GS v"), next("GS v 0")), (b'0', 0));
                    let mut two = || usize::from(next("its size")) | usize::from(next("its size")) << 8;
                    let (across, down) = (two(), two());
                    assert!(across > 0 && down > 0);
                    let mut row = || -> Vec<bool> {
                        let bytes: Vec<u8> = (0..across).map(|_| next("a picture")).collect();
                        bytes.iter().flat_map(|byte| (0..8).map(move |bit| byte & (0x80 >> bit) != 0)).collect()
                    };
                    out.pictures.push((0..down).map(|_| row()).collect());
                }
                b'V' => {
                    assert_eq!((next("GS V"), next("GS V 66")), (66, 0));
                    out.cuts += 1;
                    assert_eq!(now.text, "", "a line is whole before it is cut");
                    assert_eq!(bytes.next(), None, "nothing comes after the cut");
                    return out;
                }
                other => panic!("GS {other:#x}"),
            },
            b'\n' => {
                out.lines.push(now.clone());
                now.text.clear();
            }
            b' '..=b'~' => now.text.push(char::from(byte)),
            0x80.. => {
                assert_eq!(page, 19, "code page 858 was not chosen");
                now.text.extend(HIGH.chars().nth(usize::from(byte - 0x80)));
            }
            other => panic!("{other:#x} is no letter"),
        }
    }
}

impl Out {
    /// All its words, without the lines across and the boxes to tick.
    pub fn words(&self) -> String {
        let lines = self.lines.iter().map(|line| line.text.replace("[ ]", " "));
        let lines = lines.filter(|line| !line.chars().all(|letter| letter == '-'));
        crate::pdf_reader::words_of(&lines.collect::<Vec<_>>().join(" "))
    }

    /// Whether every line has room on a roll of so many letters.
    pub fn fits(&self, columns: usize) -> bool {
        let dots = self.pictures.iter().flatten().all(|row| row.len() <= columns * 12);
        dots && self.lines.iter().all(|line| line.text.chars().count() * line.wide <= columns)
    }
}

impl Out {
    /// Keeps what came out in a folder, if one is named: the lines, wide ones with a space after each letter, and the picture
    /// as dots (portable bitmap).
    pub fn keep(&self, name: &str) {
        let Some(folder) = env::var_os("CHATELAINE_SHOTS").map(PathBuf::from) else { return };
        fs::create_dir_all(&folder).expect("a folder");
        let spread = |line: &Printed| line.text.chars().map(|c| format!("{c:<0$}", line.wide)).collect::<String>();
        let lines: Vec<String> = self.lines.iter().map(spread).collect();
        fs::write(folder.join(format!("{name}.txt")), lines.join("\n")).expect("the lines");
        for (n, picture) in self.pictures.iter().enumerate() {
            let dots = |row: &Vec<bool>| row.iter().map(|dot| if *dot { "1 " } else { "0 " }).collect::<String>();
            let rows: Vec<String> = picture.iter().map(dots).collect();
            let file = format!("P1\n{} {}\n{}\n", picture[0].len(), picture.len(), rows.join("\n"));
            fs::write(folder.join(format!("{name}-{n}.pbm")), file).expect("the picture");
        }
    }
}

/// `text` in letters that a receipt printer has, as the tests know them: what is written plainly there.
pub fn plainly(text: &str) -> String {
    let plain = [("−", "-"), ("–", "-"), ("“", "\""), ("”", "\""), ("„", "\""), ("’", "'"), ("…", "..."), ("œ", "oe")];
    plain.iter().fold(text.to_owned(), |text, (from, to)| text.replace(from, to))
}
