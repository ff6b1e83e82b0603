#pragma once
#include <string>
#include <string_view>
#include <vector>

// The words of the language.
namespace leat::grammar {

// Words that begin a declaration.
std::vector<std::string> const& declaration_words();

// Words that cannot be names, for a name could stand where they do. Words that only ever stand
// where no name could (`place`, `join`, `turned`, `mod`, ...) can be names.
bool is_reserved(std::string_view word);

}  // namespace leat::grammar
