"""A blank as a person draws it: the corners of each cell in mm, and which cells hang together by a crease."""

from decimal import Decimal

SAME = Decimal("1e-30")  # mm; thirds are not exact in any number of digits


def box(x, y, width, height):
    return [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]


def sides(corners):
    return zip(corners, corners[1:] + corners[:1])


def area(corners):
    return abs(sum(ax * by - bx * ay for (ax, ay), (bx, by) in sides(corners))) / 2


def border(corners):
    return sum(((ax - bx) ** 2 + (ay - by) ** 2).sqrt() for (ax, ay), (bx, by) in sides(corners))


def shared(one, other):
    """How much of their borders two cells share, along the web or across it."""
    total = Decimal(0)
    for a, b in sides(one):
        for c, d in sides(other):
            for level, along in ((0, 1), (1, 0)):
                if max(abs(a[level] - corner[level]) for corner in (b, c, d)) < SAME:
                    low = max(min(a[along], b[along]), min(c[along], d[along]))
                    high = min(max(a[along], b[along]), max(c[along], d[along]))
                    total += max(high - low, Decimal(0))
    return total


class Drawing:
    def __init__(self):
        self.cells, self.holes = {}, []
        self.creased, self.joined = [], []

    def cell(self, name, corners, on=None):
        """A cell, and the one that it hangs on by a crease."""
        self.cells[name] = corners
        if on:
            self.creased.append((name, on))

    def join(self, name, on):
        """A cell that is glued, stitched or taped on another is held by the crease that it hangs on."""
        self.joined.append((name, on))

    def hole(self, corners):
        self.holes.append(corners)

    def crease_of(self, pairs):
        return sum((shared(self.cells[a], self.cells[b]) for a, b in pairs), Decimal(0))

    def figures(self):
        """Length, width, crease, cut and joint in mm, net area in mm2."""
        corners = [corner for cell in self.cells.values() for corner in cell]
        xs, ys = [x for x, _ in corners], [y for _, y in corners]
        names = list(self.cells)
        touching = self.crease_of([(a, b) for i, a in enumerate(names) for b in names[i + 1 :]])
        borders = sum(border(cell) for cell in [*self.cells.values(), *self.holes])
        return Blank(
            length=max(xs) - min(xs),
            width=max(ys) - min(ys),
            area=sum(area(cell) for cell in self.cells.values()) - sum(area(hole) for hole in self.holes),
            crease=self.crease_of(self.creased),
            # A side that two cells share is creased, or it is one cut and not two.
            cut=borders - touching - self.crease_of(self.creased),
            joint=self.crease_of(self.joined),
        )


class Blank:
    def __init__(self, length, width, area, crease=Decimal(0), cut=Decimal(0), joint=Decimal(0)):
        self.length, self.width, self.area = length, width, area
        self.crease, self.cut, self.joint = crease, cut, joint
