"""What comes about at places by who is sent there along joins: bodies and combinations go together. Each design is small
enough to be thought through by hand. Demo designs, invented.

    /usr/bin/python3 works_joined_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import sys
import unittest

import works_chain_test as chains
from works_chain_test import plant

MARKS = {
    "X": "rock", "_": "open", "z": "outlet gone", "s": "sign", "w": "water",
    "a": "rock when x else open", "b": "open when x else rock",
    "c": "open when x else rock", "d": "rock when x else open",
    "i": "inlet mill", "j": "inlet mill in rock when x else open", "k": "outlet kiln", "p": "outlet press",
    "A": "inlet west", "B": "inlet east", "o": "outlet out",
}


def head(marks: str) -> str:
    return "leat 1\nsignals { lever x }\nmarks {\n" + "".join(f"  {m} {MARKS[m]}\n" for m in marks) + "}\n"


TURN = """junction turn {
  level 0 { |wi____sa____k|
            |XXXXXXbXXXXXX|
            |XXXXXX_XXXXXX|
            |XXXXXX_XXXXXX|
            |XXXXXXpXXXXXX| }
  level 1 { |_____swa_____|
            |XXXXXXbXXXXXX|
            |XXXXXX_XXXXXX|
            |XXXXXX_XXXXXX|
            |XXXXXX_XXXXXX| }
}
"""


def names(judged: dict) -> list[str]:
    return [finding["name"] for finding in judged["findings"] if finding["severity"] != "note"]


def verdicts(judged: dict) -> list[str]:
    return [expectation["verdict"] for expectation in judged["expectations"]]


class Sent(unittest.TestCase):
    # Whoever comes from the west while x is on would stand dry, and from the east while it is off; each is sent to
    # the other side.
    TWO = head("X_swabcdikpABo") + TURN + """junction two {
  level 0 { |wA____sa___s___cs____Bw|
            |XXXXXXbXXXXXXXXXdXXXXXX|
            |XXXXXX_XXXXXXXXX_XXXXXX|
            |XXXXXX_XXXXXXXXX_XXXXXX|
            |XXXXXXoXXXXXXXXXoXXXXXX| }
  level 1 { |_____swa_______cws_____|
            |XXXXXXbXXXXXXXXXdXXXXXX|
            |XXXXXX_XXXXXXXXX_XXXXXX|
            |XXXXXX_XXXXXXXXX_XXXXXX|
            |XXXXXX_XXXXXXXXX_XXXXXX| }
}
works plant {
  place turn as t at 0 0 0
  place two as u at 0 10 0
  join t.kiln -> u.%s
  join t.press -> u.%s
}
expect "ends" of plant {
  t.mill reaches u.out
  never trapped
}
expect "found" of plant {
  findings none above warning
  finds dry-stand
}
"""

    def test_a_finding_takes_its_body_and_its_combination_together(self) -> None:
        right = plant(self.TWO % ("east", "west"))
        self.assertNotIn("dry-stand", names(right))
        self.assertEqual(verdicts(right), ["holds", "holds", "holds", "violated"])
        wrong = plant(self.TWO % ("west", "east"))
        self.assertIn("dry-stand", names(wrong))
        self.assertEqual(verdicts(wrong)[1:], ["violated", "violated", "holds"])

    def test_a_lever_that_chooses_a_dead_end_is_not_idle(self) -> None:
        pits = head("X_zswabikpA") + TURN + """junction pit {
  level 0 { |wA____sXz| }
  level 1 { |_______X_| }
}
works plant {
  place turn as t at 0 0 0
  place pit as a at 0 10 0
  place pit as b at 0 15 0
  join t.press -> a.west
  join t.kiln -> b.west
}
"""
        self.assertNotIn("idle-signal", names(plant(pits)))

    def test_an_inlet_of_two_islands_bars_where_both_do(self) -> None:
        two = """junction two {
  level 0 { |w%s____k|
            |XXXXXXX|
            |wj____k| }
  level 1 { |_______|
            |XXXXXXX|
            |_______| }
}
works plant { place two as t at 0 0 0 }
expect "ends" of plant {
  t.mill reaches t.kiln
  never doubtful
  never lost
}
"""
        one_way = plant(head("X_wijk") + two % "i")
        self.assertEqual(verdicts(one_way), ["holds"] * 3)
        self.assertNotIn("tight-inlet", names(one_way))
        both = plant(head("X_wjk") + two % "j")
        self.assertIn("violated", verdicts(both))
        tight = next(finding for finding in both["findings"] if finding["name"] == "tight-inlet")
        self.assertEqual(tight["condition"], "x")


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--leat", required=True)
    given, rest = parser.parse_known_args()
    chains.LEAT = given.leat
    unittest.main(argv=[sys.argv[0], *rest])
