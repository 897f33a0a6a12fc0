// Learning from a journal: a shop's numbers after the entries of a job, what was set aside, and what teaches nothing.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numeric>
#include <optional>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/journal/observe.hpp"
#include "levigate/journal/shop.hpp"

namespace levigate::inline v0 {

/// An observation that was set aside as it does not go with all others. It stays in the journal.
struct Outlier {
  Place place;
  double predicted = 0;  ///< as computed, before anything learned: minutes, or um
  double actual = 0;     ///< as the journal has it
  double t = 0;          ///< distance from what all others let expect, in spreads (dimensionless)
  std::string message;   ///< a sentence
};

/// A shop after the entries of a job.
struct Learned {
  Shop shop;
  std::vector<Outlier> outliers;
  std::vector<Unmatched> unmatched;
  std::size_t lines_before = 0;  ///< of the job, that were learned before and count once
};

namespace detail {

/// Job and stack as they are computed without anything learned.
inline JobAndStack unlearned(Job job, Stack stack) {
  job.duty_factor = 1;
  for (Zone& zone : job.zones) {
    if (zone.film) zone.film = moved(*zone.film, 0, 0);
  }
  for (Sheet& sheet : stack.sheets) sheet.backing.rate_factor = sheet.backing.scratch_factor = 1;
  return {std::move(job), std::move(stack)};
}

using PairName = std::pair<std::string, std::string>;  // coating, backing

inline std::set<PairName> names_of(const std::vector<LearnedPair>& pairs) {
  std::set<PairName> names;
  for (const LearnedPair& pair : pairs) names.emplace(pair.coating, pair.backing);
  return names;
}

/// Rows of these pairs, in the order of their names; numbers of those that were there are kept.
inline std::vector<LearnedPair> rows_of(const std::set<PairName>& names,
                                        const std::vector<LearnedPair>& held) {
  std::vector<LearnedPair> rows;
  for (const auto& [coating, backing] : names) {
    const LearnedPair* row = find_pair(held, coating, backing);
    rows.push_back(row ? *row : LearnedPair{coating, backing, {}});
  }
  return rows;
}

inline std::size_t row_at(const std::vector<LearnedPair>& rows, const std::string& coating,
                          const std::string& backing) {
  return static_cast<std::size_t>(find_pair(rows, coating, backing) - rows.data());
}

/// The shop with a rate for each of these pairs and for their coatings. A rate of which nothing was known is that of all backings on
/// its coating and what the backing's own bands add; that of a coating has the coating's bands. See prior.hpp.
inline Shop with_rates(Shop shop, std::set<PairName> names) {
  for (const auto& [coating, backing] : std::set(names)) names.emplace(coating, "");
  names.merge(names_of(shop.rates));
  if (names.size() == shop.rates.size()) return shop;
  constexpr double unit = prior_minutes_noise * prior_minutes_noise;  // spreads are over the noise
  const Belief before = pace_belief(shop);
  const std::vector<LearnedPair> held = std::exchange(shop.rates, rows_of(names, shop.rates));

  const std::size_t count = shop.rates.size() + 1;
  Belief belief{std::vector<double>(count, 0.0), {}, before.noise, before.df};
  belief.spread.assign(count, std::vector<double>(count, 0.0));
  std::vector<std::optional<std::size_t>> old{0};
  for (const LearnedPair& rate : shop.rates) {
    const LearnedPair* row = find_pair(held, rate.coating, rate.backing);
    old.push_back(row ? std::optional(1 + static_cast<std::size_t>(row - held.data()))
                      : std::nullopt);
  }
  for (std::size_t i = 0; i < count; ++i) {
    if (!old[i]) continue;
    belief.mean[i] = before.mean[*old[i]];
    for (std::size_t j = 0; j < count; ++j) {
      if (old[j]) belief.spread[i][j] = before.spread[*old[i]][*old[j]];
    }
  }
  for (std::size_t i = 1; i < count; ++i) {
    if (old[i]) continue;
    const LearnedPair& rate = shop.rates[i - 1];
    if (rate.backing.empty()) {
      belief.spread[i][i] = coating_variance(rate.coating) / unit;
      continue;
    }
    const std::size_t of_coating = 1 + row_at(shop.rates, rate.coating, "");
    belief.mean[i] = belief.mean[of_coating];
    for (std::size_t j = 0; j < count; ++j) {
      belief.spread[i][j] = belief.spread[j][i] = belief.spread[of_coating][j];
    }
    belief.spread[i][i] =
        belief.spread[of_coating][of_coating] + backing_variance(rate.coating, rate.backing) / unit;
  }
  return with_pace(std::move(shop), belief);
}

/// The same for scratches, each pair on its own.
inline Shop with_scratch_rows(Shop shop, std::set<PairName> names) {
  names.merge(names_of(shop.scratches));
  const std::vector<LearnedPair> held =
      std::exchange(shop.scratches, rows_of(names, shop.scratches));
  const double noise = shop.scratch_noise.log_sd / prior_scratch_noise;
  for (LearnedPair& row : shop.scratches) {
    if (find_pair(held, row.coating, row.backing)) continue;
    const double sd = std::sqrt(scratch_variance(row.coating, row.backing));
    row.learned = learned_factor({0, noise * sd}, shop.scratch_noise.weight, 0);
  }
  return shop;
}

inline std::string where_text(const std::string& sheet, const std::string& zone,
                              const Place& place) {
  return sheet + (zone.empty() ? "" : " on " + zone) + " at " + place.at + ": ";
}

inline Outlier outlier(const Place& place, double predicted, double actual, double t,
                       const std::string& what) {
  return {place, predicted, actual, t,
          what + ", " + fixed(std::abs(t), 1) + " spreads " + (t > 0 ? "above" : "below") +
              " what all else lets expect. It is set aside, and stays in the journal."};
}

inline std::string against_text(double actual, double predicted, const std::string& unit,
                                int decimals) {
  return fixed(actual, decimals) + unit + " where " + fixed(predicted, decimals) + unit +
         " is computed";
}

inline Learned learn_scratches(Learned learned, const std::vector<ScratchSeen>& seen) {
  if (seen.empty()) return learned;
  std::set<PairName> names;
  for (const ScratchSeen& one : seen) names.emplace(one.coating, one.backing);
  Shop shop = with_scratch_rows(std::move(learned.shop), std::move(names));
  std::vector<Observation> observations;
  std::vector<std::size_t> rows;
  for (const ScratchSeen& one : seen) {
    rows.push_back(row_at(shop.scratches, one.coating, one.backing));
    Observation& added = observations.emplace_back();
    added.weights.assign(shop.scratches.size(), 0.0);
    added.weights[rows.back()] = 1;
    added.y = std::log(one.seen_um / one.predicted_um);
  }
  const Settled result = settled(scratch_belief(shop), observations, outlier_line);
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const ScratchSeen& one = seen[i];
    if (!result.set_aside[i]) {
      ++shop.scratches[rows[i]].learned.observations;
      continue;
    }
    learned.outliers.push_back(outlier(one.place, one.predicted_um, one.seen_um,
                                       *result.set_aside[i],
                                       where_text(one.sheet, one.zone, one.place) +
                                           against_text(one.seen_um, one.predicted_um, " um", 2)));
  }
  learned.shop = with_scratches(std::move(shop), result.belief);
  return learned;
}

inline Learned learn_pace(Learned learned, const std::vector<PaceSeen>& seen) {
  if (seen.empty()) return learned;
  std::set<PairName> names;
  for (const PaceSeen& one : seen) names.emplace(one.coating, one.backing);
  Shop shop = with_rates(std::move(learned.shop), std::move(names));
  std::vector<Observation> observations;
  std::vector<std::size_t> rows;
  for (const PaceSeen& one : seen) {
    rows.push_back(row_at(shop.rates, one.coating, one.backing));
    Observation& added = observations.emplace_back();
    added.weights.assign(shop.rates.size() + 1, 0.0);
    added.weights[0] = added.weights[rows.back() + 1] = -1;  // a higher pace takes fewer minutes
    added.y = std::log(one.actual_minutes / one.predicted_minutes);
  }
  const Settled result = settled(pace_belief(shop), observations, outlier_line);
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const PaceSeen& one = seen[i];
    if (!result.set_aside[i]) {
      ++shop.person.observations;
      ++shop.rates[rows[i]].learned.observations;
      ++shop.rates[row_at(shop.rates, one.coating, "")].learned.observations;
      continue;
    }
    learned.outliers.push_back(
        outlier(one.place, one.predicted_minutes, one.actual_minutes, *result.set_aside[i],
                where_text(one.sheet, one.zone, one.place) +
                    against_text(one.actual_minutes, one.predicted_minutes, " min", 1)));
  }
  learned.shop = with_pace(std::move(shop), result.belief);
  return learned;
}

