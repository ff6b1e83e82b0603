test_program(lang_source_tests
  SOURCES lang/source/code_point_test.cpp lang/source/placed_texts_test.cpp
          lang/source/soundness_test.cpp
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
          lang/render/example_test.cpp lang/render/level_picture_test.cpp
          lang/render/machine_test.cpp lang/render/markup_test.cpp lang/render/packed_test.cpp
          lang/render/sentences_test.cpp lang/render/table_test.cpp
          lang/render/time_scale_test.cpp lang/render/waves_test.cpp
  USES lang_render test_draw)

test_program(lang_cli_files_tests
  SOURCES lang/cli/crew_test.cpp lang/cli/tidied_test.cpp lang/cli/written_file_test.cpp
  USES lang_cli reading_of)

test_program(lang_picture_tests
  SOURCES lang/render/picture/level_svg_test.cpp lang/render/picture/palette_test.cpp
          lang/render/bill_test.cpp
  USES lang_render test_draw)

# The program from outside, each a script that takes it as --leat.
find_program(LEAT_PYTHON python3 PATHS /usr/bin NO_DEFAULT_PATH REQUIRED)
function(script_test name script)
  add_test(NAME ${name} COMMAND ${LEAT_PYTHON} ${CMAKE_SOURCE_DIR}/tests/${script} --leat $<TARGET_FILE:leat>)
  set_tests_properties(${name} PROPERTIES TIMEOUT 300)
endfunction()

script_test(lang_cli_tests lang/cli/cli_test.py)
script_test(lang_cli_signals_tests lang/cli/signals_test.py)
script_test(lang_cli_include_tests lang/cli/include_test.py)
script_test(lang_cli_compare_tests lang/cli/compare_test.py)
# It bounds the memory of the program, of which sanitizers take much for themselves.
if(NOT LEAT_SANITIZE)
  script_test(lang_cli_bounds_tests lang/cli/bounds_test.py)
endif()
script_test(lang_cli_check_run_tests lang/cli/check_run_test.py)
script_test(lang_cli_acceptances_tests lang/cli/acceptances_test.py)
script_test(lang_cli_regions_tests lang/cli/regions_test.py)
script_test(lang_cli_excerpts_tests lang/cli/excerpts_test.py)
script_test(lang_cli_works_claims_tests lang/cli/works_claims_test.py)
script_test(lang_cli_works_joined_tests lang/cli/works_joined_test.py)
script_test(lang_cli_works_ports_tests lang/cli/works_ports_test.py)
script_test(lang_cli_works_chain_tests lang/cli/works_chain_test.py)
script_test(lang_cli_works_logic_tests lang/cli/works_logic_test.py)
script_test(lang_cli_tidy_tests lang/cli/tidy_test.py)
script_test(lang_cli_watch_tests lang/cli/watch_test.py)
script_test(approved_outputs approved/approved_test.py)
script_test(pictures pictures/pictures_test.py)
script_test(bills pictures/bill_test.py)
