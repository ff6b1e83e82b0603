#pragma once
#include <string>
#include <string_view>

#include "lang/syntax/document.hpp"

// Each node that is one line, as that line.
namespace leat::syntax {

// The word that begins a declaration of the kind.
std::string_view keyword_of(SignalKind);

std::string line_of(IncludeDeclaration const&);
std::string line_of(NumberDeclaration const&);
std::string line_of(SignalDeclaration const&);
std::string line_of(NeverDeclaration const&);
std::string line_of(MaterialDeclaration const&);
std::string line_of(MarkDeclaration const&);
std::string line_of(PlaceDeclaration const&);
std::string line_of(JoinDeclaration const&);
std::string line_of(PortDeclaration const&);
std::string line_of(BodyProperty const&);
std::string line_of(PracticeSetting const&);
std::string line_of(AcceptDeclaration const&);
std::string line_of(Clause const&);

// What stands before the brace of a block.
std::string head_of(Loop const&);
std::string head_of(LevelDeclaration const&);
std::string head_of(JunctionDeclaration const&);
std::string head_of(WorksDeclaration const&);
std::string head_of(ExpectDeclaration const&);
std::string head_of(TableDeclaration const&);

}  // namespace leat::syntax
