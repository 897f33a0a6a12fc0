// Writing a simulation as JSON. Every key is always there; what does not apply is null or empty.
#pragma once

#include <string>

#include "levigate/io/write.hpp"
#include "levigate/io/write_plan.hpp"
#include "levigate/risk/simulation.hpp"

namespace levigate::inline v0 {

/// A simulation as JSON text of format levigate.simulation/1.
std::string to_json(const Simulation& simulation);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/write_simulation.hpp"
#endif
