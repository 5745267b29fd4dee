#!/usr/bin/env python3
"""Tries spelling.py, page_links.py and by_hand.py on small invented cases: each must see what it is there to see."""
import math
import sys
import tempfile
import unittest
from pathlib import Path

sys.dont_write_bytecode = True
import by_hand
import page_links
import spelling

REFERENCE = """# The design file

## Above the first section

| key | meaning |
|---|---|
| `units` | What is printed. |

## [slab]

| key | meaning |
|---|---|
| `thickness` | Depth of concrete. |

## [[room]]

| key | meaning |
|---|---|
| `name` | What it is called. |
"""
SOURCES = {"src/app/request.cpp": 'x = {"--out", "coils.csv"};', "src/tube/film.cpp": "", "layouts/shop.toml": "",
           "manuals/design-file.md": REFERENCE, "manuals/theory-tube.md": "# Theory: tube\n\n## Film inside\n"}


def project_of(folder, files):
    for name, text in files.items():
        path = Path(folder) / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return Path(folder)


class Links(unittest.TestCase):
    def faults(self, text, page="manuals/guide.md"):
        text += "\n\n`design-file.md` `theory-tube.md`\n"
        with tempfile.TemporaryDirectory() as folder:
            return "\n".join(page_links.faults(project_of(folder, {**SOURCES, page: text})))

    def test_what_is_there(self):
        for text in ("`layouts/shop.toml`, `design-file.md`, `src/tube/`, `film.cpp`, `theory-*.md`, `coils.csv`",
                     "`slab.thickness`, `[slab]`, `[[room]]`, `thickness` under `[slab]`, `--out DIR`",
                     "[sizes](design-file.md), [films](theory-tube.md#film-inside), [here](#the-job)\n\n# The job!\n",
                     "theory-tube says so (`theory-tube.md`, film)\n```sh\n`gone.md` # theory-gone\n```\n"):
            self.assertEqual("", self.faults(text), text)

    def test_files(self):
        self.assertIn("guide.md:2: no file layouts/gone.toml", self.faults("a\n`layouts/gone.toml`"))
        self.assertIn("no file holes.csv", self.faults("`holes.csv`"))
        self.assertIn("no file src/valve/", self.faults("`src/valve/`"))
        self.assertIn("no file gone.svg", self.faults("![a](gone.svg)"))

    def test_sections_of_pages(self):
        self.assertIn("no section #gone", self.faults("[a](theory-tube.md#gone)"))
        self.assertIn("no section on friction", self.faults("(`theory-tube.md`, friction)"))
        self.assertIn("no page theory-gone.md", self.faults("see theory-gone."))

    def test_keys_and_options(self):
        self.assertIn("no key slab.depth", self.faults("`slab.depth`"))
        self.assertIn("no section [pipe]", self.faults("`[pipe]`"))
        self.assertIn("no key depth under [slab]", self.faults("`depth`\nunder `[slab]`"))
        self.assertIn("no option --in", self.faults("`--in FILE`"))
        self.assertEqual("", self.faults("`slab.depth` and `--in`", "DEVELOPERS.md"))


    def test_pages_and_kernels_are_named(self):
        with tempfile.TemporaryDirectory() as folder:
            rooms = "| 1 | tube | kernel | sizes | |\n| 2 | plant | stage | pump | tube |\n"
            headers = {f"include/slabwright/{name}.hpp": "" for name in ("tube", "tube_run", "plant")}
            guide = {"manuals/guide.md": "`design-file.md`"}
            files = {**SOURCES, **headers, **guide, "DEVELOPERS.md": rooms,
                     "manuals/theory-tube.md": "# Theory: tube\n\n`include/slabwright/tube.hpp`\n"}
            found = list(page_links.faults(project_of(folder, files)))
            self.assertEqual(["guide.md:1: no theory page names tube_run.hpp",
                              "guide.md:1: the guide does not name theory-tube.md"], found)


