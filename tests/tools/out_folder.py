#!/usr/bin/env python3
"""Looks at what a run leaves on the disk: whole files in its folder, and nothing anywhere else.

usage: out_folder.py killed PROGRAM LAYOUT [KILLS]   kills runs at random moments
       out_folder.py full PROGRAM LAYOUT             fills small disks; says so where it may not mount them
       out_folder.py outside PROGRAM LAYOUT...       every command, among traps; strace watches where it is at hand

Exit code 77: this machine does not allow the test.
"""
import os
import random
import re
import shutil
import subprocess
import sys
import tempfile
import time
from pathlib import Path

UNFINISHED = ".slabwright-part"
COMPUTED = (0, 3)
NOT_HERE = 77


def command(program, layout, out):
    return [program, "sheets", "--quick", layout, "--out", out]


def run(words, **more):
    return subprocess.run(list(map(str, words)), capture_output=True, text=True, check=False, **more)


def contents(folder):
    """Name to bytes of what stands in a folder; what is unfinished apart."""
    files = {entry.name: entry.read_bytes() if entry.is_file() else None for entry in sorted(Path(folder).iterdir())}
    part = {name for name in files if name.endswith(UNFINISHED)}
    return {name: data for name, data in files.items() if name not in part}, part


def undisturbed(program, layout, folder):
    """The files of a whole run, its seconds, and how many of them it spends writing."""
    start = time.monotonic()
    process = subprocess.Popen(command(program, layout, folder), stdout=subprocess.DEVNULL)
    while process.poll() is None and not (folder.exists() and any(os.scandir(folder))):
        time.sleep(0.0005)
    first = time.monotonic()
    if process.wait() not in COMPUTED:
        sys.exit(f"{layout} ended with {process.returncode}")
    end = time.monotonic()
    return contents(folder)[0], end - start, max(end - first, 0.002)


