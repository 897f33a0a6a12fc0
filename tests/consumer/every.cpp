// A user of every header; every_header.hpp is written by CMake from the targets' lists.
#include "every_header.hpp"

// The control of the check in core.cpp: these are the names that it looks for.
#ifndef INCLUDE_NLOHMANN_JSON_HPP_
#error "levigate::io is expected to bring nlohmann/json in"
#endif
#ifndef FMT_VERSION
#error "levigate::text is expected to bring fmt in"
#endif

const char* const* version_seen_from_another_file();

int main() { return &levigate::version_string == version_seen_from_another_file() ? 0 : 1; }
