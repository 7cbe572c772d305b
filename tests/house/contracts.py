#!/usr/bin/env python3
"""What a contract comment points at exists: `Source:` keys (name_year) in docs/sources.md, `Checked:` files in the
tree, and every parameter that `@param` names in the header."""
import re

from tree import ROOT, files, read, report

KEY = re.compile(r"\b[a-z][a-z0-9]*(?:_[a-z0-9]+)*_(?:1[89]|20)\d\d[a-z]?\b")
FIRST = re.compile(r"Source:\s+([a-z][a-z0-9]*_[a-z0-9_]+)")
COMMENT = re.compile(r"(?:^[ \t]*///[^\n]*\n)+", re.M)


def known_keys():
    path = ROOT / "docs/sources.md"
    return set(re.findall(r"\w+", path.read_text(encoding="utf-8"))) if path.exists() else set()


def findings(path, text, keys):
    for match in COMMENT.finditer(text):
        first = text.count("\n", 0, match.start()) + 1
        declaration = re.split(r"[;{]\s*\n|\n\s*\n", text[match.end() :], maxsplit=1)[0]
        for number, line in enumerate(match[0].splitlines(), first):
            for key in sorted({*KEY.findall(line.split("Checked:")[0]), *FIRST.findall(line)}):
                if key not in keys:
                    yield f"{path}:{number}: source {key} is not in docs/sources.md"
            for name in re.findall(r"\btests/[\w/.]+\.\w+", line):
                if not (ROOT / name).exists():
                    yield f"{path}:{number}: {name} does not exist"
            for name in re.findall(r"@param\s+(\w+)", line):
                if not re.search(rf"\b{name}\b", declaration):
                    yield f"{path}:{number}: no parameter {name} follows"


def main():
    keys = known_keys()
    paths = files("src", ends=(".h",))
    report([f for path in paths for f in findings(path, read(path), keys)], len(paths))


if __name__ == "__main__":
    main()
