#pragma once
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "lang/render/look.hpp"

// The pages of docs/findings.md, built into the program.
namespace leat::render {

// The whole text of docs/findings.md (generated while building).
extern char const* const findings_manual;

// The section of a finding, from the line after its heading to the next one.
std::optional<std::string_view> finding_section(std::string_view manual, std::string_view name);
// Its first sentence, for lists.
std::string section_summary(std::string_view section);

// Its paragraphs in plain words, up to the first design.
std::vector<std::string> section_prose(std::string_view section);

// Every kind with its severity and summary, worst severity first.
std::string finding_list(std::string_view manual, Look);
// A finding's page set for a terminal: designs indented, the marks of Markdown taken out.
std::string finding_page(std::string_view manual, std::string_view name, Look);

// Every finding's name, then every name of a fault in a design file.
std::vector<std::string> explained_names();

}  // namespace leat::render
