add_library(test_draw STATIC ${CMAKE_CURRENT_LIST_DIR}/../support/draw.cpp
  ${CMAKE_CURRENT_LIST_DIR}/../support/diagram_of_rows.cpp
  ${CMAKE_CURRENT_LIST_DIR}/../support/poured.cpp
  ${CMAKE_CURRENT_LIST_DIR}/../support/hand_graph.cpp
  ${CMAKE_CURRENT_LIST_DIR}/../support/counters.cpp
  ${CMAKE_CURRENT_LIST_DIR}/../support/surveyed.cpp
  ${CMAKE_CURRENT_LIST_DIR}/../support/wired.cpp)
target_link_libraries(test_draw PUBLIC engine_judge)

# One program for each room of the engine: the files of its folder.
function(engine_tests room)
  list(TRANSFORM ARGN PREPEND "${CMAKE_SOURCE_DIR}/tests/engine/${room}/")
  list(TRANSFORM ARGN APPEND "_test.cpp")
  test_program(${room}_tests SOURCES ${ARGN} USES test_draw)
endfunction()

engine_tests(model arrangement finding_kind grid material practice)
engine_tests(water agenda bounds current holes intrinsic lanes settle spread step survey word)
engine_tests(logic cone cover diagram diagram_cover least_choice machine minimal_cover modules prime_cubes recording restriction row_set settled_circuit side_by_side statement timed truth)
target_link_libraries(logic_tests PRIVATE engine_explore)
engine_tests(body capacity endings moves outcome route_graph shape surroundings trail travel)

include(${CMAKE_CURRENT_LIST_DIR}/../laws/programs.cmake)
include(${CMAKE_CURRENT_LIST_DIR}/../style/programs.cmake)
engine_tests(explore combinations explored guarding histories memory_graph phases state_keys states switching symbolic_states train)
target_link_libraries(explore_tests PRIVATE random_junctions)
engine_tests(building needs pools)
target_link_libraries(building_tests PRIVATE engine_building)
engine_tests(playback playback)
target_link_libraries(playback_tests PRIVATE random_junctions engine_playback)
engine_tests(tables route_groups routes)
target_link_libraries(tables_tests PRIVATE random_junctions)
engine_tests(verdicts clearing dealing expectations finding_claims route_claims)
engine_tests(findings accept body_spills diagonal_currents endless_loops formed_sources hard_landings idle_signals long_head_runs narrow_pits no_returns open_edges oscillations remembering_waters restless_waters rests sighting split_routes stacked_sources swimmer_pools switch_dangers table_rows thin_cushions tight_inlets twin_signals unreached_outlets unreached_states unsure_moves water_spills)
engine_tests(works claims islands journey regions wire_flips)
target_link_libraries(works_tests PRIVATE engine_works)
engine_tests(compare changes ground unknown)
target_link_libraries(compare_tests PRIVATE engine_compare)
test_program(judge_tests SOURCES ${CMAKE_CURRENT_LIST_DIR}/judge_test.cpp USES test_draw)
include(${CMAKE_CURRENT_LIST_DIR}/../practice/programs.cmake)
include(${CMAKE_CURRENT_LIST_DIR}/../bench/programs.cmake)
