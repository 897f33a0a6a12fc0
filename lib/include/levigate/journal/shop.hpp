// What journals taught a shop: a person's pace, rates and scratches by coating and backing, film by coating, each with how sure
// that is; and a job and a stack with it.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/detail/student.hpp"
#include "levigate/error.hpp"
#include "levigate/journal/belief.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// A factor on what is computed. It is as likely below its median as above, and nine times in ten between low and high.
struct LearnedFactor {
  double factor = 1;             ///< median, 0.01 to 100
  double low = 1;                ///< 5 % are below it; above 0, at most factor
  double high = 1;               ///< 5 % are above it; from factor on
  std::size_t observations = 0;  ///< behind it

  friend bool operator==(const LearnedFactor&, const LearnedFactor&) = default;
};

/// A factor of a backing on a coating.
struct LearnedPair {
  std::string coating;
  std::string
      backing;  ///< empty, of a rate: all backings of which nothing is known on this coating
  LearnedFactor learned;
  std::vector<double>
      correlations{};  ///< of a rate: of its logarithm with that of the person's pace and of the rates before
                       ///< it, in their order; empty: none

  friend bool operator==(const LearnedPair&, const LearnedPair&) = default;
};

/// By how much films of a coating differ from what their coats say.
struct LearnedFilm {
  std::string coating;
  double offset_um = 0;  ///< median [um], -1000 to 1000
  double low_um = 0;     ///< 5 % are below it [um]
  double high_um = 0;    ///< 5 % are above it [um]
  std::size_t observations = 0;

  friend bool operator==(const LearnedFilm&, const LearnedFilm&) = default;
};

/// A job whose journal was learned from. Its name stands for one piece of work.
struct LearnedJob {
  std::string job;
  std::size_t lines = 0;  ///< of it that were learned, the first ones

  friend bool operator==(const LearnedJob&, const LearnedJob&) = default;
};

/// How an observation differs from the next where all else is the same.
struct LearnedNoise {
  double log_sd = 0;  ///< standard deviation of its logarithm, 0.001 to 10
  double weight = 0;  ///< observations that this is known by, those of the prior included, 2 to 1e9

  friend bool operator==(const LearnedNoise&, const LearnedNoise&) = default;
};

namespace detail {

inline constexpr double tail_share = 0.05;  ///< below low, and above high

/// A factor whose logarithm is a Student t of this median and scale.
inline LearnedFactor learned_factor(const Sum& log, double df, std::size_t observations) {
  const double reach = student_quantile(tail_share, df) * log.scale;
  return {std::exp(log.median), std::exp(log.median - reach), std::exp(log.median + reach),
          observations};
}

/// Median and scale of the logarithm of a factor: the factor is the median, low and high tell the spread.
inline Sum log_of(const LearnedFactor& learned, double df) {
  return {std::log(learned.factor),
          0.5 * std::log(learned.high / learned.low) / student_quantile(tail_share, df)};
}

inline LearnedFactor prior_factor(double variance) {
  return learned_factor({0, std::sqrt(variance)}, prior_noise_weight, 0);
}

}  // namespace detail

/// What journals taught. As it is made, before any journal: the bands of the profiles.
struct Shop {
  LearnedFactor person = detail::prior_factor(duty_variance());  ///< duty_factor
  std::vector<LearnedPair> rates;                                ///< rate_factor
  std::vector<LearnedPair> scratches;                            ///< scratch_factor
  std::vector<LearnedFilm> films;
  std::vector<LearnedJob> jobs;
  LearnedNoise minutes_noise{prior_minutes_noise, prior_noise_weight};
  LearnedNoise scratch_noise{prior_scratch_noise, prior_noise_weight};

  friend bool operator==(const Shop&, const Shop&) = default;
};

