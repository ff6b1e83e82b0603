"""Pictures of the program, looked at from outside.

    /usr/bin/python3 pictures_test.py --leat build/leat

- each is well-formed (xmllint), and each cell of it shows the water, the current and the switching that
  `leat show --as json` and `leat resolve` tell of the same combination;
- rendered by rsvg-convert, it looks like the golden picture kept here: both are compared by the mean
  colour of blocks, so that another version of a font or a smoother edge makes no difference. With
  LEAT_APPROVE=1 the golden ones are made anew; look at them before keeping them;
- hostile texts do nothing, and what cannot be drawn is refused with exit code 2.
"""
from __future__ import annotations

import argparse
import json
import os
import struct
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as ET
import zlib
from pathlib import Path

HERE = Path(__file__).resolve().parent
ROOT = HERE.parents[1]
SVG = "{http://www.w3.org/2000/svg}"
BLOCK = 5  # pixels of a rendered picture for one of its golden picture
MEAN_MOST, BLOCK_MOST = 1.0, 55  # of 255: the mean difference, and that of any single block; a font with serifs: 0.4, 39

GOLDEN = {
    "side_turn-light": ["examples/side_turn.leat", "--theme", "light"],
    "side_turn-dark": ["examples/side_turn.leat", "--theme", "dark", "--do", "divert"],
    "side_turn-paper": ["examples/side_turn.leat", "--theme", "paper", "--when", "divert=on"],
    "switched_lift-sections": ["examples/switched_lift.leat", "--when", "up=on", "--section", "row 0",
                               "--section", "column 6"],
    "flawed_sorter-level": ["examples/flawed_sorter.leat", "--level", "0"],
}

faults: list[str] = []


def check(holds: bool, what: str) -> None:
    if not holds:
        faults.append(what)


def run(leat: str, *arguments: str, given: str | None = None) -> subprocess.CompletedProcess[bytes]:
    return subprocess.run([leat, *arguments], cwd=ROOT, input=given.encode() if given else None,
                          capture_output=True, timeout=120, check=False)


def drawn(leat: str, *arguments: str, given: str | None = None) -> bytes:
    done = run(leat, "draw", *arguments, given=given)
    check(done.returncode == 0, f"leat draw {' '.join(arguments)}: exit {done.returncode} {done.stderr.decode()}")
    lint = subprocess.run(["xmllint", "--noout", "--nonet", "-"], input=done.stdout, capture_output=True, check=False)
    check(lint.returncode == 0 and not lint.stderr, f"xmllint {arguments}: {lint.stderr.decode()[:300]}")
    return done.stdout


# --- what the cells say --------------------------------------------------------------------------------

def ground_of(cell: dict) -> str:
    if cell["falling"]:
        return "w-falling"
    return "w-source" if cell["source"] else f"w-{cell['strength']}"


def heading_of(cell: dict) -> str:
    x, y = cell["current"]
    name = ("n" if y < 0 else "s" if y > 0 else "") + ("w" if x < 0 else "e" if x > 0 else "")
    return name or "still"


def compare_cells(leat: str, example: str, when: str) -> int:
    """Each cell of the levels against the documents of the same combination."""
    options = ["--when", when] if when else []
    shown = json.loads(run(leat, "show", example, "--as", "json", *options).stdout)["junctions"][0]
    field = {tuple(cell["at"]): cell for cell in shown["cells"]}
    picture = ET.fromstring(drawn(leat, example, *options))
    seen = 0
    for group in picture.iter(f"{SVG}g"):
        if group.get("class") != "cell":
            continue
        at = tuple(int(n) for n in group.get("data-cell", "").split())
        signs = {use.get("class"): use.get("href", "")[1:] for use in group.findall(f"{SVG}use")}
        cell = field.get(at)
        where = f"{example} {when} {at}"
        seen += 1
        if cell is None:
            check(signs["ground"] == "dry" and "current" not in signs, f"{where}: {signs}, but dry")
            continue
        ground = signs["ground"].replace("placed", "source").replace("formed", "source")
        check(ground == ground_of(cell), f"{where}: {ground} for {cell}")
        current = signs.get("current", "e-still").split("-")[1]
        check(current == heading_of(cell), f"{where}: {current} for {cell}")
        del field[at]
    check(not field, f"{example} {when}: wet cells that are not drawn: {list(field)[:3]}")
    return seen


# --- how it looks --------------------------------------------------------------------------------------

