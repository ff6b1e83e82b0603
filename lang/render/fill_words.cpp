#include "lang/render/fill_words.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "lang/render/condition.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

// The inlets (or outlets) that cells of this fill belong to, in their order.
std::vector<std::string> ports_of(Subject const& subject, model::FillId fill,
                                  std::vector<PortCell> const& meant, bool is_outlet) {
  std::set<std::uint32_t> ids;
  for (auto const& port : meant) {
    if (port.is_outlet == is_outlet && subject.design.fill_of[port.cell] == fill)
      ids.insert(port.id);
  }
  auto const& names = is_outlet ? subject.map.outlets : subject.map.inlets;
  std::vector<std::string> found;
  for (auto id : ids) found.push_back(names[id].name);
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

std::vector<PortCell> port_cells(model::Design const& design) {
  std::vector<PortCell> found;
  auto const add = [&](std::vector<model::Port> const& ports, bool is_outlet) {
    for (std::uint32_t id = 0; id < ports.size(); ++id)
      for (auto cell : ports[id].cells) found.push_back({cell, is_outlet, id});
  };
  add(design.inlets, false);
  add(design.outlets, true);
  std::sort(found.begin(), found.end());
  return found;
}

std::string mark_words(Subject const& subject, model::FillId id,
                       std::vector<PortCell> const& meant) {
  std::string text;
  auto const add = [&](std::vector<std::string> const& names, std::string_view role) {
    if (names.empty()) return;
    text +=
        fmt::format("{} {}, ", names.size() == 1 ? role : fmt::format("{}s", role), listed(names));
  };
  add(ports_of(subject, id, meant, false), "inlet");
  add(ports_of(subject, id, meant, true), "outlet");
  return text + fill_words(subject, id);
}

}  // namespace leat::render
