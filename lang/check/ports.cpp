#include "lang/check/ports.hpp"

#include <fmt/format.h>

#include <algorithm>
#include "lang/diagnostics/catalogue.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using syntax::MarkRole;

std::vector<PortName const*> drawn(PortNames const& ports, Drawing const& drawing) {
  std::vector<PortName const*> found;
  for (auto const& port : ports.all) {
    bool const is_drawn = std::any_of(port.marks.begin(), port.marks.end(),
                                      [&](auto mark) { return drawing.marks[mark].count > 0; });
    if (is_drawn) found.push_back(&port);
  }
  return found;
}

// Where nothing is drawn, where glyphs are undeclared, or where a port's mark is drawn nowhere at
// all, that is the cause, and it has been reported.
bool is_explained(PortNames const& ports, Reading const& reading, Drawing const& drawing) {
  auto const& file = reading.names.files[drawing.file];
  bool const is_blank = std::none_of(drawing.marks.begin(), drawing.marks.end(),
                                     [](MarkUse const& use) { return use.count > 0; });
  return !reading.is_whole || is_blank || !drawing.strays.empty() ||
         (file.junctions.size() == 1 && !ports.all.empty());
}

void report_none(Reading const& reading, Drawing const& drawing, bool is_inlet) {
  auto const* word = is_inlet ? "inlet" : "outlet";
  reading.sink.report({is_inlet ? Listed("no-inlet") : Listed("no-outlet"),
                       fmt::format("Junction '{}' has no {}", drawing.junction->name.text, word),
                       {drawing.junction->name.span,
                        is_inlet ? "no cell of this junction lets a body in"
                                 : "a body has nowhere to leave this "
                                   "junction",
                        {}},
                       {},
                       fmt::format("Give a mark the role '{} NAME' and draw it.", word)});
}

void report_closed(Reading const& reading, syntax::MarkDeclaration const& mark,
                   std::string const& material) {
  auto const* word = mark.role == MarkRole::inlet ? "inlet" : "outlet";
  reading.sink.report(
      {mark.role == MarkRole::inlet ? Listed("inlet-in-rock") : Listed("outlet-in-rock"),
       fmt::format("The {} '{}' is closed for ever: no body may enter {}", word,
                   mark.role_name.text, material),
       {mark.choice->span, fmt::format("no body may be in {}", material), {}},
       {{mark.role_name.span, fmt::format("the {} is declared here", word), {}}},
       fmt::format("Leave 'in {}' away, or name a material that bodies may enter.", material)});
}

}  // namespace

Ports read_ports(Reading const& reading, Drawing const& drawing) {
  auto const& file = reading.names.files[drawing.file];
  Ports ports{drawn(file.inlets, drawing), drawn(file.outlets, drawing)};
  if (ports.inlets.empty() && !is_explained(file.inlets, reading, drawing))
    report_none(reading, drawing, true);
  if (ports.outlets.empty() && !is_explained(file.outlets, reading, drawing))
    report_none(reading, drawing, false);
  return ports;
}

void check_port_materials(Reading const& reading, std::vector<MarkFill> const& fills,
                          std::vector<model::Material> const& materials) {
  for (std::size_t at = 0; at < fills.size(); ++at) {
    auto const& mark = *reading.names.marks[at];
    auto const& fill = fills[at];
    bool const is_port = mark.role == MarkRole::inlet || mark.role == MarkRole::outlet;
    if (!is_port || !mark.choice || !fill.is_sound) continue;
    if (materials[fill.powered].body_enters || materials[fill.unpowered].body_enters) continue;
    report_closed(
        reading, mark,
        mark.choice->otherwise && mark.choice->otherwise->text != mark.choice->material.text
            ? fmt::format("{} or {}", mark.choice->material.text, mark.choice->otherwise->text)
            : mark.choice->material.text);
  }
}

}  // namespace leat::check
