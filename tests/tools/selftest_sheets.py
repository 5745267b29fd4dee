#!/usr/bin/env python3
"""Tries sheet_keys.py and what it reads with on small invented sheets: each must see what it is there to see."""
import sys
import tempfile
import unittest
from pathlib import Path

sys.dont_write_bytecode = True
import sheet_keys
import sheet_names
import sheet_numbers
import sheet_text
import sheet_words
import write_sheets

UNITS = sheet_numbers.read_units(Path(__file__).parents[2])
ANSWER = {
    "name": "Shop 12", "loops": {"loop": [{"name": "shop 1", "length_m": 84.7813}, {"name": "wash", "length_m": 20.0}]},
    "flow_m3_per_s": 0.000126862, "lot_m3_per_s": 0.00789, "heat_W": 9994.7, "little_W": 121.0, "supply_degC": 41.1311,
    "cold_degC": -32.2222, "rise_K": 5.55556, "gap_m": 0.0508, "high_m": 3.76555, "part_share": 0.39356, "port": 3,
    "rated_m2K_per_W": 1.76111, "valve_kv": 1.1, "bill_money": 1240.4, "wait_s": 12000.0, "chance_share": 0.0002,
    "made_for": False, "sizes": {"tank": {"tank_m3": 0.00121}},
    "sentence": "The fan takes 48,500 Btu/h with it at -12 F outside",
}


def faults(body):
    sheet = sheet_keys.Sheet(f"<html><body>{body}</body></html>", ANSWER, UNITS).check()
    return "\n".join(what for _, what, _ in sheet.faults)


def told(key, text, unit=None):
    carried = f' data-unit="{unit}"' if unit else ""
    return faults(f'<p><span data-key="{key}"{carried}>{text}</span> {unit or ""}</p>')


class Numbers(unittest.TestCase):
    def holds(self, key, *texts):
        for text in texts:
            with self.subTest(text):
                self.assertEqual("", told(key, text))

    def differs(self, key, *texts):
        for text in texts:
            with self.subTest(text):
                self.assertIn("and not " + key, told(key, text))

    def test_the_units_are_the_project_s(self):
        self.assertAlmostEqual(0.0254, UNITS.fitting("length")["in"].scale)
        self.assertAlmostEqual(6894.757, UNITS.fitting("pressure")["psi"].scale, 3)
        self.assertEqual("flow", UNITS.dimension_of("a.b[2].flow_m3_per_s"))
        self.assertEqual("time", UNITS.dimension_of("wait_s"))
        self.assertEqual("number", UNITS.dimension_of("port"))
        self.assertEqual("money", UNITS.dimension_of("bill_money"))

    def test_within_half_of_the_last_digit(self):
        self.holds("flow_m3_per_s", "2.01 gpm", "2.0 gpm", "7.61 L/min", "2.01 gpm ~", "~ 2.01 gpm")
        self.differs("flow_m3_per_s", "2.02 gpm", "2.1 gpm", "7.60 L/min", "20.1 gpm")

    def test_what_is_bought_is_never_told_smaller(self):
        self.holds("sizes.tank.tank_m3", "1.3 L", "0.4 gal", "1.21 L", "2 L")
        self.differs("sizes.tank.tank_m3", "1.2 L", "0.3 gal", "1.4 L", "0.5 gal")

    def test_thousands_and_what_is_rounded_to_hundreds(self):
        self.holds("heat_W", "34,100 Btu/h", "34100 Btu/h", "10.0 kW", "9,995 W")
        self.differs("heat_W", "34,000 Btu/h", "34,200 Btu/h", "34,150 Btu/h", "9,990 W")
        self.holds("little_W", "410 Btu/h", "413 Btu/h")
        self.differs("little_W", "400 Btu/h", "415 Btu/h")

    def test_temperatures_and_differences(self):
        self.holds("supply_degC", "106 F", "106 °F", "106\u00a0F", "41.1 C")
        self.holds("cold_degC", "-26 F", "\u221226 °F")
        self.differs("cold_degC", "26 F", "-27 F")
        self.holds("rise_K", "10 F", "5.6 K")
        self.differs("rise_K", "42 F")

    def test_lengths_as_a_tape_and_a_rule_have_them(self):
        self.holds("high_m", "12 ft 4 1/4 in", "148 1/4 in", "3.765 m", "3.77 m", "12.4 ft")
        self.differs("high_m", "12 ft 4 1/2 in", "12 ft 4 in", "13 ft", "3.75 m")
        self.holds("gap_m", "2 in", "51 mm", "50 mm")
        self.differs("gap_m", "2 1/2 in", "45 mm")

    def test_other_forms(self):
        self.holds("part_share", "39 %", "39.4%", "0.39")
        self.holds("rated_m2K_per_W", "R-10", "R-10.0", "1.76 m2K/W", "1.76 m²K/W")
        self.holds("valve_kv", "Kv 1.10", "Cv 1.27")
        self.holds("bill_money", "$1,240", "1240 EUR")
        self.holds("wait_s", "3 h 20 min", "200 minutes", "3.3 hours")
        self.holds("chance_share", "under 0.1 %", "0.02 %")
        self.differs("chance_share", "over 0.1 %", "0.1 %")
        self.holds("port", "port 3", "3")
        self.differs("port", "port 4")

    def test_a_list_is_told_by_its_length(self):
        self.assertEqual("", told("loops.loop", "2 loops"))
        self.assertIn("and not loops.loop", told("loops.loop", "3 loops"))

    def test_a_unit_must_stand_there(self):
        self.assertIn("no unit of flow", told("flow_m3_per_s", "2.01"))
        self.assertIn("no unit of flow", told("flow_m3_per_s", "2.01 ft"))
        self.assertIn("no number", told("flow_m3_per_s", "two"))


