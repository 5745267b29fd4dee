"""Sheets on paper: the size a page asks for, and whether what belongs together stays on one page of the PDF."""
import base64
import html
import re
import subprocess

PX = {"px": 1.0, "in": 96.0, "mm": 96.0 / 25.4, "cm": 96.0 / 2.54, "pt": 96.0 / 72.0, "pc": 16.0, "q": 96.0 / 101.6}
# Sizes with a name in CSS Paged Media, in millimetres.
NAMED = {"a5": (148, 210), "a4": (210, 297), "a3": (297, 420), "b5": (176, 250), "b4": (250, 353),
         "letter": (215.9, 279.4), "legal": (215.9, 355.6), "ledger": (279.4, 431.8)}
DEFAULT_MARGIN_PX = 0.4 * 96.0
MARK = re.compile(r"zq(\d+)([ab])z")
NEAR_PX = 0.5


def length_px(text):
    found = re.fullmatch(r"([\d.]+)([a-z]*)", text.strip().lower())
    if not found or (found.group(2) or "px") not in PX:
        return None
    return float(found.group(1)) * PX[found.group(2) or "px"]


def size_px(text):
    """Width and height of "letter", "A3 landscape", "5.5in 8.5in"; nothing where it is no size."""
    words = text.lower().split()
    turned = "landscape" in words
    words = [word for word in words if word not in ("landscape", "portrait")]
    if len(words) == 1 and words[0] in NAMED:
        width, height = (side * PX["mm"] for side in NAMED[words[0]])
        return (height, width) if turned else (width, height)
    sides = [length_px(word) for word in words]
    if not sides or len(sides) > 2 or None in sides:
        return None
    return sides[0], sides[-1]


def area_px(papers):
    """Width and height inside the margins of the page that has no name of its own; nothing where none is told."""
    told = {}
    for paper in papers:
        if paper["name"] == "":
            told |= {name: value for name, value in paper.items() if value}
    size = size_px(told.get("size", ""))
    if not size:
        return None
    margin = {side: length_px(told.get(side, "")) for side in ("left", "right", "top", "bottom")}
    margin = {side: DEFAULT_MARGIN_PX if value is None else value for side, value in margin.items()}
    return size[0] - margin["left"] - margin["right"], size[1] - margin["top"] - margin["bottom"]


def pages_of(pdf):
    """The words of each page, each (left, top, right, bottom, text) in points: [{width, height, words}]."""
    told = subprocess.run(["pdftotext", "-bbox", "-", "-"], input=pdf, capture_output=True, check=True).stdout.decode()
    pages = []
    for tag in re.finditer(r'<page width="([\d.]+)" height="([\d.]+)">|<word ([^>]*)>(.*?)</word>', told, re.DOTALL):
        if tag.group(1):
            pages.append({"width": float(tag.group(1)), "height": float(tag.group(2)), "words": []})
            continue
        box = [float(value) for value in re.findall(r'="(-?[\d.]+)"', tag.group(3))]
        pages[-1]["words"].append((*box, html.unescape(tag.group(4))))
    return pages


def marks_of(pages):
    """The page on which each mark stands: {(7, "a"): 0}."""
    return {(int(n), end): number for number, page in enumerate(pages) for *_, word in page["words"]
            for n, end in MARK.findall(word)}


def page_faults(pages):
    for number, page in enumerate(pages, 1):
        words = [word for word in page["words"] if MARK.sub("", word[4]).strip()]
        if not page["words"]:
            yield f"page {number} of {len(pages)} is empty", None
        for left, top, right, bottom, word in words:
            if left < -1 or top < -1 or right > page["width"] + 1 or bottom > page["height"] + 1:
                yield f"runs off page {number}: \"{word}\"", None


def broken_faults(things, marks, height_px):
    """What is cut in two, or parted from what it belongs with. `height_px` is that of a page inside its margins."""
    for thing in things:
        what = f"{thing['kind']} \"{thing['text']}\""
        if not thing["keeps"] and thing["kind"] in ("row", "figure"):
            yield f"{what}: its style does not say break-inside: avoid", thing["thing"]
        too_high = thing["height"] > height_px + NEAR_PX
        if too_high and thing["kind"] == "card" and not thing["keeps"]:
            continue  # its rows and tables answer for themselves
        if too_high and thing["kind"] in ("figure", "drawing", "card", "part", "row"):
            yield f"{what} is {thing['height']:.0f} px high, a page holds {height_px:.0f}", thing["thing"]
            continue
        last = thing.get("last", thing["n"])
        first_page = marks.get((thing["n"], "b" if thing["kind"] == "heading" else "a"))
        last_page = marks.get((last, "a" if thing["kind"] == "heading" else "b"))
        if first_page is None or last_page is None or first_page == last_page:
            continue
        if thing["kind"] == "heading":
            yield f"{what} stands on page {first_page + 1}, what follows it on the next", thing["thing"]
        elif thing["kind"] != "table":
            yield f"{what} is cut in two, on pages {first_page + 1} and {last_page + 1}", thing["thing"]
        elif thing["height"] <= height_px:
            yield f"{what} is cut in two and would fit on one page", thing["thing"]
        elif not thing["keeps"]:
            yield f"{what} goes on on the next page without its head", thing["thing"]


def pdf_of(tab):
    return base64.b64decode(tab.call("Page.printToPDF", preferCSSPageSize=True, printBackground=False)["data"])


def print_faults(tab, area):
    """Prints the page that a tab shows; gives its faults, each with a number for `paper.things`, and its pages."""
    things = tab.ask("paper.mark()")
    pages = pages_of(pdf_of(tab))
    return [*page_faults(pages), *broken_faults(things, marks_of(pages), area[1])], len(pages)
