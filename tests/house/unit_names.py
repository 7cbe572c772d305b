#!/usr/bin/env python3
"""Units in names agree wherever a value changes hands. A double is a double to the compiler; here the name of an
argument is held against its parameter's, of an initialiser against its variable's or field's, of a returned value
against its function's, and of the two sides of sums, comparisons and assignments against each other.

It reads clang's syntax tree of each .cc of src and apps, of which only what lies in namespace wellproof is written out.
What has no unit in its name (a product, a ratio, a lambda's result) is not judged: this finds mix-ups, not proofs.
A file that was clean is not read again while it, the headers of ours that it reads and this script stay what they were;
only that is remembered, under ~/.cache/wellproof.
usage: unit_names.py [FILE.cc...]"""
import concurrent.futures
import hashlib
import json
import os
import pathlib
import re
import subprocess
import sys

from tree import ROOT, files, report

CLANG = ["clang++-14", "-std=c++20", "-fsyntax-only", "-w", "-Isrc", "-Iapps", "-isystem", "/usr/include/eigen3"]
CLANG += ["-DFMT_HEADER_ONLY", "-DBOOST_MATH_PROMOTE_DOUBLE_POLICY=false", '-DWP_VERSION="0"']
DUMP = ["-Xclang", "-ast-dump=json", "-Xclang", "-ast-dump-filter=wellproof"]

# SI first, then what is met at the edges. A longer one wins over its own tail.
UNITS = """1_s 1_pa 1_m m3_s m2_s m3_s2 m_s m_s2 s2_m5 s_m2 s2_m2 s_m5 m3_pa m2 m3 m5 m hz_pa hz_s pa_s pa_hz pa_m3 hz kg_m3 kg_m2 kg_s
    kg rad_s rad n_m j_kg_k j_k k_w w_k w_m_k w_m2_k ohm_m v_hz wb pa w v a ohm h f s j k c pu va var
    ft ft3 in mm cm gal gpm l_min psi kpa bar hp kw kwh rpm min h_d deg""".split()
SUFFIX = re.compile(r"_(" + "|".join(sorted(UNITS, key=len, reverse=True)) + r")_?$")

WRAPPERS = {"ImplicitCastExpr", "ParenExpr", "MaterializeTemporaryExpr", "ExprWithCleanups", "ConstantExpr", "CXXBindTemporaryExpr"}
WRAPPERS |= {"CXXStaticCastExpr", "CXXFunctionalCastExpr", "CXXDefaultInitExpr"}
FUNCTIONS = {"FunctionDecl", "CXXMethodDecl", "CXXConstructorDecl", "CXXConversionDecl"}
ALIKE = {"min", "max", "abs", "fabs", "fmin", "fmax", "clamp", "midpoint", "hypot", "fmod"}
FIRST = {"copysign", "move", "exchange"}
SIDES = {"+", "-", "<", ">", "<=", ">=", "==", "!=", "=", "+=", "-="}


def unit(name):
    match = SUFFIX.search(name or "")
    return match[1] if match else None


def inner(node):
    return [child for child in node.get("inner", []) if child and child.get("kind")]


def core(node):
    while node and node["kind"] in WRAPPERS and inner(node):
        node = inner(node)[0]
    return node


