// The profiles typed a second time. A slip in data/profiles, or a change that nobody meant, shows here.
#include <gtest/gtest.h>

#include <optional>
#include <string>
#include <vector>

#include "levigate/film/edge_table.hpp"
#include "levigate/film/gauge_table.hpp"
#include "levigate/film/usual_film_table.hpp"
#include "levigate/journal/prior_table.hpp"
#include "levigate/plan/handling_table.hpp"
#include "levigate/plan/search_table.hpp"
#include "levigate/risk/patch_table.hpp"
#include "levigate/stack/backing_table.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/stack/machine_table.hpp"
#include "levigate/stack/rule_table.hpp"
#include "levigate/stack/sheet_size_table.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/defect_table.hpp"
#include "levigate/surface/inspection_table.hpp"
#include "levigate/surface/model_table.hpp"
#include "levigate/surface/peel_height_table.hpp"
#include "levigate/surface/peel_table.hpp"
#include "levigate/wheel/compound_table.hpp"
#include "levigate/wheel/limit_table.hpp"
#include "levigate/wheel/wheel_table.hpp"

namespace profile_entry_test {
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
      {"two-part urethane", {150, 100, 250}, {1.52, 1.49, 1.55}, true},
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
    expect_entry(rows[i].name, p.cutting_efficiency, {0.3, 0.15, 0.6});
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
      {"hard block", {1000, 300, 3000}, {87.5, 50, 120}, {15, 10, 20}, 0.45, 1.6},
      {"cork block", {15, 5, 45}, {87.5, 50, 120}, {15, 10, 20}, 0.45, 1.6},
      {"rubber block", {3, 1, 9}, {87.5, 50, 120}, {15, 10, 20}, 0.45, 1.6},
      {"small hard block", {1000, 300, 3000}, {15, 6, 25}, {4, 2, 6}, 0.45, 1.8},
      {"foam pad", {0.2, 0.07, 0.6}, {60, 30, 100}, {8, 5, 12}, 0.45, 1.0},
      {"felt block", {3, 1, 9}, {60, 30, 120}, {15, 10, 20}, 0.45, 1.0},
  };
  ASSERT_EQ(std::size(rows), std::size(block_table));
  for (std::size_t i = 0; i < std::size(rows); ++i) {
    const BlockProfile& p = block_table[i];
    EXPECT_EQ(p.name, rows[i].name);
    expect_entry(rows[i].name, p.modulus_mpa, rows[i].modulus_mpa);
    expect_entry(rows[i].name, p.area_cm2, rows[i].area_cm2);
    expect_entry(rows[i].name, p.force_n, rows[i].force_n);
    expect_entry(rows[i].name, p.speed_m_s, {rows[i].speed_m_s, 0.25, 0.6});
    expect_entry(rows[i].name, p.duty, {0.6, 0.4, 0.8});
    expect_entry(rows[i].name, p.wrap, {rows[i].wrap, 1.0, 2.0});
  }
}

TEST(ProfileEntry, RulesAndModel) {
  const RuleProfile& rules = rule_table[0];
  expect_entry("max_ratio", rules.max_ratio, {1.75, 1.5, 2.0});
  expect_entry("min_ratio", rules.min_ratio, {1.15, 1.05, 1.25});
  expect_entry("short_share", rules.short_share, {0.001, 0.0001, 0.01});
  expect_entry("scratch_quantile", rules.scratch_quantile, {0.99, 0.95, 0.999});
  expect_entry("residual_peel_um", rules.residual_peel_um, {0.5, 0.2, 1.0});
  expect_entry("change_minutes", rules.change_minutes, {2, 1, 5});
  expect_entry("reserve_um", rules.reserve_um, {10, 5, 36});
  expect_entry("removed_cv", rules.removed_cv, {0.15, 0.05, 0.3});
  expect_entry("cut_through_limit", rules.cut_through_limit, {0.01, 0.001, 0.05});
  const ModelProfile& model = model_table[0];
  expect_entry("flank_deg", model.flank_deg, {11, 8, 16});
  expect_entry("packing", model.packing, {0.5, 0.3, 0.7});
  expect_entry("size_exponent", model.size_exponent, {0.5, 0.41, 0.65});
  expect_entry("saturation_um", model.saturation_um, {100, 60, 150});
}

