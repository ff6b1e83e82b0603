add_library(test_draw STATIC ${CMAKE_CURRENT_LIST_DIR}/../support/draw.cpp)
target_link_libraries(test_draw PUBLIC engine_judge)

set(here ${CMAKE_CURRENT_LIST_DIR})
test_program(water_tests
  SOURCES ${here}/water/water_test.cpp
  USES test_draw)
