"""The sweet and the lantern."""
import numpy as np

from canvas import step
from relief import Relief


def sweet(c, w, h):
    r = w / 2
    cy = h - r
    q, a = c.polar(0, cy)
    swirl = np.sin((a + q * 0.22) * 5)
    edge = 0.5 + 0.5 * np.clip(swirl * q * 3.0, -1, 1)
    colour = np.array((250, 242, 230)) + (np.array((200, 30, 52)) - np.array((250, 242, 230))) * edge[..., None]
    candy = Relief(c).puff(c.disc(0, cy, r - 0.75), 3.4)
    candy.z += np.where(candy.d < 0, 0.05 * swirl, 0)
    candy.stone(colour, 1.2, 0.2)
    band = Relief(c).wire(np.abs(c.disc(0, cy, r - 0.6)), 0.6, 0.5)
    band.z += np.where(band.d < 0, 0.07 * np.sin(a * 48), 0)
    band.wire(c.line(0, 2.2, 0, 3.6), 0.55).eye().paint("silver", seed=18)


def lantern(c, w, h):
    roof, sill = h * 0.36, h - 2.4
    glow = Relief(c).plate(c.box(0, (roof + sill) / 2, w * 0.38, (sill - roof) / 2 + 0.4, 0.2), 0.5, 0.2)
    q = np.hypot(c.x * 1.1, (c.y - h * 0.68) * 0.8)
    warm = np.stack([np.full_like(q, 255), 214 - q * 16, 120 - q * 20], -1) * (1.02 - 0.05 * q[..., None]) + 6 * c.noise(0.35, 3)[..., None]
    flame = c.curve(lambda t: (0.95 * np.sin(t) * np.sin(t / 2) ** 1.3, h * 0.68 - 2.1 * np.cos(t)))
    bright = step(-flame, -0.5, 0.5)[..., None]
    glow.shine(np.clip(warm * (1 - bright) + np.array((255, 246, 206)) * bright, 0, 255), 1.15, lift=-0.6)
    frame = Relief(c)
    for x in (-1, 1):
        frame.wire(c.line(x * w * 0.385, roof, x * w * 0.40, sill), 0.75)
        frame.wire(c.line(x * w * 0.13, roof, x * w * 0.135, sill), 0.36, 0.2)
    frame.wire(c.line(-w * 0.38, h * 0.66, w * 0.38, h * 0.66), 0.3, 0.1)
    frame.turned(sill - 0.7, sill + 0.9, lambda t: w * 0.46 + 0 * t, 0.5).turned(sill + 0.6, h, lambda t: w * 0.5 - 0.7 * t * t, 0.5)
    frame.turned(h * 0.20, roof, lambda t: w * (0.15 + 0.30 * t**1.7), 0.6).turned(roof - 0.4, roof + 0.7, lambda t: w * 0.485 + 0 * t, 0.5)
    for x in (-0.6, -0.2, 0.2, 0.6):
        frame.groove(c.line(x * w * 0.25, h * 0.2, x * w * 0.75, roof - 0.5), 0.22, 0.14)
    frame.turned(h * 0.125, h * 0.21, lambda t: w * (0.10 + 0.07 * t), 0.8).eye().paint("brass", seed=20)


RECIPES = {"sweet-swirl": sweet, "lantern-glow": lantern}
