# The first sheet of a workbook as JSON: a list of rows, each from a column's letters to what stands in its cell.
#
#   workbook_rows.py WORKBOOK
import json
import re
import sys
import zipfile
from xml.etree import ElementTree

MAIN = "{http://schemas.openxmlformats.org/spreadsheetml/2006/main}"


def text_of(element):
    return "".join(part.text or "" for part in element.iter(MAIN + "t"))


def value_of(cell, texts):
    value = cell.findtext(MAIN + "v")
    if cell.get("t") == "inlineStr":
        return text_of(cell)
    if value is None:
        return None
    return texts[int(value)] if cell.get("t") == "s" else float(value)


def main():
    with zipfile.ZipFile(sys.argv[1]) as book:
        sheet = ElementTree.fromstring(book.read("xl/worksheets/sheet1.xml"))
        texts = []
        if "xl/sharedStrings.xml" in book.namelist():
            shared = ElementTree.fromstring(book.read("xl/sharedStrings.xml"))
            texts = [text_of(item) for item in shared.iter(MAIN + "si")]
    rows = []
    for row in sheet.iter(MAIN + "row"):
        cells = {re.sub(r"\d", "", cell.get("r")): value_of(cell, texts) for cell in row.iter(MAIN + "c")}
        rows.append({column: value for column, value in cells.items() if value is not None})
    json.dump(rows, sys.stdout)


main()
