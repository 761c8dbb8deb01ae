"""Draws lettering as it stands on drawings, with where each glyph is: what the network is trained on.

  draw.py OUT_DIR SEED SHARDS [--held-out]

A shard is a .npz with `ink` (n, 60, 208) uint8, 255 for ink, and `glyphs` rows (image, class, cx, cy, w, h, whole)."""
import glob
import math
import os
import random
import sys

import cv2
import numpy as np
from PIL import Image, ImageDraw, ImageFont

import pens
import texts
from classes import INDEX, class_of

cv2.setNumThreads(1)
H, W, S = 60, 208, 2
HANGING = "34579"
HERE = os.path.dirname(os.path.abspath(__file__))
FONTS = os.environ.get("READER_FONTS", os.path.join(HERE, "fonts/node_modules/@fontsource"))
# Letterings that the tests read: never drawn here.
SET_ASIDE = {"special-elite", "cutive-mono", "work-sans", "old-standard-tt", "im-fell-english", "architects-daughter",
             "patrick-hand", "patrick-hand-sc", "kalam", "stardos-stencil", "barlow", "barlow-semi-condensed"}
# Letterings that calibrate the probabilities: drawn with --held-out alone.
HELD_OUT = {"shantell-sans", "courier-prime", "zilla-slab", "sirin-stencil", "handlee", "overpass", "gfs-didot", "coming-soon",
            "libre-caslon-text", "annie-use-your-telescope", "nova-mono", "share-tech-mono"}
HELD_PENS = {"rowmand", "timesi"}
HAND = """shadows-into-light indie-flower gloria-hallelujah handlee coming-soon schoolbell annie-use-your-telescope neucha
gochi-hand reenie-beanie just-another-hand nanum-pen-script permanent-marker short-stack delius sue-ellen-francisco
over-the-rainbow crafty-girls covered-by-your-grace loved-by-the-king waiting-for-the-sunrise walter-turncoat amatic-sc
caveat sriracha mali itim pangolin playpen-sans gaegu hi-melody poor-story chilanka shantell-sans balsamiq-sans comic-neue
dekko mynerve sedgwick-ave nanum-brush-script zeyada mansalva grandstander klee-one yomogi zen-kurenaido hachi-maru-pop
ruluko andika sniglet unkempt happy-monkey dokdo east-sea-dokdo yeon-sung cute-font kirang-haerang single-day sunshiney
dawning-of-a-new-day fuzzy-bubbles gluten twinkle-star square-peg licorice hubballi grape-nuts gamja-flower
delicious-handrawn darumadrop-one bubblegum-sans stick yusei-magic life-savers varela-round nunito quicksand
Breip femkeklaver Humor-Sans KleeOne-Regular osifont swanky-and-moo-moo give-you-glory the-girl-next-door""".split()
DEBIAN = """/usr/share/fonts/truetype/breip/Breip.ttf /usr/share/fonts/truetype/femkeklaver/femkeklaver.ttf
/usr/share/fonts/truetype/klee/KleeOne-Regular.ttf /usr/share/fonts/truetype/osifont/osifont.ttf
/usr/share/fonts/truetype/humor-sans/Humor-Sans.ttf /usr/share/fonts/truetype/gnutypewriter/GNUTypewriter.ttf
/usr/share/fonts/truetype/liberation/LiberationSans-Regular.ttf /usr/share/fonts/truetype/liberation/LiberationSerif-Regular.ttf
/usr/share/fonts/truetype/liberation/LiberationMono-Regular.ttf /usr/share/fonts/truetype/liberation/LiberationSans-Italic.ttf
/usr/share/fonts/truetype/liberation/LiberationSansNarrow-Regular.ttf""".split()


class Font:
    def __init__(self, path):
        from fontTools.ttLib import TTFont
        self.path = path
        cmap = TTFont(path, lazy=True).getBestCmap()
        self.has = {chr(c) for c in cmap}
        self.sizes = {}
        probe = ImageFont.truetype(path, 200)
        box = probe.getbbox("H" if "H" in self.has else "0", anchor="ls")
        self.cap = max(20, -box[1]) / 200

    def at(self, cap):
        size = max(6, round(cap / self.cap))
        if size not in self.sizes:
            if len(self.sizes) > 30:
                self.sizes.clear()
            self.sizes[size] = ImageFont.truetype(self.path, size)
        return self.sizes[size]


