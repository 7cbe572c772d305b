#!/usr/bin/env python3
"""Ends the program while it asks for a pass phrase, and looks whether the terminal shows again what is typed.

    pass_phrase_test.py PROGRAM
"""
import os
import pathlib
import pty
import select
import signal
import sys
import tempfile
import termios
import time
import unittest

PROGRAM = sys.argv[1]
ECHO = 3, termios.ECHO  # local flags


def echoes(terminal):
    field, flag = ECHO
    return bool(termios.tcgetattr(terminal)[field] & flag)


def wait_for(terminal, word, seconds=30):
    text, ends = b"", time.monotonic() + seconds
    while word not in text and time.monotonic() < ends:
        if select.select([terminal], [], [], 0.2)[0]:
            text += os.read(terminal, 4096)
    return text


class PassPhrase(unittest.TestCase):
    def asked(self, folder):
        """The program at its prompt: its number and our end of its terminal."""
        child, terminal = pty.fork()
        if child == 0:
            os.execv(PROGRAM, [PROGRAM, "book", "lock", "--book", str(pathlib.Path(folder) / "a.book")])
        self.assertIn(b"pass phrase", wait_for(terminal, b": "))
        self.assertFalse(echoes(terminal))
        return child, terminal

    def ended(self, child, terminal):
        ends = time.monotonic() + 20
        while time.monotonic() < ends:
            done, status = os.waitpid(child, os.WNOHANG)
            if done:
                return status
            time.sleep(0.02)
            if select.select([terminal], [], [], 0.05)[0]:
                try:
                    os.read(terminal, 4096)
                except OSError:
                    pass
        self.fail("it did not end")

    def test_ctrl_c_gives_the_terminal_its_voice_back(self):
        with tempfile.TemporaryDirectory() as folder:
            child, terminal = self.asked(folder)
            os.write(terminal, b"\x03")
            status = self.ended(child, terminal)
            self.assertTrue(os.WIFSIGNALED(status) or os.WEXITSTATUS(status) == 130, status)
            self.assertTrue(echoes(terminal))

    def test_so_does_an_end_from_outside(self):
        with tempfile.TemporaryDirectory() as folder:
            child, terminal = self.asked(folder)
            os.kill(child, signal.SIGTERM)
            status = self.ended(child, terminal)
            self.assertTrue(os.WIFSIGNALED(status) or os.WEXITSTATUS(status) == 143, status)
            self.assertTrue(echoes(terminal))


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1])
