#pragma once
#include <string>
#include <vector>

#include "lang/diagnostics/diagnostic.hpp"
#include "lang/syntax/document.hpp"

// What a test sees of a text: its tree or its reports.
namespace leat::tests {

// The tree of a text that has no fault; the test fails if it has one.
syntax::Document document_of(std::string const& text);
// The only declaration of `leat 1` followed by this text, as `tree_text` shows it.
std::string declaration_of(std::string const& text);
// The expression of a wire, as `tree_text` shows it.
std::string expression_of(std::string const& text);

// Each report in full, one line a part: place and name, headline, the text at the label and the
// label, other labels, remedy.
std::string reports_of(std::string const& text);
// Place and name of each report: "3:5 open-row".
std::vector<std::string> faults_of(std::string const& text);

}  // namespace leat::tests
