// How much to spray: coats, film and paint of each zone, with the chance that they suffice.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/film/gun_table.hpp"
#include "levigate/plan/caution.hpp"
#include "levigate/plan/why.hpp"

namespace levigate::inline v0 {

/// How one sprays. What is absent is usual for the coating or the gun: data/profiles.
struct SprayOptions {
  std::string gun{gun_table[0].name};
  std::optional<double> volume_solids{};
  double thinner = 0;
  std::optional<double> dry_um_per_coat{};
  std::optional<double> film_cv{};
  std::optional<double> transfer_efficiency{};
  std::optional<double> loss_share{};
  bool way_back = false;

  friend bool operator==(const SprayOptions&, const SprayOptions&) = default;
};

template <std::same_as<SprayOptions> Value>
inline constexpr auto described<Value> = describe<Value>(
    "SprayOptions", "How one sprays.", member<&Value::gun>("gun", "name of its kind"),
    member<&Value::volume_solids>("volume_solids", Within{0.01, 1},
                                  "share of the paint's volume that stays, by its data sheet"),
    member<&Value::thinner>("thinner", Within{0, 10}, "volume for one of paint"),
    member<&Value::dry_um_per_coat>("dry_um_per_coat", Within{1, 2000}, "dry film of a coat")
        .in_unit("um"),
    member<&Value::film_cv>("film_cv", Within{0, 0.5},
                            "spread of the film from spot to spot, over its mean"),
    member<&Value::transfer_efficiency>("transfer_efficiency", Within{0.05, 1},
                                        "share of the spray that lands on the work"),
    member<&Value::loss_share>("loss_share", Within{0, 0.9},
                               "share of the mix that stays in cup and hose"),
    member<&Value::way_back>("way_back", "whether to keep film for one way back"));

/// What to spray on one zone.
struct SprayedZone {
  std::string zone;
  double area_cm2 = 0;
  std::string edge_of;
  int coats = 0;
  double film_um = 0;
  double wanted_um = 0;
  double depth_um = 0;
  double way_back_um = 0;
  double chance = 0;
  double mix_ml = 0;

  friend bool operator==(const SprayedZone&, const SprayedZone&) = default;
};

template <std::same_as<SprayedZone> Value>
inline constexpr auto described<Value> = describe<Value>(
    "SprayedZone", "What to spray on one zone.", member<&Value::zone>("zone", "its name"),
    member<&Value::area_cm2>("area_cm2", at_least(0), "to be sprayed"),
    member<&Value::edge_of>("edge_of", "flat that it is sprayed with; empty: a flat"),
    member<&Value::coats>("coats", Within{1, 1e6}, "of the last round"),
    member<&Value::film_um>("film_um", at_least(0), "dry film on the mean that these coats leave"),
    member<&Value::wanted_um>("wanted_um", at_least(0),
                              "least dry film on the mean that holds depth_um and way_back_um"),
    member<&Value::depth_um>("depth_um", at_least(0), "that the plan reaches, scratches included"),
    member<&Value::way_back_um>("way_back_um", at_least(0), "more, kept for one way back"),
    member<&Value::chance>("chance", Within{0, 1}, "that no spot cuts through to the reserve"),
    member<&Value::mix_ml>("mix_ml", at_least(0), "paint and thinner to mix"));

/// How much to spray.
struct Spraying {
  std::string job;
  std::string coating;
  SprayOptions how;
  double wet_um_per_coat = 0;
  std::vector<SprayedZone> zones;
  double chance = 0;
  double mix_ml = 0;
  std::optional<Why> why{};
  std::vector<Caution> cautions;

  friend bool operator==(const Spraying&, const Spraying&) = default;
};

template <std::same_as<Spraying> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Spraying", "How much to spray: coats, film and paint, and the chance that they suffice.",
    member<&Value::job>("job", "its name"), member<&Value::coating>("coating", "its name"),
    member<&Value::how>("how", "every number that it rests on"),
    member<&Value::wet_um_per_coat>("wet_um_per_coat", at_least(0), "wet film of a coat")
        .in_unit("um"),
    member<&Value::zones>("zones", "as in the job; empty where no film is enough"),
    member<&Value::chance>("chance", Within{0, 1},
                           "that no zone cuts through, each as if by itself"),
    member<&Value::mix_ml>("mix_ml", at_least(0), "paint and thinner to mix for one and all"),
    member<&Value::why>("why", "why no film is enough"),
    member<&Value::cautions>("cautions", "most serious first"));

}  // namespace levigate
