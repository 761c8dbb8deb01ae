"""Glyphs as strokes of a pen: single-stroke letters of the public-domain Hershey sets, and figures of our own drawn with
several habits of hand. A glyph is (width, [polyline...]) in a frame where capitals stand from y = 0 (top) to y = 1."""
import math
import os

HERSHEY = "/usr/share/hershey-fonts"
# Sets whose n-th glyph is the n-th printing character.
SETS = ["futural", "futuram", "rowmans", "rowmand", "scripts", "timesr", "timesi", "rowmant", "timesrb"]


def read_set(name):
    glyphs = {}
    text = open(os.path.join(HERSHEY, name + ".jhf"), encoding="latin1").read().replace("\r", "")
    lines, held = [], ""
    for line in text.split("\n"):
        held += line
        if len(held) < 8:
            continue
        need = 8 + 2 * int(held[5:8])
        if len(held) >= need:
            lines.append(held)
            held = ""
    for i, line in enumerate(lines[:95]):
        pairs = line[8:]
        left, right = ord(pairs[0]) - 82, ord(pairs[1]) - 82
        strokes, stroke = [], []
        for j in range(2, len(pairs) - 1, 2):
            if pairs[j:j + 2] == " R":
                strokes.append(stroke)
                stroke = []
            else:
                stroke.append(((ord(pairs[j]) - 82 - left) / 21, (ord(pairs[j + 1]) - 82 + 12) / 21))
        strokes.append(stroke)
        glyphs[chr(32 + i)] = ((right - left) / 21, [s for s in strokes if s])
    return glyphs


def arc(cx, cy, rx, ry, a0, a1, n=14):
    """From angle a0 to a1, degrees, 0 to the right, growing clockwise on the page."""
    return [(cx + rx * math.cos(math.radians(a0 + (a1 - a0) * i / n)), cy + ry * math.sin(math.radians(a0 + (a1 - a0) * i / n)))
            for i in range(n + 1)]


def own_figures(r):
    """The ten figures as one hand writes them: its habits are drawn once for each hand."""
    w = r.uniform(0.5, 0.72)
    h = w / 2
    u = lambda a, b: r.uniform(a, b)
    out = {}
    out["0"] = r.choice([[arc(h, .5, h, .5, -90, 270, 24)], [arc(h, .5, h * .85, .5, -100, 265, 24)]])
    out["1"] = r.choice([[[(h, 0), (h, 1)]], [[(h * .4, u(.1, .3)), (h, 0), (h, 1)]],
                         [[(h * .4, u(.1, .3)), (h, 0), (h, 1)], [(h * .4, 1), (h * 1.6, 1)]]])
    t = u(.24, .3)
    out["2"] = r.choice([[arc(h, t, h * .95, t, -160, 30) + [(0, 1), (w, 1)]], [arc(h, t, h * .95, t, -180, 40) + [(0, u(.9, 1)), (w * .5, u(.92, 1)), (w, 1)]],
                         [arc(h, t, h * .9, t, -170, 60) + arc(h * .4, .9, h * .4, .1, 270, 0, 8)[::-1] + [(w, 1)]]])
    m = u(.4, .5)
    out["3"] = r.choice([[arc(h, m / 2, h * .85, m / 2, -160, 90) + arc(h, (1 + m) / 2, h, (1 - m) / 2, -90, 160)],
                         [[(w * .05, 0), (w * .92, 0), (h * .8, m)] + arc(h * .85, (1 + m) / 2, h, (1 - m) / 2, -80, 150)],
                         [arc(h, m / 2, h * .85, m / 2, -150, 80), arc(h, (1 + m) / 2, h, (1 - m) / 2, -80, 150)]])
    f = u(.62, .75)
    out["4"] = r.choice([[[(w * .72, 1), (w * .72, 0), (0, f), (w, f)]], [[(w * .25, 0), (0, f), (w, f)], [(w * .7, u(.15, .4)), (w * .7, 1)]],
                         [[(w * .6, 0), (0, f), (w, f)], [(w * .68, u(0, .3)), (w * .68, 1)]], [[(w * .08, 0), (w * .08, f), (w, f)], [(w * .75, 0), (w * .75, 1)]]])
    b = u(.38, .46)
    out["5"] = r.choice([[[(w * .92, 0), (w * .15, 0), (w * .08, b)] + arc(h, (1 + b) / 2 - .02, h, (1 - b) / 2 + .02, -140, 150)],
                         [[(w * .15, 0), (w * .08, b)] + arc(h, (1 + b) / 2 - .02, h, (1 - b) / 2 + .02, -140, 150), [(w * .15, 0), (w, u(-.03, .03))]]])
    c = u(.4, .5)
    out["6"] = r.choice([[arc(w * 1.05, .62, w, .62, -95, -185) + arc(h, (1 + c) / 2, h, (1 - c) / 2, 180, -180, 22)],
                         [[(w * .75, 0), (w * .2, .45)] + arc(h, (1 + c) / 2, h * .95, (1 - c) / 2, 190, -170, 22)],
                         [arc(h, .5, h, .5, -50, -180) + arc(h, (1 + c) / 2, h, (1 - c) / 2, 180, -180, 22)]])
    out["7"] = r.choice([[[(0, 0), (w, 0), (w * .35, 1)]], [[(0, u(.05, .15)), (0, 0), (w, 0), (w * .3, 1)]],
                         [[(0, 0), (w, 0)] + arc(w * 1.2, 1, w * .85, .95, 250, 180, 8)], [[(0, 0), (w, 0), (w * .35, 1)], [(w * .3, .5), (w * .85, .5)]]])
    e = u(.42, .5)
    out["8"] = r.choice([[arc(h, e / 2, h * .85, e / 2, 90, 450, 20), arc(h, (1 + e) / 2, h, (1 - e) / 2, -90, 270, 20)],
                         [arc(h, e / 2, h * .85, e / 2, -30, -270, 14) + arc(h, (1 + e) / 2, h, (1 - e) / 2, -90, 250, 18) + [(w * .85, .12)]]])
    g = 1 - c
    out["9"] = r.choice([[arc(h, g / 2, h, g / 2, 0, 360, 20) + [(w, g / 2), (w * u(.5, .95), 1)]],
                         [arc(h, g / 2, h, g / 2, -10, -370, 20) + arc(-w * .05, .38, w * 1.05, .62, 0, 85, 10)],
                         [arc(h, g / 2, h, g / 2, 0, 360, 20) + [(w, g / 2)] + arc(h, .5, h, .5, 0, 130, 10)]])
    return {k: (w if k != "1" or r.random() < .5 else w * .6, v) for k, v in out.items()}


SIGNS = {
    "Ø": (0.8, [arc(.4, .5, .36, .38, 0, 360, 24), [(.06, 1.02), (.74, -.02)]]),
    "°": (0.34, [arc(.17, .14, .14, .14, 0, 360, 16)]),
    "±": (0.6, [[(.3, .25), (.3, .72)], [(.06, .48), (.54, .48)], [(.06, .86), (.54, .86)]]),
    "×": (0.6, [[(.08, .32), (.52, .8)], [(.52, .32), (.08, .8)]]),
    "'": (0.2, [[(.13, -.03), (.06, .3)]]),
    '"': (0.36, [[(.13, -.03), (.06, .3)], [(.3, -.03), (.23, .3)]]),
    ".": (0.25, [[(.1, .97), (.13, .99)]]),
    ",": (0.25, [[(.14, .95), (.06, 1.14)]]),
    "-": (0.6, [[(.08, .55), (.52, .55)]]),
    "/": (0.5, [[(.02, 1.08), (.48, -.08)]]),
}
