#!/usr/bin/env python3
"""Holds every #include against the room table in DEVELOPERS.md, and the build's module(...) lines against it too.

usage: layers.py [PROJECT]
"""
import re
import sys
from dataclasses import dataclass
from pathlib import Path

sys.dont_write_bytecode = True
from cpp_text import without_comments_and_quotes

# Core has several public headers; every other module's begin with its own name.
CORE = ("units", "fields", "key", "diagnostics", "ids", "contract", "numbers", "progress")

# Where each package may be included. None of them may be in include/.
HOMES = {
    "boost/graph/": {"hydraulics", "routing"},
    "boost/geometry": {"geometry"},
    "boost/": {"hydraulics", "routing", "geometry"},
    "Eigen/": {"maths", "conduction", "hydraulics"},
    "toml++/": {"design"},
    "nlohmann/": {"report", "page"},
    "CLI/": {"app"},
    "unistd.h": {"app"},  # whether somebody sits at a terminal
    "fcntl.h": {"app"}, "sys/": {"app"},  # files whole or not at all
    "fmt/": None,  # any source
}

# The oldest of the three compilers has none of these, or has them half.
NOT_IN_THE_DIALECT = {"ranges", "format", "expected", "source_location", "memory_resource", "compare"}

# No threads, files, terminal, clock or locale below app, and nothing whose order of walking is not fixed.
APP_ONLY = {"thread", "mutex", "atomic", "future", "condition_variable", "fstream", "filesystem", "iostream", "chrono",
            "ctime", "locale", "clocale", "unordered_map", "unordered_set"}

# Formulas that were made for another floor than the one at hand: beside a field they are second opinions, and a stage
# may ask them only in files that say so by their name.
SECOND_OPINIONS = {f"slabwright/handbook_{source}.hpp" for source in ("star", "en1264", "iso13370")}

# Words with a home: the one coupling loop lives in plant, its routine in maths.
WORDS = {r"\bfixed_point\s*\(": {"maths", "plant"}, r"\bgetenv\s*\(": {"app"}, r"\bstd::ranges\b": set()}


@dataclass
class Room:
    floor: int
    kind: str
    uses: set


def room_table(text):
    """The rooms by name, from the Markdown table whose head has the columns floor, module, kind, ..., may use."""
    rows = [[cell.strip(" `*") for cell in line.strip().strip("|").split("|")]
            for line in text.splitlines() if line.lstrip().startswith("|")]
    heads = [n for n, row in enumerate(rows) if row[:3] == ["floor", "module", "kind"]]
    if not heads:
        return {}
    rooms, words = {}, {}
    for row in rows[heads[0] + 2:]:
        if len(row) != len(rows[heads[0]]) or not row[0].isdigit():
            break
        rooms[row[1]] = Room(int(row[0]), row[2], set())
        words[row[1]] = row[-1].replace(",", " ").replace("`", " ").split()
    for name, room in rooms.items():
        # "all stages" means every stage on a lower floor.
        kinds = [word[:-1] for before, word in zip(words[name], words[name][1:]) if before == "all"]
        room.uses = {other for other in words[name] if other in rooms}
        room.uses |= {other for other, it in rooms.items() if it.kind in kinds and it.floor < room.floor}
        unknown = [word for word in words[name] if word not in rooms and word != "all" and word[:-1] not in kinds]
        if unknown:
            raise SystemExit(f"DEVELOPERS.md: the row of {name} names {' '.join(unknown)}, which is no module")
    return rooms


def table_faults(rooms):
    """One way down, and kernels never see a stage."""
    rank = {"-": 0, "kernel": 1, "stage": 2, "face": 3}
    for name, room in rooms.items():
        for other in sorted(room.uses):
            if rooms[other].floor >= room.floor:
                yield f"DEVELOPERS.md: {name} may not use {other}: it is not on a lower floor"
            if rank[rooms[other].kind] > rank[room.kind]:
                yield f"DEVELOPERS.md: {name} is a {room.kind} and may not use {other}, a {rooms[other].kind}"


