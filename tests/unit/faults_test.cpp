// Numbers that nobody means, in every member of everything that a user gives.
#include "levigate/faults.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <cstdint>
#include <limits>
#include <memory>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "levigate/grade/label.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/surface/model.hpp"
#include "levigate/wheel/compound.hpp"
#include "levigate/wheel/wheel.hpp"
#include "unit/workshop.hpp"

namespace faults_test {
namespace {

using namespace workshop;

/// A sound value of a described type.
struct Sample {
  const Description* of;
  std::shared_ptr<void> value;
};

template <typename Value>
Sample sample(Value value) {
  return {&description_of<Value>(), std::make_shared<Value>(std::move(value))};
}

Job job_with_everything() {
  Job job = top(20);
  Zone& flat = job.zones[0];
  flat.film = Film{120, 6, 1.5, 1, 12};
  flat.film->dry_um_per_coat = 40;
  flat.below_um = 40;
  flat.defects = {{DefectKind::run, 150, 6, 35, 3}};
  flat.carries = Carried{grade("P800"), 1.25, 0.0625, 20};
  job.zones.push_back({.name = "edge",
                       .area_cm2 = 20,
                       .block = block_named("foam pad"),
                       .film = Film{45, 3},
                       .edge = Edge{"top", 2.0}});
  job.coating = {.name = "own",
                 .kind = CoatingKind::coat,
                 .hardness_mpa = 150,
                 .wear_coefficient = 0.02,
                 .refractive_index = 1.5};
  job.coating.cure = Cure{240, 0.04, {{24, 60}, {240, 150}}};
  job.coating.limits = WheelLimits{9, 18, 500, 33};
  job.rules.overcut = 1.5;
  job.scratched_by = grade("P600");
  job.age_h = 100;
  job.cure = job.coating.cure;
  job.weight_kg = 3;
  return job;
}

Job job_for_a_sheen() {
  Job job = top(20);
  job.target = {.size_um = {}, .gloss_gu = 20, .label = "satin", .gloss_high_gu = 35};
  return job;
}

Stack stack_of_every_kind() {
  Stack stack;
  Sheet sheet = paper("paper", "P800");
  sheet.size_um = 22;
  sheet.on_hand = 4;
  sheet.price = 1.5;
  stack.sheets = {sheet, pad("pad", "P1500")};
  Sheet bar = paper("bar", "fine bar");
  Polish polish = polish_named("fine");
  polish.tool = wheel_named("loose muslin");
  bar.kind = polish;
  stack.sheets.push_back(bar);
  bar.id = "own bar";
  polish.reach = ScratchReach{0.6};
  polish.tool = block_named("foam pad");
  bar.kind = polish;
  stack.sheets.push_back(bar);
  bar.id = "bar on a machine";
  polish.tool = machine_named("dual-action polisher");
  bar.kind = polish;
  stack.sheets.push_back(bar);
  return stack;
}

Shop shop_with_everything() {
  Shop shop;
  shop.person = {1, 0.5, 2, 35};
  shop.rates = {{"shellac", "", {1, 0.5, 2, 35}, {-0.5}}};
  shop.scratches = {{"shellac", "film", {1, 0.5, 2, 6}, {}}};
  shop.films = {{"shellac", 0, -7, 7, 3}};
  shop.jobs = {{"clock case", 12}};
  return shop;
}

Entry entry(EntryKind kind) {
  Entry entry;
  entry.kind = kind;
  entry.at = "2026-03-01T09:30:00Z";
  entry.job = "clock case";
  entry.zone = "top";
  entry.sheet = "P800";
  return entry;
}

std::vector<Sample> entries() {
  Entry begun = entry(EntryKind::step_begun);
  begun.direction_deg = 45;
  Entry ended = entry(EntryKind::step_ended);
  ended.minutes = 12;
  ended.sheets_used = 0.5;
  ended.removal_um = 3;
  Entry planned = entry(EntryKind::step_ended);
  planned.sheet = "P800";
  planned.minutes = 12;
  planned.overcut = 2;
  Entry film = entry(EntryKind::film_read);
  film.sheet.clear();
  film.readings_um = {98, 101.5};
  Entry width = entry(EntryKind::scratch_read), rough = width;
  width.width_um = 3;
  rough.ra_um = 0.1;
  Entry found = entry(EntryKind::mark_found);
  found.zone.clear();
  found.sheet.clear();
  found.mark.emplace();
  found.mark->kind = MarkKind::cluster;
  found.mark->zone = "top";
  found.mark->seen = Seen::loupe;
  found.mark->width_um = 4;
  found.mark->direction_deg = 90;
  found.mark->count = 3;
  Entry wave = found;
  wave.mark->kind = MarkKind::wave;
  wave.mark->seen = Seen::lamp;
  wave.mark->width_um.reset();
  wave.mark->direction_deg.reset();
  wave.mark->count.reset();
  wave.mark->height_um = 2;
  Entry gauged = entry(EntryKind::patch_worked);
  gauged.zone.clear();
  gauged.tool = "hard block";
  gauged.area_cm2 = 100;
  gauged.minutes = 5;
  Entry weighed = gauged;
  gauged.before_um = {90, 92};
  gauged.after_um = {80, 81};
  weighed.before_g = 812.31;
  weighed.after_g = 812.13;
  Entry struck = entry(EntryKind::struck);
  struck.zone.clear();
  struck.sheet.clear();
  struck.line = 1;
  struck.text = "wrong sheet";
  return {sample(begun),  sample(ended),   sample(planned), sample(film),
          sample(width),  sample(rough),   sample(found),   sample(wave),
          sample(gauged), sample(weighed), sample(struck)};
}

/// Everything that a user gives; what is inside it is reached from here.
std::vector<Sample> samples() {
  std::vector<Sample> all = entries();
  all.push_back(sample(job_with_everything()));
  all.push_back(sample(job_for_a_sheen()));
  all.push_back(sample(stack_of_every_kind()));
  all.push_back(sample(shop_with_everything()));
  all.push_back(sample(Model{}));
  all.push_back(sample(StepRule{}));
  return all;
}

/// One number in a value.
struct Spot {
  const Member* member;
  const Kind* kind;
  void* at;
  std::string quantity;  ///< with its position in a list
};

/// All numbers in a value, and the members that hold them.
class Spots {
 public:
  explicit Spots(const Sample& sample) { value(*sample.of, sample.value.get()); }

