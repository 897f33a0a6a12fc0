// The labels of a drawer that do not settle a grade are told all at once.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "unit/workshop.hpp"

namespace stack_test {
namespace {

using namespace workshop;
using testing::HasSubstr;

TEST(GradesOf, TellsEveryLabelThatSettlesNoGrade) {
  Stack stack;
  stack.sheets = {paper("a", "320"), paper("b", "P400"), paper("c", "P401")};
  try {
    grades_of(stack);
    FAIL() << "two labels settle no grade";
  } catch (const BadInput& error) {
    ASSERT_EQ(error.faults().size(), 2U);
    EXPECT_EQ(error.faults()[0].code, ErrorCode::ambiguous_label);
    EXPECT_EQ(error.faults()[0].pointer, "/sheets/0/label");
    EXPECT_EQ(error.faults()[1].code, ErrorCode::unknown_grade);
    EXPECT_EQ(error.faults()[1].pointer, "/sheets/2/label");
    EXPECT_THAT(error.faults()[1].message, HasSubstr("in /sheets/2/label ('c')"));
  }
}

TEST(GradesOf, OneFaultKeepsItsClass) {
  Stack stack;
  stack.sheets = {paper("a", "320"), paper("b", "P400")};
  EXPECT_THROW(grades_of(stack), AmbiguousLabel);
  stack.sheets.front().label = "P401";
  EXPECT_THROW(grades_of(stack), UnknownGrade);
  stack.sheets.front().label = "P320";
  EXPECT_EQ(grades_of(stack).size(), 2U);
}

}  // namespace
}  // namespace stack_test
