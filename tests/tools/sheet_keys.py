#!/usr/bin/env python3
"""Holds every number on the sheets of a folder against the answer it tells, and finds numbers that tell none.

usage: sheet_keys.py FOLDER...

FOLDER holds pages, FOLDER.json beside it the answer as `--json` prints it. An element's data-key names, with a blank
between them, the members of the answer that its text tells, in order: numbers within half of the last printed digit, or
rounded up where they are bought, texts whole, lists by their length. `scale` is the key of a number that only marks a
scale in a drawing, `page` and `figure` those of page and figure numbers.
"""
import json
import re
import sys
from pathlib import Path

sys.dont_write_bytecode = True
import sheet_numbers
from sheet_text import NOT_READ, drawing_of, plain, tree_of, word_in

FREE_KEYS = {"page", "figure"}
SCALE = "scale"
ROUNDED_UP = {"sizes.tank.tank_m3"}  # bought "or more"
READ_ALOUD = ("title", "alt", "aria-label", "aria-description", "placeholder", "content", "summary")
DIGIT = re.compile(r"[\d½¼¾⅓⅔⅛⅜⅝⅞]")
PAGE_FAULTS_MOST = 20  # are told one by one
NEARLY_IN_PLACE = 0.02  # of a step between ticks: places are rounded to a hundredth of a millimetre


def value_of(answer, key):
    """The member of the answer that a key names; KeyError where there is none."""
    at = answer
    if not re.fullmatch(r"\w+(?:\[\d+\])*(?:\.\w+(?:\[\d+\])*)*", key):
        raise KeyError(key)
    for part in re.findall(r"\w+", key):
        at = at[int(part)] if isinstance(at, list) else at[part]
    return at


