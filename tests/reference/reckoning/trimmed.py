"""Holds prices that pay the plant's own share of trim against a reckoning outside the program.

    trimmed.py PROGRAM HISTORY PLANT ENQUIRIES

The demo plant's fourteen months go into a ledger. What its webs trimmed is added up from the ledger's tables, the
enquiries are reckoned with it and asked of the program with `trim: share`. Prints each difference, and then ends with 1.
"""

import json
import sys
import tempfile
from decimal import Decimal
from pathlib import Path

from answer import Enquiry, answer
from compare import Differences, compare_enquiry
from plant import Plant
from year import ENOUGH, Webs, call, live_through, rows_of

DAY, FIRST, LAST = "2026-10-15", "2025-10", "2026-09"
EVERYDAY = "R-1001-everyday-box.yaml"
# Of its price alone, what the everyday box costs less at the plant's share: at 500, 1000 and 5000, in per cent.
LESS = [Decimal(text) for text in ("2.49", "3.17", "4.24")]


def with_share(file, folder):
    """The request asking for the ledger's share, on the day that all are reckoned at."""
    copy = Path(folder) / file.name
    copy.write_text(file.read_text(encoding="utf-8") + "\ntrim: share\n", encoding="utf-8")
    return copy


def same_webs(where, said, webs, differences):
    differences.same(f"{where}: runs", said["runs"], webs.runs)
    differences.same(f"{where}: orders", said["orders"], webs.orders)
    differences.close(f"{where}: order changes", said["order_changes"], webs.changes)
    differences.same(f"{where}: side trim", said["side_trim_kg"] * 1000, webs.trim)
    differences.same(f"{where}: board", said["board_kg"] * 1000, webs.board)


def webs_for(board, rows):
    """The board's own, where it ran often enough; else all."""
    own = [row for row in rows if row["code"] == board]
    return ("board", Webs(own)) if len(own) >= ENOUGH else ("plant", Webs(rows))


def compare_trim(said, board, rows, differences):
    of, webs = webs_for(board, rows)
    origin = said["origin"]
    differences.same(f"{board}: of", origin["of"], of)
    differences.same(f"{board}: months", [origin["from"], origin["to"]], [FIRST, LAST])
    differences.close(f"{board}: share", said["share"], webs.share)
    differences.close(f"{board}: changes", said["changes"], webs.changes_per_order)
    same_webs(board, origin, webs, differences)
    return of


def compare_month(said, rows, month_rows, differences):
    same_webs("twelve months", said["twelve_months"], Webs(rows), differences)
    same_webs("month", said["month"], Webs(month_rows), differences)
    boards = sorted({row["code"] for row in rows})
    often = [board for board in boards if sum(row["code"] == board for row in rows) >= ENOUGH]
    differences.same("boards of the month", [board["board"] for board in said["boards"]], often)
    for board in said["boards"]:
        own = [row for row in rows if row["code"] == board["board"]]
        same_webs(board["board"], board["twelve_months"], Webs(own), differences)


def less_than_alone(said):
    """In per cent of the price alone, quantity by quantity."""
    prices = zip(said["quotes"], said["trim"]["alone"])
    return [
        round((1 - quote["price_per_thousand"] / alone["price_per_thousand"]) * 100, 2) for quote, alone in prices
    ]


def main():
    program, history, folder, sample = sys.argv[1:]
    differences = Differences()
    with tempfile.TemporaryDirectory() as place:
        ledger = live_through(program, history, folder, place)
        files = [*sorted(Path(sample).glob("*.yaml")), Path(folder, "requests", EVERYDAY)]
        asked = [with_share(file, place) for file in files]
        flutebook = [program, "--plant", folder, "--ledger", ledger]
        said = json.loads(call(*flutebook, "quote", *asked, "--json", "--date", DAY), parse_float=Decimal)
        month = json.loads(call(*flutebook, "month", LAST, "--json"), parse_float=Decimal)
        rows = rows_of(ledger, FIRST, LAST)
        compare_month(month["trim"], rows, rows_of(ledger, LAST, LAST), differences)
    plant, origins = Plant(folder), set()
    differences.same("requests in the answer", len(said["requests"]), len(files))
    for file, of_request in zip(files, said["requests"]):
        enquiry = Enquiry(file)
        if plant.boards[enquiry.board].get("bought"):
            differences.same(f"{enquiry.number}: a share of trim of sheets that are bought", of_request.get("trim"), None)
            compare_enquiry(of_request, enquiry, answer(plant, enquiry, DAY), differences)
            continue
        origins.add(compare_trim(of_request["trim"], enquiry.board, rows, differences))
        webs = webs_for(enquiry.board, rows)[1]
        reckoned = answer(plant, enquiry, DAY, (webs.share, webs.changes_per_order))
        alone = answer(plant, enquiry, DAY)
        compare_enquiry(of_request, enquiry, reckoned, differences)
        for beside, price in zip(of_request["trim"]["alone"], alone):
            differences.same(f"{enquiry.number}: alone", beside["price_per_thousand"], price.price_per_thousand)
    differences.same("the everyday box, per cent less than alone", less_than_alone(said["requests"][-1]), LESS)
    differences.same("whose runs were counted", origins, {"board", "plant"})
    for line in differences.found:
        print(line)
    print(f"{len(files)} enquiries with the share of {len(rows)} runs, {differences.compared} figures compared, "
          f"{len(differences.found)} differences")
    return 1 if differences.found else 0


if __name__ == "__main__":
    sys.exit(main())
