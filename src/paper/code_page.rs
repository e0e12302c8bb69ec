//! The letters of a receipt printer: code page 858, which is 850 with the euro sign.

/// What stands at 0x80 and after. Source: IBM code page 858, as CPython's codec `cp858` has it; a test holds the two together.
const HIGH: &str = "ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜø£Ø×ƒáíóúñÑªº¿®¬½¼¡«»░▒▓│┤ÁÂÀ©╣║╗╝¢¥┐└┴┬├─┼ãÃ╚╔╩╦╠═╬¤ðÐÊËÈ€ÍÎÏ┘┌█▄¦Ì▀ÓßÔÒõÕµþÞÚÛÙýÝ¯´\u{ad}±‗¾¶§÷¸°¨·¹³²■\u{a0}";

/// Letters outside the code page, and what is printed in their place: the same letter without its mark, or the usual way to
/// write it. What is not here either is a question mark, so that nothing goes missing unseen.
const INSTEAD: &[(&str, &str)] = &[
    ("−–—‐‑‒―", "-"),
    ("’‘‚‛′", "'"),
    ("“”„‟″", "\""),
    ("‹", "<"),
    ("›", ">"),
    ("…", "..."),
    ("•", "·"),
    ("→", "->"),
    ("✓", "x"),
    ("₹", "Rs"),
    ("™", "TM"),
    ("Œ", "OE"),
    ("œ", "oe"),
    ("Ĳ", "IJ"),
    ("ĳ", "ij"),
    ("ẞ", "SS"),
    ("ĀĂĄǍ", "A"),
    ("āăąǎ", "a"),
    ("ĆĈĊČ", "C"),
    ("ćĉċč", "c"),
    ("Ď", "D"),
    ("ďđ", "d"),
    ("Đ", "Ð"),
    ("ĒĔĖĘĚ", "E"),
    ("ēĕėęě", "e"),
    ("ĜĞĠĢ", "G"),
    ("ĝğġģ", "g"),
    ("ĤĦ", "H"),
    ("ĥħ", "h"),
    ("ĨĪĬĮİ", "I"),
    ("ĩīĭįı", "i"),
    ("Ĵ", "J"),
    ("ĵ", "j"),
    ("Ķ", "K"),
    ("ķ", "k"),
    ("ĹĻĽŁ", "L"),
    ("ĺļľł", "l"),
    ("ŃŅŇ", "N"),
    ("ńņň", "n"),
    ("ŌŎŐ", "O"),
    ("ōŏő", "o"),
    ("ŔŖŘ", "R"),
    ("ŕŗř", "r"),
    ("ŚŜŞŠȘ", "S"),
    ("śŝşšș", "s"),
    ("ŢŤŦȚ", "T"),
    ("ţťŧț", "t"),
    ("ŨŪŬŮŰŲ", "U"),
    ("ũūŭůűų", "u"),
    ("Ŵ", "W"),
    ("ŵ", "w"),
    ("ŶŸ", "Y"),
    ("ŷ", "y"),
    ("ŹŻŽ", "Z"),
    ("źżž", "z"),
];

/// `text` in letters that the code page has. No-break spaces stay, since lines are not parted there; spaces of other widths
/// are such, and a mark that stands by itself after its letter is left out.
pub(super) fn printable(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            ' '..='~' => plain.push(letter),
            '\u{2000}'..='\u{200a}' | '\u{202f}' => plain.push('\u{a0}'),
            '\u{300}'..='\u{36f}' => {}
            '\u{ad}' => plain.push('-'),
            letter if letter.is_control() => plain.push(' '),
            letter if HIGH.contains(letter) => plain.push(letter),
            letter => {
                let found = INSTEAD.iter().find(|(letters, _)| letters.contains(letter));
                plain.push_str(found.map_or("?", |(_, instead)| instead));
            }
        }
    }
    plain
}

