#!/usr/bin/env python3
"""No path of one machine, nothing left open, no tab or trailing space, and no file of code so long that it wants to be
two."""
import re

from tree import files, read, report

MACHINE = re.compile(r"(?<![\w.}\"$-])/(?:" + "|".join(("work", "farm", "root", "tmp", "home", "Users")) + r")/")
OPEN = re.compile("|".join(("TO" + "DO", "FIX" + "ME", "X" * 3, "not " + "implemented", "place" + "holder")))
CODE = (".h", ".cc", ".py", ".ts")
LONGEST = 400  # lines; about 300 are comfortable


def findings(path, text):
    for number, line in enumerate(text.splitlines(), 1):
        if MACHINE.search(line):
            yield f"{path}:{number}: a path of one machine"
        if path.suffix in CODE and OPEN.search(line):
            yield f"{path}:{number}: left open: {line.strip()}"
        if path.suffix != ".golden" and (line != line.rstrip() or "\t" in line):
            yield f"{path}:{number}: a tab or a trailing space"
    if path.suffix in CODE and text.count("\n") > LONGEST:
        yield f"{path}: {text.count(chr(10))} lines; it wants to be two files"
    if text and not text.endswith("\n"):
        yield f"{path}: no line end at its end"


def main():
    texts = {path: read(path) for path in files()}
    report([f for path, text in texts.items() if "\0" not in text for f in findings(path, text)], len(texts))


if __name__ == "__main__":
    main()
