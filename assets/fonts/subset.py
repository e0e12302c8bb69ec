"""Makes the desk's light typefaces: what the four languages, money and the pages' signs need, as WOFF2.

Needs Python with `fonttools` and `brotli`. Run in this folder; the files beside it are written anew. The range below stands
in `assets/desk/desk.css` as well, so that a browser asks for the whole typeface only where a page has another letter.
What was taken out makes them other versions of their typefaces, so they have names of their own, as the licences want it.
"""

from fontTools.subset import Options, Subsetter, load_font, parse_unicodes, save_font

# Basic Latin and Latin-1, the French and Spanish letters beyond them, dashes, quotes, dots, arrows, signs of money and sums.
RANGE = (
    "U+0020-007E,U+00A0-00FF,U+0152-0153,U+0160-0161,U+0178,U+017D-017E,U+2002-200A,U+2010-2015,U+2018-201E,U+2020-2022,"
    "U+2026,U+202F,U+2032-2033,U+2039-203A,U+2044,U+20AC,U+2122,U+2190-2193,U+2212,U+2215,U+2713"
)
# Which records of the name table stay as they are: copyright, licence and where the licence is (OpenType, "name").
KEPT = {0, 13, 14}


def light(source, target, family, style):
    options = Options()
    options.flavor = "woff2"
    options.hinting = False
    options.layout_features = ["kern", "liga", "lnum", "tnum", "mark", "mkmk", "ccmp", "locl"]
    options.drop_tables += ["Silt"]
    options.name_IDs = ["*"]
    font = load_font(source, options)
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=parse_unicodes(RANGE))
    subsetter.subset(font)
    names = font["name"]
    names.names = [record for record in names.names if record.nameID in KEPT]
    whole = f"{family} {style}"
    for name_id, text in {1: family, 2: style, 3: whole, 4: whole, 6: whole.replace(" ", "")}.items():
        names.setName(text, name_id, 3, 1, 0x409)
    save_font(font, target, options)


light("andika-regular.ttf", "desk-sans-regular.woff2", "Desk Sans", "Regular")
light("andika-bold.ttf", "desk-sans-bold.woff2", "Desk Sans", "Bold")
light("serif-semibold.ttf", "desk-serif-semibold.woff2", "Desk Serif", "SemiBold")
