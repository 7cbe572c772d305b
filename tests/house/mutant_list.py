#!/usr/bin/env python3
"""Each mutant of mutants.txt names a place that stands exactly once, so that the list cannot fall behind the code."""
from tree import ROOT, read, report


def mutants():
    """(file, as it stands, as it might have been, programs) of each line."""
    lines = [line for line in read("tests/house/mutants.txt").splitlines() if line and not line.startswith("#")]
    return [tuple(part.strip() for part in line.split(" | ")) for line in lines]


def findings():
    for mutant in mutants():
        if len(mutant) != 4:
            yield f"mutants.txt: not four parts: {' | '.join(mutant)}"
            continue
        file, stands, _, _ = mutant
        count = read(file).count(stands) if (ROOT / file).exists() else 0
        if count != 1:
            yield f"mutants.txt: {file}: stands {count} times: {stands}"


if __name__ == "__main__":
    report(list(findings()), len(mutants()))
