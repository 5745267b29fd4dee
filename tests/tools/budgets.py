#!/usr/bin/env python3
"""Sizes, names and words that the house allows: lengths of files, lines and functions, units in members' names.

usage: budgets.py [PROJECT]
"""
import re
import sys
from pathlib import Path

sys.dont_write_bytecode = True
from cpp_text import blocks, without_comments_and_quotes

TOP_LEVEL = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "src", "include", "tests", "layouts", "manuals"}
HEADER_LINES, SOURCE_LINES, TEST_LINES, FUNCTION_LINES, LINE_WIDTH = 200, 400, 300, 60, 120
CODE = {".cpp", ".hpp", ".py", ".cmake", ".txt", ".sh", ""}

# Nothing unfinished, nothing about how the project is worked on, no path of one machine.
FORBIDDEN = re.compile(
    r"\b(TODO|FIXME|XXX|HACK)\b|\bshared/|(?<![\w.])/(work|root|home)/|\bseed\s+document"
    r"|\b(?i:(this|previous|earlier|later|next|last) session|sub-?agents?|helpers?|language model)\b"
    r"|\b(?i:(this|the first|the second|a later|the next|first|later|next) issues?)\b|\b(?i:issue) #?\d|\bCEO\b")
UNFINISHED = re.compile(r"\b(?i:placeholders?|not implemented|unimplemented|for now)\b")

# Pure numbers that a struct of a public header may carry under their own names.
PURE = {"cop", "darcy", "reynolds", "growth", "ratio", "exponent", "coefficient"}
# Degrees of the compass and of the map. They have no row in the units table: no design file measures an angle.
ANGLES = {"deg"}
# Whatever currency the prices are in; "money_per_J" ends in a unit already.
CURRENCY = {"money"}
# Structs whose numbers take their unit from who holds them.
UNIT_ELSEWHERE = re.compile(r"\b(Three|PracticeFigure|PowerLaw)$")
# Core and maths speak of numbers in general, and a plot's axes may have any unit: their members have none of their own.
UNITLESS = re.compile(r"^((units|fields|key|diagnostics|numbers|maths)(_|\.)|drawing_plot\.)")
MEMBER = re.compile(r"^(?:mutable\s+)?(?:const\s+)?(?:double|std::(?:optional|vector)<double>)\s+(.*)$", re.DOTALL)


def line_of(text, at):
    return text.count("\n", 0, at) + 1


def size_faults(path, text):
    lines = text.splitlines()
    if path.suffix in (".cpp", ".hpp"):
        most = TEST_LINES if path.parts[0] == "tests" else HEADER_LINES if path.parts[0] == "include" else SOURCE_LINES
        if len(lines) > most:
            yield f"{path}: {len(lines)} lines; at most {most}"
    for number, line in enumerate(lines, 1):
        # What a page or a message says breaks where its reader's paper or window ends, not where a line of code would.
        if len(line) > LINE_WIDTH and "tests/golden/" not in str(path):
            yield f"{path}:{number}: {len(line)} characters wide; at most {LINE_WIDTH}"


def function_faults(path, text):
    for block in blocks(text):
        lines = line_of(text, block.closes) - line_of(text, block.start) + 1
        if block.kind == "function" and lines > FUNCTION_LINES:
            yield f"{path}:{line_of(text, block.start)}: a function of {lines} lines; at most {FUNCTION_LINES}"


def word_faults(path, text):
    for number, line in enumerate(text.splitlines(), 1):
        for pattern in (FORBIDDEN, UNFINISHED) if path.parts[0] in ("src", "include") else (FORBIDDEN,):
            found = pattern.search(line)
            if found:
                yield f"{path}:{number}: the words \"{found.group()}\" do not belong in the project"


def units_in(table):
    """The words that end a member's name: "m2", "K", "degC" and the like, from the suffixes of the units table."""
    suffixes = re.findall(r'"_([A-Za-z0-9_]+)"', table)
    return {word for suffix in suffixes for word in suffix.split("_")} - {"per"}


