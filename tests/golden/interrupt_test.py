#!/usr/bin/env python3
"""Ends a running plan as a person would, and looks at what the terminal was shown meanwhile.

    interrupt_test.py PROGRAM SITE
"""
import os
import pathlib
import pty
import select
import signal
import subprocess
import sys
import tempfile
import time
import unittest

PROGRAM, SITE = sys.argv[1], sys.argv[2]


def plan(report, *more, stderr=subprocess.PIPE):
    return subprocess.Popen([PROGRAM, "plan", SITE, "--threads", "1", "--report", str(report), *more],
                            stdout=subprocess.PIPE, stderr=stderr)


def seen_on_terminal(folder, until, seconds, *more):
    """What a plan writes to a terminal until a word is seen or so many seconds have passed, and its exit code after
    Ctrl-C."""
    ours, theirs = pty.openpty()
    running = plan(pathlib.Path(folder) / "report.html", "--draws", "48", *more, stderr=theirs)
    os.close(theirs)
    text = b""
    ends = time.monotonic() + seconds
    while time.monotonic() < ends and until not in text:
        if select.select([ours], [], [], 0.2)[0]:
            text += os.read(ours, 65536)
    running.send_signal(signal.SIGINT)
    code = running.wait(timeout=20)
    running.stdout.close()
    try:
        while piece := os.read(ours, 65536):
            text += piece
    except OSError:  # the other end is closed
        pass
    os.close(ours)
    return text.decode(), code


class Interrupt(unittest.TestCase):
    def test_ends_at_once_with_130_and_leaves_the_old_report(self):
        with tempfile.TemporaryDirectory() as folder:
            report = pathlib.Path(folder) / "report.html"
            report.write_text("the old one")
            running = plan(report, "--draws", "5000")
            time.sleep(1)
            running.send_signal(signal.SIGINT)
            out, err = running.communicate(timeout=20)
            self.assertEqual(running.returncode, 130)
            self.assertEqual(out, b"")
            self.assertEqual(err.decode(), "wellproof: interrupted; what it was working on is not finished\n")
            self.assertEqual(report.read_text(), "the old one")
            self.assertEqual(os.listdir(folder), ["report.html"])

    def test_a_terminal_is_shown_how_far_it_is_and_how_long_it_takes(self):
        with tempfile.TemporaryDirectory() as folder:
            text, code = seen_on_terminal(folder, b" left", 90)
            self.assertEqual(code, 130)
            self.assertIn("[", text)
            self.assertRegex(text, r"\d+ (s|min) left")
            self.assertIn("interrupted", text)

    def test_with_json_nothing_is_shown(self):
        with tempfile.TemporaryDirectory() as folder:
            text, code = seen_on_terminal(folder, b" left", 8, "--json")
            self.assertEqual(code, 130)
            self.assertNotIn("left", text)
            self.assertNotIn("[#", text)
            self.assertNotIn("[.", text)


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
