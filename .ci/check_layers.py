#!/usr/bin/env python3
"""Refuses an include that breaks the table of layers in .ci/layers. Exit 1 names file, line and the broken rule."""
import pathlib
import re
import sys

root = pathlib.Path(__file__).resolve().parent.parent
rules = {}
for row in (root / ".ci/layers").read_text().splitlines():
    if row and not row.startswith("#"):
        folder, allowed = row.split(":")
        rules[folder.strip()] = set(allowed.split())

include = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]')
engine = {p.name for p in (root / "engine").iterdir() if p.is_dir()}
apps = {p.name for p in (root / "app").iterdir() if p.is_dir()}
bad = []


def target(name, own):
    first = name.split("/")[0]
    if "/" in name and first in engine:
        return "engine/" + first
    if "/" in name and first in apps:
        return "app/" + first
    if name == "qcustomplot.h":
        return "qcustomplot"
    if re.match(r"^Q[A-Z]|^Qt", name):
        return "Qt"
    if name.startswith("muParser"):
        return "muParser"
    return own


count = 0
for folder, allowed in rules.items():
    for path in sorted((root / folder).rglob("*")):
        if path.suffix not in (".h", ".cpp") or "sdk_as_c" in path.name:
            continue
        own = folder
        for number, text in enumerate(path.read_text().splitlines(), 1):
            hit = include.match(text)
            if not hit:
                continue
            count += 1
            to = target(hit.group(2), own)
            if to != own and to not in allowed:
                bad.append(f"{path.relative_to(root)}:{number}: {folder} may not include {hit.group(2)} ({to})")
for line in bad:
    print(line)
print(f"{count} includes looked at, {len(bad)} against the table of layers")
if count < 100:
    print("fewer includes than the tree has: the check looked in the wrong place")
    sys.exit(1)
sys.exit(1 if bad else 0)
