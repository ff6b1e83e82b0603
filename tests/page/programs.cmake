# The page in a real browser, and its data against the schema. The browser runs what the program printed: with
# sanitizers it would show the same page.
if(NOT LEAT_SANITIZE)
  add_test(NAME page_tests COMMAND ${CMAKE_CURRENT_LIST_DIR}/run $<TARGET_FILE:leat>)
  set_tests_properties(page_tests PROPERTIES TIMEOUT 1500 PROCESSORS 2)
endif()
add_test(NAME page_data_tests COMMAND ${LEAT_PYTHON} ${CMAKE_CURRENT_LIST_DIR}/data_test.py --leat $<TARGET_FILE:leat>)
set_tests_properties(page_data_tests PROPERTIES TIMEOUT 900)
