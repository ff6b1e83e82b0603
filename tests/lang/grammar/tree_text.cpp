#include "tests/lang/grammar/tree_text.hpp"

#include <array>
#include <sstream>

namespace leat::tests {

namespace {

using namespace syntax;

struct Writer {
  std::ostringstream out;

  Writer& operator<<(std::string const& text) {
    out << text;
    return *this;
  }
  Writer& operator<<(char const* text) {
    out << text;
    return *this;
  }
  Writer& operator<<(NumberExpression const& node) {
    static constexpr std::array kinds{"", "", "neg", "+", "-", "*", "/", "mod", "^"};
    if (node.kind == NumberKind::literal) return *this << node.literal;
    if (node.kind == NumberKind::name) return *this << node.name;
    *this << kinds.at(static_cast<std::size_t>(node.kind)) << "(";
    for (auto const& operand : node.operands)
      *this << (&operand == &node.operands.front() ? "" : ",") << operand;
    return *this << ")";
  }
  // A name, then its numbers in brackets, each with its place in the name.
  Writer& put_name(std::string const& text, std::vector<Index> const& indices) {
    *this << text;
    for (auto const& index : indices)
      *this << "@" << std::to_string(index.at) << "[" << index.value << "]";
    return *this;
  }
  Writer& operator<<(Word const& word) { return put_name(word.text, word.indices); }
  Writer& operator<<(Text const& text) { return *this << "\"" << text.text << "\""; }
  Writer& operator<<(Number const& number) {
    out << number.value << (number.is_too_large ? "!" : "");
    return *this;
  }
  Writer& operator<<(Duration const& duration) { return *this << duration.amount << duration.unit; }
  Writer& operator<<(PlaceReference const& place) {
    return *this << "(" << place.junction << "," << place.x << "," << place.y << "," << place.z
                 << ")";
  }
  Writer& operator<<(Expression const& node) {
    static constexpr std::array kinds{"", "", "not", "and", "or", "xor"};
    if (node.kind == ExpressionKind::constant) return *this << (node.value ? "ON" : "OFF");
    if (node.kind == ExpressionKind::name) return put_name(node.name, node.indices);
    *this << kinds.at(static_cast<std::size_t>(node.kind)) << "(";
    for (auto const& operand : node.operands)
      *this << (&operand == &node.operands.front() ? "" : ",") << operand;
    return *this << ")";
  }
  template <class Value>
  Writer& operator<<(std::optional<Value> const& value) {
    return value ? *this << *value : *this << "_";
  }
  template <class Value>
  Writer& operator<<(std::vector<Value> const& values) {
    return put_all(values);
  }
  template <class Value>
  Writer& operator<<(std::deque<Value> const& values) {
    return put_all(values);
  }
  template <class Values>
  Writer& put_all(Values const& values) {
    *this << "[";
    for (auto const& value : values) *this << (&value == &values.front() ? "" : "; ") << value;
    return *this << "]";
  }

  Writer& operator<<(SignalDeclaration const& node) {
    static constexpr std::array kinds{"lever", "button", "plate", "wire",
                                      "latch", "toggle", "clock"};
    return *this << kinds.at(static_cast<std::size_t>(node.kind)) << " " << node.name
                 << " on:" << node.on << " off:" << node.off << " for:" << node.duration
                 << " starts:" << node.starts;
  }
  Writer& operator<<(MaterialDeclaration const& node) { return *this << node.name << node.traits; }
  Writer& operator<<(MaterialChoice const& node) {
    return *this << node.material << "?" << node.control << ":" << node.otherwise;
  }
  Writer& operator<<(MarkDeclaration const& node) {
    static constexpr std::array roles{"none", "inlet", "outlet", "plate"};
    return *this << node.glyph << " " << roles.at(static_cast<std::size_t>(node.role)) << " "
                 << node.role_name << " " << node.choice;
  }
  Writer& operator<<(Row const& node) { return *this << "|" << node.text << "|"; }
  Writer& operator<<(LevelDeclaration const& node) {
    return *this << node.lowest << ".." << node.highest << node.rows;
  }
  Writer& operator<<(BodyProperty const& node) { return *this << node.name << "=" << node.value; }
  Writer& operator<<(PracticeSetting const& node) {
    return *this << node.name << "=" << node.value;
  }
  Writer& operator<<(Clause const& node) {
    static constexpr std::array kinds{"reaches", "may_reach", "never_reaches", "never_state",
                                      "clears",  "deals",     "findings_none", "finds"};
    if (!node.events.empty()) *this << "after:" << node.events << " ";
    *this << kinds.at(static_cast<std::size_t>(node.kind)) << " body:" << node.body
          << " subject:" << node.subject << " object:" << node.object << " place:" << node.place
          << " when:" << node.condition << (node.is_otherwise ? " otherwise" : "");
    if (!node.dealt.empty()) *this << " dealt:" << node.dealt;
    if (node.duration) *this << " time:" << node.duration;
    if (node.rounds) *this << " rounds:" << node.rounds;
    return *this;
  }
  Writer& operator<<(TableRow const& node) {
    return *this << node.settings << "->" << node.outlets;
  }

