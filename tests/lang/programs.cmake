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
          lang/grammar/judging_test.cpp lang/grammar/robustness_test.cpp
          lang/grammar/signals_test.cpp
  USES lang_grammar reading_of)
test_program(lang_syntax_tests SOURCES lang/syntax/print_test.cpp
  USES lang_syntax lang_grammar reading_of)
test_program(lang_check_tests
  SOURCES lang/check/judging_test.cpp lang/check/marks_test.cpp lang/check/names_test.cpp
          lang/check/ports_test.cpp lang/check/shape_test.cpp lang/check/signals_test.cpp
  USES lang_check lang_grammar)
test_program(lang_lower_tests SOURCES lang/lower/lower_test.cpp USES lang_lower)
test_program(lang_messages_tests SOURCES messages/messages_test.cpp USES lang_lower fmt::fmt)
