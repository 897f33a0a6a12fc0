// What is believed before any journal, as variances from the bands of the profiles.
#pragma once

#include <cmath>
#include <cstddef>
#include <string_view>

#include "levigate/describe.hpp"
#include "levigate/detail/profile.hpp"
#include "levigate/film/gauge.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/spread.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/sourced.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/backing_table.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/stack/machine.hpp"
#include "levigate/stack/machine_table.hpp"
#include "levigate/stack/rule_table.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/contact.hpp"
#include "levigate/surface/model_table.hpp"
#include "levigate/surface/removal.hpp"
#include "levigate/surface/scratch.hpp"
#include "levigate/units.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Mean square of ln(f(x)/f(value)) where ln f spreads evenly over each half of the band [low, high], half of the cases in each.
template <typename Function>
double band_variance(const Sourced& band, Function f) {
  const double down = std::log(f(band.low) / f(band.value));
  const double up = std::log(f(band.high) / f(band.value));
  return (down * down + up * up) / 6.0;
}

inline double band_variance(const Sourced& band) {
  return band_variance(band, [](double x) { return x; });
}

/// Mean over the rows of that name, or over all where none has it: numbers of one's own are no better known.
template <typename Row, std::size_t count, typename Variance>
double row_variance(const Row (&table)[count], std::string_view name, Variance variance) {
  double sum = 0, all = 0;
  for (const Row& row : table) {
    if (row.name == name) return variance(row);
    sum += variance(row);
    all += 1;
  }
  return sum / all;
}

/// The state at which bands that act by way of a formula are weighed: P1000 paper under a hard block.
inline ContactInput nominal_input() {
  const Grade p1000 = grade("P1000");
  const BackingProfile& paper = profile_named(backing_table, "latex paper", "backing");
  const BlockProfile& block = profile_named(block_table, "hard block", "block");
  const CoatingProfile& coat = profile_named(coating_table, "two-part urethane", "coating");
  return {.size_um = p1000.median_um,
          .log_spread = log_spread(p1000),
          .tip_spread = paper.tip_spread.value,
          .modulus_mpa = paper.modulus_mpa.value,
          .pressure_kpa = kpa_from_n_per_cm2(block.force_n.value, block.area_cm2.value),
          .hardness_mpa = coat.hardness_mpa.value};
}

}  // namespace detail

/// How far a person's pace may be from what is computed, before any journal: the bands of duty, speed_m_s and force_n, as minutes
/// go with the inverse of all three; mean over the blocks.
///
///   V(band) = (ln(low / value)^2 + ln(high / value)^2) / 6,   summed over the three
///
/// @return  variance of ln duty_factor (dimensionless)
/// Throws:    nothing
/// NaN:       takes no numbers
/// Accuracy:  1e-9 relative, as part of learn()
/// Source:    block_table; even spread over each half of a band: assumption
inline double duty_variance() {
  return detail::row_variance(block_table, "", [](const BlockProfile& block) {
    return detail::band_variance(block.duty) + detail::band_variance(block.speed_m_s) +
           detail::band_variance(block.force_n);
  });
}

namespace detail {

inline double wear_variance(std::string_view coating) {
  return row_variance(coating_table, coating,
                      [](const CoatingProfile& p) { return band_variance(p.cutting_efficiency); });
}

/// What the numbers of a backing that act on the pace leave open of its share of the fresh rate.
inline double clogging_variance(const BackingProfile& profile) {
  const Backing backing = backing_named(profile.name);
  double sum = 0;
  for (const TableField<BackingProfile>& column : backing_columns) {
    const Member* member = description_of<Backing>().find(column.quantity);
    if (!member || member->input != Input::pace) continue;
    sum += band_variance(*column.number(profile), [&](double x) {
      Backing changed = backing;
      member->kind->set_number(member->in_mutable(&changed), x);
      return clogging_share(changed.clean_every_m, changed.fade_m, changed.floor);
    });
  }
  return sum;
}

}  // namespace detail

/// How far the rates of all backings on a coating may be from what is computed, in common.
///
///   common_wear_share V(cutting_efficiency) + V(tan flank_deg) + V(hardness_mpa)
///       + V(size effect on P1000 of size_exponent) + V(the same of saturation_um),   V: see duty_variance()
///
/// @param coating  its name; of none of the profiles: the mean over all of them
/// @return         variance of ln rate_factor that they share (dimensionless)
/// Throws:    nothing
/// NaN:       takes no numbers
/// Accuracy:  1e-9 relative, as part of learn()
/// Source:    coating_table, model_table, prior_table
inline double coating_variance(std::string_view coating) {
  const double size_um = detail::nominal_input().size_um;
  const ModelProfile& model = model_table[0];
  return common_wear_share * detail::wear_variance(coating) +
         detail::row_variance(
             coating_table, coating,
             [](const CoatingProfile& p) { return detail::band_variance(p.hardness_mpa); }) +
         detail::band_variance(model.flank_deg,
                               [](double flank_deg) { return wear_coefficient(1.0, flank_deg); }) +
         detail::band_variance(model.size_exponent,
                               [&](double exponent) {
                                 return size_effect_with(size_um, exponent,
                                                         model.saturation_um.value);
                               }) +
         detail::band_variance(model.saturation_um, [&](double saturation_um) {
           return size_effect_with(size_um, model.size_exponent.value, saturation_um);
         });
}

