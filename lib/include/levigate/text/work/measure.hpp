// Numbers with their units as a bench sheet shows them.
#pragma once

#include <cmath>
#include <string>

#include "levigate/detail/text.hpp"
#include "levigate/text/shown_units.hpp"
#include "levigate/units.hpp"

namespace levigate::inline v0 {

namespace detail {

class Measure {
 public:
  explicit Measure(ShownUnits units) : us_(units == ShownUnits::us) {}

  std::string film_unit() const { return us_ ? "mil" : "um"; }

  /// A depth without its unit: "17.2", "0.68".
  std::string depth(double um) const {
    if (um == 0.0) return "0";
    if (us_) return fixed(mil_from_um(um), um < 2.5 ? 3 : 2);
    return fixed(um, um < 0.1 ? 2 : 1);
  }
  std::string depth_text(double um) const { return depth(um) + " " + film_unit(); }

  /// A depth that may be far below a micrometre.
  std::string fine_depth(double um) const {
    if (us_) return fixed(mil_from_um(um), um < 0.25 ? 4 : 3) + " mil";
    return fixed(um, um < 0.095 ? 3 : 2) + " um";
  }

  /// What a gauge reads, without its unit: "92", "3.62".
  std::string level(double um) const { return us_ ? fixed(mil_from_um(um), 2) : fixed(um, 0); }
  std::string level_text(double um) const { return level(um) + " " + film_unit(); }

  /// A reading to stop at, without its unit: never below the one that is meant.
  std::string stop_level(double um) const {
    constexpr double steps_per_mil = 100.0, rounding = 1e-9;
    if (!us_) return fixed(std::ceil(um - rounding), 0);
    return fixed(std::ceil(steps_per_mil * mil_from_um(um) - rounding) / steps_per_mil, 2);
  }

  /// The size of a grain.
  std::string size(double um) const {
    return us_ ? fixed(mil_from_um(um), um < 2.5 ? 3 : 2) + " mil" : size_text(um);
  }

  std::string area(double cm2) const {
    return us_ ? fixed(in2_from_cm2(cm2), 1) + " in2" : fixed(cm2, 0) + " cm2";
  }

  /// A length without its unit: "35", "1.38".
  std::string length(double mm) const {
    return us_ ? fixed(inch_from_mm(mm), 2) : fixed(mm, mm < 10.0 && mm != std::floor(mm) ? 1 : 0);
  }
  std::string length_unit() const { return us_ ? "in" : "mm"; }

  /// A speed at which hand or rim moves.
  std::string speed(double m_s) const {
    if (us_) return fixed(ft_min_from_m_s(m_s), 0) + " ft/min";
    const double m_min = m_min_from_m_s(m_s);
    return fixed(m_min, m_min < 10.0 ? 1 : 0) + " m/min";
  }

  /// By how much a spot gets warmer.
  std::string rise(double rise_k) const {
    return us_ ? fixed(fahrenheit_rise_from_k(rise_k), 0) + " F" : fixed(rise_k, 0) + " C";
  }

 private:
  bool us_;
};

}  // namespace detail

}  // namespace levigate