def members(text, block):
    """Names of the doubles declared directly in a struct, with where they stand."""
    inside = re.sub(r"\{[^{}]*\}", lambda m: re.sub(r"[^\n]", " ", m.group()), text[block.opens + 1:block.closes])
    at = block.opens + 1
    for statement in inside.split(";"):
        start = at + len(statement) - len(statement.lstrip())
        at += len(statement) + 1
        if "(" in statement.partition("=")[0]:
            continue  # a function
        names_only = re.sub(r"=[^,]*", "", re.sub(r"\([^()]*\)", "", statement))
        found = MEMBER.match(re.sub(r"^\s*((public|private|protected)\s*:\s*)?", "", names_only))
        for name in found.group(1).split(",") if found else ():
            yield name.split("[")[0].strip(), start


def unit_faults(path, text, units):
    if UNITLESS.match(path.name):
        return
    for block in blocks(text):
        if block.kind != "type" or re.search(r"\benum\b", block.head) or UNIT_ELSEWHERE.search(block.head):
            continue
        for name, at in members(text, block):
            if name.strip("_").split("_")[-1] not in units | PURE | ANGLES | CURRENCY:
                yield f"{path}:{line_of(text, at)}: the double {name} does not end in its unit"


def types_in(text):
    """Full names of the types that a file defines in named namespaces, with where; those inside another are its own."""
    found = blocks(text)
    for block in found:
        name = re.match(r"(?:template\s*<.*>\s*)?(?:struct|class|union|enum(?:\s+(?:class|struct))?)\s+(\w+)\s*(?::(?!:)|final|$)",
                        block.head, re.DOTALL)
        around = [other for other in found if other.opens < block.start and block.closes < other.closes]
        spaces = [re.sub(r".*\bnamespace\b\s*", "", other.head, flags=re.DOTALL) for other in around]
        if block.kind == "type" and name and all(other.kind == "namespace" for other in around) and all(spaces):
            yield "::".join([*reversed(spaces), name.group(1)]), block.start


def twice_faults(path, text, known):
    """Two types of one name are one to the linker, whatever each file believes."""
    for name, at in types_in(text):
        place = f"{path}:{line_of(text, at)}"
        if name in known:
            yield f"{place}: {name} is defined in {known[name]} too"
        known.setdefault(name, place)


def faults(project):
    known = {}
    visible = {path.name for path in project.iterdir() if not path.name.startswith(".")}
    for name in sorted(visible ^ TOP_LEVEL):
        yield f"{name}: " + ("does not belong at the top level" if name in visible else "is missing at the top level")
    tables = sorted((project / "include/slabwright").glob("units*.hpp"))
    units = units_in("".join(path.read_text() for path in tables))
    folders = [project / name for name in sorted(visible & TOP_LEVEL) + [".ci"]]
    for whole in sorted(path for folder in folders for path in ([folder] if folder.is_file() else folder.rglob("*"))):
        path = whole.relative_to(project)
        if not whole.is_file() or whole == Path(__file__).resolve() or "__pycache__" in path.parts:
            continue
        text = whole.read_text(errors="replace")
        yield from word_faults(path, text)
        if path.suffix not in CODE or "data" in path.parts:
            continue
        yield from size_faults(path, text)
        if path.suffix in (".cpp", ".hpp"):
            bare = without_comments_and_quotes(text)
            yield from function_faults(path, bare)
            if path.parts[0] != "tests":
                yield from twice_faults(path, bare, known)
            if path.parts[0] == "include" and units:
                yield from unit_faults(path, bare, units)


if __name__ == "__main__":
    found = list(faults(Path(sys.argv[1] if len(sys.argv) > 1 else Path(__file__).parents[2]).resolve()))
    print("\n".join(found) or "budgets: all kept")
    sys.exit(1 if found else 0)
