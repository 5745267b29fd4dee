"""What is wrong with what a page shows: pure functions of what render_page.js has gathered.

Each yields faults as (what, number of the element). Lengths are CSS pixels.
"""
import re

SMALLEST_ON_A_PHONE_PX = 11.0
SMALLEST_ON_PAPER_PX = 8.0  # 6 points
TOUCH_PX = 1.0  # ink may run over other ink by this much: where it lies is told to about that
LARGE_PX, LARGE_BOLD_PX = 24.0, 56.0 / 3.0  # WCAG 2.2: 18 points, 14 points bold
AA, AA_LARGE = 4.5, 3.0


def luminance(colour):
    """Relative luminance of an sRGB colour, each part 0 to 255: WCAG 2.2, definition of relative luminance."""
    parts = [part / 255.0 for part in colour[:3]]
    red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one, other):
    """Contrast ratio, 1 to 21: WCAG 2.2, definition of contrast ratio."""
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def over(top, below):
    return [c * top[3] + b * (1.0 - top[3]) for c, b in zip(top, below)]


def as_hex(colour):
    return "#" + "".join(f"{round(part):02x}" for part in colour[:3])


def contrast_faults(texts):
    for text in texts:
        if isinstance(text["grounds"], str) or not text["colour"] or not text["grounds"]:
            why = text["grounds"] if isinstance(text["grounds"], str) else "its own colour is not plain"
            yield f"contrast of \"{text['text'][:30]}\" cannot be judged: {why}", text["n"]
            continue
        large = text["px"] >= LARGE_PX or (text["bold"] and text["px"] >= LARGE_BOLD_PX)
        asked = AA_LARGE if large else AA
        worst = min(text["grounds"], key=lambda ground: contrast(over(text["colour"], ground), ground))
        shown = over(text["colour"], worst)
        ratio = contrast(shown, worst)
        if ratio < asked:
            yield (f"contrast {ratio:.2f}, asked {asked}: {as_hex(shown)} on {as_hex(worst)} of "
                   f"\"{text['text'][:30]}\""), text["n"]


def axes_of(box):
    """Directions across the sides of a box of four corners."""
    corners = list(zip(box[::2], box[1::2]))
    for (ax, ay), (bx, by) in zip(corners, corners[1:3]):
        length = ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5
        if length > 0.0:
            yield (bx - ax) / length, (by - ay) / length


def overlap_px(a, b):
    """How far two boxes of four corners, turned in any way, run into each other; zero or less where they do not."""
    least = float("inf")
    for x, y in [*axes_of(a), *axes_of(b)]:
        one = [px * x + py * y for px, py in zip(a[::2], a[1::2])]
        other = [px * x + py * y for px, py in zip(b[::2], b[1::2])]
        least = min(least, min(max(one), max(other)) - max(min(one), min(other)))
    return least


def text_on_text(texts):
    """Pairs of texts whose ink meets, by a sweep from left to right."""
    boxes = sorted((min(box[::2]), max(box[::2]), min(box[1::2]), max(box[1::2]), k, box)
                   for k, text in enumerate(texts) for box in text["boxes"])
    open_boxes, told = [], set()
    for left, right, top, bottom, k, box in boxes:
        open_boxes = [other for other in open_boxes if other[1] > left + TOUCH_PX]
        for _, _, its_top, its_bottom, j, its_box in open_boxes:
            if j == k or its_top > bottom - TOUCH_PX or its_bottom < top + TOUCH_PX or (j, k) in told:
                continue
            by = overlap_px(box, its_box)
            if by > TOUCH_PX:
                told |= {(j, k), (k, j)}
                yield f"\"{texts[k]['text'][:30]}\" lies on \"{texts[j]['text'][:30]}\" by {by:.1f} px", texts[k]["n"]
        open_boxes.append((left, right, top, bottom, k, box))


def size_faults(texts, least_px):
    for text in texts:
        if text["px"] < least_px - 0.01:
            yield f"letters of {text['px']:.1f} px, at least {least_px:.0f}: \"{text['text'][:30]}\"", text["n"]


def look_faults(look, least_px):
    """All that is judged at each size."""
    if look["scroll_width"] > look["width"]:
        yield f"the page is {look['scroll_width']} px wide in a window of {look['width']}", None
    for box in look["sticking_out"]:
        yield f"sticks out of the window: from {box['left']:.0f} to {box['right']:.0f} of {look['width']} px", box["n"]
    for cut in look["cut_off"]:
        yield f"text is cut off: \"{cut['text']}\"", cut["n"]
    for text in look["texts"]:
        if text.get("cut"):
            yield f"text is cut off by its drawing: \"{text['text'][:30]}\"", text["n"]
        if text.get("covered"):
            yield f"text is covered by what is drawn later: \"{text['text'][:30]}\"", text["n"]
    yield from text_on_text(look["texts"])
    yield from size_faults(look["texts"], least_px)
    yield from contrast_faults(look["texts"])


def scrolling_faults(look):
    """On a desk: what would fit the window and yet has to be scrolled to, because the box around it is too narrow."""
    for box in look["scrolling"]:
        if box["wide"] <= look["width"]:
            yield f"has to be scrolled on a desk: {box['wide']} px in a box of {box['shown']}", box["n"]


def heading_faults(headings):
    if [h["level"] for h in headings].count(1) != 1:
        yield f"{[h['level'] for h in headings].count(1)} headings of the first rank; there is one on a page", None
    before = 0
    for heading in headings:
        if heading["level"] > before + 1:
            yield f"heading of rank {heading['level']} after rank {before}: \"{heading['text'][:40]}\"", heading["n"]
        if not heading["text"]:
            yield "heading without words", heading["n"]
        before = heading["level"]


def fact_faults(facts):
    """What a page must have whatever its size, but for where its links lead."""
    for name, good in (("lang", re.fullmatch(r"[a-z]{2}(-[A-Za-z0-9]+)*", facts["lang"])), ("title", facts["title"]),
                       ("doctype", facts["doctype"]), ("meta charset utf-8", facts["charset"].lower() == "utf-8"),
                       ("meta viewport", "width=device-width" in facts["viewport"])):
        if not good:
            yield f"no {name}", None
    if re.search(r"maximum-scale|user-scalable\s*=\s*no", facts["viewport"]):
        yield "the viewport keeps readers from enlarging the page", None
    yield from heading_faults(facts["headings"])
    for svg in facts["svgs"]:
        if not svg["name"]:
            yield "drawing without a title", svg["n"]
    for n in facts["pictures"]:
        yield "picture without alt", n
    for n in facts["twice"]:
        yield "an id that another element has", n
    for n in facts["running"]:
        yield "something that runs, or stands in for what does not: sheets have no scripts", n
    for out in facts["outward"]:
        yield f"reaches out of the page: {out['to'][:80]}", out["n"]
