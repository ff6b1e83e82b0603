#include "lang/lower/including.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "lang/diagnostics/catalogue.hpp"
#include "lang/grammar/parse.hpp"
#include "lang/source/soundness.hpp"
#include "lang/syntax/wording.hpp"

namespace leat::lower {

namespace {

using diagnostics::Diagnostic;
using diagnostics::Listed;
using syntax::IncludeDeclaration;

// A file that is being read: how far, and by which include it was come to.
struct Opened {
  std::size_t file = 0;
  std::string identity;
  source::Span included_at;  // in the file before it
  syntax::Document document;
  std::size_t next = 0;  // of its declarations
};

constexpr std::size_t most_loop_labels = 24, most_named = 4;

bool is_for_its_own_run(syntax::Declaration const& declaration) {
  return std::holds_alternative<syntax::ExpectDeclaration>(declaration) ||
         std::holds_alternative<syntax::TableDeclaration>(declaration);
}

// Reads depth first, with the files that are being read on a stack of its own, so that no depth of
// includes is a depth of calls. A file on the stack that is included again closes a loop; a file
// that was on the stack once is not read again, so each is read at most once and the walk ends.
// Identity, not name, tells files apart. Cost: linear in the text, and two looks at the outside
// world for each include; the numbers of files and includes and the size of all texts are bounded.
class Walk {
 public:
  Walk(source::SourceText& source, FileAccess& files, diagnostics::Sink& sink)
      : source_(source), files_(files), sink_(sink), size_(source.text().size()) {}

  syntax::Document run() {
    auto document = grammar::parse(source_, sink_);
    bool const includes = std::any_of(
        document.declarations.begin(), document.declarations.end(),
        [](auto const& one) { return std::holds_alternative<IncludeDeclaration>(one); });
    auto identity = includes ? files_.identity_of(source_.name()) : source_.name();
    open(0, std::move(identity), {}, std::move(document));
    gathered_.edition = stack_.back().document.edition;
    gathered_.comments = std::move(stack_.back().document.comments);
    while (!stack_.empty()) {
      auto& top = stack_.back();
      if (top.next == top.document.declarations.size()) {
        stack_.pop_back();
        continue;
      }
      auto declaration = std::move(top.document.declarations[top.next++]);
      if (auto const* include = std::get_if<IncludeDeclaration>(&declaration))
        follow(*include);
      else if (top.file == 0 || !is_for_its_own_run(declaration))
        keep(std::move(declaration), top.file);
    }
    return std::move(gathered_);
  }

 private:
  void open(std::size_t file, std::string identity, source::Span at, syntax::Document document) {
    read_.insert(identity);
    stack_.push_back({file, std::move(identity), at, std::move(document)});
  }

  // A number that two files declare word for word alike is kept once: all later ones read as they
  // did, and what else has a name is compared once its own names are plain.
  void keep(syntax::Declaration declaration, std::size_t file) {
    if (auto const* number = std::get_if<syntax::NumberDeclaration>(&declaration)) {
      auto const [at, is_new] = numbers_.try_emplace(number->name.text, line_of(*number), file);
      if (!is_new && at->second.second != file && at->second.first == line_of(*number)) return;
    }
    gathered_.declarations.push_back(std::move(declaration));
  }

  void follow(IncludeDeclaration const& include) {
    if (is_spent_ || sink_.has_enough()) return;
    if (++includes_ > most_includes)
      return refuse(include, "too-many",
                    fmt::format("Files are included more than {} times", most_includes),
                    fmt::format("number {} of the includes", most_includes + 1),
                    "Include each file where it is needed, once.");
    if (include.file.text.find_first_not_of(" \t") == std::string::npos)
      return report(include, Listed("include-unread"), "The include names no file",
                    "nothing stands between the quotes", "Name a file, or remove the include.");
    auto const name = files_.name_of(include.file.text, source_.name(stack_.back().file));
    auto identity = files_.identity_of(name);
    auto const open = std::find_if(stack_.begin(), stack_.end(),
                                   [&](Opened const& file) { return file.identity == identity; });
    if (open != stack_.end()) return report_loop(include, open);
    if (read_.count(identity) == 0) read(include, name, std::move(identity));
  }