TEST(ProfileEntry, SearchJournalAndPatch) {
  const SearchProfile& search = search_table[0];
  expect_entry("equal_percent", search.equal_percent, {3, 1, 5});
  expect_entry("overcut_more", search.overcut_more, {1.5, 1.2, 1.8});
  expect_entry("overcut_most", search.overcut_most, {2, 1.8, 3});
  const PriorProfile& journal = prior_table[0];
  expect_entry("minutes_noise", journal.minutes_noise, {0.3, 0.2, 0.5});
  expect_entry("scratch_noise", journal.scratch_noise, {0.2, 0.1, 0.3});
  expect_entry("noise_weight", journal.noise_weight, {4, 2, 10});
  expect_entry("film_noise_um", journal.film_noise_um, {5, 2, 10});
  expect_entry("usual_film_um", journal.usual_film_um, {60, 40, 100});
  expect_entry("common_wear_share", journal.common_wear_share, {0.5, 0, 1});
  expect_entry("coat_density_g_cm3", journal.coat_density_g_cm3, {1.2, 1.1, 1.3});
  expect_entry("coat_density_share", journal.coat_density_share, {0.06, 0.03, 0.1});
  expect_entry("weighing_error_g", journal.weighing_error_g, {0.01, 0.005, 0.02});
  const PatchProfile& patch = patch_table[0];
  expect_entry("area_cm2", patch.area_cm2, {100, 50, 200});
  expect_entry("sanding_minutes", patch.sanding_minutes, {5, 3, 10});
  expect_entry("spots", patch.spots, {10, 5, 20});
  expect_entry("gauging_minutes", patch.gauging_minutes, {7, 5, 15});
  expect_entry("weighing_minutes", patch.weighing_minutes, {20, 10, 60});
  expect_entry("noting_minutes", patch.noting_minutes, {1, 0.5, 2});
  expect_entry("loupe_minutes", patch.loupe_minutes, {5, 3, 10});
}

TEST(ProfileEntry, Wheels) {
  struct Row {
    const char* name;
    Entry diameter_mm, rpm, rated_rpm, width_mm, contact_mm, force_n, modulus_mpa;
  };
  // 14 in within 12 to 16 in, 700 to 800 rpm; felt 11 in within 10 to 12 in.
  const Entry inches{355.6, 304.8, 406.4}, turns{750, 700, 800}, rated{1000, 800, 1000};
  const Row rows[] = {
      {"loose flannel",
       inches,
       turns,
       rated,
       {50, 25, 75},
       {60, 30, 90},
       {15, 10, 40},
       {0.05, 0.015, 0.15}},
      {"loose muslin",
       inches,
       turns,
       rated,
       {50, 25, 75},
       {50, 25, 80},
       {15, 10, 40},
       {0.08, 0.025, 0.25}},
      {"sewn", inches, turns, rated, {50, 25, 75}, {35, 15, 50}, {15, 10, 30}, {0.5, 0.15, 1.5}},
      {"felt",
       {279.4, 254, 304.8},
       {1200, 950, 1720},
       {1720, 1200, 1720},
       {25, 12, 50},
       {15, 5, 30},
       {6, 3, 12},
       {3, 1, 9}},
  };
  ASSERT_EQ(std::size(rows), std::size(wheel_table));
  for (std::size_t i = 0; i < std::size(rows); ++i) {
    const WheelProfile& p = wheel_table[i];
    EXPECT_EQ(p.name, rows[i].name);
    expect_entry(rows[i].name, p.diameter_mm, rows[i].diameter_mm);
    expect_entry(rows[i].name, p.rpm, rows[i].rpm);
    expect_entry(rows[i].name, p.rated_rpm, rows[i].rated_rpm);
    expect_entry(rows[i].name, p.width_mm, rows[i].width_mm);
    expect_entry(rows[i].name, p.contact_mm, rows[i].contact_mm);
    expect_entry(rows[i].name, p.force_n, rows[i].force_n);
    expect_entry(rows[i].name, p.feed_m_s, {0.2, 0.05, 0.4});
    expect_entry(rows[i].name, p.modulus_mpa, rows[i].modulus_mpa);
    expect_entry(rows[i].name, p.friction, {0.4, 0.2, 0.6});
    expect_entry(rows[i].name, p.heat_share, {0.5, 0.3, 0.9});
    expect_entry(rows[i].name, p.duty, {0.5, 0.3, 0.7});
  }
}

