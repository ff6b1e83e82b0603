room(lang_source lang/source
     SOURCES code_point.cpp placed_texts.cpp soundness.cpp source_map.cpp source_text.cpp
     USES engine_model)
room(lang_diagnostics lang/diagnostics
     SOURCES near_name.cpp sink.cpp
     USES lang_source)
room(lang_syntax lang/syntax
     SOURCES aligning.cpp breaking.cpp likeness.cpp line.cpp pieces.cpp print.cpp weaving.cpp wording.cpp
             works_wording.cpp
     USES lang_source fmt::fmt)
room(lang_grammar lang/grammar
     SOURCES characters.cpp clauses.cpp document.cpp drawing.cpp expecting.cpp expression.cpp faults.cpp
             judging.cpp names.cpp numbers.cpp reading.cpp signals.cpp terminals.cpp words.cpp works.cpp
     USES lang_diagnostics fmt::fmt utf8proc Boost::headers)
room(lang_check lang/check
     SOURCES acceptances.cpp bodies_and_practice.cpp check.cpp constant_control.cpp drawing.cpp
             events_and_trains.cpp expectations.cpp loops.cpp marks.cpp materials.cpp meaning.cpp names.cpp
             overlaps.cpp place_settings.cpp placing.cpp plain_entries.cpp plant_ports.cpp plates.cpp ports.cpp
             resolving.cpp scopes.cpp shape.cpp shared_cells.cpp signals.cpp tables.cpp unfold.cpp unfolded_blocks.cpp
             unknown_names.cpp wire_loops.cpp workshop.cpp
     USES lang_syntax lang_diagnostics engine_model fmt::fmt)
room(lang_lower lang/lower
     SOURCES cells.cpp circuit_lowering.cpp including.cpp lower.cpp matching.cpp plant.cpp words.cpp
     USES lang_grammar lang_check lang_diagnostics lang_source engine_model engine_logic engine_compare)

set(findings_manual ${CMAKE_BINARY_DIR}/generated/findings_manual.cpp)
add_custom_command(
  OUTPUT ${findings_manual}
  COMMAND ${CMAKE_COMMAND} -DTEXT=${CMAKE_SOURCE_DIR}/docs/findings.md -DSOURCE=${findings_manual}
          -P ${CMAKE_SOURCE_DIR}/lang/render/embed_manual.cmake
  DEPENDS ${CMAKE_SOURCE_DIR}/docs/findings.md ${CMAKE_SOURCE_DIR}/lang/render/embed_manual.cmake
  COMMENT "Embedding docs/findings.md")
set(page_files ${CMAKE_BINARY_DIR}/generated/page_files.cpp)
set(page_folder ${CMAKE_SOURCE_DIR}/lang/render/page)
set(page_scripts data.js elements.js address.js picture.js sources.js water.js travel.js bench.js walk.js desk.js main.js)
list(TRANSFORM page_scripts PREPEND ${page_folder}/script/ OUTPUT_VARIABLE page_script_files)
string(REPLACE ";" "," page_script_names "${page_scripts}")
add_custom_command(
  OUTPUT ${page_files}
  COMMAND ${CMAKE_COMMAND} -DFOLDER=${page_folder} -DSCRIPTS=${page_script_names} -DSOURCE=${page_files}
          -P ${page_folder}/embed_page.cmake
  DEPENDS ${page_script_files} ${page_folder}/page.html ${page_folder}/page.css ${page_folder}/embed_page.cmake
  COMMENT "Embedding lang/render/page")
