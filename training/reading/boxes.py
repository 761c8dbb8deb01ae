"""Draws whole figures as scans show them, at any size and angle, with what is written: for calibrating the reader as a
whole on letterings that the network was not trained on.

  boxes.py OUT SEED COUNT [--trained]     writes OUT.bin (grey pixels) and OUT.json"""
import json
import math
import random
import sys

import cv2
import numpy as np

import draw
import texts

FAMILIES = [texts.inches, texts.feet, texts.decimal, texts.round_size, texts.holes, texts.angle, texts.gauge, texts.tolerance]
WEIGHTS = [30, 14, 16, 12, 10, 8, 5, 5]


def as_text(parts):
    """As a person would write it in a line."""
    out = ""
    for part in parts:
        if part[0] == "t":
            out += part[1]
        elif part[0] == "s":
            out += " " + part[1] + " " + part[2]
        else:
            out += (" " if out and out[-1].isdigit() else "") + part[1] + "/" + part[2]
    return out


def one(r, rng, fonts, held_out):
    cap = math.exp(r.uniform(math.log(14), math.log(60)))
    while True:
        parts = r.choices(FAMILIES, WEIGHTS)[0](r)
        writer = draw.Writer(r, fonts, held_out)
        draw.H, draw.W = 400, 3000
        keep = r.getstate()
        probe = draw.Sheet()
        writer.write(probe, parts, 0, 400, cap * 2)
        g = np.array(probe.glyphs, float)
        if len(g) < sum(len(p[1].replace(" ", "")) if p[0] == "t" else 2 for p in parts) or not len(g):
            continue
        r.setstate(keep)
        x0, y0, x1, y1 = g[:, 1].min() / 2, g[:, 2].min() / 2, g[:, 3].max() / 2, g[:, 4].max() / 2
        if x1 - x0 < 900:
            break
    w, h = x1 - x0, y1 - y0
    draw.W, draw.H = int(w + 3 * cap), int(h + 3 * cap)
    sheet = draw.Sheet()
    x, y = 3 * cap - x0 * 2, 2 * (draw.H / 2 - (y0 + y1) / 2) + 400
    writer.write(sheet, parts, x, y, cap * 2)
    g = np.array(sheet.glyphs, float)
    box = g[:, 1].min(), g[:, 2].min(), g[:, 3].max(), g[:, 4].max()
    ink = sheet.ink.astype(np.float32) / 255
    lines = draw.clutter(r, sheet, cap * 2, box) if r.random() < .7 else np.zeros_like(sheet.ink)
    ink = np.maximum(ink, lines.astype(np.float32) / 255 * r.uniform(.7, 1))
    ink = draw.degrade(r, rng, ink, cap * 2)
    angle = r.choice([0, 0, 0, -90, -90, 90, r.uniform(-180, 180)]) + r.choice([0, r.gauss(0, 1.5)])
    paper, depth = r.uniform(150, 250), r.uniform(.35, .95)
    grey = paper * (1 - np.clip(ink, 0, 1) * depth)
    a = math.radians(angle)
    c, s = abs(math.cos(a)), abs(math.sin(a))
    W2, H2 = int(draw.W * c + draw.H * s) + 2, int(draw.W * s + draw.H * c) + 2
    m = cv2.getRotationMatrix2D((draw.W / 2, draw.H / 2), -angle, 1)
    m[:, 2] += [W2 / 2 - draw.W / 2, H2 / 2 - draw.H / 2]
    grey = cv2.warpAffine(grey.astype(np.float32), m, (W2, H2), flags=cv2.INTER_LINEAR, borderValue=float(np.median(grey)))
    if r.random() < .12:
        grey = 255 - grey
    bx = np.array(box) / 2
    corners = np.array([[bx[0], bx[1]], [bx[2], bx[1]], [bx[2], bx[3]], [bx[0], bx[3]]])
    corners = corners @ m[:, :2].T + m[:, 2]
    lo, hi = corners.min(0), corners.max(0)
    pad = cap * r.uniform(.1, .5)
    drawn = [max(0, lo[0] - pad * r.uniform(.5, 1)), max(0, lo[1] - pad * r.uniform(.5, 1)), hi[0] + pad * r.uniform(.5, 1), hi[1] + pad * r.uniform(.5, 1)]
    return np.clip(grey, 0, 255).astype(np.uint8), as_text(parts), angle, cap, [drawn[0], drawn[1], drawn[2] - drawn[0], drawn[3] - drawn[1]]


def main():
    out, seed, count = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    held_out = "--trained" not in sys.argv
    fonts = draw.load_fonts(held_out)
    r, rng = random.Random(seed), np.random.default_rng(seed)
    index, at = [], 0
    with open(out + ".bin", "wb") as file:
        for _ in range(count):
            grey, text, angle, cap, box = one(r, rng, fonts, held_out)
            file.write(grey.tobytes())
            index.append({"at": at, "width": grey.shape[1], "height": grey.shape[0], "text": text, "angle": round(angle, 2),
                          "cap": round(cap, 1), "box": [round(v, 1) for v in box]})
            at += grey.size
    json.dump(index, open(out + ".json", "w"), ensure_ascii=False)


if __name__ == "__main__":
    main()
