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
  Writer& operator<<(Word const& word) { return *this << word.text; }
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
    if (node.kind == ExpressionKind::name) return *this << node.name;
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

  Writer& operator<<(SignalsDeclaration const& node) { return *this << "signals" << node.signals; }
  Writer& operator<<(MaterialsDeclaration const& node) {
    return *this << "materials" << node.materials;
  }
  Writer& operator<<(MarksDeclaration const& node) { return *this << "marks" << node.marks; }
  Writer& operator<<(PracticeDeclaration const& node) {
    return *this << "practice" << node.settings;
  }
  Writer& operator<<(JunctionDeclaration const& node) {
    return *this << "junction " << node.name << " title:" << node.title
                 << " outside:" << node.outside << node.levels;
  }
  Writer& operator<<(BodyDeclaration const& node) {
    return *this << "body " << node.name << node.properties;
  }
  Writer& operator<<(AcceptDeclaration const& node) {
    return *this << "accept " << node.finding << " place:" << node.place
                 << " when:" << node.condition << " because:" << node.reason;
  }
  Writer& operator<<(ExpectDeclaration const& node) {
    return *this << "expect title:" << node.title << " of:" << node.junction << node.clauses;
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
