// Units that a file may tell a number in, and their factors.
#include "levigate/told_unit.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <set>
#include <stdexcept>

#include "levigate/units.hpp"

namespace told_unit_test {
namespace {

using namespace levigate;
using testing::ElementsAre;

/// A number given as `given`, in the unit of `name`.
double told(double number, std::string_view given, std::string_view name) {
  const ToldUnit* from = unit_told_for(given, name);
  if (!from) throw std::logic_error(std::string(given) + " does not tell " + std::string(name));
  return in_unit(number, *from, *name_parts(name).unit);
}

TEST(ToldUnit, FactorsAreThoseOfTheDefinitions) {
  EXPECT_EQ(told(3.5, "mean_mil", "mean_um"), um_from_mil(3.5));
  EXPECT_EQ(told(9, "width_in", "width_mm"), mm_from_inch(9));
  EXPECT_EQ(told(250, "speed_ft_min", "speed_m_s"), m_s_from_ft_min(250));
  EXPECT_EQ(told(0.095, "readings_mm", "readings_um"), 95);
  EXPECT_EQ(told(0.54, "area_m2", "area_cm2"), 5400);
  EXPECT_DOUBLE_EQ(told(1, "area_ft2", "area_cm2"), 30.48 * 30.48);
  EXPECT_DOUBLE_EQ(told(144, "area_in2", "area_cm2"), told(1, "area_ft2", "area_cm2"));
  EXPECT_DOUBLE_EQ(told(16, "weight_oz", "weight_kg"), 0.45359237);
  EXPECT_DOUBLE_EQ(told(1, "force_kgf", "force_n"), 9.80665);
  EXPECT_DOUBLE_EQ(told(1, "force_lbf", "force_n"), 0.45359237 * 9.80665);
  EXPECT_NEAR(told(1, "modulus_psi", "modulus_mpa"), 0.45359237 * 9.80665 / 645.16, 1e-17);
  EXPECT_DOUBLE_EQ(told(60, "feed_m_min", "feed_m_s"), 1);
  EXPECT_DOUBLE_EQ(told(2, "age_weeks", "age_h"), 336);
  EXPECT_DOUBLE_EQ(told(1.5, "hours", "minutes"), 90);
  EXPECT_DOUBLE_EQ(told(1.2, "dry_mil_per_coat", "dry_um_per_coat"), 30.48);
}

TEST(ToldUnit, ATemperatureHasAZeroAndAChangeOfItHasNone) {
  EXPECT_DOUBLE_EQ(told(212, "temperature_f", "temperature_c"), 100);
  EXPECT_DOUBLE_EQ(told(32, "temperature_f", "temperature_c"), 0);
  EXPECT_DOUBLE_EQ(told(-40, "temperature_f", "temperature_c"), -40);
  EXPECT_DOUBLE_EQ(told(90, "rise_f", "rise_k"), 50);
  EXPECT_DOUBLE_EQ(told(50, "rise_c", "rise_k"), 50);
  const ToldUnit& celsius = *name_parts("temperature_c").unit;
  EXPECT_DOUBLE_EQ(in_unit(100, celsius, *unit_told_for("temperature_f", "temperature_c")), 212);
}

TEST(ToldUnit, OnlyUnitsOfTheSameQuantityTellANumber) {
  EXPECT_EQ(unit_told_for("width_h", "width_mm"), nullptr);
  EXPECT_EQ(unit_told_for("width_mm", "width_mm"), nullptr) << "is its own name";
  EXPECT_EQ(unit_told_for("widths_in", "width_mm"), nullptr);
  EXPECT_EQ(unit_told_for("mean_se_mil", "mean_um"), nullptr);
  EXPECT_EQ(unit_told_for("name_in", "name"), nullptr);
  EXPECT_EQ(unit_told_for("rate_mil_per_m", "rate_um_per_m"), nullptr);
  EXPECT_EQ(unit_told_for("speed_m_min", "speed_m_s")->unit, "m/min");
  EXPECT_THAT(other_endings("dry_um_per_coat"),
              ElementsAre("microns_per_coat", "mil_per_coat", "mm_per_coat"));
  EXPECT_TRUE(other_endings("duty").empty());
}

TEST(ToldUnit, AQuantityHasOneBaseAndEachEndOnce) {
  std::map<Dimension, std::set<std::string_view>> endings, bases;
  for (const ToldUnit& one : told_units) {
    EXPECT_TRUE(endings[one.of].insert(one.ending).second) << one.ending;
    EXPECT_GT(one.over / one.under, 0);
    if (one.over == one.under && one.zero == 0.0) bases[one.of].insert(one.unit);
  }
  for (const auto& [of, names] : endings) EXPECT_GE(bases[of].size(), 1U) << *names.begin();
}

TEST(ToldUnit, AUnitInFullIsTheSameUnit) {
  EXPECT_EQ(name_in_full("mean_um"), "mean_microns");
  EXPECT_EQ(name_in_full("area_cm2"), "area_square_centimetres");
  EXPECT_EQ(name_in_full("width_mm"), "width_millimetres");
  EXPECT_EQ(told(4.5, "mean_microns", "mean_um"), 4.5);
  EXPECT_EQ(told(0.1, "area_square_centimetres", "area_cm2"), 0.1);
}

}  // namespace
}  // namespace told_unit_test