def pixels(png: bytes) -> tuple[int, int, list[bytes]]:
    """The rows of a PNG of 8 bits a channel as RGBA or RGB (PNG specification, filters 0 to 4)."""
    at, header, data = 8, b"", b""
    while at < len(png):
        length, kind = struct.unpack(">I4s", png[at:at + 8])
        body = png[at + 8:at + 8 + length]
        header = body if kind == b"IHDR" else header
        data += body if kind == b"IDAT" else b""
        at += length + 12
    width, height, depth, colour = struct.unpack(">IIBB", header[:10])
    assert depth == 8 and colour in (2, 6), (depth, colour)
    size = 4 if colour == 6 else 3
    raw, rows, before = zlib.decompress(data), [], bytes(width * size)
    for y in range(height):
        kind, line = raw[y * (width * size + 1)], bytearray(raw[y * (width * size + 1) + 1:(y + 1) * (width * size + 1)])
        if kind:
            unfilter(kind, line, before, size)
        before = bytes(line)
        rows.append(b"".join(before[i:i + 3] for i in range(0, len(before), size)) if size == 4 else before)
    return width, height, rows


def unfilter(kind: int, line: bytearray, before: bytes, size: int) -> None:
    for i in range(len(line)):
        left = line[i - size] if i >= size else 0
        up, corner = before[i], before[i - size] if i >= size else 0
        if kind == 1:
            line[i] = (line[i] + left) & 255
        elif kind == 2:
            line[i] = (line[i] + up) & 255
        elif kind == 3:
            line[i] = (line[i] + (left + up) // 2) & 255
        else:
            guess = left + up - corner
            far = (abs(guess - left), abs(guess - up), abs(guess - corner))
            line[i] = (line[i] + (left if far[0] <= far[1] and far[0] <= far[2] else up if far[1] <= far[2] else corner)) & 255


def shrunk(width: int, height: int, rows: list[bytes]) -> tuple[int, int, list[bytes]]:
    """Blocks by their mean colour; what is left over at the right and at the bottom is left out."""
    across, down = width // BLOCK, height // BLOCK
    result = []
    for y in range(down):
        sums = [0] * (across * 3)
        for row in rows[y * BLOCK:(y + 1) * BLOCK]:
            for x in range(across):
                part = row[x * BLOCK * 3:(x + 1) * BLOCK * 3]
                for c in range(3):
                    sums[x * 3 + c] += sum(part[c::3])
        result.append(bytes(s // (BLOCK * BLOCK) for s in sums))
    return across, down, result


def png_of(width: int, height: int, rows: list[bytes]) -> bytes:
    def chunk(kind: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))

    data = zlib.compress(b"".join(b"\0" + row for row in rows), 9)
    return (b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0))
            + chunk(b"IDAT", data) + chunk(b"IEND", b""))


def rendered(svg: bytes) -> tuple[int, int, list[bytes]]:
    done = subprocess.run(["rsvg-convert", "--format", "png", "--zoom", "0.5"], input=svg, capture_output=True, check=True)
    check(not done.stderr, f"rsvg-convert says: {done.stderr.decode()[:200]}")
    return shrunk(*pixels(done.stdout))


def compare_looks(name: str, svg: bytes, approves: bool) -> None:
    kept, now = HERE / f"{name}.png", rendered(svg)
    if approves:
        kept.write_bytes(png_of(*now))
        return
    if not kept.exists():
        check(False, f"{kept.name} is missing: make it with LEAT_APPROVE=1, and look at it")
        return
    before = pixels(kept.read_bytes())
    check(before[:2] == now[:2], f"{name}: {now[:2]} blocks instead of {before[:2]}")
    if before[:2] != now[:2]:
        return
    apart = [abs(a - b) for one, other in zip(before[2], now[2]) for a, b in zip(one, other)]
    mean, most = sum(apart) / len(apart), max(apart)
    check(mean <= MEAN_MOST and most <= BLOCK_MOST, f"{name}: differs by {mean:.2f} in the mean, {most} at most")
    blank = pixels(png_of(now[0], now[1], [bytes([now[2][0][0]] * (now[0] * 3))] * now[1]))
    empty = [abs(a - b) for one, other in zip(before[2], blank[2]) for a, b in zip(one, other)]
    check(sum(empty) / len(empty) > 2 * MEAN_MOST, f"{name}: an empty picture would pass as well")


# --- what may not happen -------------------------------------------------------------------------------

HOSTILE = """leat 1
marks {
  < rock
  & open
  ' water
  i inlet millhouse
  k outlet kiln
}
junction yard "</title><script>alert(1)</script>]]>&#0; \u202e odd" {
  level 0 { |'i&&&k<| }
  level 1 { |&&&&&&<| }
}
"""


