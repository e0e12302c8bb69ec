"""The contact sheet: every drop of the catalogue at one scale, and the kiosk's own pictures, on linen."""
from PIL import Image, ImageDraw, ImageFont

WIDTH, GAP, PX_PER_MM, STEP = 1440, 16, 4.5, 6
LINKS = ("face", "side", "flat-face", "flat-side", "rolo-face", "rolo-side", "curb-face", "curb-over")
KIOSK = ("bangle", *(f"link-{name}" for name in LINKS), "ring", "clasp")


def write(root, names):
    """Puts assets/pictures/contact-sheet.png together from the stored pictures of drops of those names."""
    linen = Image.open(root / "assets/kiosk/linen.png").convert("RGB")
    ground = linen.resize((1, 1), Image.Resampling.BOX).getpixel((0, 0))
    font = ImageFont.truetype(root / "assets/fonts/andika-regular.ttf", 11)
    files = [root / f"catalog/pictures/{name}.png" for name in names]
    files += [root / f"assets/kiosk/{name}.png" for name in KIOSK]
    rows, x = [[]], GAP
    for path in files:
        image = Image.open(path)
        k = PX_PER_MM / float(image.text.get("px_per_mm", 10))
        small = image.resize((max(1, round(image.width * k)), max(1, round(image.height * k))), Image.Resampling.LANCZOS)
        wide = max(small.width, round(font.getlength(path.stem)))
        if x + wide > WIDTH - GAP:
            rows.append([])
            x = GAP
        rows[-1].append((path.stem, small, x, wide))
        x += wide + GAP
    heights = [max(small.height for _, small, _, _ in row) + 34 for row in rows]
    sheet = Image.new("RGB", (WIDTH, sum(heights) + GAP), ground)
    draw, y = ImageDraw.Draw(sheet), GAP
    for row, tall in zip(rows, heights):
        for name, small, x, wide in row:
            sheet.paste(small, (x + (wide - small.width) // 2, y), small)
            draw.text((x + wide / 2, y + tall - 30), name, (60, 52, 44), font, "ma")
        y += tall
    # Fewer steps of tone pack better, and this is only an overview.
    sheet = sheet.point([min(255, round(v / STEP) * STEP) for v in range(256)] * 3)
    sheet.save(root / "assets/pictures/contact-sheet.png", optimize=True)
