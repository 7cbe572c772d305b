#!/usr/bin/env python3
"""Runs commands of the program and compares exit code and text with what stands in *.golden files.

    $ wellproof plan examples/shallow_strong.toml     the command, run in the project's folder
    exit 0
    within 1e-9                                       optional: numbers may differ by this fraction
    --- stdout
    the text, to the end or to the next --- line
    --- stderr                                        optional; without it the error text is not compared
    ...

{out} in a command is a fresh folder of the run; --- file NAME compares a file written there.
--update rewrites the files from what the program does and shows the difference, for a person to judge.
"""
import argparse
import difflib
import pathlib
import re
import shlex
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[2]
NUMBER = re.compile(r"[-+]?\d+(?:\.\d+)?(?:[eE][-+]?\d+)?")


def parse(text):
    """The head's fields and the sections in order."""
    head, sections, name = [], {}, None
    for line in text.splitlines(keepends=True):
        if line.startswith("--- "):
            name = line[4:].strip()
            sections[name] = ""
        elif name is None:
            head.append(line.rstrip("\n"))
        else:
            sections[name] += line
    commands = [line[2:] for line in head if line.startswith("$ ")]
    exits = [line[5:] for line in head if line.startswith("exit ")]
    within = [line[7:] for line in head if line.startswith("within ")]
    known = sum(map(len, (commands, exits, within)))
    if len(commands) != 1 or len(exits) != 1 or len(within) > 1 or known != len([l for l in head if l.strip()]):
        raise SystemExit("a golden file starts with '$ command', 'exit N' and perhaps 'within FRACTION'")
    return commands[0], int(exits[0]), float(within[0]) if within else 0.0, sections


def same(want, got, within):
    if want == got or within == 0:
        return want == got
    if NUMBER.sub("#", want) != NUMBER.sub("#", got):
        return False
    pairs = zip(map(float, NUMBER.findall(want)), map(float, NUMBER.findall(got)))
    return all(abs(a - b) <= within * max(abs(a), abs(b)) for a, b in pairs)


def run(command, program, out):
    words = shlex.split(command.replace("{out}", str(out)))
    if words[0] != "wellproof":
        raise SystemExit(f"a golden command runs wellproof, not {words[0]}")
    return subprocess.run([program, *words[1:]], cwd=ROOT, capture_output=True, text=True, stdin=subprocess.DEVNULL)


def check(path, program, update):
    text = path.read_text()
    command, want_exit, within, sections = parse(text)
    with tempfile.TemporaryDirectory() as out:
        done = run(command, program, out)

        def actual(name):
            if name.startswith("file "):
                file = pathlib.Path(out) / name[5:]
                return file.read_text() if file.exists() else "(not written)\n"
            return {"stdout": done.stdout, "stderr": done.stderr}[name].replace(out, "{out}")

        got = {name: actual(name) for name in sections}
    if done.returncode == want_exit and all(same(sections[n], got[n], within) for n in sections):
        return True
    fresh = f"$ {command}\nexit {done.returncode}\n" + (f"within {within:g}\n" if within else "")
    fresh += "".join(f"--- {n}\n{t}" + ("" if t.endswith("\n") or not t else "\n") for n, t in got.items())
    sys.stdout.writelines(difflib.unified_diff(text.splitlines(True), fresh.splitlines(True), str(path.name), "now"))
    if "stderr" not in sections and done.stderr:
        print("on stderr:", done.stderr, sep="\n")
    if update:
        path.write_text(fresh)
        print(f"{path.name}: rewritten")
    return update


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--program", required=True, help="the built wellproof")
    parser.add_argument("--update", action="store_true", help="accept what the program does now")
    parser.add_argument("cases", nargs="*", type=pathlib.Path, help="default: all beside this script")
    args = parser.parse_args()
    cases = args.cases or sorted(pathlib.Path(__file__).parent.glob("*.golden"))
    failed = [path.name for path in cases if not check(path, str(pathlib.Path(args.program).resolve()), args.update)]
    print(f"{len(cases) - len(failed)} of {len(cases)} golden cases hold" + "".join(f"\n  not: {f}" for f in failed))
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
