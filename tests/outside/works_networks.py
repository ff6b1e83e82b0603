"""Works against the theory of switching networks and the databook.

Networks are put together from copies of one two-way turn: an exchange of two lanes is two turns on one
lever. What is compared comes out of the printed conditions alone, over all settings of the levers:

- a decoder: 74x138, function table as in any TTL databook: one of eight outputs, three enables;
- a merge: 74x151, as in any TTL databook: the output follows the selected one of eight inputs;
- omega networks: N log2 N / 2 exchanges realize 2^(N/2 log2 N) permutations, each by one setting
  (D. H. Lawrie, "Access and alignment of data in an array processor", 1975), at N = 4 and 8;
- Benes networks: all N! permutations can be realized (V. E. Benes, "Mathematical theory of connecting
  networks and telephone traffic", 1965), at N = 4 and 8.

    /usr/bin/python3 works_networks.py --leat build/leat
"""
from __future__ import annotations

import argparse
import re
import sys
from math import factorial
from pathlib import Path
from typing import Iterator

from leat_program import Difference, Leat, expect_equal, options, run

HEAD = """leat 1
signals {
  lever divert
  for n in 0..%d { lever change[n] }
}
marks {
  X  rock
  _  open
  s  sign
  w  water
  a  rock when divert else open
  b  open when divert else rock
  i  inlet  lane
  k  outlet keep
  o  outlet over
}
junction turn {
  level 0 { |wi____sa____k|
            |XXXXXXbXXXXXX|
            |XXXXXX_XXXXXX|
            |XXXXXXoXXXXXX| }
  level 1 { |_____swa_____|
            |XXXXXXbXXXXXX|
            |XXXXXX_XXXXXX|
            |XXXXXX_XXXXXX| }
}
junction bay {
  level 0 { |wi____k| }
  level 1 { |_______| }
}
works network {
"""

# By lane: the lane it is wired to.
Wiring = list[int]


class Network:
    """Stages of exchanges between neighbouring lanes, with wirings before, between and after them."""

    def __init__(self, lanes: int, wirings: list[Wiring]) -> None:
        self.lanes = lanes
        self.wirings = wirings
        self.stages = len(wirings) - 1
        self.levers = self.stages * lanes // 2

    def text(self) -> str:
        lines: list[str] = []
        for stage in range(self.stages):
            for lane in range(self.lanes):
                lever = stage * self.lanes // 2 + lane // 2
                lines.append(f"place turn as turn[{stage}][{lane}] at {14 * stage} {5 * lane} 0"
                             f" with divert = change[{lever}]")
        for lane in range(self.lanes):
            lines.append(f"place bay as bay[{lane}] at {14 * self.stages} {5 * lane} 0")
            lines.append(f"inlet mill[{lane}] = turn[0][{self.wirings[0][lane]}].lane")
            lines.append(f"outlet kiln[{lane}] = bay[{lane}].keep")
        for stage in range(self.stages):
            for lane in range(self.lanes):
                for port, at in (("keep", lane), ("over", lane ^ 1)):
                    lines.append(f"join turn[{stage}][{lane}].{port} -> {self.goal(stage, at)}")
        return HEAD % (self.levers - 1) + "".join(f"  {line}\n" for line in lines) + "}\n"

    def goal(self, stage: int, lane: int) -> str:
        onward = self.wirings[stage + 1][lane]
        return f"bay[{onward}].lane" if stage + 1 == self.stages else f"turn[{stage + 1}][{onward}].lane"


