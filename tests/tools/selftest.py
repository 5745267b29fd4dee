#!/usr/bin/env python3
"""Tries the scripts beside this one on small invented projects: each must see what it is there to see."""
import sys
import tempfile
import unittest
from pathlib import Path

sys.dont_write_bytecode = True
import budgets
import cpp_text
import layers
import manual_commands
import same_numbers
import validation_table

ROOMS = """
| floor | module | kind | what it holds | may use, besides core |
|--:|---|---|---|---|
| 0 | core | - | units | |
| 1 | maths | kernel | roots | |
| 1 | geometry | kernel | paths | |
| 3 | hydraulics | kernel | flows | maths |
| 3 | design | stage | the Design | geometry |
| 4 | plant | stage | pump | maths hydraulics design |
| 8 | answer | stage | all of it | all stages |
| 9 | report | face | text | design answer |
| 11 | app | face | commands | design answer report |
"""
BUILD = """
module(core)
module(maths)
module(geometry)
module(hydraulics maths)
module(design geometry)
module(plant maths hydraulics design)
module(answer design plant)
module(report design answer)
"""


def project_of(folder, files):
    for name, text in files.items():
        path = Path(folder) / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    return Path(folder)


def faults_of(script, files):
    with tempfile.TemporaryDirectory() as folder:
        return "\n".join(script.faults(project_of(folder, files)))


class Layers(unittest.TestCase):
    def faults(self, path="", text="", rooms=ROOMS, build=BUILD):
        files = {"DEVELOPERS.md": rooms, "CMakeLists.txt": build}
        return faults_of(layers, {**files, path: text} if path else files)

    def test_a_project_in_order_has_no_faults(self):
        good = '#include "slabwright/design_words.hpp"\n#include "slabwright/units.hpp"\n#include "plant/pump.hpp"\n'
        self.assertEqual("", self.faults("src/plant/pump.cpp", good + "#include <cmath>\n#include <fmt/format.h>\n"))

    def test_a_module_outside_the_row(self):
        self.assertIn("belongs to plant", self.faults("src/design/read.cpp", '#include "slabwright/plant.hpp"'))
        self.assertIn("belongs to design", self.faults("include/slabwright/maths.hpp", '#include "design.hpp"'))
        self.assertIn("belongs to plant", self.faults("src/report/text.cpp", '#include "slabwright/plant.hpp"'))
        self.assertEqual("", self.faults("src/answer/all.cpp", '#include "slabwright/plant.hpp"'))

    def test_another_module_s_private_header(self):
        self.assertIn("private to maths", self.faults("src/plant/pump.cpp", '#include "maths/lu.hpp"'))

    def test_a_header_of_no_module(self):
        self.assertIn("header of no module", self.faults("src/plant/pump.cpp", '#include "slabwright/pumps.hpp"'))
        self.assertIn("no module of the table", self.faults("include/slabwright/pumps.hpp", ""))
        self.assertIn("no module of the table", self.faults("src/garden/pump.cpp", ""))

    def test_packages_away_from_home(self):
        self.assertEqual("", self.faults("src/hydraulics/a.cpp", "#include <boost/graph/adjacency_list.hpp>"))
        self.assertIn("has its home", self.faults("src/plant/a.cpp", "#include <boost/graph/adjacency_list.hpp>"))
        self.assertIn("has its home", self.faults("src/plant/a.cpp", "#include <Eigen/Dense>"))
        self.assertIn("public headers show none", self.faults("include/slabwright/maths.hpp", "#include <Eigen/Dense>"))
        self.assertIn("no package with a home", self.faults("src/maths/a.cpp", "#include <zlib.h>"))

    def test_what_stays_in_app(self):
        self.assertIn("src/app only", self.faults("src/maths/a.cpp", "#include <iostream>"))
        self.assertIn("src/app only", self.faults("src/maths/a.cpp", "#  include <unordered_map>"))
        self.assertEqual("", self.faults("src/app/main.cpp", "#include <iostream>\n#include <CLI/CLI.hpp>"))
        self.assertIn("dialect", self.faults("src/app/main.cpp", "#include <ranges>"))

    def test_one_coupling_loop(self):
        self.assertEqual("", self.faults("src/plant/a.cpp", "auto x = fixed_point(start);"))
        self.assertEqual("", self.faults("src/design/a.cpp", "// as fixed_point() does"))
        self.assertIn("allowed in maths plant", self.faults("src/design/a.cpp", "auto x = fixed_point (start);"))

    def test_second_opinions_stay_apart(self):
        star = '#include "slabwright/handbook_star.hpp"'
        self.assertIn("second opinion", self.faults("src/plant/size.cpp", star))
        self.assertIn("second opinion", self.faults("include/slabwright/plant.hpp", star))
        self.assertNotIn("second opinion", self.faults("src/plant/opinions.cpp", star))

    def test_the_table_and_the_build_agree(self):
        more = BUILD.replace("plant maths", "plant geometry maths")
        self.assertIn("lets plant use geometry", self.faults(build=more))
        self.assertIn("knows the module garden", self.faults(build=BUILD + "module(garden)\n"))

    def test_one_way_down(self):
        self.assertIn("not on a lower floor", self.faults(rooms=ROOMS.replace("| paths | |", "| paths | plant |")))
        self.assertIn("a stage", self.faults(rooms=ROOMS.replace("| 3 | hydraulics | kernel | flows | maths |",
                                                                 "| 3 | hydraulics | kernel | flows | design |")))
        self.assertIn("no table", self.faults(rooms="# Rooms\n"))


