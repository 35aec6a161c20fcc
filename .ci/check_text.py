#!/usr/bin/env python3
"""Looks at every tracked text file: visible top level, purpose line, size of files, blanks at line ends, stray words."""
import pathlib
import re
import subprocess
import sys

root = pathlib.Path(__file__).resolve().parent.parent
try:
    listing = subprocess.run(["git", "-c", "safe.directory=*", "ls-files"], cwd=root, capture_output=True, text=True, check=True).stdout
    files = [root / line for line in listing.splitlines() if line]
except (OSError, subprocess.CalledProcessError):
    files = [p for p in root.rglob("*") if p.is_file() and not any(q.startswith(".build") or q == ".git" for q in p.relative_to(root).parts)]

bad = []
top = {f.relative_to(root).parts[0] for f in files}
visible = {t for t in top if not t.startswith(".")}
wanted = {"CMakeLists.txt", "README.md", "DEVELOPERS.md", "app", "engine", "plugins", "sheets", "tests", "docs"}
for name in sorted(visible ^ wanted):
    bad.append(f"{name}: the visible top level is exactly {', '.join(sorted(wanted))}")

stray = re.compile(r"\b(TODO|FIXME|XXX|HACK)\b|/root/|/home/|/work/|seed document")
looked = 0
for path in files:
    if path.suffix not in (".h", ".cpp", ".md", ".txt", ".py", ".puteal", ".cmake", "") or not path.is_file():
        continue
    try:
        text = path.read_text()
    except UnicodeDecodeError:
        continue
    looked += 1
    name = path.relative_to(root)
    lines = text.splitlines()
    if text and not text.endswith("\n"):
        bad.append(f"{name}: no line end at the end")
    own = path.with_suffix(".h")
    if path.suffix == ".cpp" and own.exists() and name.parts[0] in ("engine", "plugins", "app"):
        first = next((line for line in lines if line.startswith("#include")), "")
        if not first.endswith(f'{own.name}"'):
            bad.append(f"{name}: includes {own.name} first, so that the header is known to compile alone")
    for number, line in enumerate(lines, 1):
        if line != line.rstrip() and path.suffix != ".md":
            bad.append(f"{name}:{number}: blank at the line end")
        if stray.search(line) and name.parts[0] != ".ci":
            bad.append(f"{name}:{number}: {stray.search(line).group(0)}")
    if path.suffix in (".h", ".cpp") and name.parts[0] in ("engine", "app", "plugins"):
        if not lines or not lines[0].startswith(("///", "//", "/*")):
            bad.append(f"{name}:1: the first line says in one sentence what the file is for")
        table = "table" in path.stem or path.stem in ("plugin", "substances", "contract", "words") or path.stem.endswith("_rows")
        if len(lines) > 400 and not table:
            bad.append(f"{name}: {len(lines)} lines, the stop is 400")
for line in bad:
    print(line)
print(f"{looked} files looked at, {len(bad)} findings")
sys.exit(1 if bad or looked < 50 else 0)