def load_fonts(held_out):
    files = [f for f in DEBIAN if os.path.exists(f)] if not held_out else []
    for folder in sorted(os.listdir(FONTS)):
        if folder in SET_ASIDE or (folder in HELD_OUT) != held_out:
            continue
        for kind in ["400-normal", "700-normal", "400-italic", "300-normal"]:
            path = f"{FONTS}/{folder}/files/{folder}-latin-{kind}.woff2"
            if os.path.exists(path):
                files.append(path)
    hand, print_ = [], []
    for path in files:
        try:
            font = Font(path)
        except Exception as error:  # a font that cannot be read is left out, and said
            print("left out", path, error)
            continue
        if "3" not in font.has:
            continue
        (hand if any(h in path for h in HAND) else print_).append(font)
    return hand, print_


class Sheet:
    """Ink at twice the size, and the glyphs that stand on it."""

    def __init__(self):
        self.ink = np.zeros((H * S, W * S), np.uint8)
        self.glyphs = []


def smooth(line, n=3):
    """A polyline through the same points, rounded (Chaikin)."""
    pts = np.array(line, float)
    for _ in range(n):
        if len(pts) < 3:
            break
        a, b = pts[:-1] * .75 + pts[1:] * .25, pts[:-1] * .25 + pts[1:] * .75
        pts = np.vstack([pts[:1], np.stack([a, b], 1).reshape(-1, 2), pts[-1:]])
    return pts


class Pen:
    def __init__(self, r, held_out):
        self.r = r
        names = sorted(HELD_PENS) if held_out else [s for s in pens.SETS if s not in HELD_PENS]
        self.set = r.choice(PEN_SETS(names))
        self.own = pens.own_figures(r) if r.random() < 0.75 else {}
        self.slant = r.choice([0, 0, r.uniform(-.1, .15), r.uniform(.15, .42)])
        self.width = r.choice([r.uniform(.03, .06), r.uniform(.05, .09), r.uniform(.08, .14), r.uniform(.12, .19)])
        self.narrow = r.uniform(.7, 1.15)
        self.wobble = r.choice([0, r.uniform(0, .03), r.uniform(.02, .06)])
        self.space = r.uniform(-.02, .22)
        self.degree = r.uniform(.5, 1.25)
        self.round = r.random() < .5

    def glyph(self, c, cap):
        r = self.r
        if c in self.own:
            width, strokes = self.own[c]
            width += .2
            strokes = [[(x + .1, y) for x, y in s] for s in strokes]
        elif c in pens.SIGNS:
            width, strokes = pens.SIGNS[c]
            if c == "°":
                k = self.degree
                width, strokes = width * k, [[(x * k, y * k) for x, y in s] for s in strokes]
        elif c in self.set and self.set[c][1]:
            width, strokes = self.set[c]
        elif c == " ":
            return None, .45 * cap * self.narrow
        else:
            return None, None
        sx, sy = r.gauss(1, self.wobble * .8), r.gauss(1, self.wobble * .8)
        turn, base = r.gauss(0, self.wobble * .8), r.gauss(0, self.wobble * .7)
        out = []
        for s in strokes:
            p = smooth(s, 2 if self.round and len(s) > 2 else 0) if c not in self.own else smooth(s, 1)
            p = p + np.array([[r.gauss(0, self.wobble * .3), r.gauss(0, self.wobble * .3)] for _ in range(1)])
            if self.wobble and len(p) > 3:
                knots = np.array([[r.gauss(0, self.wobble * .5) for _ in range(2)] for _ in range(4)])
                t = np.linspace(0, 3, len(p))
                p = p + np.stack([np.interp(t, range(4), knots[:, k]) for k in range(2)], 1)
            y = p[:, 1] * sy + base
            x = p[:, 0] * sx * self.narrow + (1 - y) * (self.slant + turn)
            out.append(np.stack([x, y], 1) * cap)
        return out, (width * self.narrow + self.space * .6) * cap


_sets = {}


def PEN_SETS(names):
    for n in names:
        if n not in _sets:
            _sets[n] = pens.read_set(n)
    return [_sets[n] for n in names]


