room(engine_model engine/model SOURCES arrangement.cpp grid.cpp practice.cpp)
room(engine_logic engine/logic SOURCES cover.cpp row_set.cpp truth.cpp USES engine_model)
room(engine_water engine/water
  SOURCES current.cpp holes.cpp intrinsic.cpp settle.cpp spread.cpp step.cpp
  USES engine_model)
room(engine_body engine/body
  SOURCES moves.cpp outcome.cpp route_graph.cpp shape.cpp surroundings.cpp trail.cpp
  USES engine_water)
target_link_libraries(engine_body PRIVATE Boost::headers)