/// Readings of a film against what its coats were to leave. Their noise is known: spots of one film, and films of the same coats.
inline Learned learn_films(Learned learned, const std::vector<FilmSeen>& seen) {
  if (seen.empty()) return learned;
  const std::string& coating = seen.front().coating;  // a job has one
  std::vector<LearnedFilm>& films = learned.shop.films;
  auto film = std::find_if(films.begin(), films.end(),
                           [&](const LearnedFilm& row) { return row.coating >= coating; });
  const double quantile = normal_quantile(tail_share);
  if (film == films.end() || film->coating != coating) {
    const double reach_um = quantile * std::sqrt(film_variance_um2());
    film = films.insert(film, {coating, 0, -reach_um, reach_um, 0});
  }
  const double sd_um = 0.5 * (film->high_um - film->low_um) / quantile;
  constexpr double known = 1e12;  // observations that a noise is known by which is not in question
  const Belief before{{film->offset_um}, {{sd_um * sd_um}}, 1, known};
  std::vector<Observation> observations;
  for (const FilmSeen& one : seen) {
    const auto spots = static_cast<double>(one.readings_um.size());
    const double mean_um =
        std::accumulate(one.readings_um.begin(), one.readings_um.end(), 0.0) / spots;
    const double noise_um = std::hypot(film_noise_um, one.sd_um / std::sqrt(spots));
    observations.push_back({{1 / noise_um}, (mean_um - one.expected_um) / noise_um});
  }
  const Settled result = settled(before, observations, outlier_line);
  for (std::size_t i = 0; i < seen.size(); ++i) {
    const FilmSeen& one = seen[i];
    if (!result.set_aside[i]) {
      ++film->observations;
      continue;
    }
    const double mean_um = one.expected_um + observations[i].y / observations[i].weights[0];
    learned.outliers.push_back(outlier(one.place, one.expected_um, mean_um, *result.set_aside[i],
                                       where_text("film", one.zone, one.place) +
                                           against_text(mean_um, one.expected_um, " um", 1)));
  }
  film->offset_um = result.belief.mean[0];
  const double reach_um = quantile * std::sqrt(result.belief.spread[0][0]);
  film->low_um = film->offset_um - reach_um;
  film->high_um = film->offset_um + reach_um;
  return learned;
}

