"""The enquiries as a list: a row for each quantity, in the program's columns; and the answer to it."""

import csv
from decimal import Decimal

from compare import compare_invoiced
from costing import GRAIN

OLD_PRICE, OLD_DAY = Decimal("512.40"), "2026-03-02"
CLASSES = ("material", "energy", "system", "waste-management", "recovery")


def row_of(enquiry, quantity):
    given = enquiry.given
    box = given.get("inside") or given["outline"]
    row = {**{side: box.get(side, "") for side in ("length", "width", "height", "area")}, "quantity": quantity}
    for key in ("request", "customer", "date", "style", "board", "margin", "colours", "flutes"):
        row[key] = given.get(key, "")
    row["route"] = " > ".join(given.get("route", []))
    row.update(given.get("measures", {}))
    for model, settings in given.get("extras", {}).items():
        row.update({f"{model}.{name}": value for name, value in settings.items()})
    return {**row, "price": OLD_PRICE, "price_date": OLD_DAY}


def write_list(enquiries, file):
    rows = [row_of(enquiry, quantity) for enquiry in enquiries for quantity in enquiry.given["quantities"]]
    columns = list(dict.fromkeys(key for row in rows for key in row))
    with open(file, "w", newline="", encoding="utf-8") as stream:
        writer = csv.DictWriter(stream, columns, restval="")
        writer.writeheader()
        writer.writerows(rows)


def check_price(where, said, parts, price, differences):
    """`said`: the figures of the answer by name, `parts` those that the price a thousand is made of."""
    differences.same(f"{where}: price", said["price_per_thousand"], price.price_per_thousand)
    differences.same(f"{where}: cost", said["cost_per_thousand"], price.cost_per_thousand)
    differences.same(f"{where}: order value", said["order_value"], price.order_value)
    differences.same(f"{where}: sum of the classes", sum(parts[kind] for kind in CLASSES), price.cost_per_thousand)
    differences.same(f"{where}: classes and profit", sum(parts.values()), price.price_per_thousand)
    for kind in CLASSES:
        # The classes are rounded so that they add up: by less than a grain each.
        of_kind = price.sum_of(lambda of, _: of == kind) / price.quantity * 1000
        differences.same(f"{where}: {kind}", abs(parts[kind] - of_kind) < GRAIN, True)


def check_change(where, difference, change, price, then, differences):
    """Against the old price, whose day's own price is `then`."""
    profits = [of.price_per_thousand - of.cost_per_thousand for of in (price, then)]
    differences.same(f"{where}: difference", difference, price.price_per_thousand - OLD_PRICE)
    differences.same(f"{where}: sum of the reasons", sum(change.values()), difference)
    differences.same(f"{where}: change of the profit", change["profit"], profits[0] - profits[1])
    differences.same(f"{where}: not explained", change["not_explained"], then.price_per_thousand - OLD_PRICE)


def check_document(document, prices, then, differences):
    differences.same("rows of the list's document", len(document["rows"]), len(prices))
    for row, price, earlier in zip(document["rows"], prices, then):
        differences.same(f"{row['at']}: errors", row["errors"], [])
        compare_invoiced(row["at"], row, price, differences)
        check_price(row["at"], row, row["parts_per_thousand"], price, differences)
        check_change(row["at"], row["difference"], row["change"], price, earlier, differences)


def check_table(file, prices, then, differences):
    with open(file, newline="", encoding="utf-8-sig") as stream:
        rows = list(csv.DictReader(stream))
    differences.same("rows of the list's answer", len(rows), len(prices))
    for line, (row, price, earlier) in enumerate(zip(rows, prices, then), 2):
        where = f"row {line} of the list's answer"
        columns = {"price_per_thousand": "new_price", "cost_per_thousand": "cost", "order_value": "order_value"}
        said = {name: Decimal(row[column]) for name, column in columns.items()}
        parts = {kind: Decimal(row[f"new_price.{kind}"]) for kind in (*CLASSES, "profit")}
        change = {kind: Decimal(row[f"change.{kind}"]) for kind in (*CLASSES, "profit", "not_explained")}
        check_price(where, said, parts, price, differences)
        check_change(where, Decimal(row["difference"]), change, price, earlier, differences)
