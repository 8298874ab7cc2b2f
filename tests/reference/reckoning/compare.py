"""The program's document held against what was reckoned here: money to the last digit, other figures to a hair."""

from decimal import Decimal

from costing import rounded

HAIR = Decimal("1e-12")  # of the figure; the program writes binary numbers in their shortest form


class Differences:
    def __init__(self):
        self.found, self.compared = [], 0

    def same(self, where, said, reckoned):
        self.compared += 1
        if said != reckoned:
            self.found.append(f"{where}: the program says {said}, reckoned {reckoned}")

    def close(self, where, said, reckoned, scale=None):
        """`scale`: what a figure is a small difference of."""
        self.compared += 1
        reckoned = Decimal(reckoned)
        if said is None or abs(Decimal(said) - reckoned) > HAIR * max(abs(reckoned), scale or Decimal("1e-9")):
            self.found.append(f"{where}: the program says {said}, reckoned {reckoned:.16g}")


def compare_price(where, said, price, differences):
    """What a quote of boxes and that of a set have alike."""
    for key in ("cost", "cost_per_thousand", "price_per_thousand", "contribution_per_thousand", "recovery",
                "order_value", "profit", "per_run_cost", "price_less_cash_per_thousand", "break_even_quantity"):
        differences.same(f"{where}: {key}", said.get(key), getattr(price, key))
    for rule in said.get("price_rules", []):
        differences.same(f"{where}: margin", rule["value"], price.margin)
        differences.same(f"{where}: price after the margin", rule["price_per_thousand"], price.price_per_thousand)
    waste = sum(rounded(money) for costing in price.costings for money in costing.waste_by_step())
    differences.same(f"{where}: waste_cost", said.get("waste_cost"), waste)
    compare_invoiced(where, said, price, differences)


def compare_invoiced(where, said, price, differences):
    """Tools that the price leaves out, and what they come to."""
    invoiced = {}
    for costing in price.costings:
        for name, worth in costing.invoiced.items():
            invoiced[name] = invoiced.get(name, Decimal(0)) + worth
    left_out = [entry for entry in said["not_in_price"] if entry["plugin"] == "tooling"]
    told = {f"{entry['line']}.invoiced": entry["amount"] for entry in left_out}
    for name, worth in invoiced.items():
        differences.same(f"{where}: {name}", told.get(name, Decimal(0)), rounded(worth))


def compare_way(where, said, way, differences):
    differences.same(f"{where}: corrugator", said["corrugator"], way.corrugator)
    differences.same(f"{where}: route", said["route"], way.route)
    for key, reckoned in (("roll_width_mm", way.roll), ("outs", way.outs), ("ups", way.ups), ("nx", way.nx),
                          ("ny", way.ny), ("chop_mm", way.chop), ("slit_mm", way.slit)):
        differences.close(f"{where}: {key}", said[key], reckoned)
    differences.close(f"{where}: trim_mm", said["trim_mm"], way.trim, scale=way.roll)
    blank = said["blank"]
    differences.close(f"{where}: blank length", blank["length_mm"], way.blank.length)
    differences.close(f"{where}: blank width", blank["width_mm"], way.blank.width)
    differences.close(f"{where}: blank area", blank["area_m2"], way.box_area)


def compare_masses(where, said, costing, differences):
    mass, product = said["mass_kg"], costing.quantity * costing.way.box_area * costing.board.grammage / 1000
    arrived = sum(costing.issued) + costing.adhesive
    for key, reckoned in (("issued", sum(costing.issued)), ("adhesive", costing.adhesive), ("product", product)):
        differences.close(f"{where}: mass of {key}", mass[key], reckoned)
    causes = {}
    for (_, cause), kg in costing.losses.items():
        causes[cause] = causes.get(cause, Decimal(0)) + kg
    for cause in sorted(causes.keys() | mass["loss"].keys()):
        said_kg = mass["loss"].get(cause, Decimal(0))
        differences.close(f"{where}: {cause}", said_kg, causes.get(cause, Decimal(0)), scale=arrived)
    # Reckoned here, the balance holds to the digits that are carried; what the program says must hold as well.
    assert abs(arrived - product - sum(causes.values())) < Decimal("1e-40") * arrived
    said_out = mass["product"] + sum(mass["loss"].values())
    differences.close(f"{where}: mass out", said_out, mass["issued"] + mass["adhesive"])


def compare_lines(where, said, costing, differences):
    lines = {}
    for line in said["lines"]:
        if line["amount"] != 0:
            lines[line["plugin"], line["line"], line["step"], line["ply"]] = line
    mine = {key: line for key, line in costing.lines.items() if line[-1] != 0}
    differences.same(f"{where}: lines", sorted(map(str, lines)), sorted(map(str, mine)))
    for key in lines.keys() & mine.keys():
        kind, behaviour, quantity, rate, amount = mine[key]
        name, line = f"{where}: {key[1]} at {key[2]}", lines[key]
        differences.same(f"{name}, class", (line["class"], line["behaviour"]), (kind, behaviour))
        differences.close(f"{name}, quantity", line["quantity"], quantity)
        differences.close(f"{name}, rate", line["rate"], rate)
        differences.same(f"{name}, amount", line["amount"], amount)
    differences.same(f"{where}: sum of the lines", sum(line["amount"] for line in said["lines"]), said["cost"])


def compare_run(where, said, costing, differences):
    """One piece at one quantity."""
    differences.same(f"{where}: quantity", said["quantity"], costing.quantity)
    compare_way(where, said, costing.way, differences)
    differences.close(f"{where}: board grammage", said["board_grammage"], costing.board.grammage)
    differences.close(f"{where}: web length", said["web_length_m"], costing.length)
    steps = costing.steps[: costing.last + 1]
    differences.same(f"{where}: good", said["good"], [step.good for step in steps])
    differences.same(f"{where}: fed", said["fed"], [None] + [step.fed for step in steps[1:]])
    compare_masses(where, said, costing, differences)
    compare_lines(where, said, costing, differences)
    differences.same(f"{where}: cost of the run", said["cost"], costing.cost)
    waste = [rounded(money) for money in costing.waste_by_step()]
    differences.same(f"{where}: waste by step", [step["cost"] for step in said["waste_by_step"]], waste)


def compare_enquiry(said, enquiry, prices, differences):
    differences.same(f"{enquiry.number}: request", said["request"], enquiry.number)
    differences.same(f"{enquiry.number}: quotes", len(said["quotes"]), len(prices))
    for place, (quote, price) in enumerate(zip(said["quotes"], prices)):
        where = f"{enquiry.number} at {price.quantity}"
        compare_price(where, quote, price, differences)
        runs = [piece["quotes"][place] for piece in said["pieces"]] if "pieces" in said else [quote]
        differences.same(f"{where}: pieces", len(runs), len(price.costings))
        for run, costing in zip(runs, price.costings):
            compare_run(where, run, costing, differences)
