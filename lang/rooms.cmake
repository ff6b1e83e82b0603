room(lang_source lang/source SOURCES code_point.cpp soundness.cpp source_text.cpp source_map.cpp
     USES engine_model)
room(lang_diagnostics lang/diagnostics SOURCES near_name.cpp sink.cpp USES lang_source)
room(lang_grammar lang/grammar
     SOURCES characters.cpp words.cpp reading.cpp faults.cpp terminals.cpp expression.cpp signals.cpp
             drawing.cpp judging.cpp expecting.cpp document.cpp
     USES lang_diagnostics fmt::fmt utf8proc Boost::headers)
room(lang_check lang/check SOURCES acceptances.cpp bodies_and_practice.cpp check.cpp
     constant_control.cpp drawing.cpp expectations.cpp marks.cpp materials.cpp meaning.cpp names.cpp
     plates.cpp ports.cpp resolving.cpp shape.cpp signals.cpp tables.cpp unknown_names.cpp
     wire_loops.cpp
     USES lang_diagnostics lang_source engine_model fmt::fmt)
room(lang_lower lang/lower SOURCES cells.cpp circuit_lowering.cpp lower.cpp words.cpp
     USES lang_grammar lang_check lang_diagnostics lang_source engine_model)