class Contract(unittest.TestCase):
    def test_a_digit_needs_a_key(self):
        self.assertEqual("", faults("<p>No digit, and W/m2K is a unit of Btu/h ft2 F too</p>"))
        for body in ("<p>Loop 3</p>", "<p>½ in</p>", '<p><span data-key="port">3</span> of 6</p>', '<img alt="3">',
                     '<p data-key="port">port 3 of 6</p>', '<svg><title>3</title></svg>', '<svg><text>3</text></svg>',
                     '<p title="3 of them">a</p>', "<p>٣</p>", "<p>CO2 3</p>"):
            with self.subTest(body):
                self.assertIn("digit", faults(body))

    def test_page_and_figure_numbers_are_free(self):
        self.assertEqual("", faults('<p data-key="page">Page 1 of 3</p><p data-key="figure">Figure 2</p>'))
        self.assertIn("no number of a page", faults('<p data-key="page">Page 1, 20 F</p>'))

    def test_a_key_must_be_there_and_be_a_figure(self):
        self.assertIn("has no flow", told("flow", "3"))
        self.assertIn("has no loops.loop[2]", told("loops.loop[2].name", "x"))
        self.assertIn("neither number nor text", told("made_for", "no"))
        self.assertIn("not keys with a blank", told("port  port", "3 3"))

    def test_texts_stand_whole(self):
        self.assertEqual("", told("sentence", ANSWER["sentence"] + "."))
        self.assertEqual("", told("name", "In Shop 12 there"))
        self.assertIn("is not name", told("name", "Shop 13"))
        self.assertIn("is not sentence", told("sentence", "The fan takes 48,500 Btu/h"))

    def test_several_keys_in_order(self):
        self.assertEqual("", told("loops.loop[0].name loops.loop[0].length_m port", "shop 1: 278 ft at port 3"))
        self.assertIn("and not", told("port loops.loop[0].length_m", "278 ft at port 3"))
        self.assertEqual("", told("supply_degC cold_degC", "106 to -26 F"))
        self.assertIn("no unit", told("supply_degC port", "106 to 3"))

    def test_a_key_within_a_key(self):
        self.assertEqual("", faults('<p data-key="name">Shop 12 has <span data-key="port">3</span></p>'))
        self.assertIn("no key tells", faults('<p data-key="name">Shop 12 has 4, <span data-key="port">3</span></p>'))

    def test_units_in_heads(self):
        def table(head, unit="gpm"):
            return faults(f'<table><tr><th>a</th><th>{head}</th></tr><tr><td>b</td><td><span data-key="flow_m3_per_s" '
                          f'data-unit="{unit}">2.01</span></td></tr></table>')
        self.assertEqual("", table("flow<br><small>gpm</small>"))
        self.assertEqual("", table("flow (gpm)"))
        self.assertIn("not told where", table("flow, L/min"))
        self.assertIn("none of flow", table("flow psi", "psi"))
        self.assertEqual("", told("flow_m3_per_s", "2.01", "gpm"))
        self.assertIn("data-unit without", faults('<p><span data-unit="gpm">a</span></p>'))

    def test_broken_html(self):
        self.assertIn("not closed in order", faults("<p><b>words</p></b>"))