  void read(IncludeDeclaration const& include, std::string const& name, std::string identity) {
    if (source_.file_count() == most_files)
      return refuse(include, "too-many",
                    fmt::format("The design has more than {} files", most_files),
                    fmt::format("number {} of the files", most_files + 1),
                    "Bring what belongs together into fewer files.");
    read_.insert(identity);
    auto found = files_.read(name);
    if (auto const* fault = std::get_if<FileFault>(&found))
      return report(include, Listed("include-unread"), fault->headline,
                    "included here; a path begins at the folder of the file it stands in",
                    fault->remedy);
    auto& text = std::get<std::string>(found);
    size_ += text.size();
    if (size_ > source::largest_text)
      return refuse(include, "text-too-large",
                    fmt::format("The files of the design are together larger than {} MiB",
                                source::largest_text >> 20),
                    fmt::format("with this one they have {} bytes", size_),
                    "Include less, or split the design.");
    auto const file = source_.add(name, std::move(text));
    open(file, std::move(identity), include.span, parsed(include, file));
  }

  // A file that is no text at all was most likely not meant, so its fault also shows who asked for
  // it.
  syntax::Document parsed(IncludeDeclaration const& include, std::size_t file) {
    if (!source::find_unsoundness(source_.file_text(file)))
      return grammar::parse(source_, sink_, file);
    diagnostics::Sink apart;
    auto document = grammar::parse(source_, apart, file);
    for (auto& found : apart.sorted()) {
      found.others.push_back({include.span, "the file is included here", {}});
      sink_.report(std::move(found));
    }
    return document;
  }

  void report_loop(IncludeDeclaration const& closing, std::vector<Opened>::const_iterator first) {
    Diagnostic found;
    found.name = Listed("include-loop");
    auto const length = static_cast<std::size_t>(stack_.end() - first);
    found.headline = length == 1 ? fmt::format("{} includes itself", source_.name(first->file))
                                 : "Files include each other in a loop" + path_from(first);
    found.primary = {closing.span, includes(stack_.back(), *first), {}};
    for (auto at = first + 1; at < stack_.end(); ++at) {
      if (found.others.size() == most_loop_labels) break;
      found.others.push_back({at->included_at, includes(*(at - 1), *at), {}});
    }
    found.remedy = length == 1 ? "Remove the include."
                               : "Remove one of these includes; what both files need goes into a "
                                 "third file.";
    sink_.report(std::move(found));
  }

  std::string path_from(std::vector<Opened>::const_iterator first) const {
    auto const length = static_cast<std::size_t>(stack_.end() - first);
    if (length > most_named) return fmt::format(" of {} files", length);
    std::string path = ": ";
    for (auto at = first; at != stack_.end(); ++at) path += source_.name(at->file) + " -> ";
    return path + source_.name(first->file);
  }

  std::string includes(Opened const& one, Opened const& other) const {
    return fmt::format("{} includes {}", source_.name(one.file), source_.name(other.file));
  }

  // One bound that is passed ends the following of includes: the rest would only say it again.
  void refuse(IncludeDeclaration const& include, Listed name, std::string headline,
              std::string label, std::string remedy) {
    is_spent_ = true;
    report(include, name, std::move(headline), std::move(label), std::move(remedy));
  }
  void report(IncludeDeclaration const& include, Listed name, std::string headline,
              std::string label, std::string remedy) {
    sink_.report(
        {name, std::move(headline), {include.span, std::move(label), {}}, {}, std::move(remedy)});
  }

  source::SourceText& source_;
  FileAccess& files_;
  diagnostics::Sink& sink_;
  std::vector<Opened> stack_;
  std::set<std::string> read_;  // by identity
  std::map<std::string, std::pair<std::string, std::size_t>>
      numbers_;  // first said how, in which file
  syntax::Document gathered_;
  std::size_t size_, includes_ = 0;
  bool is_spent_ = false;
};

}  // namespace

syntax::Document read_with_included(source::SourceText& source, FileAccess& files,
                                    diagnostics::Sink& sink) {
  return Walk(source, files, sink).run();
}

}  // namespace leat::lower
