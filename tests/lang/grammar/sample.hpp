#pragma once

// A design in which each construct of the language stands at least once.
namespace leat::tests {

inline constexpr char sample[] = R"(# The kiln turn of the mill yard.
leat 1  # edition

include "parts/lift.leat"  # found beside this file
number lanes = 8
number half  = (lanes + 1) / 2 - 2 ^ -0 mod 3

signals {
  lever  divert
  button flush for 20 ticks starts off
  plate  passed            # pressed on the way out
  wire   shut = divert and not flush
  wire   late = shut after 4 ticks
  latch  parked on flush or divert off not divert starts on
  toggle turn on passed
  clock  beat every 2 s
  for lane in 0..lanes - 1 {
    lever turn[lane]  # one for each
    for step in 1..2 {
      wire held[lane][step] = turn[lane] and not turn[(lane + step) mod lanes]
      never held[lane][step] and flush
    }
  }
  never divert and turn[0]
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
  number rise = 2  # of the headroom
  # headroom
  level 1..rise {
    |XXXXXXXXX_XXXXXXXXX|
    |XXXXXXXXX_XXXXXXXXX|
    |___________________|
  }
}

works yard "the yard" {
  outside open
  number wide = 12 * half
  place side_turn as first at 0 -3 0  # the north-west one
  place side_turn as second at wide (8 * lanes) 0 turned left mirrored with flush = late
  for lane in 0..lanes - 1 {
    place fork as fork[lane] at (12 * lane) 0 1 where rise = 3, run = lane with divert = turn[lane],
      flush = off
    join fork[lane].mill -> second.millhouse taking 9 s
  }
  join first.kiln -> second.millhouse
  inlet mine = first.millhouse
  outlet kiln = second.kiln
  outlet side[1] = north.fork[0][1].press
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
  for lane in 0..3 {
    millhouse reaches fork[lane].mill when turn[lane] and second.late
    after turn[lane], second.passed: first.millhouse deals fork[lane].mill, nothing every 2 s
  }
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

expect table first.millhouse of yard {
  turn[0] second.late turn[lanes - 1] | route
  1       0           -               | fork[0].mill, second.kiln
}
)";

}  // namespace leat::tests