class Drawings(unittest.TestCase):
    def test_a_text_in_lines_stands_whole(self):
        first, last = '<text data-key="sentence">The fan takes 48,500</text>', '<text data-key="sentence">{}</text>'
        self.assertEqual("", faults(f"<svg>{first}{last.format('Btu/h with it at -12 F outside')}</svg>"))
        self.assertEqual("", faults(f"<svg>{last.format('Btu/h with it at -12 F outside')}{first}</svg>"))
        self.assertIn("only a part", faults(f"<svg>{first}</svg>"))
        self.assertIn("is not sentence", faults(f"<svg>{first}{last.format('Btu/h at -13 F')}</svg>"))

    def test_a_name_by_its_last_word(self):
        self.assertEqual("", faults('<svg><text data-key="loops.loop[0].name">1</text></svg>'))
        self.assertIn("is not", faults('<svg><text data-key="loops.loop[0].name">2</text></svg>'))
        self.assertIn("is not", faults('<p data-key="loops.loop[0].name">1</p>'))

    def test_scale_in_drawings_only(self):
        self.assertEqual("", faults('<svg><text data-key="scale">50</text><title data-key="scale">50 ft</title></svg>'))
        self.assertEqual("", faults('<svg><text data-key="scale">1:48 (1/4 in = 1 ft) on 11 x 17 in</text></svg>'))
        self.assertIn("outside of a drawing", faults('<p data-key="scale">50</p>'))
        self.assertEqual("", faults('<svg><text data-key="scale port">50 ft from port 3</text></svg>'))
        self.assertIn("no key tells", faults('<svg><text data-key="scale port">50 ft from port 3 of 6</text></svg>'))

    def axis(self, places):
        ticks = "".join(f'<text x="9" y="{y}" text-anchor="end" data-key="scale">{value}</text>' for value, y in places)
        return faults(f'<svg><g id="heat-axes">{ticks}</g></svg>')

    def test_ticks_stand_where_their_values_are(self):
        self.assertEqual("", self.axis([(0, 40), (10, 30), (20, 20.01), (30, 10)]))
        self.assertIn("the tick 20 stands at 22", self.axis([(0, 40), (10, 30), (20, 22), (30, 10)]))
        self.assertIn("the tick", self.axis([(1, 40), (10, 30), (100, 20)]))
        self.assertIn("the tick", self.axis([("1,000", 40), ("2,000", 30), ("4,000", 20)]))

    def test_panels_below_one_another(self):
        upper = [(0, 40), (10, 30), (20, 20)]
        self.assertEqual("", self.axis(upper + [(0, 90), (1, 80), (2, 70)]))
        self.assertIn("the tick", self.axis(upper + [(0, 90), (1, 80), (3, 70)]))


class Text(unittest.TestCase):
    def test_hostile_text_is_text(self):
        root, unclosed = sheet_text.tree_of("<p>a &lt;script&gt;alert(1)&lt;/script&gt;<br>b</p>")
        self.assertEqual("a <script>alert(1)</script> b", sheet_text.plain(root.text()))
        self.assertEqual([], unclosed)