TEST(ProfileEntry, Machines) {
  struct Row {
    const char* name;
    Entry pad_mm, orbit_mm, rpm, free_rpm, rated_rpm, force_n, keep_off_mm;
    bool polishes;
  };
  const Entry none;  // the profile lacks it
  const auto expect_optional = [](const std::string& where, const std::optional<Sourced>& number,
                                  const Entry& entry) {
    ASSERT_EQ(number.has_value(), !entry.empty()) << where;
    if (number) expect_entry(where, *number, entry);
  };
  const Row rows[] = {
      {"rotary polisher",
       {180, 125, 200},
       none,
       {1200, 800, 2000},
       none,
       {2000, 1500, 3000},
       {30, 15, 60},
       {30, 15, 50},
       true},
      {"dual-action polisher",
       {150, 125, 180},
       {15, 8, 21},
       {4000, 2500, 5500},
       {150, 20, 400},
       {5500, 4800, 6800},
       {40, 20, 70},
       {20, 10, 40},
       true},
      {"random-orbit sander",
       {150, 125, 150},
       {3, 2.5, 5},
       {9000, 4000, 12000},
       {200, 20, 600},
       {12000, 10000, 13000},
       {25, 12, 45},
       {10, 5, 25},
       false},
      {"finishing sander",
       {108, 95, 115},
       {2, 1.5, 2.5},
       {12000, 9000, 14000},
       none,
       {14000, 12000, 14000},
       {15, 8, 30},
       {10, 5, 20},
       false},
  };
  ASSERT_EQ(std::size(rows), std::size(machine_table));
  for (std::size_t i = 0; i < std::size(rows); ++i) {
    const MachineProfile& p = machine_table[i];
    EXPECT_EQ(p.name, rows[i].name);
    expect_entry(rows[i].name, p.pad_mm, rows[i].pad_mm);
    expect_optional(rows[i].name, p.orbit_mm, rows[i].orbit_mm);
    expect_entry(rows[i].name, p.rpm, rows[i].rpm);
    expect_optional(rows[i].name, p.free_rpm, rows[i].free_rpm);
    expect_entry(rows[i].name, p.rated_rpm, rows[i].rated_rpm);
    expect_entry(rows[i].name, p.force_n, rows[i].force_n);
    expect_entry(rows[i].name, p.keep_off_mm, rows[i].keep_off_mm);
    const bool polishes = rows[i].polishes;
    expect_entry(rows[i].name, p.feed_m_s,
                 polishes ? Entry{0.15, 0.05, 0.3} : Entry{0.05, 0.02, 0.15});
    expect_entry(rows[i].name, p.modulus_mpa,
                 polishes ? Entry{0.05, 0.015, 0.15} : Entry{0.5, 0.1, 2});
    expect_optional(rows[i].name, p.friction, polishes ? Entry{0.4, 0.2, 0.6} : none);
    expect_optional(rows[i].name, p.heat_share, polishes ? Entry{0.5, 0.3, 0.9} : none);
    expect_entry(rows[i].name, p.duty, polishes ? Entry{0.6, 0.4, 0.8} : Entry{0.7, 0.5, 0.85});
  }
}

TEST(ProfileEntry, Handling) {
  ASSERT_EQ(std::size(handling_table), 1U);
  expect_entry("most_kg", handling_table[0].most_kg, {5, 3, 8});
  expect_entry("unweighed_cm2", handling_table[0].unweighed_cm2, {2000, 1000, 4000});
}

