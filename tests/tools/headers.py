#!/usr/bin/env python3
"""Compiles every public header by itself, with nothing on the include path but the public headers.

usage: headers.py COMPILER [PROJECT]
"""
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

AT_ONCE = 2


def fault(compiler, header, include):
    command = [compiler, "-std=c++20", "-fsyntax-only", "-Wall", "-Wextra", "-Wpedantic", "-Werror", "-x", "c++",
               f"-I{include}", "-"]
    source = f'#include "slabwright/{header.name}"\n'
    done = subprocess.run(command, input=source, capture_output=True, text=True, check=False)
    return f"{header.name} does not compile alone:\n{done.stderr[:800]}" if done.returncode else None


def main(compiler, project):
    include = project / "include"
    headers = sorted((include / "slabwright").glob("*.hpp"))
    with ThreadPoolExecutor(AT_ONCE) as pool:
        found = [said for said in pool.map(lambda header: fault(compiler, header, include), headers) if said]
    if not headers:
        found.append("no header found")
    print("\n".join(found) or f"{len(headers)} headers compiled")
    return 1 if found else 0


if __name__ == "__main__":
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1], Path(sys.argv[2] if len(sys.argv) > 2 else Path(__file__).parents[2])))
