"""The printed answer: every total is the sum of what is printed above it, every order value that of its price."""

import re
from decimal import Decimal

from answer import CENT
from costing import rounded

NUMBER = re.compile(r"-?\d{1,3}(?: \d{3})*(?:\.\d+)?|-?\d+(?:\.\d+)?")
RULE = re.compile(r"-{4,}")


def number_in(line, start, end):
    """What a column of a line holds; nothing where it is no number."""
    text = line[start:end].strip().removesuffix(" %")
    return Decimal(text.replace(" ", "")) if NUMBER.fullmatch(text) else None


def is_rule(line):
    return bool(line.strip()) and not set(line.strip()) - {"-", " "}


def columns_of(line):
    """Where the totals stand that a rule announces. A rule across the page is a heading's."""
    spans = [match.span() for match in RULE.finditer(line)] if is_rule(line) else []
    return [] if any(start == 0 for start, _ in spans) else spans


def parts_above(lines, at, span):
    """The numbers above a rule in its column, down to a line that has none or to the rule before."""
    parts = []
    for line in reversed(lines[:at]):
        value = None if is_rule(line) else number_in(line, *span)
        if value is None:
            break
        parts.append(value)
    return parts


def check_totals(text, differences):
    """Every rule under a column: the number below it is the sum of those above. Returns how many there were."""
    lines, count, subtotals = text.splitlines(), 0, []
    for at, line in enumerate(lines):
        if line and not line[0].isspace():
            subtotals = []
        for span in columns_of(line):
            total, parts = number_in(lines[at + 1], *span), parts_above(lines, at, span)
            # A single part that is a total itself: the total of all the totals of its table.
            if len(parts) == 1 and is_rule(lines[at - 2]):
                parts = [value for where, value in subtotals if where == span]
            else:
                subtotals.append((span, total))
            count += 1
            differences.same(f"line {at + 2} of the printed answer", total, sum(parts) if parts else None)
    return count


def numbers_of(line):
    """Of a row of a table: the numbers of its cells, which stand two spaces apart or more."""
    cells = re.split(r"\s{2,}", line.strip())
    return [Decimal(cell.replace(" ", "")) for cell in cells if NUMBER.fullmatch(cell)]


def check_ladder(lines, prices, differences):
    """`lines` begin with a table of prices; `prices`: those that it should have, in its order."""
    rows = [(line, numbers_of(line)) for line in lines]
    rows = [(line, numbers) for line, numbers in rows if len(numbers) >= 5][: len(prices)]
    differences.same("rows of a table of prices", len(rows), len(prices))
    for (line, numbers), price in zip(rows, prices):
        quantity, per_thousand, value, cost, profit = numbers[-5:]
        where = f"printed row '{line.strip()}'"
        differences.same(f"{where}: quantity", quantity, price.quantity)
        differences.same(f"{where}: price", per_thousand, price.price_per_thousand)
        differences.same(f"{where}: order value", value, rounded(per_thousand * quantity / 1000, CENT))
        differences.same(f"{where}: cost and profit", cost + profit, value)
        differences.same(f"{where}: cost", cost, rounded(price.cost, CENT))
