#!/usr/bin/env python3
"""What the pages name must be there: files, folders, pages, sections of pages, keys of the design file, options.

usage: page_links.py [PROJECT]

Back quotes hold such names. A file stands in the project, or the program writes it: then its name is a text of the
sources. A key (`slab.thickness`, or `cure` under `[slab]`) stands in manuals/design-file.md, an option in src/app. And
the other way round: a theory page names each header of a kernel that works out figures, the guide each page.
"""
import re
import sys
from fnmatch import fnmatch
from pathlib import Path

sys.dont_write_bytecode = True

FILE = re.compile(r"^[\w*./-]+\.(?:md|hpp|cpp|txt|toml|csv|py|svg|html|dxf|cmake|tsv)$|^[\w*.-]+/[\w*./-]*$")
KEY = re.compile(r"^([a-z_]+)(?:\[\d\])?\.([a-z_]+)$")
UNDER = re.compile(r"`([a-z_]+)`\s+(?:under|in)\s+`\[+([a-z_]+)\]+`")
# One speaks of scripts and codes, the other of keys that are gone.
NO_KEYS = {"DEVELOPERS.md", "changes.md"}
# Shapes on paper: it works out no figure of a design.
NO_FIGURES = {"drawing"}
HOMES = ("", "manuals", "layouts", "include/slabwright", "src", "src/*", "tests", "tests/tools", ".ci")


def without_blocks(text):
    return re.sub(r"^```.*?^```$", lambda block: "\n" * block.group().count("\n"), text, flags=re.MULTILINE | re.DOTALL)


def line_of(text, at):
    return text.count("\n", 0, at) + 1


def headings(text):
    return [line.lstrip("#").strip() for line in without_blocks(text).splitlines() if line.startswith("#")]


def anchor(heading):
    return re.sub(r"[^\w -]", "", heading.lower()).replace(" ", "-")


def keys_of(reference):
    """section -> its keys, as the reference page has them; "" for what stands above the first section."""
    found, section = {"": set()}, ""
    for line in reference.splitlines():
        if head := re.match(r"## \[+([a-z_]+)\]+", line):
            section = head.group(1)
            found[section] = set()
        elif row := re.match(r"\| `([a-z_]+)` \|", line):
            found[section].add(row.group(1))
    return found


class Project:
    def __init__(self, root):
        self.root = root
        self.pages = {page.name: page.read_text(encoding="utf-8")
                      for page in [*sorted(root.glob("*.md")), *sorted((root / "manuals").glob("*.md"))]}
        self.sources = "".join(path.read_text(encoding="utf-8") for path in sorted((root / "src").rglob("*.[ch]pp")))
        self.keys = keys_of(self.pages.get("design-file.md", ""))

    def has_file(self, name):
        if any(next(self.root.glob(f"{home}/{name}".strip("/")), None) for home in HOMES):
            return True
        return f'{Path(name).name}"' in self.sources or f'"{Path(name).stem}"' in self.sources

    def has_key(self, section, key):
        return key in self.keys.get(section, ())


def name_faults(project, page, name):
    """What is wrong with one name in back quotes."""
    if FILE.match(name):
        if not name.startswith(".") and not project.has_file(name):
            yield f"no file {name}"
    elif page in NO_KEYS:
        return
    elif name.startswith("--"):
        if f'"{name.split()[0].split("=")[0]}' not in project.sources:
            yield f"no option {name}"
    elif key := KEY.match(name):
        if not project.has_key(*key.groups()):
            yield f"no key {name} in the design file"
    elif section := re.match(r"^\[+([a-z_]+)\]+$", name):
        if section.group(1) not in project.keys:
            yield f"no section {name} in the design file"


def link_faults(project, page, target):
    file, _, place = target.partition("#")
    if file and not (project.root / ("manuals" if page in manuals(project) else "") / file).exists():
        yield f"no file {file}"
    elif place and place not in map(anchor, headings(project.pages[Path(file or page).name])):
        yield f"no section #{place} in {file or page}"


def manuals(project):
    return {path.name for path in (project.root / "manuals").glob("*.md")}


def page_faults(project, page, text):
    plain = without_blocks(text)
    for match in re.finditer(r"`([^`]+)`", plain):
        yield from ((match.start(), fault) for fault in name_faults(project, page, match.group(1)))
    for match in re.finditer(r"\]\(([^)\s]+)\)", plain):
        yield from ((match.start(), fault) for fault in link_faults(project, page, match.group(1)))
    for match in UNDER.finditer(plain):
        if not project.has_key(match.group(2), match.group(1)):
            yield match.start(), f"no key {match.group(1)} under [{match.group(2)}] in the design file"
    for match in re.finditer(r"\b(theory-[a-z]+(?:-[a-z]+)*)(\.md)?(`, ([a-z ]+)\))?", plain):
        other = project.pages.get(match.group(1) + ".md")
        if other is None and "*" not in plain[match.end():match.end() + 1]:
            yield match.start(), f"no page {match.group(1)}.md"
        elif match.group(4) and not any(match.group(4) in heading.lower() for heading in headings(other)):
            yield match.start(), f"no section on {match.group(4)} in {match.group(1)}.md"


def unnamed(project):
    """Headers of kernels that no theory page names, and pages that the guide does not."""
    rows = re.findall(r"^\| \d+ \| (\w+) \| kernel \|", project.pages.get("DEVELOPERS.md", ""), re.MULTILINE)
    named = [Path(name).name for page, text in project.pages.items() if page.startswith("theory-")
             for name in re.findall(r"`([^`\s]+\.hpp)`", text)]
    for header in sorted((project.root / "include/slabwright").glob("*.hpp")):
        if re.split(r"[_.]", header.name)[0] in set(rows) - NO_FIGURES:
            if not any(fnmatch(header.name, name) for name in named):
                yield f"guide.md:1: no theory page names {header.name}"
    for page in sorted(manuals(project) - {"guide.md"}):
        if f"`{page}`" not in project.pages.get("guide.md", f"`{page}`"):
            yield f"guide.md:1: the guide does not name {page}"


def faults(root):
    project = Project(root)
    yield from unnamed(project)
    for page, text in project.pages.items():
        plain = without_blocks(text)
        yield from (f"{page}:{line_of(plain, at)}: {fault}" for at, fault in page_faults(project, page, text))


def main(root):
    found = list(faults(root))
    print("\n".join(found) or "everything that the pages name is there")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1] if len(sys.argv) > 1 else Path(__file__).parents[2])))
