"""Every way to make a piece: routes of converters, boxes on a sheet, sheets on a roll."""

from decimal import Decimal
from itertools import product
from math import ceil, floor

from plant import LENGTH, number

HAIR = Decimal("1e-9")
PARTING_KINDS = ("die-cutter", "slitter")


def whole_up(x):
    return Decimal(ceil(x - HAIR))


def whole_down(x):
    return Decimal(floor(x + HAIR))


class Way:
    """One candidate. Lengths mm, areas m2. `parting` is the step after which blanks are counted, not sheets."""

    def __init__(self, corrugator, route, parting, roll, outs, nx, ny, chop, slit, blank):
        self.corrugator, self.route, self.parting = corrugator, route, parting
        self.roll, self.outs, self.nx, self.ny, self.chop, self.slit = roll, outs, nx, ny, chop, slit
        self.trim, self.ups = roll - outs * slit, nx * ny
        self.blank = blank
        self.box_area = blank.area / 10**6
        self.sheet_area = chop * slit / 10**6


def lies_in(value, span):
    low, high = (number(bound, LENGTH) for bound in span)
    return low <= value <= high


def colours_of(machine):
    return number(machine.get("colours", "0"))


def routes(plant, stages, given, colours):
    """Codes of converters, in the order in which ties are decided."""
    if given is not None:
        return [given]
    ways = product(*[[code for code, m in plant.converters.items() if m["kind"] in kinds] for kinds in stages])
    printers = [
        code for code, m in plant.converters.items() if m["kind"] == "printer" and colours_of(m) >= colours
    ]
    result = []
    for way in ways:
        prints = colours == 0 or any(colours_of(plant.converters[code]) >= colours for code in way)
        result += [list(way)] if prints else [[printer, *way] for printer in printers]
    return result


def parting_step(plant, route):
    for step, code in enumerate(route, 1):
        if plant.converters[code]["kind"] in PARTING_KINDS:
            return step
    return len(route)


def sheets(plant, route, parting, blank):
    """(nx, ny, chop, slit) of every sheet that the parting machine may hold."""
    machine = plant.converters[route[parting - 1]] if route else {}
    if machine.get("kind") not in PARTING_KINDS:
        return [(1, 1, blank.length, blank.width)]
    most = int(machine.get("ups_max", "1"))
    between, edge = (number(machine.get(key, "0"), LENGTH) for key in ("between", "edge"))
    return [
        (nx, ny, nx * blank.length + (nx - 1) * between + 2 * edge, ny * blank.width + (ny - 1) * between + 2 * edge)
        for nx in range(1, most + 1)
        for ny in range(1, most // nx + 1)
    ]


def fits(plant, route, parting, chop, slit, blank):
    for step, code in enumerate(route, 1):
        span = plant.converters[code]["sheet"]
        length, width = (chop, slit) if step <= parting else (blank.length, blank.width)
        if not (lies_in(length, span["length"]) and lies_in(width, span["width"])):
            return False
    return True


def prints(plant, route, colours):
    return colours == 0 or any(colours_of(plant.converters[code]) >= colours for code in route)


def rolls_for(plant, board, maker, chop, slit):
    """(roll, outs) of every web that a maker cuts a sheet from. A sheet that is bought is as wide as its own roll."""
    if board.bought:
        return [(slit, Decimal(1))]
    web = plant.corrugators[maker]
    if not (lies_in(chop, web["chop"]) and lies_in(slit, web["slit"])):
        return []
    most, least_trim = number(web["outs_max"]), number(web["trim_min"], LENGTH)
    outs = [(roll, min(most, whole_down((roll - least_trim) / slit))) for roll in board.rolls]
    return [(roll, count) for roll, count in outs if lies_in(roll, web["roll_width"]) and count >= 1]


def ways(plant, board, blank, stages, given_route, colours):
    """Every candidate of a blank; of two that cost the same the earlier counts."""
    result = []
    for maker in [board.bought["from"]] if board.bought else plant.corrugators:
        for route in routes(plant, stages, given_route, colours):
            parting = parting_step(plant, route)
            for nx, ny, chop, slit in sheets(plant, route, parting, blank):
                if not (fits(plant, route, parting, chop, slit, blank) and prints(plant, route, colours)):
                    continue
                for roll, outs in rolls_for(plant, board, maker, chop, slit):
                    result.append(Way(maker, route, parting, roll, outs, nx, ny, chop, slit, blank))
    # A sort keeps the order of the files among those that are alike.
    return sorted(result, key=lambda way: (way.roll, way.ups, way.nx))
