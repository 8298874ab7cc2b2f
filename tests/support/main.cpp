// Catch2's own main, for every test program: compiled once, for it is slow to compile.
#define CATCH_CONFIG_MAIN
#include <catch2/catch.hpp>
