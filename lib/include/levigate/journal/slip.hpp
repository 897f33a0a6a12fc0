// When an observation of a journal is a slip: of the pen, and is set aside; or of the unit, and is refused before it is written.
#pragma once

#include "levigate/error.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// An observation that lies this many times its spread from what all others let expect is set aside.
inline constexpr double outlier_line = 5;

inline constexpr Source outlier_source{
    Basis::assumption,
    "beyond five spreads, a slip of the pen is likelier than a day like any other"};

/// A gauge's reading above this share of the film as the job tells it is most likely of another unit or place.
inline constexpr double unit_slip_most = 1.5;
/// And one below this share: a mil is 25 um, a millimetre 1000.
inline constexpr double unit_slip_least = 0.1;

inline constexpr Source unit_slip_source{
    Basis::assumption,
    "coats differ by less than half from what they were meant to be, and sanding that leaves less "
    "than a tenth of a film is not planned; another unit is off by 25 times or more"};

/// Refuses readings of a film that are most likely a slip: of the unit, or of the place.
///
///   unit_slip_least <= reading / film <= unit_slip_most,   film: of all rounds, as the job tells it
///
/// @param entry  about to be recorded; one of another kind than film_read, and one of a zone without film, passes
/// @param job    it is of
/// Throws:    BadInput with the value, the film and the unit
/// NaN:       a reading that is not a number is left to validate(Entry)
/// Source:    unit_slip_source
void require_likely_readings(const Entry& entry, const Job& job);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/journal/work/slip.hpp"
#endif
