set(practice ${CMAKE_CURRENT_LIST_DIR})
test_program(practice_tests
  SOURCES ${practice}/reach_test.cpp ${practice}/bodies_test.cpp ${practice}/constants_test.cpp
  USES test_draw)
