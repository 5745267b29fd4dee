#!/usr/bin/env python3
"""Holds the sheets of a design whose names are hostile against those of designs with plain names.

usage: sheet_names.py HOSTILE_FOLDER PLAIN_FOLDER [MORE_PLAIN_FOLDERS...]

Names come out as text: the hostile pages are made of the elements and attributes that plain pages are made of, and tell
every name of the design that the first plain folder's pages tell. That it is the same text, sheet_keys.py sees.
"""
import sys
from pathlib import Path

sys.dont_write_bytecode = True
from sheet_text import tree_of


def made_of(root):
    """Every kind of element with its attributes' names."""
    return {(element.tag, name) for element in root.elements() for name in ["", *element.attributes]}


def names_told(root):
    """Keys of the user's names that a page tells: "design.room[0].name"."""
    keys = {key for element in root.elements() for key in element.attributes.get("data-key", "").split()}
    return {key for key in keys if key.startswith("design.") and key.endswith(".name")}


def pages_of(folder):
    return {path.name: tree_of(path.read_text(encoding="utf-8"))[0] for path in sorted(Path(folder).glob("*.html"))}


def faults(hostile, usual, *more):
    pages, plain_pages = pages_of(hostile), pages_of(usual)
    known = set().union(*(made_of(root) for folder in (usual, *more) for root in pages_of(folder).values()))
    told = 0
    for name, root in pages.items():
        for tag, attribute in sorted(made_of(root) - known):
            yield f"{name}: <{tag}>{' with ' + attribute if attribute else ''} is on no page of plain names"
    for name, root in plain_pages.items():
        if name not in pages:
            yield f"{name}: no such page of hostile names"
            continue
        keys = names_told(root)
        told += len(keys)
        for key in sorted(keys - names_told(pages[name])):
            yield f"{name}: does not tell {key}"
    if not told:
        yield "no page tells a name: nothing was compared"


def main(folders):
    found = list(faults(*folders))
    print(f"{len(found)} faults")
    return "\n".join(found)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]) or 0)