TEST(ProfileEntry, Heat) {
  struct Row {
    const char* name;
    Entry speed_m_s, effusivity, rise_k;
  };
  const Entry lacquer{14, 11.17, 17.03}, coat{450, 350, 650}, pmma{570, 540, 600};
  const Row rows[] = {
      {"two-part urethane", lacquer, coat, {40, 25, 60}},
      {"nitrocellulose lacquer", lacquer, coat, {30, 15, 45}},
      {"acrylic lacquer", lacquer, coat, {30, 15, 45}},
      {"polyester", lacquer, coat, {45, 25, 65}},
      {"uv acrylic", lacquer, coat, {45, 25, 65}},
      {"water-borne", lacquer, coat, {25, 12, 40}},
      {"shellac", lacquer, coat, {20, 10, 35}},
      {"oil varnish", lacquer, coat, {20, 10, 35}},
      {"epoxy", lacquer, coat, {35, 20, 50}},
      {"acrylic sheet", {12.2, 6.09, 20.33}, pmma, {45, 25, 65}},
      {"acrylic sheet edges", {19, 15.23, 22.87}, pmma, {45, 25, 65}},
      {"metal", {35.56, 30.47, 38.11}, {8000, 7000, 37000}, {30, 20, 40}},
  };
  const std::size_t coatings = std::size(coating_table);  // every coating has its limits
  ASSERT_EQ(std::size(rows), coatings + std::size(limit_table));
  for (std::size_t i = 0; i < coatings; ++i) {
    const CoatingProfile& p = coating_table[i];
    EXPECT_EQ(p.name, rows[i].name);
    expect_entry(rows[i].name, p.speed_m_s.value(), rows[i].speed_m_s);
    expect_entry(rows[i].name, p.effusivity.value(), rows[i].effusivity);
    expect_entry(rows[i].name, p.rise_k.value(), rows[i].rise_k);
  }
  for (std::size_t i = coatings; i < std::size(rows); ++i) {  // the rest are no coatings
    const LimitProfile& p = limit_table[i - coatings];
    EXPECT_EQ(p.name, rows[i].name);
    expect_entry(rows[i].name, p.speed_m_s, rows[i].speed_m_s);
    expect_entry(rows[i].name, p.effusivity, rows[i].effusivity);
    expect_entry(rows[i].name, p.rise_k, rows[i].rise_k);
  }
}

TEST(ProfileEntry, Compounds) {
  struct Row {
    const char* name;
    Entry size_um, worn_um, coarsest_paper_um;
  };
  // Papers: P1200 within P2000 to P1000, P2000 within P2500 to P1500.
  const Row rows[] = {
      {"cutting", {8, 5, 12}, {4, 2, 12}, {15.3, 10.3, 18.3}},
      {"medium", {4, 3, 5}, {2, 1, 5}, {10.3, 8.4, 12.6}},
      {"fine", {2, 1, 3}, {1, 0.5, 3}, {7.2, 4.7, 8.4}},
      {"ultra-fine", {0.8, 0.3, 1}, {0.5, 0.2, 1}, {2, 1, 3}},
  };
  ASSERT_EQ(std::size(rows), std::size(compound_table));
  for (std::size_t i = 0; i < std::size(rows); ++i) {
    const CompoundProfile& p = compound_table[i];
    EXPECT_EQ(p.name, rows[i].name);
    expect_entry(rows[i].name, p.size_um, rows[i].size_um);
    expect_entry(rows[i].name, p.worn_um, rows[i].worn_um);
    expect_entry(rows[i].name, p.coarsest_paper_um, rows[i].coarsest_paper_um);
    expect_entry(rows[i].name, p.wear_share, {0.1, 0.03, 0.3});
    expect_entry(rows[i].name, p.tip_spread, {0.15, 0.09, 0.24});
    expect_entry(rows[i].name, p.modulus_mpa, {1, 0.3, 3});
    expect_entry(rows[i].name, p.life_m, {20000, 5000, 60000});
    expect_entry(rows[i].name, p.clean_every_m, {400, 200, 800});
    expect_entry(rows[i].name, p.fade_m, {800, 250, 2400});
  }
}

