#pragma once
#include <map>
#include <string>
#include <tuple>
#include <vector>

#include "lang/diagnostics/sink.hpp"
#include "lang/syntax/expression.hpp"

namespace leat::check {

enum class NameKind { signal, material, inlet, outlet, body, junction, finding, rule, property };

// Names that were used and mean nothing. A name that is used ten times is one fault: its uses are
// gathered while the file is read and reported together at the end.
class UnknownNames {
 public:
  // `known` are the names that would have meant something there. `junction` is the one in which the
  // name was looked for, where that matters.
  void add(NameKind, syntax::Word const&, std::vector<std::string> known,
           std::string const& junction = {});
  // In a file that is not whole only those that are close to a known name are reported: of the
  // others the declaration may be what the grammar left out.
  void report(diagnostics::Sink&, bool is_whole) const;

 private:
  struct Uses {
    std::vector<source::Span> spans;
    std::vector<std::string> known;
  };
  std::map<std::tuple<NameKind, std::string, std::string>, Uses> uses_;  // kind, name, junction
};

}  // namespace leat::check
