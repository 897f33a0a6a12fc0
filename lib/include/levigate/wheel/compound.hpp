// A polishing compound: how large its grain is, fresh and broken down, and how deep a scratch it can take out.
#pragma once

#include <string>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/polish.hpp"
#include "levigate/surface/coating.hpp"

namespace levigate::inline v0 {

/// A compound on a coat.
struct Compound {
  std::string name;
  double size_um = 0;              ///< median grain size as charged [um], 0.01 to 100
  double worn_um = 0;              ///< once broken down in use [um], 0.01 to size_um
  double coarsest_scratch_um = 0;  ///< depth of the deepest scratch it removes [um], 0.001 to 100
  double wear_share =
      0;  ///< of the wear coefficient of held grain that its grain reaches, 0.001 to 1

  friend bool operator==(const Compound&, const Compound&) = default;
};

/// Depth that waterproof paper of a grain size scratches a film under the hard block of the profiles: what
/// the profiles measure the reach of a compound by. Spread of P2500, the finest paper with limits.
/// Formulas: contact(), scratch_depth_um() with the default quantile.
/// Throws: OutOfRange where a number is outside the domain of contact().
double paper_scratch_um(double size_um, double hardness_mpa);

/// The compound of that name in the profiles, for a coating: the paper that it follows scratches a soft
/// coat deeper, and the compound cuts it faster.
/// Throws: BadInput where there is none, naming the nearest; OutOfRange as validate(Coating).
Compound compound_named(std::string_view name, const Coating& coating);

/// Throws: OutOfRange where a member is outside its range.
void validate(const Compound& compound, std::string_view where);

/// The compound of that name in the profiles, as it lies in the drawer: its reach is that of paper, as a drawer does not know the
/// coat that the paper scratches.
/// Throws: BadInput where there is none, naming the nearest.
Polish polish_named(std::string_view name);

/// The buff that carries a compound, as a backing: its grain breaks down where paper clogs, and being
/// charged anew restores it. The floor of the rate is that of the worn grain, by the size effect:
///
///   floor = eta(worn) / eta(size)
///
/// The other numbers are those of the profile of that name, else those of the medium compound.
/// Throws: as validate().
Backing compound_backing(const Compound& compound);

/// The same of a compound in the drawer.
/// Throws: as validate().
Backing buff_of(const Polish& polish);

/// Film that a compound removes per metre of travel, mean between two charges.
///
///   rate = wear_share K eta(size) P / H x clogging_share
///
/// Formulas: removal_rate_um_per_m(), clogging_share().
/// Throws: OutOfRange where a number is outside their domains.
double compound_rate_um_per_m(const Compound& compound, const Coating& coating,
                              double pressure_kpa);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/wheel/work/compound.hpp"
#endif
