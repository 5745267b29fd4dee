#!/usr/bin/env python3
"""Works designs out again by the short formulas of manuals/by-hand.md, and holds the program against them.

usage: by_hand.py PROGRAM [PROJECT] [--write]

Sums are in SI units and use what the page says and no more: its own table of fluids, materials.md, theory-handbook.md,
theory-hydraulics.md. Of the program's answer only what nobody does by hand is taken: the way down into the ground, the
floor that is heated, the loops' lengths and bends. Everything else must agree within 5 %; the page's steps and table
must be these. --write puts them there.
"""
import json
import math
import re
import subprocess
import sys
import tempfile
from pathlib import Path

WITHIN = 0.05
# A shop is a layout, or one with a fluid of its own.
SHOPS = {"ten-lines": ("ten-lines", None), "cold-door": ("cold-door", None), "old-pour": ("old-pour", None),
         "ten-lines, 30 % glycol": ("ten-lines", "30 %"), "old-pour, 40 % glycol": ("old-pour", "40 %")}
R, BORE = 0.176110184, 12.06e-3
WATER = "water"
FLUIDS = re.compile(r"<!-- fluids -->\n(.*?)<!-- end -->", re.DOTALL)
SUMS = re.compile(r"(<!-- (steps|table) -->\n).*?(<!-- end -->)", re.DOTALL)


def fluids_of(text):
    """The page's table: by fluid and unit its (C, figure), cold to hot."""
    found = {}
    lines = [line.strip("| ").split(" | ") for line in FLUIDS.search(text).group(1).splitlines() if " | " in line]
    columns = [float(head.split()[0]) for head in lines[0][3:]]
    for name, unit, cold, *rest in lines[1:]:
        value, degC = cold.split(" at ")
        rows = [(float(degC), float(value))] + list(zip(columns, map(float, rest)))
        found.setdefault(name, {})[unit] = sorted(rows)
    return found


def between(rows, degC, along=lambda value: value, back=lambda value: value):
    for low, high in zip(rows, rows[1:]):
        if degC <= high[0]:
            share = (degC - low[0]) / (high[0] - low[0])
            return back(along(low[1]) + share * (along(high[1]) - along(low[1])))
    raise SystemExit(f"no fluid of {degC} C in the table")


def fluid_at(table, degC):
    """Density, heat, viscosity and conductivity, as the page says to read its table."""
    return [between(table["kg/m3"], degC), between(table["J/kgK"], degC),
            between(table["mPa s"], degC, math.log, math.exp) / 1000, between(table["W/mK"], degC)]


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


def in_band(reynolds, laminar, turbulent):
    """What holds below 2300, what holds above 4000, and a straight line between."""
    if reynolds <= 2300:
        return laminar(reynolds)
    if reynolds >= 4000:
        return turbulent(reynolds)
    share = (reynolds - 2300) / 1700
    return (1 - share) * laminar(2300) + share * turbulent(4000)


def friction(reynolds, ratio):
    return in_band(reynolds, lambda re_: 64 / re_, lambda re_: colebrook(re_, ratio))


def inside_film(fluid, flow, bore, length):
    density, heat, viscosity, conductivity = fluid
    prandtl = heat * viscosity / conductivity

    def laminar(reynolds):
        entrance = 1.953 * (reynolds * prandtl * bore / length) ** (1 / 3) - 0.6
        return ((48 / 11) ** 3 + 0.6 ** 3 + entrance ** 3) ** (1 / 3)

    def turbulent(reynolds):
        eighth = (1.82 * math.log10(reynolds) - 1.64) ** -2 / 8
        return eighth * (reynolds - 1000) * prandtl / (1 + 12.7 * math.sqrt(eighth) * (prandtl ** (2 / 3) - 1))

    reynolds = 4 * density * flow / (math.pi * bore * viscosity)
    return in_band(reynolds, laminar, turbulent) * conductivity / bore, reynolds


def section_by_hand(answer, loss_W):
    """Heat up and down, floor and tube temperatures for the heat that the room asks for."""
    design, floor = answer["design"], answer["floor"]
    section, ground = dict(floor["section"]), answer["envelope"]["ground"]
    spacing, k = design["tube"]["spacing_m"], section["concrete_W_per_mK"]
    heated_m2 = answer["loops"]["room_heated_m2"][0]
    indoor, up = design["climate"]["indoor_degC"], loss_W / heated_m2
    rise = (up / 8.92) ** (1 / 1.1)
    section["film"] = up / rise
    plane = indoor + rise + up * section["cover_above_m"] / k
    down = ground["plane_W_per_m2K"] * (plane - ground["effective_degC"])
    tube = plane + (up + down) * star(section, spacing)
    return {"heated_m2": heated_m2, "up": up, "down": down, "floor": indoor + rise, "tube": tube, "plane": plane,
            "total_W": (up + down) * heated_m2, "film": section["film"], "R_x": star(section, spacing)}


