#!/usr/bin/env python3
"""Writes the sheets of layouts, and beside each folder of them the answer that they tell.

usage: write_sheets.py PROGRAM FOLDER LAYOUT...

FOLDER/NAME holds the pages of NAME.toml, FOLDER/NAME.json its answer. A page over 400 kB is a fault: phones load it in
the field.
"""
import shutil
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

MOST_BYTES = 400_000
COMPUTED = (0, 3)  # it works; a limit fails, and the sheets say so
AT_ONCE = 2


def write(program, folder, layout):
    """What went wrong, and how many pages there are."""
    out = folder / layout.stem
    shutil.rmtree(out, ignore_errors=True)
    command = [program, "sheets", layout, "--json", "--out", out]
    with open(folder / f"{layout.stem}.json", "wb") as answer:
        done = subprocess.run(command, stdout=answer, stderr=subprocess.PIPE, check=False)
    told = done.stderr.decode(errors="replace").strip()
    found = [] if done.returncode in COMPUTED else [f"{layout.name}: exit {done.returncode}: {told}"]
    pages = sorted(out.glob("*.html"))
    if len(pages) < 2:
        found.append(f"{layout.name}: {len(pages)} pages")
    found += [f"{layout.stem}/{page.name}: {page.stat().st_size} bytes, at most {MOST_BYTES}" for page in pages
              if page.stat().st_size > MOST_BYTES]
    return found, len(pages)


def main(arguments):
    program, folder, *layouts = map(Path, arguments)
    folder.mkdir(parents=True, exist_ok=True)
    with ThreadPoolExecutor(AT_ONCE) as pool:
        done = list(pool.map(lambda layout: write(program, folder, layout), layouts))
    print(f"{sum(count for _, count in done)} pages of {len(layouts)} layouts")
    return "\n".join(fault for found, _ in done for fault in found)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]) or 0)
