"""What is claimed of a works: nothing holds, and nothing fails, that is not proved. Each design is small enough to be
thought through by hand; the comments say what is so. Demo designs, invented.

    /usr/bin/python3 works_claims_test.py --leat build/leat
"""
from __future__ import annotations

import argparse
import sys
import unittest

import works_chain_test as chains
from works_chain_test import HEAD, TURN, plant

# After the drain was shut once, a source stays over the landing: up to the granary. Else down to the kiln.
REMEMBERING_MARKS = """marks {
  X  rock
  _  open
  s  sign
  w  water
  f  open when drain else water
  i  inlet  millhouse
  g  outlet granary
  k  outlet kiln
}
"""
REMEMBERING = """junction landing {
  level 0 { |XXXXXXXXXX|
            |XXXXw____k|
            |XXXXXXXXXX| }
  level 1 { |XXXXXXXXXX|
            |XXXXX_____|
            |XXXXXXXXXX| }
  level 2 { |XXXXXXXXXX|
            |wi___sXXXX|
            |XXXXXXXXXX| }
  level 3 { |XXXXXfXXXX|
            |____s_gXXX|
            |XXXXXfXXXX| }
  level 4 { |XXXXXXXXXX|
            |XXXXX__XXX|
            |XXXXXXXXXX| }
}
"""
DRAIN = "leat 1\nsignals { lever drain starts on }\n" + REMEMBERING_MARKS + REMEMBERING

TWO_LANDINGS = """works plant {
  place landing as one at 0 0 0
  place landing as two at 0 10 0
  join one.kiln -> two.millhouse
}
"""

TURNING = (HEAD[:HEAD.index("  for n in")] + HEAD[HEAD.index("}\nmarks"):HEAD.index("junction bay")]).replace(
    "  a  rock", "  G  rock when divert else open\n  a  rock") + """junction gate {
  level 0 { |wi_G__k| }
  level 1 { |___G___| }
}
"""


def judged(text: str) -> tuple[dict[str, str], list[dict]]:
    """The verdict of each clause, and all findings, of the works of a design."""
    works = plant(text)
    return {claim["clause"]: claim["verdict"] for claim in works["expectations"]}, works["findings"]


