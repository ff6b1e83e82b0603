#include "lang/render/json.hpp"
#include "lang/render/waves.hpp"
#include "lang/render/words.hpp"

namespace leat::render {

std::string waves_document(WavesSheet const& sheet) {
  auto const& circuit = sheet.subject.design.circuit;
  auto const& names = sheet.subject.map.signals;
  auto const& recording = sheet.recording;
  auto document = document_head("leat-waves");
  document["ticks_per_second"] = sheet.subject.design.practice[model::Rule::ticks_per_second];
  document["last_tick"] = recording.last_tick;
  document["active_until"] = recording.active_until;
  document["is_over"] = recording.is_over;
  document["unquiet_ticks"] = recording.unquiet;
  document["deeds"] = Json::array();
  for (auto const& deed : sheet.deeds) {
    document["deeds"].push_back({{"tick", deed.tick},
                                 {"signal", names[deed.input].name},
                                 {"on", recording.is_on(deed.input, deed.tick)}});
  }
  document["signals"] = Json::array();
  for (auto s : sheet.shown) {
    document["signals"].push_back({{"name", names[s].name},
                                   {"kind", word_of(circuit.signals[s].kind)},
                                   {"starts_on", static_cast<bool>(recording.starts_on[s])},
                                   {"changes", recording.changes[s]}});
  }
  return printed(document);
}

}  // namespace leat::render