/// The row of a job, made where there is none.
inline LearnedJob& job_row(std::vector<LearnedJob>& jobs, const std::string& name) {
  const auto row = std::find_if(jobs.begin(), jobs.end(),
                                [&](const LearnedJob& one) { return one.job == name; });
  return row != jobs.end() ? *row : jobs.emplace_back(LearnedJob{name});
}

}  // namespace detail

/// A shop after the entries of a job, by Bayes' rule: exact for the model
///
///   ln(minutes / predicted) = -ln duty_factor - ln rate_factor(coating, backing) + noise
///   ln(depth / predicted)   =  ln scratch_factor(coating, backing) + noise
///   film - expected         =  offset(coating) + noise
///
/// where the noise of the first two is learned too. Predicted is what is computed without any factor, but that what a step has
/// to remove counts with the scratch factors as they are after these entries: a deeper scratch is not taken for a slow hand. So
/// the order of entries, and learning in several goes, changes nothing while scratches were not read anew; observations set aside
/// are judged by the shop and the entries at hand.
///
/// Lines of the job that the shop has learned are not learned again, so that one may learn from a journal whenever it has grown. A
/// job's name stands for one piece of work: the journal of another one needs another.
///
/// @param shop     what was known before; Shop{}: nothing
/// @param job      that the entries belong to; factors it has and what a shop added to its films are not used
/// @param stack    that the sheets are of; factors it has are not used
/// @param entries  of one journal, in order, from its first line on
/// @return         the shop, observations set aside, and entries that teach nothing
/// Throws:    as observe(), validate(Shop)
/// NaN:       rejected in shop, job and stack; of entries see observe()
/// Accuracy:  1e-9 relative
/// Source:    Belief; noise_source, outlier_source, film_noise_source
inline Learned learn(const Shop& shop, const Job& job, const Stack& stack,
                     const std::vector<Entry>& entries) {
  validate(shop);
  auto [bare_job, bare_stack] = detail::unlearned(job, stack);
  const auto lines = static_cast<std::size_t>(std::count_if(
      entries.begin(), entries.end(), [&](const Entry& entry) { return entry.job == job.name; }));
  Learned learned{shop, {}, {}};
  std::size_t known = 0;
  if (lines > 0) {
    LearnedJob& row = detail::job_row(learned.shop.jobs, job.name);
    known = row.lines;
    learned.lines_before = std::min(known, lines);
    row.lines = std::max(known, lines);
  }
  const auto observed = [&, &bare_job = bare_job, &bare_stack = bare_stack] {
    const Bench bench = levigate::bench(bare_job, bare_stack);
    return detail::Observer(entries, bench, known).observe();
  };
  const Observed seen = observed();
  learned.unmatched = seen.unmatched;
  learned = detail::learn_films(std::move(learned), seen.films);
  learned = detail::learn_scratches(std::move(learned), seen.scratches);
  for (Sheet& sheet : bare_stack.sheets) {
    const LearnedPair* depth =
        detail::find_pair(learned.shop.scratches, job.coating.name, sheet.backing.name);
    if (depth) sheet.backing.scratch_factor = depth->learned.factor;
  }
  return detail::learn_pace(std::move(learned), observed().paces);
}

}  // namespace levigate
