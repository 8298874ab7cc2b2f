"""The plant's files as numbers: what papers, flutes, boards, machines and models say, in decimals of sixty digits.

A value is a bare number in the file's usual unit, or carries its own.
"""

from decimal import Decimal, getcontext
from pathlib import Path

import yaml

getcontext().prec = 60

POUND = Decimal("0.45359237")  # kg
FOOT = Decimal("0.3048")  # m

# How much of the usual unit one of another is.
LENGTH = {"mm": Decimal(1), "cm": Decimal(10), "in": Decimal("25.4")}  # mm
GRAMMAGE = {"g/m2": Decimal(1), "lb/MSF": POUND * 1000 / (1000 * FOOT * FOOT)}  # g/m2
ROAD = {"km": Decimal(1), "miles": Decimal("1.609344")}  # km
PLAIN = {}


def number(text, units=PLAIN):
    """A number in the usual unit: "400", "16 in", "15 1/4 in"."""
    words = text.split()
    factor = units[words.pop()] if words[-1] in units else Decimal(1)
    total = Decimal(0)
    for word in words:
        above, _, below = word.partition("/")
        total += Decimal(above) / Decimal(below or 1)
    return total * factor


def read(file):
    # Every scalar stays a text: "0201" is no number, and no decimal passes through a binary one.
    return yaml.load(Path(file).read_text(encoding="utf-8"), Loader=yaml.BaseLoader)


class Plant:
    def __init__(self, folder):
        folder = Path(folder)
        self.papers = read(folder / "papers.yaml")["papers"]
        flutes = read(folder / "flutes.yaml")
        self.flutes, self.allowances = flutes["flutes"], flutes["allowances"]
        self.boards = read(folder / "boards.yaml")["boards"]
        machines = read(folder / "machines.yaml")
        self.corrugators, self.converters = machines["corrugators"], machines["converters"]
        self.dispatch = machines["dispatch"]
        self.models = {}
        for entry in read(folder / "plugins.yaml")["plugins"]:
            self.models.update(entry)


def in_force(entries, day, key):
    """Days as texts stand in their order. The last price from on or before the day counts."""
    given = [entry for entry in entries if entry["from"] <= day]
    return number(max(given, key=lambda entry: entry["from"])[key])


class Sheets:
    """A board that is bought as sheets, in the place of its papers: it is priced by the square metre."""

    take_up, adhesive, kind, moisture = Decimal(1), Decimal(0), "bought", Decimal(0)

    def __init__(self, given, day):
        self.grammage = number(given["grammage"], GRAMMAGE)
        self.per_m2 = in_force(given["price"], day, "per_m2")


class Ply:
    """One paper of a board."""

    def __init__(self, plant, paper, day, take_up, adhesive, kind):
        given = plant.papers[paper]
        self.paper, self.kind = paper, kind
        self.grammage = number(given["grammage"], GRAMMAGE)
        self.moisture = number(given["moisture"])
        self.rolls = [number(width, LENGTH) for width in given["roll_widths"]]
        self.take_up, self.adhesive = take_up, adhesive
        self.price = in_force(given["price"], day, "per_tonne") / 1000


class Board:
    """Plies, grammage, caliper, and the allowances of the board's flutes, outside first."""

    def __init__(self, plant, code, day):
        given = plant.boards[code]
        self.code, self.plies, flutes = code, [], []
        self.bought = given.get("bought")
        if self.bought:
            self.plies, flutes = [Sheets(self.bought, day)], self.bought["flute"].split("+")
            given = {"plies": [], "caliper": self.bought["caliper"]}
        entries = given["plies"]
        self.caliper = Decimal(0)
        for place, entry in enumerate(entries):
            if isinstance(entry, str):
                ply = Ply(plant, entry, day, Decimal(1), Decimal(0), "liner")
                self.caliper += ply.grammage / 700
            else:
                flute = plant.flutes[entry["flute"]]
                lines = flute["adhesive"]
                # A medium with no liner on its second side carries the single-facer's line alone.
                closed = place + 1 < len(entries)
                adhesive = number(lines["single_facer"]) + (number(lines["double_backer"]) if closed else 0)
                ply = Ply(plant, entry["paper"], day, number(flute["take_up"]), adhesive, "medium")
                self.caliper += number(flute["height"], LENGTH)
                flutes.append(entry["flute"])
            self.plies.append(ply)
        if "caliper" in given:
            self.caliper = number(given["caliper"], LENGTH)
        self.media = len(flutes)
        self.adhesive = sum(ply.adhesive for ply in self.plies)
        self.grammage = sum(ply.grammage * ply.take_up for ply in self.plies) + self.adhesive
        self.rolls = [] if self.bought else sorted(set.intersection(*(set(ply.rolls) for ply in self.plies)))
        self.allowances = {
            name: number(value, LENGTH) for name, value in plant.allowances.get("+".join(flutes), {}).items()
        }