def hardest_loop(answer):
    """The longest loop and its share of the flow."""
    def own(loop):
        return sum(part["length_m"] for part in loop["along"] if not part["leader"])

    loops = answer["loops"]["loop"]
    longest = max(loops, key=lambda loop: (round(loop["length_m"]), own(loop)))
    return longest, own(longest) / sum(own(loop) for loop in loops)


def mean_with(answer, slab, film):
    """The water's mean over wall and film, and what both resist a metre of tube."""
    outside, spacing = answer["floor"]["section"]["outside_diameter_m"], answer["design"]["tube"]["spacing_m"]
    wall = math.log(outside / BORE) / (2 * math.pi * 0.38) + 1 / (math.pi * BORE * film)
    return slab["tube"] + (slab["up"] + slab["down"]) * spacing * wall, wall


def temperatures(answer, slab, fluid):
    """Flow, mean water, and the supply whose mean the section asks for."""
    drop, (loop, share) = answer["design"]["pump"]["drop_K"], hardest_loop(answer)
    usual = mean_with(answer, slab, 2000.0)[0]
    density, heat = fluid_at(fluid, usual)[:2]
    flow, mean = slab["total_W"] / (density * heat * drop), usual
    for _ in range(2):
        film, reynolds = inside_film(fluid_at(fluid, mean), flow * share, BORE, loop["length_m"])
        mean, wall = mean_with(answer, slab, film)
    room, ground = answer["design"]["climate"]["indoor_degC"], answer["envelope"]["ground"]
    section, down = answer["floor"]["section"], ground["plane_W_per_m2K"]
    above = 1 / (1 / slab["film"] + section["cover_above_m"] / section["concrete_W_per_mK"])
    rest = (above * room + down * ground["effective_degC"]) / (above + down)
    return {"usual": usual, "flow": flow, "loop_flow": flow * share, "mean": mean, "wall": wall, "film": film,
            "reynolds": reynolds, "rest": rest, "supply": rest + drop / (1 - math.exp(-drop / (mean - rest)))}


def head(answer, temps, fluid):
    """m: the hardest loop's whole round."""
    design, loop = answer["design"], hardest_loop(answer)[0]
    density, _, viscosity, _ = fluid_at(fluid, temps["usual"])

    def tube(length, diameter, flow, bends):
        reynolds = 4 * density * flow / (math.pi * diameter * viscosity)
        speed = 4 * flow / (math.pi * diameter ** 2)
        return (friction(reynolds, 0.007e-3 / diameter) * length / diameter + bends) * density * speed ** 2 / 2

    def valve(kv, flow):
        return 1e5 * (3600 * flow / kv) ** 2 * density / 1000

    mixed = design["boiler"]["piping"] == "mixing valve"
    bends = loop["bends_number"] or 2 * math.sqrt(loop["patch_m2"]) / design["tube"]["spacing_m"]
    loop_Pa = tube(loop["length_m"], BORE, temps["loop_flow"], 0.1 * bends + 1.5)
    mains = design["mains"]
    mains_Pa = tube(2 * mains["length_m"], mains["inside_diameter_m"], temps["flow"], 2 * 2 + mixed)
    valves_Pa = valve(design["valve"]["coefficient_kv"], temps["loop_flow"])
    valves_Pa += valve(design["valve"]["return_coefficient_kv"], temps["loop_flow"])
    valves_Pa += valve(4.0 if mixed else design["boiler"]["coefficient_kv"], temps["flow"])
    return (loop_Pa + mains_Pa + valves_Pa) / (density * 9.80665)


def tank_l(answer, fluid):
    """Litres of expansion tank."""
    design = answer["design"]
    content = answer["loops"]["tube_m"] * math.pi * BORE ** 2 / 4
    content += 2 * design["mains"]["length_m"] * math.pi * design["mains"]["inside_diameter_m"] ** 2 / 4
    content += 0.150 if design["boiler"]["kind"] == "tank heater" else 0.008
    # The table begins where water is densest and where a mixture freezes.
    coldest = max(fluid["kg/m3"][0][0], design["climate"]["coldest_degC"])
    cold = 4.0 if design["fluid"]["kind"] == WATER else coldest
    growth = fluid_at(fluid, cold)[0] / fluid_at(fluid, design["boiler"]["hottest_degC"])[0] - 1
    low, most = design["pressure"]["fill_Pa"] + 101325, 0.9 * design["pressure"]["relief_Pa"] + 101325
    return 1000 * content * growth / (1 - low / most)


def worked(answer, fluid):
    loss = heat_loss(answer)
    slab = section_by_hand(answer, loss)
    return loss, slab, temperatures(answer, slab, fluid)


