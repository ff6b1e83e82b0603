#pragma once
#include <string>
#include <string_view>
#include <vector>

// The words of the language.
namespace leat::grammar {

// Words that begin a declaration, those of later editions included.
std::vector<std::string> const& declaration_words();

// Words that cannot be names: they have a place of their own in the grammar, now or in an edition
// to come.
bool is_reserved(std::string_view word);

}  // namespace leat::grammar
