"""Self tests of the oracle on junctions drawn by hand, so that it can be trusted.

The expectations are derived by hand from docs/model.md. Reaches of 8 and 9 cells: common practice of the
trade, no source.

    /usr/bin/python3 -m unittest self_test
"""
from __future__ import annotations

import unittest

from drawing import OPEN, ROCK, BodyLine, Fill, plain
from hand_made import hand_drawn, junction_of, moves_in, route_in, scene_of, strengths
from model_document import EAST, evaluate
from model_oracle import field_of, table_of

OX = BodyLine("ox", 2, 2, True)
CRAWLER = BodyLine("crawler", 2, 1, True)
PEBBLE = BodyLine("pebble", 1, 1, False)


class Water(unittest.TestCase):
    def test_a_source_on_a_floor_wets_8_cells_in_a_row(self) -> None:
        run = hand_drawn("############", "w...........")
        self.assertEqual(strengths(run, 0, 1), [8, 7, 6, 5, 4, 3, 2, 1, 0, 0, 0, 0])

    def test_a_source_on_a_sign_wets_9_floor_columns(self) -> None:
        run = hand_drawn("############", "s...........", "w...........")
        self.assertEqual(strengths(run, 0, 2), [8, 7] + [0] * 10)
        self.assertEqual(strengths(run, 0, 1), [0, 8, 7, 6, 5, 4, 3, 2, 1, 0, 0, 0])
        columns = {place[0] for place in scene_of(run).field}
        self.assertEqual(len(columns), 9)

    def test_a_source_forms_between_two_where_the_floor_bears_it(self) -> None:
        for below, forms in (("#", True), ("s", True), ("w", True), (".", False)):
            drawing = hand_drawn("###", f"#{below}#", "w.w")
            water = scene_of(drawing).field[(1, 0, 2)]
            self.assertEqual(water.is_source, forms, f"above {below}")
            self.assertEqual(water.strength, 8 if forms else 7)

    def test_water_above_makes_falling_water_before_flowing(self) -> None:
        drawing = hand_drawn("###", "w..", ".w.")
        self.assertTrue(scene_of(drawing).field[(1, 0, 1)].is_falling)

    def test_water_seeks_the_nearest_hole(self) -> None:
        one_way = hand_drawn("#########", "#######.#", "....w....")
        self.assertEqual(strengths(one_way, 0, 2), [0, 0, 0, 0, 8, 7, 6, 5, 0])
        both_ways = hand_drawn("#########", "#.#####.#", "....w....")
        self.assertEqual(strengths(both_ways, 0, 2), [0, 5, 6, 7, 8, 7, 6, 5, 0])

    def test_a_hole_is_sought_over_4_steps_from_the_side_and_no_further(self) -> None:
        seen = hand_drawn("############", "#########.##", "....w.......")
        self.assertEqual(strengths(seen, 0, 2)[3:6], [0, 8, 7])
        unseen = hand_drawn("############", "##########.#", "....w.......")
        self.assertEqual(strengths(unseen, 0, 2)[3:6], [7, 8, 7])

    def test_the_way_to_a_hole_does_not_lead_through_sources(self) -> None:
        drawing = hand_drawn("#######", "#####.#", "..w.w..")
        self.assertEqual(strengths(drawing, 0, 2)[1], 7)

    def test_water_over_water_only_goes_down(self) -> None:
        drawing = hand_drawn("#####", "##www", "w....")
        self.assertEqual(strengths(drawing, 0, 2), [8, 7, 6, 0, 0])

    def test_a_source_spreads_once_what_it_pours_into_is_wet(self) -> None:
        drawing = hand_drawn("###", "#.#", ".w.")
        self.assertEqual(strengths(drawing, 0, 2), [7, 8, 7])

    def test_a_source_over_the_outside_pours_for_ever_unless_three_are_beside_it(self) -> None:
        one = hand_drawn("...w...", outside="open")
        self.assertEqual(strengths(one, 0, 0), [0, 0, 0, 8, 0, 0, 0])
        four = hand_drawn("..... ..w.. .ww.. ..w.. .....", outside="open")
        self.assertEqual(strengths(four, 2, 0), [0, 8, 8, 7, 0])

    def test_spills(self) -> None:
        edge = hand_drawn("#### #### ####", "#### #w.. ####", outside="open")
        self.assertEqual(field_of(scene_of(edge))["spills"], [[3, 1, 1]])
        weak = hand_drawn("######### " * 3, "######### #w....... #########", outside="open")
        self.assertEqual(strengths(weak, 1, 1)[8], 1)
        self.assertEqual(field_of(scene_of(weak))["spills"], [])
        below = hand_drawn("#w#", "###", outside="open")
        self.assertEqual(field_of(scene_of(below))["spills"], [[1, 0, 0]])
        self.assertEqual(field_of(scene_of(hand_drawn("#w#")))["spills"], [])

    def test_currents(self) -> None:
        run = scene_of(hand_drawn("############", "w..........."))
        currents = [run.water.current(run.field, (x, 0, 1)) for x in range(8)]
        self.assertEqual(currents, [(1, 0)] + [(2, 0)] * 6 + [(1, 0)])

    def test_the_gradient_looks_over_an_edge_through_open_cells_only(self) -> None:
        over = scene_of(hand_drawn("####", "s...", "w..."))
        self.assertEqual(over.water.current(over.field, (1, 0, 2)), (9, 0))
        sign = scene_of(hand_drawn("####", "s...", "w.s."))
        self.assertEqual(sign.water.current(sign.field, (1, 0, 2)), (1, 0))

    def test_falling_water_beside_a_wall_pushes_less(self) -> None:
        beside = hand_drawn("####", "s...", "w.##")
        scene = scene_of(beside)
        self.assertTrue(scene.field[(1, 0, 1)].is_falling)
        self.assertAlmostEqual(scene.water.cell_push(scene.field, (1, 0, 1))[0], 37 ** -0.5)

    def test_the_practice_block_counts(self) -> None:
        run = hand_drawn("######", "w.....", practice={"source_strength": 4})
        self.assertEqual(strengths(run, 0, 1), [4, 3, 2, 1, 0, 0])


