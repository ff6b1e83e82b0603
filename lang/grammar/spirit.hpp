#pragma once

// The parts of Spirit X3 that the grammar is made of. Kept to what is used: every grammar unit pays
// for it.
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wconversion"
#include <boost/spirit/home/x3/core.hpp>
#include <boost/spirit/home/x3/directive/expect.hpp>
#include <boost/spirit/home/x3/directive/with.hpp>
#include <boost/spirit/home/x3/nonterminal/rule.hpp>
#include <boost/spirit/home/x3/operator/alternative.hpp>
#include <boost/spirit/home/x3/operator/kleene.hpp>
#include <boost/spirit/home/x3/operator/list.hpp>
#include <boost/spirit/home/x3/operator/optional.hpp>
#include <boost/spirit/home/x3/operator/sequence.hpp>
#pragma GCC diagnostic pop

// A grammar joins its pieces by `>>` and `>`, in the order in which they are written.
#ifdef __clang__
#pragma clang diagnostic ignored "-Woverloaded-shift-op-parentheses"
#endif

namespace leat::grammar {

namespace x3 = boost::spirit::x3;

}  // namespace leat::grammar
