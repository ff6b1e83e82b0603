# The program held against an independent model and independent libraries: Debian's own Python has them.
function(outside_test name)
  add_test(NAME outside.${name}
           COMMAND /usr/bin/python3 ${CMAKE_SOURCE_DIR}/tests/outside/${name}.py
                   --leat $<TARGET_FILE:leat> ${ARGN}
           WORKING_DIRECTORY ${CMAKE_SOURCE_DIR}/tests/outside)
  set_tests_properties(outside.${name} PROPERTIES TIMEOUT 600)
endfunction()

outside_test(compare_fields --count 60)
outside_test(compare_tables --count 100)
outside_test(compare_histories --count 110)
outside_test(compare_mutants --count 500)
outside_test(symmetry --count 8)
outside_test(networkx_water --count 30)
outside_test(networkx_routes --count 60)
outside_test(conditions --count 40)
outside_test(decoders)
outside_test(works_networks)
outside_test(compare_works --count 180)
set_tests_properties(outside.compare_works PROPERTIES PROCESSORS 2 TIMEOUT 1200)
outside_test(waves_verilog --count 200)
outside_test(check_formats)
outside_test(hostile_names)
outside_test(machine_verilog --count 120)
outside_test(waves_sigrok --count 40)
outside_test(machine_graphviz --count 30)
outside_test(memory_databook)

# The engine's own random junctions: no command prints what passes a route.
add_executable(throughput_cases outside/throughput_cases.cpp)
target_link_libraries(throughput_cases PRIVATE random_junctions nlohmann_json::nlohmann_json)
add_test(NAME outside.networkx_throughput
         COMMAND /usr/bin/python3 ${CMAKE_SOURCE_DIR}/tests/outside/networkx_throughput.py
                 --cases $<TARGET_FILE:throughput_cases> --count 400
         WORKING_DIRECTORY ${CMAKE_SOURCE_DIR}/tests/outside)
set_tests_properties(outside.networkx_throughput PROPERTIES TIMEOUT 600)

add_test(NAME outside.self_test
         COMMAND /usr/bin/python3 -m unittest discover -p "self_test*.py"
         WORKING_DIRECTORY ${CMAKE_SOURCE_DIR}/tests/outside)
set_tests_properties(outside.self_test PROPERTIES TIMEOUT 600)
