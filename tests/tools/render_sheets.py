#!/usr/bin/env python3
"""Shows HTML pages in a headless Chromium, on a phone, on a desk and on paper, and says what is wrong with them.

usage: render_sheets.py FOLDER... [--png FOLDER]

Every page of the folders is opened from disk, with scripts and without. A fault is one line: page, size, what, where.
--png writes what the pages look like, in colour and in grey.
"""
import argparse
import base64
import math
import subprocess
import sys
import time
from pathlib import Path
from urllib.parse import unquote, urlsplit

sys.dont_write_bytecode = True
import render_judge
import render_paper
from devtools import Browser, BrowserError

HERE = Path(__file__).parent
GATHER = "".join((HERE / name).read_text(encoding="utf-8") for name in ("render_ground.js", "render_page.js"))
MARK = (HERE / "render_paper.js").read_text(encoding="utf-8")
SCREENS = {"phone": (360, 740, 2, True), "desktop": (1280, 900, 1, False)}
SAME_FAULT_MOST = 6  # of one kind on one page and size; the rest is counted


def located(tab, faults, paths):
    """Faults as (what, where), with the path of each element that one is about."""
    numbers = sorted({n for _, n in faults if n is not None})
    where = dict(zip(numbers, tab.ask(f"{paths}({numbers})"))) if numbers else {}
    return [(what, where.get(n, "")) for what, n in faults]


def event_faults(events, url):
    """What the browser said and fetched while it showed a page."""
    for event in events:
        told = event["params"]
        if event["method"] == "Network.requestWillBeSent":
            asked = told["request"]["url"]
            if not asked.startswith("data:") and asked.partition("#")[0] != url:
                yield f"fetches {asked[:100]}", ""
        elif event["method"] == "Network.loadingFailed":
            yield f"something did not load: {told.get('errorText')}", ""
        elif event["method"] == "Runtime.consoleAPICalled":
            words = " ".join(str(a.get("value", a.get("description", ""))) for a in told["args"])
            yield f"console {told['type']}: {words[:100]}", ""
        elif event["method"] == "Runtime.exceptionThrown":
            yield f"exception: {told['exceptionDetails']['text']}", ""
        elif event["method"] == "Log.entryAdded":
            yield f"browser's {told['entry']['level']}: {told['entry']['text'][:100]}", ""


def link_faults(facts, page):
    """Links lead to sheets of the same folder, or to places on the page."""
    for link in facts["links"]:
        parts = urlsplit(link["to"])
        name = unquote(parts.path)
        if not link["words"]:
            yield f"link without words: {link['to'][:60]}", link["n"]
        if parts.scheme or parts.netloc or "/" in name:
            yield f"link out of the folder: {link['to'][:60]}", link["n"]
        elif name and not (page.parent / name).is_file():
            yield f"link to no sheet: {link['to'][:60]}", link["n"]
        elif not name and parts.fragment not in facts["ids"]:
            yield f"link to no place on the page: {link['to'][:60]}", link["n"]


class Pictures:
    """Writes what pages look like, where that is asked for."""

    def __init__(self, folder):
        self.folder = Path(folder) if folder else None

    def screen(self, tab, page, size):
        if not self.folder:
            return
        self.folder.mkdir(parents=True, exist_ok=True)
        for tone, deficiency in (("", "none"), ("-grey", "achromatopsia")):
            tab.call("Emulation.setEmulatedVisionDeficiency", type=deficiency)
            png = tab.call("Page.captureScreenshot", captureBeyondViewport=True)["data"]
            path = self.folder / f"{page.parent.name}-{page.stem}-{size}{tone}.png"
            path.write_bytes(base64.b64decode(png))
        tab.call("Emulation.setEmulatedVisionDeficiency", type="none")

    def paper(self, tab, page):
        if not self.folder:
            return
        pdf = render_paper.pdf_of(tab)
        for tone, switch in (("", []), ("-grey", ["-gray"])):
            stem = self.folder / f"{page.parent.name}-{page.stem}-print{tone}"
            subprocess.run(["pdftoppm", "-r", "90", "-png", *switch, "-", str(stem)], input=pdf, check=True)


def on_screens(tab, page, pictures):
    for size, (width, height, scale, mobile) in SCREENS.items():
        tab.size(width, height, scale, mobile)
        least = render_judge.SMALLEST_ON_A_PHONE_PX if size == "phone" else 0.0
        look = tab.ask("rendered.look(false)")
        found = list(render_judge.look_faults(look, least))
        if size == "desktop":
            found += render_judge.scrolling_faults(look)
        yield from ((size, *fault) for fault in located(tab, found, "rendered.paths"))
        pictures.screen(tab, page, size)


