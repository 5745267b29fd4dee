#!/usr/bin/env python3
"""Tries out_folder.py on invented programs, each of which does one thing wrong on the disk."""
import contextlib
import io
import sys
import tempfile
import unittest
from pathlib import Path

sys.dont_write_bytecode = True
import out_folder

# Called as: sheets --quick LAYOUT --out DIR, and with other commands; $out is the folder.
HEAD = '#!/bin/sh\nfor word; do out=$word; done\nmkdir -p "$out"\n'
PIECES = "for n in 1 2 3 4 5 6 7 8; do echo piece; sleep 0.01; done"
IN_PLACE = HEAD + f': >"$out/mark{out_folder.UNFINISHED}"\nrm "$out/mark{out_folder.UNFINISHED}"\n' + \
    f'({PIECES}) >"$out/loops.csv"\n'
BY_NAME = HEAD + f'own="$out/loops.csv{out_folder.UNFINISHED}"\n({PIECES}) >"$own"\nmv "$own" "$out/loops.csv"\n'
THROUGH_LINKS = HEAD + 'for n in a b c d e f g h i j; do echo sheet >"$out/$n"; done; echo sheet >"$out/loops.csv"\n'
BESIDE = HEAD + 'for n in a b c d e f g h i j; do echo sheet >"$out/$n"; done; echo sheet >"$out/../beside"\n'
CARELESS = HEAD + 'head -c 200000 /dev/zero >"$out/loops.csv" 2>/dev/null\nexit 0\n'


class OutFolder(unittest.TestCase):
    def faults(self, what, script, *more):
        with tempfile.TemporaryDirectory() as name, contextlib.redirect_stdout(io.StringIO()):
            program, layout = Path(name) / "program", Path(name) / "shop.toml"
            program.write_text(script, encoding="utf-8")
            program.chmod(0o755)
            layout.write_text('name = "shop"\n', encoding="utf-8")
            return "\n".join(what(str(program), str(layout), *more))

    def test_half_a_file_after_a_kill_is_seen(self):
        self.assertIn("neither whole", self.faults(out_folder.killed, IN_PLACE, "16"))

    def test_a_program_that_renames_is_not_blamed_for_half_files(self):
        self.assertNotIn("neither whole", self.faults(out_folder.killed, BY_NAME, "8"))

    def test_writing_through_a_link_is_seen(self):
        self.assertIn("elsewhere/precious", self.faults(out_folder.outside, THROUGH_LINKS))

    def test_writing_beside_the_folder_is_seen(self):
        self.assertIn("work/beside", self.faults(out_folder.outside, BESIDE))

    def test_a_full_disk_that_nobody_noticed_is_seen(self):
        with tempfile.TemporaryDirectory() as name:
            program = Path(name) / "program"
            program.write_text(CARELESS, encoding="utf-8")
            program.chmod(0o755)
            with contextlib.redirect_stdout(io.StringIO()):
                code = out_folder.full(str(program), str(program))
        if code == out_folder.NOT_HERE:
            self.skipTest("mounting is not allowed here")
        self.assertEqual(1, code)


if __name__ == "__main__":
    unittest.main()