def check_hostile(leat: str) -> None:
    svg = drawn(leat, "-", given=HOSTILE)
    root = ET.fromstring(svg)
    names = {element.tag.removeprefix(SVG) for element in root.iter()}
    check("script" not in names, f"a script got in: {names}")
    check("\u202e".encode() not in svg, "a mark that turns the direction of writing got in")
    check(not any(key.startswith("on") for element in root.iter() for key in element.attrib), "a handler got in")
    bill = run(leat, "bill", "-", "--steps", given=HOSTILE)
    check(bill.returncode == 0 and "\u202e".encode() not in bill.stdout, "bill of hostile texts")


def check_refusals(leat: str) -> None:
    example = "examples/side_turn.leat"
    for arguments, said in {
        ("--section", "row 9"): "no row 9",
        ("--section", "up"): "--section does not understand 'up'",
        ("--section", "row 99999999999999999999"): "--section does not understand",
        ("--level", "7"): "has no level 7",
        ("--columns", "4..99"): "lies outside",
        ("--rows", "3..1"): "--rows does not understand '3..1'",
        ("--place", "first"): "no place 'first'",
        ("--from", "milhouse"): "did you mean 'millhouse'?",
        ("--when", "divert=maybe"): "--when does not understand",
        ("--out", "no/such/folder/a.svg"): "no/such/folder",
        ("--junction", "nowhere"): "no junction 'nowhere'",
    }.items():
        done = run(leat, "draw", example, *arguments)
        check(done.returncode == 2 and said in done.stderr.decode() and not done.stdout,
              f"draw {arguments}: exit {done.returncode}, {done.stderr.decode()}")
    several = run(leat, "draw", "examples/butterfly.leat")
    check(several.returncode == 2 and "one junction" in several.stderr.decode(), "several junctions are one picture")
    wide = "_" * 400
    rows = "\n".join([f"|{wide}|"] * 299 + [f"|i{wide[:-2]}k|"])
    large = "leat 1\nmarks { _ open\n i inlet a\n k outlet b\n }\njunction j { level 0 { " + rows + " } }\n"
    done = run(leat, "draw", "-", given=large)
    check(done.returncode == 2 and "120000 cells" in done.stderr.decode(), f"too large: {done.stderr.decode()[:200]}")
    done = run(leat, "draw", "-", "--level", "0", "--columns", "390..399", "--no-ways", given=large)
    check(done.returncode == 0 and len(done.stdout) < 1_000_000, f"a part: {done.stderr.decode()[:200]}")
    done = run(leat, "draw", "-", "--section", "row 299", "--no-ways", given=large)
    check(done.returncode == 0, f"a section of the same: {done.stderr.decode()[:200]}")


def check_files(leat: str) -> None:
    """To a file as to the standard output, the same bytes each time; the picture of the documents is the program's."""
    example = ["examples/side_turn.leat", "--when", "divert=on"]
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "a.svg"
        done = run(leat, "draw", *example, "-o", str(path))
        check(done.returncode == 0 and not done.stdout and path.read_bytes() == drawn(leat, *example), "draw -o")
        path.write_text("kept")
        done = run(leat, "bill", "examples/side_turn.leat", "--steps", "--as", "csv", "-o", str(path))
        check(done.returncode == 2 and path.read_text() == "kept", "bill --steps --as csv wrote something")
        done = run(leat, "bill", "examples/side_turn.leat", "--as", "csv", "-o", str(path))
        check(done.returncode == 0 and path.read_bytes().startswith(b"junction,kind,what,level,count,spare\r\n"), "bill -o")
    kept = ROOT / "docs" / "side_turn.svg"
    check(kept.read_bytes() == drawn(leat, *example),
          "docs/side_turn.svg is not what leat draw examples/side_turn.leat --when divert=on -o docs/side_turn.svg writes")


def main() -> int:
    parser = argparse.ArgumentParser()
    parser.add_argument("--leat", required=True)
    leat = os.path.abspath(parser.parse_args().leat)
    approves = os.environ.get("LEAT_APPROVE") == "1"
    cells = 0
    for path in sorted((ROOT / "examples").glob("*.leat")):
        if any(line.startswith("works ") for line in path.read_text(encoding="utf-8").splitlines()):
            continue
        resolved = json.loads(run(leat, "resolve", f"examples/{path.name}").stdout)["junctions"][0]
        levers = [s["name"] for s in resolved["signals"] if s["kind"] == "lever"]
        for when in ["", *(f"{name}=on" for name in levers)]:
            cells += compare_cells(leat, f"examples/{path.name}", when)
    check(cells > 1000, f"only {cells} cells compared")
    for name, arguments in GOLDEN.items():
        compare_looks(name, drawn(leat, *arguments), approves)
    check_hostile(leat)
    check_refusals(leat)
    check_files(leat)
    print(*faults, sep="\n", end="\n" if faults else "")
    print(f"{cells} cells, {len(GOLDEN)} golden pictures, {len(faults)} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
