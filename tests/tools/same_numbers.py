#!/usr/bin/env python3
"""Holds the answers of several builds against each other: every layout, every command, every number at nine digits,
every text as it stands; and what each says of hostile files.

usage: same_numbers.py [--only=WORD] [--whole] [--seconds] BUILD BUILD...

A build is a path. What ends in .js is the browser's program and runs in Node (tests/browser/door.js); a file called
door is tests/tools/door.cpp, the same function on the machine; every other is the program of the command line, whose
--json has six digits and is held to those. The first build is the one that the others are held against, a door.
Without --whole the frost hold, the winter and the sheets are asked for --quick but of one layout.
same_numbers.txt beside this script names the keys that may differ, how far, and why.
"""
import base64
import concurrent.futures
import fnmatch
import gzip
import json
import math
import re
import subprocess
import sys
import tempfile
import time
from pathlib import Path

PROJECT = Path(__file__).resolve().parents[2]
DIGITS = 9
PRINTED_DIGITS = 6  # of the command line
ALL_DIGITS = 17
MOST_SHOWN = 25
QUICK = ("freeze", "winter", "sheets")  # with --quick: the whole form asks the same code a hundred times as often
ALWAYS_WHOLE = ("ten-lines",)
COMMANDS = ("check", "design", "route", "balance", "freeze", "winter", "drill", "cure", "sheets")
LONGEST_S = 900


class Question:
    """A request for every kind of build."""

    def __init__(self, name, command, design=None, options=None, files=None):
        self.name, self.command, self.design = name, command, design  # design: a path, or None
        self.options, self.files = options or {}, files or {}  # files: name -> path

    def request(self):
        request = {"command": self.command, "options": self.options, "digits": ALL_DIGITS,
                   "files": {name: path.read_text(encoding="utf-8") for name, path in self.files.items()}}
        if self.design:
            request |= {"design": self.design.read_text(encoding="utf-8"), "name": self.design.name}
        return json.dumps(request)

    def words(self):
        words = [self.command] + ([self.design.name] if self.design else [])
        for name, value in self.options.items():
            words += [name] if value is True else [name, value]
        return words + ["--json"]


class Door:
    """A program that answers requests one by one on its pipes."""

    def __init__(self, words):
        self.left = b""
        self.run = subprocess.Popen(words, stdin=subprocess.PIPE, stdout=subprocess.PIPE)

    def answer(self, question):
        self.run.stdin.write(question.request().encode() + b"\n")
        self.run.stdin.flush()
        pieces = []
        while not pieces or b"\0" not in pieces[-1]:
            pieces.append(self.run.stdout.read1())
            if not pieces[-1]:
                raise SystemExit(f"{question.name}: the build ended without an answer")
        return b"".join(pieces).rstrip(b"\0").decode()

    def end(self):
        self.run.stdin.close()
        self.run.wait()


class Program:
    """The command line, in a folder with the question's files."""

    def __init__(self, path):
        self.path = Path(path).resolve()

    def answer(self, question):
        files = {**question.files, **({question.design.name: question.design} if question.design else {})}
        with tempfile.TemporaryDirectory() as folder:
            for name, path in files.items():
                (Path(folder) / name).write_bytes(path.read_bytes())
            run = subprocess.run([self.path, *question.words()], cwd=folder, capture_output=True, timeout=LONGEST_S)
        if run.stdout:
            return run.stdout.decode()
        return json.dumps({"exit": run.returncode, "text": run.stderr.decode()})

    def end(self):
        pass


def is_program(path):
    return not path.endswith(".js") and Path(path).name != "door"


def build_of(path):
    if path.endswith(".js"):
        return Door(["node", str(PROJECT / "tests/browser/door.js"), path])
    return Program(path) if is_program(path) else Door([str(Path(path).resolve())])


def layouts(whole):
    for path in sorted((PROJECT / "layouts").glob("*.toml")):
        for command in COMMANDS:
            if whole or command not in QUICK or path.stem in ALWAYS_WHOLE:
                yield Question(f"{path.stem} {command}", command, path)
            if command in QUICK:
                yield Question(f"{path.stem} {command} --quick", command, path, {"--quick": True})
    old_pour, readings = PROJECT / "layouts/old-pour.toml", PROJECT / "layouts/old-pour-readings.csv"
    yield Question("old-pour readings", "balance", old_pour, {"--readings": readings.name}, {readings.name: readings})
    yield Question("old-pour flows", "balance", old_pour, {"--read": "0.73 0.64 0.57 0.6 0.5", "--water": "95 F"})
    yield Question("frame-shop better place", "route", PROJECT / "layouts/frame-shop.toml", {"--better-place": True})
    yield Question("options alone", "design", None,
                   {"--size": "36 x 30 ft", "--spacing": "12 in", "--outdoor": "-12 F"})
    yield Question("lengths alone", "balance", None, {"--tube": "1/2 in", "--lengths": "188 241 262 290 ft"})
    yield Question("gauge", "gauge", None, {"--then": "60 psi at 70 F", "--now": "53 psi at 20 F"})


def is_text(path):
    """Whether a file can stand in a request: others hold no valid text."""
    try:
        return path.read_text(encoding="utf-8") is not None
    except UnicodeDecodeError:
        return False


def hostile():
    folder = PROJECT / "tests/hostile"
    for path in sorted(folder.glob("*.toml")):
        if is_text(path):
            yield Question(f"hostile {path.stem}", "check", path)
    for path in sorted(folder.glob("*.csv")):
        if is_text(path):
            yield Question(f"hostile {path.stem}", "balance", PROJECT / "layouts/old-pour.toml",
                           {"--readings": path.name}, {path.name: path})


