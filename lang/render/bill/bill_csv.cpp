#include "lang/render/bill/bill_sheet.hpp"
#include "lang/render/csv.hpp"

namespace leat::render {

// A record for each level that needs some, and one for all of them, whose level is empty.
std::string bill_csv(BillSheet const& sheet, bool with_heading) {
  auto const& name = sheet.subject.map.junction.name;
  std::string text;
  if (with_heading) text = csv_record({"junction", "kind", "what", "level", "count", "spare"});
  for (auto const& line : sheet.lines) {
    auto const kind = std::string(word_of(line.kind));
    for (std::size_t z = 0; z < line.levels.size(); ++z) {
      if (line.levels[z] > 0)
        text += csv_record(
            {name, kind, line.what, std::to_string(z), std::to_string(line.levels[z]), ""});
    }
    text += csv_record(
        {name, kind, line.what, "", std::to_string(line.count), std::to_string(line.spare)});
  }
  if (sheet.around() > 0)
    text += csv_record({name, "around", "rock", "", std::to_string(sheet.around()), "0"});
  return text;
}

}  // namespace leat::render