class Budgets(unittest.TestCase):
    UNITS = 'constexpr Unit rows[] = {{"m", "_m"}, {"W/m2K", "_W_per_m2K"}};'

    def faults(self, path, text):
        bare = {f"{name}/.keep": "" for name in ("src", "include", "tests", "layouts", "manuals")}
        pages = {name: "" for name in ("CMakeLists.txt", "README.md", "DEVELOPERS.md")}
        units = {"include/slabwright/units_table.hpp": self.UNITS}
        return faults_of(budgets, {**bare, **pages, **units, path: text})

    def test_a_project_in_order_has_no_faults(self):
        self.assertEqual("", self.faults("src/tube/film.cpp", "int f() {\n  return 1;\n}\n"))

    def test_the_top_level(self):
        self.assertIn("does not belong", self.faults("notes.txt", ""))

    def test_lengths_and_width(self):
        self.assertIn("201 lines", self.faults("include/slabwright/tube.hpp", "\n" * 201))
        self.assertIn("401 lines", self.faults("src/tube/film.cpp", "\n" * 401))
        self.assertIn("301 lines", self.faults("tests/tube/film.cpp", "\n" * 301))
        self.assertIn("121 characters", self.faults("src/tube/film.cpp", "// " + "a" * 118))

    def test_one_name_for_two_types(self):
        def both(first, second):
            bare = {f"{name}/.keep": "" for name in ("src", "include", "tests", "layouts", "manuals")}
            pages = {name: "" for name in ("CMakeLists.txt", "README.md", "DEVELOPERS.md")}
            return faults_of(budgets, {**bare, **pages, "include/slabwright/a.hpp": first, "src/b/b.cpp": second})

        one = "namespace s {\nstruct A {\n  int b;\n};\n}\n"
        self.assertIn("src/b/b.cpp:2: s::A is defined in include/slabwright/a.hpp:2 too", both(one, one))
        self.assertIn("too", both(one, "namespace s {\nenum class A : int { x };\n}"))
        for other in ("namespace s {\nnamespace {\nstruct A {\n};\n}\n}", "namespace s {\nstruct A;\n}",
                      "namespace t {\nstruct A {\n};\n}", "namespace s {\nstruct B {\n  struct A {\n  };\n};\n}"):
            self.assertEqual("", both(one, other))

    def test_a_long_function(self):
        body = "  g();\n" * 59
        for text in (f"namespace s {{\nint f(int a) {{\n{body}}}\n}}",
                     f"struct S {{\n void f() const {{\n{body}}}\n}};",
                     f'TEST_CASE("a") {{\n{body}}}\n'):
            self.assertIn("function of 61 lines", self.faults("src/a/a.cpp", text))
        self.assertEqual("", self.faults("src/a/a.cpp", "int rows[] = {\n" + "  1,\n" * 80 + "};\n"))

    def test_words(self):
        self.assertIn("do not belong", self.faults("src/a/a.cpp", "// " + "TO" + "DO: more"))
        self.assertIn("do not belong", self.faults("manuals/guide.md", "see sha" + "red/design.md"))
        self.assertEqual("", self.faults("manuals/guide.md", "Tube in a shared trench, a workshop, an issue of leaks."))

    def test_units_in_names(self):
        def struct(line):
            return self.faults("include/slabwright/tube.hpp", f"struct Bore {{\n  /// A run.\n  {line}\n}};\n")
        self.assertIn(":3: the double length ", struct("double length = 0.0;"))
        self.assertIn("the double y ", struct("double x_m, y;"))
        self.assertIn("the double film ", struct("std::optional<double> film;"))
        self.assertIn("the double film ", struct("Kind kind = Kind{}; std::vector<double> film = {};"))
        self.assertEqual("", struct("double x_m = std::max(1.0, 2.0), y_m = 0.0; double film_W_per_m2K;"))
        self.assertEqual("", struct("double at(double share) const; int count = 0;"))


