// The film on the work: how thick, how deep one may go, and the chance of cutting through.
#include "elementwise.hpp"
#include "levigate/film/budget.hpp"
#include "levigate/film/common_errors.hpp"
#include "levigate/film/cut_through.hpp"
#include "levigate/film/film.hpp"
#include "levigate/film/gauge.hpp"
#include "made.hpp"

namespace levigate_python {

namespace {

constexpr double peel_may_stay_um = levigate::CommonErrors{}.residual_um;

}  // namespace

void bind_film(py::module_& m) {
  using levigate::Film;
  using py::arg;
  ValueClass<Film> film = describe_class<Film>(m);
  film.has("spot_sd_um", &levigate::spot_sd_um,
           "standard deviation to predict one spot with, the standard errors included [um]")
      .finish();
  make_by_keywords(film, levigate::film_keys());

  m.def(
      "film_from_readings",
      [](const std::vector<double>& readings_um) {
        return levigate::film_from_readings(readings_um);
      },
      arg("readings_um"),
      "Film estimated from a gauge's readings at independent spots.\n\n"
      "readings_um: at least 2, each 0 to 20 000 um. Raises BadInput, OutOfRange.\n"
      "Source: normal sampling theory, from memory (Kenney & Keeping, Mathematics of Statistics).");
  m.def(
      "film_from_coats",
      [](int coats, double dry_um_per_coat, double sd_um) {
        return levigate::film_from_coats(coats, dry_um_per_coat, sd_um);
      },
      py::kw_only(), arg("coats"), arg("dry_um_per_coat"), arg("sd_um"),
      "Film of a round of equal coats, with the error of coats that were counted.\n\n"
      "coats: 1 to 1000; dry_um_per_coat: 0 to 2000 um; sd_um: of the whole film from spot to\n"
      "spot, 0 to 20 000 um. Raises OutOfRange. Source: arithmetic; the error: an assumption.");
  def_elementwise(m, "dry_film_um", &levigate::dry_film_um,
                  "Dry film that a wet film leaves [um].\n\n"
                  "wet_um: as sprayed, 0 to 20 000 um; volume_solids: share that stays, 0 to 1;\n"
                  "thinner: volume per volume of paint, 0 to 10.\n"
                  "Raises OutOfRange. NaN in, NaN out. Source: conservation of volume.",
                  arg("wet_um"), arg("volume_solids"), arg("thinner") = 0.0);
  def_elementwise(m, "wet_film_um", &levigate::wet_film_um,
                  "Wet film that leaves a dry film [um]: the inverse of dry_film_um().\n\n"
                  "dry_um: 0 to 20 000 um; volume_solids: share that stays, 0.001 to 1;\n"
                  "thinner: volume per volume of paint, 0 to 10.\n"
                  "Raises OutOfRange. NaN in, NaN out. Source: conservation of volume.",
                  arg("dry_um"), arg("volume_solids"), arg("thinner") = 0.0);
  def_elementwise(
      m, "cut_through",
      [](double depth_um, double mean_um, double sd_um, double removed_cv, double reserve_um,
         double spots, double mean_se_um, double sd_se_um, double readings, double peel_um,
         double peel_factor, double critical_um, double residual_um) {
        return levigate::cut_through(
            {depth_um,
             mean_um,
             sd_um,
             removed_cv,
             reserve_um,
             spots,
             {mean_se_um, sd_se_um, readings, peel_um, peel_factor, critical_um, residual_um}});
      },
      "Chance that some spot of a zone ends with less film than the reserve, 0 to 1.\n\n"
      "depth_um: to be reached, scratches included, 0 to 1e9 um; mean_um, sd_um: of the film,\n"
      "0 to 20 000 um; removed_cv: spread of the depth over the depth, 0 to 2; reserve_um: film\n"
      "that must stay, 0 to 20 000 um; spots: independent ones, one per cm2, 1 to 1e9.\n"
      "Errors that all spots share: mean_se_um, sd_se_um: standard errors of mean_um and sd_um,\n"
      "0 to 20 000 um; readings: that both rest on, 0 to 1e6, 0: none; peel_um: height of the\n"
      "orange peel that the depth levels, 0 to 10 000 um; peel_factor: by which that may be off,\n"
      "one standard deviation, 1 to 10; critical_um: critical_amplitude_um() of what levels it,\n"
      "0 to 1e9 um; residual_um: peel that may stay, 0.001 to 10 000 um.\n"
      "Raises OutOfRange. NaN in, NaN out. Accuracy with such errors: 1e-3 relative, chances from "
      "1e-10 to 0.5.\n"
      "Source: normal film and depth, independent from spot to spot: assumptions.",
      arg("depth_um"), arg("mean_um"), arg("sd_um"), arg("removed_cv"), arg("reserve_um"),
      arg("spots"), arg("mean_se_um") = 0.0, arg("sd_se_um") = 0.0, arg("readings") = 0.0,
      arg("peel_um") = 0.0, arg("peel_factor") = 1.0, arg("critical_um") = 0.0,
      arg("residual_um") = peel_may_stay_um);
  def_elementwise(
      m, "depth_budget_um",
      [](double mean_um, double sd_um, double removed_cv, double reserve_um, double spots,
         double cut_through_limit, double mean_se_um, double sd_se_um, double readings,
         double peel_um, double peel_factor, double critical_um, double residual_um) {
        return levigate::depth_budget_um(
            {mean_um,
             sd_um,
             removed_cv,
             reserve_um,
             spots,
             cut_through_limit,
             {mean_se_um, sd_se_um, readings, peel_um, peel_factor, critical_um, residual_um}});
      },
      "Depth at which cut_through() reaches a limit [um], 0 to infinity.\n\n"
      "Arguments as for cut_through(); cut_through_limit: chance accepted, 1e-100 to 1.\n"
      "Raises OutOfRange. NaN in, NaN out. Source: that of cut_through().",
      arg("mean_um"), arg("sd_um"), arg("removed_cv"), arg("reserve_um"), arg("spots"),
      arg("cut_through_limit"), arg("mean_se_um") = 0.0, arg("sd_se_um") = 0.0,
      arg("readings") = 0.0, arg("peel_um") = 0.0, arg("peel_factor") = 1.0,
      arg("critical_um") = 0.0, arg("residual_um") = peel_may_stay_um);
}

}  // namespace levigate_python
