// The work behind io/write_way_back.hpp: defines what it declares.
#pragma once

#include <cmath>
#include <optional>
#include <string>

#include "levigate/io/write_way_back.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/io/entry.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/entry_parts.hpp"
#include "levigate/io/work/write_outcome.hpp"
#include "levigate/io/work/write_parts.hpp"
#include "levigate/io/write.hpp"
#include "levigate/io/write_plan.hpp"
#include "levigate/recover/cause.hpp"
#include "levigate/recover/go_back.hpp"
#include "levigate/recover/need.hpp"
#include "levigate/recover/policy.hpp"

namespace levigate::inline v0 {

namespace detail {

inline OrderedJson json_of(const Cause& cause) {
  return {{"step", cause.step},         {"sheet", cause.sheet},
          {"stray", cause.stray},       {"probability", cause.probability},
          {"expected", cause.expected}, {"missed", cause.missed}};
}

inline OrderedJson json_of(const Need& need) {
  return {{"need_um", need.need_um}, {"probability", need.probability}};
}

inline OrderedJson json_of(const TryStep& step) {
  return {{"sheet", step.sheet}, {"removal_um", step.removal_um}, {"minutes", step.minutes}};
}

inline OrderedJson json_of(const Try& one) {
  return {{"steps", array_json(one.steps, json_of)},
          {"removal_um", one.removal_um},
          {"minutes", one.minutes},
          {"gone_chance", one.gone_chance}};
}

inline OrderedJson json_of(const Reentry& entry) {
  const Climb& climb = entry.climb;
  return {{"sheet", entry.sheet},
          {"removal_um", entry.removal_um},
          {"fixed_minutes", climb.fixed_minutes},
          {"minutes_per_um", climb.minutes_per_um},
          {"above_um", climb.above_um},
          {"reach_um",
           or_null(std::isfinite(climb.reach_um) ? std::optional(climb.reach_um) : std::nullopt)}};
}

inline OrderedJson json_of(const Diagnosis& diagnosis) {
  return {{"mark", json_of(diagnosis.mark)},
          {"causes", array_json(diagnosis.causes, json_of)},
          {"needs", array_json(diagnosis.needs, json_of)},
          {"shows_um", diagnosis.shows_um},
          {"evidence", diagnosis.evidence}};
}

}  // namespace detail

LEVIGATE_WORK std::string to_json(const WayBack& way) {
  return detail::json_text({{"format", way_back_format},
                            {"found", way.found},
                            {"diagnosis", detail::json_of(way.diagnosis)},
                            {"tries", detail::array_json(way.tries, detail::json_of)},
                            {"reentries", detail::array_json(way.reentries, detail::json_of)},
                            {"expected_minutes", way.expected_minutes},
                            {"round_minutes", way.round_minutes},
                            {"gone_chance", way.gone_chance},
                            {"film_um", detail::or_null(way.film_um)},
                            {"why", way.why},
                            {"remains", way.remains},
                            {"cautions", detail::array_json(way.cautions, detail::json_of)}});
}

}  // namespace levigate
