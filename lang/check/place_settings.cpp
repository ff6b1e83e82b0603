#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "lang/check/placing.hpp"
#include "lang/check/signals.hpp"
#include "lang/diagnostics/catalogue.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using syntax::PlaceDeclaration;

// What `where` and `with` give has a name each; said again, one of the two would be lost.
template <class Setting>
bool are_given_once(Reading const& reading, PlaceDeclaration const& place,
                    std::vector<Setting> const& settings) {
  std::map<std::string_view, source::Span> given;
  bool is_fine = true;
  for (auto const& setting : settings) {
    auto const [first, is_new] = given.emplace(setting.name.text, setting.name.span);
    if (is_new) continue;
    is_fine = false;
    reading.sink.report(
        {Listed("said-twice"),
         fmt::format("The place '{}' gives '{}' twice", place.name.text, setting.name.text),
         {setting.name.span, fmt::format("'{}' is given here again", setting.name.text), {}},
         {{first->second, fmt::format("'{}' is first given here", setting.name.text), {}}},
         "Remove one of them."});
  }
  return is_fine;
}

bool check_numbers(Reading const& reading, PlaceDeclaration const& place,
                   std::vector<syntax::Word> const& known) {
  bool is_fine = are_given_once(reading, place, place.numbers);
  for (auto const& number : place.numbers) {
    bool const is_there = std::any_of(known.begin(), known.end(), [&](auto const& word) {
      return word.text == number.name.text;
    });
    if (is_there) continue;
    is_fine = false;
    std::string list;
    for (auto const& word : known) list += (list.empty() ? "" : ", ") + word.text;
    reading.sink.report(
        {Listed("unknown-number"),
         fmt::format("'{}' has no number '{}'", place.design.text, number.name.text),
         {number.name.span,
          fmt::format("'{}' is not declared in '{}'", number.name.text, place.design.text),
          {}},
         {},
         list.empty() ? fmt::format("Declare it there: 'number {} = ...'.", number.name.text)
                      : fmt::format("It has: {}.", list)});
  }
  return is_fine;
}

bool check_signals(Reading const& reading, PlaceDeclaration const& place) {
  bool is_fine = are_given_once(reading, place, place.signals);
  for (auto const& setting : place.signals) {
    if (!reading.names.signals.find(setting.name.text)) {
      reading.unknown.add(NameKind::signal, setting.name);
      is_fine = false;
    }
    for_each_name(setting.value, [&](syntax::Expression const& name) {
      if (reading.names.signals.find(name.name)) return;
      reading.unknown.add(NameKind::signal, {name.name, name.span});
      is_fine = false;
    });
  }
  return is_fine;
}

}  // namespace

bool check_settings(Reading const& reading, PlaceDeclaration const& place,
                    std::vector<syntax::Word> const& known) {
  bool const are_numbers_fine = check_numbers(reading, place, known);
  return check_signals(reading, place) && are_numbers_fine;
}

}  // namespace leat::check
