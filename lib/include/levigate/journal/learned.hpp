// What journals taught a shop, as numbers.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/faults.hpp"
#include "levigate/journal/learned_factor.hpp"
#include "levigate/journal/observed.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// A factor of a backing on a coating.
struct LearnedPair {
  std::string coating;
  std::string backing;
  LearnedFactor learned;
  std::vector<double> correlations{};

  friend bool operator==(const LearnedPair&, const LearnedPair&) = default;
};

template <std::same_as<LearnedPair> Value>
inline constexpr auto described<Value> = describe<Value>(
    "LearnedPair", "Removal rate of a backing on a coating.",
    member<&Value::coating>("coating", "name, as in the job").not_empty(),
    member<&Value::backing>(
        "backing", "name, as in the stack; none: all of which nothing is known on this coating")
        .left_out_as_made(),
    member<&Value::learned>("learned", "the factor").flat(),
    member<&Value::correlations>(
        "correlations", Within{-1, 1},
        "of its logarithm with that of the person and of each rate before it; empty: none")
        .left_out_as_made());

/// The same of scratches, which have no correlations.
template <std::same_as<LearnedPair> Value>
inline constexpr auto described_scratch = describe<Value>(
    "LearnedScratch", "Depth of the scratches of a backing on a coating.",
    member<&Value::coating>("coating", "name, as in the job").not_empty(),
    member<&Value::backing>("backing", "name, as in the stack").not_empty().optional(),
    member<&Value::learned>("learned", "the factor").flat());

/// By how much films of a coating differ from what their coats say.
struct LearnedFilm {
  std::string coating;
  double offset_um = 0;
  double low_um = 0;
  double high_um = 0;
  std::size_t observations = 0;

  friend bool operator==(const LearnedFilm&, const LearnedFilm&) = default;
};

namespace detail {

/// Throws: BadInput unless low_um <= offset_um <= high_um.
void offset_between(const LearnedFilm& film, std::string_view where);

}  // namespace detail

template <std::same_as<LearnedFilm> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "LearnedFilm", "How films of a coating differ from what their coats say.",
        member<&Value::coating>("coating", "name, as in the job").not_empty(),
        member<&Value::offset_um>("offset_um", Within{-1e3, 1e3},
                                  "added to the mean, median; between low_um and high_um"),
        member<&Value::low_um>("low_um", Within{-1e4, 1e4}, "5 % are below it"),
        member<&Value::high_um>("high_um", Within{-1e4, 1e4}, "5 % are above it"),
        member<&Value::observations>("observations", Within{0, 1e9}, "films behind it").optional())
        .rule(rule_by<&detail::offset_between>);

/// A job whose journal was learned from. Its name stands for one piece of work.
struct LearnedJob {
  std::string job;
  std::size_t lines = 0;

  friend bool operator==(const LearnedJob&, const LearnedJob&) = default;
};

template <std::same_as<LearnedJob> Value>
inline constexpr auto described<Value> = describe<Value>(
    "LearnedJob", "Lines of a job's journal that are not learned again.",
    member<&Value::job>("job", "name, as in the journal; one name for one piece of work")
        .not_empty(),
    member<&Value::lines>("lines", Within{0, 1e9}, "learned, the first ones of the job"));

/// How an observation differs from the next where all else is the same.
struct LearnedNoise {
  double log_sd = 0;
  double weight = 0;

  friend bool operator==(const LearnedNoise&, const LearnedNoise&) = default;
};

template <std::same_as<LearnedNoise> Value>
inline constexpr auto described<Value> = describe<Value>(
    "LearnedNoise", "How one observation differs from the next under the same conditions.",
    member<&Value::log_sd>("log_sd", Within{1e-3, 10}, "standard deviation of its logarithm"),
    member<&Value::weight>("weight", Within{2, 1e9},
                           "observations that this is known by, those of the prior included"));

namespace detail {

/// The factor of a person of whom no journal tells yet: 1, with the band that the profiles have.
LearnedFactor untaught_person();

}  // namespace detail

/// What journals taught. As it is made, before any journal: the bands of the profiles.
struct Shop {
  LearnedFactor person = detail::untaught_person();
  std::vector<LearnedPair> rates;
  std::vector<LearnedPair> scratches;
  std::vector<LearnedFilm> films;
  std::vector<LearnedJob> jobs;
  LearnedNoise minutes_noise{prior_minutes_noise, prior_noise_weight};
  LearnedNoise scratch_noise{prior_scratch_noise, prior_noise_weight};

  friend bool operator==(const Shop&, const Shop&) = default;
};

namespace detail {

/// Throws: BadInput where a pair, a coating or a job is repeated, or correlations contradict each other.
void in_accord(const Shop& shop, std::string_view where);

}  // namespace detail

template <std::same_as<Shop> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "Shop", "What journals taught; as it is made: the profiles' bands.",
        member<&Value::person>("person", "the person's pace over the computed one")
            .optional()
            .as(kind_with<LearnedFactor, described_pace<LearnedFactor>>),
        member<&Value::rates>(
            "rates", "removal rates over the computed ones, by coating and backing; each pair once")
            .optional(),
        member<&Value::scratches>(
            "scratches",
            "scratch depths over the computed ones, by coating and backing; each pair once")
            .optional()
            .as(kind_with<std::vector<LearnedPair>, described_scratch<LearnedPair>>),
        member<&Value::films>("films", "offsets of films by coating; each once").optional(),
        member<&Value::jobs>("jobs", "whose journals were learned from; each once").optional(),
        member<&Value::minutes_noise>("minutes_noise", "how minutes differ").optional(),
        member<&Value::scratch_noise>("scratch_noise", "how depths of scratches differ").optional())
        .rule(rule_by<&detail::in_accord>);

/// What an observation is of.
enum class ObservedKind { minutes, scratch, film };

constexpr std::string_view to_string(ObservedKind kind) noexcept {
  switch (kind) {
    case ObservedKind::minutes: return "minutes";
    case ObservedKind::scratch: return "scratch";
    case ObservedKind::film: return "film";
  }
  return "";
}

/// An observation that was set aside as it does not go with all others. It stays in the journal. sentence() of text/sentences.hpp
/// says it.
struct Outlier {
  ObservedKind kind = ObservedKind::minutes;
  std::string sheet{};  ///< id; empty of a film
  std::string zone{};   ///< empty: all
  Place place;
  double predicted = 0;  ///< as computed, before anything learned: minutes, or um
  double actual = 0;     ///< as the journal has it
  double t = 0;          ///< distance from what all others let expect, in spreads (dimensionless)
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
