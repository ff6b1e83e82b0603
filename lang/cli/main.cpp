#include "lang/cli/program.hpp"

#ifdef LEAT_MIMALLOC
#include <mimalloc.h>
#endif

int main(int count, char** arguments) {
#ifdef LEAT_MIMALLOC
  // Large pages for what the threads allocate from now on: designs fill many small ones.
  mi_option_enable(mi_option_large_os_pages);
  mi_option_set(mi_option_eager_commit_delay, 0);
#endif
  return leat::cli::run_program(count, arguments);
}
