# The documents and the examples, run as they stand.
add_test(NAME docs COMMAND /usr/bin/python3 ${CMAKE_SOURCE_DIR}/tests/docs/run_samples.py
                           --leat $<TARGET_FILE:leat>)
add_test(NAME examples COMMAND /usr/bin/python3 ${CMAKE_SOURCE_DIR}/tests/docs/check_examples.py
                               --leat $<TARGET_FILE:leat>)
set_tests_properties(docs examples PROPERTIES TIMEOUT 300)
