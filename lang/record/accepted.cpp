#include <algorithm>

#include "lang/record/record.hpp"

namespace leat::record {

std::string key_of(Route const& route) { return route.inlet + "/" + route.body; }

namespace {

// Of what there is now, in its order, what is accepted, else what was written of it; after that
// what was written of other things, unless it is accepted that they go.
template <class Entry, class Key>
std::vector<Entry> merged(std::vector<Entry> const& old, std::vector<Entry> const& now, Key key,
                          Keys const& keys) {
  std::vector<Entry> result;
  std::vector<bool> is_placed(old.size(), false);
  auto const place_old = [&](std::string const& wanted) {
    for (std::size_t i = 0; i < old.size(); ++i) {
      if (is_placed[i] || key(old[i]) != wanted) continue;
      is_placed[i] = true;
      if (!keys.holds(wanted)) result.push_back(old[i]);
    }
  };
  for (auto const& entry : now) {
    if (keys.holds(key(entry))) result.push_back(entry);
    place_old(key(entry));
  }
  for (auto const& entry : old) place_old(key(entry));
  return result;
}

}  // namespace

Junction accepted(Junction const& old, Junction const& now, Keys const& keys) {
  return {now.name, merged(old.routes, now.routes, key_of, keys),
          merged(
              old.findings, now.findings, [](Finding const& f) { return f.name; }, keys),
          keys.holds(times_key) ? now.times : old.times};
}

}  // namespace leat::record