class CppText(unittest.TestCase):
    def test_quotes_and_comments_hide_braces(self):
        text = 'int f() {  // {\n  g("{", \'{\', R"x({)x", 1\'000);  /* {\n */\n}\n'
        plain = cpp_text.without_comments_and_quotes(text)
        self.assertEqual(1, plain.count("{"))
        self.assertEqual(text.count("\n"), plain.count("\n"))

    def test_kinds(self):
        text = "namespace a { template <class T> struct B { int c() { return [] { return 1; }(); } int d{2}; }; }"
        self.assertEqual(["other", "function", "other", "type", "namespace"], [b.kind for b in cpp_text.blocks(text)])


class Validation(unittest.TestCase):
    ROW = "IAPWS R12\tTable 10\tpublished\tviscosity\t0.89\t0.8901\tits last digit\t\tyes\n"
    EARLIER = ROW.replace("Table 10", "Table 2").replace("published", "derived")

    def run_with(self, families, page=None, write=False):
        with tempfile.TemporaryDirectory() as folder:
            project_of(folder, {f"rows/{name}.tsv": text for name, text in families.items() if text is not None})
            path = Path(folder) / "page.md"
            if page is not None:
                path.write_text(page)
            said = validation_table.main([f"{folder}/rows", str(path), *families] + ["--write"] * write)
            return said, path.read_text() if path.exists() else None

    def page(self, families):
        return self.run_with(families, write=True)[1]

    def test_the_page_is_sorted_counted_and_the_same_each_time(self):
        page = self.page({"fluid": self.ROW, "slab": self.EARLIER})
        self.assertEqual(page, self.page({"slab": self.EARLIER, "fluid": self.ROW}))
        self.assertLess(page.index("| Table 2 |"), page.index("| Table 10 |"))
        self.assertIn("| published | 1 |\n| reference code | 0 |\n| derived | 1 |", page)

    def test_a_page_as_this_run_makes_it_is_accepted(self):
        families = {"fluid": self.ROW, "slab": self.EARLIER}
        self.assertEqual("", self.run_with(families, self.page(families))[0])

    def test_a_changed_figure_is_shown(self):
        page = self.page({"fluid": self.ROW})
        said = self.run_with({"fluid": self.ROW.replace("0.8901", "0.8899")}, page)[0]
        self.assertIn("0.8899", said)
        self.assertIn("--target validation_table", said)

    def test_a_part_of_the_families_is_held_against_the_page(self):
        page = self.page({"fluid": self.ROW, "slab": self.EARLIER})
        self.assertEqual("", self.run_with({"fluid": self.ROW, "slab": None}, page)[0])
        other = {"fluid": self.ROW.replace("0.89\t0.8901", "0.88\t0.8801"), "slab": None}
        self.assertIn("Not in the page", self.run_with(other, page)[0])
        self.assertIn("No family", self.run_with({"fluid": None}, page)[0])

    def test_refuses_to_write(self):
        self.assertIn("no rows of slab", self.run_with({"fluid": self.ROW, "slab": None}, write=True)[0])
        said, page = self.run_with({"fluid": self.ROW.replace("\tyes", "\tNO")}, write=True)
        self.assertIn("do not hold", said)
        self.assertIsNone(page)

    def test_a_row_outside_its_tolerance_is_refused_whatever_its_test_said(self):
        for tolerance, ours in (("0.001", "0.95"), ("1 %", "0.91"), ("its last digit", "0.92"), ("1 %", "nan")):
            row = self.ROW.replace("0.8901", ours).replace("its last digit", tolerance)
            self.assertIn("do not hold", self.run_with({"fluid": row}, write=True)[0], tolerance)
        for tolerance, ours in (("0.06", "0.95"), ("3 %", "0.91"), ("its last digit", "0.89"),
                                ("its last digit", "0.90")):
            row = self.ROW.replace("0.8901", ours).replace("its last digit", tolerance)
            self.assertEqual("", self.run_with({"fluid": row}, write=True)[0], tolerance)

    def test_a_row_of_the_page_outside_its_tolerance_is_refused(self):
        page = self.page({"fluid": self.ROW, "slab": self.EARLIER}).replace("0.8901 |", "0.95 |")
        self.assertIn("do not hold", self.run_with({"fluid": self.ROW, "slab": None}, page)[0])

    def test_a_row_that_does_not_hold_fails_against_any_page(self):
        page = self.page({"fluid": self.ROW})
        self.assertIn("do not hold", self.run_with({"fluid": self.ROW.replace("\tyes", "\tNO")}, page)[0])


