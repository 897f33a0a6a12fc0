// Stacks that cannot be used, and labels that settle no size.
#include "levigate/stack/check.hpp"
#include "levigate/text/sentences.hpp"
#include "unit/io/json_workshop.hpp"

namespace bad_stack_test {
namespace {

using namespace json_workshop;
using testing::HasSubstr;

void bad_stack(const std::string& text, const std::string& pointer, std::string_view at,
               std::initializer_list<std::string> parts) {
  expect_bad(stack_from_json, text, pointer, line_with(text, at), parts);
}

TEST(BadStack, WrongFormatTag) {
  bad_stack(demo_text("job.json"), "/format", "\"format\"",
            {"'levigate.job/1'", "'levigate.stack/1'"});
}

TEST(BadStack, EmptyLabel) {
  for (const char* label : {"\"\"", "\"  \"", "\"\\t\""}) {
    const std::string text = stack_with("\"P400\"", label);
    bad_stack(text, "/sheets/1/label", "\"a-p400\"", {"label is empty", "'a-p400'"});
  }
}

TEST(BadStack, EmptyId) {
  bad_stack(stack_with("\"a-p400\"", "\"\""), "/sheets/1/id", "\"P400\"", {"id is empty"});
}

TEST(BadStack, TwoSheetsOfOneId) {
  bad_stack(stack_with("\"b-600\"", "\"a-p400\""), "/sheets/9/id", "CAMI 600",
            {"id 'a-p400' is repeated", "/sheets/9"});
}

TEST(BadStack, NumbersOutOfRange) {
  for (const char* size : {"-1", "0", "1e308"}) {
    const std::string text = stack_with(
        "\"label\": \"P400\",", std::string("\"label\": \"P400\", \"size_um\": ") + size + ",");
    expect_fails<OutOfRange>(stack_from_json, text, line_with(text, "size_um"),
                             {"size_um = ", "0.01 to 10000 um", "/sheets/1", "'a-p400'"});
  }
  const std::string text = stack_with("\"on_hand\": 4", "\"on_hand\": -4");
  expect_fails<OutOfRange>(stack_from_json, text, line_with(text, "-4"), {"on_hand = -4"});
  bad_stack(stack_with("\"on_hand\": 4", "\"on_hand\": NaN"), "/sheets/1/on_hand", "NaN",
            {"NaN is no number"});
}

TEST(BadStack, UnknownSystem) {
  bad_stack(stack_with("\"system\": \"CAMI\"", "\"system\": \"CAMMI\""), "/sheets/8/system",
            "CAMMI", {"system 'CAMMI' is not known", "the nearest is 'CAMI'"});
  bad_stack(stack_with("\"ask\"", "\"FEPA\""), "/bare_number", "\"FEPA\"",
            {"'FEPA' is not known", "known are ask, FEPA P"});
}

std::string stack_with_polish(const std::string& keys) {
  return stack_with("\"sheets\": [",
                    "\"sheets\": [\n{\"id\": \"bar\", \"label\": \"fine\",\n" + keys + "},");
}
constexpr auto own_compound =
    "\"compound\": {\"size_um\": 2, \"worn_um\": 1, \"coarsest_paper_um\": 8, \"wear_share\": 0.1}";

TEST(BadStack, CompoundsThatCannotBe) {
  std::string text = stack_with_polish(with(own_compound, "\"worn_um\": 1", "\"worn_um\": 3"));
  bad_stack(text, "/sheets/0/compound/worn_um", "worn_um",
            {"worn_um = 3 um is above the fresh size_um = 2 um", "/sheets/0/compound"});
  bad_stack(stack_with_polish(with(own_compound, "\"worn_um\": 1, ", "")), "/sheets/0/compound",
            "coarsest_paper_um", {"worn_um is missing"});
  bad_stack(stack_with_polish("\"compound\": \"finest\""), "/sheets/0/compound", "finest",
            {"compound 'finest' is not known", "the nearest is 'fine'"});
  bad_stack(stack_with_polish("\"size_um\": 2, \"compound\": \"fine\""), "/sheets/0/size_um",
            "\"size_um\": 2", {"size_um does not go with compound"});
  bad_stack(stack_with_polish(with(own_compound, "\"coarsest_paper_um\": 8, ", "")),
            "/sheets/0/compound", "worn_um", {"one is wanted of coarsest_scratch_um"});
}

TEST(BadStack, WheelsThatCannotBe) {
  const std::string wheel =
      "\"wheel\": {\"diameter_mm\": 300, \"rpm\": 900, \"rated_rpm\": 1000, \"width_mm\": 50, "
      "\"contact_mm\": 40, \"force_n\": 15, \"feed_m_s\": 0.2, \"modulus_mpa\": 0.1, \"friction\": "
      "0.4, "
      "\"heat_share\": 0.5, \"duty\": 0.5}";
  const std::string polish = std::string(own_compound) + ",\n";
  EXPECT_NO_THROW(stack_from_json(stack_with_polish(polish + wheel)));
  std::string text = stack_with_polish(polish + with(wheel, "900", "1500"));
  expect_fails<OutOfRange>(
      stack_from_json, text, line_with(text, "rpm"),
      {"rpm = 1500 1/min is above the wheel's rated_rpm = 1000", "/sheets/0/wheel"});
  text = stack_with_polish(polish + with(wheel, "\"contact_mm\": 40", "\"contact_mm\": 400"));
  expect_fails<OutOfRange>(stack_from_json, text, line_with(text, "rpm"),
                           {"contact_mm (up to diameter_mm) = 400 mm"});
  bad_stack(stack_with_polish(polish + "\"wheel\": \"loose\""), "/sheets/0/wheel", "loose",
            {"wheel 'loose' is not known", "loose flannel"});
  bad_stack(stack_with_polish(polish + "\"block\": \"foam pad\",\n\"wheel\": \"felt\""),
            "/sheets/0/wheel", "felt", {"wheel does not go with block"});
  bad_stack(stack_with_polish(polish + with(wheel, "\"rpm\"", "\"rpms\"")), "/sheets/0/wheel/rpms",
            "rpms", {"the nearest is \"rpm\""});
}

TEST(BadStack, UnknownKeyAndBackingNameTheNearest) {
  bad_stack(stack_with("\"on_hand\"", "\"onhand\""), "/sheets/0/onhand", "onhand",
            {"the nearest is \"on_hand\""});
  bad_stack(stack_with("\"foam-backed\"", "\"foam bakced\""), "/sheets/13/backing", "foam bakced",
            {"the nearest is 'foam-backed'"});
}

TEST(BadStack, WrongType) {
  bad_stack(stack_with("\"label\": \"P400\"", "\"label\": 400"), "/sheets/1/label", "400",
            {"label is a number", "wanted text in double quotes"});
  bad_stack("{\"format\": \"levigate.stack/1\",\n\"sheets\": {}}", "/sheets", "sheets",
            {"sheets is an object", "wanted a list in [ ]"});
  bad_stack("{\"format\": \"levigate.stack/1\",\n\"sheets\": [7]}", "/sheets/0", "sheets",
            {"is a number", "wanted an object"});
}

// A stack with labels that cannot be read is read, so that check() can tell of all of them.
TEST(BadStack, LabelsAreToldByCheckAndRefusedByPlan) {
  std::string text = stack_with("\"P400\"", "\"P650\"");
  text = with(text, "\"CAMI 600\"", "\"P-600x\"");
  text = with(text, "\"label\": \"400\", \"system\": \"CAMI\"", "\"label\": \"600\"");
  const Stack stack = stack_from_json(text);
  const std::vector<Finding> findings = check(stack);
  const auto of = [&](const std::string& id) -> Finding {
    for (const Finding& finding : findings) {
      if (finding.sheets == std::vector{id}) return finding;
    }
    return {};
  };
  EXPECT_EQ(of("a-p400").kind, FindingKind::unknown_label);
  EXPECT_THAT(sentence(of("a-p400")), HasSubstr("P650"));
  EXPECT_EQ(of("b-600").kind, FindingKind::unknown_label);
  EXPECT_THAT(sentence(of("b-600")), HasSubstr("P-600x"));
  EXPECT_EQ(of("b-400").kind, FindingKind::ambiguous_label);
  EXPECT_THAT(sentence(of("b-400")), HasSubstr("CAMI 600"));

  try {
    plan(job_from_json(demo_text("job.json")), stack);
    ADD_FAILURE() << "planned with labels that settle no size";
  } catch (const BadInput& error) {
    ASSERT_EQ(error.faults().size(), 3U) << "all at once";
    EXPECT_EQ(error.faults()[0].code, ErrorCode::unknown_grade);
    EXPECT_THAT(error.faults()[0].message, HasSubstr("/sheets/1/label ('a-p400')"));
    EXPECT_EQ(error.faults()[1].code, ErrorCode::ambiguous_label);
    EXPECT_THAT(error.faults()[1].message, HasSubstr("/sheets/8/label ('b-400')"));
    EXPECT_THAT(error.faults()[2].message, HasSubstr("/sheets/9/label ('b-600')"));
  }
}

TEST(BadStack, BareNumberUnderAskIsAmbiguous) {
  const Stack stack =
      stack_from_json(stack_with("\"label\": \"400\", \"system\": \"CAMI\"", "\"label\": \"400\""));
  try {
    plan(job_from_json(demo_text("job.json")), stack);
    ADD_FAILURE() << "guessed what a bare number means";
  } catch (const AmbiguousLabel& error) {
    EXPECT_THAT(error.what(), HasSubstr("\"400\" can mean P400"));
    EXPECT_THAT(error.what(), HasSubstr("/sheets/8/label ('b-400')"));
  }
}

}  // namespace
}  // namespace bad_stack_test
