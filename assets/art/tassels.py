"""Tassels: some hundred threads under a turned cap."""
import numpy as np

from canvas import step
from relief import Relief


def skirt(c, w, h, top, colour, seed, sheen, flare):
    """Three layers of threads; each thread is a thin rod with its own tone, length and way of falling."""
    colour, rs = np.array(colour, np.float32), np.random.RandomState(seed)
    t = np.clip((c.y - top) / (h - top), 0, 1)
    half = (w / 2 - 0.25) * (0.60 + (0.40 - flare) * step(t, 0, 0.30) + flare * t)
    for layer, (threads, light) in enumerate(((30, 0.62), (38, 0.84), (44, 1.0))):
        sway = 0.5 * c.noise(1.2, seed + layer, 5) * (0.10 + 0.5 * t) + 0.25 * c.noise(0.45, seed + 7 + layer, 9) * t
        u = np.clip((c.x + sway * (0.85 if layer else 0.5)) / half, -1.02, 1.02)
        turn = np.arcsin(np.clip(u, -1, 1))
        at = (turn / np.pi + 0.5) * threads
        index = np.clip(at.astype(int), 0, threads - 1)
        across = (at - index) * 2 - 1
        tone = rs.uniform(0.80, 1.14, threads)[index]
        ends = (h - np.abs(rs.normal(0, 0.55, threads)) - (0 if layer else 0))[index]
        there = step(ends - c.y, -0.05, 0.15) * (np.abs(u) < 1) * (np.abs(c.x) < w / 2) * (c.y > top)
        if layer:
            there = there * np.where(rs.uniform(0, 1, threads)[index] < (0.80 if layer == 1 else 0.70), 1, 0)
        roundness = np.cos(np.clip(turn + 0.45, -1.57, 1.57)) * 0.62 + 0.42
        fibre = 0.72 + 0.34 * np.sqrt(np.clip(1 - across**2, 0, 1)) - 0.14 * across
        twist = 1 + 0.07 * np.sin((c.y + across * 0.35) * 7.5 + index * 1.7)
        lit = roundness * fibre * twist * tone * light * (0.58 + 0.42 * step(t, 0, 0.10)) * (1 - 0.12 * t)
        gleam = sheen * (np.exp(-(((t - 0.20) / 0.07) ** 2)) + 0.7 * np.exp(-(((t - 0.62 - 0.03 * np.sin(index * 2.3)) / 0.13) ** 2)))
        gleam = gleam * np.clip(1 - np.abs(turn + 0.55) / 1.2, 0, 1) * np.clip(1 - across**2, 0, 1) * tone
        base = colour * lit[..., None]
        c.over(np.clip(base + (colour * 0.35 + 175 - base) * np.clip(gleam, 0, 0.7)[..., None], 0, 255), there)


def cap_domed(c, w, top, finish, seed):
    relief = Relief(c)
    r = w * 0.33
    relief.turned(2.9, top + 1.4, lambda t: r * np.sqrt(np.clip(1 - (1 - np.clip(t * 1.5, 0, 1)) ** 2, 0, 1)) + 0.15 * (t > 0.6))
    for y in (0.50, 0.62):
        relief.groove(c.y - (2.9 + (top - 1.5) * y), 0.25, 0.15)
    _, a = c.polar(0, top)
    relief.z += np.where((c.y > top - 0.2) & (c.y < top + 1.0) & (relief.d < 0), 0.22 * np.sin(np.arcsin(np.clip(c.x / r, -1, 1)) * 16), 0)
    relief.eye().paint(finish, seed=seed)


def cap_bell(c, w, top, finish, seed):
    relief = Relief(c)
    relief.turned(2.6, top + 1.5, lambda t: w * (0.13 + 0.22 * t**1.4 + 0.03 * np.cos(t * 24)))
    relief.turned(top + 0.7, top + 1.5, lambda t: w * 0.37 + 0 * t)
    relief.eye().paint(finish, seed=seed)


def cap_wound(c, w, top, finish, seed):
    relief = Relief(c)
    relief.ball(0, 4.4, 1.9)
    for i, y in enumerate(np.arange(5.9, top + 1.6, 0.78)):
        relief.wire(c.line(-w * 0.285, y - 0.1, w * 0.285, y + 0.1), 0.42, 1.4 * 1)
        relief.z = np.where((np.abs(c.y - y) < 0.42) & (relief.d < 0), relief.z + 1.2 * np.sqrt(np.clip(1 - (c.x / (w * 0.30)) ** 2, 0, 1)), relief.z)
    relief.eye().paint(finish, seed=seed)


def tassel(colour, finish, cap, seed, sheen=0.55, flare=0.22):
    def recipe(c, w, h):
        top = 7.2
        skirt(c, w, h, top - 0.4, colour, seed, sheen, flare)
        cap(c, w, top, finish, seed)

    return recipe


def two_tone(c, w, h):
    """Ink cotton: a knotted head of its own thread under a gunmetal bail."""
    skirt(c, w, h, 8.8, (50, 52, 64), 94, 0.22, 0.16)
    head = Relief(c).ball(0, 6.2, w * 0.30, 3.0)
    head.z += np.where(head.d < 0, 0.20 * np.abs(np.sin((c.x * 2.0 + c.y * 0.5) * 2.3)), 0)
    head.stone((66, 68, 82), 0.25, 0.3)
    band = Relief(c)
    for y in (8.8, 9.4, 10.0):
        band.wire(c.line(-w * 0.27, y, w * 0.27, y), 0.36, 0.9)
    band.eye().wire(c.line(0, 2.4, 0, 3.6), 0.7).paint("gunmetal", seed=95)


RECIPES = {
    "tassel-plum": tassel((128, 44, 104), "brass", cap_domed, 90),
    "tassel-teal": tassel((36, 128, 132), "silver", cap_bell, 91, flare=0.30),
    "tassel-ochre": tassel((214, 154, 52), "brass", cap_wound, 92, flare=0.12),
    "tassel-ivory": tassel((238, 228, 208), "gold", cap_domed, 93, 0.4),
    "tassel-ink": two_tone,
}
