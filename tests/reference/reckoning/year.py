"""The demo plant's fourteen months in a ledger of its own, and what its webs came to, read from the file itself.

The program only keeps the ledger: what a board's twelve months come to is added up here from the tables.
"""

import os
import sqlite3
import subprocess
import sys
from decimal import Decimal
from pathlib import Path

ENOUGH = 30


def call(*words):
    done = subprocess.run(
        list(map(str, words)), capture_output=True, text=True, check=False, env={**os.environ, "COLUMNS": "100"}
    )
    if done.returncode != 0:
        sys.exit(f"{' '.join(map(str, words))}: ended with {done.returncode}: {done.stderr}")
    return done.stdout


def live_through(program, history, plant, folder):
    """Quotes, orders and every document of the demo plant's year; the ledger's file."""
    folder = Path(folder)
    ledger = folder / "ledger.db"
    requests = sorted(file for file in Path(plant, "requests").glob("*.yaml") if "R-1009" not in file.name)
    flutebook = [program, "--plant", plant, "--ledger", ledger]
    for day, answer in (("2025-10-01", "first.json"), ("2026-04-01", "second.json")):
        text = call(*flutebook, "quote", *requests, "--save", "--json", "--date", day)
        (folder / answer).write_text(text, encoding="utf-8")
    call(history, plant, folder, folder / "first.json", folder / "second.json")
    for line in (folder / "orders.txt").read_text(encoding="utf-8").splitlines():
        quote, quantity, number = line.split()
        call(*flutebook, "order", quote, quantity, "--as", number)
    for month in sorted(folder.glob("20??-??")):
        call(*flutebook, "post", *sorted(month.glob("*.csv")))
    return ledger


class Webs:
    """Rows of corrugator runs that stand in some months: of one board, or of all."""

    def __init__(self, rows):
        self.runs = len(rows)
        self.orders = len({row["order"] for row in rows})
        self.changes = sum((row["change"] for row in rows), Decimal(0))
        self.trim = sum(row["trim"] for row in rows)
        self.board = sum(row["board"] for row in rows)

    @property
    def share(self):
        return Decimal(self.trim) / self.board

    @property
    def changes_per_order(self):
        return self.changes / self.orders


def change_of(content):
    """The order's part of an order change, by what its row says."""
    said = dict(line.split("=", 1) for line in content.splitlines() if "=" in line)
    if Decimal(said.get("order_change_metres", "0")) <= 0:
        return Decimal(0)
    return Decimal(said["roll_width"]) / Decimal(said["web"]) if said.get("web") else Decimal(1)


def rows_of(ledger, first, last):
    """The rows dated from the first month to the last, "2025-10", that nothing undid and that undo nothing."""
    book = sqlite3.connect(f"file:{ledger}?mode=ro", uri=True)
    names = dict(book.execute("SELECT id, text FROM name"))
    undone = {number for (number,) in book.execute("SELECT reverses FROM entry WHERE reverses IS NOT NULL")}
    low, high = (int(month.replace("-", "")) for month in (first, last))
    rows = []
    for number, kind, order, board, day, content, reverses in book.execute(
        "SELECT id, kind, order_, board, day, content, reverses FROM entry"
    ):
        if names[kind] != "corrugator-run" or reverses is not None or number in undone:
            continue
        if not low <= month_of(day) <= high:
            continue
        row = {"order": names[order], "code": names[board], "change": change_of(content), "trim": 0, "board": 0}
        for source, cause, grams in book.execute(
            "SELECT from_account, cause, grams FROM movement WHERE entry = ?", (number,)
        ):
            if names[source] == "adhesive-store":
                continue  # what went into the web; the rest left it
            row["board"] += grams
            row["trim"] += grams if names[cause] == "side-trim" else 0
        rows.append(row)
    book.close()
    return rows


def month_of(day):
    """A day as the ledger has it."""
    return day // 100
