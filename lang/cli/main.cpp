#include "lang/cli/program.hpp"

#ifdef LEAT_MIMALLOC
#include <mimalloc.h>

namespace {

// Large pages: designs fill many small ones. Asked for before anything is allocated, since what is
// allocated first is most of what a short run needs.
[[gnu::constructor(101)]] void ask_for_large_pages() {
  mi_option_enable(mi_option_large_os_pages);
  mi_option_set(mi_option_eager_commit_delay, 0);
}

}  // namespace
#endif

int main(int count, char** arguments) { return leat::cli::run_program(count, arguments); }