class Sheet:
    """A page with what is found wrong on it. A fault is (line, what, where)."""

    def __init__(self, html, answer, units):
        self.answer, self.units, self.faults = answer, units, []
        self.root, unclosed = tree_of(html)
        self.told = 0  # numbers that stand as the answer has them
        for tag, line in unclosed:
            self.faults.append((line, f"<{tag}> is not closed in order", tag))

    def fault(self, element, what):
        self.faults.append((element.line, what, element.path()))

    def check(self):
        for element in self.root.elements():
            if element.tag in NOT_READ:
                continue
            if "data-key" in element.attributes:
                self.check_keyed(element)
            elif "data-unit" in element.attributes:
                self.fault(element, "data-unit without data-key")
            self.check_attributes(element)
            if not self.keyed_around(element):
                for child in element.children:
                    if isinstance(child, str) and self.has_digit(child):
                        self.fault(element, f"a digit without a key: \"{plain(child)[:60]}\"")
        self.check_pieces()
        self.check_axes()
        return self

    def has_digit(self, text):
        return bool(DIGIT.search(text)) and bool(DIGIT.search(self.units.without_names(plain(text))))

    def keyed_around(self, element):
        return "data-key" in element.attributes or any("data-key" in above.attributes for above in element.ancestors())

    def check_attributes(self, element):
        for name in READ_ALOUD:
            text = element.attributes.get(name, "")
            if not self.has_digit(text) or (element.tag == "meta" and element.attributes.get("name") == "viewport"):
                continue
            if "data-key" not in element.attributes:
                self.fault(element, f"a digit without a key in {name}: \"{text[:60]}\"")
            else:
                self.follow(element, plain(text), element.attributes["data-key"].split())

    def check_keyed(self, element):
        keys = element.attributes["data-key"].split()
        text = plain(element.text(skip=lambda inner: "data-key" in inner.attributes))
        if not keys or element.attributes["data-key"] != " ".join(keys):
            self.fault(element, f"data-key \"{element.attributes['data-key']}\" is not keys with a blank between them")
        if keys == [SCALE]:
            return self.check_scale(element)
        if FREE_KEYS & set(keys):
            if len(keys) > 1 or not re.fullmatch(r"[A-Za-z ]*\d+( of \d+)?\.?", text):
                self.fault(element, f"\"{text[:60]}\" is no number of a page or figure")
            return
        self.follow(element, text, keys)
        self.check_head(element)

    def follow(self, element, text, keys):
        """Walks through a text key by key; what is left after the last may have no digit."""
        at, rest = 0, ""
        for key in keys:
            end, start = self.follow_one(element, text, at, key)
            rest += text[at:start] + " "
            at = end
        rest += text[at:]
        if self.has_digit(rest):
            self.fault(element, f"a digit that no key tells: \"{rest.strip()[:60]}\" in \"{text[:60]}\"")

    def follow_one(self, element, text, at, key):
        """Where what a key tells ends and begins in the text."""
        if key == SCALE:
            return self.follow_scale(element, text, at)
        try:
            value = value_of(self.answer, key)
        except (KeyError, IndexError, TypeError):
            self.fault(element, f"the answer has no {key}")
            return len(text), at
        if isinstance(value, (bool, type(None), dict)):
            self.fault(element, f"{key} is neither number nor text")
            return len(text), at
        if isinstance(value, str):
            return self.follow_text(element, text, at, key, plain(value))
        return self.follow_number(element, text, at, key, len(value) if isinstance(value, list) else value)

    def check_scale(self, element):
        """A text that does nothing but mark a scale may have several numbers: "1:48 (1/4 in = 1 ft)"."""
        if drawing_of(element) is None:
            self.fault(element, "the key scale outside of a drawing")

    def follow_scale(self, element, text, at):
        if drawing_of(element) is None:
            self.fault(element, "the key scale outside of a drawing")
        token = sheet_numbers.token_at(text, at)
        paper = re.compile(r"\bA[0-6]\b").search(text, at)  # a paper's name in ISO 216
        if paper and not token:
            return paper.end(), paper.start()
        if not token:
            self.fault(element, f"a scale without a number: \"{text[:60]}\"")
            return len(text), at
        ratio = re.compile(r":\d+").match(text, token.end)
        return ratio.end() if ratio else token.end, token.start

    def follow_text(self, element, text, at, key, value):
        start = text.find(value, at)
        if value and start >= 0:
            return start + len(value), start
        if drawing_of(element) is not None and word_in(text[at:].strip(), value) >= 0:
            return len(text), at  # a piece of it: `check_pieces` asks for the rest
        self.fault(element, f"\"{text[at:at + 60]}\" is not {key}: \"{value[:60]}\"")
        return len(text), at

    def follow_number(self, element, text, at, key, value):
        dimension = self.units.dimension_of(key)
        printed = sheet_numbers.read_number(text, at, dimension, self.units, element.attributes.get("data-unit"))
        if isinstance(printed, str):
            self.fault(element, f"{printed} in \"{text[:60]}\", which is to tell {key} = {value}")
            return len(text), at
        if not sheet_numbers.tells(printed, value, key in ROUNDED_UP):
            self.fault(element, f"\"{printed.words}\" is {printed.si:.6g} and not {key} = {value}")
        else:
            self.told += 1
        return printed.end, text.find(printed.words, at)

    def check_head(self, element):
        """A number whose unit is told elsewhere: in a table by the head of its column, else by what stands about it."""
        unit = element.attributes.get("data-unit")
        if unit is None:
            return
        cell, table = element.within("td"), element.within("table")
        near = element.parent.text() if cell is None else self.head_of(cell, table)
        if word_in(plain(unit), plain(near).replace("(", " ").replace(")", " ")) < 0 and unit != "%":
            self.fault(element, f"its unit {unit} is not told where a reader looks: \"{plain(near)[:60]}\"")
        elif unit == "%" and "%" not in near:
            self.fault(element, "its unit % is not told where a reader looks")

    def head_of(self, cell, table):
        def width(one):
            return int(one.attributes.get("colspan", 1))
        def cells_of(row):
            return [one for one in row.children if not isinstance(one, str) and one.tag in ("td", "th")]
        before, heads = 0, []
        for one in cells_of(cell.parent):
            if one is cell:
                break
            before += width(one)
        for row in (one for one in table.elements() if one.tag == "tr"):
            at = 0
            for one in cells_of(row):
                if one.tag == "th" and (at <= before < at + width(one) or row is cell.parent):
                    heads.append(one.text())
                at += width(one)
        return " ".join(heads)

    def check_pieces(self):
        """Text of the answer that a drawing breaks into lines stands there whole; of a name its last word will do."""
        pieces = {}
        for element in self.root.elements():
            drawing = drawing_of(element) if element.tag == "text" else None
            for key in element.attributes.get("data-key", "").split() if drawing else ():
                pieces.setdefault((id(drawing), key), []).append(element)
        for (_, key), elements in pieces.items():
            try:
                value = value_of(self.answer, key)
            except (KeyError, IndexError, TypeError):
                continue
            if not isinstance(value, str):
                continue
            texts, value = [plain(one.text()) for one in elements], plain(value)
            # Lines may be drawn from the lowest up.
            whole = any(value in " ".join(lines) for lines in (texts, texts[::-1]))
            if not whole and not (key.endswith("name") and all(value.endswith(text) for text in texts)):
                self.fault(elements[0], f"a drawing tells only a part of {key}: \"{' '.join(texts)[:60]}\"")

    def check_axes(self):
        """Ticks along one side of a plot stand where their values are: the same distance for the same step."""
        for group in self.root.elements():
            if group.tag != "g" or not group.attributes.get("id", "").endswith("axes"):
                continue
            lines = {}
            for text in group.elements():
                if text.tag != "text" or text.attributes.get("data-key") != SCALE or "x" not in text.attributes:
                    continue
                token = sheet_numbers.token_at(plain(text.text()), 0)
                x, y = float(text.attributes["x"]), float(text.attributes["y"])
                side = ("y", x) if text.attributes.get("text-anchor") == "end" else ("x", y)
                if token:
                    lines.setdefault(side, []).append((token.value, y if side[0] == "y" else x, text))
            for ticks in lines.values():
                for run in runs_of(ticks):
                    self.check_ticks(run)

    def check_ticks(self, ticks):
        (first, from_mm, _), (last, to_mm, _) = ticks[0], ticks[-1]
        step = abs(to_mm - from_mm) / (len(ticks) - 1)
        for value, at_mm, text in ticks[1:-1]:
            due = from_mm + (to_mm - from_mm) * (value - first) / (last - first)
            if abs(at_mm - due) > NEARLY_IN_PLACE * step:
                self.fault(text, f"the tick {value:g} stands at {at_mm:g}, due at {due:.2f}")


