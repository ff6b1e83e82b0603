#include <fmt/format.h>

#include "lang/syntax/print.hpp"
#include "lang/syntax/wording.hpp"

// Lines of works, of numbers and of what is included or repeated.
namespace leat::syntax {

namespace {

template <class Setting>
std::string settings(char const* word, std::vector<Setting> const& all) {
  std::string shown;
  for (auto const& setting : all)
    shown += fmt::format("{} {} = {}", &setting == &all.front() ? word : ",", print(setting.name),
                         print(setting.value));
  return shown;
}

}  // namespace

Wording wording_of(IncludeDeclaration const& include) {
  return {{"include " + print(include.file)}};
}

Wording wording_of(NumberDeclaration const& number) {
  return {{"number " + print(number.name), "= " + print(number.value)}, Shape::number};
}

Wording wording_of(PlaceDeclaration const& place) {
  Wording wording{
      {"place " + place.design.text, "as " + print(place.name),
       fmt::format("at {} {} {}", print_bare(place.x), print_bare(place.y), print_bare(place.z))},
      Shape::place};
  std::string more;
  if (place.turned) more += " turned " + place.turned->text;
  if (place.mirrored) more += " mirrored";
  more += settings(" where", place.numbers) + settings(" with", place.signals);
  if (!more.empty()) wording.cells.push_back(more.substr(1));
  return wording;
}

Wording wording_of(JoinDeclaration const& join) {
  Wording wording{{"join " + print(join.outlet), "-> " + print(join.inlet)}, Shape::join};
  if (join.duration) wording.cells.push_back("taking " + print(*join.duration));
  return wording;
}

Wording wording_of(PortDeclaration const& port) {
  return {{port.is_outlet ? "outlet" : "inlet", print(port.name), "= " + print(port.port)},
          Shape::port};
}

std::string head_of(Loop const& loop) {
  return fmt::format("for {} in {}..{}", loop.variable.text, print(loop.first), print(loop.last));
}

std::string head_of(WorksDeclaration const& works) {
  auto const head = "works " + works.name.text;
  return works.title ? fmt::format("{} {}", head, print(*works.title)) : head;
}

}  // namespace leat::syntax
