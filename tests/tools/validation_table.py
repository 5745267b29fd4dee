#!/usr/bin/env python3
"""Joins the rows that the published tests leave into one page, or holds the page against them.

usage: validation_table.py ROWS_FOLDER PAGE FAMILY... [--write]

Without --write: the whole page is compared when every family has left rows, otherwise each row there is must stand in
the page. With --write the page is rebuilt; that is refused when a row does not hold or a family is missing.
"""
import difflib
import math
import re
import sys
from collections import Counter
from pathlib import Path

COLUMNS = ("source", "place", "kind", "what", "printed", "ours", "tolerance", "why", "holds")
REBUILD = "Read the difference, then rebuild the page: cmake --build BUILD_FOLDER --target validation_table"
HEAD = """# Validation

Every figure of a source that the tests compare with, written by the tests themselves. `printed` is the figure as the
source prints it, `ours` is what slabwright computes, `allowed` is the difference at which the test fails: half a unit
in the printed figure's last digit unless a reason is given.

- **published**: a number printed by its source, and seen there.
- **reference code**: the output of an independent general-purpose program.
- **derived**: our own algebra, or a second method of ours. It is a check, and never counts as published.

| kind | rows |
|---|--:|
| published | {published} |
| reference code | {reference} |
| derived | {derived} |
"""


def read_rows(folder, families):
    """The rows of the families that have left some, each as a dictionary, and the families that have not."""
    rows, missing = [], []
    for family in sorted(families):
        path = folder / f"{family}.tsv"
        if not path.exists():
            missing.append(family)
            continue
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            cells = line.split("\t")
            if len(cells) != len(COLUMNS):
                raise SystemExit(f"{path}:{number}: {len(cells)} columns, expected {len(COLUMNS)}")
            rows.append(dict(zip(COLUMNS, cells)))
    return rows, missing


def natural(text):
    """Table 2 before Table 10."""
    return [(0, int(part), "") if part.isdigit() else (1, 0, part) for part in re.split(r"(\d+)", text) if part]


def section_of(source, rows):
    """The lines of one source's section, its rows in the order given."""
    lines = [f"## {source}", "", "| place | what | kind | printed | ours | allowed |", "|---|---|---|--:|--:|---|"]
    for row in rows:
        allowed = row["tolerance"] + (f": {row['why']}" if row["why"] else "")
        cells = (row["place"], row["what"], row["kind"], row["printed"], row["ours"], allowed)
        lines.append("| " + " | ".join(cell.replace("|", "\\|") for cell in cells) + " |")
    return lines


def page_of(rows):
    count = Counter(row["kind"] for row in rows)
    sources = {}
    # Rows of one place keep the order in which their test checked them.
    for row in sorted(rows, key=lambda row: (natural(row["source"]), natural(row["place"]))):
        sources.setdefault(row["source"], []).append(row)
    page = HEAD.format(published=count["published"], reference=count["reference code"], derived=count["derived"])
    return page + "".join("\n" + "\n".join(section_of(source, rows)) + "\n" for source, rows in sources.items())


def rows_in(page):
    """Every table row of a page together with the heading it stands under."""
    heading, found = "", set()
    for line in page.splitlines():
        if line.startswith("## "):
            heading = line
        elif heading and line.startswith("|"):
            found.add((heading, line))
    return found


def last_digit(figure):
    """The step of a printed figure's last digit: 0.0399 -> 1e-4, 1.5e3 -> 100."""
    digits, _, power = figure.lower().partition("e")
    return 10.0 ** (int(power or 0) - len(digits.partition(".")[2]))


def outside(row):
    """Whether a row's own figures stand farther apart than it allows: asked of the page, whatever the test said."""
    printed, ours = float(row["printed"]), float(row["ours"])
    said = re.match(r"its last digit|([\d.eE+-]+)( %)?", row["tolerance"])
    if not said or not all(map(math.isfinite, (printed, ours))):
        return True
    allowed = 0.0
    if said.group(1):
        allowed = float(said.group(1)) * (abs(printed) / 100.0 if said.group(2) else 1.0)
    # Ours is shown to the digits of the printed figure, and the tolerance to three.
    rounding = 1.001 * max(0.5 * last_digit(row["ours"]), 0.005 * allowed)
    if not said.group(1):
        rounding += 0.5 * last_digit(row["printed"])
    return abs(ours - printed) > allowed + rounding


def broken_in(rows):
    return [f"{row['source']}, {row['place']}, {row['what']}: printed {row['printed']}, ours {row['ours']}"
            for row in rows if row["holds"] != "yes" or outside(row)]


def page_rows(page):
    """The rows of a page as it stands, each with the cells that judge it."""
    for heading, line in rows_in(page):
        cells = re.split(r"(?<!\\) \| ", line.strip("| "))
        if len(cells) == 6 and cells[0] != "place" and not cells[0].startswith("---"):
            names = dict(zip(("place", "what", "kind", "printed", "ours", "tolerance"), cells))
            yield {**names, "source": heading.removeprefix("## "), "holds": "yes"}


def complaint(rows, missing, page):
    """What is wrong with the page in face of the rows; empty when nothing is."""
    broken = broken_in(rows) or broken_in(page_rows(page))
    if broken:
        return "These figures do not hold:\n" + "\n".join(broken)
    ours = page_of(rows)
    if missing:
        absent = [f"Not in the page, {heading}: {line}" for heading, line in sorted(rows_in(ours) - rows_in(page))]
        return "\n".join(absent[:20])
    lines = list(difflib.unified_diff(page.splitlines(), ours.splitlines(), "the page", "this run", lineterm="", n=0))
    return "\n".join(lines[:40])


def main(words):
    write = "--write" in words
    folder, page, *families = (word for word in words if word != "--write")
    rows, missing = read_rows(Path(folder), families)
    page = Path(page)
    if write:
        if missing or not rows:
            return "Not written: no rows of " + (" ".join(missing) or "any family")
        if broken_in(rows):
            return "Not written. " + complaint(rows, missing, "")
        page.write_text(page_of(rows), encoding="utf-8", newline="\n")
        return ""
    if not rows:
        return "No family has left rows in " + folder
    found = complaint(rows, missing, page.read_text(encoding="utf-8") if page.exists() else "")
    return found and f"{found}\n{REBUILD}"


if __name__ == "__main__":
    if len(sys.argv) < 4:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1:]) or 0)
