room(engine_model engine/model SOURCES grid.cpp practice.cpp)
