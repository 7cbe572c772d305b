#!/usr/bin/env python3
"""Every C++ file is as clang-format leaves it, by the rules of .clang-format."""
import subprocess

from tree import ROOT, files, report

TOOL = "clang-format-14"


def main():
    paths = files("src", "apps", "tests", "bench", ends=(".h", ".cc"))
    differing = subprocess.run(
        [TOOL, "--dry-run", "-Werror", *map(str, paths)], cwd=ROOT, capture_output=True, text=True
    ).stderr
    firsts = {}
    for line in differing.splitlines():
        if "clang-format" in line:
            firsts.setdefault(line.split(":")[0], line)
    report(sorted(firsts.values()), len(paths))


if __name__ == "__main__":
    main()
