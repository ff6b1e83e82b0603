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

std::string line_of(IncludeDeclaration const& include) { return "include " + print(include.file); }

std::string line_of(NumberDeclaration const& number) {
  return fmt::format("number {} = {}", print(number.name), print(number.value));
}

std::string line_of(PlaceDeclaration const& place) {
  auto line = fmt::format("place  {} as {} at {} {} {}", place.design.text, print(place.name),
                          print_bare(place.x), print_bare(place.y), print_bare(place.z));
  if (place.turned) line += " turned " + place.turned->text;
  if (place.mirrored) line += " mirrored";
  return line + settings(" where", place.numbers) + settings(" with", place.signals);
}

std::string line_of(JoinDeclaration const& join) {
  auto const line = fmt::format("join   {} -> {}", print(join.outlet), print(join.inlet));
  return join.duration ? fmt::format("{} taking {}", line, print(*join.duration)) : line;
}

std::string line_of(PortDeclaration const& port) {
  return fmt::format("{:<6} {} = {}", port.is_outlet ? "outlet" : "inlet", print(port.name),
                     print(port.port));
}

std::string head_of(Loop const& loop) {
  return fmt::format("for {} in {}..{}", loop.variable.text, print(loop.first), print(loop.last));
}

std::string head_of(WorksDeclaration const& works) {
  auto const head = "works " + works.name.text;
  return works.title ? fmt::format("{} {}", head, print(*works.title)) : head;
}

}  // namespace leat::syntax
