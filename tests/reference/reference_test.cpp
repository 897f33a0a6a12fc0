// Every published value of data/reference against the library. Python runs the same files.
#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <numbers>
#include <set>

#include "reference/functions.hpp"
#include "reference/lean.hpp"
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

/// Rows of a source that miss to one side miss for a reason, even where each lies within its factor.
TEST(Reference, AGroupThatLeansToOneSideSaysWhy) {
  int one_sided = 0;
  for (const auto& [of, lean] : leans(reference_rows(folder))) {
    one_sided += lean.one_sided();
    EXPECT_TRUE(lean.one_sided() ? lean.explained : !lean.called_bias)
        << of[0] << ", " << of[1] << ", " << of[2] << ": " << lean.above << " above, " << lean.below
        << " below, " << lean.factor();
  }
  EXPECT_GT(one_sided, 0);
}

TEST(Reference, ALeanIsSeen) {
  Lean lean;
  lean.add(0.8, 1, 1);
  lean.add(0.8, 1, 2);
  EXPECT_FALSE(lean.one_sided());  // two may be chance
  lean.add(0.8, 1, 1);
  EXPECT_TRUE(lean.one_sided());
  EXPECT_NEAR(lean.factor(), 0.8, 1e-12);
  lean.add(1.5, 1, 2);
  EXPECT_TRUE(lean.one_sided());  // a row within its band does not excuse the others
  lean.add(2.1, 1, 2);
  EXPECT_FALSE(lean.one_sided());
}

TEST(Reference, RowsOfASourceLeanTogetherThoughTheyStandInTwoGroups) {
  const json given{{"refractive_index", 1.5}, {"angle_deg", 60}};
  const auto group = [&](const json& rows) {
    return json{
        {"what", "a part"}, {"kind", "practice"},   {"function", "gloss_gu"},      {"given", given},
        {"source", "one"},  {"columns", {"rq_um"}}, {"tolerance", json::object()}, {"rows", rows}};
  };
  const json content{{"area", ""},
                     {"sources", {{"one", {{"citation", "one page"}}}}},
                     {"groups", {group({{0, "200"}, {0.01, "200"}}), group({{0.02, "200"}})}}};
  const auto found = leans(rows_of(content));
  ASSERT_EQ(found.size(), 1U);
  EXPECT_TRUE(found.begin()->second.one_sided());
  EXPECT_FALSE(found.begin()->second.explained);
}

TEST(Reference, ARowWithoutAKindIsRefused) {
  json content = json::parse(std::ifstream(folder / "film.json"));
  EXPECT_EQ(rows_of(content).size(), 6U);
  content["groups"][0]["kind"] = "sound";
  EXPECT_THROW(rows_of(content), std::runtime_error);
  content["groups"][0].erase("kind");
  EXPECT_THROW(rows_of(content), std::runtime_error);
}

/// What we worked out ourselves is not called published, and the other way round.
TEST(Reference, TheKindOfARowIsThatOfItsSource) {
  const std::map<std::string, std::string> kinds{
      {"standard", "published"}, {"paper", "published"},          {"table", "published"},
      {"computed", "computed"},  {"common practice", "practice"}, {"from memory", "practice"}};
  int fitted = 0;
  for (const Row& row : reference_rows(folder)) {
    const std::string kind = kinds.at(row.source["kind"]);
    if (row.kind() == "fitted") {
      EXPECT_NE(kind, "computed") << row.name();
      EXPECT_TRUE(row.computed()) << row.name();
      ++fitted;
    } else {
      EXPECT_EQ(row.kind(), kind) << row.name();
    }
  }
  EXPECT_GT(fitted, 0);
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
    if (row.group.contains("bias")) {
      const json& bias = row.group["bias"];
      EXPECT_TRUE(says_something(bias, "shown") || says_something(bias, "guess")) << row.name();
      EXPECT_EQ(bias.size(), bias.count("shown") + bias.count("guess")) << row.name();
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
