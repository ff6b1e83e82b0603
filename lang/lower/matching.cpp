#include "lang/lower/matching.hpp"

#include <algorithm>
#include <map>
#include <unordered_map>

namespace leat::lower {

namespace {

using source::Named;

std::string const& name_after(std::string const& before, std::vector<Renaming> const& renamings) {
  for (auto const& renaming : renamings) {
    if (renaming.before == before) return renaming.after;
  }
  return before;
}

compare::Counterparts<std::uint32_t> same_names(std::vector<Named> const& before,
                                                std::vector<Named> const& after,
                                                std::vector<Renaming> const& renamings) {
  std::unordered_map<std::string, std::uint32_t> id_of;
  for (std::uint32_t i = 0; i < after.size(); ++i) id_of.emplace(after[i].name, i);
  compare::Counterparts<std::uint32_t> same;
  for (auto const& named : before) {
    auto const found = id_of.find(name_after(named.name, renamings));
    same.push_back(found == id_of.end() ? std::nullopt : std::optional(found->second));
    // Each name after is taken once, even where a renaming meets a name that has stayed.
    if (found != id_of.end()) id_of.erase(found);
  }
  return same;
}

// A clause with every name in it as it is now. Names are runs of what names are made of.
std::string clause_after(std::string const& clause, std::vector<Renaming> const& renamings) {
  auto const belongs = [](char c) {
    return static_cast<unsigned char>(c) >= 0x80 || (c >= 'a' && c <= 'z') ||
           (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           std::string_view("_.[]").find(c) != std::string_view::npos;
  };
  std::string result, word;
  for (char c : clause + '\n') {
    if (belongs(c)) {
      word += c;
      continue;
    }
    result += name_after(word, renamings) + c;
    word.clear();
  }
  result.pop_back();
  return result;
}

bool has_name(std::vector<Named> const& named, std::string const& name) {
  return std::any_of(named.begin(), named.end(), [&](auto const& n) { return n.name == name; });
}

}  // namespace

compare::Matching matched(source::SourceMap const& before, source::SourceMap const& after,
                          std::vector<Renaming> const& renamings) {
  compare::Matching matching{same_names(before.signals, after.signals, renamings),
                             same_names(before.inlets, after.inlets, renamings),
                             same_names(before.outlets, after.outlets, renamings),
                             same_names(before.profiles, after.profiles, renamings),
                             {}};
  std::multimap<std::pair<std::string, std::string>, std::size_t> claims;
  for (std::size_t i = 0; i < after.expectations.size(); ++i)
    claims.emplace(std::pair(after.expectations[i].title, after.expectations[i].clause), i);
  for (auto const& expectation : before.expectations) {
    auto const found =
        claims.find({expectation.title, clause_after(expectation.clause, renamings)});
    matching.expectations.push_back(found == claims.end() ? std::nullopt
                                                          : std::optional(found->second));
    if (found != claims.end()) claims.erase(found);
  }
  return matching;
}

bool is_answered(Renaming const& renaming, source::SourceMap const& before,
                 source::SourceMap const& after) {
  for (auto part : {&source::SourceMap::signals, &source::SourceMap::inlets,
                    &source::SourceMap::outlets, &source::SourceMap::profiles}) {
    if (has_name(before.*part, renaming.before) && has_name(after.*part, renaming.after))
      return true;
  }
  return false;
}

}  // namespace leat::lower