room(lang_render lang/render
     SOURCES bill/bill_csv.cpp bill/bill_document.cpp bill/bill_sheet.cpp bill/bill_steps.cpp bill/bill_text.cpp
             check_report.cpp columns.cpp comparison_document.cpp comparison_sheet.cpp comparison_text.cpp
             completion.cpp condition.cpp count.cpp csv.cpp design_document.cpp diagnostic_text.cpp
             difference.cpp example.cpp expectation_text.cpp fate_words.cpp field_document.cpp field_text.cpp
             fill_words.cpp finding_pages.cpp finding_sentences.cpp finding_text.cpp findings_csv.cpp
             findings_document.cpp findings_junit.cpp findings_markdown.cpp findings_sarif.cpp found_again.cpp
             guard_document.cpp guard_text.cpp islands_text.cpp json.cpp level_picture.cpp look.cpp machine_document.cpp
             machine_dot.cpp machine_text.cpp manual.cpp markdown.cpp markup.cpp page/packed.cpp page/page.cpp
             page/page_data.cpp page/page_differences.cpp page/page_levels.cpp page/page_notes.cpp
             page/page_prose.cpp page/page_sources.cpp paragraph.cpp picture/level_svg.cpp
             picture/palette.cpp picture/pins.cpp picture/port_names.cpp picture/scene.cpp picture/sheet.cpp
             picture/sign_lines.cpp picture/symbols.cpp picture/ways.cpp run_words.cpp sarif_rules.cpp
             source_excerpt.cpp spots.cpp table_csv.cpp table_document.cpp table_expect.cpp table_lines.cpp
             table_markdown.cpp table_sheet.cpp table_text.cpp telling.cpp telling_works.cpp time_scale.cpp
             trail_document.cpp trail_text.cpp train_document.cpp train_text.cpp water_signs.cpp
             waves_document.cpp waves_text.cpp waves_vcd.cpp words.cpp works_condition.cpp works_questions.cpp
             works_report.cpp works_table.cpp xml.cpp
     USES engine_compare lang_source lang_diagnostics fmt::fmt utf8proc nlohmann_json::nlohmann_json engine_building engine_playback)
target_sources(lang_render PRIVATE ${findings_manual} ${page_files})
target_link_libraries(lang_render PRIVATE ZLIB::ZLIB libmd)
room(lang_record lang/record
     SOURCES accepted.cpp read_record.cpp recalling.cpp record_document.cpp recording.cpp
     USES lang_render nlohmann_json::nlohmann_json)
room(lang_cli lang/cli
     SOURCES bill.cpp body_ways.cpp check.cpp checked_file.cpp command_line/command_line.cpp
             command_line/judging.cpp command_line/looking.cpp command_line/outline.cpp command_line/reading.cpp
             command_line/shared_options.cpp command_line/shell.cpp command_line/showing.cpp
             command_line/signals.cpp command_line/writing.cpp compare.cpp compared.cpp
             completion.cpp cuts.cpp delivery.cpp design_files.cpp draw.cpp explain.cpp files.cpp follow.cpp
             guard.cpp held_record.cpp interruption.cpp judged.cpp loaded.cpp machine.cpp manual.cpp page.cpp
             parts.cpp picturing.cpp program.cpp record.cpp resolve.cpp script.cpp setting.cpp
             shared_acceptances.cpp show.cpp sights.cpp table.cpp terminal.cpp tidied.cpp tidy.cpp train.cpp verdict.cpp watch.cpp waves.cpp
             written_file.cpp
     USES lang_record lang_render lang_lower CLI11::CLI11 Threads::Threads)
target_compile_definitions(lang_cli PRIVATE LEAT_VERSION="${PROJECT_VERSION}")
add_executable(leat lang/cli/main.cpp)
target_link_libraries(leat PRIVATE lang_cli)
# The program starts cold each time, and designs are many small pieces, made and let go by several threads: the C++
# library is linked in, and memory comes from mimalloc. Sanitizers bring their own.
if(NOT LEAT_SANITIZE)
  find_package(mimalloc 2.0 REQUIRED)
  target_sources(leat PRIVATE lang/cli/memory.cpp)
  target_link_options(leat PRIVATE -static-libstdc++ -static-libgcc LINKER:--as-needed)
  target_link_libraries(leat PRIVATE -Wl,--no-as-needed mimalloc -Wl,--as-needed)
  if(fmt_VERSION VERSION_GREATER_EQUAL 9 AND fmt_VERSION VERSION_LESS 10)
    target_sources(leat PRIVATE lang/cli/fmt_within.cpp)
  endif()
endif()
