"""An enquiry answered: its pieces, each made the way that costs least, and the price."""

from decimal import ROUND_CEILING, Decimal

from costing import Costing, Settings, rounded
from layout import ways
from plant import LENGTH, Board, number, read
from styles import pieces_of

CENT = Decimal("0.01")


class Enquiry:
    def __init__(self, file):
        self.given = given = read(file)
        self.number, self.style = given["request"], given["style"]
        self.board, self.date = given["board"], given["date"]
        self.inside = self.outline = None
        if "inside" in given:
            self.inside = [number(given["inside"].get(side, "0"), LENGTH) for side in ("length", "width", "height")]
        if "outline" in given:
            outline = given["outline"]
            lengths = [number(outline[side], LENGTH) for side in ("length", "width")]
            self.outline = [*lengths, number(outline["area"]) * 10**6]
        self.measures = {name: number(value, LENGTH) for name, value in given.get("measures", {}).items()}
        self.flutes = given.get("flutes", "along L")
        self.quantities = [number(quantity) for quantity in given["quantities"]]
        self.margin, self.colours = number(given["margin"]), int(given.get("colours", "0"))
        self.route, self.extras = given.get("route"), given.get("extras", {})


def cheapest(plant, board, piece, found, quantity, enquiry, settings, leads, trim):
    """The least full cost of all ways. Of those that cost the same the first."""
    pieces = quantity * piece.count
    costings = [Costing(plant, board, way, pieces, enquiry.colours, settings, leads, trim) for way in found]
    return min(costings, key=lambda costing: costing.cost)


class Price:
    """Of an enquiry at one quantity: `costings` by piece, and what is printed of them together."""

    def __init__(self, quantity, costings, margin):
        self.quantity, self.costings, self.margin = quantity, costings, margin
        self.cost = sum(costing.cost for costing in costings)
        thousand = self.cost / quantity * 1000
        self.cost_per_thousand = rounded(thousand)
        self.price_per_thousand = rounded(thousand / (1 - margin), CENT)
        self.order_value = rounded(self.price_per_thousand * quantity / 1000, CENT)
        self.profit = self.order_value - self.cost
        self.recovery = -self.sum_of(lambda kind, behaviour: kind == "recovery")
        by_unit = self.sum_of(lambda kind, behaviour: behaviour == "per-unit")
        self.contribution_per_thousand = rounded(self.price_per_thousand - by_unit / quantity * 1000)
        self.per_run_cost = self.sum_of(lambda kind, behaviour: behaviour == "per-run" and kind != "recovery")
        self.price_less_cash_per_thousand = rounded(
            self.price_per_thousand - (by_unit + self.per_run_cost) / quantity * 1000
        )
        each = self.price_per_thousand / 1000 - by_unit / quantity
        # The least whole quantity whose boxes bring back what a run costs.
        runs = (self.per_run_cost / each).to_integral_value(ROUND_CEILING) if each > 0 else None
        self.break_even_quantity = None if runs is None else max(Decimal(1), runs)

    def sum_of(self, counts):
        lines = [line for costing in self.costings for line in costing.lines.values()]
        return sum((line[-1] for line in lines if counts(line[0], line[1])), Decimal(0))


def answer(plant, enquiry, day=None, trim=None):
    """The prices of an enquiry, in the order of its quantities: of its day, or of another; alone, or with a share."""
    board = Board(plant, enquiry.board, day or enquiry.date)
    settings = Settings(plant, enquiry.extras)
    pieces = pieces_of(enquiry, board)
    found = [ways(plant, board, piece.blank, piece.stages, enquiry.route, enquiry.colours) for piece in pieces]
    return [
        Price(
            quantity,
            [
                cheapest(plant, board, piece, of_piece, quantity, enquiry, settings, place == 0, trim)
                for place, (piece, of_piece) in enumerate(zip(pieces, found))
            ],
            enquiry.margin,
        )
        for quantity in enquiry.quantities
    ]
