"""Numbers as sheets print them, read back to SI by the project's own table of units.

A printed number stands for all that round to it: half of its last digit to either side. Where the project prints to
steps of its own (hundreds of Btu/h; a tape's quarter inches and 5 mm) it stands for half a step.
"""
import re
from dataclasses import dataclass
from pathlib import Path

ROUNDED_JSON = 5e-6  # six digits
INCH_M, TAPE_STEPS_M = 0.0254, {"ft": 0.0254 / 4.0, "m": 0.005, "mm": 0.005}
NUMBER = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+(?:\.\d+)?(?:e[-+]?\d+)?")
FRACTION = re.compile(r"(?:(\d+) )?(\d+)/(\d+)(?![\d/])")
BEYOND = {"under": -1, "below": -1, "less than": -1, "over": 1, "above": 1, "more than": 1}
WORDS = {"inches": "in", "inch": "in", "feet": "ft", "foot": "ft", "sq ft": "ft2", "gallons": "gal", "hours": "h",
         "hour": "h", "minutes": "min", "minute": "min", "days": "d", "day": "d", "seconds": "s", "percent": "%",
         "turn": "turns", "degrees": "deg", "pounds": "lb", "watts": "W"}
BARE = {"number", "share", "money", "turns"}  # dimensions whose numbers may stand without a unit


@dataclass
class Unit:
    text: str
    suffix: str
    dimension: str
    scale: float
    shift: float
    before: bool


def constants(text):
    """The values of `constexpr double a = ..., b = ...;`, each by those before it."""
    names = {}
    for line in re.findall(r"constexpr double ([^;]*);", text):
        for name, value in re.findall(r"(\w+)\s*=\s*([^,]+)", line):
            names[name] = calculated(value, names)
    return names


def calculated(text, names):
    if not re.fullmatch(r"[\w.\s*/+()-]+", text):
        raise ValueError(f"no plain sum: {text}")
    return float(eval(text, {"__builtins__": {}}, names))


def read_units(project):
    """The rows of the units table, and for units that are printed in tens or hundreds how many digits are rounded."""
    include = Path(project) / "include/slabwright"
    table = (include / "units_table.hpp").read_text(encoding="utf-8")
    names = constants((include / "units_exact.hpp").read_text(encoding="utf-8") + table)
    rows = []
    for row in re.findall(r"\n\s*\{(\"[^\n]*)\},", table):
        text, suffix, dimension, *rest = [cell.strip() for cell in row.split(",")]
        scale, shift = [calculated(cell, names) for cell in rest[:2]] + [1.0, 0.0][len(rest[:2]):]
        rows.append(Unit(text.strip('"'), suffix.strip('"'), dimension.removeprefix("D::"), scale, shift,
                         rest[2:] == ["true"]))
    figures = (Path(project) / "src/report/number.cpp").read_text(encoding="utf-8")
    rounded = {unit: int(digits) for unit, digits in re.findall(r'\{"([^"]+)", -(\d)\}', figures)}
    if len(rows) < 50 or "Btu/h" not in rounded:
        raise ValueError("the units table is not written as it was")
    return Units(rows, rounded)


class Units:
    def __init__(self, rows, rounded):
        self.rows, self.rounded = rows, rounded
        with_digits = sorted({row.text for row in rows if re.search(r"\d", row.text)}, key=len, reverse=True)
        self.names = re.compile(r"(?<![\w.])(?:" + "|".join(map(re.escape, with_digits)) + r")(?!\w)")

    def dimension_of(self, key):
        """What a key measures, by the longest suffix of its last word, else of the word before it
        ("ranges.loss_W.tight"); a number of its own where none has one."""
        for name in reversed(re.sub(r"\[\d+\]", "", key).split(".")):
            fits = [row for row in self.rows if row.suffix and name.endswith(row.suffix)]
            if fits:
                return max(fits, key=lambda row: len(row.suffix)).dimension
        return "number"

    def fitting(self, dimension):
        """Units of a dimension by the text that people read."""
        return {row.text: row for row in self.rows if row.dimension == dimension and row.text}

    def without_names(self, text):
        """Text without the digits of units' own names: "W/m2K" is no figure."""
        return self.names.sub(lambda m: " " * len(m.group()), text)


@dataclass
class Token:
    """A number in a text: from, to, its value, and half of its last digit or fraction."""
    start: int
    end: int
    value: float
    half: float