/// The bytes of a text that [`printable`] has made.
pub(super) fn encoded(printable: &str) -> Vec<u8> {
    let byte = |letter: char| match letter {
        '\u{a0}' => b' ',
        ' '..='~' => letter as u8,
        letter => HIGH.chars().zip(0x80..).find(|(high, _)| *high == letter).map_or(b'?', |(_, byte)| byte),
    };
    printable.chars().map(byte).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: CPython 3, `bytes(range(128, 256)).decode("cp858")`, as code points, which come from IBM's own table.
    const CP858: [u32; 128] = [
        0x00C7, 0x00FC, 0x00E9, 0x00E2, 0x00E4, 0x00E0, 0x00E5, 0x00E7, 0x00EA, 0x00EB, 0x00E8, 0x00EF, 0x00EE, 0x00EC,
        0x00C4, 0x00C5, 0x00C9, 0x00E6, 0x00C6, 0x00F4, 0x00F6, 0x00F2, 0x00FB, 0x00F9, 0x00FF, 0x00D6, 0x00DC, 0x00F8,
        0x00A3, 0x00D8, 0x00D7, 0x0192, 0x00E1, 0x00ED, 0x00F3, 0x00FA, 0x00F1, 0x00D1, 0x00AA, 0x00BA, 0x00BF, 0x00AE,
        0x00AC, 0x00BD, 0x00BC, 0x00A1, 0x00AB, 0x00BB, 0x2591, 0x2592, 0x2593, 0x2502, 0x2524, 0x00C1, 0x00C2, 0x00C0,
        0x00A9, 0x2563, 0x2551, 0x2557, 0x255D, 0x00A2, 0x00A5, 0x2510, 0x2514, 0x2534, 0x252C, 0x251C, 0x2500, 0x253C,
        0x00E3, 0x00C3, 0x255A, 0x2554, 0x2569, 0x2566, 0x2560, 0x2550, 0x256C, 0x00A4, 0x00F0, 0x00D0, 0x00CA, 0x00CB,
        0x00C8, 0x20AC, 0x00CD, 0x00CE, 0x00CF, 0x2518, 0x250C, 0x2588, 0x2584, 0x00A6, 0x00CC, 0x2580, 0x00D3, 0x00DF,
        0x00D4, 0x00D2, 0x00F5, 0x00D5, 0x00B5, 0x00FE, 0x00DE, 0x00DA, 0x00DB, 0x00D9, 0x00FD, 0x00DD, 0x00AF, 0x00B4,
        0x00AD, 0x00B1, 0x2017, 0x00BE, 0x00B6, 0x00A7, 0x00F7, 0x00B8, 0x00B0, 0x00A8, 0x00B7, 0x00B9, 0x00B3, 0x00B2,
        0x25A0, 0x00A0,
    ];

    #[test]
    fn the_upper_half_is_as_published() {
        let ours: Vec<u32> = HIGH.chars().map(u32::from).collect();
        assert_eq!(ours, CP858);
    }

    #[test]
    fn letters_outside_the_code_page_are_written_plainly_and_none_is_dropped() {
        let bytes = |text: &str| encoded(&printable(text));
        assert_eq!(bytes("Größe 5 €"), b"Gr\x94\xe1e 5 \xd5");
        assert_eq!(bytes("−3,50\u{a0}€"), b"-3,50 \xd5");
        assert_eq!(bytes("l’œil “net” …"), b"l'oeil \"net\" ...");
        assert_eq!(bytes("Łódź, Škoda, Đuro"), b"L\xa2dz, Skoda, \xd1uro");
        assert_eq!(bytes("e\u{301}"), b"e", "a mark by itself");
        assert_eq!(bytes("真珠 ♥"), b"?? ?");
        assert_eq!(bytes("a\tb\u{1b}@"), b"a b @", "nothing that is a command");
        for (letters, instead) in INSTEAD {
            assert_eq!(&printable(instead), instead, "{letters}");
        }
    }
}
