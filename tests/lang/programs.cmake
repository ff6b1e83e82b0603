test_program(lang_source_tests
  SOURCES lang/source/code_point_test.cpp lang/source/soundness_test.cpp
          lang/source/source_map_test.cpp lang/source/source_text_test.cpp
  USES lang_source)
test_program(lang_diagnostics_tests
  SOURCES lang/diagnostics/catalogue_test.cpp lang/diagnostics/near_name_test.cpp
          lang/diagnostics/sink_test.cpp
  USES lang_diagnostics)
add_library(reading_of STATIC lang/grammar/reading_of.cpp lang/grammar/tree_text.cpp)
target_link_libraries(reading_of PUBLIC lang_grammar test_main)
test_program(lang_grammar_tests
  SOURCES lang/grammar/document_test.cpp lang/grammar/drawing_test.cpp
          lang/grammar/expecting_test.cpp lang/grammar/expression_test.cpp
          lang/grammar/judging_test.cpp lang/grammar/numbers_test.cpp
          lang/grammar/robustness_test.cpp lang/grammar/signals_test.cpp
          lang/grammar/works_test.cpp
  USES lang_grammar reading_of)
test_program(lang_syntax_tests SOURCES lang/syntax/print_test.cpp
  USES lang_syntax lang_grammar reading_of)
test_program(lang_check_tests
  SOURCES lang/check/judging_test.cpp lang/check/marks_test.cpp lang/check/names_test.cpp
          lang/check/ports_test.cpp lang/check/shape_test.cpp lang/check/signals_test.cpp
          lang/check/unfold_test.cpp
  USES lang_check lang_grammar reading_of)
test_program(lang_lower_tests
  SOURCES lang/lower/files_test.cpp lang/lower/including_test.cpp lang/lower/lower_test.cpp
          lang/lower/mutants_test.cpp
  USES lang_lower)
test_program(lang_messages_tests SOURCES messages/messages_test.cpp USES lang_cli fmt::fmt)
test_program(lang_render_tests
  SOURCES lang/render/columns_test.cpp lang/render/condition_test.cpp
          lang/render/diagnostic_text_test.cpp lang/render/difference_test.cpp
          lang/render/example_test.cpp
          lang/render/level_picture_test.cpp lang/render/machine_test.cpp
          lang/render/sentences_test.cpp lang/render/table_test.cpp
          lang/render/time_scale_test.cpp lang/render/waves_test.cpp
  USES lang_render test_draw)

test_program(lang_cli_files_tests SOURCES lang/cli/tidied_test.cpp lang/cli/written_file_test.cpp
  USES lang_cli reading_of)

# The program from outside.
find_program(LEAT_PYTHON python3 PATHS /usr/bin NO_DEFAULT_PATH REQUIRED)
add_test(NAME lang_cli_tests COMMAND ${LEAT_PYTHON} ${CMAKE_CURRENT_LIST_DIR}/cli/cli_test.py
         --leat $<TARGET_FILE:leat>)
add_test(NAME lang_cli_signals_tests COMMAND ${LEAT_PYTHON} ${CMAKE_CURRENT_LIST_DIR}/cli/signals_test.py
         --leat $<TARGET_FILE:leat>)
add_test(NAME lang_cli_include_tests COMMAND ${LEAT_PYTHON} ${CMAKE_CURRENT_LIST_DIR}/cli/include_test.py
         --leat $<TARGET_FILE:leat>)
add_test(NAME lang_cli_tidy_tests COMMAND ${LEAT_PYTHON} ${CMAKE_CURRENT_LIST_DIR}/cli/tidy_test.py
         --leat $<TARGET_FILE:leat>)
add_test(NAME lang_cli_watch_tests COMMAND ${LEAT_PYTHON} ${CMAKE_CURRENT_LIST_DIR}/cli/watch_test.py
         --leat $<TARGET_FILE:leat>)
add_test(NAME approved_outputs COMMAND ${LEAT_PYTHON} ${CMAKE_CURRENT_LIST_DIR}/../approved/approved_test.py
         --leat $<TARGET_FILE:leat>)
set_tests_properties(lang_cli_tests lang_cli_signals_tests lang_cli_include_tests lang_cli_tidy_tests lang_cli_watch_tests approved_outputs
  PROPERTIES TIMEOUT 300)
