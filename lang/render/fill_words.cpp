#include "lang/render/fill_words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "lang/render/condition.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

// The inlets (or outlets) that cells of this fill belong to.
std::vector<std::string> ports_of(Subject const& subject, model::FillId id, IsMeant const& is_meant,
                                  std::vector<model::Port> const& ports,
                                  std::vector<source::Named> const& names) {
  std::vector<std::string> found;
  for (std::size_t p = 0; p < ports.size(); ++p) {
    auto const& cells = ports[p].cells;
    bool const is_there = std::any_of(cells.begin(), cells.end(), [&](model::Cell c) {
      return subject.design.fill_of[c] == id && (!is_meant || is_meant(c));
    });
    if (is_there) found.push_back(names[p].name);
  }
  return found;
}

}  // namespace

std::string fill_words(Subject const& subject, model::FillId id) {
  auto const& fill = subject.design.fills[id];
  auto const name = [&](model::MaterialId m) { return subject.map.materials[m].name; };
  if (!fill.is_switched()) return name(fill.powered);
  return fmt::format("{} when {} else {}", name(fill.powered),
                     expression_text(subject.design.circuit, subject.map.signals, *fill.control),
                     name(fill.unpowered));
}

std::string mark_words(Subject const& subject, model::FillId id, IsMeant const& is_meant) {
  auto const& design = subject.design;
  std::string text;
  auto const add = [&](std::vector<std::string> const& names, std::string_view role) {
    if (names.empty()) return;
    text +=
        fmt::format("{} {}, ", names.size() == 1 ? role : fmt::format("{}s", role), listed(names));
  };
  add(ports_of(subject, id, is_meant, design.inlets, subject.map.inlets), "inlet");
  add(ports_of(subject, id, is_meant, design.outlets, subject.map.outlets), "outlet");
  return text + fill_words(subject, id);
}

}  // namespace leat::render