namespace detail {

/// The person's pace and the rates, of logarithms: ln duty_factor, then ln rate_factor in the order of shop.rates.
inline Belief pace_belief(const Shop& shop) {
  const double noise = shop.minutes_noise.log_sd, df = shop.minutes_noise.weight;
  std::vector<Sum> logs{log_of(shop.person, df)};
  for (const LearnedPair& rate : shop.rates) logs.push_back(log_of(rate.learned, df));
  Belief belief{{}, {}, noise, df};
  for (std::size_t i = 0; i < logs.size(); ++i) {
    belief.mean.push_back(logs[i].median);
    belief.spread.emplace_back(logs.size(), 0.0);
    for (std::size_t j = 0; j <= i; ++j) {
      const std::vector<double> none(i, 0.0);
      const std::vector<double>& held = i > 0 ? shop.rates[i - 1].correlations : none;
      const double correlation = i == j ? 1.0 : held.empty() ? 0.0 : held[j];
      belief.spread[i][j] = belief.spread[j][i] =
          correlation * logs[i].scale * logs[j].scale / (noise * noise);
    }
  }
  return belief;
}

/// The same for scratches: each pair on its own, through one noise.
inline Belief scratch_belief(const Shop& shop) {
  const double noise = shop.scratch_noise.log_sd, df = shop.scratch_noise.weight;
  Belief belief{{}, {}, noise, df};
  for (std::size_t i = 0; i < shop.scratches.size(); ++i) {
    const Sum log = log_of(shop.scratches[i].learned, df);
    belief.mean.push_back(log.median);
    belief.spread.emplace_back(shop.scratches.size(), 0.0)[i] =
        log.scale * log.scale / (noise * noise);
  }
  return belief;
}

inline LearnedFactor single(const Belief& belief, std::size_t i, std::size_t observations) {
  return learned_factor({belief.mean[i], belief.noise * std::sqrt(belief.spread[i][i])}, belief.df,
                        observations);
}

/// The shop with the numbers of these beliefs; counts as they were.
inline Shop with_pace(Shop shop, const Belief& belief) {
  shop.minutes_noise = {belief.noise, belief.df};
  shop.person = single(belief, 0, shop.person.observations);
  for (std::size_t i = 1; i < belief.mean.size(); ++i) {
    LearnedPair& rate = shop.rates[i - 1];
    rate.learned = single(belief, i, rate.learned.observations);
    rate.correlations.clear();
    for (std::size_t j = 0; j < i; ++j) {
      const double size = std::sqrt(belief.spread[i][i] * belief.spread[j][j]);
      const double correlation = size > 0.0 ? belief.spread[i][j] / size : 0.0;
      rate.correlations.push_back(std::clamp(correlation, -1.0, 1.0));
    }
  }
  return shop;
}

inline Shop with_scratches(Shop shop, const Belief& belief) {
  shop.scratch_noise = {belief.noise, belief.df};
  for (std::size_t i = 0; i < belief.mean.size(); ++i) {
    LearnedFactor& learned = shop.scratches[i].learned;
    learned = single(belief, i, learned.observations);
  }
  return shop;
}

inline const LearnedPair* find_pair(const std::vector<LearnedPair>& pairs, std::string_view coating,
                                    std::string_view backing) {
  const auto at = std::find_if(pairs.begin(), pairs.end(), [&](const LearnedPair& pair) {
    return pair.coating == coating && pair.backing == backing;
  });
  return at == pairs.end() ? nullptr : &*at;
}

inline void validate_factor(const LearnedFactor& learned, std::string_view factor,
                            std::string_view where) {
  require_range(learned.factor, 0.01, 100.0, factor, "", where);
  require_range(learned.low, 1e-9, 1e9, "low", "", where);
  require_range(learned.high, 1e-9, 1e9, "high", "", where);
  if (learned.low <= learned.factor && learned.factor <= learned.high) return;
  throw BadInput(std::string(factor) + " = " + number_text(learned.factor) +
                 " is not between low = " + number_text(learned.low) +
                 " and high = " + number_text(learned.high) + ", in " + std::string(where));
}

/// Throws: BadInput where correlations are too many or too few, or cannot all hold at once.
inline void validate_correlations(const Shop& shop) {
  std::vector<std::vector<double>> matrix{{1.0}};
  for (std::size_t i = 0; i < shop.rates.size(); ++i) {
    const std::vector<double>& held = shop.rates[i].correlations;
    const std::string place = "/rates/" + std::to_string(i) + "/correlations";
    if (!held.empty() && held.size() != i + 1) {
      throw BadInput("correlations has " + std::to_string(held.size()) + " entries, wanted " +
                         std::to_string(i + 1) +
                         ": one for the person and one for each rate before, in " + place,
                     place);
    }
    for (const double one : held) require_range(one, -1.0, 1.0, "correlations", "", place);
    for (std::size_t j = 0; j <= i; ++j) matrix[j].push_back(held.empty() ? 0.0 : held[j]);
    std::vector<double> row;
    for (std::size_t j = 0; j <= i; ++j) row.push_back(matrix[j].back());
    row.push_back(1.0);
    matrix.push_back(std::move(row));
    if (root_of(matrix)) continue;
    throw BadInput(
        "correlations contradict those before them: no numbers can be related like this, in " +
            place,
        place);
  }
}

}  // namespace detail

