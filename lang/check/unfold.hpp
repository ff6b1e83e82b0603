#pragma once
#include <cstddef>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "lang/diagnostics/sink.hpp"
#include "lang/syntax/document.hpp"

// Numbers worked out, loops repeated: a tree in which every name is plain text and every number a
// literal. Everything else in this room asks about that tree and knows neither loops nor brackets.
namespace leat::check {

// Values of numbers by name. A scope may lie within another one, which has to outlive it; its own
// names hide the outer ones.
class Numbers {
 public:
  Numbers() = default;
  Numbers within() const {
    Numbers inner;
    inner.outer_ = this;
    return inner;
  }
  // Without a value: declared, but with a fault that was reported.
  void set(std::string name, std::optional<long> value) { own_[std::move(name)] = value; }
  std::optional<long> find(std::string_view name) const;
  bool is_declared(std::string_view name) const;
  // All names that can be seen, for messages.
  std::vector<std::string> names() const;

 private:
  std::optional<long> const* entry(std::string_view name) const;

  std::map<std::string, std::optional<long>, std::less<>> own_;
  Numbers const* outer_ = nullptr;
};

// What `where` gives the numbers of a junction or works for one place, by name.
using Settings = std::map<std::string, long, std::less<>>;
// Of a place whose numbers are literals, as unfolding leaves it.
Settings settings_of(syntax::PlaceDeclaration const&);

// The numbers of a junction or works that `where` may set. Those inside of loops are not among
// them.
std::vector<syntax::Word> settable_numbers(syntax::JunctionDeclaration const&);
std::vector<syntax::Word> settable_numbers(syntax::WorksDeclaration const&);

// Unfolds the parts of one file, or of one file with all it includes. There is one of these for
// all, because the bound on repetitions is for all, and because what is wrong with an expression is
// said once, however often it is worked out.
//
// Each part comes back with its loops repeated in order and taken away, numbers replaced by
// literals, and numbers in brackets written into the names: `turn[2 * lane + 1]` becomes the text
// "turn[3]", without indices. Spans stay those of the text as written. What has a fault is
// reported and left out.
class Unfolder {
 public:
  // Entries that loops may make, over the whole file. A long entry counts for several, a turn of a
  // loop that makes none for one.
  static constexpr std::size_t most_entries = 1'000'000;
  // Beyond this on either side no number is understood.
  static constexpr long largest = 1'000'000'000;

  // Where something was reported before, what is missing may be there in the text: then nothing is
  // said of unknown names.
  explicit Unfolder(diagnostics::Sink& sink) : sink_(sink), is_whole_(sink.empty()) {}

  // The value, or none after a report: an unknown name, a division by zero, a negative exponent, a
  // value beyond `largest`.
  std::optional<long> evaluate(syntax::NumberExpression const&, Numbers const&);

  // The file's numbers, each seen by those after it.
  Numbers file_numbers(syntax::Document const&);

  syntax::SignalsDeclaration unfold(syntax::SignalsDeclaration const&, Numbers const& file);
  syntax::ExpectDeclaration unfold(syntax::ExpectDeclaration const&, Numbers const& file);
  syntax::MarksDeclaration unfold(syntax::MarksDeclaration const&, Numbers const& file);
  syntax::TableDeclaration unfold(syntax::TableDeclaration const&, Numbers const& file);
  syntax::AcceptDeclaration unfold(syntax::AcceptDeclaration const&, Numbers const& file);
  // With the values that a place gives; the numbers stay in the list, as literals.
  syntax::JunctionDeclaration unfold(syntax::JunctionDeclaration const&, Numbers const& file,
                                     Settings const& = {});
  syntax::WorksDeclaration unfold(syntax::WorksDeclaration const&, Numbers const& file,
                                  Settings const& = {});
  // The same without settings. Takes the parts out of works that nobody can unfold otherwise.
  syntax::WorksDeclaration unfold(syntax::WorksDeclaration&&, Numbers const& file);
  // All of a file, with no settings; what it leaves can still be unfolded with settings.
  syntax::Document unfold(syntax::Document&&);

 private:
  // Turns a block's loops. `enter` is told each scope that begins, the block's own or that of a
  // turn, and `each` each item in its scope.
  template <class Enter, class Each>
  class Turning;
  template <class Enter, class Each>
  void turn(std::vector<syntax::Loop> const&, std::vector<std::size_t> const& weights,
            Numbers& scope, Enter, Each);
  bool spend(syntax::Loop const&, long times, std::size_t weight);

  // Each of these writes what it is given in plain form, or says that it cannot.
  bool plain(syntax::NumberExpression&, Numbers const&);
  bool plain(syntax::Word&, Numbers const&);
  bool plain(std::vector<syntax::Word>&, Numbers const&);
  bool plain(syntax::Expression&, Numbers const&);
  bool plain(syntax::SignalDeclaration&, Numbers const&);
  bool plain(syntax::NeverDeclaration&, Numbers const&);
  bool plain(syntax::Clause&, Numbers const&);
  bool plain(syntax::NumberDeclaration&, Numbers const&);
  bool plain(syntax::PlaceDeclaration&, Numbers const&);
  bool plain(syntax::JoinDeclaration&, Numbers const&);
  bool plain(syntax::PortDeclaration&, Numbers const&);
  bool plain(syntax::MarkDeclaration&, Numbers const&);
  bool plain(syntax::TableRow&, Numbers const&);
  bool plain(syntax::LevelDeclaration&, syntax::JunctionDeclaration const&, Numbers const&);
  template <class Value>
  bool plain(std::optional<Value>& value, Numbers const& numbers) {
    return !value || plain(*value, numbers);
  }
  // Each is looked at, so that each fault is reported.
  template <class... Parts>
  bool all_plain(Numbers const& numbers, Parts&... parts) {
    bool is_sound = true;
    ((is_sound = plain(parts, numbers) && is_sound), ...);
    return is_sound;
  }
  std::optional<std::string> plain_name(std::string const&, std::vector<syntax::Index> const&,
                                        Numbers const&);

  // A number declared in a scope that holds it from then on; `settings` may replace its value.
  void declare(syntax::NumberDeclaration const&, Numbers& scope, Settings const& settings);
  void check_repeated(std::vector<syntax::NumberDeclaration const*> const&);

  std::optional<long> apply(syntax::NumberExpression const&, long left, long right, Numbers const&);
  // Reports what `make` makes of a number, unless something was reported of it before.
  template <class Make>
  void report(syntax::NumberExpression const&, Make make);
  void report_below_ground(syntax::NumberExpression const&, syntax::JunctionDeclaration const&);

  diagnostics::Sink& sink_;
  bool is_whole_;
  std::size_t entries_ = 0;  // made by loops so far
  bool is_spent_ = false;
  std::set<std::string, std::less<>> signals_;  // names, to tell them from numbers
  std::set<std::pair<std::size_t, std::size_t>> told_;  // spans of which a fault was reported
};

}  // namespace leat::check