def stroke_in(ink, lines, width, r=None, shade=255):
    """Draws polylines, antialiased, and gives the box of what was drawn."""
    x0 = y0 = 1e9
    x1 = y1 = -1e9
    for p in lines:
        q = np.round(np.asarray(p) * 16).astype(np.int32)
        cv2.polylines(ink, [q.reshape(-1, 1, 2)], False, shade, max(1, round(width)), cv2.LINE_AA, 4)
        x0, y0 = min(x0, p[:, 0].min()), min(y0, p[:, 1].min())
        x1, y1 = max(x1, p[:, 0].max()), max(y1, p[:, 1].max())
    half = width / 2
    return x0 - half, y0 - half, x1 + half, y1 + half


class Writer:
    """Writes texts on a sheet in one lettering."""

    def __init__(self, r, fonts, held_out):
        self.r = r
        hand, print_ = fonts
        kind = r.random()
        self.pen = Pen(r, held_out) if kind < .36 or not (hand or print_) else None
        self.font = None if self.pen else r.choice(hand if kind < .62 and hand else print_)
        by_hand = self.pen is not None or self.font in hand
        self.jitter = r.choice([0, r.uniform(0, .05)]) if by_hand else r.choice([0, 0, r.uniform(0, .03)])
        self.spread = r.choice([0, 0, r.uniform(-.05, .2)])
        self.tick = r.random() < (.4 if not self.pen else 1)  # primes drawn as ticks
        thick = r.uniform(.05, .11)
        self.tick_form = (r.uniform(.18, .36), r.uniform(-.02, .2), thick + r.uniform(.07, .16), thick)
        self.own_signs = r.random() < .5
        self.ratio = r.choice([r.uniform(.5, .72), r.uniform(.6, .9), r.uniform(.85, 1)])
        self.bar_width = r.uniform(.04, .12)
        self.bar_over = r.uniform(0, .25)
        self.bar_gap = r.uniform(.06, .3)
        self.bar_tilt = r.choice([0, 0, r.uniform(-.06, .06)])
        self.frac_gap = r.uniform(.05, .4)
        self.dash = r.uniform(.3, .8)
        self.dash_room = r.uniform(-.1, .12)
        # Old-style figures: how high 0, 1 and 2 are; 3, 4, 5, 7 and 9 hang as far below the line as they do from the top.
        self.low = r.uniform(.6, .78) if r.random() < (.05 if by_hand else .22) else None
        self.low_i = r.random() < .35  # its 1 is a small I
        self.pen_width = self.pen.width if self.pen else r.uniform(.06, .14)

    def put(self, sheet, c, x, y, cap):
        """Writes one character with its baseline's left end at x, y; gives how far it goes on, None where it cannot."""
        r = self.r
        cls = class_of(c)
        if c == " ":
            return cap * r.uniform(.35, .7)
        if cls is None:
            return None
        if self.low and c in HANGING:
            y += (1 - self.low) * cap
        elif self.low and c in "012":
            cap *= self.low
            if c == "1" and self.low_i:
                c = "I"
        jx, jy = r.gauss(0, self.jitter) * cap, r.gauss(0, self.jitter) * cap * .7
        x, y = x + jx, y + jy
        box = None
        if c in "'\"" and self.tick:
            length, slant, gap, thick = self.tick_form
            top = y - cap * r.uniform(.95, 1.12)
            n = 1 if c == "'" else 2
            x += cap * .06
            lines = [np.array([[x + (i * gap + slant * length + .03) * cap, top], [x + (i * gap + .03) * cap, top + length * cap]]) for i in range(n)]
            box = stroke_in(sheet.ink, lines, max(1.4, thick * cap))
            go = (gap * n + slant * length + .12) * cap
        elif c == "-" and self.own_signs:
            long = self.dash * cap
            mid = y - cap * r.uniform(.35, .5)
            box = stroke_in(sheet.ink, [np.array([[x + .1 * cap, mid], [x + .1 * cap + long, mid + r.gauss(0, .02) * cap]])], max(1.4, self.pen_width * cap))
            go = long + self.dash_room * cap + .1 * cap
        elif self.pen or (c not in self.font.has and c in pens.SIGNS) or (c in pens.SIGNS and c in "Ø°±×" and self.own_signs):
            pen = self.pen or Pen(r, False)
            lines, go = pen.glyph(c, cap)
            if lines is None:
                return None
            box = stroke_in(sheet.ink, [p + [x, y - cap] for p in lines], max(1.4, self.pen_width * cap))
        else:
            if c not in self.font.has:
                return None
            face = self.font.at(cap)
            bx = face.getbbox(c, anchor="ls")
            if bx[2] <= bx[0] or bx[3] <= bx[1]:
                return None
            mask = face.getmask(c, mode="L")
            w, h = mask.size
            if w == 0 or h == 0:
                return None
            m = np.asarray(mask, np.uint8).reshape(h, w)
            px, py = round(x + bx[0]), round(y + bx[1])
            X0, Y0, X1, Y1 = max(px, 0), max(py, 0), min(px + w, W * S), min(py + h, H * S)
            if X1 > X0 and Y1 > Y0:
                part = sheet.ink[Y0:Y1, X0:X1]
                np.maximum(part, m[Y0 - py:Y1 - py, X0 - px:X1 - px], out=part)
            rows_, cols_ = np.flatnonzero(m.max(1) > 60), np.flatnonzero(m.max(0) > 60)
            if not len(rows_) or not len(cols_):
                return None
            box = px + cols_[0], py + rows_[0], px + cols_[-1] + 1, py + rows_[-1] + 1
            go = face.getlength(c) + self.spread * cap
        sheet.glyphs.append([cls, *box])
        return go

    def run(self, sheet, text, x, y, cap):
        start = x
        for c in text:
            go = self.put(sheet, c, x, y, cap)
            if go is not None:
                x += go
        return x - start

    def measure(self, text, cap):
        keep = self.r.getstate()
        width = self.run(Sheet(), text, 0, cap * 2, cap)
        self.r.setstate(keep)
        return width

    def write(self, sheet, parts, x, y, cap):
        """Writes parts from x on the baseline y; gives where it ends."""
        r = self.r
        for i, part in enumerate(parts):
            if part[0] == "t":
                x += self.run(sheet, part[1], x, y, cap)
                continue
            kind, over, under = part
            small = cap * self.ratio
            if i > 0:
                x += cap * self.frac_gap
            if kind == "d":
                small = cap * min(self.ratio, .75)
                x += self.run(sheet, over, x, y - cap * r.uniform(.4, .55), small)
                x += cap * r.uniform(-.05, .08)
                lean = r.uniform(.35, .8) * cap
                box = stroke_in(sheet.ink, [np.array([[x, y + cap * r.uniform(.02, .2)], [x + lean, y - cap * r.uniform(1, 1.2)]])], max(1.4, self.pen_width * cap))
                sheet.glyphs.append([INDEX["/"], *box])
                x += lean * r.uniform(.75, 1.05)
                x += self.run(sheet, under, x, y + cap * r.uniform(0, .15), small) + cap * .1
                continue
            a, b = self.measure(over, small), self.measure(under, small)
            wide = max(a, b)
            if kind == "s":
                mid = y - cap * .5
                gap = cap * r.uniform(.08, .3)
                self.run(sheet, over, x, mid - gap / 2, small)
                self.run(sheet, under, x, mid + gap / 2 + small, small)
                x += wide + cap * .1
                continue
            mid = y - cap * r.uniform(.38, .55)
            gap = self.bar_gap * cap * .8 + cap * .04
            o = self.bar_over * cap
            hang = (1 - self.low) * small if self.low and any(c in HANGING for c in over) else 0
            self.run(sheet, over, x + o + (wide - a) / 2, mid - gap - hang, small)
            self.run(sheet, under, x + o + (wide - b) / 2, mid + gap + small, small)
            tilt = self.bar_tilt * wide
            box = stroke_in(sheet.ink, [np.array([[x, mid + tilt], [x + wide + 2 * o, mid - tilt]])], max(1.4, self.bar_width * cap))
            sheet.glyphs.append([INDEX["_"], *box])
            x += wide + 2 * o + cap * r.uniform(.02, .2)
        return x


