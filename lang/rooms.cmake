room(lang_source lang/source SOURCES code_point.cpp soundness.cpp source_text.cpp source_map.cpp
     USES engine_model)
room(lang_diagnostics lang/diagnostics SOURCES near_name.cpp sink.cpp USES lang_source)
