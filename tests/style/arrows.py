#!/usr/bin/env python3
"""What may include what: every include line of engine/ and lang/ against one table.

    arrows.py ROOT       lists each forbidden include as file:line, and fails if there is one

The rooms and their arrows are those of the design: lang knows the engine, never the other way round; inside
each, a room sees only what stands in its line.
"""
from __future__ import annotations

import re
import sys
from pathlib import Path

GROUND = ("engine/contract.", "engine/large_array.")  # files that all rooms stand on
ENGINE = {
    "engine/ground": "",
    "engine/model": "",
    "engine/logic": "model",
    "engine/water": "model",
    "engine/body": "model water",
    "engine/building": "model logic water",
    "engine/explore": "model logic water body",
    "engine/playback": "model logic water body explore",
    "engine/tables": "model logic explore body",
    "engine/findings": "model logic water body explore tables",
    "engine/verdicts": "model logic body explore tables findings",
    "engine/motion": "model water body",
    "engine/judge": "model logic water body explore tables findings verdicts",
    "engine/works": "model logic water body explore tables findings verdicts judge",
    "engine/compare": "model logic body explore tables findings verdicts judge works",
}
LANG = {
    "lang/source": "",
    "lang/diagnostics": "source",
    "lang/syntax": "source",
    "lang/grammar": "source diagnostics syntax",
    "lang/check": "source diagnostics syntax",
    "lang/lower": "source diagnostics syntax grammar check",
    "lang/render": "source diagnostics syntax",
    "lang/record": "source render",
    "lang/cli": "source diagnostics syntax grammar check lower render record",
}
# Rooms of lang that may see only part of the engine.
ENGINE_SEEN_BY = {"lang/source": {"model"}, "lang/diagnostics": {"model"}, "lang/syntax": {"model"},
                  "lang/grammar": {"model"}, "lang/check": {"model"}}
# A package, and the rooms whose sources (and, where said, headers) may include it.
PACKAGES = [
    (re.compile(r"^boost/spirit/"), {"lang/grammar"}, True),
    (re.compile(r"^boost/graph/"), {"engine/body", "engine/explore", "engine/works"}, False),
    (re.compile(r"^boost/"), {"lang/grammar"}, True),
    (re.compile(r"^CLI/"), {"lang/cli"}, True),
    (re.compile(r"^nlohmann/"), {"lang/render", "lang/cli"}, True),
    (re.compile(r"^utf8proc"), {"lang/grammar", "lang/source", "lang/render"}, False),
]
GRAMMAR_FACE = "lang/grammar/parse.hpp"  # what others see of the grammar: no Boost
NEVER_IN_ENGINE = re.compile(r"^(iostream|ostream|istream|sstream|fstream|iomanip|cstdio|print|format|fmt/.*)$")
INCLUDE = re.compile(r'^\s*#\s*include\s*[<"]([^>"]+)[>"]')


def room_of(path: str) -> str:
    parts = path.split("/")
    if len(parts) > 2:
        return "/".join(parts[:2])
    if path.startswith(GROUND):
        return "engine/ground"
    return "engine/judge" if parts[0] == "engine" else parts[0]


def rooms_allowed(room: str) -> set[str]:
    if room in ENGINE:
        return {f"engine/{name}" for name in ENGINE[room].split()} | {room}
    if room in LANG:
        seen = ENGINE_SEEN_BY.get(room)
        engine = set(ENGINE) if seen is None else {f"engine/{name}" for name in seen}
        return {f"lang/{name}" for name in LANG[room].split()} | {room} | engine
    return set()


def fault(room: str, path: str, included: str) -> str | None:
    if included.startswith(("engine/", "lang/")):
        target = room_of(included)
        if target in rooms_allowed(room) | {"engine/ground"}:
            return None
        return f"{room} may not know {target}"
    if room.startswith("engine") and NEVER_IN_ENGINE.match(included):
        return "the engine has no text and no streams"
    for package, rooms, in_headers in PACKAGES:
        if not package.match(included):
            continue
        if room not in rooms:
            return f"only {', '.join(sorted(rooms))} may use {included}"
        if path.endswith(".hpp") and (not in_headers or path == GRAMMAR_FACE):
            return f"{included} belongs into a .cpp"
        return None
    return None


def main(root: Path) -> int:
    count, found = 0, []
    for path in sorted([*root.glob("engine/**/*.?pp"), *root.glob("lang/**/*.?pp")]):
        name = str(path.relative_to(root))
        room = room_of(name)
        if room not in ENGINE and room not in LANG:
            found.append(f"{name}:1: {room} is a room without a line in the table")
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
            if (match := INCLUDE.match(line)) is None:
                continue
            count += 1
            if (why := fault(room, name, match.group(1))) is not None:
                found.append(f"{name}:{number}: {why}: {line.strip()}")
    print(*found, sep="\n", end="\n" if found else "")
    print(f"{count} includes, {len(found)} against the table")
    return 1 if found or count == 0 else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1])))
