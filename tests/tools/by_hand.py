#!/usr/bin/env python3
"""Works three designs out again by the short formulas of manuals/by-hand.md, and holds the program against them.

usage: by_hand.py PROGRAM [PROJECT] [--write]

Sums are in SI units and use what the page says and no more: materials.md, theory-handbook.md, theory-hydraulics.md. Of
the program's answer only what nobody does by hand is taken: the way down into the ground, the loops' lengths and bends.
Everything else must agree within 5 %; the page's steps and table must be these. --write puts them there.
"""
import json
import math
import re
import subprocess
import sys
from pathlib import Path

WITHIN = 0.05
SHOPS = ("ten-lines", "cold-door", "old-pour")
R, BORE = 0.176110184, 12.07e-3
SUMS = re.compile(r"(<!-- (steps|table) -->\n).*?(<!-- end -->)", re.DOTALL)


def water(degC):
    """Density, heat, viscosity and conductivity of water, straight between a few figures of its table."""
    rows = ((5, 1000.0, 4205, 1.518e-3, 0.571), (20, 998.2, 4184, 1.002e-3, 0.598), (30, 995.6, 4180, 0.797e-3, 0.615),
            (40, 992.2, 4179, 0.653e-3, 0.631), (50, 988.0, 4180, 0.547e-3, 0.644), (60, 983.2, 4183, 0.466e-3, 0.654))
    for low, high in zip(rows, rows[1:]):
        if degC <= high[0]:
            share = (degC - low[0]) / (high[0] - low[0])
            return [a + share * (b - a) for a, b in zip(low[1:], high[1:])]
    raise SystemExit(f"no water of {degC} C in the table")


def resistance(text):
    """R-19 in m2K/W."""
    return float(text.removeprefix("R-")) * R


def heat_loss(answer):
    """W: parts of the building over the difference to the coldest weather; without a described one by floor area."""
    design, room = answer["design"], answer["envelope"]["room"][0]
    rise, area = design["climate"]["indoor_degC"] - design["climate"]["outdoor_degC"], room["floor_m2"]
    building = design["building"]
    described = any(re.match(r"building\.(?!quality)|opening", key) for key in answer["given"])
    if not described:
        return rise * area * {"tight": 0.20, "usual": 0.30, "poor": 0.45}[building["quality"]] * 5.678263
    width, height = (float(number) * 0.3048 for number in re.findall(r"[\d.]+", design["opening"][0]["size"]))
    door = width * height
    wall = answer["design"]["slab"]["exposed_perimeter_m"] * building["height_m"] - door
    air = 0.34 * area * building["height_m"] * building["air_changes_per_s"] * 3600
    return rise * (wall / resistance(building["wall_insulation"]) + area / resistance(building["roof_insulation"]) +
                   door / resistance(building["door_insulation"]) + air)


def star(section, spacing):
    """R_x of theory-section.md, six waves of it, for a bare tube's outer face."""
    k, d = section["concrete_W_per_mK"], section["outside_diameter_m"]
    covers = section["cover_above_m"], section["cover_below_m"]
    faces = section["film"], section["underside_W_per_m2K"]
    total = math.log(spacing / (math.pi * d))
    for s in range(1, 7):
        wave = 2 * math.pi * s * k / spacing
        back = [(wave - h) / (wave + h) * math.exp(-4 * math.pi * s * c / spacing) for h, c in zip(faces, covers)]
        total += ((1 + back[0]) * (1 + back[1]) / (1 - back[0] * back[1]) - 1) / s
    return spacing / (2 * math.pi * k) * total


def colebrook(reynolds, ratio):
    root = 7.0
    for _ in range(30):
        root = -2 * math.log10(ratio / 3.7 + 2.51 * root / reynolds)
    return 1 / root ** 2


def inside_film(diameter, flow, degC):
    density, heat, viscosity, conductivity = water(degC)
    reynolds, prandtl = 4 * density * flow / (math.pi * diameter * viscosity), heat * viscosity / conductivity
    eighth = (1.82 * math.log10(reynolds) - 1.64) ** -2 / 8
    nusselt = eighth * (reynolds - 1000) * prandtl / (1 + 12.7 * math.sqrt(eighth) * (prandtl ** (2 / 3) - 1))
    return nusselt * conductivity / diameter


def section_by_hand(answer, loss_W):
    """Heat up and down, floor and tube temperatures for the heat that the room asks for."""
    design, floor = answer["design"], answer["floor"]
    section, ground = dict(floor["section"]), answer["envelope"]["ground"]
    spacing, k = design["tube"]["spacing_m"], section["concrete_W_per_mK"]
    tubes_m2 = answer["loops"]["room_tube_m"][0] * spacing
    indoor, up = design["climate"]["indoor_degC"], loss_W / tubes_m2
    rise = (up / 8.92) ** (1 / 1.1)
    section["film"] = up / rise
    plane = indoor + rise + up * section["cover_above_m"] / k
    down = ground["plane_W_per_m2K"] * (plane - ground["effective_degC"])
    tube = plane + (up + down) * star(section, spacing)
    return {"tubes_m2": tubes_m2, "up": up, "down": down, "floor": indoor + rise, "tube": tube, "plane": plane,
            "total_W": (up + down) * tubes_m2, "film": section["film"], "R_x": star(section, spacing)}


