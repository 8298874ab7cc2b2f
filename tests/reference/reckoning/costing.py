"""One way at one quantity: the run, its masses, and every line that the models charge."""

from decimal import ROUND_HALF_UP, Decimal
from functools import partial

from layout import colours_of, whole_up
from plant import ROAD, number

GRAIN = Decimal("0.0001")
NUDGE = 1 + Decimal("2e-15")
JOINERS = ("folder-gluer", "stitcher", "hand")
# What a model's setting is where neither the plant nor the request gives it.
DEFAULTS = {
    "energy": {"c_fibre": "1.34", "c_water": "4.19", "t_in": "20", "t_bond": "95", "solids": "0.25",
               "evaporated_share": "0.6", "moisture_drop": "0.02", "h_evap": "2257", "boiler_efficiency": "0.82",
               "distribution_efficiency": "0.80", "baler_kwh_per_tonne": "25", "standing_heat": "0"},
    "consumables": {"coverage": "0", "joint_length": "0", "joint": "glue"},
    "tooling": {"plate_share": "1", "plate_boxes": "0", "rule_length": "0", "die_boxes": "0"},
    "delivery": {"distance": "0"},
}  # fmt: skip


def rounded(amount, grain=GRAIN):
    """Half away from zero."""
    return (amount * NUDGE).quantize(grain, rounding=ROUND_HALF_UP)


class Settings:
    def __init__(self, plant, extras):
        self.given = {
            model: {**DEFAULTS.get(model, {}), **of_plant, **extras.get(model, {})}
            for model, of_plant in plant.models.items()
        }

    def number(self, model, name, units=None):
        return number(self.given[model][name], units or {})

    def word(self, model, name):
        return self.given[model][name]


# Who delivers sheets runs no machine here.
NO_MACHINE = {"hourly": {"labour": "0", "fixed": "0"}, "order_change": {"minutes": "0", "metres": "0"}, "roll_loss": "0"}


class Step:
    """What one step of a route is and does: 0 the corrugator, then the converters, then dispatch."""

    def __init__(self, machine):
        hourly = machine["hourly"]
        self.labour, self.fixed = number(hourly["labour"]), number(hourly["fixed"])
        self.kind = machine.get("kind", "")
        self.power = number(machine.get("power", "0"))
        self.waste = number(machine.get("run_waste", "0"))
        self.colours = self.fed = self.good = self.hours = self.lost = self.area = Decimal(0)


