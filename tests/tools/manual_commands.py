#!/usr/bin/env python3
"""Runs every command that the README and the manuals show.

usage: manual_commands.py PROGRAM [PROJECT]

A command is a line of a fenced `sh` block that begins with "slabwright "; a comment `# exit 3` at its end says which
exit code it must give. The commands of a page run in order in a folder with a copy of layouts/, as at the top level.
"""
import os
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

LONGEST_S = 120


def commands(page):
    """(line number, command, expected exit code) of each command in a page's text."""
    found, fenced = [], False
    lines = page.splitlines()
    for number, line in enumerate(lines, 1):
        if line.lstrip().startswith("```"):
            fenced = not fenced and line.strip() == "```sh"
        elif fenced and line.startswith("slabwright "):
            more = number
            while line.endswith("\\"):
                line = line[:-1] + lines[more].strip()
                more += 1
            said = re.search(r"#\s*exit (\d+)", line)
            found.append((number, line, int(said.group(1)) if said else 0))
    return found


def faults(page, text, program, layouts):
    """Runs a page's commands and says which of them ended otherwise than the page says."""
    with tempfile.TemporaryDirectory() as folder:
        shutil.copytree(layouts, Path(folder) / "layouts")
        (Path(folder) / "bin").mkdir()
        (Path(folder) / "bin/slabwright").symlink_to(program)
        paths = {**os.environ, "PATH": f"{folder}/bin:{os.environ['PATH']}"}
        for number, command, expected in commands(text):
            try:
                run = subprocess.run(["bash", "-o", "pipefail", "-c", command], cwd=folder, env=paths, text=True,
                                     stdin=subprocess.DEVNULL, capture_output=True, timeout=LONGEST_S)
            except subprocess.TimeoutExpired:
                yield f"{page}:{number}: `{command}` did not end within {LONGEST_S} s"
                continue
            if run.returncode != expected:
                tail = (run.stderr or run.stdout)[-1000:]
                yield f"{page}:{number}: `{command}` gave exit code {run.returncode}, expected {expected}\n{tail}"


def main(program, project):
    pages = [project / "README.md", *sorted((project / "manuals").glob("*.md"))]
    texts = {page: page.read_text(encoding="utf-8") for page in pages if page.exists()}
    found = [fault for page, text in texts.items()
             for fault in faults(page.relative_to(project), text, program, project / "layouts")]
    count = sum(len(commands(text)) for text in texts.values())
    if count == 0:
        found.append("no command found in any page")
    print("\n".join(found) or f"{count} commands run")
    return 1 if found else 0


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    sys.exit(main(Path(sys.argv[1]).resolve(), Path(sys.argv[2] if len(sys.argv) > 2 else Path(__file__).parents[2])))
