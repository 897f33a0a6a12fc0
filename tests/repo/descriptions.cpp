// Prints what the formats are made of, for data/schemas.py.
#include "levigate/io/descriptions.hpp"

#include <cstdio>

int main() { return std::fputs(levigate::descriptions_json().c_str(), stdout) < 0 ? 1 : 0; }
