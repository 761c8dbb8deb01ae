"""What is written on drawings: figures of every kind, words beside them, and characters at random.

A text is a list of parts: ('t', text), ('f', over, under) for a stacked fraction, ('d', over, under) for one with a
slanted bar, ('s', over, under) for a stacked pair without a bar (limits of a tolerance).
"""

WORDS = """HOLES HOLE DIA DIA. RAD RAD. DRILL DRILLED REAM REAMED BORE BORED TAP TAPPED TURN FINISH FIN. FACE CSK CBORE SPOT
DEEP THICK THK PLATE PL. SHEET STEEL BRASS IRON WROUGHT CAST C.I. W.I. TIN COPPER ZINC LEAD WOOD OAK PINE TYP TYP. REQ'D
REQD. OFF EACH SIDE BOTH ENDS TOP BOTTOM FRONT BACK LEFT RIGHT INSIDE OUTSIDE O.D. I.D. O.D I.D C.C. C.TO.C. C-C CRS CTRS
CENTERS CENTRES APART EQUAL EQ. SPACES PITCH P.C.D. B.C. BOLT BOLTS NUT RIVET RIVETS SCREW SCREWS WASHER PIN KEY KEYWAY
GAUGE GA GA. GAGE B.W.G. S.W.G. U.S.S. No. NO. NO # WIDE LONG HIGH LG. LENGTH WIDTH HEIGHT OVERALL SECTION DETAIL VIEW
PLAN ELEVATION SCALE FULL SIZE HALF QUARTER INCH INCHES FEET FOOT FT FT. IN IN. MM mm cm m in ft dia holes rad deep thick
drill gauge tap typ each not to scale for see note as shown ABOUT APPROX MAX MIN MIN. MAX. REF SQ. SQUARE HEX ROUND FLAT
BAR ROD TUBE PIPE ANGLE CHANNEL FLANGE RING HOOD BASE DRUM SHELL COLLAR COVER DOOR VALVE STEM SEAT BODY CAP RIB WEB BOSS
PAD LUG FOOT. ARM LEVER LINK SHAFT AXLE WHEEL GEAR TEETH WORM CAM BUSH BUSHING SLEEVE SPRING HANDLE KNOB CRANK SADDLE
THD THD. THDS. UNC UNF N.C. N.F. WHIT. STD. EXT. INT. L.H. R.H. TAPER PER SOLDER BRAZE WELD SEAM LAP BEND FLANGED EDGE
WIRED CRIMP BEAD SWAGE COUNTERSUNK CORED FILLET FILLETS UNLESS NOTED MATERIAL DRAWN TRACED CHECKED DATE SHEET WITH FROM
AND THE OF BY AT ON 1/2" ±""".split()

DENOMINATORS = [2, 4, 8, 16, 32, 64]


def fraction(r):
    if r.random() < 0.15:
        return str(r.randint(1, 99)), str(r.randint(2, 99))
    d = r.choices(DENOMINATORS, [3, 5, 7, 8, 5, 2])[0]
    return str(r.randrange(1, d, 2)), str(d)


def fraction_parts(r, spell=None):
    over, under = fraction(r)
    kind = spell or r.choices(["f", "i", "d"], [5, 4, 2])[0]
    return [("t", f"{over}/{under}")] if kind == "i" else [(kind, over, under)]


def whole(r):
    return str(r.choice([r.randint(1, 12), r.randint(1, 48), r.randint(1, 99), r.randint(1, 999), r.randint(0, 9)]))


def mark(r):
    return r.choices(['"', "", "in", " in."], [6, 5, 0.4, 0.3])[0]


def inches(r):
    kind = r.random()
    if kind < 0.55:
        join = [("t", r.choices(["", "-", " "], [6, 2, 2])[0])]
        parts = [("t", whole(r))] + join + fraction_parts(r)
        # An inline fraction must stand apart from the whole number before it.
        if parts[-1][0] == "t" and parts[1][1] == "":
            parts[1] = ("t", r.choice([" ", "-"]))
        return parts + [("t", mark(r))]
    if kind < 0.75:
        return fraction_parts(r) + [("t", mark(r))]
    return [("t", whole(r) + mark(r))]


def feet(r):
    join = r.choices(["-", " ", "", " - "], [6, 3, 2, 2])[0]
    after = r.choices([inches(r), [("t", str(r.randint(0, 11)) + mark(r))], [("t", "0" + mark(r))]], [5, 3, 1])[0]
    unit = r.choices(["'", " FT.", " ft", "FT "], [12, 1, 1, 0.5])[0]
    if r.random() < 0.12:
        return [("t", whole(r) + unit)]
    return [("t", str(r.randint(0, 60)) + unit + join)] + after


def decimal(r):
    point = r.choices([".", ","], [5, 1.6])[0]
    places = r.choice([1, 1, 2, 2, 3, 3, 4])
    tail = "".join(str(r.randint(0, 9)) for _ in range(places))
    lead = r.choices(["", "0", whole(r)], [2, 1.5, 6])[0]
    unit = r.choices(["", '"', " mm", "mm", " cm", " in"], [6, 3, 2, 1, 0.6, 0.3])[0]
    return [("t", lead + point + tail + unit)]


