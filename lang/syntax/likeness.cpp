#include "lang/syntax/likeness.hpp"

#include <algorithm>
#include <concepts>
#include <tuple>
#include <type_traits>
#include <utility>

namespace leat::syntax {

namespace {

// ---- what each node says: its fields without its spans ----

auto said(Number const& n) { return std::tie(n.value, n.is_too_large); }
auto said(NumberExpression const& n) { return std::tie(n.kind, n.literal, n.name, n.operands); }
auto said(Index const& n) { return std::tie(n.at, n.value); }
auto said(Word const& n) { return std::tie(n.text, n.indices); }
auto said(Text const& n) { return std::tie(n.text); }
auto said(Expression const& n) { return std::tie(n.kind, n.value, n.name, n.indices, n.operands); }
auto said(Duration const& n) { return std::tie(n.amount, n.unit); }
auto said(NumberDeclaration const& n) { return std::tie(n.name, n.value); }
auto said(Loop const& n) {
  return std::tie(n.variable, n.first, n.last, n.begin, n.end, n.never_begin, n.never_end);
}
auto said(IncludeDeclaration const& n) { return std::tie(n.file); }
auto said(SignalDeclaration const& n) {
  return std::tie(n.kind, n.name, n.on, n.off, n.duration, n.starts);
}
auto said(NeverDeclaration const& n) { return std::tie(n.condition); }
auto said(MaterialDeclaration const& n) { return std::tie(n.name, n.traits); }
auto said(MaterialChoice const& n) { return std::tie(n.material, n.control, n.otherwise); }
auto said(MarkDeclaration const& n) { return std::tie(n.glyph, n.role, n.role_name, n.choice); }
auto said(Row const& n) { return std::tie(n.text); }
auto said(LevelDeclaration const& n) { return std::tie(n.lowest, n.highest, n.rows); }
auto said(JunctionDeclaration const& n) {
  return std::tie(n.name, n.title, n.outside, n.numbers, n.levels);
}
auto said(NumberSetting const& n) { return std::tie(n.name, n.value); }
auto said(SignalSetting const& n) { return std::tie(n.name, n.value); }
auto said(PlaceDeclaration const& n) {
  return std::tie(n.design, n.name, n.x, n.y, n.z, n.turned, n.mirrored, n.numbers, n.signals);
}
auto said(JoinDeclaration const& n) { return std::tie(n.outlet, n.inlet, n.duration); }
auto said(PortDeclaration const& n) { return std::tie(n.is_outlet, n.name, n.port); }
auto said(WorksDeclaration const& n) {
  return std::tie(n.name, n.title, n.outside, n.items, n.loops);
}
auto said(BodyProperty const& n) { return std::tie(n.name, n.value); }
auto said(BodyDeclaration const& n) { return std::tie(n.name, n.properties); }
auto said(PracticeSetting const& n) { return std::tie(n.name, n.value); }
auto said(PlaceReference const& n) { return std::tie(n.junction, n.x, n.y, n.z); }
auto said(AcceptDeclaration const& n) {
  return std::tie(n.finding, n.place, n.condition, n.reason);
}
auto said(Clause const& n) {
  return std::tie(n.kind, n.events, n.body, n.subject, n.object, n.dealt, n.duration, n.rounds,
                  n.place, n.condition, n.is_otherwise);
}
auto said(ExpectDeclaration const& n) { return std::tie(n.title, n.junction, n.clauses, n.loops); }
auto said(TableRow const& n) { return std::tie(n.settings, n.outlets); }
auto said(TableDeclaration const& n) {
  return std::tie(n.body, n.inlet, n.junction, n.headings, n.rows);
}
auto said(SignalsDeclaration const& n) { return std::tie(n.signals, n.nevers, n.loops); }
auto said(MaterialsDeclaration const& n) { return std::tie(n.materials); }
auto said(MarksDeclaration const& n) { return std::tie(n.marks); }
auto said(PracticeDeclaration const& n) { return std::tie(n.settings); }
auto said(Document const& n) { return std::tie(n.edition, n.declarations); }

// ---- and whether two say the same ----

template <class Node>
concept Plain = std::equality_comparable<Node> &&
    (std::is_arithmetic_v<Node> || std::is_enum_v<Node> || std::is_same_v<Node, std::string>);

template <class Value>
inline constexpr bool is_list = false;
template <class Value>
inline constexpr bool is_list<std::vector<Value>> = true;
template <class Value>
inline constexpr bool is_list<std::deque<Value>> = true;
template <class Value>
concept List = is_list<Value>;

template <Plain Value>
bool is_same(Value const& one, Value const& other);
template <class Value>
bool is_same(std::optional<Value> const& one, std::optional<Value> const& other);
template <List Values>
bool is_same(Values const& one, Values const& other);
template <class... Values>
bool is_same(std::variant<Values...> const& one, std::variant<Values...> const& other);
template <class Node>
requires requires(Node const& node) { said(node); }
bool is_same(Node const& one, Node const& other);

template <Plain Value>
bool is_same(Value const& one, Value const& other) {
  return one == other;
}

template <class Value>
bool is_same(std::optional<Value> const& one, std::optional<Value> const& other) {
  return one.has_value() == other.has_value() && (!one || is_same(*one, *other));
}

template <List Values>
bool is_same(Values const& one, Values const& other) {
  return std::equal(one.begin(), one.end(), other.begin(), other.end(),
                    [](auto const& a, auto const& b) { return is_same(a, b); });
}

template <class... Values>
bool is_same(std::variant<Values...> const& one, std::variant<Values...> const& other) {
  return one.index() == other.index() && std::visit(
                                             [&](auto const& node) {
                                               using Node = std::decay_t<decltype(node)>;
                                               return is_same(node, std::get<Node>(other));
                                             },
                                             one);
}

template <class Node>
requires requires(Node const& node) { said(node); }
bool is_same(Node const& one, Node const& other) {
  auto const own = said(one), theirs = said(other);
  return [&]<std::size_t... I>(std::index_sequence<I...>) {
    return (is_same(std::get<I>(own), std::get<I>(theirs)) && ...);
  }
  (std::make_index_sequence<std::tuple_size_v<decltype(own)>>());
}

}  // namespace

bool are_alike(Document const& one, Document const& other) { return is_same(one, other); }

}  // namespace leat::syntax
