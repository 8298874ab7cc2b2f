"""The reckoning finds what is wrong: each figure of a right answer is moved by its last digit, which must be found.

    controls.py PROGRAM PLANT ENQUIRY
"""

import copy
import sys
from decimal import Decimal

from answer import Enquiry, answer
from compare import Differences, compare_enquiry
from plant import Plant
from printed import check_ladder, check_totals, columns_of, number_in
from reckon import document, run

GRAIN = Decimal("0.0001")
# What people are told beside, in figures that are held elsewhere or are no figures of the reckoning.
NOT_RECKONED = {
    "candidates", "cost_per_m2", "cost_per_tonne", "dearer_by", "intake_kg", "kg_by_step", "loss_kg", "machine_hours",
    "profit_share", "runners_up", "web_area_m2", "colours",
}  # fmt: skip


def figures_of(tree, path=()):
    """Where the figures of a document stand."""
    entries = tree.items() if isinstance(tree, dict) else enumerate(tree)
    for key, value in entries:
        if key in NOT_RECKONED:
            continue
        if isinstance(value, (dict, list)):
            yield from figures_of(value, (*path, key))
        elif isinstance(value, (int, Decimal)):
            yield (*path, key)


def moved(tree, path):
    result = copy.deepcopy(tree)
    holder = result
    for key in path[:-1]:
        holder = holder[key]
    value = holder[path[-1]]
    holder[path[-1]] = value + (1 if isinstance(value, int) else max(GRAIN, abs(value) * Decimal("1e-9")))
    return result


def unnoticed_figures(said, enquiry, prices):
    quotes = {"request": said["request"], "quotes": said["quotes"]}
    for path in figures_of(quotes):
        if path[-1] == "step" and "waste_by_step" in path:
            continue
        differences = Differences()
        compare_enquiry(moved(quotes, path), enquiry, prices, differences)
        if not differences.found:
            yield "figure " + " ".join(map(str, path))


def unnoticed_totals(text):
    lines = text.splitlines()
    for at, line in enumerate(lines):
        for start, end in columns_of(line):
            total = lines[at + 1]
            value = number_in(total, start, end)
            digit = total[:end].rstrip(" %")[-1]
            cut = total.rindex(digit, start, end)
            other = total[:cut] + str((int(digit) + 1) % 10) + total[cut + 1 :]
            differences = Differences()
            check_totals("\n".join([*lines[: at + 1], other, *lines[at + 2 :]]), differences)
            if not differences.found:
                yield f"printed total {value}, line {at + 2}"


def unnoticed_prices(text, prices):
    for price in prices:
        shown = f"{price.price_per_thousand:,}".replace(",", " ")
        other = shown[:-1] + str((int(shown[-1]) + 1) % 10)
        differences = Differences()
        check_ladder(text.replace(shown, other).splitlines(), prices, differences)
        if not differences.found:
            yield f"printed price {shown}"


def main():
    program, folder, file = sys.argv[1:]
    enquiry = Enquiry(file)
    prices = answer(Plant(folder), enquiry)
    said = document(run(program, folder, file, "--json"))["requests"][0]
    unnoticed = [
        *unnoticed_figures(said, enquiry, prices),
        *unnoticed_totals(run(program, folder, file, "--sheet")),
        *unnoticed_prices(run(program, folder, file), prices),
    ]
    for what in unnoticed:
        print(f"{what}: moved, and nothing was found")
    moves = len(list(figures_of(said["quotes"])))
    print(f"{moves} figures moved one by one, {len(unnoticed)} unnoticed")
    return 1 if unnoticed else 0


if __name__ == "__main__":
    sys.exit(main())
