// Writing a way back as JSON. Every key is always there; what does not apply is null or empty.
#pragma once

#include <string>

#include "levigate/io/entry.hpp"
#include "levigate/io/write.hpp"
#include "levigate/io/write_plan.hpp"
#include "levigate/recover/go_back.hpp"

namespace levigate::inline v0 {

/// A way back as JSON text of format levigate.way_back/1.
std::string to_json(const WayBack& way);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/write_way_back.hpp"
#endif
