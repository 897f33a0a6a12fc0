// The functions that rows of data/reference name, each a call into the library.
#pragma once

#include <algorithm>
#include <functional>
#include <map>
#include <numeric>
#include <sstream>
#include <string>
#include <vector>

#include "levigate/levigate.hpp"
#include "reference/reference.hpp"

namespace levigate_tests {

using Function = std::function<Value(const Inputs&)>;

inline levigate::Contact contact_of(const Inputs& in) {
  return levigate::contact({.size_um = in.number("size_um"),
                            .log_spread = in.number("log_spread"),
                            .tip_spread = in.number("tip_spread"),
                            .modulus_mpa = in.number("modulus_mpa"),
                            .pressure_kpa = in.number("pressure_kpa"),
                            .hardness_mpa = in.number("hardness_mpa"),
                            .flank_deg = in.number("flank_deg"),
                            .packing = in.number("packing")});
}

/// Latex paper of a grade under the pressure of a hand on a coat of the default kind: the state that
/// published roughness is compared with, as the tables do not state theirs.
inline levigate::Contact by_hand(const levigate::Grade& grade) {
  return levigate::contact({.size_um = grade.median_um,
                            .log_spread = levigate::log_spread(grade),
                            .tip_spread = levigate::backing_named("latex paper").tip_spread,
                            .modulus_mpa = levigate::backing_named("latex paper").modulus_mpa,
                            .pressure_kpa = 1.7,
                            .hardness_mpa = 150.0});
}

/// What a glossmeter reads at 60 degrees after such paper on two-part urethane, the mean of both lays.
inline double reading_by_hand_gu(const levigate::Grade& grade) {
  return levigate::mean_reading_gu(1.52, 60.0, levigate::rq_um(by_hand(grade)), 11.0);
}

/// Coefficient of determination of a straight line through that reading against Ra, from a last grade to P3000.
inline double reading_r_squared(const std::string& coarsest) {
  const std::vector<std::string> stages{"P600",  "P800",  "P1000", "P1200",
                                        "P1500", "P2000", "P3000"};
  double n = 0, x = 0, y = 0, xx = 0, yy = 0, xy = 0;
  for (auto at = std::find(stages.begin(), stages.end(), coarsest); at != stages.end(); ++at) {
    const levigate::Grade grade = levigate::grade(*at);
    const double ra = levigate::ra_um(by_hand(grade)), reading = reading_by_hand_gu(grade);
    n += 1;
    x += ra;
    y += reading;
    xx += ra * ra;
    yy += reading * reading;
    xy += ra * reading;
  }
  const double covariance = xy - x * y / n;
  return covariance * covariance / ((xx - x * x / n) * (yy - y * y / n));
}

/// Hours on one zone of a panel, sheet by sheet, with latex papers named as "P600 P800".
inline std::vector<double> hours_by_sheet(const Inputs& in) {
  using namespace levigate;
  Stack stack;
  std::vector<std::string> sequence;
  std::istringstream labels(in.text("sheets"));
  for (std::string label; labels >> label;) {
    Sheet sheet;
    sheet.id = sheet.label = label;
    sheet.backing = backing_named("latex paper");
    sheet.width_mm = 230;
    sheet.height_mm = 280;
    stack.sheets.push_back(sheet);
    sequence.push_back(label);
  }
  Job job;
  job.name = "panel";
  job.coating = coating_named(in.text("coating"));
  job.zones = {{.name = "top",
                .area_cm2 = in.number("area_cm2"),
                .block = block_named(in.text("block")),
                .film = Film{200, 6},
                .peel_um = in.number("peel_um"),
                .peel_wavelength_mm = in.number("peel_wavelength_mm")}};
  job.target.size_um = grade(sequence.back()).median_um;
  std::vector<double> hours;
  for (const Step& step : evaluate(job, stack, sequence).steps) {
    hours.push_back(step.zones.front().minutes / 60.0);
  }
  return hours;
}

inline levigate::WheelHeatInput wheel_of(const Inputs& in) {
  return {.effusivity = in.number("effusivity"),
          .friction = in.number("friction"),
          .pressure_kpa = in.number("pressure_kpa"),
          .speed_m_s = in.number("speed_m_s"),
          .share = in.number("share")};
}

inline levigate::System system_of(const Inputs& in) {
  return levigate::system_named(in.text("system")).value();
}

inline const levigate::CoatingProfile& coating_of(const Inputs& in) {
  return levigate::detail::profile_named(levigate::coating_table, in.text("coating"), "coating");
}

inline const std::map<std::string, Function>& functions() {
  using namespace levigate;
  static const std::map<std::string, Function> all{
      // grades
      {"median_um", [](const Inputs& in) { return grade(in.text("label")).median_um; }},
      {"highest_median_um",
       [](const Inputs& in) {
         const Grade g = grade(in.text("label"));
         return g.median_um + g.tolerance_um.value();
       }},
      {"lowest_median_um",
       [](const Inputs& in) {
         const Grade g = grade(in.text("label"));
         return g.median_um - g.tolerance_um.value();
       }},
      {"canonical_label", [](const Inputs& in) { return grade(in.text("label")).label; }},
      {"nearest_label",
       [](const Inputs& in) {
         return convert(grade(in.text("label")), system_of(in)).grade.label;
       }},
      {"size_ratio",
       [](const Inputs& in) {
         return grade(in.text("label_1")).median_um / grade(in.text("label_2")).median_um;
       }},
      {"log_spread", [](const Inputs& in) { return log_spread(grade(in.text("label"))); }},
      {"size_overlap",
       [](const Inputs& in) {
         return size_overlap(in.number("median_1_um"), in.number("log_spread_1"),
                             in.number("median_2_um"), in.number("log_spread_2"));
       }},
      // film
      {"dry_film_um",
       [](const Inputs& in) {
         return dry_film_um(in.number("wet_um"), in.number("volume_solids"), in.number("thinner"));
       }},
      {"wet_film_mil",
       [](const Inputs& in) {
         const double dry_um = um_from_mil(in.number("dry_mil"));
         return wet_film_um(dry_um, in.number("volume_solids")) / um_from_mil(1.0);
       }},
      {"cut_through",
       [](const Inputs& in) {
         return cut_through({.depth_um = in.number("depth_um"),
                             .mean_um = in.number("mean_um"),
                             .sd_um = in.number("sd_um"),
                             .removed_cv = in.number("removed_cv"),
                             .reserve_um = in.number("reserve_um"),
                             .spots = in.number("spots")});
       }},
      // wheel
      {"surface_speed_m_s",
       [](const Inputs& in) {
         return surface_speed_m_s(in.number("diameter_mm"), in.number("rpm"));
       }},
      {"surface_speed_of_inches_m_s",
       [](const Inputs& in) {
         return surface_speed_m_s(mm_from_inch(in.number("diameter_inch")), in.number("rpm"));
       }},
      {"surface_speed_ft_min",
       [](const Inputs& in) {
         return surface_speed_m_s(mm_from_inch(in.number("diameter_inch")), in.number("rpm")) /
                m_s_from_ft_min(1.0);
       }},
      {"temperature_rise_k",
       [](const Inputs& in) { return temperature_rise_k(wheel_of(in), in.number("dwell_s")); }},
      {"dwell_limit_s",
       [](const Inputs& in) {
         return dwell_limit_s(wheel_of(in), in.number("temperature_rise_k"));
       }},
      // sheen
      {"fresnel_reflectance",
       [](const Inputs& in) {
         return fresnel_reflectance(in.number("refractive_index"), in.number("angle_deg"));
       }},
      {"gloss_gu",
       [](const Inputs& in) {
         return gloss_gu(in.number("refractive_index"), in.number("angle_deg"), in.number("rq_um"));
       }},
      {"relative_gloss",
       [](const Inputs& in) {
         const double index = in.number("refractive_index"), angle_deg = in.number("angle_deg");
         return gloss_gu(index, angle_deg, in.number("rq_nm") / 1000.0) /
                gloss_gu(index, angle_deg, 0.0);
       }},
      {"reading_by_hand_gu",
       [](const Inputs& in) { return reading_by_hand_gu(grade(in.text("label"))); }},
      {"reading_r_squared",
       [](const Inputs& in) { return reading_r_squared(in.text("coarsest")); }},
      // roughness
      {"ra_by_hand_um", [](const Inputs& in) { return ra_um(by_hand(grade(in.text("label")))); }},
      {"ra_of_size_by_hand_um",
       [](const Inputs& in) { return ra_um(by_hand(sized_grade("paste", in.number("size_um")))); }},
      {"ra_per_size",
       [](const Inputs& in) {
         const Grade g = grade(in.text("label"));
         return ra_um(by_hand(g)) / g.median_um;
       }},
      {"ra_exponent",
       [](const Inputs& in) {
         const Grade a = grade(in.text("label_1")), b = grade(in.text("label_2"));
         return std::log(ra_um(by_hand(a)) / ra_um(by_hand(b))) /
                std::log(a.median_um / b.median_um);
       }},
      {"scratch_by_hand_um",
       [](const Inputs& in) { return scratch_depth_um(by_hand(grade(in.text("label"))), 0.99); }},
      {"depth_99_per_ra",
       [](const Inputs& in) {
         const Contact c = by_hand(grade(in.text("label")));
         return scratch_depth_um(c, 0.99) / ra_um(c);
       }},
      // rates
      {"size_effect_exponent",
       [](const Inputs& in) {
         const double a = in.number("size_1_um"), b = in.number("size_2_um");
         return std::log(size_effect(a) / size_effect(b)) / std::log(a / b);
       }},
      {"size_effect_ratio",
       [](const Inputs& in) {
         return size_effect(grade(in.text("label_1")).median_um) /
                size_effect(grade(in.text("label_2")).median_um);
       }},
      {"wear_coefficient",
       [](const Inputs& in) {
         return wear_coefficient(in.number("cutting_efficiency"), in.number("flank_deg"));
       }},
      {"removal_rate_um_per_m",
       [](const Inputs& in) {
         return removal_rate_um_per_m(in.number("wear_coefficient"), in.number("size_um"),
                                      in.number("pressure_kpa"), in.number("hardness_mpa"));
       }},
      {"removal_rate_um_per_min",
       [](const Inputs& in) {
         return removal_rate_um_per_m(in.number("wear_coefficient"), in.number("size_um"),
                                      in.number("pressure_kpa"), in.number("hardness_mpa")) *
                in.number("speed_m_s") * 60.0;
       }},
      {"clogging_share",
       [](const Inputs& in) {
         return clogging_share(in.number("clean_every_m"), in.number("fade_m"), in.number("floor"));
       }},
      // hours of a plan
      {"levelling_hours", [](const Inputs& in) { return hours_by_sheet(in).front(); }},
      {"later_hours",
       [](const Inputs& in) {
         const std::vector<double> hours = hours_by_sheet(in);
         return std::accumulate(hours.begin() + 1, hours.end(), 0.0);
       }},
      // contact
      {"contact_active_per_mm2", [](const Inputs& in) { return contact_of(in).active_per_mm2(); }},
      {"contact_mean_depth_um", [](const Inputs& in) { return contact_of(in).mean_depth_um(); }},
      {"contact_median_depth_um", [](const Inputs& in) { return contact_of(in).depth_um(0.5); }},
      {"contact_depth_99_um", [](const Inputs& in) { return contact_of(in).depth_um(0.99); }},
      // levelling
      {"critical_amplitude_um",
       [](const Inputs& in) {
         return critical_amplitude_um(in.number("wavelength_mm"), in.number("modulus_mpa"),
                                      in.number("pressure_kpa"));
       }},
      {"levelling_removal_um",
       [](const Inputs& in) {
         return levelling_removal_um({.peel_um = in.number("peel_um"),
                                      .wavelength_mm = in.number("wavelength_mm"),
                                      .modulus_mpa = in.number("modulus_mpa"),
                                      .pressure_kpa = in.number("pressure_kpa"),
                                      .residual_um = in.number("residual_um")});
       }},
      // profiles and rules
      {"coating_hardness_mpa", [](const Inputs& in) { return coating_of(in).hardness_mpa.value; }},
      {"coating_hardness_low_mpa",
       [](const Inputs& in) { return coating_of(in).hardness_mpa.low; }},
      {"coating_hardness_high_mpa",
       [](const Inputs& in) { return coating_of(in).hardness_mpa.high; }},
      {"block_pressure_kpa",
       [](const Inputs& in) { return block_named(in.text("block")).pressure_kpa(); }},
      {"block_speed_m_s", [](const Inputs& in) { return block_named(in.text("block")).speed_m_s; }},
      {"default_max_ratio", [](const Inputs&) { return Rules{}.max_ratio; }},
      {"default_min_ratio", [](const Inputs&) { return Rules{}.min_ratio; }},
      // units
      {"um_from_mil", [](const Inputs& in) { return um_from_mil(in.number("mil")); }},
      {"um_from_inch", [](const Inputs& in) { return um_from_inch(in.number("inch")); }},
      {"mm_from_inch", [](const Inputs& in) { return mm_from_inch(in.number("inch")); }},
      {"m_s_from_ft_min", [](const Inputs& in) { return m_s_from_ft_min(in.number("ft_min")); }},
      {"kpa_from_n_per_cm2",
       [](const Inputs& in) {
         return kpa_from_n_per_cm2(in.number("force_n"), in.number("area_cm2"));
       }},
      // special functions
      {"normal_tail", [](const Inputs& in) { return detail::normal_tail(in.number("x")); }},
      {"normal_quantile",
       [](const Inputs& in) { return detail::normal_quantile(in.number("tail")); }},
  };
  return all;
}

}  // namespace levigate_tests