class Reader:
    """Walks one dump twice: who has which parameters and fields, then where names meet."""

    def __init__(self):
        self.parameters, self.fields, self.findings = {}, {}, set()
        self.file, self.line = "", 0

    def place(self, node):
        """The dump writes a file or line only where it differs from the one before; so every place is passed."""
        begin = None
        for where in (node.get("loc"), node.get("range", {}).get("begin"), node.get("range", {}).get("end")):
            for spot in (where or {}).get("spellingLoc"), (where or {}).get("expansionLoc"), where:
                if not spot or "offset" not in spot:
                    continue
                self.file, self.line = spot.get("file", self.file), spot.get("line", self.line)
            if begin is None and where and where is not node.get("loc"):
                begin = (self.file, self.line)
        node["at"] = begin or (self.file, self.line)

    def learn(self, node):
        self.place(node)
        kind = node.get("kind")
        children = inner(node)
        if kind in FUNCTIONS:
            self.parameters[node["id"]] = [c.get("name") for c in children if c["kind"] == "ParmVarDecl"]
        elif kind == "CXXRecordDecl" and node.get("completeDefinition") and "bases" not in node:
            self.fields[node.get("name")] = [c.get("name") for c in children if c["kind"] == "FieldDecl"]
        for child in children:
            self.learn(child)

    def name_of(self, node):
        """The name that stands for an expression's unit, or None."""
        node = core(node)
        if not node:
            return None
        kind, children = node["kind"], inner(node)
        if kind == "DeclRefExpr":
            return node["referencedDecl"].get("name")
        if kind == "MemberExpr":
            return node.get("name", "").lstrip("->.")
        if kind == "UnaryOperator" and node.get("opcode") in ("+", "-", "*"):
            return self.name_of(children[0])
        if kind == "BinaryOperator" and node.get("opcode") in ("+", "-"):
            if all(unit(self.name_of(child)) == "c" for child in children):
                return None  # a difference of temperatures is in K
            return self.either(children)
        if kind == "ConditionalOperator":
            names = [self.name_of(child) for child in children[1:]]
            return names[0] if unit(names[0]) == unit(names[1]) else None
        if kind in ("CallExpr", "CXXMemberCallExpr"):
            name = self.name_of(children[0])
            if name in FIRST:
                return self.name_of(children[1])
            return self.either(children[1:]) if name in ALIKE else name
        if kind == "InitListExpr" and len(children) == 1 and "double" in node.get("type", {}).get("qualType", ""):
            return self.name_of(children[0])
        return None

    def either(self, nodes):
        names = [self.name_of(node) for node in nodes]
        return next((name for name in names if unit(name)), None)

    def meet(self, node, want, got, how):
        if unit(want) and unit(got) and unit(want) != unit(got):
            file, line = node["at"]
            self.findings.add((file, line, f"{got} [{unit(got)}] {how} {want} [{unit(want)}]"))

    def judge(self, node, function=None):
        kind, children = node.get("kind"), inner(node)
        if kind in FUNCTIONS:
            function = node.get("name")
        elif kind == "LambdaExpr":
            function = None
        elif kind in ("CallExpr", "CXXMemberCallExpr", "CXXOperatorCallExpr") and children:
            self.judge_call(node, children)
        elif kind in ("VarDecl", "FieldDecl") and children:
            self.meet(node, node.get("name"), self.name_of(children[-1]), "stored in")
        elif kind == "CXXCtorInitializer" and children:
            self.meet(children[0], node.get("anyInit", {}).get("name"), self.name_of(children[0]), "stored in")
        elif kind == "InitListExpr":
            record = re.sub(r"^(const )?(\w+::)*|<.*", "", node.get("type", {}).get("qualType", ""))
            fields = self.fields.get(record, [])
            if len(fields) == len(children):
                for field, child in zip(fields, children):
                    self.meet(child, field, self.name_of(child), "stored in")
        elif kind == "ReturnStmt" and children:
            self.meet(node, function, self.name_of(children[0]), "returned by")
        elif kind in ("BinaryOperator", "CompoundAssignOperator") and node.get("opcode") in SIDES:
            left, right = (self.name_of(child) for child in children)
            warmer = {unit(left), unit(right)} == {"c", "k"} and node["opcode"] in ("+", "-", "+=", "-=")
            if not warmer:
                self.meet(node, left, right, node["opcode"])
        for child in children:
            self.judge(child, function)

    def judge_call(self, node, children):
        callee = core(children[0]) or {}
        arguments = children[2:] if node["kind"] == "CXXOperatorCallExpr" else children[1:]
        ident = callee.get("referencedDecl", {}).get("id") or callee.get("referencedMemberDecl")
        called = self.name_of(children[0])
        for parameter, argument in zip(self.parameters.get(ident, []), arguments):
            self.meet(argument, parameter, self.name_of(argument), f"passed to {called}'s")
        if called in ALIKE:
            first = self.either(arguments)
            for argument in arguments:
                self.meet(argument, first, self.name_of(argument), f"beside, in {called},")


def documents(text):
    decoder, at = json.JSONDecoder(), 0
    while True:
        at = text.find("{", at)
        if at < 0:
            return
        document, at = decoder.raw_decode(text, at)
        yield document


def findings_of(path, extra=()):
    """Findings of one .cc and of our own headers that it includes, as (file, line, text)."""
    done = subprocess.run([*CLANG, *extra, *DUMP, str(path)], cwd=ROOT, capture_output=True, text=True)
    if done.returncode:
        return {(str(path), 1, "clang cannot read it: " + done.stderr.strip().split("\n")[0])}
    reader, trees = Reader(), []
    for document in documents(done.stdout):
        reader.learn(document)
        trees.append(document)
    for document in trees:
        reader.judge(document)
    return reader.findings


INCLUDE = re.compile(r'^\s*#\s*include\s+"([^"]+)"', re.M)
MEMORY = pathlib.Path(os.environ.get("XDG_CACHE_HOME", "~/.cache")).expanduser() / "wellproof" / "unit_names"


def mark_of(path):
    """A file's name that says what its findings depend on, systems' headers apart."""
    seen, waiting, digest = set(), [path], hashlib.sha256((ROOT / "tests/house/unit_names.py").read_bytes())
    while waiting:
        at = waiting.pop()
        if at in seen or not (ROOT / at).is_file():
            continue
        seen.add(at)
        text = (ROOT / at).read_text(encoding="utf-8", errors="replace")
        digest.update(f"{at}\0{text}\0".encode())
        waiting += sorted(f"{root}/{name}" for name in INCLUDE.findall(text) for root in ("src", "apps"))
    return MEMORY / digest.hexdigest()


def remembered_findings_of(path):
    mark = mark_of(str(path))
    if mark.exists():
        return set()
    findings = findings_of(path)
    if not findings:
        mark.touch()
    return findings


def main(paths):
    paths = paths or files("src", "apps", ends=(".cc",))
    paths = [p for p in paths if not str(p).startswith("apps/wasm/")]
    found = set()
    MEMORY.mkdir(parents=True, exist_ok=True)
    with concurrent.futures.ProcessPoolExecutor(os.cpu_count()) as pool:
        for part in pool.map(remembered_findings_of, paths):
            found |= part
    report([f"{file}:{line}: {text}" for file, line, text in sorted(found)], len(paths))


if __name__ == "__main__":
    main(sys.argv[1:])