def size(r):
    return r.choices([inches, feet, decimal], [5, 2, 3])[0](r)


def round_size(r):
    kind = r.random()
    if kind < 0.25:
        return [("t", r.choice(["Ø", "Ø ", "ø"]))] + size(r)
    if kind < 0.45:
        return [("t", r.choice(["R", "R ", "R.", "RAD. ", "r "]))] + size(r)
    if kind < 0.65:
        return size(r) + [("t", r.choice([" R", "R", " RAD", " RAD.", " R.", " rad."]))]
    return size(r) + [("t", r.choice([" DIA", " DIA.", " dia.", " DIAM.", " D", " Dia."]))]


def holes(r):
    n = str(r.randint(2, 24))
    kind = r.random()
    if kind < 0.3:
        return [("t", n + r.choice([" HOLES", " holes", " Holes"]))] + ([("t", " ")] + size(r) if r.random() < 0.6 else [])
    if kind < 0.6:
        return [("t", r.choice(["DRILL ", "Drill ", "DR. ", "TAP ", "REAM ", "BORE "]))] + size(r)
    if kind < 0.8:
        return size(r) + [("t", r.choice([" DRILL", " drill", " TAP", " REAM"]) + (f" {n} HOLES" if r.random() < 0.5 else ""))]
    return fraction_parts(r, r.choice(["i", "f"])) + [("t", f"-{r.choice([8, 10, 11, 12, 13, 14, 16, 18, 20, 24, 28, 32])} "
            + r.choice(["UNC", "NC", "TAP", "THD.", "WHIT.", "UNF", ""]))]


def angle(r):
    text = f"{r.randint(0, 180)}°"
    if r.random() < 0.5:
        text += r.choice(["", " "]) + f"{r.randint(0, 59)}'"
        if r.random() < 0.2:
            text += r.choice(["", " "]) + f"{r.randint(0, 59)}\""
    elif r.random() < 0.2:
        text = f"{r.randint(0, 90)}.{r.randint(0, 9)}°"
    return [("t", text)]


def gauge(r):
    n = r.choice([r.randint(0, 30), r.randint(8, 26)])
    return [("t", r.choice([f"No. {n} GA.", f"No {n} GA", f"NO. {n} GAUGE", f"{n} GA", f"#{n} GA.", f"{n} ga.", f"No. {n}",
                            f"{n} B.W.G.", f"No. {n} B.W.G.", f"{n} S.W.G.", f"{n} GAUGE", f"No.{n} U.S.S."]))]


def tolerance(r):
    kind = r.random()
    if kind < 0.45:
        return (size(r) if r.random() < 0.7 else []) + [("t", r.choice(["±", " ± ", " ±"]))] + r.choice([fraction_parts, decimal])(r)
    def small():
        return r.choice(["0", "." + str(r.randint(1, 99)).zfill(r.choice([2, 3])), f"{r.choice([1, 3])}/{r.choice([32, 64])}", "1/16"])
    return (size(r) if r.random() < 0.7 else []) + [("s", r.choice("+±-") + small(), r.choice("-−+") + small())]


def words(r):
    text = " ".join(r.choice(WORDS) for _ in range(r.randint(1, 4)))
    return [("t", r.choice([text, text.upper(), text.lower(), text.title()]))]


def at_random(r):
    def some(pool, least, most):
        return "".join(r.choice(pool) for _ in range(r.randint(least, most)))
    kind = r.random()
    if kind < 0.45:
        return [("t", some("0123456789", 1, 10))]
    if kind < 0.6:
        return [("t", some("0123456789.,'\"/-°±+() ", 2, 10))]
    if kind < 0.8:
        return [("t", some("ABCDEFGHIJKLMNOPQRSTUVWXYZ", 2, 10))]
    if kind < 0.9:
        return [("t", some("abcdefghijklmnopqrstuvwxyz", 2, 10))]
    return [("t", some("0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ.,'\"/-Ø°±+()×#&:=@ ", 2, 10))]


def others(r):
    return r.choice([
        lambda: size(r) + [("t", r.choice([" C.C.", " C. TO C.", " TYP.", " TYP", " O.D.", " I.D.", " SQ.", " HEX", " THICK", " DEEP", " LONG"]))],
        lambda: [("t", f"{r.randint(1, 30)}" + r.choice([" × ", "x", " X ", "×"]))] + size(r),
        lambda: [("t", "(")] + size(r) + [("t", ")")],
        lambda: [("t", r.choice(["SCALE ", "Scale: "]))] + fraction_parts(r) + [("t", '"=1\'-0"')],
        lambda: [("t", f"{r.randint(1, 9)}:{r.randint(1, 50)}")],
        lambda: [("t", f"{r.choice('ABCDEFGHJKLMNP')}{r.choice(['', '-', '.'])}{r.randint(1, 9999)}")],
        lambda: [("t", str(r.randint(1880, 1950)))],
    ])()


def any_text(r):
    family = r.choices([inches, feet, decimal, round_size, holes, angle, gauge, tolerance, words, at_random, others],
                       [18, 9, 11, 8, 8, 8, 5, 7, 9, 12, 6])[0]
    return family(r)
