// A sheet is called by its id, or by a label that one sheet of the drawer alone can have.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "unit/workshop.hpp"

namespace sheet_called_test {
namespace {

using namespace workshop;
using testing::HasSubstr;

std::size_t called(const Stack& stack, const std::string& name) {
  return sheet_called(stack, grades_of(stack), name);
}

std::string refused(const Stack& stack, const std::string& name) {
  try {
    called(stack, name);
  } catch (const AmbiguousLabel& error) {
    return error.what();
  }
  return "";
}

Stack drawer() {
  Stack stack;
  stack.sheets = {paper("a-p400", "P400"), paper("b-400", "400", System::cami),
                  paper("a-p600", "P600"), paper("c-800", "#800")};
  return stack;
}

TEST(SheetCalled, ALabelStandsForTheOneSheetThatHasIt) {
  EXPECT_EQ(called(drawer(), "a-p600"), 2U);
  EXPECT_EQ(called(drawer(), "P600"), 2U);
  EXPECT_EQ(called(drawer(), "FEPA P 600"), 2U);
  EXPECT_EQ(called(drawer(), "CAMI 400"), 1U);
  EXPECT_EQ(called(drawer(), "800"), 3U) << "no other sheet can be meant";
}

TEST(SheetCalled, ALabelOfSeveralSheetsIsRefusedWithTheirIds) {
  EXPECT_THAT(refused(drawer(), "400"), HasSubstr("a-p400 and b-400"));
  Stack stack = drawer();
  stack.sheets.push_back(paper("d-p600", "P600"));
  EXPECT_THAT(refused(stack, "P600"), HasSubstr("a-p600 and d-p600"));
}

TEST(SheetCalled, AnIdComesFirst) {
  Stack stack = drawer();
  stack.sheets[3].id = "P600";
  EXPECT_EQ(called(stack, "P600"), 3U);
}

TEST(SheetCalled, NoSheetIsRefusedWithTheNearestId) {
  EXPECT_THROW(called(drawer(), "P1000"), BadInput);
  EXPECT_THROW(called(drawer(), ""), BadInput);
}

TEST(SheetCalled, EvaluateTakesLabels) {
  const Stack stack = papers({"P400", "P800", "P1500"});
  Stack named = stack;
  for (Sheet& sheet : named.sheets) sheet.id = "my " + sheet.id;
  const Plan by_label = evaluate(top(30), named, {"P400", "P800", "P1500"});
  EXPECT_EQ(ids(by_label), (std::vector<std::string>{"my P400", "my P800", "my P1500"}));
  EXPECT_EQ(by_label.total.minutes,
            evaluate(top(30), stack, {"P400", "P800", "P1500"}).total.minutes);
}

}  // namespace
}  // namespace sheet_called_test
