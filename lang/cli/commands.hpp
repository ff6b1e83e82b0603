#pragma once
#include "lang/cli/exit_table.hpp"
#include "lang/cli/options.hpp"
#include "lang/cli/terminal.hpp"

// The commands of the program, each in a file of its own name.
namespace leat::cli {

Exit run(CheckOptions const&, Terminal&);
Exit run(TableOptions const&, Terminal&);
Exit run(CompareOptions const&, Terminal&);
Exit run(RecordOptions const&, Terminal&);
Exit run(ShowOptions const&, Terminal&);
Exit run(FollowOptions const&, Terminal&);
Exit run(DrawOptions const&, Terminal&);
Exit run(BillOptions const&, Terminal&);
Exit run(PageOptions const&, Terminal&);
Exit run(GuardOptions const&, Terminal&);
Exit run(TrainOptions const&, Terminal&);
Exit run(WavesOptions const&, Terminal&);
Exit run(MachineOptions const&, Terminal&);
Exit run(ExplainOptions const&, Terminal&);
Exit run(ResolveOptions const&, Terminal&);
Exit run(TidyOptions const&, Terminal&);
Exit run(WatchOptions const&, Terminal&);
Exit run(CompletionOptions const&, Terminal&);
Exit run(ManualOptions const&, Terminal&);

}  // namespace leat::cli
