// What journals taught a shop, as numbers.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "levigate/journal/learned_factor.hpp"
#include "levigate/journal/observed.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

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

/// The factor of a person of whom no journal tells yet: 1, with the band that the profiles have.
LearnedFactor untaught_person();

}  // namespace detail

/// What journals taught. As it is made, before any journal: the bands of the profiles.
struct Shop {
  LearnedFactor person = detail::untaught_person();  ///< duty_factor
  std::vector<LearnedPair> rates;                    ///< rate_factor
  std::vector<LearnedPair> scratches;                ///< scratch_factor
  std::vector<LearnedFilm> films;
  std::vector<LearnedJob> jobs;
  LearnedNoise minutes_noise{prior_minutes_noise, prior_noise_weight};
  LearnedNoise scratch_noise{prior_scratch_noise, prior_noise_weight};

  friend bool operator==(const Shop&, const Shop&) = default;
};

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

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/journal/work/learned.hpp"
#endif