def build_faults(rooms, cmake):
    """The module(...) lines of CMakeLists.txt say the same as the table; app is a program, not a module."""
    calls = [call.split() for call in re.findall(r"^module\(([^)]*)\)", cmake, re.MULTILINE)]
    lines = {name: set(uses) for name, *uses in calls}
    for name in sorted((set(rooms) - {"app"}) ^ set(lines)):
        yield f"CMakeLists.txt and DEVELOPERS.md: only one of the two knows the module {name}"
    for name in sorted(set(rooms) & set(lines)):
        for other in sorted(rooms[name].uses ^ lines[name]):
            yield f"CMakeLists.txt and DEVELOPERS.md: only one of the two lets {name} use {other}"


def owner(header, rooms):
    """The module of a public header: slabwright/<module>.hpp or slabwright/<module>_<part>.hpp."""
    stem = header.removesuffix(".hpp")
    if any(stem == name or stem.startswith(name + "_") for name in CORE):
        return "core"
    return max((name for name in rooms if stem == name or stem.startswith(name + "_")), key=len, default=None)


def own_include_fault(path, name, module, rooms):
    folder, _, rest = name.rpartition("/")
    if not folder:
        folder = "slabwright" if path.parts[0] == "include" else module
    if name in SECOND_OPINIONS and rooms[module].kind == "stage" and not path.name.startswith("opinion"):
        return "is a second opinion: only opinion*.cpp of a stage may ask for it"
    if folder == "slabwright":
        other = owner(rest or name, rooms)
        if other is None:
            return "is the header of no module"
        if other not in {module, "core"} | rooms[module].uses:
            return f"belongs to {other}, which is not in the row of {module}"
    elif folder.split("/")[0] != module:
        return f"is private to {folder.split('/')[0]}" if folder.split("/")[0] in rooms else "is in no module's folder"
    return None


def package_include_fault(path, name, module):
    if name in NOT_IN_THE_DIALECT:
        return "is not in the dialect that all three compilers accept"
    if name in APP_ONLY and module != "app":
        return "is for src/app only"
    if "/" not in name and "." not in name:
        return None
    package = next((prefix for prefix in HOMES if name.startswith(prefix)), None)
    if package is None:
        return "is of no package with a home (see HOMES)"
    if path.parts[0] == "include":
        return "is a package; public headers show none"
    if HOMES[package] is not None and module not in HOMES[package]:
        return "has its home in " + " ".join(f"src/{home}" for home in sorted(HOMES[package]))
    return None


def file_faults(path, text, rooms):
    """Sentences about one file; `path` is relative to the project."""
    module = owner(path.name, rooms) if path.parts[0] == "include" else path.parts[1]
    if module not in rooms:
        yield f"{path}: belongs to no module of the table in DEVELOPERS.md"
        return
    for number, line in enumerate(text.splitlines(), 1):
        found = re.match(r'\s*#\s*include\s*(["<])([^">]+)[">]', line)
        if not found:
            continue
        quote, name = found.groups()
        own = quote == '"'
        fault = own_include_fault(path, name, module, rooms) if own else package_include_fault(path, name, module)
        if fault:
            yield f"{path}:{number}: {name} {fault}"
    for number, line in enumerate(without_comments_and_quotes(text).splitlines(), 1):
        for word, homes in WORDS.items():
            if module not in homes and re.search(word, line):
                allowed = " ".join(sorted(homes)) or "no module"
                yield f"{path}:{number}: {re.search(word, line).group()} is allowed in {allowed} only"


def faults(project):
    page = project / "DEVELOPERS.md"
    rooms = room_table(page.read_text()) if page.exists() else {}
    if not rooms:
        yield "DEVELOPERS.md: no table with the columns floor, module, kind, ..., may use"
        return
    yield from table_faults(rooms)
    yield from build_faults(rooms, (project / "CMakeLists.txt").read_text())
    for folder in ("include", "src"):
        for path in sorted((project / folder).rglob("*.[ch]pp")):
            yield from file_faults(path.relative_to(project), path.read_text(), rooms)


if __name__ == "__main__":
    found = list(faults(Path(sys.argv[1] if len(sys.argv) > 1 else Path(__file__).parents[2])))
    print("\n".join(found) or "layers: every include is in its module's row")
    sys.exit(1 if found else 0)
