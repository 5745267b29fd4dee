#!/usr/bin/env python3
"""Reads the plan of every layout that has drawn loops back from its files, and measures each loop's tube there.

plan.dxf goes through a reader of other hands (ezdxf), plan.svg through the standard library. Both must give every
loop the length that the answer's JSON gives it.

usage: plan_read_back.py PROGRAM LAYOUTS
"""
import json
import math
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET
from pathlib import Path

import ezdxf
from ezdxf.math import bulge_to_arc

WITHIN = 0.001  # of a loop's length
UNIT_M = {1: 0.0254, 4: 0.001}  # $INSUNITS: inches, millimetres
SVG = "{http://www.w3.org/2000/svg}"


def arc_length(start, end, bulge):
    if bulge == 0.0:
        return math.dist(start, end)
    _, from_rad, to_rad, radius = bulge_to_arc(start, end, bulge)
    return radius * ((to_rad - from_rad) % (2.0 * math.pi))


def polyline_length(line):
    vertices = [(v.dxf.location.vec2, v.dxf.get("bulge", 0.0)) for v in line.vertices]
    ends = vertices[1:] + (vertices[:1] if line.is_closed else [])
    return sum(arc_length(a, b, bulge) for (a, bulge), (b, _) in zip(vertices, ends))


def dxf_halves(space, layer):
    """Length of every tube on a layer, in the units of the file."""
    def length(entity):
        if entity.dxftype() == "LINE":
            return math.dist(entity.dxf.start, entity.dxf.end)
        return polyline_length(entity)
    return [length(entity) for entity in space if entity.dxf.layer == layer]


def arc_on_paper(start, end, radius, large):
    """SVG 1.1, F.6: the end points, the radius and the larger or smaller of two turns give the sweep."""
    turn = 2.0 * math.asin(min(1.0, 0.5 * math.dist(start, end) / radius))
    return radius * (2.0 * math.pi - turn if large else turn)


def path_length(steps):
    """Of one SVG path of absolute moves, lines and circular arcs, in its own units."""
    at, length = None, 0.0
    for letter, numbers in re.findall(r"([MLA])([^MLA]*)", steps):
        values = [float(number) for number in numbers.split()]
        to = tuple(values[-2:])
        if letter == "L":
            length += math.dist(at, to)
        elif letter == "A":
            length += arc_on_paper(at, to, values[0], values[3] == 1.0)
        at = to
    return length


def svg_halves(root, layer):
    group = next(one for one in root.iter(SVG + "g") if one.get("id") == layer)
    # What is hollow has a white line on the same path.
    return [path_length(path.get("d")) for path in group if path.get("stroke") != "#ffffff"]


def length_faults(what, halves, lengths_m, unit_m):
    """`halves`: lengths of the warm and of the cool half of each loop, in the file's order."""
    warm, cool = halves
    if not len(warm) == len(cool) == len(lengths_m):
        yield f"{what}: {len(warm)} warm and {len(cool)} cool tubes for {len(lengths_m)} loops"
        return
    for row, (first, second, told_m) in enumerate(zip(warm, cool, lengths_m)):
        drawn_m = (first + second) * unit_m
        if abs(drawn_m - told_m) > WITHIN * told_m:
            yield f"{what}: loop row {row} is {drawn_m:.4f} m long, and the answer says {told_m:.4f} m"


def layer_names(root):
    return [group.get("id") for group in root.iter(SVG + "g")]


def dxf_faults(file, root, lengths_m, us):
    drawing = ezdxf.readfile(file)
    for error in drawing.audit().errors:
        yield f"dxf: {error.message}"
    if drawing.header["$INSUNITS"] != (1 if us else 4):
        yield f"dxf: $INSUNITS is {drawing.header['$INSUNITS']}"
    names = {layer.dxf.name for layer in drawing.layers} - {"0", "Defpoints"}
    if names != set(layer_names(root)):
        yield f"dxf: its layers are {sorted(names)}, the picture's {layer_names(root)}"
    space = drawing.modelspace()
    unit_m = UNIT_M[drawing.header["$INSUNITS"]]
    halves = [dxf_halves(space, layer) for layer in ("tube-warm", "tube-cool")]
    yield from length_faults("dxf", halves, lengths_m, unit_m)
    if any(abs(first - second) > WITHIN * first for first, second in zip(*halves)):
        yield f"dxf: halves that are not halves, {halves}"
    # A loop that ends where it began would be a ring; tube is none, and its arcs are arcs.
    tubes = [one for one in space.query("POLYLINE") if one.dxf.layer.startswith("tube-")]
    if any(one.is_closed for one in tubes):
        yield "dxf: a tube is a closed ring"
    if tubes and not any(vertex.dxf.get("bulge", 0.0) for one in tubes for vertex in one.vertices):
        yield "dxf: no tube has an arc"
    rings = [one for one in space.query("POLYLINE") if one.dxf.layer == "no-tube"]
    if not all(one.is_closed for one in rings):
        yield "dxf: the ring of a no-tube area is open"
    for text in space.query("TEXT"):
        if text.dxf.height <= 0.0 or text.dxf.rotation not in (0.0, 90.0):
            yield f"dxf: text {text.dxf.text!r} of height {text.dxf.height}, turned by {text.dxf.rotation}"
    written = {text.dxf.text for text in space.query("TEXT")}
    missing = {"".join(text.itertext()) for text in root.iter(SVG + "text")} - written
    if missing:
        yield f"dxf: text that only the svg has: {sorted(missing)[:3]}"


def layout_faults(program, layout):
    with tempfile.TemporaryDirectory() as folder:
        run = subprocess.run([program, "route", str(layout), "--json", "--out", folder], capture_output=True, text=True)
        plan = Path(folder) / "plan.svg"
        if not plan.exists():
            return None
        answer = json.loads(run.stdout)
        lengths_m = [loop["length_m"] for loop in answer["loops"]["loop"]]
        root = ET.parse(plan).getroot()
        texts = ["".join(one.itertext()) for one in root.iter(SVG + "text")]
        scale = float(next(re.search(r"\b1:(\d+)", text).group(1) for text in texts if text.startswith("scale 1:")))
        halves = [svg_halves(root, layer) for layer in ("tube-warm", "tube-cool")]
        found = list(length_faults("svg", halves, lengths_m, 0.001 * scale))
        us = 'units = "SI"' not in layout.read_text()
        return found + list(dxf_faults(Path(folder) / "plan.dxf", root, lengths_m, us))


def main(program, layouts):
    read, bad = 0, 0
    for layout in sorted(Path(layouts).glob("*.toml")):
        found = layout_faults(program, layout)
        if found is None:
            continue
        read += 1
        bad += len(found)
        for fault in found:
            print(f"{layout.name}: {fault}")
    print(f"{read} plans read back, {bad} faults")
    return 0 if read >= 3 and bad == 0 else 1


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
