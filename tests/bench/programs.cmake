# Benchmarks are built with the tests and run by hand.
add_executable(water_bench ${CMAKE_CURRENT_LIST_DIR}/water_bench.cpp
  ${CMAKE_CURRENT_LIST_DIR}/plain_search.cpp)
target_link_libraries(water_bench PRIVATE random_junctions)
add_executable(states_bench ${CMAKE_CURRENT_LIST_DIR}/states_bench.cpp)
target_link_libraries(states_bench PRIVATE test_draw)
add_executable(forms_bench ${CMAKE_CURRENT_LIST_DIR}/forms_bench.cpp)
target_link_libraries(forms_bench PRIVATE test_draw)
add_executable(routes_bench ${CMAKE_CURRENT_LIST_DIR}/routes_bench.cpp)
target_link_libraries(routes_bench PRIVATE random_junctions)
