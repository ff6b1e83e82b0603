# What is installed, seen from outside. A sanitized engine needs a sanitized program.
set(LEAT_CONSUMER_FLAGS)
if(LEAT_SANITIZE)
  set(LEAT_CONSUMER_FLAGS -fsanitize=address,undefined)
endif()
add_test(NAME install COMMAND ${LEAT_PYTHON} ${CMAKE_CURRENT_LIST_DIR}/install_test.py
         --build ${CMAKE_BINARY_DIR} --compiler ${CMAKE_CXX_COMPILER} --flags=${LEAT_CONSUMER_FLAGS})
add_test(NAME shells COMMAND ${LEAT_PYTHON} ${CMAKE_CURRENT_LIST_DIR}/shells_test.py
         --leat $<TARGET_FILE:leat>)
set_tests_properties(install shells PROPERTIES TIMEOUT 300)
