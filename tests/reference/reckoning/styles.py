"""The blanks of the sample's styles, each drawn by hand from what the library says of it: not by reading the library.

`B L H` are inside, `t` is the board's caliper; x runs with the web and y across it, along the flutes. All mm.
"""

from decimal import Decimal

from drawing import Blank, Drawing, box


class Piece:
    """One blank of a box: how many of it a box needs, and the kinds of machine that make it, stage by stage."""

    def __init__(self, name, count, blank, *stages):
        self.name, self.count, self.blank, self.stages = name, count, blank, stages


def slotted(a, l, b, body, above, below):
    """Four panels and their joint, with a row of flaps above and below, or below alone: the everyday box."""
    d = Drawing()
    d.cell("tab", box(Decimal(0), above, a["tab"], body))
    x, last = a["tab"], "tab"
    widths = [l + a["panel"], b + a["panel"], l + a["panel"], b + a["panel"] - a["joint"]]
    for n, width in enumerate(widths):
        panel = f"p{n}"
        d.cell(panel, box(x, above, width, body), on=last)
        # Half of each slot comes off the flaps beside it; the outer edges of the row have no slot.
        left = x + (a["slot"] / 2 if n > 0 else 0)
        right = x + width - (a["slot"] / 2 if n < 3 else 0)
        if above:
            d.cell(f"f{n}", box(left, Decimal(0), right - left, above), on=panel)
        d.cell(f"g{n}", box(left, above + body, right - left, below), on=panel)
        x, last = x + width, panel
    d.join("tab", "p0")
    return d.figures()


def style_0201(a, t, m, L, B, H):
    flap = B / 2 + a["flap"]
    blank = slotted(a, L, B, H + a["depth"], flap, flap)
    # The closed form of the same blank: three slots on either side, and nothing but the body beside the tab.
    closed = blank.length * blank.width - 2 * a["tab"] * flap - 6 * a["slot"] * flap
    assert abs(blank.area - closed) < Decimal("1e-30"), "the drawing of 0201 is not its formula"
    return [Piece("", 1, blank, ["folder-gluer"])]


def style_0203(a, t, m, L, B, H):
    flap = B + a["flap"] - m.get("clear", Decimal(3))
    return [Piece("", 1, slotted(a, L, B, H + a["depth"], flap, flap), ["folder-gluer"])]


def style_0215(a, t, m, L, B, H):
    tuck, l, b, h = min(Decimal(60), H / 2), L + 2 * t, B + 2 * t, H + 3 * t
    d = Drawing()
    q = min(Decimal(10), h / 8)
    tab = a["tab"]
    d.cell("tab", [(Decimal(0), q), (tab, Decimal(0)), (tab, h), (Decimal(0), h - q)])
    x1, x2, x3, x4 = tab, tab + l, tab + l + b, tab + 2 * l + b
    narrow = b - a["joint"]
    panels = (("p1", x1, l, "tab"), ("p2", x2, b, "p1"), ("p3", x3, l, "p2"), ("p4", x4, narrow, "p3"))
    for name, x, width, left in panels:
        d.cell(name, box(x, Decimal(0), width, h), on=left)
    d.join("tab", "p1")
    lid = b - t
    d.cell("lid", box(x1 + t / 2, -lid, l - t, lid), on="p1")
    left, right = x1 + t / 2, x1 + l - t / 2
    d.cell("tuck", [(left, -lid), (left + 8, -lid - tuck), (right - 8, -lid - tuck), (right, -lid)], on="lid")
    ear = min(b / 2, l / 2) - 1
    for name, panel, x, width, first, second in (("e2", "p2", x2, b, 4, 12), ("e4", "p4", x4, narrow, 12, 4)):
        left, right = x + t, x + width - t
        d.cell(name, [(left, Decimal(0)), (left + first, -ear), (right - second, -ear), (right, Decimal(0))], on=panel)
    bottom_flaps(d, t, l, b, h, narrow, (x1, x2, x3, x4))
    return [Piece("", 1, d.figures(), ["die-cutter"], ["folder-gluer"])]


def bottom_flaps(d, t, l, b, h, narrow, lefts):
    """The four flaps of 0215 that are pushed into each other. Corners: share of the flap's width, mm down."""
    deep, side, reach = Decimal("0.7") * b, min(Decimal("0.7") * b, l / 2 - 1), b / 2 + 15
    notch = deep - b / 5
    slope = Decimal("0.24") * l / (l - 2 * t)
    shapes = (
        [(0, 0), (1, 0), (1, deep), (".75", deep), (".7", notch), (".3", notch), (".25", deep), (0, deep)],
        [(0, 0), (1, 0), (1, side / 2), (".5", side), (0, side)],
        [(0, 0), (1, 0), (1 - slope, reach), (slope, reach)],
        [(0, 0), (1, 0), (1, side), (".5", side), (0, side / 2)],
    )
    for n, (shape, width) in enumerate(zip(shapes, (l, b, l, narrow))):
        left, w = lefts[n] + t, width - 2 * t
        d.cell(f"g{n + 1}", [(left + Decimal(u) * w, h + v) for u, v in shape], on=f"p{n + 1}")


