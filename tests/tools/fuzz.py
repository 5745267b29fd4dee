"""Runs the fuzzers of a build for a given time of the processor each, one after the other.

    cmake -C .ci/fuzz.cmake -S . -B .build/fuzz && cmake --build .build/fuzz
    python3 tests/tools/fuzz.py --minutes 60                    every target, an hour each
    python3 tests/tools/fuzz.py --minutes 5 design run          these two
    python3 tests/tools/fuzz.py --minutes 0 --cover .build/cover    lines that the corpus reaches, by module

Inputs that reached something new are kept in .build/fuzz/corpus and taken up again; what broke a target lies in
.build/fuzz/broken: make it small (-minimize_crash=1), mend the program, and keep it in tests/fuzz/found. A build by
.ci/cover.cmake tells which lines the corpus reaches.
"""
import argparse
import collections
import json
import os
import pathlib
import re
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]
TARGETS = ("design", "run", "units", "meters", "weather", "polygons")
# Bytes of an input, seconds of the clock, and megabytes. These seconds only end what would never end: what runs at
# nice 19 beside other work waits for minutes. Each program holds its own limit, of the processor, after every input.
LIMITS = {"run": (20000, 1200, 2048), "design": (20000, 300, 1024)}
USUAL = (2000, 300, 1024)
SLICE_S = 600


def seed_texts(target):
    """What a target begins with, by name."""
    layouts = sorted((ROOT / "layouts").glob("*.toml"))
    hostile = sorted((ROOT / "tests/hostile").glob("*.toml"))
    if target in ("design", "run"):
        return {path.name: path.read_bytes() for path in (layouts + hostile if target == "design" else layouts)}
    if target == "meters":
        tables = sorted((ROOT / "layouts").glob("*.csv")) + sorted((ROOT / "tests/hostile").glob("*.csv"))
        rows = {"row": b"-0.73 0.64 0.57 0.5", "some": b"-3: 0.2 gpm|95 F",
                "table": b"loop, flow (gpm), return (F), front (min), turns\nnorth, 0.6, 92, 4:50, 2\n2,0.5,91,5,\n"
                         b"3,-,90,,3\nthe door, 0.4 gpm, 33 C, 300 s, 1\n"}
        return rows | {path.name: path.read_bytes() for path in tables}
    if target == "weather":
        lines = {"epw": "e", "leap": "l", "tmy3": "t", "cell": "e9,6 9.9", "gap": "e9+30,9 999999", "line": "e8 1,2,3",
                 "out": "e100-", "gap3": "t9+20,31 -9900", "raw": "rLOCATION,A,B,C,D,1,45,-93,-6,254\n"}
        return {name: text.encode() for name, text in lines.items()}
    if target == "units":
        words = re.findall(r'^"(.*)"$', (ROOT / "tests/fuzz/design.dict").read_text(), re.M)
        return {f"w{i}": word.replace('\\"', '"').encode() for i, word in enumerate(words) if "=" not in word}
    return {"square": bytes([4, 0, 0, 8, 0, 8, 8, 0, 8, 4, 2, 2, 4, 2, 4, 4, 2, 4, 1, 0, 0, 8, 8])}


def cpu_of_children():
    times = os.times()
    return times.children_user + times.children_system


class Fuzzer:
    def __init__(self, build, corpus, target):
        self.program = build / "tests/fuzz" / f"fuzz_{target}"
        self.target, self.corpus = target, corpus / target
        self.broken = build / "broken" / target
        for folder in (self.corpus, self.broken):
            folder.mkdir(parents=True, exist_ok=True)
        for name, text in seed_texts(target).items():
            (self.corpus / f"seed-{name}").write_bytes(text)
        for found in sorted((ROOT / "tests/fuzz/found" / target).glob("*")):
            (self.corpus / f"found-{found.name}").write_bytes(found.read_bytes())

    def slice(self, seconds):
        """One run of the program: its figures."""
        most_bytes, most_s, most_mb = LIMITS.get(self.target, USUAL)
        words = ["nice", "-n", "19", str(self.program), str(self.corpus), f"-max_total_time={int(seconds)}",
                 f"-timeout={most_s}", f"-rss_limit_mb={most_mb}", f"-max_len={most_bytes}", "-print_final_stats=1",
                 f"-artifact_prefix={self.broken}/"]
        if self.target in ("design", "run", "units"):
            words.append(f"-dict={ROOT / 'tests/fuzz/design.dict'}")
        before = cpu_of_children()
        ran = subprocess.run(words, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True, errors="replace")
        figures = collections.Counter(cpu_s=cpu_of_children() - before)
        counted = re.findall(r"^accepted (\d+) of (\d+)$", ran.stderr, re.M)
        if counted:
            figures["accepted"], figures["counted"] = map(int, counted[-1])
        runs = re.findall(r"stat::number_of_executed_units: (\d+)", ran.stderr)
        runs = runs or re.findall(r"^#(\d+)\t", ran.stderr, re.M)
        figures["runs"] = int(runs[-1]) if runs else 0
        reached = re.findall(r"\bcov: (\d+)", ran.stderr)
        if ran.returncode:
            figures["broken"] = 1
            print(ran.stderr[-3000:], file=sys.stderr)
        return figures, int(reached[-1]) if reached else 0