def shuffle(lanes: int) -> Wiring:
    """The perfect shuffle: the lane's number, read in twos, turned round by one digit."""
    return [(2 * lane) % lanes + (2 * lane) // lanes for lane in range(lanes)]


def omega(lanes: int) -> Network:
    stages = lanes.bit_length() - 1
    return Network(lanes, [shuffle(lanes) for _ in range(stages)] + [list(range(lanes))])


def benes(lanes: int) -> Network:
    """Two halves, each a network of half the lanes, between a first and a last stage."""
    return Network(lanes, benes_wirings(lanes))


def benes_wirings(lanes: int) -> list[Wiring]:
    plain = list(range(lanes))
    if lanes == 2:
        return [plain, plain]
    half = lanes // 2
    apart = [lane // 2 + half * (lane % 2) for lane in plain]
    together = [2 * (lane % half) + lane // half for lane in plain]
    inner = benes_wirings(half)
    doubled = [[*wiring, *(half + lane for lane in wiring)] for wiring in inner]
    first = [doubled[0][lane] for lane in apart]
    last = [together[lane] for lane in doubled[-1]]
    return [plain, first, *doubled[1:-1], last, plain]


def rows_where_on(lever: int, levers: int) -> int:
    """The settings in which a lever is on, one bit each: setting s has lever n on if bit n of s is."""
    block = (1 << (1 << lever)) - 1 << (1 << lever)
    width = 2 << lever
    while width < 1 << levers:
        block |= block << width
        width *= 2
    return block


class Settings:
    """Conditions as sets of settings: whole numbers with one bit for each."""

    def __init__(self, levers: int) -> None:
        self.all = (1 << (1 << levers)) - 1
        self.names = {f"change[{n}]": rows_where_on(n, levers) for n in range(levers)}

    def of(self, condition: str) -> int:
        tokens = re.findall(r"[A-Za-z_]+(?:\[\d+\])*|[()]", condition)
        self.rest: Iterator[str] = iter(tokens)
        self.token = next(self.rest, "")
        value = self.sum()
        if self.token:
            raise Difference(f"cannot read the condition {condition!r} at {self.token!r}")
        return value

    def advance(self) -> str:
        token, self.token = self.token, next(self.rest, "")
        return token

    def sum(self) -> int:
        value = self.product()
        while self.token == "or":
            self.advance()
            value |= self.product()
        return value

    def product(self) -> int:
        value = self.factor()
        while self.token == "and":
            self.advance()
            value &= self.factor()
        return value

    def factor(self) -> int:
        token = self.advance()
        if token == "not":
            return self.all & ~self.factor()
        if token == "(":
            value = self.sum()
            self.advance()
            return value
        if token in ("on", "off"):
            return self.all if token == "on" else 0
        return self.names[token]


def conditions(leat: Leat, text: str, levers: int, folder: Path) -> dict[tuple[str, str], int]:
    """Inlet and outlet to the settings in which a body is certain to get from one to the other."""
    path = folder / "network.leat"
    path.write_text(text, encoding="utf-8")
    document = leat.printed("leat-table", "table", str(path), "--junction", "network", "--as", "json")
    settings = Settings(levers)
    found = {}
    for entry in document["junctions"][0]["conditions"]:
        if entry["verdict"] != "certain":
            raise Difference(f"{entry['inlet']} is {entry['verdict']} when {entry['condition']}")
        rows = settings.of(entry["condition"])
        expect_equal(rows.bit_count(), int(entry["combinations"]), f"combinations of {entry}")
        found[entry["inlet"], entry["outlets"][0]] = rows
    return found


def permutations_of(leat: Leat, network: Network, folder: Path) -> int:
    """How many different permutations all settings of the levers realize."""
    found = conditions(leat, network.text(), network.levers, folder)
    width = network.lanes.bit_length() - 1
    planes = []
    for inlet in range(network.lanes):
        rows = [found.get((f"mill[{inlet}]", f"kiln[{outlet}]"), 0) for outlet in range(network.lanes)]
        expect_equal(sum(row.bit_count() for row in rows), 1 << network.levers, f"settings of lane {inlet}")
        for digit in range(width):
            plane = sum(row for outlet, row in enumerate(rows) if outlet >> digit & 1)
            planes.append(f"{plane:0{1 << network.levers}b}")
    return len(set(zip(*planes)))


# Enables G1, G2A, G2B; any other setting of them leaves every output inactive.
def decoder_text() -> str:
    """Levers: select A, B, C are 0, 1, 2; the enables G1, G2A, G2B are 3, 4, 5."""
    lines = ["place turn as enable at 0 0 0 with divert = not change[3] or change[4] or change[5]",
             "inlet mill[0] = enable.lane", "outlet kiln[8] = enable.over"]
    for row in range(3):
        for n in range(1 << row):
            lines.append(f"place turn as turn[{row}][{n}] at {14 * row} {5 * n + 5} 0"
                         f" with divert = change[{2 - row}]")
            for port, side in (("keep", 0), ("over", 1)):
                name = f"turn[{row}][{n}].{port}"
                onward = 2 * n + side
                lines.append(f"outlet kiln[{onward}] = {name}" if row == 2
                             else f"join {name} -> turn[{row + 1}][{onward}].lane")
    lines.append("join enable.keep -> turn[0][0].lane")
    return HEAD % 5 + "".join(f"  {line}\n" for line in lines) + "}\n"


def compare_decoder(leat: Leat, folder: Path) -> str:
    found = conditions(leat, decoder_text(), 6, folder)
    for setting in range(64):
        select, g1, g2a, g2b = setting & 7, setting >> 3 & 1, setting >> 4 & 1, setting >> 5 & 1
        active = select if g1 and not g2a and not g2b else 8
        got = [outlet for outlet in range(9) if found["mill[0]", f"kiln[{outlet}]"] >> setting & 1]
        expect_equal(got, [active], f"74x138 at setting {setting:06b}")
    return "74x138: 64 settings agree"


def merge_text() -> str:
    """Eight lanes, of which the selected one is let on; select A, B, C are the levers 0, 1, 2, the
    strobe is lever 3."""
    lines = ["place bay as bay at 0 0 0", "outlet kiln[0] = bay.keep"]
    for lane in range(8):
        chosen = " and ".join(("" if lane >> digit & 1 else "not ") + f"change[{digit}]" for digit in range(3))
        lines.append(f"place turn as turn[{lane}] at 14 {5 * lane} 0"
                     f" with divert = change[3] or not ({chosen})")
        lines += [f"inlet mill[{lane}] = turn[{lane}].lane", f"outlet shut[{lane}] = turn[{lane}].over",
                  f"join turn[{lane}].keep -> bay.lane"]
    return HEAD % 3 + "".join(f"  {line}\n" for line in lines) + "}\n"


def compare_merge(leat: Leat, folder: Path) -> str:
    found = conditions(leat, merge_text(), 4, folder)
    for setting in range(16):
        let_on = [lane for lane in range(8) if found[f"mill[{lane}]", "kiln[0]"] >> setting & 1]
        wanted = [] if setting >> 3 else [setting & 7]
        expect_equal(let_on, wanted, f"74x151 at setting {setting:04b}")
    return "74x151: 16 settings agree"


def compare(leat: Leat, given: argparse.Namespace, folder: Path) -> str:
    said = [compare_decoder(leat, folder), compare_merge(leat, folder)]
    for lanes in (4, 8):
        network = omega(lanes)
        expect_equal(permutations_of(leat, network, folder), 1 << network.levers, f"omega network of {lanes}")
        said.append(f"omega network of {lanes}: {1 << network.levers} permutations")
    for lanes in (4, 8):
        expect_equal(permutations_of(leat, benes(lanes), folder), factorial(lanes), f"Benes network of {lanes}")
        said.append(f"Benes network of {lanes}: all {factorial(lanes)} permutations")
    return "\n".join(said)


if __name__ == "__main__":
    sys.exit(run(options(__doc__ or "", 0), compare))