/// Throws: OutOfRange where a member is outside the range stated at it; BadInput unless low_um <= offset_um <= high_um.
inline void validate(const LearnedFilm& film, std::string_view where) {
  if (film.coating.empty()) throw BadInput("coating is empty, in " + std::string(where));
  detail::require_range(film.offset_um, -1e3, 1e3, "offset_um", "um", where);
  detail::require_range(film.low_um, -1e4, 1e4, "low_um", "um", where);
  detail::require_range(film.high_um, -1e4, 1e4, "high_um", "um", where);
  if (film.low_um <= film.offset_um && film.offset_um <= film.high_um) return;
  throw BadInput("offset_um = " + detail::number_text(film.offset_um) +
                 " um is not between low_um = " + detail::number_text(film.low_um) +
                 " um and high_um = " + detail::number_text(film.high_um) + " um, in " +
                 std::string(where));
}

/// Throws: OutOfRange where a member is outside the range stated at it.
inline void validate(const LearnedNoise& noise, std::string_view where) {
  detail::require_range(noise.log_sd, 1e-3, 10.0, "log_sd", "", where);
  detail::require_range(noise.weight, 2.0, 1e9, "weight", "", where);
}

/// Throws: OutOfRange where a member is outside the range stated at it; BadInput where a factor is not between low and high, a pair
///         or a job stands twice, or correlations contradict each other.
inline void validate(const Shop& shop) {
  detail::validate_factor(shop.person, "duty_factor", "/person");
  const auto pairs = [](const std::vector<LearnedPair>& all, const std::string& list) {
    for (std::size_t i = 0; i < all.size(); ++i) {
      const std::string place = list + "/" + std::to_string(i);
      detail::validate_factor(all[i].learned, "factor", place);
      if (all[i].coating.empty()) throw BadInput("coating is empty, in " + place, place);
      if (detail::find_pair(all, all[i].coating, all[i].backing) != &all[i]) {
        throw BadInput("coating and backing stand twice, in " + place, place);
      }
    }
  };
  pairs(shop.rates, "/rates");
  pairs(shop.scratches, "/scratches");
  detail::validate_correlations(shop);
  for (std::size_t i = 0; i < shop.scratches.size(); ++i) {
    const std::string place = "/scratches/" + std::to_string(i);
    if (shop.scratches[i].backing.empty()) throw BadInput("backing is empty, in " + place, place);
  }
  for (std::size_t i = 0; i < shop.films.size(); ++i) {
    const std::string place = "/films/" + std::to_string(i);
    validate(shop.films[i], place);
    for (std::size_t j = 0; j < i; ++j) {
      if (shop.films[j].coating == shop.films[i].coating)
        throw BadInput("coating stands twice, in " + place, place);
    }
  }
  for (std::size_t i = 0; i < shop.jobs.size(); ++i) {
    const std::string place = "/jobs/" + std::to_string(i);
    if (shop.jobs[i].job.empty()) throw BadInput("job is empty, in " + place, place);
    for (std::size_t j = 0; j < i; ++j) {
      if (shop.jobs[j].job == shop.jobs[i].job)
        throw BadInput("job stands twice, in " + place, place);
    }
  }
  validate(shop.minutes_noise, "/minutes_noise");
  validate(shop.scratch_noise, "/scratch_noise");
}