def style_0427(a, t, m, L, B, H):
    l, b, h = L + 7 * t, B + 2 * t, H + t
    end, tuck, zero = h - t, min(Decimal(50), H * Decimal("0.8")), Decimal(0)
    corner, ear = min(end, b / 2) - 2, min(end, Decimal(40))
    d = Drawing()
    d.cell("base", box(zero, zero, l, b))
    for x in (Decimal("1.5") * t, l - Decimal("2.5") * t):
        d.hole(box(x, b * Decimal("0.34"), t, b * Decimal("0.32")))
    d.cell("back", box(t, -h, l - 2 * t, h), on="base")
    d.cell("front", box(t, b, l - 2 * t, end), on="base")
    top = -h - (b - t)
    d.cell("lid", box(3 * t, top, l - 6 * t, b - t), on="back")
    near, far = 4 * t, l - 4 * t
    d.cell("tuck", [(near, top), (near + 6, top - tuck), (far - 6, top - tuck), (far, top)], on="lid")
    for side, turn in (("left", lambda x: x), ("right", lambda x: l - x)):
        ends_of_0427(d, side, turn, t, b, h, end, corner, ear, top)
    return [Piece("", 1, d.figures(), ["die-cutter"])]


def ends_of_0427(d, side, turn, t, b, h, end, corner, ear, top):
    """What hangs left of base, back, front and lid; `turn` mirrors it to the right."""

    def cell(name, on, corners):
        d.cell(f"{name} {side}", [(turn(x), y) for x, y in corners], on=on)

    zero, half = Decimal(0), t / 2
    cell("end", "base", [(-end, zero), (zero, zero), (zero, b), (-end, b)])
    fold, inner = -end - 2 * t, -end - 2 * t - (end - 3 * half)
    cell("roll", f"end {side}", [(fold, half), (-end, half), (-end, b - half), (fold, b - half)])
    low, w = 3 * half, b - 3 * t
    tongue = [low + Decimal(share) * w for share in ("0.35", "0.65")]
    tip = inner - 3 * half
    upper = [(fold, low), (fold, low + w), (inner, low + w), (inner, tongue[1])]
    lower = [(tip, tongue[1]), (tip, tongue[0]), (inner, tongue[0]), (inner, low)]
    cell("inner", f"roll {side}", upper + lower)
    reach, high, low = t - corner, -h + 3 * half, b + end - 3 * half
    cell("back tab", "back", [(t, -half), (t, high), (reach, high + 4), (reach, -half)])
    cell("front tab", "front", [(t, b + half), (t, low), (reach, low - 4), (reach, b + half)])
    low, high = top + 2 * t, -h - 2 * t
    cell("ear", "lid", [(3 * t, low), (3 * t, high), (3 * t - ear, high - 8), (3 * t - ear, low + 8)])


def style_0320(a, t, m, L, B, H):
    deep, play = m.get("deep", H), m.get("play", Decimal(3))

    def half(l, b, h):
        return slotted(a, l, b, h + a["depth"] / 2, Decimal(0), b / 2 + a["flap"])

    lid = half(L + 3 * t + 2 * play, B + 2 * t + 2 * play, deep)
    return [Piece("body", 1, half(L, B, H), ["folder-gluer"]), Piece("lid", 1, lid, ["folder-gluer"])]


def strip(length, height, slots, t):
    """A strip with slots from one edge to a millimetre beyond its middle."""
    width, deep = t + 1, height / 2 + 1
    cut = 2 * (length + height) + 2 * slots * deep
    return Blank(length, height, length * height - slots * width * deep, cut=cut)


def style_0933(a, t, m, L, B, H):
    along_l, along_b = m.get("along_L", Decimal(4)), m.get("along_B", Decimal(3))
    play, height = m.get("play", Decimal(1)), H - m.get("below", Decimal(2))
    return [
        Piece("long", along_b - 1, strip(L - 2 * play, height, along_l - 1, t), ["die-cutter"]),
        Piece("short", along_l - 1, strip(B - 2 * play, height, along_b - 1, t), ["die-cutter"]),
    ]


def sheet(L, B, flutes):
    length, width = (L, B) if flutes == "along B" else (B, L)
    return Blank(length, width, length * width, cut=2 * (length + width))


SLOTTED_OR_CUT = {
    "0201": style_0201,
    "0203": style_0203,
    "0215": style_0215,
    "0320": style_0320,
    "0427": style_0427,
    "0933": style_0933,
}


def pieces_of(enquiry, board):
    """The blanks that one box of an enquiry is made of."""
    if enquiry.style == "outline":
        return [Piece("", 1, Blank(*enquiry.outline), ["die-cutter"])]
    L, B, H = enquiry.inside
    if enquiry.style == "0110":
        return [Piece("", 1, sheet(L, B, enquiry.flutes))]
    if enquiry.style == "0900":
        return [Piece("", 1, sheet(L, B, enquiry.flutes), ["slitter", "die-cutter"])]
    return SLOTTED_OR_CUT[enquiry.style](board.allowances, board.caliper, enquiry.measures, L, B, H)
