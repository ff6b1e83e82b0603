#include "engine/water/current.hpp"

namespace leat::water {

Current current_at(Moment const& now, Cell c) { return current_in(now, c); }

}  // namespace leat::water
