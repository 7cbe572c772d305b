#!/usr/bin/env python3
"""The golden runner finds a changed exit code, changed text and a number too far off, and lets pass what it may."""
import pathlib
import stat
import sys
import tempfile
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).parent))
import run  # noqa: E402


class Runner(unittest.TestCase):
    def setUp(self):
        self.folder = tempfile.TemporaryDirectory()
        self.addCleanup(self.folder.cleanup)
        self.program = pathlib.Path(self.folder.name) / "program"
        self.program.write_text("#!/bin/sh\necho margin 12.5 psi\nexit 1\n")
        self.program.chmod(self.program.stat().st_mode | stat.S_IXUSR)
        self.case = pathlib.Path(self.folder.name) / "case.golden"

    def holds(self, text, update=False):
        self.case.write_text(text)
        return run.check(self.case, str(self.program), update)

    def test_the_same_text_and_exit_code_hold(self):
        self.assertTrue(self.holds("$ wellproof x\nexit 1\n--- stdout\nmargin 12.5 psi\n"))

    def test_another_exit_code_fails(self):
        self.assertFalse(self.holds("$ wellproof x\nexit 0\n--- stdout\nmargin 12.5 psi\n"))

    def test_another_word_fails_even_with_a_tolerance(self):
        self.assertFalse(self.holds("$ wellproof x\nexit 1\nwithin 0.1\n--- stdout\nmargin 12.5 kPa\n"))

    def test_a_number_may_differ_by_the_stated_fraction_only(self):
        self.assertTrue(self.holds("$ wellproof x\nexit 1\nwithin 0.01\n--- stdout\nmargin 12.6 psi\n"))
        self.assertFalse(self.holds("$ wellproof x\nexit 1\nwithin 0.001\n--- stdout\nmargin 12.6 psi\n"))

    def test_update_writes_what_the_program_does(self):
        self.assertTrue(self.holds("$ wellproof x\nexit 0\n--- stdout\nold\n", update=True))
        self.assertEqual(self.case.read_text(), "$ wellproof x\nexit 1\n--- stdout\nmargin 12.5 psi\n")


if __name__ == "__main__":
    unittest.main(buffer=True)
