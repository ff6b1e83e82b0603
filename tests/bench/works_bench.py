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
"""
from __future__ import annotations

import argparse
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


def seconds(leat: str, text: str, folder: Path, command: str) -> float:
    path = folder / "works.leat"
    path.write_text(text, encoding="utf-8")
    best = float("inf")
    for _ in range(5):
        begin = perf_counter()
        done = subprocess.run([leat, command, str(path)], capture_output=True, check=False)
        best = min(best, perf_counter() - begin)
        if done.returncode not in (0, 1):
            raise SystemExit(done.stderr.decode())
    return best


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
        for steps in (10, 20, 40, 60):
            took = seconds(leat, stepped_canal(steps), folder, "check")
            print(f"canal of {steps:2} steps: check {1e3 * took:7.1f} ms ({1e3 * took / steps:5.1f} ms a step)")
        for levers in (1, 2, 4, 6, 8, 10):
            took = seconds(leat, island_row(levers), folder, "check")
            print(f"largest island with {levers:2} levers: check {1e3 * took:7.1f} ms")
    return 0


if __name__ == "__main__":
    sys.exit(main())
