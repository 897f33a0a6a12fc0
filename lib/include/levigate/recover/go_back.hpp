// Where to go back to for a mark: which step first, how much to take off with it, and what if the mark is seen again.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "levigate/plan/caution.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/recover/cause.hpp"
#include "levigate/recover/done.hpp"
#include "levigate/recover/policy.hpp"
#include "levigate/stack/stack.hpp"

namespace levigate::inline v0 {

/// A step of a try.
struct TryStep {
  std::string sheet;      ///< id
  double removal_um = 0;  ///< to take off with it [um]
  double minutes = 0;     ///< sanding, without the change [min]
};

/// One try: back to a sheet and up again.
struct Try {
  std::vector<TryStep> steps;  ///< the sheet gone back to, then those after it as in the plan
  double removal_um = 0;       ///< that they take off in all [um]
  double minutes = 0;          ///< of all, with changing, washing and looking [min]
  double gone_chance = 0;      ///< that the mark is gone after it, given that it was not before
};

/// What going back to one sheet takes.
struct Reentry {
  std::string sheet;  ///< id
  Climb climb;
  double removal_um =
      0;  ///< that it takes off where it is climbed through: the scratches before it [um]
};

/// The way back, or why there is none.
struct WayBack {
  bool found = false;
  Diagnosis diagnosis;
  std::vector<Reentry> reentries;    ///< each sheet one can go back to, coarse to fine
  std::vector<Try> tries;            ///< the second is for when the mark is seen again, and so on
  double expected_minutes = 0;       ///< another round, where it comes to that, included [min]
  double round_minutes = 0;          ///< of another round with all steps again [min]
  double gone_chance = 0;            ///< that one of the tries removes it
  std::optional<double> film_um;     ///< that may still come off here [um]; none on a solid
  std::string why;                   ///< where there is no way back
  std::vector<std::string> remains;  ///< what can still be done then
  std::vector<Caution> cautions;
};

/// The same from a job and a stack.
WayBack go_back(const Job& job, const Stack& stack, const std::vector<DoneStep>& done,
                const Mark& mark);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/recover/work/go_back.hpp"
#endif
