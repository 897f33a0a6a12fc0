// Every published value of data/reference against the library. Python runs the same files.
#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <numbers>
#include <set>

#include "reference/functions.hpp"
#include "reference/reference.hpp"

namespace reference_test {
namespace {

using namespace levigate_tests;

const std::filesystem::path folder = std::filesystem::path(LEVIGATE_DATA_DIR) / "reference";

std::string words(const Value& value) {
  return std::visit([](const auto& v) { return testing::PrintToString(v); }, value);
}

TEST(Reference, EveryRowAgreesOrDiffersAsItSays) {
  for (const Row& row : reference_rows(folder)) {
    if (!row.computed()) continue;
    const auto function = functions().find(row.group["function"].get<std::string>());
    ASSERT_NE(function, functions().end()) << row.name();
    const Value ours = function->second(row.inputs);
    EXPECT_EQ(agrees(row, ours), !row.must_differ())
        << row.name() << ": printed " << row.printed << ", ours " << words(ours);
    EXPECT_TRUE(row.inputs.all_asked()) << row.name() << ": an input that nobody asked for";
  }
}

/// Rows of a group that miss to one side miss for a reason, even where each lies within its factor.
TEST(Reference, AGroupThatLeansToOneSideSaysWhy) {
  struct Lean {
    double logs = 0;
    int above = 0, below = 0;
    bool said = false;
  };
  std::map<std::string, Lean> groups;
  for (const Row& row : reference_rows(folder)) {
    if (!row.computed() || row.must_differ() || !row.group["tolerance"].contains("factor"))
      continue;
    const Value ours = functions().at(row.group["function"])(row.inputs);
    const auto* value = std::get_if<double>(&ours);
    if (value == nullptr) continue;
    const double low = number_in(row.printed.is_array() ? row.printed[0] : row.printed);
    const double high = number_in(row.printed.is_array() ? row.printed[1] : row.printed);
    Lean& lean = groups[row.group["what"]];
    lean.said = row.group.contains("bias");
    lean.above += *value > high;
    lean.below += *value < low;
    lean.logs += *value > high  ? std::log(*value / high)
                 : *value < low ? std::log(*value / low)
                                : 0;
  }
  ASSERT_FALSE(groups.empty());
  for (const auto& [what, lean] : groups) {
    const int beyond = lean.above + lean.below;
    const bool one_side = beyond >= 3 && (lean.above == 0 || lean.below == 0);
    const bool leans = one_side && std::abs(lean.logs) > beyond * std::log(1.1);
    EXPECT_EQ(leans, lean.said) << what << ": " << lean.above << " above, " << lean.below
                                << " below, " << std::exp(lean.logs / std::max(beyond, 1));
  }
}

/// A text of at least some letters: an empty or token reason is none.
bool says_something(const json& holder, const char* key) {
  return holder.contains(key) && holder[key].get<std::string>().size() > 3;
}

TEST(Reference, EveryRowSaysWhereItComesFromAndHowNearItMustBe) {
  const std::set<std::string> kinds{"standard", "paper",           "table",
                                    "computed", "common practice", "from memory"};
  const std::set<std::string> bases{"standard", "published table", "computed", "common practice",
                                    "from memory"};
  for (const Row& row : reference_rows(folder)) {
    EXPECT_TRUE(says_something(row.source, "citation")) << row.name();
    EXPECT_TRUE(kinds.contains(row.source["kind"])) << row.name();
    EXPECT_TRUE(bases.contains(row.source["basis"])) << row.name();
    EXPECT_TRUE(says_something(row.group, "what")) << row.name();
    EXPECT_NE(row.computed(), row.group.contains("not_computed")) << row.name();
    if (!row.computed()) {
      EXPECT_TRUE(says_something(row.group, "not_computed")) << row.name();
      continue;
    }
    if (row.must_differ()) {
      EXPECT_TRUE(says_something(row.group, "disagrees")) << row.name();
    }
    const json& tolerance = row.group["tolerance"];
    EXPECT_TRUE(says_something(tolerance, "reason")) << row.name();
    EXPECT_EQ(tolerance.size(), 2U) << row.name();
    EXPECT_EQ(tolerance.contains("absolute") + tolerance.contains("relative") +
                  tolerance.contains("factor") + tolerance.contains("exact"),
              1)
        << row.name();
  }
}

TEST(Reference, EveryFunctionIsHeldToSomeRow) {
  std::set<std::string> named;
  for (const Row& row : reference_rows(folder)) {
    if (row.computed()) named.insert(row.group["function"]);
  }
  for (const auto& [name, function] : functions()) EXPECT_TRUE(named.contains(name)) << name;
}

TEST(Reference, ADifferenceIsSeen) {
  const json group{{"tolerance", {{"absolute", "0.05"}}}};
  const Row row{"", group, {}, {}, "57.0"};
  EXPECT_TRUE(agrees(row, 57.04));
  EXPECT_FALSE(agrees(row, 57.06));
  EXPECT_FALSE(agrees(row, std::nan("")));
  EXPECT_FALSE(agrees(row, "57.0 and more"));
  const Row band{"", group, {}, {}, json::array({"1", "2"})};
  EXPECT_TRUE(agrees(band, 1.5));
  EXPECT_FALSE(agrees(band, 2.1));
  const Row factor{"", {{"tolerance", {{"factor", "3"}}}}, {}, {}, "0.3"};
  EXPECT_TRUE(agrees(factor, 0.11));
  EXPECT_FALSE(agrees(factor, 0.09));
  EXPECT_FALSE(agrees(factor, 0.91));
}

}  // namespace
}  // namespace reference_test