TEST(ProfileEntry, Cure) {
  struct Row {
    const char* name;
    Entry hard_cure_h, shrink;
  };
  // Days: about 7; 21 of 14 to 42; 3 of 1 to 7; 1; 21 of 7 to 30; 14 of 3 to 30; 30 of 14 to 60.
  const Row rows[] = {
      {"two-part urethane", {7 * 24, 3 * 24, 14 * 24}, {0.02, 0, 0.05}},
      {"nitrocellulose lacquer", {21 * 24, 14 * 24, 42 * 24}, {0.10, 0.03, 0.2}},
      {"acrylic lacquer", {21 * 24, 14 * 24, 42 * 24}, {0.08, 0.03, 0.2}},
      {"polyester", {3 * 24, 24, 7 * 24}, {0.02, 0, 0.05}},
      {"uv acrylic", {24, 1, 48}, {0.01, 0, 0.03}},
      {"water-borne", {21 * 24, 7 * 24, 30 * 24}, {0.05, 0.02, 0.1}},
      {"shellac", {14 * 24, 3 * 24, 30 * 24}, {0.08, 0.03, 0.15}},
      {"oil varnish", {30 * 24, 14 * 24, 60 * 24}, {0.05, 0.02, 0.1}},
      {"epoxy", {7 * 24, 3 * 24, 14 * 24}, {0.01, 0, 0.03}},
  };
  ASSERT_EQ(std::size(rows) + 1, std::size(coating_table));
  for (std::size_t i = 0; i < std::size(rows); ++i) {
    const CoatingProfile& p = coating_table[i];
    EXPECT_EQ(p.name, rows[i].name);  // every coat has one
    expect_entry(rows[i].name, p.hard_cure_h.value(), rows[i].hard_cure_h);
    expect_entry(rows[i].name, p.shrink.value(), rows[i].shrink);
  }
  EXPECT_EQ(coating_table[std::size(rows)].kind, CoatingKind::solid);
  EXPECT_FALSE(coating_table[std::size(rows)].hard_cure_h || coating_table[std::size(rows)].shrink);
}

TEST(ProfileEntry, WhatASolventDoes) {
  struct Row {
    const char* name;
    std::optional<bool> redissolves;
  };
  // Dried by loss of solvent alone: yes. Cross-linked, or fused from particles: no. A solid is no coat.
  const Row rows[] = {
      {"two-part urethane", false},
      {"nitrocellulose lacquer", true},
      {"acrylic lacquer", true},
      {"polyester", false},
      {"uv acrylic", false},
      {"water-borne", false},
      {"shellac", true},
      {"oil varnish", false},
      {"epoxy", false},
      {"acrylic sheet", {}},
  };
  ASSERT_EQ(std::size(rows), std::size(coating_table));
  for (std::size_t i = 0; i < std::size(rows); ++i) {
    const CoatingProfile& p = coating_table[i];
    EXPECT_EQ(p.name, rows[i].name);
    ASSERT_EQ(p.redissolves.has_value(), rows[i].redissolves.has_value()) << p.name;
    if (!p.redissolves) continue;
    EXPECT_EQ(p.redissolves->value, *rows[i].redissolves) << p.name;
    EXPECT_EQ(p.redissolves->source.basis, Basis::common_practice) << p.name;
  }
}

TEST(ProfileEntry, DefectsEdgesAndGauges) {
  const DefectProfile& defects = defect_table[0];
  expect_entry("shave_above_um", defects.shave_above_um, {100, 50, 200});
  expect_entry("tape_um", defects.tape_um, {60, 40, 150});
  expect_entry("shave_minutes", defects.shave_minutes, {1, 0.5, 3});
  expect_entry("mask_minutes", defects.mask_minutes, {1, 0.5, 3});
  expect_entry("stroke_mm", defects.stroke_mm, {150, 100, 200});
  const EdgeProfile& edges = edge_table[0];
  expect_entry("sharp_share", edges.sharp_share, {0.5, 0.3, 0.7});
  expect_entry("eased_share", edges.eased_share, {0.8, 0.7, 0.9});
  expect_entry("eased_radius_mm", edges.eased_radius_mm, {2, 1.5, 3});
  expect_entry("bearing_share", edges.bearing_share, {0.1, 0.03, 0.3});
  ASSERT_EQ(std::size(gauge_table), 3u);
  EXPECT_EQ(gauge_table[0].name, "ultrasonic");
  expect_entry("ultrasonic", gauge_table[0].fixed_um, {2, 1, 5});
  expect_entry("ultrasonic", gauge_table[0].share, {0.03, 0.01, 0.05});
  EXPECT_EQ(gauge_table[1].name, "wet comb");
  expect_entry("wet comb", gauge_table[1].fixed_um, {5, 2, 12});
  expect_entry("wet comb", gauge_table[1].share, {0.1, 0.05, 0.2});
  EXPECT_EQ(gauge_table[2].name, "coats counted");
  expect_entry("coats counted", gauge_table[2].fixed_um, {0, 0, 5});
  expect_entry("coats counted", gauge_table[2].share, {0.15, 0.08, 0.3});

  expect_entry("strip_mm", edges.strip_mm, {10, 5, 20});
  expect_entry("film_cv", usual_film_table[0].film_cv, {0.1, 0.05, 0.15});
  ASSERT_EQ(std::size(peel_height_table), 3u);
  const Entry heights_um[] = {{10, 5, 15}, {20, 14, 28}, {40, 28, 60}};
  for (std::size_t i = 0; i < 3; ++i) {
    expect_entry(std::string(peel_height_table[i].name), peel_height_table[i].peel_um,
                 heights_um[i]);
    expect_entry("wavelength", peel_height_table[i].peel_wavelength_mm, {3, 0.8, 8});
  }
  EXPECT_EQ(peel_height_table[1].name, "medium peel");
  ASSERT_EQ(std::size(sheet_size_table), 4u);
  const Entry sides_mm[][2] = {{{230, 76, 300}, {280, 100, 300}},
                               {{216, 76, 300}, {280, 100, 300}},
                               {{230, 76, 300}, {280, 100, 300}},
                               {{150, 76, 170}, {115, 76, 170}}};
  for (std::size_t i = 0; i < 4; ++i) {
    expect_entry(std::string(sheet_size_table[i].name), sheet_size_table[i].width_mm,
                 sides_mm[i][0]);
    expect_entry(std::string(sheet_size_table[i].name), sheet_size_table[i].height_mm,
                 sides_mm[i][1]);
  }

  ASSERT_EQ(std::size(peel_table), 4u);
  EXPECT_EQ(peel_table[1].name, "usual");
  expect_entry("usual", peel_table[1].factor, {1.7, 1.4, 2.2});
  EXPECT_EQ(peel_table[0].name, "by eye");
  expect_entry("by eye", peel_table[0].factor, {1.4, 1.2, 2.0});
  EXPECT_EQ(peel_table[2].name, "comparison plate");
  expect_entry("comparison plate", peel_table[2].factor, {1.2, 1.1, 1.4});
  EXPECT_EQ(peel_table[3].name, "profile");
  expect_entry("profile", peel_table[3].factor, {1.05, 1.02, 1.15});
}

