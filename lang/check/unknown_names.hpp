#pragma once
#include <map>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

#include "lang/check/names.hpp"
#include "lang/diagnostics/sink.hpp"
#include "lang/syntax/expression.hpp"

namespace leat::check {

enum class NameKind {
  signal,
  material,
  inlet,
  outlet,
  body,
  junction,
  design,
  finding,
  rule,
  property
};

// Names that were used and mean nothing. A name that is used ten times is one fault: its uses are
// gathered while the file is read and reported together at the end.
class UnknownNames {
 public:
  UnknownNames(Names const& names, syntax::Document const& document)
      : names_(names), document_(document) {}
  void add(NameKind, syntax::Word const&);
  // A port that the junction, whose ports these are, does not draw. The ports must outlive this.
  void add_port(NameKind, syntax::Word const&, std::string const& junction,
                std::vector<PortName const*> const& ports);
  // An end of a works, of which these are all. They must outlive this. `join`: where a port of this
  // name is joined, so that it is no end.
  void add_end(NameKind, syntax::Word const&, std::string const& works,
               std::map<std::string, std::size_t, std::less<>> const& ends,
               std::optional<source::Span> join);
  // In a file that is not whole only those that are close to a known name are reported: of the
  // others the declaration may be what the grammar left out.
  void report(diagnostics::Sink&, bool is_whole) const;

 private:
  struct Uses {
    std::vector<source::Span> spans;
    std::vector<PortName const*> const* ports = nullptr;
    std::map<std::string, std::size_t, std::less<>> const* ends = nullptr;
    std::optional<source::Span> join{};
  };
  using Key = std::tuple<NameKind, std::string, std::string>;  // kind, name, junction

  std::vector<std::string> known(NameKind, Uses const&) const;
  diagnostics::Diagnostic describe(Key const&, Uses const&, std::optional<std::string> const& near,
                                   std::vector<std::string> const& known) const;

  Names const& names_;
  syntax::Document const& document_;
  std::map<Key, Uses> uses_;
};

}  // namespace leat::check
