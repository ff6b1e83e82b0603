#include "engine/playback/patches.hpp"

namespace leat::playback {

Patch difference(Patch const& before, Patch const& after) {
  Patch patch;
  auto old = before.begin();
  for (auto const& now : after) {
    for (; old != before.end() && old->at < now.at; ++old) patch.push_back({old->at, 0});
    bool const was_there = old != before.end() && old->at == now.at;
    if (!was_there || old->to != now.to) patch.push_back(now);
    if (was_there) ++old;
  }
  for (; old != before.end(); ++old) patch.push_back({old->at, 0});
  return patch;
}

}  // namespace leat::playback
