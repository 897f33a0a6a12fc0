// What a bench sheet says, row by row, in the units it is shown in: text and page are two forms of it.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// Chances of cutting through are told from this share of the plan's own limit on. At the usual limit of 1 % that is 1 in 1000:
/// what lies below it adds less than a tenth to the risk that the plan accepts. An assumption.
inline constexpr double told_share_of_limit = 0.1;

/// What a step asks of one zone.
struct SheetZone {
  std::string zone;
  std::string tool;
  std::string take_off;  ///< a depth, "light pass", "keep off" or "pass by"
  std::string time;      ///< as usual; empty where it does not count
  std::string stop;      ///< reading of a gauge to stop at, or why there is none; empty: not worked
  std::string chance;    ///< of cutting through; empty where it is negligible
  bool worked = true;
};

/// One step.
struct SheetStep {
  std::string take;                ///< the sheet, its label, size and maker
  std::string beware;              ///< a sheet that one might take for it; may be empty
  std::string way;                 ///< what to do, and which way
  std::string look;                ///< by what one sees that it is done
  std::vector<std::string> notes;  ///< edges, wheel, machine, a rest
  std::vector<SheetZone> zones;
  std::string time;    ///< as usual, with its range where a simulation tells it
  std::string upkeep;  ///< when to rinse and change; may be empty
};

/// Runs, nibs and the like of one zone, before the first step.
struct SheetTask {
  std::string zone;
  std::string what;
  std::string tool;
  std::string how;
  std::string time;
};

/// A zone in the picture, to scale [um, cm2], with its words.
struct SheetBar {
  std::string zone;
  double area_cm2 = 0;
  std::string area;
  std::optional<double> film_um;  ///< of the last round, as the plan starts; none on a solid
  double below_um = 0;            ///< of the rounds below
  std::optional<double> stop_um;  ///< where the budget ends, down to the bottom; none: no limit
  std::vector<double> takes_um;   ///< what each step takes off
  std::string film;               ///< film_um and below_um in words
  std::string stop;               ///< stop_um in words
  std::string takes;              ///< takes_um in words
};

/// All of it.
struct BenchSheet {
  std::string job;
  std::string on;  ///< coating and how it stands
  std::string goal;
  std::string time;     ///< steps and time in all; empty without a plan
  std::string lay_out;  ///< whole sheets
  std::string no_plan;  ///< why there is none; empty where there is one
  std::vector<std::string> urgent;
  std::vector<std::string> cautions;
  std::vector<std::string> reading;  ///< how to read the figures of the steps
  std::vector<SheetTask> before;
  std::string before_done;  ///< by what one sees that these are done
  std::vector<SheetStep> steps;
  std::vector<std::string> sun;  ///< the last look
  std::string more;              ///< where the explanation is
  std::vector<SheetBar> bars;
  std::string film_unit;
  bool gauge = false;    ///< whether any zone has a gauge line
  bool chances = false;  ///< whether any chance is told
};

}  // namespace levigate
