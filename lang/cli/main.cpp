#include "lang/cli/program.hpp"

int main(int count, char** arguments) { return leat::cli::run_program(count, arguments); }