TEST(ProfileEntry, Inspection) {
  const InspectionProfile& eye = inspection_table[0];
  // Widths: process notes on inspection lamps; all else assumed.
  expect_entry("sunlight_um", eye.sunlight_um, {2, 1, 5});
  expect_entry("lamp_um", eye.lamp_um, {20, 10, 40});
  expect_entry("lamp_ratio", eye.lamp_ratio, {2, 1.5, 3});
  expect_entry("finish_per_spot", eye.finish_per_spot, {0.01, 0.001, 0.1});
  expect_entry("finish_cover_share", eye.finish_cover_share, {0.1, 0.03, 0.3});
  expect_entry("cluster_count", eye.cluster_count, {3, 2, 5});
  expect_entry("loupe_log_sd", eye.loupe_log_sd, {0.15, 0.05, 0.3});
  expect_entry("comparison_log_sd", eye.comparison_log_sd, {0.5, 0.3, 0.7});
  expect_entry("direction_sd_deg", eye.direction_sd_deg, {15, 5, 30});
  expect_entry("other_direction_share", eye.other_direction_share, {0.1, 0.02, 0.3});
  expect_entry("arc_share_tool", eye.arc_share_tool, {0.5, 0.2, 0.9});
  expect_entry("arc_share_machine", eye.arc_share_machine, {0.95, 0.8, 1});
  expect_entry("arc_share_block", eye.arc_share_block, {0.05, 0, 0.2});
  expect_entry("missed_share", eye.missed_share, {0.02, 0.005, 0.1});
  expect_entry("stray_per_m2", eye.stray_per_m2, {1, 0.1, 10});
  expect_entry("stray_size_ratio", eye.stray_size_ratio, {10, 3, 30});
  expect_entry("haze_cover", eye.haze_cover, {0.05, 0.02, 0.1});
  expect_entry("look_minutes", eye.look_minutes, {3, 1, 10});
  expect_entry("round_minutes", eye.round_minutes, {240, 120, 480});
  expect_entry("worth_look_share", eye.worth_look_share, {0.1, 0.05, 0.2});
  expect_entry("legs_most", eye.legs_most, {4, 2, 6});
  expect_entry("looks_most", eye.looks_most, {4, 2, 6});
  expect_entry("hollow_slope_um_per_mm", eye.hollow_slope_um_per_mm, {0.15, 0.02, 0.5});
}

}  // namespace
}  // namespace profile_entry_test
