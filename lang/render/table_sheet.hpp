#pragma once
#include <optional>
#include <string>
#include <vector>

#include "engine/judge.hpp"
#include "lang/render/count.hpp"
#include "lang/render/subject.hpp"

// The table of routes as one value in words, from which every table format is written.
namespace leat::render {

enum class Setting : char { off = '0', on = '1', any = '-' };

// Where one body goes from one inlet in one row.
struct RouteEntry {
  body::Verdict verdict = body::Verdict::lost;
  std::vector<std::string> outlets;
  std::vector<model::Place> trapped;
  bool spills = false, is_unsure = false;
};

// One destination of a lane: the rows that lead there, as cubes that exclude each other, and as an
// expression.
struct DestinationEntry {
  body::Verdict verdict = body::Verdict::lost;
  std::vector<std::string> outlets;
  std::vector<std::vector<Setting>> rows;
  std::vector<std::size_t> combinations_of_row;  // reachable ones
  std::string condition, words;
  Count combinations = 0;
  bool operator==(DestinationEntry const&) const = default;
};

// Rows with the same route in everything: settings that exclude each other.
struct RouteRows {
  RouteEntry route;
  std::vector<std::vector<Setting>> rows;
};

// One inlet and body: its destinations, and one route for each full row, or else its different
// routes.
struct Lane {
  std::string inlet, body;
  std::vector<DestinationEntry> destinations;
  std::vector<RouteEntry> routes;    // empty unless the sheet is full
  std::vector<RouteRows> condensed;  // empty if it is
};

struct TableSheet {
  std::string junction;
  std::vector<std::string> signals;  // the inputs and memory of the rows
  std::vector<Lane> lanes;           // by inlet, then body
  bool is_full = false, is_decided = true;
  bool has_too_many_states = false;  // it is not known which combinations can come about
  bool has_restless = false;  // combinations after some events are left out: they never rest
  bool is_restless = false;   // undecided since the signals never come to rest as built
  // Undecided since it is not known whether the signals come to rest.
  std::optional<explore::Unended> unended{};
  bool has_run_out = false;  // undecided since the conditions take more than can be held
  std::vector<std::string> undecided_inlets;  // without lanes: it is not known where bodies go
  Count row_count = 0;                        // of reachable combinations
  bool is_works = false;
  bool is_wide = false;      // too many signals for columns: destinations have conditions alone
  bool is_too_long = false;  // some lane has more destinations than are told
  std::vector<std::vector<Setting>>
      rows;  // full: the reachable ones in binary order, first signal slowest
};

// What is asked for: one inlet or body, or all of them; every row, or condensed.
struct TableRequest {
  std::optional<model::InletId> inlet;
  std::optional<model::ProfileId> profile;
  bool is_full = false;
};

TableSheet table_sheet(Subject const&, Judgement const&, TableRequest const&);

// Why a sheet is undecided: "17 signals are too many to run".
std::string undecided_words(TableSheet const&);
// "kiln", "kiln, press", "nothing".
std::string destination_words(std::vector<std::string> const& outlets);

std::string table_text(TableSheet const&);
std::string table_markdown(TableSheet const&);
// RFC 4180: one table of all sheets, a column for each signal that some have rows over; `-` where
// another has none of that name.
std::string table_csv(std::vector<TableSheet> const&);
// A block of the design language that expects exactly these routes. Doubtful ones cannot be
// expected: they stand as comments.
std::string table_expect(TableSheet const&);

}  // namespace leat::render
