// Lines of pointers, against counting by hand.
#include <gtest/gtest.h>

#include "levigate/io/work/locate.hpp"

namespace locate_test {
namespace {

using namespace levigate;
using detail::line_of;

constexpr std::string_view text = R"({
  "a": [1,
        {"b": "x]}\"\n"},
        [], {}],
  "c/d": {"~": true, "\u00e9": null},
  "": 7,
  "a b": [
    [2, 3],
    [4,
     5]
  ]
})";

TEST(Locate, LineOfEveryKindOfValue) {
  EXPECT_EQ(line_of(text, ""), 1);
  EXPECT_EQ(line_of(text, "/a"), 2);
  EXPECT_EQ(line_of(text, "/a/0"), 2);
  EXPECT_EQ(line_of(text, "/a/1"), 3);
  EXPECT_EQ(line_of(text, "/a/1/b"), 3);
  EXPECT_EQ(line_of(text, "/a/3"), 4);
  EXPECT_EQ(line_of(text, "/c~1d/~0"), 5);
  EXPECT_EQ(line_of(text, "/c~1d/\u00e9"), 5);
  EXPECT_EQ(line_of(text, "/"), 6);
  EXPECT_EQ(line_of(text, "/a b/1/0"), 9);
  EXPECT_EQ(line_of(text, "/a b/1/1"), 10);
}

TEST(Locate, NoLineForWhatIsNotThere) {
  for (const char* pointer : {"/b", "/a/4", "/a/1/b/0", "/c", "/a b/2"}) {
    EXPECT_EQ(line_of(text, pointer), 0) << pointer;
  }
}

TEST(Locate, OfRepeatedKeysTheLast) { EXPECT_EQ(line_of("{\"a\": 1,\n\"a\": 2}", "/a"), 2); }

TEST(Locate, EndsOnAnyPrefix) {
  for (std::size_t length = 0; length <= text.size(); ++length) {
    EXPECT_LE(line_of(text.substr(0, length), "/a b/1/1"), 10);
  }
}

}  // namespace
}  // namespace locate_test
