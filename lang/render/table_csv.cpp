#include "lang/render/csv.hpp"
#include "lang/render/table_sheet.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

namespace {

std::vector<std::string> begun(TableSheet const& sheet, Lane const& lane,
                               std::vector<Setting> const& settings) {
  std::vector<std::string> fields{sheet.junction, lane.inlet, lane.body};
  for (auto setting : settings) fields.emplace_back(1, static_cast<char>(setting));
  return fields;
}

std::string joined(std::vector<std::string> const& parts) {
  std::string result;
  for (auto const& part : parts) result.append(result.empty() ? "" : ";").append(part);
  return result;
}

std::string full_records(TableSheet const& sheet, Lane const& lane) {
  std::string result;
  for (std::size_t row = 0; row < sheet.rows.size(); ++row) {
    auto const& route = lane.routes[row];
    std::vector<std::string> places;
    for (auto at : route.trapped) places.push_back(place_code(at));
    auto fields = begun(sheet, lane, sheet.rows[row]);
    fields.insert(fields.end(),
                  {std::string(word_of(route.verdict)), joined(route.outlets), joined(places),
                   route.spills ? "1" : "0", route.is_unsure ? "1" : "0"});
    result += csv_record(fields);
  }
  return result;
}

std::string wide_records(TableSheet const& sheet, Lane const& lane) {
  std::string result;
  for (auto const& d : lane.destinations) {
    result += csv_record({sheet.junction, lane.inlet, lane.body, std::string(word_of(d.verdict)),
                          joined(d.outlets), d.condition, count_text(d.combinations)});
  }
  return result;
}

std::string condensed_records(TableSheet const& sheet, Lane const& lane) {
  std::string result;
  for (auto const& d : lane.destinations) {
    for (std::size_t row = 0; row < d.rows.size(); ++row) {
      auto fields = begun(sheet, lane, d.rows[row]);
      fields.insert(fields.end(), {std::string(word_of(d.verdict)), joined(d.outlets),
                                   std::to_string(d.combinations_of_row[row])});
      result += csv_record(fields);
    }
  }
  return result;
}

}  // namespace

std::string table_csv(TableSheet const& sheet, bool with_heading) {
  std::vector<std::string> heading{"junction", "inlet", "body"};
  if (!sheet.is_wide) heading.insert(heading.end(), sheet.signals.begin(), sheet.signals.end());
  heading.insert(heading.end(), {"verdict", "outlets"});
  if (sheet.is_wide) {
    heading.insert(heading.end(), {"condition", "combinations"});
  } else if (sheet.is_full) {
    heading.insert(heading.end(), {"trapped", "spills", "unsure"});
  } else {
    heading.push_back("combinations");
  }
  auto result = with_heading ? csv_record(heading) : std::string();
  for (auto const& lane : sheet.lanes) {
    result += sheet.is_wide   ? wide_records(sheet, lane)
              : sheet.is_full ? full_records(sheet, lane)
                              : condensed_records(sheet, lane);
  }
  return result;
}

}  // namespace leat::render
