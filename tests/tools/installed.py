#!/usr/bin/env python3
"""Installs a build into an empty folder, uses it there, and builds tests/consumer against it.

usage: installed.py BUILD COMPILER [PROJECT]
"""
import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path


def run(*words):
    done = subprocess.run(list(map(str, words)), capture_output=True, text=True, check=False)
    if done.returncode != 0:
        told = done.stdout[-2000:] + done.stderr[-2000:]
        sys.exit(f"{' '.join(map(str, words))} ended with {done.returncode}:\n{told}")
    return done.stdout


def missing(prefix, project):
    """What should stand below the prefix and does not, and what stands there and should not."""
    there = {str(path.relative_to(prefix)) for path in prefix.rglob("*") if path.is_file()}
    library = next((path for path in there if path.endswith("/libslabwright.a")), "none")
    wanted = {"bin/slabwright", library, "share/bash-completion/completions/slabwright",
              "share/fish/vendor_completions.d/slabwright.fish", "share/zsh/site-functions/_slabwright",
              "share/man/man1/slabwright.1", "share/doc/slabwright/README.md"}
    front = run(prefix / "bin/slabwright", "--man")
    wanted |= {f"share/man/man1/slabwright-{word}.1" for word in re.findall(r"^\.BR slabwright\\-(\w+)", front, re.M)}
    wanted |= {f"include/slabwright/{path.name}" for path in (project / "include/slabwright").iterdir()}
    for part in ("layouts", "manuals"):
        wanted |= {f"share/doc/slabwright/{path.relative_to(project)}" for path in (project / part).rglob("*")
                   if path.is_file()}
    package = {path for path in there if "/cmake/slabwright/slabwright" in path}
    yield from (f"{path} is not installed" for path in sorted(wanted - there))
    yield from (f"{path} is installed, and nobody knows why" for path in sorted(there - wanted - package))
    if len(package) < 3:
        yield f"the CMake package is only {sorted(package)}"


def consumed(prefix, compiler, project, folder):
    """What the consumer prints, and what the installed program says of the same file."""
    layout = prefix / "share/doc/slabwright/layouts/ten-lines.toml"
    run("cmake", "-G", "Ninja", "-S", project / "tests/consumer", "-B", folder, "-D", f"CMAKE_PREFIX_PATH={prefix}",
        "-D", f"CMAKE_CXX_COMPILER={compiler}")
    run("cmake", "--build", folder)
    printed = run(folder / "consumer", layout)
    answer = json.loads(run(prefix / "bin/slabwright", "design", layout, "--json"))
    return float(printed.split()[0]), answer["loops"]["tube_m"]


def main(build, compiler, project):
    with tempfile.TemporaryDirectory() as name:
        prefix = Path(name) / "prefix"
        run("cmake", "--install", build, "--prefix", prefix)
        found = list(missing(prefix, project))
        printed, told = consumed(prefix, compiler, project, Path(name) / "consumer")
        # The consumer prints six digits.
        if abs(printed - told) > 1e-5 * abs(told):
            found.append(f"the consumer prints {printed}, the program {told}")
    print("\n".join(found) or f"installed, and the consumer read {printed} m of tube")
    return 1 if found else 0


if __name__ == "__main__":
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    sys.exit(main(Path(sys.argv[1]), sys.argv[2],
                  Path(sys.argv[3]) if len(sys.argv) > 3 else Path(__file__).resolve().parents[2]))
