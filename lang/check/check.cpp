#include "lang/check/check.hpp"

#include "lang/check/meaning.hpp"

namespace leat::check {

void check(syntax::Document const& document, source::SourceText const& source,
           diagnostics::Sink& sink) {
  understand(document, source, sink);
}

}  // namespace leat::check
