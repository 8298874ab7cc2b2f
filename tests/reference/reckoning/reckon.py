"""Reckons a sample of enquiries outside the program and holds the program's answers against them.

    reckon.py PROGRAM PLANT ENQUIRIES

ENQUIRIES is a folder of request files. All are quoted in one call, as a document, as printed sheets, and as one list
with a row for each quantity. The arithmetic here is written from the plant's formulas alone and in decimals of sixty
digits; of the program's figures none is used but to be compared. Prints each difference, and then ends with 1.
"""

import json
import os
import subprocess
import sys
import tempfile
from decimal import Decimal
from pathlib import Path

from answer import Enquiry, answer
from compare import Differences, compare_enquiry
from listed import OLD_DAY, check_document, check_table, write_list
from plant import Plant
from printed import check_ladder, check_totals


def run(program, plant, *words):
    done = subprocess.run(
        [program, "--plant", plant, "quote", *map(str, words)],
        capture_output=True, text=True, check=False, env={**os.environ, "COLUMNS": "100"},
    )  # fmt: skip
    if done.returncode != 0:
        sys.exit(f"quote {' '.join(map(str, words))}: ended with {done.returncode}: {done.stderr}")
    return done.stdout


def document(text):
    return json.loads(text, parse_float=Decimal)


def hold_document(said, enquiries, prices, differences):
    differences.same("requests in the answer", len(said["requests"]), len(enquiries))
    for of_request, enquiry, of_enquiry in zip(said["requests"], enquiries, prices):
        compare_enquiry(of_request, enquiry, of_enquiry, differences)


def hold_list(program, plant, enquiries, prices, then, differences):
    with tempfile.TemporaryDirectory() as folder:
        rows, table = Path(folder) / "enquiries.csv", Path(folder) / "prices.csv"
        write_list(enquiries, rows)
        run(program, plant, rows, "-o", table)
        check_table(table, prices, then, differences)
        check_document(document(run(program, plant, rows, "--json")), prices, then, differences)


def main():
    program, folder, sample = sys.argv[1:]
    plant, files = Plant(folder), sorted(Path(sample).glob("*.yaml"))
    enquiries = [Enquiry(file) for file in files]
    prices = [answer(plant, enquiry) for enquiry in enquiries]
    then = [answer(plant, enquiry, OLD_DAY) for enquiry in enquiries]
    in_turn, then_in_turn = (sum(answers, []) for answers in (prices, then))
    differences = Differences()
    hold_document(document(run(program, folder, *files, "--json")), enquiries, prices, differences)
    check_ladder(run(program, folder, *files).splitlines(), in_turn, differences)
    totals = check_totals(run(program, folder, *files, "--sheet"), differences)
    hold_list(program, folder, enquiries, in_turn, then_in_turn, differences)
    for line in differences.found:
        print(line)
    print(f"{len(enquiries)} enquiries, {len(in_turn)} prices, {totals} printed totals, "
          f"{differences.compared} figures compared, {len(differences.found)} differences")
    return 1 if differences.found or not totals else 0


if __name__ == "__main__":
    sys.exit(main())