class Words(unittest.TestCase):
    def said(self, text, names=(), units="US"):
        return [what for _, what in sheet_words.faults(f"<html><body><p>{text}</p></body></html>", names, units)]

    def test_words_out_of_place(self):
        for text in ("the project file", "a safe setting", "Safe to drill", "the setpoint", "turn it on hold",
                     "a probe", "this run", "in night mode", "the drill map", "the radiant panel", "an auxiliary one",
                     "Kv 1.1", "is assumed", "at a setpoint, such as 'slab setpoint'", "the project. Name",
                     "<b>pro</b>gram", "weekly schedule", "keep-out area", "the model"):
            with self.subTest(text):
                self.assertEqual(1, len(self.said(text)), self.said(text))

    def test_words_in_their_place(self):
        for text in ("NO SETTING IS SAFE", "No setting is safe.", "cannot be called safe", "safety valve",
                     "slab setpoint", "frost hold", "hold the pressure", "holds for an hour", "a run of tube",
                     "weather station", "Cv 1.2", "write 'Kv 1.1' or 'setpoint'", "project.name",
                     "electric panel", "distances"):
            with self.subTest(text):
                self.assertEqual([], self.said(text))
        self.assertEqual([], self.said("Kv 1.1", units="SI"))
        self.assertEqual(1, len(self.said("Cv 1.1", units="SI")))

    def test_names_are_the_user_s(self):
        self.assertEqual([], self.said("In Model Shop, warm", {"Model Shop"}))
        self.assertEqual({"a", "b"}, sheet_words.names_in({"name": "a", "room": [{"name": "b", "kind": "c"}]}))


class Names(unittest.TestCase):
    def faults(self, hostile, usual):
        with tempfile.TemporaryDirectory() as folder:
            for name, body in (("hostile", hostile), ("usual", usual)):
                (Path(folder) / name).mkdir()
                (Path(folder) / name / "a.html").write_text(body, encoding="utf-8")
            return "\n".join(sheet_names.faults(f"{folder}/hostile", f"{folder}/usual"))

    USUAL = '<p data-key="design.room[0].name">shop</p>'

    def test_names_come_out_as_text(self):
        self.assertEqual("", self.faults(self.USUAL.replace("shop", "&lt;script&gt;"), self.USUAL))
        running = self.USUAL.replace("shop", "<script></script>")
        self.assertIn("<script> is on no page", self.faults(running, self.USUAL))
        self.assertIn("<p> with onclick", self.faults(self.USUAL.replace("<p", "<p onclick='a'"), self.USUAL))
        self.assertIn("does not tell design.room", self.faults("<p data-key='a'>shop</p>", self.USUAL))
        self.assertIn("nothing was compared", self.faults("<p>a</p>", "<p>a</p>"))


class Written(unittest.TestCase):
    PAGES = 'mkdir -p $5; echo a > $5/a.html; echo b > $5/b.html; echo {}\n'

    def run_with(self, program):
        with tempfile.TemporaryDirectory() as folder:
            path = Path(folder) / "program"
            path.write_text("#!/bin/sh\n" + program)
            path.chmod(0o755)
            found, count = write_sheets.write(path, Path(folder), Path("a.toml"))
            return "\n".join(found), count

    def test_exit_codes_and_sizes(self):
        self.assertEqual(("", 2), self.run_with(self.PAGES))
        self.assertEqual("", self.run_with(self.PAGES + "exit 3\n")[0])
        self.assertIn("exit 2: bad", self.run_with("echo bad >&2; exit 2\n")[0])
        self.assertIn("0 pages", self.run_with("exit 0\n")[0])
        large = self.PAGES.replace("echo a >", "head -c 400001 /dev/zero >")
        self.assertIn("a.html: 400001 bytes", self.run_with(large)[0])


if __name__ == "__main__":
    unittest.main()
