// The bench sheet: what a finisher needs of a plan at the bench, on one page a job, as text and as a page to print.
#pragma once

#include <string>

#include "levigate/error.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/risk/simulation.hpp"
#include "levigate/text/sheet_facts.hpp"
#include "levigate/text/shown_units.hpp"

namespace levigate::inline v0 {

/// What the bench sheet of a plan says. Its minutes are at usual numbers.
BenchSheet bench_sheet(const Plan& plan, ShownUnits units = ShownUnits::metric);

/// The same with medians for minutes, and what they lie between four times in five.
/// Throws: BadInput where the simulation has not the steps and zones of the plan
BenchSheet bench_sheet(const Plan& plan, const Simulation& simulation,
                       ShownUnits units = ShownUnits::metric);

/// As plain text, at most card_columns wide.
std::string sheet_text(const BenchSheet& sheet);

/// As one HTML file that needs nothing beside it, for paper of A4 or Letter and for a phone.
std::string sheet_html(const BenchSheet& sheet);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/text/work/bench_sheet.hpp"
#endif
