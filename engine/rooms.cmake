room(engine_model engine/model SOURCES arrangement.cpp grid.cpp practice.cpp)
room(engine_water engine/water
  SOURCES current.cpp holes.cpp intrinsic.cpp settle.cpp spread.cpp step.cpp
  USES engine_model)
