// The work behind wheel/compound.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>

#include "levigate/wheel/compound.hpp"

#include "levigate/detail/profile.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/detail/work/filled.hpp"
#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/spread.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/stack/rule_table.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/contact.hpp"
#include "levigate/surface/removal.hpp"
#include "levigate/surface/scratch.hpp"
#include "levigate/surface/work/wear.hpp"
#include "levigate/wheel/compound_table.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK double paper_scratch_um(double size_um, double hardness_mpa) {
  const Backing paper = backing_named("latex paper");
  return scratch_depth_um(contact({.size_um = size_um,
                                   .log_spread = log_spread(grade("P2500")),
                                   .tip_spread = paper.tip_spread,
                                   .modulus_mpa = paper.modulus_mpa,
                                   .pressure_kpa = block_named("hard block").pressure_kpa(),
                                   .hardness_mpa = hardness_mpa}),
                          rule_table[0].scratch_quantile.value);
}

LEVIGATE_WORK Compound compound_named(std::string_view name, const Coating& coating) {
  validate(coating, "compound_named");
  const CompoundProfile& p = detail::profile_named(compound_table, name, "compound");
  return {.name = std::string(p.name),
          .size_um = p.size_um.value,
          .worn_um = p.worn_um.value,
          .coarsest_scratch_um = paper_scratch_um(p.coarsest_paper_um.value, coating.hardness_mpa),
          .wear_share = p.wear_share.value};
}

LEVIGATE_WORK void validate(const Compound& compound, std::string_view where) {
  detail::require_range(compound.size_um, 0.01, 100.0, "size_um", "um", where);
  detail::require_range(compound.worn_um, 0.01, compound.size_um, "worn_um (up to size_um)", "um",
                        where);
  detail::require_range(compound.coarsest_scratch_um, 1e-3, 100.0, "coarsest_scratch_um", "um",
                        where);
  detail::require_range(compound.wear_share, 1e-3, 1.0, "wear_share", "", where);
}

LEVIGATE_WORK Polish polish_named(std::string_view name) {
  const CompoundProfile& p = detail::profile_named(compound_table, name, "compound");
  Polish polish = detail::filled<Polish>(p, compound_columns);
  polish.reach = PaperReach{p.coarsest_paper_um.value};
  polish.basis = p.size_um.source.basis;
  return polish;
}

namespace detail {

/// The buff of a compound of that name and grain.
inline Backing buff_named(const std::string& compound, double size_um, double worn_um) {
  const CompoundProfile* found = nullptr;
  for (const CompoundProfile& p : compound_table) {
    if (p.name == compound || (found == nullptr && p.name == "medium")) found = &p;
  }
  Backing buff = filled<Backing>(*found, compound_columns);
  buff.name = compound + " compound on a buff";
  buff.floor = size_effect(worn_um) / size_effect(size_um);
  return buff;
}

}  // namespace detail

LEVIGATE_WORK Backing compound_backing(const Compound& compound) {
  validate(compound, "compound '" + compound.name + "'");
  return detail::buff_named(compound.name, compound.size_um, compound.worn_um);
}

LEVIGATE_WORK Backing buff_of(const Polish& polish) {
  validate(polish, "compound '" + polish.name + "'");
  return detail::buff_named(polish.name, polish.size_um, polish.worn_um);
}

LEVIGATE_WORK double compound_rate_um_per_m(const Compound& compound, const Coating& coating,
                                            double pressure_kpa) {
  const Backing buff = compound_backing(compound);
  return removal_rate_um_per_m(compound.wear_share * wear_of(coating, Model{}), compound.size_um,
                               pressure_kpa, coating.hardness_mpa) *
         clogging_share(buff.clean_every_m, buff.fade_m, buff.floor);
}

}  // namespace levigate