class Works(unittest.TestCase):
    def verdicts(self, text: str, *clauses: str) -> list[str]:
        expected = "expect of plant {\n" + "".join(f"  {clause}\n" for clause in clauses) + "}\n"
        told, _ = judged(text + expected)
        return [told[clause] for clause in clauses]

    def test_waters_of_one_history_are_not_mixed(self) -> None:
        # Both landings always have the same water: who was sent down by the first is sent down by the second.
        text = DRAIN + TWO_LANDINGS
        self.assertEqual(self.verdicts(text, "one.millhouse never reaches two.granary when drain",
                                       "one.millhouse may reach two.granary when drain"), ["undecided"] * 2)

    def test_what_is_told_for_nothing_hides_no_outlet(self) -> None:
        # Whoever is sent down by the first is sent down by the second, so the second's granary is never reached.
        text = DRAIN + TWO_LANDINGS
        self.assertEqual(self.verdicts(text, "finds unreached-outlet", "findings none above warning"), ["undecided"] * 2)

    def test_an_outlet_told_for_nothing_takes_no_doubt_away(self) -> None:
        # In truth a body goes down to the second kiln or is pinned in the first landing: that is doubtful. The second
        # granary, which it never comes to, would make it a split.
        pinning = REMEMBERING.replace("junction landing", "junction pinning").replace("|____s_gXXX|", "|____s__XXX|")
        text = DRAIN + pinning + """works plant {
  place pinning as one at 0 0 0
  place landing as two at 0 10 0
  join one.kiln -> two.millhouse
}
"""
        self.assertEqual(self.verdicts(text, "never doubtful", "never doubtful when drain"), ["undecided"] * 2)

    def test_what_is_told_for_nothing_to_come_shows_no_finding(self) -> None:
        # Only who was sent up by the second landing would come to the wall, and be held there: nobody is.
        text = DRAIN + """junction wall { level 0 { |wi_X_k| } level 1 { |___X__| } }
works plant {
  place landing as one at 0 0 0
  place landing as two at 0 10 0
  place wall as three at 0 20 0
  join one.kiln -> two.millhouse
  join two.granary -> three.millhouse
}
"""
        self.assertEqual(self.verdicts(text, "finds pinned"), ["undecided"])
        # By itself the wall holds whoever enters there.
        alone = text.replace("  join two.granary -> three.millhouse\n", "")
        self.assertEqual(self.verdicts(alone, "finds pinned"), ["holds"])

    def test_what_a_promise_bars_is_not_told(self) -> None:
        # The drain is locked by a lever that no cell follows, so the source that stays never forms.
        locked = DRAIN.replace("lever drain starts on", "lever drain starts on\n  lever key starts on\n  never drain xor key")
        text = locked + "works plant { place landing as one at 0 0 0 }\n"
        asked = "expect of plant { finds remembering-water }\n"
        told, findings = judged(text + asked)
        self.assertEqual(told, {"finds remembering-water": "undecided"})
        self.assertNotIn("remembering-water", {finding["name"] for finding in findings})
        # Nor is it called stale to accept what may be barred.
        accepted = "accept remembering-water because \"it is emptied by hand\"\n"
        _, findings = judged(text + accepted)
        self.assertNotIn("stale-acceptance", {finding["name"] for finding in findings})
        # Where the key can be turned first the drain can be shut after it, and all is as without the promise.
        free = text.replace("never drain xor key", "never not drain and key")
        told, findings = judged(free + asked)
        self.assertEqual(told, {"finds remembering-water": "holds"})
        self.assertIn("remembering-water", {finding["name"] for finding in findings})

    def test_what_happens_to_bodies_happens_where_they_come(self) -> None:
        # The gate holds whoever comes to it while the lever is on, and then nobody does.
        text = TURNING + """works plant {
  place turn as one at 0 0 0
  place gate as two at 0 10 0
  join one.keep -> two.lane
}
"""
        self.assertEqual(self.verdicts(text, "findings none above note", "never trapped"), ["holds"] * 2)
        told, findings = judged(text.replace("gate as two at 0 10 0", "gate as two at 0 10 0 with divert = not divert"))
        self.assertIn("pinned", {finding["name"] for finding in findings})

    def test_a_lever_that_works_elsewhere_can_be_idle_here(self) -> None:
        # In the gate by itself the lever decides; here nobody gets through the closed turn before it.
        text = TURNING.replace("lever divert", "lever divert\n  lever shut") + """works plant {
  place gate as one at 0 0 0 with divert = on
  place gate as two at 0 10 0 with divert = shut
  join one.keep -> two.lane
}
"""
        told, findings = judged(text + "expect of plant { finds idle-signal }\n")
        self.assertEqual(told, {"finds idle-signal": "holds"})
        self.assertIn("idle-signal", {finding["name"] for finding in findings})

    def test_what_happens_to_a_body_happens_where_that_body_comes(self) -> None:
        # Only the low one gets through the first run, and passes the second too, where the high one would be held.
        text = """leat 1
body walker { }
body crawler { height 1 }
marks {
  X  rock
  _  open
  w  water
  i  inlet mill
  k  outlet kiln
}
junction low {
  level 0 { |wi____k| }
  level 1 { |___X___| }
}
junction tight {
  level 0 { |wi___k| }
  level 1 { |___X__| }
}
works plant {
  place low as one at 0 0 0
  place tight as two at 0 4 0
  join one.kiln -> two.mill
}
expect of plant { crawler from one.mill reaches two.kiln }
"""
        told, findings = judged(text)
        self.assertEqual(list(told.values()), ["holds"])
        held = [(finding["name"], finding["inlets"]) for finding in findings if finding["name"] == "pinned"]
        self.assertEqual(held, [("pinned", ["one.mill"])])

    def test_a_ring_through_a_water_that_stays_is_not_left(self) -> None:
        # Once the source stays, bodies go round for ever, though another water would have sent them to the kiln.
        text = DRAIN.replace("  k  outlet kiln\n", "  k  outlet kiln\n  I  inlet entry\n  O  outlet exit\n") + """
junction feeder { level 0 { |wI____O| } level 1 { |_______| } }
works plant {
  place landing as one at 0 0 0
  place feeder as two at 0 10 0
  join two.exit -> one.millhouse
  join one.granary -> one.millhouse
}
"""
        self.assertEqual(self.verdicts(text, "two.entry reaches one.kiln when drain",
                                       "two.entry never trapped when drain"), ["undecided"] * 2)

    def test_memory_beside_an_island_tells_of_its_history(self) -> None:
        # `flooded` is on exactly where the source stays, so with it nobody goes down.
        text = DRAIN.replace("lever drain starts on", "lever drain starts on\n latch flooded on not drain off off")
        text += "works plant { place landing as one at 0 0 0 }\n"
        told = self.verdicts(text, "one.millhouse may reach one.kiln when flooded and drain",
                             "one.millhouse reaches one.granary when flooded")
        self.assertNotIn("holds", told[:1])
        self.assertNotIn("violated", told[1:])

    def test_what_was_left_out_is_not_said_to_hold(self) -> None:
        # Twelve levers more: too many changes of the water to follow, so that the source that stays is not seen.
        idle = "".join(f"  {mark}  water when g{n} else sign\n" for n, mark in enumerate("abcdehjlmnop"))
        levers = "signals { lever drain starts on\n" + "".join(f"  lever g{n}\n" for n in range(12)) + "}\n"
        rows = {"|XXXXXXXXXX|": "|" + "X" * 36 + "|", "|XXXXw____k|": "|XXXXw____k" + "s" * 26 + "|"}
        drawn = REMEMBERING
        for old, new in rows.items():
            drawn = drawn.replace(old, new)
        for row in ("|XXXXX_____|", "|wi___sXXXX|", "|XXXXXfXXXX|", "|____s_gXXX|", "|XXXXX__XXX|"):
            drawn = drawn.replace(row, row[:-1] + "X" * 26 + "|")
        gates = "X" * 12 + "".join(f"{mark}X" for mark in "abcdehjlmnop")
        at = drawn.index("XXXXw____k")
        at = drawn.index("|" + "X" * 36 + "|", at)
        drawn = drawn[:at] + "|" + gates + "|" + drawn[at + 38:]
        text = "leat 1\n" + levers + REMEMBERING_MARKS.replace("}\n", idle + "}\n") + drawn
        text += "works plant { place landing as one at 0 0 0 }\n"
        self.assertEqual(self.verdicts(text, "one.millhouse never reaches one.granary when drain",
                                       "one.millhouse reaches one.kiln when drain"), ["holds within bounds"] * 2)

    def test_promises_are_kept_by_every_flip(self) -> None:
        # Under `never divert xor other` neither lever can be moved.
        text = "leat 1\nsignals {\n lever divert\n lever other\n never divert xor other\n}\n" + TURN + """
works plant {
  place turn as one at 0 0 0
  place turn as two at 0 8 0 with divert = other
  join one.keep -> two.lane
}
"""
        self.assertEqual(self.verdicts(text, "one.lane may reach two.over when divert", "one.lane reaches two.keep"),
                         ["empty", "holds"])
        _, findings = judged(text)
        self.assertNotIn("stranding-switch", [finding["name"] for finding in findings])

    def test_promises_hold_of_memory_too(self) -> None:
        # `press` cannot be moved, for that would set what never is.
        text = "leat 1\nsignals {\n lever divert\n lever press\n toggle held on press\n never held\n}\n" + TURN + """
works plant { place turn as one at 0 0 0 }
"""
        self.assertEqual(self.verdicts(text, "one.lane never reaches one.over when press",
                                       "one.lane never reaches one.over when not press and not divert"),
                         ["empty", "holds"])

    def test_what_stands_as_built_comes_about(self) -> None:
        # It is promised away, and yet it is what is built.
        text = "leat 1\nsignals {\n lever divert starts on\n never divert\n}\n" + TURN + """
works plant { place turn as one at 0 0 0 }
"""
        self.assertEqual(self.verdicts(text, "one.lane never reaches one.over"), ["violated"])

    def test_findings_of_the_logic_are_found_in_a_works(self) -> None:
        text = "leat 1\nsignals {\n lever go\n latch divert on go off off\n}\n" + TURN + """
works plant { place turn as one at 0 0 0 }
"""
        self.assertEqual(self.verdicts(text, "finds no-return", "findings none above note"), ["holds", "violated"])

    def test_a_finding_is_found_where_another_copy_stands(self) -> None:
        text = "leat 1\nsignals { lever divert\n lever other }\n" + TURN.replace("a____k", "a___Xk") + """
works plant {
  place turn as one at 0 0 0
  place turn as two at 0 8 0 with divert = other
}
"""
        _, findings = judged(text)
        pinned = [finding for finding in findings if finding["name"] == "pinned"][0]
        x, y, z = pinned["cells"][0]
        self.assertEqual(self.verdicts(text, f"finds pinned at plant {x} {y} {z}",
                                       f"finds pinned at plant {x} {y + 8} {z}",
                                       f"finds pinned at plant {x} {y + 1} {z}"), ["holds", "holds", "violated"])

    def test_rounds_of_joins_without_a_way_out_are_found(self) -> None:
        # Kept on, a body goes from the second turn into the second turn; over, it leaves.
        ring = "leat 1\nsignals {\n lever divert\n lever other\n}\n" + TURN + """
works plant {
  place turn as one at 0 0 0
  place turn as two at 0 8 0 with divert = other
  join one.keep -> two.lane
  join two.keep -> two.lane
}
"""
        self.assertEqual(self.verdicts(ring, "finds endless-loop", "findings none above note",
                                       "one.lane never trapped when other", "one.lane never trapped when divert"),
                         ["holds", "violated", "holds", "holds"])
        _, findings = judged(ring)
        found = [finding for finding in findings if finding["name"] == "endless-loop"]
        self.assertEqual([(finding["inlets"], finding["bodies"]) for finding in found], [(["one.lane"], ["walker"])])
        self.assertEqual([finding["reason"] for finding in found],
                         ["Joins lead from two.lane back to itself, and nothing leads out."])
        # Nobody comes to this one.
        apart = ring.replace("  join one.keep -> two.lane\n", "")
        self.assertEqual(self.verdicts(apart, "findings none above note"), ["violated"])
        _, findings = judged(apart)
        self.assertNotIn("endless-loop", [finding["name"] for finding in findings])

    def test_an_outlet_that_is_never_reached_is_told_once(self) -> None:
        text = "leat 1\nsignals { lever divert }\n" + TURN.replace("b  open when divert else rock", "b  rock") + """
works plant { place turn as one at 0 0 0 }
"""
        _, findings = judged(text)
        self.assertEqual([finding["name"] for finding in findings].count("unreached-outlet"), 1)
        accepted = text + "accept unreached-outlet at plant 6 3 0 because \"not built yet\"\n"
        _, findings = judged(accepted)
        self.assertNotIn("stale-acceptance", [finding["name"] for finding in findings])

    def test_where_nobody_enters_nothing_holds_of_bodies(self) -> None:
        text = "leat 1\nsignals { lever divert }\n" + TURN + """
works plant {
  place turn as one at 0 0 0
  join one.keep -> one.lane
}
"""
        self.assertEqual(self.verdicts(text, "never trapped", "never lost"), ["empty"] * 2)


if __name__ == "__main__":
    parser = argparse.ArgumentParser()
    parser.add_argument("--leat", required=True)
    chains.LEAT = parser.parse_args().leat
    unittest.main(argv=[sys.argv[0]])