def runs_of(ticks):
    """Ticks of one axis: panels below one another have theirs in one line, one after the other."""
    run = []
    for tick in ticks:
        if len(run) >= 2 and (tick[1] - run[-1][1]) * (run[1][1] - run[0][1]) <= 0.0:
            yield from [run] if len(run) >= 3 else []
            run = []
        if run and tick[0] == run[-1][0]:
            continue
        run.append(tick)
    yield from [run] if len(run) >= 3 else []


def faults(folder, units):
    """The faults of all pages of a folder as lines, and how many numbers were told as the answer has them."""
    answer = json.loads(Path(f"{folder}.json").read_text(encoding="utf-8"))
    lines, told = [], 0
    for page in sorted(Path(folder).glob("*.html")):
        sheet = Sheet(page.read_text(encoding="utf-8"), answer, units).check()
        lines += [f"{Path(folder).name}/{page.name}:{line}: {what}\t{where}"
                  for line, what, where in sheet.faults[:PAGE_FAULTS_MOST]]
        if len(sheet.faults) > PAGE_FAULTS_MOST:
            lines.append(f"{Path(folder).name}/{page.name}: and {len(sheet.faults) - PAGE_FAULTS_MOST} more")
        told += sheet.told
    return lines, told


def main(folders):
    units = sheet_numbers.read_units(Path(__file__).parents[2])
    lines, all_told = [], 0
    for folder in folders:
        found, told = faults(folder.rstrip("/"), units)
        lines += found or ([] if told else [f"{folder}: no number of the answer on any page"])
        all_told += told
    print(f"{all_told} numbers of {len(folders)} answers told as they are, {len(lines)} faults")
    return "\n".join(lines)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]) or 0)
