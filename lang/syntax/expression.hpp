#pragma once
#include <string>
#include <vector>

#include "lang/source/source_text.hpp"

namespace leat::syntax {

using source::Span;

struct Word {
  std::string text;
  Span span;
};

// A whole number as written. Digits that do not fit are clamped and marked, so that the checks can say so.
struct Number {
  long value = 0;
  bool is_too_large = false;
  Span span;
};

// A quoted text, without its quotes.
struct Text {
  std::string text;
  Span span;
};

enum class ExpressionKind { constant, name, negation, conjunction, disjunction, parity };

// Recursive through the vector. A chain `a and b and c` is one node with three operands, so that long chains stay flat.
struct Expression {
  ExpressionKind kind = ExpressionKind::constant;
  bool value = false;  // constant
  std::string name;    // name
  std::vector<Expression> operands;
  Span span;
};

struct Duration {
  Number amount;
  Word unit;  // "ticks" (or "tick") or "s"
  Span span;
};

}  // namespace leat::syntax