def exceptions(text):
    """(pattern of a path, how far apart, why): "freeze.place[*].left_K  1e-9  what is left of ..."."""
    found = []
    for line in text.splitlines():
        if line.strip() and not line.startswith("#"):
            pattern, within, why = line.split(None, 2)
            # Brackets in a path are brackets, only the star stands for anything.
            found.append((re.compile(fnmatch.translate(pattern.replace("[", "[[]"))), float(within), why))
    return found


def leaves(tree, path=""):
    """(path, value) of all that a tree holds; empty lists and objects too."""
    if isinstance(tree, dict) and tree:
        for key, value in tree.items():
            yield from leaves(value, f"{path}.{key}" if path else key)
    elif isinstance(tree, list) and tree:
        for n, value in enumerate(tree):
            yield from leaves(value, f"{path}[{n}]")
    else:
        yield path, tree


def is_number(value):
    return isinstance(value, (int, float)) and not isinstance(value, bool)


def printed(value):
    """A number as --json prints it."""
    return float(f"{value:.{PRINTED_DIGITS}g}") if isinstance(value, float) else value


class Comparison:
    """Counts what is equal between two builds, and keeps what is not."""

    def __init__(self, allowed, as_printed):
        self.allowed, self.as_printed = allowed, as_printed
        self.numbers = self.texts = self.printed_otherwise = self.excused = 0
        self.faults, self.worst = [], (0.0, "nothing")

    def number(self, where, path, a, b):
        self.numbers += 1
        if printed(a) != printed(b):
            self.printed_otherwise += 1
        if self.as_printed:
            a, b = printed(a), printed(b)
        if a == b:
            return
        apart, size = abs(a - b), max(abs(a), abs(b))
        if not self.as_printed and any(it.fullmatch(path) and apart <= within for it, within, _ in self.allowed):
            self.excused += 1
            return
        self.worst = max(self.worst, (apart / size, f"{where}: {path}"))
        # Half a unit of the last digit, as large as it is against the number that is written with it.
        if self.as_printed or apart > 0.5 * 10.0 ** (math.floor(math.log10(size)) + 1 - DIGITS):
            self.faults.append(f"{where}: {path}: {a!r} and {b!r}")

    def values(self, where, path, a, b):
        if is_number(a) and is_number(b):
            self.number(where, path, a, b)
            return
        self.texts += 1
        if a != b or isinstance(a, bool) != isinstance(b, bool):
            self.faults.append(f"{where}: {path}: {a!r} and {b!r}")

    def answers(self, where, one, other):
        first, second = dict(leaves(one)), dict(leaves(other))
        for path in [*first, *(path for path in second if path not in first)]:
            if path in first and path in second:
                self.values(where, path, first[path], second[path])
            # The command line prints problems as one text.
            elif not (self.as_printed and path.startswith("problems")):
                self.faults.append(f"{where}: only {'one' if path in first else 'the other'} has {path}")


def size_words(path):
    """How large the browser's program is."""
    script = Path(path).read_bytes()
    found = re.search(rb"data:application/octet-stream;base64,([A-Za-z0-9+/=]+)", script)
    core = base64.b64decode(found.group(1)) if found else b""
    sizes = [len(data) / 1e6 for data in (script, gzip.compress(script), core, gzip.compress(core))]
    return "{}: {:.2f} MB, {:.2f} MB packed; the core in it {:.2f} MB, {:.2f} MB packed".format(path, *sizes)


def ask_all(path, questions):
    build, answers, times = build_of(path), {}, {}
    for question in questions:
        start = time.monotonic()
        answers[question.name] = json.loads(build.answer(question))
        times[question.name] = time.monotonic() - start
    build.end()
    return answers, times


def print_times(paths, times, questions):
    print("seconds: " + ", ".join(paths))
    for question in questions:
        print(f"  {question.name:34}" + "".join(f"{times[path][question.name]:9.2f}" for path in paths))
    print(f"  {'all':34}" + "".join(f"{sum(times[path].values()):9.2f}" for path in paths))


def compare(first, other, answers, questions):
    comparison = Comparison(exceptions(Path(__file__).with_suffix(".txt").read_text()), is_program(other))
    for question in questions:
        comparison.answers(question.name, answers[first][question.name], answers[other][question.name])
    digits = PRINTED_DIGITS if comparison.as_printed else DIGITS
    print(f"{first} and {other}: {comparison.numbers} numbers at {digits} digits and {comparison.texts} texts of "
          f"{len(questions)} answers, {len(comparison.faults)} not equal; {comparison.printed_otherwise} numbers are "
          f"printed otherwise, {comparison.excused} are excused; farthest apart by a share of "
          f"{comparison.worst[0]:.1e} ({comparison.worst[1]})")
    for fault in comparison.faults[:MOST_SHOWN]:
        print("  " + fault)
    return len(comparison.faults)


def main(words):
    flags = {word for word in words if word.startswith("--")}
    only = next((word.split("=", 1)[1] for word in flags if word.startswith("--only=")), "")
    paths = [word for word in words if word not in flags]
    if len(paths) < 2 or is_program(paths[0]):
        raise SystemExit(__doc__)
    questions = [question for question in [*layouts("--whole" in flags), *hostile()] if only in question.name]
    if not questions:
        raise SystemExit(f"no question has {only} in its name")
    # A process each, two at a time: with more they would wait for one another on two cores.
    with concurrent.futures.ThreadPoolExecutor(2) as pool:
        asked = list(pool.map(lambda path: ask_all(path, questions), paths))
    answers, times = ({path: pair[i] for path, pair in zip(paths, asked)} for i in (0, 1))
    for path in paths:
        if path.endswith(".js"):
            print(size_words(path))
    if "--seconds" in flags:
        print_times(paths, times, questions)
    return 1 if sum([compare(paths[0], other, answers, questions) for other in paths[1:]]) else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