class Bodies(unittest.TestCase):
    def test_a_run_pushes_one_cell_past_its_last_water(self) -> None:
        safe = route_in(hand_drawn("############", "I.......k...", "............"))
        self.assertEqual((safe.verdict, safe.outlets, safe.trapped), ("certain", ["kiln"], []))
        dry = route_in(hand_drawn("############", "I........k..", "............"))
        self.assertEqual((dry.verdict, len(dry.trapped)), ("lost", 9))
        self.assertEqual(dry.rules.rest(max(dry.moves)), "dry")

    def test_a_lift_that_starts_at_head_level_is_sure(self) -> None:
        marks = {"i": plain("sign")}
        lift = hand_drawn("##", "i#", "w#", "wk", "..", "..", marks=marks)
        lift.ports[(0, 0, 1)] = hand_drawn("i").ports[(0, 0, 0)]
        found = moves_in(lift)
        self.assertEqual(found[(0, 0, 1), None, 0], [("rise", (0, 0, 2), True)])
        climb = ("climb", (1, 0, 3), False)  # the head's water pushes east, where the feet meet rock
        self.assertEqual(found[(0, 0, 2), None, 0], [("rise", (0, 0, 3), True), climb])
        self.assertEqual(found[(0, 0, 3), None, 0], [("push", (1, 0, 3), True)])
        self.assertEqual(route_in(lift).verdict, "certain")

    def test_a_lift_that_starts_at_foot_level_is_unsure(self) -> None:
        lift = hand_drawn("##", "I#", "s#", "wk", "..")
        self.assertEqual(moves_in(lift)[(0, 0, 1), None, 0], [("rise", (0, 0, 2), False)])
        self.assertEqual((route_in(lift).verdict, route_in(lift).is_unsure), ("doubtful", True))

    def test_a_lift_needs_headroom(self) -> None:
        lift = route_in(hand_drawn("#", "I", "w", "#"))
        self.assertEqual((list(lift.moves.values()), lift.verdict), ([[]], "lost"))

    def test_a_deep_sink(self) -> None:
        """Water up to level 4; n cells fallen on landing allow n - 1 cells below the surface, 3 at most."""
        all_of_it = [4, 3, 2, 1]
        landings = ((5, 0, [4]), (6, 1, [4, 3]), (7, 2, [4, 3, 2]), (8, 3, all_of_it), (9, 4, all_of_it))
        for start, fallen, reached in landings:
            levels = ["#", "w", "w", "w", "w"] + ["."] * 6
            levels[start] = "i"
            found = moves_in(hand_drawn(*levels))
            landing = found[(0, 0, 5), None, fallen]
            self.assertEqual([at[2] for _, at, _ in landing], reached)
            self.assertEqual([rule for rule, _, _ in landing], ["fall"] + ["sink"] * (len(reached) - 1))
            if start > 5:
                self.assertEqual(found[(0, 0, 3), None, 0], [("rise", (0, 0, 4), True)])
            self.assertEqual(found[(0, 0, 4), None, 0], [])

    def test_a_sink_is_as_deep_as_practice_says(self) -> None:
        shaft = hand_drawn("#", "w", "w", "w", "w", ".", ".", ".", "i", ".", practice={"sink_cells": 1})
        found = moves_in(shaft)[(0, 0, 5), None, 3]
        self.assertEqual(found, [("fall", (0, 0, 4), True), ("sink", (0, 0, 3), True)])

    def drop(self, pit: str, second: str) -> dict[object, object]:
        """A ledge at level 4 that ends in a sign, over a pit whose floor row is `pit`."""
        row = f"##.{second}#"
        return dict(moves_in(hand_drawn("#####", f"##{pit}#", row, row, "I.s.#", "....#")))

    def test_a_drop_with_drift_into_a_two_wide_pit(self) -> None:
        found = self.drop("ww", ".")
        self.assertEqual(found[(1, 0, 4), None, 0], [("push", (2, 0, 4), True)])
        self.assertEqual(found[(2, 0, 4), EAST, 0], [("fall", (2, 0, 3), True)])
        self.assertEqual(found[(2, 0, 3), EAST, 1], [("fall", (2, 0, 2), True), ("drift", (3, 0, 2), True)])
        self.assertEqual(found[(2, 0, 2), EAST, 2], [("fall", (2, 0, 1), True), ("fall", (3, 0, 1), True)])
        self.assertEqual(found[(2, 0, 1), EAST, 2], [("drift", (3, 0, 1), True)])
        self.assertEqual(found[(3, 0, 2), None, 2], [("fall", (3, 0, 1), True)])
        self.assertEqual(found[(3, 0, 1), None, 0], [])

    def test_no_drift_in_a_pit_one_wide(self) -> None:
        found = self.drop("w#", "#")
        self.assertEqual(found[(2, 0, 2), EAST, 2], [("fall", (2, 0, 1), True)])
        self.assertEqual(found[(2, 0, 1), EAST, 2], [])

    def test_the_side_is_forgotten_on_dry_ground(self) -> None:
        self.assertEqual(self.drop("..", ".")[(2, 0, 1), None, 0], [])

    def test_a_blocked_push_may_climb_a_step(self) -> None:
        step = hand_drawn("####", "I.##", "..k#", "...#")
        self.assertEqual(moves_in(step)[(1, 0, 1), None, 0], [("climb", (2, 0, 2), False)])
        self.assertEqual(route_in(step).verdict, "doubtful")

    def test_a_body_that_does_not_float_sinks_and_does_not_climb(self) -> None:
        shaft = hand_drawn("##", "wk", "w#", "I#", bodies=[PEBBLE])
        self.assertEqual(moves_in(shaft)[(0, 0, 3), None, 0], [("sink", (0, 0, 2), True)])
        self.assertEqual(moves_in(shaft)[(0, 0, 1), None, 0], [("push", (1, 0, 1), True)])
        step = route_in(hand_drawn("####", "I.##", "..k#", "...#", bodies=[PEBBLE]))
        self.assertEqual(step.rules.rest(max(step.moves)), "pinned")

    def test_a_body_of_footprint_2_moves_by_its_corner(self) -> None:
        run = hand_drawn("###### ######", "I...k. w.....", "...... ......", bodies=[CRAWLER])
        self.assertEqual((route_in(run).verdict, len(route_in(run).moves)), ("certain", 5))
        tight = route_in(hand_drawn("###### ######", "I...k. w.####", "...... ......", bodies=[OX]))
        self.assertEqual((tight.verdict, tight.rules.rest(max(tight.moves))), ("lost", "pinned"))

    def test_a_body_that_fits_nowhere_is_lost(self) -> None:
        table = table_of(junction_of(hand_drawn("##", "ik", "##")))
        self.assertEqual(table["rows"][0]["routes"], [{
            "inlet": "mill", "body": "walker", "verdict": "lost",
            "outlets": [], "trapped": [], "spills": False, "unsure": False}])

    def test_a_body_that_leaves_the_drawing_is_spilled_not_trapped(self) -> None:
        edge = route_in(hand_drawn("#### #### #k##", "#### #I.. ####", "#### #... ####", outside="open"))
        self.assertEqual((edge.verdict, edge.does_spill), ("lost", True))
        self.assertEqual(edge.trapped, [(1, 1, 1), (2, 1, 1), (3, 1, 1)])

    def test_a_diagonal_current_splits(self) -> None:
        corner = route_in(hand_drawn("### ###", "Ik# q##", "..# .##"))
        self.assertEqual((corner.verdict, sorted(corner.outlets)), ("split", ["kiln", "press"]))


class Signals(unittest.TestCase):
    def test_rows_in_binary_order_and_wires_out_of_order(self) -> None:
        gate = {"a": Fill(ROCK, OPEN, "late")}
        turn = hand_drawn("####", "Iak#", "...#", marks=gate, levers=["amber", "birch"],
                          wires={"late": ("not", "shut"), "shut": ("xor", "amber", "birch")})
        rows = table_of(junction_of(turn))["rows"]
        self.assertEqual([list(row["assignment"].values()) for row in rows],
                         [[False, False], [False, True], [True, False], [True, True]])
        verdicts = [row["routes"][0]["verdict"] for row in rows]
        self.assertEqual(verdicts, ["lost", "certain", "certain", "lost"])
        self.assertEqual([bool(strengths(turn, 0, 1, **row["assignment"])[1]) for row in rows],
                         [False, True, True, False])

    def test_operators(self) -> None:
        values = {"a": True, "b": False}
        cases = ((["and", "a", "b"], False), (["or", "a", "b"], True), (True, True),
                 (["xor", "a", ["not", "b"]], False), (["not", "b"], True))
        for expression, expected in cases:
            self.assertIs(evaluate(expression, values), expected)


if __name__ == "__main__":
    unittest.main()