def token_at(text, start):
    """The next number at `start` or later, but for digits within words; nothing where there is none."""
    first = re.compile(r"(?<![\w.])\d").search(text, start)
    if not first:
        return None
    at = first.start()
    # "R-10" and "10-12" have no minus.
    minus = at > start and text[at - 1] == "-" and not (at > 1 and text[at - 2].isalnum())
    begin, sign = (at - 1, -1.0) if minus else (at, 1.0)
    fraction = FRACTION.match(text, at)
    if fraction and int(fraction.group(3)) > 0:
        whole, over, under = (int(part or 0) for part in fraction.groups())
        return Token(begin, fraction.end(), sign * (whole + over / under), 0.5 / under)
    number = NUMBER.match(text, at)
    digits, _, power = number.group().replace(",", "").partition("e")
    half = 0.5 * 10.0 ** (int(power or 0) - len(digits.partition(".")[2]))
    return Token(begin, number.end(), sign * float(number.group().replace(",", "")), half)


def unit_at(text, at, fitting):
    """The unit that stands in the text from `at`, and where it ends."""
    words = {word: fitting[name] for word, name in WORDS.items() if name in fitting}
    names = {**words, **{name: row for name, row in fitting.items() if not row.before}}
    for name in sorted(names, key=len, reverse=True):
        found = re.compile(r" ?" + re.escape(name) + r"(?![\w/]|\d)").match(text, at)
        if found:
            return names[name], found.end()
    return None, at


def unit_before(text, start, fitting):
    for name, row in fitting.items():
        if row.before and re.search(re.escape(name) + r"[- ]?$", text[:start]):
            return row
    return None


@dataclass
class Printed:
    """A number with its unit, in SI: the value, what it may be off, where it ends, and -1 or 1 for a bound."""
    si: float
    off: float
    end: int
    beyond: int
    words: str


def half_step(token, unit, units):
    """Half of the last digit that is printed, in SI."""
    half = token.half * unit.scale
    step = 10.0 ** min(units.rounded.get(unit.text, 0), 2 if abs(token.value) >= 1000.0 else 1)
    if unit.text in units.rounded and token.value % step == 0.0:
        half = max(half, 0.5 * step * unit.scale)
    steps = TAPE_STEPS_M.get(unit.text, 0.0) if unit.dimension == "length" else 0.0
    on_tape = unit.text == "mm" or (unit.text == "m" and token.half < 0.001)
    if on_tape and abs((token.value * unit.scale / steps + 0.5) % 1.0 - 0.5) < 1e-6:
        half = max(half, 0.5 * steps)
    return half


def unit_after_next(text, at, fitting):
    """In "12 to 14 gpm" the unit stands after the second number."""
    link = re.compile(r"(?: ~)? ?(?:to|and|or|by|x|-|/|,)(?= ?-?\d)").match(text, at)
    token = token_at(text, link.end()) if link else None
    if not token:
        return None
    unit, _ = unit_at(text, token.end, fitting)
    return unit or unit_after_next(text, token.end, fitting)


def read_number(text, start, dimension, units, head_unit=None):
    """The next number of the text, read as the dimension; a word where there is none, or no unit that fits."""
    token = token_at(text, start)
    if not token:
        return "no number"
    fitting = units.fitting(dimension)
    unit, end = unit_at(text, token.end, fitting)
    unit = unit or unit_before(text, token.start, fitting)
    if not unit and head_unit is not None:
        unit = fitting.get(WORDS.get(head_unit, head_unit))
        if not unit:
            return f"the unit {head_unit} is none of {dimension}"
    unit = unit or unit_after_next(text, token.end, fitting)
    if not unit:
        if fitting and dimension not in BARE:
            return f"no unit of {dimension} after \"{text[token.start:token.end]}\""
        unit = Unit("", "", dimension, 1.0, 0.0, False)
    value, off = (token.value + unit.shift) * unit.scale, half_step(token, unit, units)
    second = token_at(text, end) if unit.shift == 0.0 else None
    if second and re.fullmatch(r" |", text[end:second.start]):
        part, part_end = unit_at(text, second.end, fitting)
        if part and part.scale < unit.scale and second.value * part.scale < unit.scale:
            value += second.value * part.scale
            off = min(second.half * part.scale, 0.5 * TAPE_STEPS_M["ft"] if part.text == "in" else float("inf"))
            end = part_end
    lead = re.search(r"(under|below|less than|over|above|more than) ?[^\w\s]?$", text[:token.start])
    return Printed(value, off, end, BEYOND[lead.group(1)] if lead else 0, text[token.start:end])


def tells(printed, value, rounded_up=False):
    """Whether a printed number tells a value of the JSON; `rounded_up`: it may be a whole digit more, and not less."""
    slack = ROUNDED_JSON * abs(value)
    if rounded_up:
        return -slack <= printed.si - value <= 2.0 * printed.off * (1.0 + 1e-9) + slack
    if abs(printed.si - value) <= printed.off * (1.0 + 1e-9) + slack:
        return True
    return printed.beyond != 0 and (value - printed.si) * printed.beyond >= 0.0