def arrow(ink, r, x, y, direction, cap, width):
    long, half = cap * r.uniform(.35, .9), cap * r.uniform(.08, .24)
    c, s = math.cos(direction), math.sin(direction)
    tip = np.array([x, y])
    a = tip - [c * long - s * half, s * long + c * half]
    b = tip - [c * long + s * half, s * long - c * half]
    if r.random() < .6:
        cv2.fillPoly(ink, [np.round(np.array([tip, a, b]) * 16).astype(np.int32)], 255, cv2.LINE_AA, 4)
    else:
        stroke_in(ink, [np.array([a, tip, b])], width)


def clutter(r, sheet, cap, box):
    """Lines as they stand beside figures: dimension lines, witness lines, leaders, hatching, rounds."""
    ink = np.zeros_like(sheet.ink)
    x0, y0, x1, y1 = box
    mid, h = (y0 + y1) / 2, cap
    width = max(1.2, cap * r.choice([r.uniform(.02, .06), r.uniform(.05, .12)]))
    def line(*p):
        stroke_in(ink, [np.array(p, float)], width)
    kind = r.random()
    if kind < .22:  # the dimension line is broken for its figure
        gap = h * r.uniform(.2, 1)
        slope = r.gauss(0, .01)
        y = mid + r.gauss(0, .08) * h
        line((-20, y), (x0 - gap, y + slope * x0))
        line((x1 + gap, y), (W * S + 20, y))
        if r.random() < .3:
            arrow(ink, r, x0 - gap - h * r.uniform(1, 4), y, math.pi, h, width)
        if r.random() < .3:
            arrow(ink, r, x1 + gap + h * r.uniform(1, 4), y, 0, h, width)
    elif kind < .42:  # the figure stands on its line, or under it
        below = r.random() < .75
        y = y1 + h * r.uniform(.12, .6) if below else y0 - h * r.uniform(.12, .6)
        line((-20, y + r.gauss(0, 2)), (W * S + 20, y + r.gauss(0, 2)))
        if r.random() < .3:
            arrow(ink, r, r.uniform(0, W * S), y, r.choice([0, math.pi]), h, width)
    elif kind < .48:  # underlined: not to scale
        y = y1 + h * r.uniform(.1, .3)
        line((x0 - h * r.uniform(-.1, .3), y), (x1 + h * r.uniform(-.1, .3), y + r.gauss(0, 1)))
    if r.random() < .3:
        for _ in range(r.randint(1, 3)):  # witness lines
            x = r.choice([x0 - h * r.uniform(.15, 2), x1 + h * r.uniform(.15, 2)])
            line((x, -20), (x + r.gauss(0, 3), H * S + 20))
    if r.random() < .1:  # a leader
        x, y = r.choice([x0 - h * .3, x1 + h * .3]), mid
        line((x, y), (x + r.uniform(-1, 1) * 200, y + r.uniform(-1, 1) * 200))
    if r.random() < .06:
        c = (r.uniform(0, W * S), r.uniform(-60, H * S + 60))
        rad = r.uniform(.5, 8) * h
        cv2.circle(ink, (round(c[0] * 16), round(c[1] * 16)), round(rad * 16), 255, max(1, round(width)), cv2.LINE_AA, 4)
    if r.random() < .05:  # hatching beside
        left = r.random() < .5
        step = h * r.uniform(.3, .8)
        edge = x0 - h * r.uniform(.3, 1) if left else x1 + h * r.uniform(.3, 1)
        x = edge - 40 * step if left else edge
        for _ in range(40):
            line((x, H * S + 5), (x + H * S * .9, -5))
            x += step
        ink[:, : max(0, round(edge))] if not left else None
        if left:
            ink[:, max(0, round(edge)):] = 0
        else:
            ink[:, : max(0, round(edge))] = 0
    through = np.zeros_like(ink)
    if r.random() < .16:  # a line through the figure
        a = r.choice([r.uniform(-.12, .12), r.uniform(-1.5, 1.5)])
        cx, cy = r.uniform(x0, x1), r.uniform(y0, y1)
        c, s = math.cos(a) * 600, math.sin(a) * 600
        stroke_in(through, [np.array([[cx - c, cy - s], [cx + c, cy + s]])], max(1.2, cap * r.uniform(.02, .09)))
    return np.maximum(ink, through)


