#pragma once
// The option that every command has: in which units it shows its figures.
#include "quantity/dimension.h"

namespace CLI {  // NOLINT(readability-identifier-naming): the library calls itself so
class App;
}

namespace wellproof {

/// Adds --units us|metric; any other word is a mistake of the command line.
void add_units(CLI::App& app, UnitSystem& into);

}  // namespace wellproof
