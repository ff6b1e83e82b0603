#pragma once

// A design in which each construct of the language stands at least once.
namespace leat::tests {

inline constexpr char sample[] = R"(# The kiln turn of the mill yard.
leat 1  # edition

signals {
  lever  divert
  button flush for 20 ticks starts off
  plate  passed            # pressed on the way out
  wire   shut = divert and not flush
  wire   late = shut after 4 ticks
  latch  parked on flush or divert off not divert starts on
  toggle turn on passed
  clock  beat every 2 s
  wire   odd = (divert xor flush xor passed) and (on or off)
}

materials {
  mesh    passes water, shows slope
  grille  carries, passes bodies
}

marks {
  X rock
  _ open
  s sign
  w water
  ~ mesh
  a rock when divert else open
  b open when divert and not flush else plate
  P plate passed
  i inlet millhouse
  k outlet kiln in water
  q outlet press in rock when shut else open
}

junction side_turn "the \"kiln\" turn" {
  outside open
  level 0 {
    |XXXXXXXXXqXXXXXXXXX|
    |XXXXXXXXXbXXXXXXXXX|  # the side branch
    |iw_______sa___P___k|
  }
  # headroom
  level 1..2 {
    |XXXXXXXXX_XXXXXXXXX|
    |XXXXXXXXX_XXXXXXXXX|
    |___________________|
  }
}

body walker {
  footprint 1
  height 2
  floats
  breath 300 ticks
}

practice {
  longest_drop 3
  head_run 2
}

accept diagonal-current at side_turn 4 4 0 when divert because "one mob a minute at most"
accept open-edge because "the yard is fenced"

expect "routes" of side_turn {
  millhouse reaches press when divert
  walker from millhouse reaches kiln otherwise
  millhouse reaches nothing when shut
  millhouse may reach kiln
  millhouse never reaches kiln when flush
  walker never trapped
  never spilled when divert or flush
  findings none above note
  findings none
  finds dry-stand at 3 4 0
  finds pinned at side_turn 3 4 0
  after passed, divert: walker from millhouse reaches press
  after flush:
    never trapped
  clear within 12 s
  walker clear within 240 ticks when not shut
  millhouse deals kiln, nothing, press every 40 ticks
  after beat, beat: walker from millhouse deals press, press,
    kiln every 2 s for 4 rounds  # dealt like cards
}

expect table walker from millhouse of side_turn {
  divert flush | route
  1      0     | press
  1      1     | kiln, press
  0      -     | nothing
}
)";

}  // namespace leat::tests