def kill_one(words, folder, wait_s, in_writing):
    """Kills a run after some seconds, counted from its start or from the first trace of its writing."""
    process = subprocess.Popen(list(map(str, words)), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    if in_writing:
        while process.poll() is None and not (folder.exists() and any(e.name.endswith(UNFINISHED)
                                                                      for e in os.scandir(folder))):
            pass
    end = time.monotonic() + wait_s
    while time.monotonic() < end and process.poll() is None:
        time.sleep(0)
    process.kill()
    return process.wait() != -9


def killed(program, layout, kills="40"):
    """Half of the kills are spread over the run, half over its writing; into empty folders and over other files."""
    chance, found, cut, ended = random.Random(20261127), [], 0, 0
    with tempfile.TemporaryDirectory() as name:
        base = Path(name)
        runs = [undisturbed(program, layout, base / f"whole{n}") for n in range(3)]
        whole = runs[0][0]  # the quickest run of the three is the one to fall into: others were held up
        length_s, writing_s = min(seconds for _, seconds, _ in runs), min(seconds for _, _, seconds in runs)
        older = {sheet: b"older\n" for sheet in list(whole)[::2]}
        for n in range(int(kills)):
            folder = base / str(n)
            if n % 4 < 2:
                folder.mkdir()
                for sheet, data in older.items():
                    (folder / sheet).write_bytes(data)
            in_writing = n % 2 == 1
            wait_s = chance.uniform(0, writing_s if in_writing else length_s)
            ended += kill_one(command(program, layout, folder), folder, wait_s, in_writing)
            files, part = contents(folder) if folder.exists() else ({}, set())
            cut += bool(part)
            found += [f"kill {n}: {sheet} is neither whole nor the older one" for sheet, data in files.items()
                      if data not in (whole.get(sheet), older.get(sheet) if n % 4 < 2 else None)]
            if part:  # the next run has all files whole and takes the traces away
                run(command(program, layout, folder))
                if contents(folder) != (whole, set()):
                    found.append(f"kill {n}: the next run did not put it right")
            shutil.rmtree(folder, ignore_errors=True)
    if cut == 0:
        found.append("no kill fell into the writing: nothing was tried")
    print(f"{kills} kills over {length_s:.2f} s, {cut} left unfinished files, {ended} came after the end")
    return found


def in_own_mounts(arguments):
    """Runs this again where it may mount, or says that it may not."""
    own = ["unshare", "--mount"] + ([] if os.geteuid() == 0 else ["--user", "--map-root-user"])
    try:
        if run([*own, "sh", "-c", "mount -t tmpfs -o size=64k none /mnt"]).returncode != 0:
            raise OSError
    except OSError:
        print("skipped: mounting is not allowed here")
        return NOT_HERE
    return subprocess.run([*own, sys.executable, __file__, *arguments], check=False,
                          env={**os.environ, "MAY_MOUNT": "yes"}).returncode


def fill(program, layout, disk, size, before):
    """Runs onto a disk of `size` bytes that already holds `before`; says what is wrong about what is there then."""
    if run(["mount", "-t", "tmpfs", "-o", f"size={size}", "none", disk]).returncode != 0:
        sys.exit("cannot mount")
    try:
        folder = disk / "cards"
        folder.mkdir()
        for sheet, data in before.items():
            (folder / sheet).write_bytes(data)
        done = run(command(program, layout, folder))
        return done.returncode, done.stdout, done.stderr, contents(folder)
    finally:
        run(["umount", disk])


def full(program, layout):
    if os.environ.get("MAY_MOUNT") != "yes":
        return in_own_mounts(["full", program, layout])
    found, refused = [], 0
    with tempfile.TemporaryDirectory() as name:
        base = Path(name)
        (base / "disk").mkdir()
        whole, _, _ = undisturbed(program, layout, base / "whole")
        need = sum(len(data) for data in whole.values())
        page = 4096
        shares = (0.0, 0.02, 0.1, 0.3, 0.5, 0.7, 0.9, 0.97, 1.2)
        sizes = [max(page, int(need * share) // page * page) for share in shares]
        for size in [*sizes, 3 * need]:
            for before in ({}, {"loops.csv": b"older\n"}):
                code, out, told, (files, part) = fill(program, layout, base / "disk", size, before)
                where = f"a disk of {size} bytes, exit {code}"
                if part:
                    found.append(f"{where}: {sorted(part)} left")
                if code == 2:
                    refused += 1
                    if files != before or out or "the disk is full" not in told or "Nothing was written" not in told:
                        found.append(f"{where}: {sorted(files)} are there; it said: {told}")
                elif code not in COMPUTED or files != whole:
                    found.append(f"{where}: {len(files)} of {len(whole)} files; it said: {told}")
        with open("/dev/full", "w", encoding="utf-8") as full_device:
            done = subprocess.run([program, "design", layout], stdout=full_device, stderr=subprocess.PIPE, check=False)
        if done.returncode != 2 or b"could not be printed whole" not in done.stderr:
            found.append(f"onto a full device: exit {done.returncode}, {done.stderr}")
    if refused == 0:
        found.append("no disk was too small: nothing was tried")
    print(f"{2 * (len(sizes) + 1)} disks, {refused} too small for {need} bytes")
    return found


def snapshot(folder):
    """Every path below a folder with what it is and holds."""
    return {path.relative_to(folder): (path.lstat().st_mode, os.readlink(path) if path.is_symlink() else
                                       path.read_bytes() if path.is_file() else None)
            for path in Path(folder).rglob("*")}


def traced(trace, out):
    """Calls in a trace that change something on the disk elsewhere than in `out`."""
    for line in trace.read_text(errors="replace").splitlines():
        line = line.split(maxsplit=1)[-1]  # the process that calls stands first
        if line.startswith(("+++", "---")) or "(" not in line:
            continue
        changes = any(flag in line for flag in ("O_WRONLY", "O_RDWR", "O_CREAT")) or "openat(" not in line
        if changes and "/dev/" not in line and f"<{out}" not in line and f'"{out}' not in line:
            yield line


def trap(out, elsewhere):
    """A folder in which names of sheets lead elsewhere, also unfinished ones."""
    out.mkdir()
    for name in ("loops.csv", "index.html", "plan.svg" + UNFINISHED, "loops.csv" + UNFINISHED):
        (out / name).symlink_to(elsewhere / "precious")
    (out / ("ways" + UNFINISHED)).symlink_to(elsewhere, target_is_directory=True)


def with_paths_for_names(layout, folder, elsewhere):
    """The layout with its names changed to paths that lead out of every folder, by turns upwards and from the root."""
    text = layout.read_text(encoding="utf-8")
    for number, name in enumerate(sorted(set(re.findall(r'^name *= *"([^"\\\\]*)"', text, re.M)))):
        path = f"../../elsewhere/{number}" if number % 2 else f"{elsewhere}/{number}"
        text = text.replace(f'"{name}"', f'"{path}"')
    changed = folder / "paths.toml"
    changed.write_text(text, encoding="utf-8")
    return changed


def outside(program, *layouts):
    watch = shutil.which("strace")
    if watch and run([watch, "-o", "/dev/null", "true"]).returncode != 0:
        watch = None
    found, files = [], set()
    with tempfile.TemporaryDirectory() as name:
        base = Path(name)
        for part in ("work", "home", "tmp", "elsewhere"):
            (base / part).mkdir()
        own = {**os.environ, "HOME": str(base / "home"), "TMPDIR": str(base / "tmp")}
        (base / "elsewhere/precious").write_bytes(b"precious\n")
        for layout in (*layouts, with_paths_for_names(Path(layouts[-1]), base / "work", base / "elsewhere")):
            for number, word in enumerate(("check", "design", "route", "balance", "freeze --quick", "winter --quick",
                                           "drill", "cure --poured 2026-09-14", "sheets --quick")):
                out = base / "work" / f"out{number}"
                before = snapshot(base)
                trap(out, base / "elsewhere")
                words = [program, *word.split(), layout, "--out", out]
                if watch:
                    words = [watch, "-f", "-y", "-o", base / "trace", "-e",
                             "trace=open,openat,creat,mkdir,mkdirat,rename,renameat,renameat2,unlink,unlinkat,link,"
                             "linkat,symlink,symlinkat,truncate,chmod,fchmodat", *words]
                done = run(words, cwd=base / "work", env=own)
                if watch:
                    found += [f"{word} {layout}: {line}" for line in traced(base / "trace", out)]
                    (base / "trace").unlink()
                after = snapshot(base)
                changed = [path for path in {*before, *after} if before.get(path) != after.get(path)
                           and out.relative_to(base) not in (path, *path.parents)]
                found += [f"{word} {layout} changed {path}" for path in changed]
                if done.returncode in COMPUTED:
                    written, part = contents(out)
                    files |= set(written)
                    found += [f"{word} {layout}: {left} is there" for left in part]
                shutil.rmtree(out)
    if len(files) < 10:
        found.append(f"only {sorted(files)} were written: nothing was tried")
    print(f"{len(files)} names of files" + ("" if watch else "; strace is not at hand"))
    return found


def main(arguments):
    does = {"killed": killed, "full": full, "outside": outside}[arguments[0]]
    found = does(*[str(Path(word).resolve()) if os.path.exists(word) else word for word in arguments[1:]])
    if isinstance(found, int):
        return found
    print("\n".join(found[:20]))
    return 1 if found else 0


if __name__ == "__main__":
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1:]))
