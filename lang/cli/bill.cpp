#include "lang/render/bill/bill_sheet.hpp"

#include "engine/as_built.hpp"
#include "lang/cli/commands.hpp"
#include "lang/cli/delivery.hpp"
#include "lang/cli/loaded.hpp"

namespace leat::cli {

namespace {

std::string written(std::vector<render::BillSheet> const& sheets, BillOptions const& options,
                    render::Look look) {
  if (options.format == "json") return render::bill_document(sheets);
  std::string text;
  for (auto const& sheet : sheets) {
    bool const is_first = &sheet == &sheets.front();
    if (options.format == "csv") {
      text += render::bill_csv(sheet, is_first);
      continue;
    }
    if (!is_first) text += "\n";
    text += render::bill_text(sheet, look);
    if (options.has_steps) text += "\n" + render::steps_text(sheet, look);
  }
  return text;
}

}  // namespace

Exit run(BillOptions const& options, Terminal& terminal) {
  if (options.has_steps && options.format == "csv") {
    terminal.refuse("--steps has no form in CSV", "take text, or json, which always has them");
    return Exit::unusable;
  }
  auto const loaded = load(options.file, terminal);
  if (!loaded) return Exit::unusable;
  auto const chosen = chosen_junctions(*loaded, options.junction, terminal);
  if (!chosen) return Exit::unusable;
  std::vector<render::BillSheet> sheets;
  for (auto i : *chosen) {
    auto const subject = loaded->subject(i);
    auto const built = solve(subject.design, as_built(subject.design));
    sheets.push_back(render::bill_sheet(subject, built.arrangement));
  }
  auto const look = options.out.empty() ? terminal.result_look() : render::Look{};
  return deliver(written(sheets, options, look), options.out, terminal);
}

}  // namespace leat::cli
