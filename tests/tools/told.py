#!/usr/bin/env python3
"""Tries what the program tells shells and `man` about itself: completion in bash, zsh and fish, and the manual pages.

usage: told.py PROGRAM

bash is asked as it asks itself: the words of a line, and what stands in COMPREPLY then. Shells and groff that are not
at hand are named and left out; bash must be.
"""
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

# What is typed, the cursor behind its last letter, and all that must be offered.
LINES = [
    ("slabwright fr", {"freeze"}),
    ("slabwright c", {"check", "cure"}),
    ("slabwright freeze --he", {"--help"}),
    ("slabwright freeze --e", {"--edge", "--explain"}),
    ("slabwright winter --w", {"--wide"}),
    ("slabwright design --w", set()),
    ("slabwright balance my.toml --re", {"--read", "--readings"}),
    ("slabwright gauge --then '60 psi at 70 F' --th", {"--then", "--thermometer-error"}),
    ("slabwright gauge --sp", set()),
    ("slabwright design --units ", {"US", "SI"}),
    ("slabwright design --units=S", {"SI"}),
    ("slabwright design --building t", {"tight"}),
    ("slabwright design --spacing ", set()),
    ("slabwright design --out c", {"cards"}),
    ("slabwright design s", {"shop.toml", "shops"}),
    ("slabwright balance --readings r", {"read.csv"}),
    ("slabwright gauge s", set()),
]
ASK = r'''
source "$1"
shift
COMP_WORDS=("$@") COMP_CWORD=$(($# - 1))
_slabwright
[ ${#COMPREPLY[@]} -eq 0 ] || printf '%s\n' "${COMPREPLY[@]}"
'''


def output(*words, **more):
    return subprocess.run(list(map(str, words)), capture_output=True, text=True, check=False, **more)


def typed_words(line):
    """As bash splits it: between spaces, quotes kept together, an = by itself."""
    words = [word for word in re.findall(r"'[^']*'|=|[^\s=]+", line)]
    return words + ([""] if line.endswith(" ") else [])


def in_bash(script, folder, line):
    done = output("bash", "-c", ASK, "ask", script, *typed_words(line), cwd=folder)
    if done.stderr:
        return {f"an error: {done.stderr.strip()}"}
    return set(done.stdout.split())


def in_fish(script, folder, line):
    done = output("fish", "--no-config", "-c", f'source {script}; complete -C "{line}"', cwd=folder)
    return {answer.split("\t")[0].removeprefix("--units=") for answer in done.stdout.splitlines()}


def shells(program, base):
    folder = base / "here"
    for part in ("cards", "shops"):
        (folder / part).mkdir(parents=True)
    for name in ("shop.toml", "read.csv", "other.txt"):
        (folder / name).write_text("", encoding="utf-8")
    for shell in ("bash", "zsh", "fish"):
        script = base / f"slabwright.{shell}"
        told = output(program, "--completion", shell)
        if told.returncode != 0:
            yield f"--completion {shell}: exit {told.returncode}, {told.stderr}"
        script.write_text(told.stdout, encoding="utf-8")
        if shell != "bash" and not shutil.which(shell):
            print(f"{shell} is not at hand")
            continue
        if syntax := output(shell, "-n", script).stderr:
            yield f"{shell}: {syntax}"
    for line, wanted in LINES:
        if (offered := in_bash(base / "slabwright.bash", folder, line)) != wanted:
            yield f"bash: `{line}` offers {sorted(offered)}, not {sorted(wanted)}"
        if shutil.which("fish"):
            offered = {word.rstrip("/") for word in in_fish(base / "slabwright.fish", folder, line)}
            if not wanted <= offered or (wanted and any(word.startswith("--") for word in offered - wanted)):
                yield f"fish: `{line}` offers {sorted(offered)}, not {sorted(wanted)}"


def pages(program):
    front = output(program, "--man").stdout
    words = re.findall(r"^\.BR slabwright\\-(\w+)", front, re.M)
    if len(words) < 10 or any(word not in output(program).stdout for word in words):
        yield f"the manual page names {words}; the front page not all of them"
    for word in ["", *words]:
        page = output(program, "--man", *([word] if word else [])).stdout
        plain = page.replace("\\-", "-")
        for option in re.findall(r"^  (--[a-z-]+)", output(program, word, "--help").stdout if word else "", re.M):
            if f"\\fB{option}\\fR" not in plain:
                yield f"the page of {word} does not name {option}"
        if not shutil.which("groff"):
            continue
        shown = output("groff", "-man", "-ww", "-Tascii", "-P-cbou", input=page)
        if shown.stderr or "NAME" not in shown.stdout:
            yield f"groff says of the page of {word or 'slabwright'}: {shown.stderr}"


def main(program):
    with tempfile.TemporaryDirectory() as name:
        found = [*shells(program, Path(name)), *pages(program)]
    print("\n".join(found) or f"{len(LINES)} lines completed")
    return 1 if found else 0


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    sys.exit(main(Path(sys.argv[1]).resolve()))
