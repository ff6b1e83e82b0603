add_library(random_junctions STATIC ${CMAKE_CURRENT_LIST_DIR}/random_junction.cpp
  ${CMAKE_CURRENT_LIST_DIR}/random_plant.cpp ${CMAKE_CURRENT_LIST_DIR}/shrink.cpp
  ${CMAKE_CURRENT_LIST_DIR}/symmetry.cpp)
target_link_libraries(random_junctions PUBLIC engine_judge)
target_include_directories(random_junctions PUBLIC ${CMAKE_SOURCE_DIR})

set(laws ${CMAKE_CURRENT_LIST_DIR})
test_program(laws_tests
  SOURCES ${laws}/water_laws_test.cpp ${laws}/lanes_laws_test.cpp ${laws}/symmetry_laws_test.cpp ${laws}/judgement_laws_test.cpp
    ${laws}/history_laws_test.cpp ${laws}/switching_laws_test.cpp ${laws}/wide_water_laws_test.cpp
    ${laws}/route_lanes_laws_test.cpp
  USES random_junctions test_draw)

test_program(works_laws_tests SOURCES ${laws}/works_laws_test.cpp ${laws}/works_claims_laws_test.cpp
  ${laws}/influence_laws_test.cpp ${laws}/excerpt_laws_test.cpp
  ${laws}/region_findings_laws_test.cpp USES random_junctions engine_works)
test_program(comparison_laws_tests SOURCES ${laws}/comparison_laws_test.cpp USES random_junctions engine_compare)