def on_paper(tab, page, pictures):
    tab.media("print")
    papers = tab.ask("rendered.papers()")
    area = render_paper.area_px(papers)
    if any(paper["name"] for paper in papers):
        yield "print", "cannot be judged: pages with names of their own", ""
    if not area:
        yield "print", "no @page rule says its paper", ""
        area = (render_paper.NAMED["letter"][0] * render_paper.PX["mm"] - 2 * render_paper.DEFAULT_MARGIN_PX,
                render_paper.NAMED["letter"][1] * render_paper.PX["mm"] - 2 * render_paper.DEFAULT_MARGIN_PX)
    tab.size(math.ceil(area[0]), int(area[1]))
    found = list(render_judge.look_faults(tab.ask("rendered.look(true)"), render_judge.SMALLEST_ON_PAPER_PX))
    yield from (("print", *fault) for fault in located(tab, found, "rendered.paths"))
    pictures.paper(tab, page)
    tab.ask(MARK)
    found, count = render_paper.print_faults(tab, area)
    yield from (("print", *fault)
                for fault in located(tab, found, "(numbers => rendered.paths_of(numbers.map(n => paper.things[n])))"))
    tab.media("")
    yield "print", None, count


def faults_of(tab, page, pictures):
    """All faults of a page as (size, what, where); one with no `what` tells how many pages it prints on."""
    url = page.resolve().as_uri()
    tab.take_events()
    words = {}
    for scripts in (True, False):
        tab.scripts(scripts)
        tab.size(*SCREENS["desktop"])
        tab.open(url)
        words[scripts] = tab.ask("document.body.innerText")
    if words[True] != words[False]:
        yield "desktop", f"shows {len(words[False])} letters without scripts and {len(words[True])} with them", ""
    if not words[False].strip():
        yield "desktop", "shows nothing without scripts", ""
    tab.ask(GATHER)
    facts = tab.ask("rendered.facts()")
    found = [*render_judge.fact_faults(facts), *link_faults(facts, page)]
    yield from (("any", *fault) for fault in located(tab, found, "rendered.paths"))
    yield from on_screens(tab, page, pictures)
    yield from on_paper(tab, page, pictures)
    yield from (("any", *fault) for fault in dict.fromkeys(event_faults(tab.take_events(), url)))


def told(page, faults):
    """One line for each fault; of many alike the first few and how many more."""
    counts = {}
    for size, what, where in faults:
        kind = (size, what.split(":")[0].split("\"")[0][:12])
        counts[kind] = counts.get(kind, 0) + 1
        if counts[kind] <= SAME_FAULT_MOST:
            yield f"{page.parent.name}/{page.name}\t{size}\t{what}\t{where}"
    for (size, kind), count in counts.items():
        if count > SAME_FAULT_MOST:
            yield f"{page.parent.name}/{page.name}\t{size}\tand {count - SAME_FAULT_MOST} more like: {kind}\t"


def pages_in(folders):
    return [page for folder in folders for page in sorted(Path(folder).glob("*.html"))]


def lines_of(folders, png=None, browser=None):
    """Every fault of every page as a line, and the number of printed pages."""
    lines, printed, pictures = [], 0, Pictures(png)
    with browser or Browser() as running:
        tab = running.tab()
        for page in pages_in(folders):
            faults = []
            for size, what, where in faults_of(tab, page, pictures):
                if what is None:
                    printed += where
                else:
                    faults.append((size, what, where))
            lines += told(page, faults)
    return lines, printed


def main(arguments):
    parser = argparse.ArgumentParser()
    parser.add_argument("folders", nargs="+")
    parser.add_argument("--png")
    asked = parser.parse_args(arguments)
    pages = pages_in(asked.folders)
    if not pages:
        return f"no pages in {' '.join(asked.folders)}"
    start = time.monotonic()
    try:
        lines, printed = lines_of(asked.folders, asked.png)
    except (BrowserError, FileNotFoundError) as fault:
        return str(fault)
    print(f"{len(pages)} pages at {len(SCREENS) + 1} sizes, {printed} sheets of paper, {len(lines)} faults, "
          f"{time.monotonic() - start:.0f} s")
    return "\n".join(lines)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]) or 0)
