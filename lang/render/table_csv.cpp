#include <map>

#include "lang/render/csv.hpp"
#include "lang/render/table_sheet.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

std::string joined(std::vector<std::string> const& parts) {
  std::string result;
  for (auto const& part : parts) result.append(result.empty() ? "" : ";").append(part);
  return result;
}

// One table of all sheets: a column for each signal that some sheet has rows over, and `-` where
// another has none of that name.
class Records {
 public:
  explicit Records(std::vector<TableSheet> const& sheets) {
    for (auto const& sheet : sheets) {
      is_full_ = is_full_ || sheet.is_full;
      has_conditions_ = has_conditions_ || sheet.is_wide;
      if (sheet.is_wide) continue;
      for (auto const& signal : sheet.signals)
        if (column_of_.try_emplace(signal, columns_.size()).second) columns_.push_back(signal);
    }
  }

  std::string heading() const {
    std::vector<std::string> fields{"junction", "inlet", "body"};
    fields.insert(fields.end(), columns_.begin(), columns_.end());
    fields.insert(fields.end(), {"verdict", "outlets"});
    if (has_conditions_) fields.emplace_back("condition");
    if (is_full_)
      fields.insert(fields.end(), {"trapped", "spills", "unsure"});
    else
      fields.emplace_back("combinations");
    return csv_record(fields);
  }

  std::string of(TableSheet const& sheet, Lane const& lane) const {
    if (sheet.is_wide) return wide(sheet, lane);
    return is_full_ ? full(sheet, lane) : condensed(sheet, lane);
  }

 private:
  std::vector<std::string> begun(TableSheet const& sheet, Lane const& lane,
                                 std::vector<Setting> const& settings,
                                 std::vector<std::string> const& outlets,
                                 std::string_view verdict) const {
    std::vector<std::string> fields{sheet.junction, lane.inlet, lane.body};
    fields.resize(fields.size() + columns_.size(), "-");
    for (std::size_t i = 0; i < settings.size(); ++i)
      fields[3 + column_of_.at(sheet.signals[i])] = std::string(1, static_cast<char>(settings[i]));
    fields.emplace_back(verdict);
    fields.push_back(joined(outlets));
    return fields;
  }

  std::string full(TableSheet const& sheet, Lane const& lane) const {
    std::string result;
    for (std::size_t row = 0; row < sheet.rows.size(); ++row) {
      auto const& route = lane.routes[row];
      std::vector<std::string> places;
      for (auto at : route.trapped) places.push_back(place_code(at));
      auto fields = begun(sheet, lane, sheet.rows[row], route.outlets, word_of(route.verdict));
      fields.insert(fields.end(),
                    {joined(places), route.spills ? "1" : "0", route.is_unsure ? "1" : "0"});
      result += csv_record(fields);
    }
    return result;
  }

  std::string wide(TableSheet const& sheet, Lane const& lane) const {
    std::string result;
    for (auto const& d : lane.destinations) {
      auto fields = begun(sheet, lane, {}, d.outlets, word_of(d.verdict));
      fields.insert(fields.end(), {d.condition, count_text(d.combinations)});
      result += csv_record(fields);
    }
    return result;
  }

  std::string condensed(TableSheet const& sheet, Lane const& lane) const {
    std::string result;
    for (auto const& d : lane.destinations) {
      for (std::size_t row = 0; row < d.rows.size(); ++row) {
        auto fields = begun(sheet, lane, d.rows[row], d.outlets, word_of(d.verdict));
        if (has_conditions_) fields.emplace_back();
        fields.push_back(std::to_string(d.combinations_of_row[row]));
        result += csv_record(fields);
      }
    }
    return result;
  }

  bool is_full_ = false, has_conditions_ = false;
  std::vector<std::string> columns_;
  std::map<std::string, std::size_t> column_of_;
};

}  // namespace

std::string table_csv(std::vector<TableSheet> const& sheets) {
  Records const records(sheets);
  auto result = records.heading();
  for (auto const& sheet : sheets) {
    for (auto const& lane : sheet.lanes) result += records.of(sheet, lane);
  }
  return result;
}

}  // namespace leat::render