def temperatures(answer, slab, bore):
    """Total flow at the design's drop, and the supply whose mean the section asks for."""
    design, spacing = answer["design"], answer["design"]["tube"]["spacing_m"]
    drop, outside = design["pump"]["drop_K"], answer["floor"]["section"]["outside_diameter_m"]
    density, heat = water(slab["tube"] + 3)[:2]
    flow = slab["total_W"] / (density * heat * drop)
    loops = len(answer["loops"]["loop"])
    per_metre = (slab["up"] + slab["down"]) * spacing
    film = inside_film(bore, flow / loops, slab["tube"] + 3)
    wall = math.log(outside / bore) / (2 * math.pi * 0.38) + 1 / (math.pi * bore * film)
    mean = slab["tube"] + per_metre * wall
    room, ground = design["climate"]["indoor_degC"], answer["envelope"]["ground"]
    above = 1 / (1 / slab["film"] + answer["floor"]["section"]["cover_above_m"] / 1.75)
    rest = (above * room + ground["plane_W_per_m2K"] * ground["effective_degC"]) / (above + ground["plane_W_per_m2K"])
    supply = rest + drop / (1 - math.exp(-drop / (mean - rest)))
    return {"flow": flow, "loop_flow": flow / loops, "mean": mean, "supply": supply, "wall": wall, "rest": rest,
            "film": film}


def head(answer, temps, bore):
    """m: the hardest loop's whole round."""
    design, loop = answer["design"], max(answer["loops"]["loop"], key=lambda one: one["length_m"])
    density, _, viscosity, _ = water(temps["mean"])

    def tube(length, diameter, flow):
        reynolds = 4 * density * flow / (math.pi * diameter * viscosity)
        speed = 4 * flow / (math.pi * diameter ** 2)
        return colebrook(reynolds, 0.007e-3 / diameter) * length / diameter * density * speed ** 2 / 2, speed

    def valve(kv, flow):
        return 1e5 * (3600 * flow / kv) ** 2 * density / 1000

    loop_Pa, speed = tube(loop["length_m"], bore, temps["loop_flow"])
    bends_Pa = 0.1 * loop["bends_number"] * density * speed ** 2 / 2
    mains_Pa, mains_speed = tube(2 * design["mains"]["length_m"], design["mains"]["inside_diameter_m"], temps["flow"])
    mains_Pa += 2 * 2 * density * mains_speed ** 2 / 2
    valves_Pa = valve(design["valve"]["coefficient_kv"], temps["loop_flow"])
    valves_Pa += valve(design["valve"]["return_coefficient_kv"], temps["loop_flow"])
    valves_Pa += valve(design["boiler"]["coefficient_kv"], temps["flow"])
    if design["boiler"]["piping"] == "mixing valve":
        valves_Pa += valve(4.0, temps["flow"])
    return (loop_Pa + bends_Pa + mains_Pa + valves_Pa) / (density * 9.80665)


def tank_l(answer, bore):
    """Litres of expansion tank."""
    design = answer["design"]
    content = answer["loops"]["tube_m"] * math.pi * bore ** 2 / 4
    content += 2 * design["mains"]["length_m"] * math.pi * design["mains"]["inside_diameter_m"] ** 2 / 4
    content += 0.150 if design["boiler"]["kind"] == "tank heater" else 0.008
    growth = 1000.0 / water(design["boiler"]["hottest_degC"])[0] - 1
    low, most = design["pressure"]["fill_Pa"] + 101325, 0.9 * design["pressure"]["relief_Pa"] + 101325
    return 1000 * content * growth / (1 - low / most)


def worked(answer):
    loss = heat_loss(answer)
    slab = section_by_hand(answer, loss)
    return loss, slab, temperatures(answer, slab, BORE)