  Writer& operator<<(IncludeDeclaration const& node) { return *this << "include " << node.file; }
  Writer& operator<<(NumberDeclaration const& node) {
    return *this << "number " << node.name << "=" << node.value;
  }
  Writer& operator<<(Loop const& node) {
    return *this << node.variable << ":" << node.first << ".." << node.last << " "
                 << std::to_string(node.begin) << "-" << std::to_string(node.end)
                 << (node.never_end > 0 ? " never " + std::to_string(node.never_begin) + "-" +
                                              std::to_string(node.never_end)
                                        : "");
  }
  Writer& operator<<(NeverDeclaration const& node) { return *this << node.condition; }
  Writer& operator<<(NumberSetting const& node) { return *this << node.name << "=" << node.value; }
  Writer& operator<<(SignalSetting const& node) { return *this << node.name << "=" << node.value; }
  Writer& operator<<(PlaceDeclaration const& node) {
    return *this << "place " << node.design << " " << node.name << "(" << node.x << "," << node.y
                 << "," << node.z << ") turned:" << node.turned << " mirrored:" << node.mirrored
                 << node.numbers << node.signals;
  }
  Writer& operator<<(JoinDeclaration const& node) {
    return *this << "join " << node.outlet << " " << node.inlet << " " << node.duration;
  }
  Writer& operator<<(PortDeclaration const& node) {
    return *this << (node.is_outlet ? "outlet " : "inlet ") << node.name << "=" << node.port;
  }
  Writer& operator<<(WorksItem const& node) {
    return std::visit([&](auto const& inner) -> Writer& { return *this << inner; }, node);
  }
  Writer& operator<<(WorksDeclaration const& node) {
    return *this << "works " << node.name << " title:" << node.title << " outside:" << node.outside
                 << node.items << put_loops(node.loops);
  }
  // Nothing where there are none.
  static std::string put_loops(std::vector<Loop> const& loops) {
    if (loops.empty()) return {};
    Writer writer;
    writer << " loops" << loops;
    return writer.out.str();
  }
  Writer& operator<<(SignalsDeclaration const& node) {
    *this << "signals" << node.signals << put_loops(node.loops);
    return node.nevers.empty() ? *this : *this << " never" << node.nevers;
  }
  Writer& operator<<(MaterialsDeclaration const& node) {
    return *this << "materials" << node.materials;
  }
  Writer& operator<<(MarksDeclaration const& node) { return *this << "marks" << node.marks; }
  Writer& operator<<(PracticeDeclaration const& node) {
    return *this << "practice" << node.settings;
  }
  Writer& operator<<(JunctionDeclaration const& node) {
    *this << "junction " << node.name << " title:" << node.title << " outside:" << node.outside;
    if (!node.numbers.empty()) *this << " numbers" << node.numbers;
    return *this << node.levels;
  }
  Writer& operator<<(BodyDeclaration const& node) {
    return *this << "body " << node.name << node.properties;
  }
  Writer& operator<<(AcceptDeclaration const& node) {
    return *this << "accept " << node.finding << " place:" << node.place
                 << " when:" << node.condition << " because:" << node.reason;
  }
  Writer& operator<<(ExpectDeclaration const& node) {
    return *this << "expect title:" << node.title << " of:" << node.junction << node.clauses
                 << put_loops(node.loops);
  }
  Writer& operator<<(TableDeclaration const& node) {
    return *this << "table body:" << node.body << " inlet:" << node.inlet << " of:" << node.junction
                 << node.headings << node.rows;
  }
  Writer& operator<<(Declaration const& node) {
    return std::visit([&](auto const& inner) -> Writer& { return *this << inner; }, node);
  }
};

template <class Node>
std::string text_of(Node const& node) {
  Writer writer;
  writer << node;
  return writer.out.str();
}

}  // namespace

std::string tree_text(Expression const& node) { return text_of(node); }
std::string tree_text(Declaration const& node) { return text_of(node); }
std::string tree_text(Document const& document) {
  std::string text = "leat " + std::to_string(document.edition.value) + "\n";
  for (auto const& node : document.declarations) text += tree_text(node) + "\n";
  return text;
}

}  // namespace leat::tests
