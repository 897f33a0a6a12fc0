// What the formats are made of, for tools that write schemas and documentation.
#pragma once

#include <string>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// The JSON text of an object with all formats and all descriptions that their files hold: names, sentences, ranges, units
/// and choices, as Member and Kind have them. data/schemas.py makes the schemas of it.
std::string descriptions_json();

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/descriptions.hpp"
#endif