def steps_of(answer):
    """The first shop's sums one after the other, as they are on paper."""
    loss, slab, temps = worked(answer)
    design, ground = answer["design"], answer["envelope"]["ground"]
    indoor, drop, cover = design["climate"]["indoor_degC"], design["pump"]["drop_K"], slab["plane"] - slab["floor"]
    both, spacing = slab["up"] + slab["down"], design["tube"]["spacing_m"]
    rows = [("1 loss", f"{loss:,.0f} W"),
            ("2 asked of the floor", f"{loss:,.0f} / {slab['tubes_m2']:.1f} = {slab['up']:.1f} W/m2"),
            ("3 floor over room", f"({slab['up']:.1f} / 8.92)^(1/1.1) = {slab['floor'] - indoor:.2f} K; "
                                  f"floor {slab['floor']:.1f} C, film {slab['film']:.1f} W/m2K"),
            ("4 tubes' plane", f"{slab['floor']:.1f} + {cover:.2f} = {slab['plane']:.1f} C"),
            ("5 down", f"{ground['plane_W_per_m2K']:.3f} ({slab['plane']:.1f} - ({ground['effective_degC']:.1f})) = "
                       f"{slab['down']:.1f} W/m2; in all {slab['total_W']:,.0f} W"),
            ("6 tube", f"{slab['plane']:.1f} + {both:.1f} x {slab['R_x']:.4f} = {slab['tube']:.1f} C"),
            ("7 flow", f"{slab['total_W']:,.0f} / (rho c {drop:.1f}) = {6e4 * temps['flow']:.1f} L/min, "
                       f"{6e4 * temps['loop_flow']:.2f} in a loop"),
            ("8 water, mean", f"{slab['tube']:.1f} + {both * spacing:.1f} x {temps['wall']:.3f} = {temps['mean']:.1f} C"
                              f" (film inside {temps['film']:,.0f} W/m2K)"),
            ("9 supply", f"{temps['rest']:.1f} + {drop:.1f} / (1 - e^(-{drop:.1f} / "
                         f"{temps['mean'] - temps['rest']:.1f})) = {temps['supply']:.1f} C"),
            ("10 head", f"{head(answer, temps, BORE):.2f} m"),
            ("11 boiler", f"1.2 x {slab['total_W']:,.0f} = {1.2 * slab['total_W']:,.0f} W, next step "
                          f"{answer['sizes']['boiler']['power_W']:,.0f}"),
            ("12 tank", f"{tank_l(answer, BORE):.2f} L")]
    return "\n" + "".join(f"    {what:22}{how}\n" for what, how in rows) + "\n"


def sums(answer):
    """(what, unit, by hand, the program) of one shop."""
    loss, slab, temps = worked(answer)
    sizes, floor, indoor = answer["sizes"], answer["floor"]["room"][0], answer["design"]["climate"]["indoor_degC"]
    power = sizes["boiler"]["power_W"]
    return [("the shop loses", "W", loss, answer["envelope"]["loss_W"]),
            ("the floor takes, up and down", "W", slab["total_W"], answer["floor"]["tube_heat_W"]),
            ("floor over room", "K", slab["floor"] - indoor, floor["floor"]["floor_mean_degC"] - indoor),
            ("water over room, mean", "K", temps["mean"] - indoor, floor["water_degC"] - indoor),
            ("supply over room", "K", temps["supply"] - indoor, answer["point"]["supply_degC"] - indoor),
            ("flow in all", "L/min", 6e4 * temps["flow"], 6e4 * answer["balance"]["aim_m3_per_s"]),
            ("head", "m", head(answer, temps, BORE), sizes["pump"]["head_m"]),
            ("boiler wanted", "W", 1.2 * slab["total_W"], sizes["boiler"]["wanted_W"]),
            ("current", "A", power / answer["design"]["service"]["voltage_V"], sizes["electric"]["current_A"]),
            ("tank", "L", tank_l(answer, BORE), 1000 * sizes["tank"]["tank_m3"])]


def answer_of(program, project, shop):
    ran = subprocess.run([program, "design", project / f"layouts/{shop}.toml", "--json"], capture_output=True,
                         text=True)
    if ran.returncode not in (0, 3):
        raise SystemExit(f"{shop}: {ran.stderr}")
    return json.loads(ran.stdout)


def figure(value):
    return f"{value:,.0f}" if value >= 100 else f"{value:.1f}" if value >= 10 else f"{value:.2f}"


def table_of(shops):
    heads = "".join(f" {shop}, by hand | program |" for shop in shops)
    lines = ["", f"| what | unit |{heads}", "|---|---|" + "--:|--:|" * len(shops)]
    for rows in zip(*shops.values()):
        cells = "".join(f" {figure(row[2])} | {figure(row[3])} |" for row in rows)
        lines.append(f"| {rows[0][0]} | {rows[0][1]} |{cells}")
    return "\n".join(lines) + "\n\n"


def apart_in(shops):
    return [f"{shop}: {what}: by hand {figure(ours)} {unit}, the program {figure(theirs)}"
            for shop, rows in shops.items() for what, unit, ours, theirs in rows
            if not abs(ours - theirs) <= WITHIN * abs(theirs)]


def main(program, project, write):
    page = project / "manuals/by-hand.md"
    answers = {shop: answer_of(program, project, shop) for shop in SHOPS}
    shops = {shop: sums(answer) for shop, answer in answers.items()}
    apart = apart_in(shops)
    text = page.read_text(encoding="utf-8")
    parts = {"steps": steps_of(answers[SHOPS[0]]), "table": table_of(shops)}
    new = SUMS.sub(lambda found: found.group(1) + parts[found.group(2)] + found.group(3), text)
    if write:
        page.write_text(new, encoding="utf-8")
    elif new != text or len(SUMS.findall(text)) != len(parts):
        apart.append(f"{page.name}: its sums are not these; --write puts them there")
    print("\n".join(apart) or f"{len(shops)} designs agree with sums by hand within {WITHIN:.0%}")
    return 1 if apart else 0


if __name__ == "__main__":
    words = [word for word in sys.argv[1:] if word != "--write"]
    if not words:
        sys.exit(__doc__)
    root = Path(words[1] if len(words) > 1 else Path(__file__).parents[2])
    sys.exit(main(Path(words[0]).resolve(), root, "--write" in sys.argv[1:]))