class ManualCommands(unittest.TestCase):
    PAGE = """
```sh
cmake -S . -B .build
slabwright design \\
  layouts/a.toml
slabwright check layouts/a.toml  # exit 3
```
```
slabwright not a command
```
"""

    def read(self, program, page=PAGE):
        with tempfile.TemporaryDirectory() as folder:
            root = project_of(folder, {"layouts/a.toml": "", "program": "#!/bin/sh\n" + program})
            (root / "program").chmod(0o755)
            return manual_commands.read_page("page.md", page, root / "program", root / "layouts")

    def run_with(self, program):
        return self.read(program)[0]

    def test_finds_commands(self):
        self.assertEqual([(4, 0), (6, 3)], [(line, code) for line, _, code in manual_commands.commands(self.PAGE)])

    def test_compares_exit_codes(self):
        self.assertEqual([], self.run_with('test -f "$2" || exit 9\ntest $1 = design || exit 3\n'))
        self.assertIn("page.md:6:", "".join(self.run_with("exit 0\n")))
        self.assertIn("page.md:4:", "".join(self.run_with("exit 3\n")))

    def test_the_next_command_must_be_one(self):
        said = 'test "$3" = --help && exit $#\necho "Next:  slabwright check it      all figures:  add --full"\n'
        page = "```sh\nslabwright design\n```\n"
        self.assertIn("refused: slabwright check it", "".join(self.read(said, page)[0]))
        self.assertEqual([], self.read(said.replace("exit $#", "exit 0"), page)[0])

    def test_a_file_in_a_page_must_be_read(self):
        page = "```toml\nunits = 1\n```\n"
        self.assertIn("page.md:2: not a design file", "".join(self.read("exit 2\n", page)[0]))
        self.assertEqual([], self.read("exit 3\n", page)[0])