  std::vector<Spot> spots;
  std::set<std::string> members, reached;  ///< with numbers, by type and name: all, and those met

 private:
  void value(const Description& description, void* at) {
    for (const Member& member : description.members) {
      const std::string name = std::string(description.name) + "::" + std::string(member.name);
      if (holds_numbers(*member.kind)) members.insert(name);
      const std::size_t before = spots.size();
      held(member, *member.kind, member.in_mutable(at), std::string(member.name));
      if (spots.size() > before && holds_numbers(*member.kind)) reached.insert(name);
    }
  }

  static bool holds_numbers(const Kind& kind) {
    if (kind.form == Form::maybe || kind.form == Form::list) return holds_numbers(*kind.of);
    return kind.form == Form::number || kind.form == Form::whole;
  }

  void held(const Member& member, const Kind& kind, void* at, const std::string& quantity) {
    const auto item = [&](std::size_t i) { return const_cast<void*>(kind.item(at, i)); };
    switch (kind.form) {
      case Form::number:
      case Form::whole: spots.push_back({&member, &kind, at, quantity}); break;
      case Form::value: value(kind.described(), at); break;
      case Form::maybe:
        if (kind.size(at) > 0) held(member, *kind.of, item(0), quantity);
        break;
      case Form::list:
        for (std::size_t i = 0; i < kind.size(at); ++i)
          held(member, *kind.of, item(i), quantity + "[" + std::to_string(i) + "]");
        break;
      case Form::either: held(member, *kind.held(at), item(0), quantity); break;
      case Form::truth:
      case Form::text:
      case Form::choice: break;
    }
  }
};

bool same_number(double a, double b) { return a == b || (std::isnan(a) && std::isnan(b)); }

/// A number that is outside the range stated of it is told by name; one that is inside is not.
void expect_told_where_outside(const Sample& sample, const Spot& spot, double number) {
  const Member& member = *spot.member;
  const bool inside = number >= member.low && number <= member.high;
  const std::vector<Fault> faults = faults_of(*sample.of, sample.value.get(), "");
  std::size_t told = 0;
  for (const Fault& fault : faults) {
    if (fault.quantity != spot.quantity || fault.low != member.low || fault.high != member.high)
      continue;
    ++told;
    EXPECT_EQ(fault.code, ErrorCode::out_of_range);
    EXPECT_EQ(fault.unit, member.unit);
    EXPECT_TRUE(same_number(fault.value.value_or(0.5), number)) << fault.message;
    EXPECT_TRUE(fault.pointer.ends_with("/" + std::string(member.name))) << fault.pointer;
  }
  EXPECT_EQ(told, inside ? 0U : 1U) << sample.of->name << " " << spot.quantity << " = " << number;
}

constexpr double numbers[] = {std::numeric_limits<double>::quiet_NaN(),
                              std::numeric_limits<double>::infinity(),
                              -std::numeric_limits<double>::infinity(),
                              -1,
                              0,
                              -0.0,
                              std::numeric_limits<double>::denorm_min(),
                              1e300};
constexpr std::int64_t whole_numbers[] = {-1,
                                          0,
                                          1'000'000'001,
                                          std::numeric_limits<std::int32_t>::max(),
                                          std::numeric_limits<std::int64_t>::max(),
                                          std::numeric_limits<std::int64_t>::min()};

void spoil(const Sample& sample, const Spot& spot) {
  const Kind& kind = *spot.kind;
  if (kind.form == Form::number) {
    const double sound = kind.number(spot.at);
    for (const double number : numbers) {
      kind.set_number(spot.at, number);
      expect_told_where_outside(sample, spot, number);
    }
    kind.set_number(spot.at, sound);
  } else {
    const std::int64_t sound = kind.whole(spot.at);
    for (const std::int64_t number : whole_numbers) {
      kind.set_whole(spot.at, number);  // the type may hold less
      expect_told_where_outside(sample, spot, static_cast<double>(kind.whole(spot.at)));
    }
    kind.set_whole(spot.at, sound);
  }
}

TEST(FaultsOfInputs, EveryNumberOutsideItsRangeIsToldByName) {
  std::set<std::string> members, reached;
  for (const Sample& sample : samples()) {
    const std::vector<Fault> none = faults_of(*sample.of, sample.value.get(), "");
    ASSERT_TRUE(none.empty()) << sample.of->name << ": " << none.front().message;
    Spots found(sample);
    for (const Spot& spot : found.spots) spoil(sample, spot);
    EXPECT_TRUE(faults_of(*sample.of, sample.value.get(), "").empty()) << sample.of->name;
    members.merge(found.members);
    reached.merge(found.reached);
  }
  EXPECT_EQ(reached, members) << "a sample lacks a number";
  EXPECT_GT(members.size(), 90U);
}

TEST(FaultsOfInputs, WhatIsMadeOfANumberOutOfRangeIsNoFaultOfItsOwn) {
  Block block = block_named("hard block");
  block.force_n = 0;  // nor is there a pressure
  EXPECT_EQ(faults_of(description_of<Block>(), &block, "").size(), 1U);
  EXPECT_THROW(validate(block), OutOfRange);
  block.force_n = 1e-3;
  block.area_cm2 = 1e5;
  const std::vector<Fault> faults = faults_of(description_of<Block>(), &block, "");
  ASSERT_EQ(faults.size(), 1U);
  EXPECT_EQ(faults[0].quantity, "pressure_kpa");
}

}  // namespace
}  // namespace faults_test
