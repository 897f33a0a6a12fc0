// The work behind journal/learned.hpp: defines what it declares.
#pragma once

#include <algorithm>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/journal/learned.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"
#include "levigate/journal/work/belief.hpp"
#include "levigate/journal/work/factor.hpp"
#include "levigate/journal/work/prior.hpp"

namespace levigate::inline v0 {

namespace detail {

LEVIGATE_WORK LearnedFactor untaught_person() { return prior_factor(duty_variance()); }

inline void require_between(const LearnedFactor& learned, std::string_view factor,
                            std::string_view where) {
  if (learned.low <= learned.factor && learned.factor <= learned.high) return;
  throw BadInput::of(factor,
                     std::string(factor) + " = " + number_text(learned.factor) +
                         " is not between low = " + number_text(learned.low) +
                         " and high = " + number_text(learned.high) + ", in " + std::string(where),
                     {"low", "high"});
}

LEVIGATE_WORK void factor_between(const LearnedFactor& learned, std::string_view where) {
  require_between(learned, "factor", where);
}

LEVIGATE_WORK void pace_between(const LearnedFactor& learned, std::string_view where) {
  require_between(learned, "duty_factor", where);
}

LEVIGATE_WORK void offset_between(const LearnedFilm& film, std::string_view where) {
  if (film.low_um <= film.offset_um && film.offset_um <= film.high_um) return;
  throw BadInput::of("offset_um",
                     "offset_um = " + number_text(film.offset_um) +
                         " um is not between low_um = " + number_text(film.low_um) +
                         " um and high_um = " + number_text(film.high_um) + " um, in " +
                         std::string(where),
                     {"low_um", "high_um"});
}

/// Throws: BadInput where correlations are too many or too few, or cannot all hold at once.
inline void validate_correlations(const Shop& shop) {
  std::vector<std::vector<double>> matrix{{1.0}};
  for (std::size_t i = 0; i < shop.rates.size(); ++i) {
    const std::vector<double>& held = shop.rates[i].correlations;
    const std::string place = "/rates/" + std::to_string(i) + "/correlations";
    if (!held.empty() && held.size() != i + 1) {
      throw BadInput("correlations has " + std::to_string(held.size()) + " entries, expected " +
                         std::to_string(i + 1) +
                         ": one for the person and one for each rate before, in " + place,
                     place);
    }
    for (std::size_t j = 0; j <= i; ++j) matrix[j].push_back(held.empty() ? 0.0 : held[j]);
    std::vector<double> row;
    for (std::size_t j = 0; j <= i; ++j) row.push_back(matrix[j].back());
    row.push_back(1.0);
    matrix.push_back(std::move(row));
    if (root_of(matrix)) continue;
    throw BadInput(
        "correlations contradict those before them, no numbers can have all of them, in " + place,
        place);
  }
}

/// Throws: BadInput where two rows are of one thing.
template <typename Row, typename Same>
void require_once(const std::vector<Row>& rows, Same same, const std::string& list,
                  const std::string& what) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      if (!same(rows[i], rows[j])) continue;
      const std::string place = list + "/" + std::to_string(i);
      throw BadInput(what + ", in " + place, place);
    }
  }
}

LEVIGATE_WORK void in_accord(const Shop& shop, std::string_view) {
  const auto same_pair = [](const LearnedPair& a, const LearnedPair& b) {
    return a.coating == b.coating && a.backing == b.backing;
  };
  require_once(shop.rates, same_pair, "/rates", "coating and backing are repeated");
  require_once(shop.scratches, same_pair, "/scratches", "coating and backing are repeated");
  validate_correlations(shop);
  require_once(
      shop.films, [](const LearnedFilm& a, const LearnedFilm& b) { return a.coating == b.coating; },
      "/films", "coating is repeated");
  require_once(
      shop.jobs, [](const LearnedJob& a, const LearnedJob& b) { return a.job == b.job; }, "/jobs",
      "job is repeated");
}

}  // namespace detail

}  // namespace levigate
