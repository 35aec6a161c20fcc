#!/usr/bin/env python3
"""Writes the first inputs of the fuzz programs: formulas and pieces of the example sheets. The same files every time."""
import hashlib
import pathlib
import re
import sys

root = pathlib.Path(__file__).resolve().parent.parent
out = pathlib.Path(sys.argv[1])


def put(folder, text):
    data = text.encode()
    (out / folder / hashlib.sha1(data).hexdigest()[:16]).write_bytes(data)


for folder in ("formula", "workbook", "edits"):  # what an earlier run found stays out: the gate is the same every time
    for old in (out / folder).iterdir():
        old.unlink()
sheets = sorted((root / "sheets").glob("*.puteal"))
formulas = set()
for path in sheets:
    text = path.read_text()
    for line in text.splitlines():
        hit = re.match(r"(?:fill )?[a-z_]+: (.+)$", line)
        if hit and not hit.group(1).startswith('"') and len(hit.group(1)) < 300:
            formulas.add(hit.group(1))
for test in sorted((root / "tests/engine").glob("*_test.cpp")):
    for piece in re.findall(r'"((?:[^"\\\n]|\\.){3,120})"', test.read_text()):
        formulas.add(piece.replace('\\"', '"'))
for formula in sorted(formulas)[::3]:
    put("formula", formula)
    put("edits", formula[:60])
small = """puteal workbook 1
title "Small"
list verdict "works" "marginal"
source L1 laboratory "invented"
sheet a "A"
column item words "Item" 20
column x amounts "X" 14
# comment
line
item: "Iron {iron}"
x: 3 mg/L as Fe
  name iron
  limit <= 0.3 mg/L as Fe near 20 % "stains"
  source L1
line
fill x: x[-1] * 2
skip 2
line
stop x
line
at x
  note "blank"
expect iron = 3 mg/L as Fe within 1 %
end a 6
chart c lines "C" x a.x[:]
plot a.x[:] "X"
end workbook
"""
put("workbook", small)
for path in sorted((root / "tests/cli/cases").glob("*/book.puteal")):
    put("workbook", path.read_text())
lines = small.splitlines(keepends=True)
for i in range(1, len(lines)):
    put("workbook", "".join(lines[:i] + lines[i + 1:]))
print(", ".join(f"{folder} {sum(1 for _ in (out / folder).iterdir())}" for folder in ("formula", "workbook", "edits")))
