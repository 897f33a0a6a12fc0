// The second translation unit of every.cpp.
#include "every_header.hpp"

const char* const* version_seen_from_another_file() { return &levigate::version_string; }
