#!/usr/bin/env python3
"""Runs every command that the README and the manuals show, and holds what they quote against what it prints.

usage: manual_commands.py PROGRAM [PROJECT] [--write]

A command is a line of a fenced `sh` block that begins with "slabwright " or "cat "; a comment `# exit 3` at its end
says which exit code it must give. The commands of a page run in order in a folder with a copy of layouts/, as at the
top level. Every command that an answer names as the next one must be one that the program takes.

A fenced `text` block quotes the last command before it: line by line, runs of blanks alike, a line `...` where lines
are left out. --write looks for the quoted lines in what the command prints now, by their words, and puts the new lines
in their place. A fenced `toml` block must be a design file that `check` can read.
"""
import difflib
import os
import re
import shutil
import subprocess
import sys
import tempfile
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

LONGEST_S = 120
LEFT_OUT = "..."
# How alike two lines must be, digits not looked at, for one to be the other's successor.
ALIKE = 0.6


@dataclass
class Block:
    """A fenced block: its word, the number of its first line within, and its lines."""
    word: str
    first: int
    lines: list


def blocks(page):
    found, open_block = [], None
    for number, line in enumerate(page.splitlines(), 1):
        if not line.startswith("```"):
            if open_block:
                open_block.lines.append(line)
        elif open_block:
            found.append(open_block)
            open_block = None
        else:
            open_block = Block(line[3:].strip(), number + 1, [])
    return found


def commands_in(block):
    """(line number, command, expected exit code) of each command in a block."""
    lines, at = block.lines, 0
    while at < len(lines):
        number, line = block.first + at, lines[at]
        while line.endswith("\\") and at + 1 < len(lines):
            at += 1
            line = line[:-1] + lines[at].strip()
        at += 1
        if line.startswith(("slabwright ", "cat ")) or line == "slabwright":
            said = re.search(r"#\s*exit (\d+)", line)
            yield number, line, int(said.group(1)) if said else 0


def commands(page):
    return [command for block in blocks(page) if block.word == "sh" for command in commands_in(block)]


def folded(line):
    return " ".join(line.split())


def pieces(lines):
    """The stretches between the lines `...`, each a list of lines; the first and the last are empty where one is left
    out there."""
    found = [[]]
    for line in lines:
        if line.strip() == LEFT_OUT:
            found.append([])
        else:
            found[-1].append(line)
    return found


def place_of(piece, printed, start):
    """Where the lines of a piece stand one after the other in what was printed, from `start` on; None if nowhere."""
    wanted = [folded(line) for line in piece]
    for at in range(start, len(printed) - len(wanted) + 1):
        if [folded(line) for line in printed[at:at + len(wanted)]] == wanted:
            return at
    return None


def drift(lines, printed):
    """What a quoted block says that was not printed; empty when it is true."""
    all_pieces = pieces(lines)
    at = 0
    for number, piece in enumerate(all_pieces):
        found = place_of(piece, printed, at)
        if found is None:
            near = [line for line in difflib.unified_diff(piece, printed, lineterm="", n=0) if line[:1] == "-"]
            return "not printed, at least not there: " + "\n    ".join(near[2:6] or piece[:4])
        if number == 0 and piece and found != 0:
            return "lines are left out before the first; say so with " + LEFT_OUT
        at = found + len(piece)
    if all_pieces[-1] and at != len(printed):
        # The last piece may stand once more at the very end.
        if place_of(all_pieces[-1], printed, len(printed) - len(all_pieces[-1])) is None:
            return "lines are left out after the last; say so with " + LEFT_OUT
    return ""


def words_of(line):
    return re.sub(r"[\d,.]+", "0", folded(line))


def alike(line, other):
    return difflib.SequenceMatcher(None, words_of(line), words_of(other)).ratio()


def successor(line, printed, start):
    """The printed line from `start` on that says most nearly the same; None where none is like it."""
    best, at = ALIKE, None
    for number in range(start, len(printed)):
        if alike(line, printed[number]) > best:
            best, at = alike(line, printed[number]), number
    return at


def last_of(piece, printed, first):
    """Where a piece that begins at `first` ends now: as long as it was, if that line is like its last one. Rows of
    figures are all alike, so the likest of them may be another."""
    at = first + len(piece) - 1
    return at if at < len(printed) and alike(piece[-1], printed[at]) > ALIKE else successor(piece[-1], printed, first)


def renewed(lines, printed):
    """The quoted block with the lines that are printed now; None where a piece's ends cannot be found again."""
    new, at, all_pieces = [], 0, pieces(lines)
    for number, piece in enumerate(all_pieces):
        if number > 0:
            new.append(LEFT_OUT)
        if not piece:
            continue
        first = 0 if number == 0 else successor(piece[0], printed, at)
        last = None if first is None else last_of(piece, printed, first)
        if number == len(all_pieces) - 1:
            last = len(printed) - 1
        if first is None or last is None:
            return None
        new += printed[first:last + 1]
        at = last + 1
    return new


