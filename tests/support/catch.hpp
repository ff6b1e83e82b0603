#pragma once

// One door to Catch2, whose header moved between its major versions.
#if __has_include(<catch2/catch_test_macros.hpp>)
#include <catch2/catch_test_macros.hpp>
#include <catch2/generators/catch_generators.hpp>
#include <catch2/generators/catch_generators_range.hpp>
#else
#include <catch2/catch.hpp>
#endif
