// The work behind io/write_simulation.hpp: defines what it declares.
#pragma once

#include <string>

#include "levigate/io/write_simulation.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/write_outcome.hpp"
#include "levigate/io/work/write_parts.hpp"
#include "levigate/io/write.hpp"
#include "levigate/io/write_plan.hpp"
#include "levigate/risk/share.hpp"
#include "levigate/risk/simulation.hpp"

namespace levigate::inline v0 {

namespace detail {

inline OrderedJson json_of(const Interval& interval) {
  return {
      {"p10", interval.p10}, {"p50", interval.p50}, {"p90", interval.p90}, {"mean", interval.mean}};
}

inline OrderedJson json_of(const Share& share) {
  return {{"share", share.share}, {"low", share.low}, {"high", share.high}};
}

inline OrderedJson json_of(const SimulatedStep& step) {
  return {{"sheet", step.sheet},
          {"minutes", json_of(step.minutes)},
          {"sheets_used", json_of(step.sheets_used)},
          {"paper_short", step.paper_short ? json_of(*step.paper_short) : OrderedJson(nullptr)}};
}

inline OrderedJson json_of(const SimulatedZone& zone) {
  return {{"zone", zone.zone},
          {"film_left_um", json_of(zone.film_left_um)},
          {"thinnest_um", json_of(zone.thinnest_um)},
          {"cut_through", json_of(zone.cut_through)},
          {"over_budget", json_of(zone.over_budget)}};
}

}  // namespace detail

LEVIGATE_WORK std::string to_json(const Simulation& simulation) {
  return detail::json_text({{"format", simulation_format},
                            {"draws", simulation.draws},
                            {"seed", simulation.seed},
                            {"minutes", detail::json_of(simulation.minutes)},
                            {"sheets", detail::json_of(simulation.sheets)},
                            {"steps", detail::array_json(simulation.steps, detail::json_of)},
                            {"zones", detail::array_json(simulation.zones, detail::json_of)}});
}

}  // namespace levigate
