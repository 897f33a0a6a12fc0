// Slips of who writes JSON by hand: what is wrong, and the line and column of it.
#include "levigate/io/work/syntax_hint.hpp"

#include "unit/io/json_workshop.hpp"

namespace syntax_hint_test {
namespace {

using namespace json_workshop;

struct Slip {
  std::string from, to;  ///< in the demo job
  std::string message;   ///< a part of it
  int line, column;
};

TEST(SyntaxHint, TellsEachSlipWithItsPlace) {
  const Slip slips[] = {
      {"\"edge_of\": \"top\"\n", "\"edge_of\": \"top\",\n", "a comma stands before }: take it out",
       27, 23},
      {"\n  \"start\"", "\n  ,\"start\"", "a name in double quotes is wanted", 30, 3},
      {"96, 93]", "96, 93,]", "a comma stands before ]: take it out", 10, 79},
      {"\"name\": \"top\"", "\"name\": \"top", "the closing double quote of a text is missing", 7,
       15},
      {"\"area_cm2\": 540,", "\"area_cm2\": 540", "a comma is missing here", 8, 22},
      {"\"area_cm2\": 540", "\"area_cm2\": 540,5", "a number has a decimal point, no comma", 8, 22},
      {"\"area_cm2\": 540", "\"area_cm2\": .5", ".5 is no number as JSON has it", 8, 19},
      {"\"area_cm2\": 540", "\"area_cm2\" 540", "a colon is missing after \"area_cm2\"", 8, 18},
      {"\"area_cm2\": 540", "\"area_cm2\":", "a value is missing before the comma", 8, 18},
      {"\"foam pad\"", "'foam pad'", "text stands in straight double quotes", 25, 16},
      {"\"foam pad\"", "foam", "text wants double quotes: \"foam\"", 25, 16},
      {"\"edge_of\": \"top\"", "edge_of: \"top\"", "a name in double quotes is wanted", 27, 7},
      {"\"edge_of\": \"top\"", "\"levelled\": False", "False is written true, false or null here",
       27, 19},
      {"\"area_cm2\": 540", "\"area_cm2\": NaN", "NaN is no number of JSON", 8, 19},
      {"  \"name\": \"Walnut", "  // mine\n  \"name\": \"Walnut", "JSON takes no comments", 3, 3},
      {"93]}", "93}", "wanted ], which closes the [ of line 10", 10, 79},
      {"\"prefer\": \"minutes\"\n}", "\"prefer\": \"minutes\"\n",
       "the text ends too early: the { of line 1 is not closed", 34, 1},
      {"\"prefer\": \"minutes\"\n}", "\"prefer\": \"minutes\"\n}}",
       "there is more text after the end", 33, 2}};
  for (const Slip& slip : slips) {
    const std::string text = job_with(slip.from, slip.to);
    try {
      job_from_json(text, "spoilt.json");
      ADD_FAILURE() << slip.to;
    } catch (const BadInput& error) {
      EXPECT_THAT(error.what(), testing::HasSubstr(slip.message));
      EXPECT_THAT(error.what(),
                  testing::EndsWith(", line " + std::to_string(slip.line) + ", column " +
                                    std::to_string(slip.column) + " of spoilt.json"));
      EXPECT_EQ(error.line(), slip.line);
    }
  }
}

TEST(SyntaxHint, FindsNothingInWhatIsJson) {
  for (const char* text : {"{}", "[]", "[[], {}]", R"({"a": [1, -2.5e3, true, null, "b\"c"]})", "7",
                           "\"a\"", " {\t}\n"}) {
    EXPECT_FALSE(detail::syntax_hint(text)) << text;
  }
}

/// Every beginning of a file, and every file that lacks one byte, either reads or is told a place in it.
TEST(SyntaxHint, IsAsFarAsTheParserAtMost) {
  const std::string whole = demo_text("job.json");
  int hints = 0;
  for (std::size_t at = 0; at < whole.size(); ++at) {
    std::string text = whole;
    text.erase(at, 1);
    const bool is_json = nlohmann::json::accept(text);
    const auto hint = detail::syntax_hint(text);
    EXPECT_EQ(hint.has_value(), !is_json) << text.substr(at > 20 ? at - 20 : 0, 40);
    if (hint) EXPECT_LE(hint->byte, text.size());
    hints += hint ? 1 : 0;
  }
  EXPECT_GT(hints, 150);
}

}  // namespace
}  // namespace syntax_hint_test
