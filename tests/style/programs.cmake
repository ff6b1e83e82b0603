find_package(Python3 REQUIRED COMPONENTS Interpreter)
foreach(check figures arrows)
  add_test(NAME "style: ${check}"
    COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_LIST_DIR}/${check}.py ${CMAKE_SOURCE_DIR})
endforeach()
add_test(NAME "style: self test" COMMAND ${Python3_EXECUTABLE} ${CMAKE_CURRENT_LIST_DIR}/self_test.py)
