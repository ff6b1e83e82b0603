#pragma once

namespace leat::findings {

// What is known of a gap in a table, as `measured` of its finding: every body that the table speaks
// of goes the same way, surely or in doubt; or they part, and no one row holds for all.
enum class Gap { same_way, doubtful, parting };

}  // namespace leat::findings
