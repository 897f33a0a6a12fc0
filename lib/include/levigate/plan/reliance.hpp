// What a plan relies on: every input with its band and source, and how far the plan moves over that band.
#pragma once

#include <algorithm>
#include <cmath>
#include <functional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/plan/ladder.hpp"
#include "levigate/sourced.hpp"

namespace levigate::inline v0 {

/// One input of a plan. Where its band is not known, low and high equal the value.
struct Reliance {
  std::string subject;   ///< whose number it is, as "backing latex paper"
  std::string quantity;  ///< its name, with the unit as suffix, as "modulus_mpa"
  Sourced input;
  double minutes_low = 0;   ///< change of the plan's minutes with the input at its low end [min]
  double minutes_high = 0;  ///< the same at its high end [min]
  double film_low = 0;      ///< change of the share of film used by the worst zone at the low end
  double film_high = 0;     ///< the same at its high end

  /// Largest change, as a share of the plan's minutes or of the film budget, whichever is more.
  double influence = 0;
};

namespace detail {

/// Where a number of a profile stands in the table and in the value made from it.
template <typename Profile, typename Value>
struct ProfileField {
  std::string_view quantity;
  Sourced Profile::*sourced;
  double Value::*value;
};

inline constexpr ProfileField<CoatingProfile, Coating> coating_fields[] = {
    {"hardness_mpa", &CoatingProfile::hardness_mpa, &Coating::hardness_mpa},
    {"wear_coefficient", &CoatingProfile::wear_coefficient, &Coating::wear_coefficient},
    {"refractive_index", &CoatingProfile::refractive_index, &Coating::refractive_index},
};

inline constexpr ProfileField<BackingProfile, Backing> backing_fields[] = {
    {"tip_spread", &BackingProfile::tip_spread, &Backing::tip_spread},
    {"modulus_mpa", &BackingProfile::modulus_mpa, &Backing::modulus_mpa},
    {"life_m", &BackingProfile::life_m, &Backing::life_m},
    {"clean_every_m", &BackingProfile::clean_every_m, &Backing::clean_every_m},
    {"fade_m", &BackingProfile::fade_m, &Backing::fade_m},
    {"floor", &BackingProfile::floor, &Backing::floor},
};

inline constexpr ProfileField<BlockProfile, Block> block_fields[] = {
    {"modulus_mpa", &BlockProfile::modulus_mpa, &Block::modulus_mpa},
    {"area_cm2", &BlockProfile::area_cm2, &Block::area_cm2},
    {"force_n", &BlockProfile::force_n, &Block::force_n},
    {"speed_m_s", &BlockProfile::speed_m_s, &Block::speed_m_s},
    {"duty", &BlockProfile::duty, &Block::duty},
    {"wrap", &BlockProfile::wrap, &Block::wrap},
};

inline constexpr ProfileField<RuleProfile, Rules> rule_fields[] = {
    {"overcut", &RuleProfile::overcut, &Rules::overcut},
    {"scratch_quantile", &RuleProfile::scratch_quantile, &Rules::scratch_quantile},
    {"residual_peel_um", &RuleProfile::residual_peel_um, &Rules::residual_peel_um},
    {"change_minutes", &RuleProfile::change_minutes, &Rules::change_minutes},
    {"reserve_um", &RuleProfile::reserve_um, &Rules::reserve_um},
    {"removed_cv", &RuleProfile::removed_cv, &Rules::removed_cv},
    {"cut_through_limit", &RuleProfile::cut_through_limit, &Rules::cut_through_limit},
};

inline constexpr ProfileField<ModelProfile, Model> model_fields[] = {
    {"flank_deg", &ModelProfile::flank_deg, &Model::flank_deg},
    {"packing", &ModelProfile::packing, &Model::packing},
    {"size_exponent", &ModelProfile::size_exponent, &Model::size_exponent},
};

/// A number given by the user: its band is not known.
inline Sourced given(double value) {
  return {value, value, value, {Basis::user, "given by the user"}};
}

/// The table's number where the value in use is the table's, else one given by the user.
template <typename Profile, std::size_t count, typename Value>
Sourced traced(const Profile (&table)[count], std::string_view name,
               const ProfileField<Profile, Value>& field, double in_use) {
  for (const Profile& profile : table) {
    if (profile.name == name && (profile.*field.sourced).value == in_use)
      return profile.*field.sourced;
  }
  return given(in_use);
}

/// One input together with how to set it to another value everywhere it stands.
struct Knob {
  std::string subject;
  std::string quantity;
  Sourced input;
  std::function<void(Setup&, double)> set;
};

/// The band of a grade's median: its tolerance where known; else what the two published CAMI series differ by (3 %), or
/// for an extrapolation what the printed grades leave open (about 12 %).
inline Sourced median_band(const Grade& grade) {
  Sourced band = given(grade.median_um);
  band.source = grade.median_source;
  double half_um = grade.median_um * (grade.basis() == Basis::extrapolated ? 0.12 : 0.03);
  if (grade.basis() == Basis::user) half_um = 0;
  if (grade.tolerance_um) half_um = *grade.tolerance_um;
  band.low -= half_um;
  band.high += half_um;
  return band;
}

inline std::vector<Knob> knobs(const Setup& setup) {
  std::vector<Knob> result;
  for (const auto& field : coating_fields) {
    const Coating& coating = setup.job.coating;
    result.push_back({"coating " + coating.name, std::string(field.quantity),
                      traced(coating_table, coating.name, field, coating.*field.value),
                      [field](Setup& s, double value) { s.job.coating.*field.value = value; }});
  }

  std::set<std::string> seen;
  for (const Sheet& sheet : setup.stack.sheets) {
    const Backing backing = sheet.backing;
    if (!seen.insert(backing.name).second) continue;
    for (const auto& field : backing_fields) {
      result.push_back({"backing " + backing.name, std::string(field.quantity),
                        traced(backing_table, backing.name, field, backing.*field.value),
                        [field, backing](Setup& s, double value) {
                          for (Sheet& other : s.stack.sheets) {
                            if (other.backing == backing) other.backing.*field.value = value;
                          }
                        }});
    }
  }

  std::vector<Block> blocks;
  for (const Zone& zone : setup.job.zones) blocks.push_back(zone.block);
  for (const Sheet& sheet : setup.stack.sheets) {
    if (sheet.block) blocks.push_back(*sheet.block);
  }
  seen.clear();
  for (const Block& block : blocks) {
    if (!seen.insert(block.name).second) continue;
    for (const auto& field : block_fields) {
      result.push_back({"block " + block.name, std::string(field.quantity),
                        traced(block_table, block.name, field, block.*field.value),
                        [field, block](Setup& s, double value) {
                          for (Zone& zone : s.job.zones) {
                            if (zone.block == block) zone.block.*field.value = value;
                          }
                          for (Sheet& sheet : s.stack.sheets) {
                            if (sheet.block == block) (*sheet.block).*field.value = value;
                          }
                        }});
    }
  }

  for (const auto& field : rule_fields) {
    result.push_back({"rule", std::string(field.quantity),
                      traced(rule_table, "default", field, setup.job.rules.*field.value),
                      [field](Setup& s, double value) { s.job.rules.*field.value = value; }});
  }
  for (const auto& field : model_fields) {
    result.push_back({"model", std::string(field.quantity),
                      traced(model_table, "default", field, setup.model.*field.value),
                      [field](Setup& s, double value) { s.model.*field.value = value; }});
  }
  for (std::size_t i = 0; i < setup.grades.size(); ++i) {
    result.push_back({"grade " + setup.grades[i].label, "median_um", median_band(setup.grades[i]),
                      [i](Setup& s, double value) { s.grades[i].median_um = value; }});
    const Spread spread = levigate::spread(setup.grades[i]);
    const double value = spread.log_spread;
    result.push_back({"grade " + setup.grades[i].label,
                      "log_spread",
                      {value, 0.75 * value, 1.25 * value, spread.source},
                      [i](Setup& s, double changed) { s.log_spreads[i] = changed; }});
  }
  return result;
}

}  // namespace detail

/// What a sequence relies on, most influential first: each input is set to the ends of its band, all else and the
/// sequence as they are, and the sums worked out anew. What only touches gloss or paper has no influence and stands last.
///
/// A zone that the end of a band leaves hardly any budget counts as ten times over it.
///
/// @param bench     job and stack
/// @param sequence  of the bench
/// @return          one entry an input, by influence, then in the order coating, backings, blocks, rules, model, grades
/// Throws:    nothing that working out the sequence itself would not
/// NaN:       does not occur
/// Accuracy:  that of the sums; inputs are moved one at a time
/// Source:    bands: data/profiles and the grades' tolerances; a spread of grain sizes is taken to be known to a quarter
inline std::vector<Reliance> reliances(const Bench& bench, const Sequence& sequence) {
  Setup setup{bench.job, {bench.stack.bare_number, {}}, {}, {}, bench.model};
  std::vector<std::size_t> sheets;
  for (const std::size_t sheet : sequence.sheets) {
    sheets.push_back(sheets.size());
    setup.stack.sheets.push_back(bench.stack.sheets[sheet]);
    setup.grades.push_back(bench.grades[sheet]);
    setup.log_spreads.push_back(bench.log_spreads[sheet]);
  }
  const bool coat = bench.job.coating.kind == CoatingKind::coat;
  constexpr double most_film = 10.0;  // an end of a band may leave a zone no budget at all
  const auto sums = [&](const Setup& changed) {
    const Sequence sum = summed(levigate::bench(changed), sheets);
    const double film =
        static_cast<double>(sum.film.depth_pm) / static_cast<double>(sum.film.budget_pm);
    return std::pair(static_cast<double>(sum.milliseconds) / detail::ms_per_minute,
                     coat ? std::min(film, most_film) : 0.0);
  };
  const auto [minutes, film] = sums(setup);
  std::vector<Reliance> result;
  for (const detail::Knob& knob : detail::knobs(setup)) {
    Reliance& one = result.emplace_back(
        Reliance{.subject = knob.subject, .quantity = knob.quantity, .input = knob.input});
    for (const bool high : {false, true}) {
      Setup changed = setup;
      knob.set(changed, high ? knob.input.high : knob.input.low);
      const auto [new_minutes, new_film] = sums(changed);
      (high ? one.minutes_high : one.minutes_low) = new_minutes - minutes;
      (high ? one.film_high : one.film_low) = new_film - film;
    }
    one.influence =
        std::max({std::abs(one.minutes_low) / minutes, std::abs(one.minutes_high) / minutes,
                  std::abs(one.film_low), std::abs(one.film_high)});
  }
  std::stable_sort(result.begin(), result.end(),
                   [](const Reliance& a, const Reliance& b) { return a.influence > b.influence; });
  return result;
}

}  // namespace levigate