/// How far the pace of a machine may be from what is computed, before any journal: the bands of its numbers, as minutes go with the
/// inverse of force, mean speed and duty. It stands for a machine as duty_variance() does for a hand.
///
///   sum over the numbers of V(force speed duty),   mean over the machines;   V: see duty_variance()
///
/// @param machine  its name; of none of the profiles: the mean over all of them
/// @return         variance of ln of its pace (dimensionless)
/// Throws:    nothing
/// NaN:       takes no numbers
/// Accuracy:  1e-9 relative, as part of learn()
/// Source:    machine_table; see duty_variance() for V
inline double machine_variance(std::string_view machine) {
  return detail::row_variance(machine_table, machine, [](const MachineProfile& profile) {
    const Machine usual = machine_named(profile.name);
    double sum = 0;
    for (const TableField<MachineProfile>& column : machine_columns) {
      const Member* member = description_of<Machine>().find(column.quantity);
      const Sourced* band = column.number(profile);
      if (!band) continue;
      sum += detail::band_variance(*band, [&](double x) {
        Machine changed = usual;
        member->kind->set_number(member->in_mutable(&changed), x);
        return changed.force_n * changed.speed_m_s() * changed.duty;
      });
    }
    return sum;
  });
}

/// How far the rate of one backing on a coating may be from that of the others.
///
///   (1 - common_wear_share) V(cutting_efficiency) + sum of V(clogging share) over clean_every_m, fade_m and floor
///
/// and machine_variance() where a machine drives it.
///
/// @param coating  its name; of none of the profiles: the mean over all of them
/// @param backing  its name, or that of backing and machine as learned_name() has it; the same
/// @return         variance of ln rate_factor that the backing adds (dimensionless)
/// Throws:    nothing
/// NaN:       takes no numbers
/// Accuracy:  1e-9 relative, as part of learn()
/// Source:    coating_table, backing_table, prior_table; see duty_variance() for V
inline double backing_variance(std::string_view coating, std::string_view backing) {
  const auto [name, machine] = backing_and_machine(backing);
  return (1 - common_wear_share) * detail::wear_variance(coating) +
         detail::row_variance(backing_table, name, &detail::clogging_variance) +
         (machine.empty() ? 0.0 : machine_variance(machine));
}

/// How far the scratches of a backing on a coating may be from what is computed: on P1000 under a hard block.
///
///   V(depth of tip_spread) + V(depth of modulus_mpa) + V(depth of hardness_mpa),   V: see duty_variance()
///
/// @param coating  its name; of none of the profiles: the mean over all of them
/// @param backing  its name; the same
/// @return         variance of ln scratch_factor (dimensionless)
/// Throws:    nothing
/// NaN:       takes no numbers
/// Accuracy:  1e-9 relative, as part of learn()
/// Source:    backing_table, coating_table, contact(); see duty_variance() for V
inline double scratch_variance(std::string_view coating, std::string_view backing) {
  const auto over = [](ContactInput input, double ContactInput::*member, const Sourced& band) {
    return detail::band_variance(band, [&](double x) {
      input.*member = x;
      return scratch_depth_um(contact(input), rule_table[0].scratch_quantile.value);
    });
  };
  return detail::row_variance(backing_table, backing_and_machine(backing).first,
                              [&](const BackingProfile& p) {
                                ContactInput input = detail::nominal_input();
                                input.tip_spread = p.tip_spread.value;
                                input.modulus_mpa = p.modulus_mpa.value;
                                return over(input, &ContactInput::tip_spread, p.tip_spread) +
                                       over(input, &ContactInput::modulus_mpa, p.modulus_mpa);
                              }) +
         detail::row_variance(coating_table, coating, [&](const CoatingProfile& p) {
           ContactInput input = detail::nominal_input();
           input.hardness_mpa = p.hardness_mpa.value;
           return over(input, &ContactInput::hardness_mpa, p.hardness_mpa);
         });
}

/// How far a film may be from what the coats say, before any journal: the accuracy of a wet comb on a usual round of coats.
///
///   uncertainty_um(wet comb, usual_film_um)^2
///
/// @return  variance of the film's offset [um2]
/// Throws:    nothing
/// NaN:       takes no numbers
/// Accuracy:  1e-9 relative, as part of learn()
/// Source:    gauge_table, prior_table
inline double film_variance_um2() {
  const double sd_um = uncertainty_um(gauge_named("wet comb"), usual_film_um);
  return sd_um * sd_um;
}

}  // namespace levigate
