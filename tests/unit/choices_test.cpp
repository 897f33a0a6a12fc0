// The choices of a type are all of its enumerators.
#include "levigate/choices.hpp"

#include <gtest/gtest.h>

#include <set>
#include <string_view>

#include "levigate/grade/system.hpp"
#include "levigate/journal/entry_kind.hpp"
#include "levigate/journal/observed.hpp"
#include "levigate/plan/plan_values.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/way_back.hpp"
#include "levigate/risk/calibration.hpp"
#include "levigate/source.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/defect.hpp"
#include "levigate/wheel/finding.hpp"

namespace levigate {

namespace {

template <typename Enum>
class Choices : public testing::Test {};

using Enums =
    testing::Types<Basis, System, CoatingKind, FindingKind, Severity, DefectKind, Objective,
                   StrokeWay, DoneSign, PassedBy, Blocker, WhyKind, MarkKind, Seen, EvidenceKind,
                   NoWay, Remedy, EntryKind, WheelFindingKind, UnmatchedKind, MeasurementKind>;
TYPED_TEST_SUITE(Choices, Enums);

TYPED_TEST(Choices, AreAllOfThemInOrderAndHaveNamesOfTheirOwn) {
  const auto& all = choices<TypeParam>;
  std::set<std::string_view> names;
  for (std::size_t i = 0; i < all.size(); ++i) {
    EXPECT_EQ(static_cast<std::size_t>(all[i]), i);
    EXPECT_FALSE(to_string(all[i]).empty());
    names.insert(to_string(all[i]));
  }
  EXPECT_EQ(names.size(), all.size());
  EXPECT_EQ(to_string(static_cast<TypeParam>(all.size())), "");  // there is no further one
}

}  // namespace

}  // namespace levigate
