#include "lang/check/plant_ports.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "lang/check/clause_subject.hpp"
#include "lang/check/signals.hpp"
#include "lang/diagnostics/catalogue.hpp"
#include "lang/diagnostics/near_name.hpp"

namespace leat::check {

namespace {

using diagnostics::Listed;
using Named = ByName<std::size_t>;

constexpr std::size_t most_listed = 8, most_compared = 500;

// "q.a.kiln" of "q.kiln": the same port of what a works places in the same place.
bool lies_within(std::string_view name, std::string_view asked) {
  auto const place = asked.find('.'), port = asked.rfind('.');
  return place != std::string_view::npos && name.size() > asked.size() &&
         name.starts_with(asked.substr(0, place + 1)) && name.ends_with(asked.substr(port));
}

std::string remedy_for(syntax::Word const& word, Named const& known) {
  std::vector<std::string> names;
  for (auto const& [name, id] : known) names.push_back(name);
  std::sort(names.begin(), names.end());
  auto const within = std::find_if(names.begin(), names.end(),
                                   [&](auto const& name) { return lies_within(name, word.text); });
  if (within != names.end()) return fmt::format("Perhaps '{}' is meant.", *within);
  names.resize(std::min(names.size(), most_compared));
  if (auto const near = diagnostics::near_name(word.text, names))
    return fmt::format("The nearest known name is '{}'.", *near);
  if (names.empty() || names.size() > most_listed)
    return "Name a place and a port of what is placed, such as 'first.kiln'.";
  std::string list;
  for (auto const& name : names) list += (list.empty() ? "" : ", ") + name;
  return fmt::format("Known here: {}.", list);
}

std::optional<std::size_t> find(Reading const& reading, syntax::Word const& word,
                                PlantContent const& content, bool is_outlet) {
  auto const& known = is_outlet ? content.outlets : content.inlets;
  auto const& others = is_outlet ? content.inlets : content.outlets;
  if (auto const found = known.find(word.text); found != known.end()) return found->second;
  if (!reading.is_whole || content.left_out.count(word.text.substr(0, word.text.find('.'))) != 0)
    return std::nullopt;
  bool const is_other = others.count(word.text) != 0;
  auto const* kind = is_outlet ? "outlet" : "inlet";
  reading.sink.report(
      {is_outlet ? Listed("unknown-outlet") : Listed("unknown-inlet"),
       is_other ? fmt::format("'{}' is an {}, where an {} is wanted", word.text,
                              is_outlet ? "inlet" : "outlet", kind)
                : fmt::format("The works has no {} '{}'", kind, word.text),
       {word.span, fmt::format("an {} of something placed is wanted here", kind), {}},
       {},
       remedy_for(word, known)});
  return std::nullopt;
}

class Connecting {
 public:
  Connecting(Reading const& reading, int ticks_a_second, Plant& plant, PlantContent& content)
      : reading_(reading), ticks_a_second_(ticks_a_second), plant_(plant), content_(content) {}

  bool join(syntax::JoinDeclaration const& declaration) {
    auto const outlet = find(reading_, declaration.outlet, content_, true);
    auto const inlet = find(reading_, declaration.inlet, content_, false);
    if (!outlet || !inlet) return false;
    if (plant_.outlets[*outlet].is_joined) {
      auto const known =
          std::find_if(plant_.joins.begin(), plant_.joins.end(),
                       [&](Channel const& channel) { return channel.outlet == *outlet; });
      reading_.sink.report({Listed("joined-twice"),
                            fmt::format("The outlet '{}' is joined twice", declaration.outlet.text),
                            {declaration.span, "it is joined here again", {}},
                            {{known->span, "it is first joined here", {}}},
                            "A channel leads to one place: remove one of the joins. Many outlets "
                            "may be joined to one "
                            "inlet."});
      return false;
    }
    Channel channel{*outlet, *inlet, std::nullopt, declaration.span};
    if (declaration.duration) {
      if (!is_in_range(reading_, *declaration.duration, "The join", ticks_a_second_)) return false;
      channel.ticks = ticks_of(*declaration.duration, ticks_a_second_);
    }
    plant_.outlets[*outlet].is_joined = true;
    plant_.inlets[*inlet].is_joined = true;
    plant_.joins.push_back(channel);
    return true;
  }

  bool name(syntax::PortDeclaration const& declaration, std::string const& path) {
    auto const port = find(reading_, declaration.port, content_, declaration.is_outlet);
    if (!port) return false;
    auto& known = declaration.is_outlet ? content_.outlets : content_.inlets;
    auto const& own = declaration.name.text;
    if (!declaration.is_outlet && path.empty() && is_body(own, reading_.names))
      return refuse(declaration,
                    fmt::format("The inlet '{}' takes a name that is also the name of a body", own),
                    fmt::format("'{}' is also the name of a body", own));
    if (!known.emplace(own, *port).second)
      return refuse(declaration,
                    fmt::format("The works has two {}s '{}'", kind_of(declaration), own),
                    "this name is already given to another one");
    auto& named = declaration.is_outlet ? plant_.outlets[*port] : plant_.inlets[*port];
    named.name = {path.empty() ? own : path + "." + own, declaration.span};
    return true;
  }

 private:
  static char const* kind_of(syntax::PortDeclaration const& declaration) {
    return declaration.is_outlet ? "outlet" : "inlet";
  }

  bool refuse(syntax::PortDeclaration const& declaration, std::string headline, std::string label) {
    reading_.sink.report({Listed("name-taken"),
                          std::move(headline),
                          {declaration.name.span, std::move(label), {}},
                          {},
                          fmt::format("Give the {} another name.", kind_of(declaration))});
    return false;
  }

  Reading const& reading_;
  int ticks_a_second_;
  Plant& plant_;
  PlantContent& content_;
};

}  // namespace

bool connect(Reading const& reading, syntax::WorksDeclaration const& works, std::string const& path,
             int ticks_a_second, Plant& plant, PlantContent& content) {
  Connecting connecting(reading, ticks_a_second, plant, content);
  bool is_sound = true;
  for (auto const& item : works.items) {
    if (auto const* join = std::get_if<syntax::JoinDeclaration>(&item))
      is_sound = connecting.join(*join) && is_sound;
    if (auto const* port = std::get_if<syntax::PortDeclaration>(&item))
      is_sound = connecting.name(*port, path) && is_sound;
  }
  return is_sound;
}

}  // namespace leat::check
