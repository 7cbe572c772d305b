#!/usr/bin/env python3
"""Turns the examples of contract comments into a GoogleTest file:

    /// Example: friction_factor(1e5, 1e-4) == 0.018513866 within 1e-6
    /// Example: name(Dimension::flow) == "a flow"

A tolerance is a difference, and where the value is smaller than one a fraction of it, so that a small value is checked
as sharply as a large one. Without a tolerance the two must be equal. A line that says Example: and has another form is an error.
usage: doc_examples.py OUT.cc ROOT HEADER..."""
import pathlib
import re
import sys

EXAMPLE = re.compile(r"^\s*///\s*Example:\s*(?P<call>.+?)\s*==\s*(?P<value>.+?)(?:\s+within\s+(?P<within>\S+?))?\s*$")


def test(header, number, match):
    name = re.sub(r"\W", "_", header)
    call, value, within = match["call"], match["value"], match["within"]
    if within:
        claim = f"  EXPECT_NEAR({call}, {value}, tolerance({value}, {within}));"
    else:
        claim = f"  EXPECT_EQ(({call}), ({value}));"
    return [f"TEST(Example, {name}_line_{number}) {{", f'#line {number} "{header}"', claim, "}"]


def main(out, root, headers):
    lines = ["// Written by tests/house/doc_examples.py from the contract comments of the headers."]
    lines += ["#include <gtest/gtest.h>", "", "#include <cmath>", ""]
    bad, tests = [], []
    for header in headers:
        text = pathlib.Path(root, header).read_text(encoding="utf-8").splitlines()
        found = [(n, line) for n, line in enumerate(text, 1) if re.match(r"\s*///\s*Example:", line)]
        if found:
            lines.append(f'#include "{header}"')
        for number, line in found:
            match = EXAMPLE.match(line)
            if match:
                tests += test(header, number, match)
            else:
                bad.append(f"{root}/{header}:{number}: not of the form EXPR == VALUE [within FRACTION]: {line.strip()}")
    lines += ["", "namespace wellproof {", "namespace {"]
    lines += ["[[maybe_unused]] double tolerance(double value, double within) {"]
    lines += ["  return value == 0 ? within : within * std::fmin(1, std::fabs(value));", "}", *tests]
    lines += ["}  // namespace", "}  // namespace wellproof"]
    pathlib.Path(out).write_text("\n".join(lines) + "\n", encoding="utf-8")
    for text in bad:
        print(text, file=sys.stderr)
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1], sys.argv[2], sys.argv[3:]))