class Shop:
    """A folder with the layouts and the program, where the commands of a page run in order."""

    def __init__(self, folder, program, layouts):
        self.folder = Path(folder)
        shutil.copytree(layouts, self.folder / "layouts")
        (self.folder / "bin").mkdir()
        (self.folder / "bin/slabwright").symlink_to(program)
        self.environment = {**os.environ, "PATH": f"{folder}/bin:{os.environ['PATH']}"}
        self.next_seen, self.known = set(), {}

    def run(self, command):
        """What a command does. One that only reads a layout is not run twice."""
        plain = "layouts/" in command and "--out" not in command
        if plain and command in self.known:
            return self.known[command]
        ran = self.run_anew(command)
        if plain:
            self.known[command] = ran
        return ran

    def run_anew(self, command):
        return subprocess.run(["bash", "-o", "pipefail", "-c", command], cwd=self.folder, env=self.environment,
                              text=True, stdin=subprocess.DEVNULL, capture_output=True, timeout=LONGEST_S)

    def refused_next(self, printed):
        """The commands that an answer names as next and that the program does not take; each is asked for its help."""
        whole = re.sub(r"\\\n\s*", "", printed)
        for command in re.findall(r"^Next:  (slabwright .*?)(?:      all figures:.*)?$", whole, re.MULTILINE):
            if command in self.next_seen:
                continue
            self.next_seen.add(command)
            if self.run(command + " --help").returncode != 0:
                yield command


def asked(page, shop, block):
    """Runs the commands of a block; what is wrong with them, and what the last one printed."""
    found, printed = [], None
    for number, command, expected in commands_in(block):
        printed = None
        try:
            run = shop.run(command)
        except subprocess.TimeoutExpired:
            found.append(f"{page}:{number}: `{command}` did not end within {LONGEST_S} s")
            continue
        printed = (run.stdout + run.stderr).rstrip("\n").split("\n")
        if run.returncode != expected:
            tail = (run.stderr or run.stdout)[-1000:]
            found.append(f"{page}:{number}: `{command}` gave exit code {run.returncode}, expected {expected}\n{tail}")
        found += [f"{page}:{number}: `{command}` names a next command that is refused: {next_one}"
                  for next_one in shop.refused_next(run.stdout)]
    return found, printed


def file_faults(page, shop, block):
    (shop.folder / "block.toml").write_text("\n".join(block.lines) + "\n", encoding="utf-8")
    run = shop.run("slabwright check block.toml")
    # A part of a file may be too little for a floor that works.
    if run.returncode not in (0, 3):
        yield f"{page}:{block.first}: not a design file that `check` can read:\n{(run.stderr or run.stdout)[-1000:]}"


def read_page(page, text, program, layouts):
    """What is wrong with a page, and its text with every quoted block renewed."""
    found, lines, moved, printed = [], text.splitlines(), 0, None
    with tempfile.TemporaryDirectory() as folder:
        shop = Shop(folder, program, layouts)
        for block in blocks(text):
            if block.word == "sh":
                wrong, printed = asked(page, shop, block)
                found += wrong
                continue
            if block.word == "toml":
                found += file_faults(page, shop, block)
            if block.word == "text":
                said = drift(block.lines, printed) if printed is not None else "no command stands before it"
                new = renewed(block.lines, printed) if said and printed is not None else block.lines
                if said:
                    found.append(f"{page}:{block.first}: {said}")
                if new is not None and new != block.lines:
                    first = block.first - 1 + moved
                    lines[first:first + len(block.lines)] = new
                    moved += len(new) - len(block.lines)
    return found, "\n".join(lines) + "\n"


def faults(page, text, program, layouts):
    return read_page(page, text, program, layouts)[0]


def main(program, project, write):
    pages = [project / "README.md", *sorted((project / "manuals").glob("*.md"))]
    found, count, quotes = [], 0, 0
    texts = [page.read_text(encoding="utf-8") for page in pages]
    # Each page has a folder of its own, so that two may run side by side.
    with ThreadPoolExecutor(2) as both:
        read = both.map(lambda page, text: read_page(page.relative_to(project), text, program, project / "layouts"),
                        pages, texts)
    for page, text, (wrong, new) in zip(pages, texts, read):
        if write and new != text:
            page.write_text(new, encoding="utf-8")
            print(f"{page.relative_to(project)} is written anew; run again without --write")
        found += wrong
        count += len(commands(text))
        quotes += sum(block.word == "text" for block in blocks(text))
    if count == 0:
        found.append("no command found in any page")
    print("\n".join(found) or f"{count} commands run, {quotes} quoted answers true")
    return 1 if found else 0


if __name__ == "__main__":
    options = [word for word in sys.argv[1:] if word != "--write"]
    if not options:
        sys.exit(__doc__)
    root = Path(options[1] if len(options) > 1 else Path(__file__).parents[2])
    sys.exit(main(Path(options[0]).resolve(), root, "--write" in sys.argv[1:]))