def degrade(r, rng, ink, cap):
    """From ink at twice the size, 0..1, to ink at size as a scan of old paper shows it, cleaned as well as can be."""
    bad = r.choices([0, 1, 2], [5, 4, 1.8])[0]
    x = ink
    if r.random() < .3:  # spread or starved
        k = r.choice([2, 3])
        x = cv2.dilate(x, np.ones((k, k))) if r.random() < .55 else (cv2.erode(x, np.ones((k, k))) if k == 2 and cap > 34 else x)
    if bad and r.random() < (.35 if bad == 1 else .6):  # broken strokes
        cell = r.uniform(.1, .45) * cap
        f = rng.random((int(H * S / cell) + 2, int(W * S / cell) + 2)).astype(np.float32)
        f = cv2.resize(f, (W * S, H * S), interpolation=cv2.INTER_CUBIC)
        cut = r.uniform(.12, .24 if bad == 1 else .34)
        x = x * np.clip((f - cut) * r.uniform(5, 20) + .5, 0, 1)
    if bad and r.random() < .4:  # thin scratches of lost ink
        for _ in range(r.randint(1, 4)):
            p = np.array([[r.uniform(0, W * S), r.uniform(0, H * S)] for _ in range(2)])
            p[1] = p[0] + (p[1] - p[0]) * r.choice([.3, 1, 3])
            keep = np.full(x.shape, 255, np.uint8)
            stroke_in(keep, [p], r.uniform(1, .14 * cap), shade=0)
            x = x * (keep.astype(np.float32) / 255)
    if bad and r.random() < .3:  # fading over the width
        f = cv2.resize(rng.uniform(.35, 1, (2, r.randint(2, 5))).astype(np.float32), (W * S, H * S), interpolation=cv2.INTER_CUBIC)
        x = x * np.clip(f, .2, 1)
    blur = r.choice([r.uniform(.4, 1.2), r.uniform(.8, 2.2) if bad else .8, r.uniform(1.5, 3.8) if bad == 2 else 1])
    x = cv2.GaussianBlur(x, (0, 0), blur)
    x = cv2.resize(x, (W, H), interpolation=cv2.INTER_AREA)
    if r.random() < .35:  # scanned smaller, and enlarged again
        k = r.uniform(.5, .95)
        small = cv2.resize(x, (max(8, round(W * k)), max(8, round(H * k))), interpolation=cv2.INTER_AREA)
        x = cv2.resize(small, (W, H), interpolation=r.choice([cv2.INTER_CUBIC, cv2.INTER_LINEAR]))
    depth = r.uniform(.55, 1)
    g = x * depth
    if bad and r.random() < .4:  # ground left over: stains, folds
        f = cv2.resize(rng.normal(0, 1, (r.randint(2, 5), r.randint(2, 9))).astype(np.float32), (W, H), interpolation=cv2.INTER_CUBIC)
        g = g + f * r.uniform(.02, .12)
    if bad and r.random() < .35:
        for _ in range(r.randint(1, 3)):  # stain with an edge
            m = np.zeros((H, W), np.uint8)
            cv2.ellipse(m, (r.randint(0, W), r.randint(0, H)), (r.randint(5, 90), r.randint(5, 60)), r.uniform(0, 180), 0, 360, 255, -1)
            g = g + cv2.GaussianBlur(m.astype(np.float32) / 255, (0, 0), r.uniform(1, 6)) * r.uniform(-.1, .3) * depth
    noise = r.choice([r.uniform(0, .04), r.uniform(.02, .09) if bad else .03, r.uniform(.06, .2) if bad == 2 else .04])
    n = rng.normal(0, noise, (H, W)).astype(np.float32)
    if r.random() < .5:
        n = cv2.GaussianBlur(n, (0, 0), r.uniform(.4, 1.1)) * 1.7
    g = g + n
    if bad and r.random() < .4:  # specks
        count = int(r.expovariate(1 / 12)) + 1
        for _ in range(min(count, 80)):
            cv2.circle(g, (r.randint(0, W - 1), r.randint(0, H - 1)), r.choice([0, 0, 1, 1, 2]), r.uniform(.3, 1) * depth, -1)
    # What the cleaning before reading leaves: the ground at about nothing, full ink at about one.
    g = g / depth * r.uniform(.8, 1.2) + r.gauss(0, .03)
    if r.random() < .2:
        g = np.clip((g - .5) * r.uniform(1.5, 6) + .5, 0, 1)
    g = np.clip(g, 0, 1)
    if r.random() < .25:
        _, j = cv2.imencode(".jpg", 255 - (g * 255).astype(np.uint8), [cv2.IMWRITE_JPEG_QUALITY, r.randint(25, 85)])
        g = 1 - cv2.imdecode(j, 0).astype(np.float32) / 255
    return g