/// What is known of the rate of a backing on a coating: of the pair, else of all backings on the coating, else nothing.
///
/// @param shop     what journals taught; the row is one of its own
/// @param coating  its name
/// @param backing  its name
/// @return         the row, or null
/// Throws:    nothing
/// Source:    -
inline const LearnedPair* rate_of(const Shop& shop, std::string_view coating,
                                  std::string_view backing) {
  const LearnedPair* pair = detail::find_pair(shop.rates, coating, backing);
  return pair ? pair : detail::find_pair(shop.rates, coating, "");
}

namespace detail {

/// A film that a shop moves by so much, whatever one moved it by before; it is not moved below zero.
inline Film moved(Film film, double offset_um, double se_um) {
  const double by_um = std::max(offset_um, -(film.mean_um - film.moved_um));
  film.mean_um = std::max(0.0, film.mean_um + (by_um - film.moved_um));
  const double squares = se_um * se_um - film.moved_se_um * film.moved_se_um;
  film.mean_se_um = std::sqrt(std::max(0.0, film.mean_se_um * film.mean_se_um + squares));
  film.moved_um = by_um;
  film.moved_se_um = se_um;
  return film;
}

}  // namespace detail

/// A job and a stack.
struct JobAndStack {
  Job job;
  Stack stack;
};

/// Job and stack with the medians of the shop, in place of what a shop gave them before: duty_factor, rate_factor and
/// scratch_factor, which are 1 where nothing is known, and films that are not from readings, which are moved by their coating's
/// offset. Edges hold a share of the film only and are moved only where it takes film from them.
///
///   mean' = mean + offset,   mean_se'^2 = mean_se^2 + s^2 + film_noise^2,   s = (high - low) / (2 x 1.6449)
///
/// @param job    with its films as coats or a shop have them; see Film::moved_um
/// @param stack  of any factors
/// @param shop   what journals taught
/// @return       job and stack; given to it again, they stay as they are
/// Throws:    as validate(Shop)
/// NaN:       of the shop rejected; of the job kept, for plan() to refuse
/// Accuracy:  medians exact; films 1e-12 um
/// Source:    learn(); film_noise_source
inline JobAndStack with_shop(Job job, Stack stack, const Shop& shop) {
  validate(shop);
  job.duty_factor = shop.person.factor;
  const std::string& coating = job.coating.name;
  for (Sheet& sheet : stack.sheets) {
    Backing& backing = sheet.backing;
    const LearnedPair* rate = rate_of(shop, coating, backing.name);
    const LearnedPair* scratch = detail::find_pair(shop.scratches, coating, backing.name);
    backing.rate_factor = rate ? rate->learned.factor : 1.0;
    backing.scratch_factor = scratch ? scratch->learned.factor : 1.0;
  }
  const auto learned = std::find_if(shop.films.begin(), shop.films.end(),
                                    [&](const LearnedFilm& row) { return row.coating == coating; });
  double offset_um = 0, se_um = 0;
  if (learned != shop.films.end()) {
    offset_um = learned->offset_um;
    se_um = std::hypot(
        0.5 * (learned->high_um - learned->low_um) / detail::normal_quantile(detail::tail_share),
        film_noise_um);
  }
  for (Zone& zone : job.zones) {
    if (!zone.film || zone.film->readings > 0) continue;
    zone.film =
        detail::moved(*zone.film, zone.levelled ? offset_um : std::min(0.0, offset_um), se_um);
  }
  return {std::move(job), std::move(stack)};
}

}  // namespace levigate
