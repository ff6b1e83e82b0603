"""How long a whole works takes: the process from the file to the last line, against a plain search.

    /usr/bin/python3 works_bench.py --leat build/release/leat

- Butterflies of 8 to 128 lanes, each pair of lanes with a lever of its own: the cost against the number of
  signals. Beside each: the conditions of all routes found by following every way through the network, one
  entrance after the other, in Python (this file, no library); the ratio is of one run on one machine.
- A Benes network of 64 lanes on 20 shared levers: as it is, and with a claim about every body, so that what
  becomes of each pair of an entrance and an outlet has to be known.
- Canals of 10 to 60 steps, one island each, each step with a lever of its own: the cost against the number of
  signals where the island is too large to be run as a whole. Up to 10 steps it is run as a whole.
- Rows of islands whose largest depends on 1 to 10 levers: the cost against the largest island.
- Channels one in the other, each nearly as large as the whole: the cost and the memory against the cells.
- Up to 4096 islands of which no two are alike: the cost against their number.
- Chains of 500 and 2000 islands, followed from the first one to the last: the cost against their number.
"""
from __future__ import annotations

import argparse
import itertools
import os
import subprocess
import sys
import tempfile
from pathlib import Path
from time import perf_counter

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "outside"))
from stepped_canal import stepped_canal  # noqa: E402
from works_networks import HEAD, Network, benes  # noqa: E402


def butterfly(lanes: int) -> Network:
    """Stage s changes lanes that differ in digit s: neighbours after a wiring, back by the next one."""
    stages = lanes.bit_length() - 1

    def beside(digit: int) -> list[int]:
        low = 1 << digit
        return [lane & ~(2 * low - 1) | (lane & (low - 1)) << 1 | lane >> digit & 1 for lane in range(lanes)]

    wirings = [beside(0)]
    for stage in range(1, stages):
        back = {at: lane for lane, at in enumerate(beside(stage - 1))}
        wirings.append([beside(stage)[back[lane]] for lane in range(lanes)])
    back = {at: lane for lane, at in enumerate(beside(stages - 1))}
    wirings.append([back[lane] for lane in range(lanes)])
    return Network(lanes, wirings)


def plain_search(network: Network) -> int:
    """Every way from every entrance: how many literals its conditions have."""
    literals = 0
    for entrance in range(network.lanes):
        open_ways: list[tuple[int, int, tuple[tuple[int, bool], ...]]] = [(0, network.wirings[0][entrance], ())]
        while open_ways:
            stage, lane, condition = open_ways.pop()
            if stage == network.stages:
                literals += len(condition)
                continue
            lever = stage * network.lanes // 2 + lane // 2
            for at, is_on in ((lane, False), (lane ^ 1, True)):
                open_ways.append((stage + 1, network.wirings[stage + 1][at], (*condition, (lever, is_on))))
    return literals


def seconds(leat: str, text: str, folder: Path, command: str, *more: str) -> float:
    path = folder / "works.leat"
    path.write_text(text, encoding="utf-8")
    best = float("inf")
    for _ in range(5):
        begin = perf_counter()
        done = subprocess.run([leat, command, str(path), *more], capture_output=True, check=False)
        best = min(best, perf_counter() - begin)
        if done.returncode not in (0, 1):
            raise SystemExit(done.stderr.decode())
    return best


