#pragma once
#include <algorithm>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "engine/compare/behaviour.hpp"
#include "lang/source/source_map.hpp"

// What a design did when somebody last looked at it and found it good, by names alone: no place in
// the text and no cell, so that a design can be moved, rearranged and commented without touching
// its record.
namespace leat::record {

struct Literal {
  std::string signal;
  bool is_on = false;
  bool operator==(Literal const&) const = default;
};
// A sum of products, as condition; none: never. A product without literals: always.
using Sum = std::vector<std::vector<Literal>>;

struct End {
  std::string outlet;
  Sum when;
  bool operator==(End const&) const = default;
};

struct Route {
  std::string inlet, body;
  std::vector<End> ends;
  Sum trapped, spilled, unsure, barred;
  bool operator==(Route const&) const = default;
};

struct Finding {
  std::string name;  // of its kind
  std::vector<std::string> inlets, outlets, bodies, signals;
  std::string event;  // empty where there is none
  bool is_accepted = false;
  Sum when;
  bool operator==(Finding const&) const = default;
};

struct Time {
  std::string of;           // trip, wait or clearing
  std::string inlet, body;  // trip
  std::string event;        // wait, clearing
  bool goes_on = false;
  std::optional<int> ticks;
  bool operator==(Time const&) const = default;
};

struct Junction {
  std::string name;
  std::vector<Route> routes;
  std::vector<Finding> findings;
  std::vector<Time> times;
  bool operator==(Junction const&) const = default;
};

struct Record {
  std::vector<Junction> junctions;
};

// The record file of a design file: beside it, "yard.leat" with "yard.record.json".
std::string path_beside(std::string const& design);

// leat-record, to the letter of docs/schemas.
std::string document(Record const&);

// Why a text is no record.
struct Unreadable {
  std::string headline;
};
std::variant<Record, Unreadable> read(std::string const& text);

// A behaviour in names. None where some condition is too long to be written down.
std::optional<Junction> recorded(source::SourceMap const&, compare::Behaviour const&,
                                 compare::Ground&);

// What a record says as a behaviour of the design as it is. Entries that name what there is no more
// cannot be told so; they are listed, by index.
struct Recalled {
  compare::Behaviour behaviour;
  std::vector<std::size_t> obsolete_routes, obsolete_findings, obsolete_times;
};
Recalled recalled(Junction const&, source::SourceMap const&, compare::Ground&);

// What is accepted: entries by their keys ("millhouse/walker" for a route, the kind's name for
// findings, "times" for all times), or everything.
struct Keys {
  std::vector<std::string> keys;
  bool is_all = false;
  bool holds(std::string const& key) const {
    return is_all || std::find(keys.begin(), keys.end(), key) != keys.end();
  }
};
inline constexpr char times_key[] = "times";
std::string key_of(Route const&);

// The record with what is accepted as it is now; accepted entries of what there is no more go.
Junction accepted(Junction const& old, Junction const& now, Keys const&);

}  // namespace leat::record
