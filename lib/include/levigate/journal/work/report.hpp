// The work behind journal/report.hpp: defines what it declares.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "levigate/journal/report.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/journal/learn.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/learned_factor.hpp"
#include "levigate/journal/shop_factors.hpp"
#include "levigate/journal/work/belief.hpp"
#include "levigate/journal/work/shop_belief.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Minutes over those computed are the inverse of the pace.
inline LearnedLine pace_line(const std::string& subject, const Sum& log_pace, double df,
                             std::size_t steps) {
  const LearnedFactor minutes = learned_factor({-log_pace.median, log_pace.scale}, df, steps);
  return {subject, "minutes", minutes.factor, minutes.low, minutes.high, steps};
}

}  // namespace detail

LEVIGATE_WORK std::vector<LearnedLine> report(const Shop& shop) {
  validate(shop);
  const Belief belief = detail::pace_belief(shop);
  std::vector<double> weights(belief.mean.size(), 0.0);
  weights[0] = 1;
  std::vector<LearnedLine> lines{
      detail::pace_line("you", sum_of(belief, weights), belief.df, shop.person.observations)};
  for (std::size_t i = 0; i < shop.rates.size(); ++i) {
    const LearnedPair& rate = shop.rates[i];
    weights[i + 1] = 1;
    const std::string subject =
        (rate.backing.empty() ? "any other paper" : rate.backing) + " on " + rate.coating;
    lines.push_back(
        detail::pace_line(subject, sum_of(belief, weights), belief.df, rate.learned.observations));
    weights[i + 1] = 0;
  }
  for (const LearnedPair& scratch : shop.scratches) {
    const LearnedFactor& f = scratch.learned;
    const std::string subject = scratch.backing + " on " + scratch.coating;
    lines.push_back({subject, "scratches", f.factor, f.low, f.high, f.observations});
  }
  for (const LearnedFilm& film : shop.films) {
    lines.push_back(
        {film.coating, "film_um", film.offset_um, film.low_um, film.high_um, film.observations});
  }
  return lines;
}

LEVIGATE_WORK std::vector<LearnedLine> report(const Learned& learned) {
  std::vector<LearnedLine> lines = report(learned.shop);
  if (const std::size_t before = learned.lines_before; before > 0) {
    const auto value = static_cast<double>(before);
    lines.push_back({"this journal", "lines", value, value, value, before});
  }
  return lines;
}

}  // namespace levigate