def fuzz(build, corpus, target, minutes, most_broken):
    """Slices until the processor has worked on the target for so long."""
    fuzzer, total, reached = Fuzzer(build, corpus, target), collections.Counter(), 0
    while total["cpu_s"] < 60 * minutes and total["broken"] < most_broken:
        figures, now = fuzzer.slice(min(SLICE_S, max(10, 60 * minutes - total["cpu_s"])))
        total.update(figures)
        reached = max(reached, now)
    total["reached"], total["corpus"] = reached, len(list(fuzzer.corpus.iterdir()))
    return total


def add_up(path, target, figures):
    """What all runs since the file was begun come to."""
    known = json.loads(path.read_text()) if path.exists() else {}
    own = collections.Counter(known.get(target, {}))
    for key in ("cpu_s", "runs", "accepted", "counted", "broken"):
        own[key] += figures[key]
    own["reached"], own["corpus"] = max(own["reached"], figures["reached"]), figures["corpus"]
    known[target] = dict(own)
    path.write_text(json.dumps(known, indent=1))
    return known


def print_table(known):
    print(f"{'target':10}{'minutes':>9}{'runs':>12}{'runs/s':>9}{'accepted':>10}{'corpus':>8}{'edges':>8}{'broken':>8}")
    for target, f in known.items():
        share = 100.0 * f.get("accepted", 0) / max(1, f.get("counted", 0))
        print(f"{target:10}{f['cpu_s'] / 60:9.1f}{f['runs']:12}{f['runs'] / max(1e-9, f['cpu_s']):9.1f}{share:9.1f}%"
              f"{f.get('corpus', 0):8}{f.get('reached', 0):8}{f.get('broken', 0):8}")


def cover(build, corpus, targets):
    """Lines of each module that the corpora reach, each target by itself and all together."""
    profiles, programs = [], []
    for target in targets:
        program, profile = build / "tests/fuzz" / f"fuzz_{target}", build / f"{target}.profraw"
        subprocess.run(["nice", "-n", "19", str(program), "-runs=0", f"-timeout={LIMITS.get(target, USUAL)[1]}",
                        str(corpus / target)], env=os.environ | {"LLVM_PROFILE_FILE": str(profile)},
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=True)
        profiles.append(str(profile))
        programs.append(str(program))
    merged = build / "fuzz.profdata"
    subprocess.run(["llvm-profdata", "merge", "-sparse", *profiles, "-o", str(merged)], check=True)
    words = ["llvm-cov", "export", "-summary-only", f"-instr-profile={merged}", programs[0]]
    for program in programs[1:]:
        words += ["-object", program]
    exported = subprocess.run(words, check=True, stdout=subprocess.PIPE, text=True).stdout
    modules = collections.defaultdict(collections.Counter)
    for file in json.loads(exported)["data"][0]["files"]:
        path = pathlib.Path(file["filename"])
        if ROOT / "src" in path.parents:
            module = path.relative_to(ROOT / "src").parts[0]
            for what in ("lines", "functions", "branches"):
                modules[module][what] += file["summary"][what]["count"]
                modules[module][what + " reached"] += file["summary"][what]["covered"]
    print(f"{'module':12}{'lines':>8}{'reached':>9}{'functions':>11}{'branches':>10}")
    for module, f in sorted(modules.items()):
        share = {what: 100.0 * f[what + " reached"] / max(1, f[what]) for what in ("lines", "functions", "branches")}
        print(f"{module:12}{f['lines']:8}{share['lines']:8.1f}%{share['functions']:10.1f}%{share['branches']:9.1f}%")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("targets", nargs="*", metavar="TARGET", help=", ".join(TARGETS))
    parser.add_argument("--build", type=pathlib.Path, default=ROOT / ".build/fuzz")
    parser.add_argument("--corpus", type=pathlib.Path, help="BUILD/corpus when absent")
    parser.add_argument("--minutes", type=float, default=5.0, help="of the processor, for each target")
    parser.add_argument("--most-broken", type=int, default=10, help="runs that end in a find, for each target")
    parser.add_argument("--cover", type=pathlib.Path, help="a build by .ci/cover.cmake")
    asked = parser.parse_args()
    targets = asked.targets or TARGETS
    corpus = asked.corpus or asked.build / "corpus"
    broken = 0
    for target in targets:
        if target not in TARGETS:
            parser.error(f"no target {target}; there are: {', '.join(TARGETS)}")
        if asked.minutes > 0:
            figures = fuzz(asked.build, corpus, target, asked.minutes, asked.most_broken)
            broken += figures["broken"]
            print_table(add_up(corpus / "figures.json", target, figures))
            sys.stdout.flush()
    if asked.cover:
        cover(asked.cover, corpus, targets)
    return 1 if broken else 0


if __name__ == "__main__":
    sys.exit(main())