class Costing:
    """`lines`: {(model, line, step, ply): (class, behaviour, quantity, rate, amount)}; `losses`: {(step, cause): kg}.

    `leads`: of a set, whether this is the piece that bears what is paid once. `trim`: the share of side trim and the
    order changes of an order that pays a share of its web; None of one that pays its own roll.
    """

    def __init__(self, plant, board, way, quantity, colours, settings, leads=True, trim=None):
        self.plant, self.board, self.way, self.quantity = plant, board, way, quantity
        used = way.outs * way.slit
        # Sheets that are bought have no trim to share.
        shared = None if board.bought else trim
        self.trim_share, self.changes = shared or ((way.roll - used) / way.roll, Decimal(1))
        self.web_share = used / (way.roll * (1 - self.trim_share))
        self.settings, self.leads = settings, leads
        self.lines, self.losses = {}, {}
        self.set_steps(colours)
        self.run()
        self.charge_web()
        for k in range(len(self.steps)):
            self.charge_step(k)
        self.charge_joint()
        self.charge_tools()
        self.charge_dispatch()
        self.cost = sum((line[-1] for line in self.lines.values()), Decimal(0))

    def set_steps(self, colours):
        way, plant = self.way, self.plant
        converters = [plant.converters[code] for code in way.route]
        bought = self.board.bought
        self.web = {**NO_MACHINE, "run_waste": bought["waste"]} if bought else plant.corrugators[way.corrugator]
        self.steps = [Step(machine) for machine in [self.web, *converters, plant.dispatch]]
        self.steps[0].minutes = number(self.web["order_change"]["minutes"]) * self.changes
        self.steps[-1].minutes = number(plant.dispatch["minutes"])
        self.last = len(converters)
        printed = False
        for k, machine in enumerate(converters, 1):
            step = self.steps[k]
            step.minutes = number(machine["setup"]["minutes"])
            step.setup_sheets = number(machine["setup"]["sheets"])
            step.speed = number(machine["speed"])
            step.area = way.sheet_area if k <= way.parting else way.box_area
            if colours > 0 and not printed and colours_of(machine) >= colours:
                step.colours, printed = Decimal(colours), True

    def lose_kg(self, k, cause, kg):
        self.losses[k, cause] = self.losses.get((k, cause), Decimal(0)) + kg
        self.steps[k].lost += kg

    def lose(self, k, cause, area):
        self.lose_kg(k, cause, area * self.board.grammage / 1000)

    def part(self, k, sheets, taken):
        """Where sheets become boxes: what lies between them, and boxes more than the next step takes."""
        way = self.way
        self.lose(k, "cut-out", sheets * (way.sheet_area - way.ups * way.box_area))
        self.lose(k, "surplus", (sheets * way.ups - taken) * way.box_area)

    def run(self):
        way, taken = self.way, self.quantity
        for k in range(self.last, 0, -1):
            step = self.steps[k]
            step.good = whole_up(taken / way.ups) if k == way.parting else taken
            step.fed = whole_up(step.good / (1 - step.waste)) + step.setup_sheets
            step.hours = step.fed / step.speed
            self.lose(k, "setup", step.setup_sheets * step.area)
            self.lose(k, "rejects", (step.fed - step.setup_sheets - step.good) * step.area)
            if k == way.parting:
                self.part(k, step.good, taken)
            taken = step.fed
        sheets = whole_up(taken / way.ups) if way.parting == 0 else taken
        self.steps[0].good = sheets
        self.combine(sheets)
        if way.parting == 0:
            self.part(0, sheets, taken)

    def combine(self, sheets):
        way, board, web = self.way, self.board, self.web
        change, roll_loss = number(web["order_change"]["metres"]) * self.changes, number(web["roll_loss"])
        rows = whole_up(sheets / way.outs)
        good_length = rows * way.chop / 1000
        made_length = good_length / (1 - self.steps[0].waste)
        self.length = self.web_share * made_length + change
        self.area = self.length * way.roll / 1000
        used = way.outs * way.slit / 1000
        self.issued = [
            self.area * ply.grammage * ply.take_up / 1000 / (1 - roll_loss) for ply in board.plies
        ]
        self.adhesive = self.area * board.adhesive / 1000
        self.lose_kg(0, "roll-ends", sum(self.issued) * roll_loss)
        self.lose(0, "side-trim", self.area * self.trim_share)
        self.lose(0, "order-change", change * way.roll / 1000 * (1 - self.trim_share))
        self.lose(0, "corrugator-run", (made_length - good_length) * used)
        self.lose(0, "surplus", (rows * way.outs - sheets) * way.sheet_area)
        if board.bought:
            return
        speed = number(web["speed"]["single" if board.media == 1 else "double"])
        self.steps[0].hours = self.length / (speed * 60)

    def charge(self, model, line, k, kind, behaviour, quantity, rate, ply=None):
        amount = rounded(quantity * rate)
        if quantity != 0 and rate != 0:
            self.lines[model, line, k, ply] = (kind, behaviour, quantity, rate, amount)

    def charge_web(self):
        s = self.settings
        if self.board.bought:
            price = self.board.plies[0].per_m2
            self.charge("paper", "bought-board", 0, "material", "per-unit", self.area, price, 0)
            return
        for p, ply in enumerate(self.board.plies):
            self.charge("paper", "paper", 0, "material", "per-unit", self.issued[p], ply.price, p)
        of = partial(s.number, "starch")
        rate = sum(of(f"{stuff}_share") * of(f"{stuff}_price") for stuff in ("starch", "caustic", "borax"))
        self.charge("starch", "starch", 0, "material", "per-unit", self.adhesive, rate)
        self.charge("energy", "energy.heat", 0, "energy", "per-unit", self.fuel(), s.number("energy", "fuel_price"))

    def fuel(self):
        """kWh, from what warms and what dries."""
        of = partial(self.settings.number, "energy")
        papers = [(self.area * ply.grammage * ply.take_up / 1000, ply.moisture) for ply in self.board.plies]
        water = self.adhesive * (1 / of("solids") - 1)
        rise = of("t_bond") - of("t_in")
        warming = sum(kg * ((1 - x) * of("c_fibre") + x * of("c_water")) * rise for kg, x in papers)
        warming += water * of("c_water") * rise
        driven_off = of("evaporated_share") * water + of("moisture_drop") * sum(kg for kg, _ in papers)
        heat = warming + driven_off * of("h_evap")
        return heat * (1 + of("standing_heat")) / 3600 / (of("boiler_efficiency") * of("distribution_efficiency"))

    def charge_step(self, k):
        step, s = self.steps[k], self.settings
        once = step.minutes / 60
        if k <= self.last or self.leads:
            self.charge("setup", "setup.labour", k, "system", "per-run", once, step.labour)
            self.charge("setup", "setup.fixed", k, "system", "period", once, step.fixed)
        self.charge("running", "running.labour", k, "system", "per-unit", step.hours, step.labour)
        self.charge("running", "running.fixed", k, "system", "period", step.hours, step.fixed)
        power = step.power * step.hours + s.number("energy", "baler_kwh_per_tonne") / 1000 * step.lost
        self.charge("energy", "energy.power", k, "energy", "per-unit", power, s.number("energy", "power_price"))
        sold, handled = (s.number("scrap", name) / 1000 for name in ("scrap_price", "handling"))
        self.charge("scrap", "scrap.credit", k, "recovery", "per-unit", -step.lost, sold)
        self.charge("scrap", "scrap.handling", k, "waste-management", "per-unit", step.lost, handled)

    def charge_joint(self):
        of = partial(self.settings.number, "consumables")
        for k in range(1, self.last + 1):
            step = self.steps[k]
            ink = step.fed * step.area * step.colours * of("coverage") * of("ink_laydown") / 1000
            self.charge("consumables", "ink", k, "material", "per-unit", ink, of("ink_price"))
        joining = [k for k in range(1, self.last + 1) if self.steps[k].kind in JOINERS]
        length = self.way.blank.joint + of("joint_length")  # mm
        if length == 0 or self.last == 0:
            return
        k = joining[-1] if joining else self.last
        fed, way = self.steps[k].fed, self.settings.word("consumables", "joint")
        if way == "glue":
            each, price = length / 1000 * of("glue_laydown") / 1000, of("glue_price")
        elif way == "stitch":
            each, price = (whole_up(length / of("stitch_spacing")) + 1) * of("stitch_wire") / 1000, of("wire_price")
        else:
            each, price = length / 1000, of("tape_price")
        self.charge("consumables", f"joint.{way}", k, "material", "per-unit", fed * each, price)

    def charge_tools(self):
        of = partial(self.settings.number, "tooling")
        self.invoiced = {"plates.invoiced": Decimal(0), "die.invoiced": Decimal(0)}
        for k in range(1, self.last + 1):
            step = self.steps[k]
            plates = step.colours * step.area * of("plate_share") * of("plate_price")
            self.write_off("plates", k, plates, of("plate_boxes"))
            if k == self.way.parting and step.kind == "die-cutter":
                blank = self.way.blank
                rule = of("rule_length") or (blank.cut + blank.crease) / 1000
                die = step.area * of("die_board_price") + self.way.ups * rule * of("rule_price")
                self.write_off("die", k, die, of("die_boxes"))

    def write_off(self, line, k, worth, boxes):
        if boxes > 0:
            self.charge("tooling", line, k, "system", "per-unit", self.quantity, worth / boxes)
        else:
            self.invoiced[f"{line}.invoiced"] += worth

    def charge_dispatch(self):
        s, k = self.settings, self.last + 1
        of = partial(s.number, "consumables")
        straps = whole_up(self.quantity / of("bundle_boxes")) * of("strap_length")
        self.charge("consumables", "strapping", k, "material", "per-unit", straps, of("strap_price"))
        of = partial(s.number, "delivery")
        area = self.quantity * self.way.box_area
        volume, mass = area * self.board.caliper / 1000, area * self.board.grammage / 1000
        pallets = whole_up(max(volume / of("pallet_volume"), mass / of("pallet_load")))
        self.charge("delivery", "pallets", k, "material", "per-unit", pallets, of("pallet_price"))
        road = s.number("delivery", "distance", ROAD)
        load = max(mass, volume * of("freight_density"))
        self.charge("delivery", "freight", k, "system", "per-unit", road * load / 1000, of("freight_price"))
        if road > 0 and self.leads:
            self.charge("delivery", "freight.drop", k, "system", "per-run", Decimal(1), of("drop_price"))

    # What the products of a step take on with them, and what its losses had cost (ISO 14051).

    def money(self, k, *kinds):
        return [(key[3], line[-1]) for key, line in self.lines.items() if key[2] == k and line[0] in kinds]

    def waste_by_step(self):
        """Money lost at each step. At the corrugator a paper goes by its own loss, other material by the board's."""
        roll_loss = number(self.web["roll_loss"])
        arrived = sum(self.issued) + self.adhesive
        board_lost = (self.steps[0].lost - self.losses[0, "roll-ends"]) / (self.area * self.board.grammage / 1000)
        carried, result = Decimal(0), []
        for k, step in enumerate(self.steps):
            share = step.lost / arrived
            lost = share * carried
            for ply, amount in self.money(k, "material"):
                of_material = roll_loss + (1 - roll_loss) * board_lost if ply is not None else board_lost
                lost += amount * (of_material if k == 0 else share)
            lost += share * sum(amount for _, amount in self.money(k, "energy", "system"))
            brought = sum(amount for _, amount in self.money(k, "material", "energy", "system"))
            carried += brought - lost
            result.append(lost + sum(amount for _, amount in self.money(k, "waste-management")))
            arrived -= step.lost
        return result
