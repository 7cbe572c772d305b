#!/usr/bin/env python3
"""Include lines keep to the table of docs/rooms.md, CMakeLists.txt links no more than it allows, the core includes
nothing that opens, prints, reads a clock or draws by chance, and heavy headers stay out of headers."""
import re

from tree import files, read, report

INCLUDE = re.compile(r'^\s*#\s*include\s+(?:"([^"]+)"|<([^>]+)>)', re.M)

# In the core: what has effects outside, then what WebAssembly's libc++ 13 lacks.
EFFECTS = "cstdio stdio.h fstream iostream filesystem chrono ctime random syncstream print".split()
MISSING = "ranges format source_location memory_resource execution stop_token expected".split()
HEAVY = ("toml++/", "nlohmann/", "CLI/", "boost/", "gtest/", "rapidcheck")
WORDS = {
    r"\bstd::\w+_distribution\b": "distributions differ between libraries: draw through src/quantity",
    r"\bstd::(?:ranges|views)::": "WebAssembly's library lacks ranges",
    r"\bstd::bit_cast\b": "WebAssembly's library lacks bit_cast",
    r"\bstd::(?:cout|cerr|clog)\b|\b(?:f|std::)?printf\(": "the core prints nothing",
    r"\bstd::getenv\b|\b(?:std::)?rand\(\)": "the core takes values and gives values",
}


def table():
    """Room -> the rooms and headers its row names."""
    rows = re.findall(r"^\| `(?:src|apps)/(\w+)` \|[^|]*\|([^|]*)\|$", read("docs/rooms.md"), re.M)
    return {room: re.findall(r"`([^`]+)`", may_use) for room, may_use in rows}


def reach(room, rows):
    """All that a room may use, through the rooms that it may use."""
    todo, out = list(rows[room]), {room}
    while todo:
        name = todo.pop()
        if name not in out:
            out.add(name)
            todo += rows.get(name, [])
    return out


def include_findings(path, text, rows, lines_from=1):
    """What is wrong with the includes of one file of src or apps."""
    area, room = path.parts[0], path.parts[1]
    allowed = reach(room, rows)
    for match in INCLUDE.finditer(text):
        where = f"{path}:{text.count(chr(10), 0, match.start()) + lines_from}"
        own, foreign = match.groups()
        if own:
            if "/" not in own:
                yield f'{where}: "{own}" names no room; write "{room}/{own}"'
            elif own.split("/")[0] not in allowed and own not in allowed:
                yield f'{where}: {room} may not use "{own}" (docs/rooms.md)'
            continue
        if area == "src" and foreign in EFFECTS:
            yield f"{where}: <{foreign}> has effects; the core has none"
        if area == "src" and foreign in MISSING:
            yield f"{where}: <{foreign}> is not in WebAssembly's library"
        if path.suffix == ".h" and foreign.startswith(HEAVY):
            yield f"{where}: <{foreign}> is heavy; keep it in a .cc"


def word_findings(path, text):
    code = re.sub(r"//[^\n]*", "", text)
    for pattern, why in WORDS.items():
        for match in re.finditer(pattern, code):
            yield f"{path}:{code.count(chr(10), 0, match.start()) + 1}: {match[0]}: {why}"


def link_findings(rows):
    for room, uses in re.findall(r"^wp_(?:native_)?room\((\w+)(?: USES ([\w ]+))?\)", read("CMakeLists.txt"), re.M):
        if room not in rows:
            yield f"CMakeLists.txt: room {room} has no row in docs/rooms.md"
            continue
        allowed = {name.split("/")[0] for name in reach(room, rows)}
        for used in uses.split():
            if used not in allowed:
                yield f"CMakeLists.txt: {room} links {used}, which docs/rooms.md does not allow"


def main():
    rows = table()
    paths = files("src", "apps", ends=(".h", ".cc"))
    found = list(link_findings(rows))
    for path in paths:
        text = read(path)
        if path.parts[1] not in rows:
            found.append(f"{path}: room {path.parts[1]} has no row in docs/rooms.md")
            continue
        found += include_findings(path, text, rows)
        if path.parts[0] == "src":
            found += word_findings(path, text)
        if path.suffix == ".h" and not text.startswith("#pragma once\n//"):
            found.append(f"{path}:1: a header opens with #pragma once and what it is in the trade")
    report(found, len(paths))


if __name__ == "__main__":
    main()
