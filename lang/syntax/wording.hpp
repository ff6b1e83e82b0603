#pragma once
#include <string>
#include <string_view>
#include <vector>

#include "lang/syntax/document.hpp"
#include "lang/syntax/line.hpp"

// Each node that is one line, as that line.
namespace leat::syntax {

// The word that begins a declaration of the kind.
std::string_view keyword_of(SignalKind);

// In cells, which lines of one shape have below each other.
struct Wording {
  std::vector<std::string> cells;
  Shape shape = Shape::none;
};

Wording wording_of(IncludeDeclaration const&);
Wording wording_of(NumberDeclaration const&);
Wording wording_of(SignalDeclaration const&);
Wording wording_of(NeverDeclaration const&);
Wording wording_of(MaterialDeclaration const&);
Wording wording_of(MarkDeclaration const&);
Wording wording_of(PlaceDeclaration const&);
Wording wording_of(JoinDeclaration const&);
Wording wording_of(PortDeclaration const&);
Wording wording_of(BodyProperty const&);
Wording wording_of(PracticeSetting const&);
Wording wording_of(AcceptDeclaration const&);
Wording wording_of(Clause const&);

template <class Node>
std::string line_of(Node const& node) {
  return joined(wording_of(node).cells, " ");
}

// What stands before the brace of a block.
std::string head_of(Loop const&);
std::string head_of(LevelDeclaration const&);
std::string head_of(JunctionDeclaration const&);
std::string head_of(WorksDeclaration const&);
std::string head_of(ExpectDeclaration const&);
std::string head_of(TableDeclaration const&);

}  // namespace leat::syntax
