"""The files of the project, and a way to report: shared by the house checks."""
import pathlib
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parents[2]


def files(*folders, ends=()):
    """The project's text files below these folders (all, if none is named), as paths from the root."""
    listed = subprocess.run(
        ["git", "-C", str(ROOT), "ls-files", "-z", "--cached", "--others", "--exclude-standard"], capture_output=True
    )
    if listed.returncode == 0:
        paths = [pathlib.Path(name) for name in listed.stdout.decode().split("\0") if name]
    else:  # an unpacked archive
        paths = [p.relative_to(ROOT) for p in ROOT.rglob("*") if p.is_file()]
        paths = [p for p in paths if p.parts[0] not in ("build", "out", ".git")]
    wanted = [p for p in paths if not folders or any(p.is_relative_to(f) for f in folders)]
    return sorted(p for p in wanted if (not ends or p.suffix in ends) and (ROOT / p).is_file())


def read(path):
    return (ROOT / path).read_text(encoding="utf-8", errors="replace")


def report(findings, looked_at):
    """Prints what was found and ends the script; looking at nothing is a failure too."""
    for finding in findings:
        print(finding)
    print(f"{looked_at} looked at, {len(findings)} findings")
    sys.exit(1 if findings or not looked_at else 0)