def steps_of(answer, fluid):
    """The first shop's sums one after the other, as they are on paper."""
    loss, slab, temps = worked(answer, fluid)
    design, ground = answer["design"], answer["envelope"]["ground"]
    indoor, drop, cover = design["climate"]["indoor_degC"], design["pump"]["drop_K"], slab["plane"] - slab["floor"]
    both, spacing = slab["up"] + slab["down"], design["tube"]["spacing_m"]
    rows = [("1 loss", f"{loss:,.0f} W"),
            ("2 asked of the floor", f"{loss:,.0f} / {slab['heated_m2']:.1f} = {slab['up']:.1f} W/m2"),
            ("3 floor over room", f"({slab['up']:.1f} / 8.92)^(1/1.1) = {slab['floor'] - indoor:.2f} K; "
                                  f"floor {slab['floor']:.1f} C, film {slab['film']:.1f} W/m2K"),
            ("4 tubes' plane", f"{slab['floor']:.1f} + {cover:.2f} = {slab['plane']:.1f} C"),
            ("5 down", f"{ground['plane_W_per_m2K']:.3f} ({slab['plane']:.1f} - ({ground['effective_degC']:.1f})) = "
                       f"{slab['down']:.1f} W/m2; in all {slab['total_W']:,.0f} W"),
            ("6 tube", f"{slab['plane']:.1f} + {both:.1f} x {slab['R_x']:.4f} = {slab['tube']:.1f} C"),
            ("7 flow", f"{slab['total_W']:,.0f} / (rho c {drop:.1f}), rho and c at {temps['usual']:.1f} C, = "
                       f"{6e4 * temps['flow']:.1f} L/min, "
                       f"{6e4 * temps['loop_flow']:.2f} in the longest loop"),
            ("8 water, mean", f"{slab['tube']:.1f} + {both * spacing:.1f} x {temps['wall']:.3f} = {temps['mean']:.1f} C"
                              f" (Re {temps['reynolds']:,.0f}, film {temps['film']:,.0f} W/m2K)"),
            ("9 supply", f"{temps['rest']:.1f} + {drop:.1f} / (1 - e^(-{drop:.1f} / "
                         f"{temps['mean'] - temps['rest']:.1f})) = {temps['supply']:.1f} C"),
            ("10 head", f"{head(answer, temps, fluid):.2f} m"),
            ("11 boiler", f"1.2 x {slab['total_W']:,.0f} = {1.2 * slab['total_W']:,.0f} W, next step "
                          f"{answer['sizes']['boiler']['power_W']:,.0f}"),
            ("12 tank", f"{tank_l(answer, fluid):.2f} L")]
    return "\n" + "".join(f"    {what:22}{how}\n" for what, how in rows) + "\n"


def mean_of(point, rest):
    """The water's mean between supply and return, as it cools towards T*."""
    supply, back = point["supply_degC"], point["return_degC"]
    return rest + (supply - back) / math.log((supply - rest) / (back - rest))


def sums(answer, fluid):
    """(what, unit, by hand, the program) of one shop."""
    loss, slab, temps = worked(answer, fluid)
    sizes, floor, indoor = answer["sizes"], answer["floor"]["room"][0], answer["design"]["climate"]["indoor_degC"]
    power = sizes["boiler"]["power_W"]
    return [("the shop loses", "W", loss, answer["envelope"]["loss_W"]),
            ("the floor takes, up and down", "W", slab["total_W"], answer["floor"]["tube_heat_W"]),
            ("floor over room", "K", slab["floor"] - indoor, floor["floor"]["floor_mean_degC"] - indoor),
            ("water over room, mean", "K", temps["mean"] - indoor, mean_of(answer["point"], temps["rest"]) - indoor),
            ("supply over room", "K", temps["supply"] - indoor, answer["point"]["supply_degC"] - indoor),
            ("flow in all", "L/min", 6e4 * temps["flow"], 6e4 * sizes["pump"]["flow_m3_per_s"]),
            ("head", "m", head(answer, temps, fluid), sizes["pump"]["head_m"]),
            ("boiler wanted", "W", 1.2 * slab["total_W"], sizes["boiler"]["wanted_W"]),
            ("current", "A", power / answer["design"]["service"]["voltage_V"], sizes["electric"]["current_A"]),
            ("tank", "L", tank_l(answer, fluid), 1000 * sizes["tank"]["tank_m3"])]


def answer_of(program, project, layout, glycol):
    text = (project / f"layouts/{layout}.toml").read_text(encoding="utf-8")
    if glycol:
        text += f'\n[fluid]\nkind = "propylene glycol"\nglycol = "{glycol}"\n'
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / f"{layout}.toml"
        path.write_text(text, encoding="utf-8")
        ran = subprocess.run([program, "design", path, "--json"], capture_output=True, text=True)
    if ran.returncode not in (0, 3):
        raise SystemExit(f"{layout}: {ran.stderr}")
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
    text = page.read_text(encoding="utf-8")
    fluids = fluids_of(text)
    fluid = {shop: fluids[f"propylene glycol {glycol}" if glycol else WATER] for shop, (_, glycol) in SHOPS.items()}
    answers = {shop: answer_of(program, project, *how) for shop, how in SHOPS.items()}
    shops = {shop: sums(answer, fluid[shop]) for shop, answer in answers.items()}
    apart = apart_in(shops)
    first = next(iter(SHOPS))
    parts = {"steps": steps_of(answers[first], fluid[first]), "table": table_of(shops)}
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