class QuotedAnswers(unittest.TestCase):
    PRINTED = ["SHOP", "", "IT WORKS at -12 F.", "tube   835 ft", "boiler 9 kW", "Not an approval.", "Next:  go"]
    QUOTED = ["SHOP", "...", "tube 835 ft", "boiler  9 kW", "..."]

    def test_true_with_lines_left_out_and_other_blanks(self):
        self.assertEqual("", manual_commands.drift(self.QUOTED, self.PRINTED))
        self.assertEqual("", manual_commands.drift(self.PRINTED, self.PRINTED))
        self.assertEqual("", manual_commands.drift(["...", "Next: go"], self.PRINTED))

    def test_a_changed_figure_a_line_left_out_unsaid_and_another_order(self):
        for quoted in (["SHOP", "...", "tube 836 ft", "..."], ["IT WORKS at -12 F.", "..."], ["SHOP"],
                       ["SHOP", "IT WORKS at -12 F.", "..."], ["...", "boiler 9 kW", "...", "tube 835 ft", "..."]):
            self.assertNotEqual("", manual_commands.drift(quoted, self.PRINTED), quoted)

    def test_renewed_by_the_words(self):
        now = [*self.PRINTED[:3], "tube   840 ft", "pump   one", "boiler 12 kW", *self.PRINTED[5:]]
        new = manual_commands.renewed(self.QUOTED, now)
        self.assertEqual(["SHOP", "...", "tube   840 ft", "pump   one", "boiler 12 kW", "..."], new)
        self.assertEqual("", manual_commands.drift(new, now))
        self.assertIsNone(manual_commands.renewed(["...", "a sentence that is gone", "..."], now))

    def test_renewed_to_the_last_of_rows_that_are_alike(self):
        quoted = ["...", "   10   24   33", "  -12    9   14", "  -26    5    9", "..."]
        now = ["a table", "   10   24   34", "  -12    9   15", "  -26    5   10", "more"]
        self.assertEqual(["...", *now[1:4], "..."], manual_commands.renewed(quoted, now))

    def test_written_into_the_page(self):
        page = "Text.\n```sh\nslabwright design\n```\n```text\nold 1\n```\nMore.\n```text\n...\nend 2\n```\nLast.\n"
        found, new = ManualCommands().read('echo "old 5"\necho "end 7"\n', page)
        self.assertEqual(2, len(found))
        self.assertEqual(page.replace("old 1", "old 5\nend 7").replace("end 2", "end 7"), new)
        self.assertEqual([], ManualCommands().read('echo "old 5"\necho "end 7"\n', new)[0])


class SameNumbers(unittest.TestCase):
    def compared(self, one, other, allowed="", as_printed=False):
        comparison = same_numbers.Comparison(same_numbers.exceptions(allowed), as_printed)
        comparison.answers("shop", one, other)
        return comparison

    def test_numbers_are_equal_to_nine_digits(self):
        self.assertEqual([], self.compared({"a": [1.234567890123]}, {"a": [1.234567890124]}).faults)
        self.assertEqual(["shop: a[0]: 1.23456789 and 1.2345679"],
                         self.compared({"a": [1.23456789]}, {"a": [1.23456790]}).faults)
        self.assertEqual(1, len(self.compared({"a": 0.0}, {"a": 1e-17}).faults))
        self.assertEqual(1, len(self.compared({"a": 1}, {"a": True}).faults))

    def test_texts_keys_and_lengths_are_equal(self):
        for one, other in [("a", "b"), ([1, 2], [1]), ({"x": 1}, {}), ({"x": None}, {"x": 0}), ([], [1])]:
            self.assertNotEqual([], self.compared({"a": one}, {"a": other}).faults, (one, other))

    def test_an_exception_has_a_key_and_a_measure(self):
        rule = "run[*].left_W 1e-9 what an iteration leaves\n"
        small, large = {"run": [{"left_W": 1e-12}]}, {"run": [{"left_W": 1e-8}]}
        zero = {"run": [{"left_W": 0.0}]}
        self.assertEqual([], self.compared(small, zero, rule).faults)
        self.assertNotEqual([], self.compared(large, zero, rule).faults)
        self.assertNotEqual([], self.compared({"walk": [{"left_W": 1e-12}]}, {"walk": [{"left_W": 0.0}]}, rule).faults)

    def test_the_command_line_prints_six_digits(self):
        self.assertEqual([], self.compared({"a": 1.23456789}, {"a": 1.23457}, as_printed=True).faults)
        self.assertNotEqual([], self.compared({"a": 1.23456789}, {"a": 1.23456}, as_printed=True).faults)


if __name__ == "__main__":
    unittest.main()
