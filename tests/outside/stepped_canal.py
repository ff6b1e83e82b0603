"""A canal in steps: each has a source of its own, and a lever that turns its stream aside.

Every step lies one cell lower than the one before it, so that a body falls from the end of one stream onto the
source of the next. While lever g[n] is on, its gates shut the channel of step n behind its fifth cell and open a
way aside. All steps are one drawing, far longer than water runs.
"""
from __future__ import annotations

import unicodedata

# Letters for marks: of one column, and written from left to right.
LETTERS = [letter for letter in map(chr, range(0x100, 0x2000))
           if unicodedata.category(letter) in ("Lu", "Ll", "Lo") and unicodedata.bidirectional(letter) == "L"
           and unicodedata.normalize("NFC", letter) == letter]


def stepped_canal(steps: int, shared: bool = False) -> str:
    """`shared`: another gate in the first step hangs on all levers; a second inlet, yard, comes after it."""
    width, height = 8 * steps + 1, steps + 3
    rows = [[["X"] * width for _ in range(3)] for _ in range(height)]
    marks = ["X rock", "_ open", "w water", "i inlet mill", "k outlet side", "q outlet press"]
    for step in range(steps):
        opening, shutting = LETTERS[2 * step], LETTERS[2 * step + 1]
        marks += [f"{opening} open when g{step} else rock", f"{shutting} rock when g{step} else open"]
        z, x = steps - step, 8 * step
        for level in (z, z + 1):
            for at in range(x, min(x + 9, width)):
                rows[level][2][at] = "_"
            rows[level][1][x + 4] = opening
            rows[level][2][x + 5] = shutting
        rows[z][2][x] = "w"
        rows[z][0][x + 4] = "k"
        rows[z + 1][0][x + 4] = "_"
        if step > 0:
            rows[z + 2][2][x] = "_"
    rows[steps][2][1] = "i"
    rows[1][2][width - 1] = "q"
    if shared:
        every = " and ".join(f"g{step}" for step in range(steps))
        marks += [f"Z rock when {every} else open"]
        rows[steps][2][2] = "Z"
        marks += ["j inlet yard"]
        rows[steps - 1][2][9] = "j"
    levels = "".join(
        f"  level {z} {{\n" + "".join(f"    |{''.join(row)}|\n" for row in rows[z]) + "  }\n" for z in range(height))
    straight_on = " and ".join(f"not g{step}" for step in range(1 if shared else 0, steps))
    inlet = "yard" if shared else "mill"
    return ("leat 1\nsignals {\n" + "".join(f"  lever g{step}\n" for step in range(steps)) + "}\nmarks {\n"
            + "".join(f"  {mark}\n" for mark in marks) + f"}}\njunction canal {{\n{levels}}}\n"
            + f'expect "routes" {{\n  {inlet} reaches press when {straight_on}\n  {inlet} reaches side otherwise\n}}\n')
