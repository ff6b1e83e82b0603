#pragma once
#include <map>
#include <string>
#include <string_view>

#include "lang/render/json.hpp"
#include "lang/render/told.hpp"

namespace leat::render {

// The rules of a SARIF run: every kind of finding and every verdict that is told of, and of the
// faults of files those that are there. Their ids are the short names, which stay as they are.
class SarifRules {
 public:
  explicit SarifRules(ToldRun const&);
  Json const& list() const { return list_; }
  // {"ruleId": ..., "ruleIndex": ...} of a result. Contract: a name that has a rule.
  void put_rule(Json& result, std::string const& id) const;

 private:
  void add(std::string_view id, std::string_view summary, std::string const& description,
           std::string const& help, std::string_view level);

  Json list_ = Json::array();
  std::map<std::string, std::size_t, std::less<>> index_;
};

// The rule of an expectation's verdict; empty for one that holds.
std::string_view rule_of(verdicts::Truthfulness);
inline constexpr std::string_view undecided_junction = "undecided-junction";

}  // namespace leat::render
