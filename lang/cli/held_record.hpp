#pragma once
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "lang/cli/files.hpp"
#include "lang/cli/judged.hpp"
#include "lang/record/record.hpp"
#include "lang/render/comparison_sheet.hpp"

namespace leat::cli {

// The record beside a design; none where there is none. A record that cannot be read is a fault.
std::variant<std::optional<record::Record>, FileFault> record_beside(std::string const& design);

// The record of a junction by name; none where the record does not speak of it.
record::Junction const* find(record::Record const&, std::string const& junction);

// A junction held against its record. `recorded` may be null: nothing is recorded of it.
class HeldRecord {
 public:
  HeldRecord(render::Subject const&, Judged const&, record::Junction const* recorded);

  // Whether the design is known well enough to be recorded, and how.
  std::optional<record::Junction> const& now() const { return now_; }
  bool is_whole() const { return is_whole_; }
  // Where it stands: what differs, and by which keys that is accepted. Nothing is recorded: empty.
  render::ComparisonSheet const& sheet() const { return sheet_; }
  std::vector<std::string> const& keys() const { return keys_; }
  // The same as findings of the judgement.
  std::vector<findings::Finding> const& findings() const { return findings_; }

 private:
  void hold(render::Subject const&, Judged const&, record::Junction const&, compare::Behaviour now,
            compare::Ground&);

  std::optional<record::Junction> now_;
  bool is_whole_ = false;
  render::ComparisonSheet sheet_;
  std::vector<std::string> keys_;
  std::vector<findings::Finding> findings_;
};

}  // namespace leat::cli