class ByHand(unittest.TestCase):
    def test_what_is_too_far_apart(self):
        rows = [("loss", "W", 1000.0, 1049.0), ("head", "m", 2.0, 2.2), ("tank", "L", float("nan"), 1.5)]
        found = by_hand.apart_in({"shop": rows})
        self.assertEqual(["shop: head: by hand 2.00 m, the program 2.20",
                          "shop: tank: by hand nan L, the program 1.50"], found)

    def test_fluids_of_a_page(self):
        page = ("<!-- fluids -->\n\n| fluid | unit | coldest, C | 20 C | 40 C |\n|---|---|--:|--:|--:|\n"
                "| brine | kg/m3 | 1040.0 at -10.0 | 1020.0 | 1010.0 |\n"
                "| brine | mPa s | 9.000 at -10.0 | 4.000 | 1.000 |\n\n<!-- end -->\n")
        brine = by_hand.fluids_of(page)["brine"]
        self.assertEqual([(-10.0, 1040.0), (20.0, 1020.0), (40.0, 1010.0)], brine["kg/m3"])
        self.assertAlmostEqual(1015.0, by_hand.between(brine["kg/m3"], 30.0))
        self.assertAlmostEqual(2.0, by_hand.between(brine["mPa s"], 30.0, math.log, math.exp))
        with self.assertRaises(SystemExit):
            by_hand.between(brine["kg/m3"], 41.0)

    def test_band_between_laminar_and_turbulent(self):
        self.assertAlmostEqual(64 / 2300, by_hand.friction(2300, 0.0))
        self.assertAlmostEqual(by_hand.colebrook(4000, 0.0), by_hand.friction(4000, 0.0))
        middle = (64 / 2300 + by_hand.colebrook(4000, 0.0)) / 2
        self.assertAlmostEqual(middle, by_hand.friction(3150, 0.0))

    def test_friction_of_the_textbooks(self):
        # As Moody's chart has them: smooth, and of a roughness of 1e-4.
        self.assertAlmostEqual(0.0180, by_hand.colebrook(1e5, 0.0), places=4)
        self.assertAlmostEqual(0.0185, by_hand.colebrook(1e5, 1e-4), places=4)


class Spelling(unittest.TestCase):
    def faults(self, files, own=()):
        with tempfile.TemporaryDirectory() as folder:
            return "\n".join(spelling.faults(project_of(folder, files), list(own)))

    def test_pages_without_their_code(self):
        page = "Tube's `qwxz` in the slab/floor\n\n    qwxz = 2\n\n```sh\nqwxz\n```\n[a](qwxz.md) x_qwxz --qwxz\n"
        self.assertEqual("", self.faults({"README.md": page}))
        self.assertEqual("README.md: teh", self.faults({"README.md": "# Teh\n".replace("T", "t")}))
        self.assertEqual("README.md: qwxz", self.faults({"README.md": "```text\nthe qwxz\n```\n"}))

    def test_answers_and_sources(self):
        self.assertIn("qwxz", self.faults({"tests/golden/a.txt": "the qwxz"}))
        self.assertIn("qwxz", self.faults({"src/a/a.cpp": 'say("the qwxz {:.1f}");'}))
        self.assertIn("qwxz", self.faults({"include/slabwright/a.hpp": "  /// The qwxz."}))
        self.assertEqual("", self.faults(
            {"src/a/a.cpp": '#include "qw xz.hpp"\nint qwxz = f("qwxz");  // See `qwxz`.'}))

    def test_british(self):
        self.assertIn("color", self.faults({"README.md": "the color"}))
        self.assertIn("normalization, written with -ise", self.faults({"README.md": "a normalization of size"}))

    def test_own_words(self):
        self.assertEqual("", self.faults({"README.md": "Deadband"}, ["deadband"]))
        self.assertIn("nobody writes setpoint", self.faults({"README.md": "a"}, ["setpoint"]))
        self.assertIn("the dictionary knows slab", self.faults({"README.md": "a slab"}, ["slab"]))


if __name__ == "__main__":
    unittest.main()
