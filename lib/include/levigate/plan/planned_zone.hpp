// A zone of a plan: as the plan finds it, and what the sun shows of it in the end.
#pragma once

#include <optional>
#include <string>

#include "levigate/describe.hpp"
#include "levigate/film/film.hpp"
#include "levigate/surface/peel.hpp"

namespace levigate::inline v0 {

/// A zone as a plan finds it, and what the sun shows of it in the end.
struct PlannedZone {
  std::string zone;
  double area_cm2 = 0;
  std::string block;
  std::optional<double> film_um{};
  std::optional<double> film_sd_um{};
  std::optional<double> budget_um{};
  std::string stands;
  std::optional<double> film_se_um{};
  std::optional<FilmHow> film_how{};
  std::optional<double> below_um{};
  std::optional<double> peel_um{};
  std::optional<double> peel_factor{};
  std::optional<PeelHow> peel_how{};
  std::optional<double> levelled_peel_um{};
  bool usual_spread = false;
  std::optional<double> usual_wavelength_mm{};
  double marks = 0;
  double clean_chance = 1;
  double back_minutes = 0;

  friend bool operator==(const PlannedZone&, const PlannedZone&) = default;
};

template <std::same_as<PlannedZone> Value>
inline constexpr auto described<Value> = describe<Value>(
    "PlannedZone", "A zone as the plan finds it, and what the sun shows of it in the end.",
    member<&Value::zone>("zone", "its name"),
    member<&Value::area_cm2>("area_cm2", at_least(0), "to be sanded"),
    member<&Value::block>("block", "that works it where a sheet brings no tool of its own"),
    member<&Value::film_um>("film_um", at_least(0), "film on the mean; none on a solid"),
    member<&Value::film_sd_um>(
        "film_sd_um", at_least(0),
        "spread of the film at a spot, its uncertainty included; none on a solid"),
    member<&Value::film_se_um>("film_se_um", at_least(0),
                               "standard error of film_um; none on a solid"),
    member<&Value::film_how>("film_how", "how film_um was got; none on a solid"),
    member<&Value::below_um>("below_um", at_least(0),
                             "film of the rounds below, which film_um leaves out and a gauge reads "
                             "too; 0 where rounds melt together; none on a solid"),
    member<&Value::budget_um>("budget_um", at_least(0),
                              "most depth allowed, scratches included; none on a solid"),
    member<&Value::peel_um>(
        "peel_um", at_least(0),
        "orange peel that the first step levels, peak to valley; none: no peel"),
    member<&Value::peel_factor>("peel_factor", at_least(1),
                                "by which the peel may be off, one standard deviation"),
    member<&Value::peel_how>("peel_how", "how the peel was told"),
    member<&Value::levelled_peel_um>(
        "levelled_peel_um", at_least(0),
        "orange peel that was levelled since film was read; none: no such peel"),
    member<&Value::usual_spread>("usual_spread",
                                 "true: nobody told the spread of the film, it is taken as usual")
        .only_where_told(),
    member<&Value::usual_wavelength_mm>(
        "usual_wavelength_mm", at_least(0),
        "from crest to crest of the peel, where it is taken as usual; none: told, or no peel")
        .only_where_told(),
    member<&Value::marks>(
        "marks", at_least(0),
        "spots of 1 cm2 that are expected to show a mark in the sun after the last "
        "step"),
    member<&Value::clean_chance>("clean_chance", Within{0, 1}, "that the sun shows no mark there"),
    member<&Value::back_minutes>("back_minutes", at_least(0),
                                 "that going back for marks is expected to take"),
    member<&Value::stands>("stands", "label of the grade it carries; empty: as sprayed"));

}  // namespace levigate