def peak(leat: str, text: str, folder: Path) -> int:
    """Megabytes that a check takes at most."""
    path = folder / "works.leat"
    path.write_text(text, encoding="utf-8")
    process = subprocess.Popen([leat, "check", str(path)], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, _, used = os.wait4(process.pid, 0)
    return used.ru_maxrss // 1024


def channels(width: int) -> str:
    """Closed channels around each other; one body in the outermost."""
    rows = [["_" if min(x, y, width - 1 - x, width - 1 - y) % 2 else "X" for x in range(width)] for y in range(width)]
    rows[1][1:3] = "ik"
    drawn = "\n".join(f"  |{''.join(row)}|" for row in rows)
    return ("leat 1\nmarks {\n  X rock\n  _ open\n  i inlet mill\n  k outlet kiln\n}\nbody ball { height 1 }\n"
            f"junction rings {{ level 0 {{\n{drawn}\n}} }}\nworks nest {{ place rings as rings at 0 0 0 }}\n")


def unlike(count: int) -> str:
    """Islands of one shape whose gates follow from two levers in as many ways."""
    ways = ("l", "r", "not l", "not r", "l xor r", "not l xor r xor l", "l and (l xor r)", "l or (l xor r)")
    names = "abcd"
    text = "leat 1\nsignals {\n  lever l\n  lever r\n" + "".join(f"  wire s{n} = l and r\n" for n in names)
    text += "}\nmarks {\n  _ open\n  w water\n  i inlet mill\n  k outlet kiln\n"
    text += "".join(f"  {n} open when s{n} else rock\n" for n in names)
    text += f"}}\njunction gate {{\n  level 0 {{ |wi{names}k| }}\n  level 1 {{ |__{names}_| }}\n}}\nworks row {{\n"
    for n, way in zip(range(count), itertools.product(ways, repeat=4)):
        given = ", ".join(f"s{name} = {one}" for name, one in zip(names, way))
        text += f"  place gate as gate[{n}] at {8 * (n % 200)} {2 * (n // 200)} 0 with {given}\n"
    return text + "}\n"


def chain(count: int) -> str:
    return ("leat 1\nmarks {\n  _ open\n  w water\n  i inlet mill\n  k outlet kiln\n}\n"
            "junction step {\n  level 0 { |wi__k| }\n  level 1 { |_____| }\n}\nworks chain {\n"
            f"  for n in 0..{count - 1} {{ place step as step[n] at (7 * (n mod 200)) (2 * (n / 200)) 0 }}\n"
            f"  for n in 1..{count - 1} {{ join step[n].kiln -> step[n - 1].mill }}\n}}\n")


def shared(network: Network, levers: int) -> str:
    """The same network with its levers folded onto a few."""
    text = network.text().replace(f"for n in 0..{network.levers - 1} ", f"for n in 0..{levers - 1} ")
    for lever in range(network.levers - 1, levers - 1, -1):
        text = text.replace(f"change[{lever}]\n", f"change[{lever * 7 % levers}]\n")
    return text


def island_row(levers: int) -> str:
    """One long island with so many gates, and fifty small ones beside it."""
    marks = "".join(f"  {chr(ord('A') + n)}  rock when change[{n}] else open\n" for n in range(levers))
    gates = "".join(f"_{chr(ord('A') + n)}" for n in range(levers))
    head = HEAD % max(levers - 1, 0)
    head = head.replace("junction turn", "junction gates {\n"
                        f"  level 0 {{ |wi{gates}_k| }}\n  level 1 {{ |{'_' * (len(gates) + 4)}| }}\n}}\njunction turn")
    head = head.replace("marks {\n", "marks {\n" + marks)
    places = "".join(f"  place turn as turn[{n}] at {14 * (n % 10)} {5 * (n // 10) + 2} 0\n" for n in range(50))
    return head + "  place gates as gates at 0 0 0\n" + places + "}\n"


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--leat", required=True)
    leat = parser.parse_args().leat
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        for lanes in (8, 16, 32, 64, 128):
            network = butterfly(lanes)
            took = seconds(leat, network.text(), folder, "check")
            table = seconds(leat, network.text(), folder, "table")
            begin = perf_counter()
            plain_search(network)
            plain = perf_counter() - begin
            print(f"butterfly of {lanes:3}: {network.levers:4} levers, check {1e3 * took:7.1f} ms"
                  f" ({1e6 * took / network.levers:6.1f} us a lever), table {1e3 * table:7.1f} ms,"
                  f" plain search {1e3 * plain:7.1f} ms, ratio to check {plain / took:5.2f}")
        text = shared(benes(64), 20)
        took = seconds(leat, text, folder, "check")
        claimed = seconds(leat, text + 'expect "all" of network { never trapped }\n', folder, "check")
        print(f"Benes network of 64 on 20 levers: check {1e3 * took:7.1f} ms, with every body claimed"
              f" {1e3 * claimed:7.1f} ms")
        for steps in (20, 60, 120, 240):
            took = seconds(leat, stepped_canal(steps), folder, "check")
            cells = (8 * steps + 1) * 3 * (steps + 3)
            print(f"canal of {steps:3} steps, one drawing: check {1e3 * took:7.1f} ms"
                  f" ({1e9 * took / cells:6.0f} ns a cell of the drawing)")
        for levers in (1, 2, 4, 6, 8, 10):
            took = seconds(leat, island_row(levers), folder, "check")
            print(f"largest island with {levers:2} levers: check {1e3 * took:7.1f} ms")
        for width in (100, 200, 400):
            took = seconds(leat, channels(width), folder, "check")
            print(f"channels in each other, {width} wide: check {1e3 * took:7.1f} ms"
                  f" ({1e9 * took / width ** 2:6.0f} ns a cell), at most {peak(leat, channels(width), folder)} MB")
        for count in (256, 1024, 4096):
            took = seconds(leat, unlike(count), folder, "check")
            print(f"{count:4} islands unlike each other: check {1e3 * took:7.1f} ms ({1e6 * took / count:6.1f} us each)")
        for count in (500, 2000):
            took = seconds(leat, chain(count), folder, "follow", "--from", f"step[{count - 1}].mill")
            print(f"chain of {count:4} islands: follow {1e3 * took:7.1f} ms ({1e6 * took / count:6.1f} us each)")
    return 0


if __name__ == "__main__":
    sys.exit(main())