def one(r, rng, fonts, held_out):
    while True:
        sheet = Sheet()
        writer = Writer(r, fonts, held_out)
        cap = S * math.exp(r.uniform(math.log(13), math.log(27)))
        empty = r.random() < .05
        parts = texts.any_text(r)
        if not empty:
            width = writer.write(Sheet(), parts, 0, 0, cap) if False else None
            x = r.uniform(.1, 1.5) * cap
            y = H * S / 2 + cap * .5 + r.choice([r.gauss(0, .25), r.uniform(-.9, .9)]) * cap
            keep = r.getstate()
            probe = Sheet()
            end = writer.write(probe, parts, x, y, cap)
            r.setstate(keep)
            room = W * S - (end - x) - .4 * cap
            x = r.uniform(.2 * cap, room) if room > .3 * cap else (x if r.random() < .7 else x + room * r.random())
            end = writer.write(sheet, parts, x, y, cap)
            if not sheet.glyphs:
                continue
            if r.random() < .45:  # another line over or under it
                up = y > H * S / 2 + cap * .5
                other = y + cap * (-1 if up else 1) * r.uniform(1.45, 2.2)
                writer.write(sheet, texts.any_text(r), x + r.gauss(0, 1) * cap, other, cap)
        box = (W * S * .3, H * S * .3, W * S * .7, H * S * .7)
        if sheet.glyphs:
            g = np.array(sheet.glyphs, float)
            box = g[:, 1].min(), g[:, 2].min(), g[:, 3].max(), g[:, 4].max()
        ink = sheet.ink.astype(np.float32) / 255
        if r.random() < .75:
            ink = np.maximum(ink, clutter(r, sheet, cap, box).astype(np.float32) / 255 * r.uniform(.6, 1))
        # Turned, slanted, drawn out.
        a = math.radians(r.choice([r.gauss(0, 1), r.gauss(0, 3), r.uniform(-7, 7)]))
        shear = r.choice([0, 0, r.uniform(-.12, .3)])
        ax, ay = math.exp(r.gauss(0, .1)), math.exp(r.gauss(0, .05))
        c, s = math.cos(a), math.sin(a)
        m = np.array([[c, -s], [s, c]]) @ np.array([[ax, -shear], [0, ay]])
        mid = np.array([W * S / 2, H * S / 2])
        t = mid - m @ mid
        ink = cv2.warpAffine(ink, np.hstack([m, t[:, None]]), (W * S, H * S), flags=cv2.INTER_LINEAR)
        rows = []
        for cls, x0, y0, x1, y1 in sheet.glyphs:
            centre = m @ np.array([(x0 + x1) / 2, (y0 + y1) / 2]) + t
            w, h = (x1 - x0) * ax + abs(shear) * (y1 - y0) * .8, (y1 - y0) * ay
            cx, cy, w, h = centre[0] / S, centre[1] / S, w / S, h / S
            seen_x = min(cx + w / 2, W) - max(cx - w / 2, 0)
            seen_y = min(cy + h / 2, H) - max(cy - h / 2, 0)
            if seen_x <= 0 or seen_y <= 0:
                continue
            share = seen_x * seen_y / max(w * h, 1e-6)
            rows.append([cls, cx, cy, w, h, share > .8 and h > 3.0 / 2 * (cls < 36) * 2])
        return degrade(r, rng, ink, cap), rows


def main():
    out, seed, shards = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
    held_out = "--held-out" in sys.argv
    os.makedirs(out, exist_ok=True)
    fonts = load_fonts(held_out)
    print("fonts", len(fonts[0]), len(fonts[1]), flush=True)
    n = 1500
    for shard in range(shards):
        r = random.Random(seed * 1000 + shard)
        rng = np.random.default_rng(seed * 1000 + shard)
        inks, glyphs = np.zeros((n, H, W), np.uint8), []
        for i in range(n):
            ink, rows = one(r, rng, fonts, held_out)
            inks[i] = np.round(ink * 255)
            glyphs += [[i, *row] for row in rows]
        path = f"{out}/{seed:03d}-{shard:03d}.npz"
        with open(path + ".part", "wb") as file:
            np.savez(file, ink=inks, glyphs=np.array(glyphs, np.float32))
        os.rename(path + ".part", path)


if __name__ == "__main__":
    main()
