// Every published value of data/reference against the library. Python runs the same files.
#include <gtest/gtest.h>

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
