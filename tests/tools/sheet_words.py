#!/usr/bin/env python3
"""Finds words on sheets that stand for something else here, or promise what nobody can.

usage: sheet_words.py FOLDER...

Each thing is called by one word. Where the other word has a meaning of its own on a sheet, its rule says which.
FOLDER.json beside a folder tells the names that the user gave: those are theirs, and are left out.
"""
import json
import re
import sys
from pathlib import Path

sys.dont_write_bytecode = True
from sheet_text import BLOCKS, plain, tree_of

# What may not stand on a sheet, and what is said instead.
WORDS = [
    (r"\bprojects?\b(?!\.\w)", "design file"),
    (r"\bmodels?\b|\bmodell?(ed|ing)\b", "design file, design"),
    (r"\bstud(y|ies)\b|\bsimulat\w+", "answer"),
    (r"\b(this|the last|a new|each) run\b(?! of tube)", "answer"),
    (r"(?<!weather )\bstations?\b", "stage"),
    (r"\bsafe\b(?<!no setting is safe)(?<!cannot be called safe)",
     "lowest setting that keeps everything above its limit"),
    (r"\bunsafe\b|\bsafely\b|\bguarantee\w*", "no promise: limits and margins"),
    (r"\bnodes?\b|\bprobes?\b", "watched place, sensor"),
    (r"(?<!frost )\bhold\b(?= (setting|setpoint|temperature|at \d))|\b(the|a|this|in|on) hold\b|\bhold[- ]mode\b",
     "frost hold"),
    (r"\bfrosthold\b", "frost hold"),
    (r"(?<!slab )(?<!air )(?<!['\"])\bset-?points?\b", "slab setpoint, air setpoint"),
    (r"\bauxiliary\b|\bhelp(er|ers)\b", "second source"),
    (r"\broutines?\b|\bmodes?\b|\bprogram(me)?s?\b|\bprogramming\b", "way of running"),
    (r"\bschedules?\b", "way of running; hours; calendar"),
    (r"\bkeep-?outs?\b", "no-tube area"),
    (r"\bdrill(ing)? maps?\b", "drilling guide"),
    (r"\b(heated|heating|radiant|floor) panels?\b|\bpanel heating\b", "heated floor"),
    (r"\bassumed\b", "our guess"),
]
# Of two systems of units each prints its own coefficient of a valve; what a file may say stands in quotes.
BY_UNITS = {"US": (r"(?<!['\"])\bKv\b", "Cv"), "SI": (r"(?<!['\"])\bCv\b", "Kv")}


def names_in(value):
    """All names that the user gave: what `name` and `label` hold anywhere in a design."""
    if isinstance(value, list):
        return {name for one in value for name in names_in(one)}
    if not isinstance(value, dict):
        return set()
    own = {str(value[key]) for key in ("name", "label") if value.get(key)}
    return own.union(*(names_in(one) for one in value.values()))


def texts_of(root):
    """What a reader sees as one line or hears, piece by piece, with its line in the file."""
    for element in root.elements():
        if element.tag in BLOCKS:
            text = plain(element.text(skip=lambda inner: inner.tag in BLOCKS))
            if text:
                yield element.line, text
        for name in ("title", "alt", "aria-label"):
            if element.attributes.get(name):
                yield element.line, plain(element.attributes[name])


def faults(html, names=(), units=None):
    """(line, what) for each word that does not belong."""
    root, _ = tree_of(html)
    rules = WORDS + ([BY_UNITS[units]] if units in BY_UNITS else [])
    for line, text in texts_of(root):
        for name in sorted(names, key=len, reverse=True):
            text = text.replace(plain(name), "...")
        for pattern, instead in rules:
            for found in re.finditer(pattern, text, re.IGNORECASE):
                around = text[max(0, found.start() - 25):found.end() + 25]
                yield line, f"\"{found.group()}\", here called {instead}: \"{around}\""


def main(folders):
    lines, pages = [], 0
    for folder in map(Path, folders):
        design = json.loads(Path(f"{str(folder).rstrip('/')}.json").read_text(encoding="utf-8"))["design"]
        for page in sorted(folder.glob("*.html")):
            pages += 1
            found = faults(page.read_text(encoding="utf-8"), names_in(design), design["units"])
            lines += [f"{folder.name}/{page.name}:{line}: {what}" for line, what in found]
    if not pages:
        return "no pages"
    print(f"{pages} pages, {len(lines)} words out of place")
    return "\n".join(lines)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]) or 0)
