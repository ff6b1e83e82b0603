room(lang_source lang/source SOURCES source_text.cpp source_map.cpp USES engine_model)
room(lang_diagnostics lang/diagnostics SOURCES sink.cpp USES lang_source)
