// The profiles typed a second time. A slip in data/profiles, or a change that nobody meant, shows here.
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "levigate/stack/backing_table.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/stack/rule_table.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/model_table.hpp"

namespace {

using namespace levigate;

/// value, low, high
using Entry = std::vector<double>;

void expect_entry(const std::string& where, const Sourced& number, const Entry& entry) {
  EXPECT_EQ(number.value, entry[0]) << where;
  EXPECT_EQ(number.low, entry[1]) << where;
  EXPECT_EQ(number.high, entry[2]) << where;
  EXPECT_FALSE(number.source.citation.empty()) << where;
}

TEST(ProfileEntry, Coatings) {
  struct Row {
    const char* name;
    Entry hardness_mpa, refractive_index;
    bool two_part;
  };
  // Hardness: process notes, order of magnitude, the default within the band; index: usual clear binders.
  const Row rows[] = {
      {"two-part urethane", {150, 100, 250}, {1.50, 1.48, 1.54}, true},
      {"nitrocellulose lacquer", {120, 80, 180}, {1.51, 1.49, 1.53}, false},
      {"acrylic lacquer", {120, 80, 180}, {1.49, 1.48, 1.51}, false},
      {"polyester", {200, 150, 250}, {1.55, 1.53, 1.57}, false},
      {"uv acrylic", {220, 150, 300}, {1.51, 1.49, 1.54}, false},
      {"water-borne", {70, 40, 120}, {1.49, 1.47, 1.52}, false},
      {"shellac", {140, 100, 200}, {1.52, 1.51, 1.53}, false},
      {"oil varnish", {45, 20, 80}, {1.52, 1.49, 1.55}, false},
      {"epoxy", {220, 150, 300}, {1.56, 1.54, 1.58}, false},
      {"acrylic sheet", {200, 182, 224}, {1.49, 1.485, 1.495}, false},
  };
  ASSERT_EQ(std::size(rows), std::size(coating_table));
  for (std::size_t i = 0; i < std::size(rows); ++i) {
    const CoatingProfile& p = coating_table[i];
    EXPECT_EQ(p.name, rows[i].name);
    EXPECT_EQ(p.two_part, rows[i].two_part) << p.name;
    EXPECT_EQ(p.kind, p.name == "acrylic sheet" ? CoatingKind::solid : CoatingKind::coat) << p.name;
    expect_entry(rows[i].name, p.hardness_mpa, rows[i].hardness_mpa);
    expect_entry(rows[i].name, p.wear_coefficient, {0.02, 0.005, 0.05});
    expect_entry(rows[i].name, p.refractive_index, rows[i].refractive_index);
  }
}

TEST(ProfileEntry, Backings) {
  struct Row {
    const char* name;
    Entry tip_spread, modulus_mpa, life_m, fade_m, floor;
  };
  const Row rows[] = {
      {"latex paper",
       {0.15, 0.09, 0.24},
       {20, 5, 80},
       {200, 70, 600},
       {30, 10, 90},
       {0.4, 0.2, 0.64}},
      {"film",
       {0.08, 0.048, 0.128},
       {60, 15, 240},
       {300, 100, 900},
       {30, 10, 90},
       {0.4, 0.2, 0.64}},
      {"cloth",
       {0.20, 0.12, 0.32},
       {30, 7.5, 120},
       {600, 200, 1800},
       {30, 10, 90},
       {0.4, 0.2, 0.64}},
      {"foam-backed",
       {0.12, 0.072, 0.192},
       {4, 1, 16},
       {400, 130, 1200},
       {40, 13, 120},
       {0.5, 0.25, 0.8}},
  };
  ASSERT_EQ(std::size(rows), std::size(backing_table));
  for (std::size_t i = 0; i < std::size(rows); ++i) {
    const BackingProfile& p = backing_table[i];
    EXPECT_EQ(p.name, rows[i].name);
    expect_entry(rows[i].name, p.tip_spread, rows[i].tip_spread);
    expect_entry(rows[i].name, p.modulus_mpa, rows[i].modulus_mpa);
    expect_entry(rows[i].name, p.life_m, rows[i].life_m);
    expect_entry(rows[i].name, p.clean_every_m, {10, 5, 20});
    expect_entry(rows[i].name, p.fade_m, rows[i].fade_m);
    expect_entry(rows[i].name, p.floor, rows[i].floor);
  }
}

TEST(ProfileEntry, Blocks) {
  struct Row {
    const char* name;
    Entry modulus_mpa, area_cm2, force_n;
    double speed_m_s, wrap;
  };
  const Row rows[] = {
      {"hard block", {1000, 300, 3000}, {87.5, 50, 120}, {15, 10, 20}, 0.5, 1.6},
      {"cork block", {15, 5, 45}, {87.5, 50, 120}, {15, 10, 20}, 0.5, 1.6},
      {"rubber block", {3, 1, 9}, {87.5, 50, 120}, {15, 10, 20}, 0.5, 1.6},
      {"small hard block", {1000, 300, 3000}, {15, 6, 25}, {4, 2, 6}, 0.4, 1.8},
      {"foam pad", {0.2, 0.07, 0.6}, {60, 30, 100}, {8, 5, 12}, 0.5, 1.0},
  };
  ASSERT_EQ(std::size(rows), std::size(block_table));
  for (std::size_t i = 0; i < std::size(rows); ++i) {
    const BlockProfile& p = block_table[i];
    EXPECT_EQ(p.name, rows[i].name);
    expect_entry(rows[i].name, p.modulus_mpa, rows[i].modulus_mpa);
    expect_entry(rows[i].name, p.area_cm2, rows[i].area_cm2);
    expect_entry(rows[i].name, p.force_n, rows[i].force_n);
    expect_entry(rows[i].name, p.speed_m_s, {rows[i].speed_m_s, 0.2, 0.8});
    expect_entry(rows[i].name, p.duty, {0.6, 0.4, 0.8});
    expect_entry(rows[i].name, p.wrap, {rows[i].wrap, 1.0, 2.0});
  }
}

TEST(ProfileEntry, RulesAndModel) {
  const RuleProfile& rules = rule_table[0];
  expect_entry("max_ratio", rules.max_ratio, {1.75, 1.5, 2.0});
  expect_entry("min_ratio", rules.min_ratio, {1.15, 1.05, 1.25});
  expect_entry("overcut", rules.overcut, {1.0, 1.0, 2.0});
  expect_entry("scratch_quantile", rules.scratch_quantile, {0.99, 0.95, 0.999});
  expect_entry("residual_peel_um", rules.residual_peel_um, {0.5, 0.2, 1.0});
  expect_entry("change_minutes", rules.change_minutes, {2, 1, 5});
  expect_entry("reserve_um", rules.reserve_um, {10, 5, 36});
  expect_entry("removed_cv", rules.removed_cv, {0.15, 0.05, 0.3});
  expect_entry("cut_through_limit", rules.cut_through_limit, {0.01, 0.001, 0.05});
  const ModelProfile& model = model_table[0];
  expect_entry("flank_deg", model.flank_deg, {20, 10, 30});
  expect_entry("packing", model.packing, {0.5, 0.3, 0.7});
  expect_entry("size_exponent", model.size_exponent, {0.5, 0.41, 0.65});
}

}  // namespace
