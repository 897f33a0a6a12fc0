// Errors of a file show an example of a right value: each is one that the reader takes.
#include "levigate/io/work/example.hpp"

#include <nlohmann/json.hpp>
#include <set>

#include "levigate/io/formats.hpp"
#include "levigate/io/work/forms.hpp"
#include "levigate/journal/entry.hpp"
#include "levigate/journal/learned.hpp"
#include "unit/io/json_workshop.hpp"

namespace examples_test {
namespace {

using namespace json_workshop;
using Json = nlohmann::json;
using testing::HasSubstr;

/// Every description that a file of what one gives holds, by way of its members, keys and shapes.
class All {
 public:
  std::vector<const Description*> found;

  void add(const Description& description) {
    if (!seen_.insert(&description).second) return;
    found.push_back(&description);
    const FileForms& forms = detail::given_forms();
    for (const detail::FileKeys& keys : forms.keys) {
      if (keys.of == &description) add(*keys.keys);
    }
    const detail::FileForm* form = forms.of(description);
    if (form && form->shapes) {
      for (const Description* shape : form->shapes()) add(*shape);
    }
    for (const Member& member : description.members) add(*member.kind);
  }

 private:
  using FileForms = detail::FileForms;
  void add(const Kind& kind) {
    if (kind.of) add(*kind.of);
    if (kind.form == Form::value) add(kind.described());
    for (const Kind* one : kind.kinds) add(one->described());
  }
  std::set<const Description*> seen_;
};

void expect_right(const Member& member, const Kind& kind, const Json& value) {
  switch (kind.form) {
    case Form::number:
    case Form::whole:
      ASSERT_TRUE(value.is_number());
      EXPECT_GE(value.get<double>(), member.low);
      EXPECT_LE(value.get<double>(), member.high);
      if (kind.form == Form::whole) EXPECT_EQ(value.get<double>(), value.get<std::int64_t>());
      break;
    case Form::truth: EXPECT_TRUE(value.is_boolean()); break;
    case Form::text:
      ASSERT_TRUE(value.is_string());
      EXPECT_FALSE(value.get<std::string>().empty());
      break;
    case Form::choice: EXPECT_EQ(value.get<std::string>(), kind.choice(0)); break;
    case Form::maybe: expect_right(member, *kind.of, value); break;
    case Form::list:
      ASSERT_TRUE(value.is_array());
      ASSERT_FALSE(value.empty());
      for (const Json& item : value) expect_right(member, *kind.of, item);
      break;
    case Form::value: EXPECT_TRUE(value.is_object() || value.is_string()); break;
    case Form::either: ADD_FAILURE() << "no member of a file";
  }
}

TEST(Examples, OfAllMembersAreOfTheirKindAndInTheirRange) {
  All all;
  all.add(description_of<Job>());
  all.add(description_of<Stack>());
  all.add(description_of<Entry>());
  all.add(description_of<Shop>());
  int shown = 0;
  for (const Description* description : all.found) {
    for (const Member& member : description->members) {
      SCOPED_TRACE(std::string(description->name) + "." + std::string(member.name));
      const std::string example = detail::example_of(member, detail::given_forms());
      if (example.empty()) continue;
      const Json object = Json::parse("{" + example + "}");
      ASSERT_EQ(object.size(), 1U);
      expect_right(member, *member.kind, object.at(std::string(member.name)));
      ++shown;
    }
  }
  EXPECT_GT(shown, 150);
}

/// The examples of a job's and a stack's own members make a job and a stack.
TEST(Examples, MakeFilesThatRead) {
  const auto file = [](std::string_view format, const Description& description,
                       std::initializer_list<std::string_view> members) {
    std::string text = "{\"format\": \"" + std::string(format) + "\"";
    for (const std::string_view name : members)
      text += ", " + detail::example_of(*description.find(name), detail::given_forms());
    return text + "}";
  };
  const Job job = job_from_json(file(job_format, description_of<Job>(),
                                     {"name", "coating", "zones", "target", "age_h", "weight_kg"}));
  EXPECT_EQ(job.zones.size(), 1U);
  const Stack stack = stack_from_json(file(stack_format, description_of<Stack>(), {"sheets"}));
  EXPECT_EQ(grades_of(stack)[0].label, "P400");
  for (const Description* shape : detail::film_shapes()) {
    std::string film;
    for (const Member& member : shape->members) {
      if (!member.may)
        film += (film.empty() ? "{" : ", ") + detail::example_of(member, detail::given_forms());
    }
    EXPECT_NO_THROW(job_from_json(job_with("{\"mean_um\": 45, \"sd_um\": 6}", film + "}"))) << film;
  }
}

TEST(Examples, StandAtTheEndOfAMessageAndAsAMemberOfTheFault) {
  const std::string text = job_with("\"area_cm2\": 540", "\"area_cm2\": \"540 cm2\"");
  try {
    job_from_json(text, "spoilt.json");
    ADD_FAILURE() << "took text for an area";
  } catch (const BadInput& error) {
    EXPECT_STREQ(error.what(),
                 "area_cm2 is text, wanted a number, in /zones/0/area_cm2, line 8 of spoilt.json. "
                 "For example \"area_cm2\": 540");
    EXPECT_EQ(error.fault().example, "\"area_cm2\": 540");
  }
}

TEST(Examples, AreOfWhatIsMissingOutOfRangeUnknownOrEmpty) {
  const std::tuple<std::string, std::string, std::string> cases[] = {
      {",\n      \"area_cm2\": 540", "", "\"area_cm2\": 540"},
      {"\"area_cm2\": 540", "\"area_cm2\": -1", "\"area_cm2\": 540"},
      {"\"two-part urethane\"", "\"two-part\"", "\"coating\": \"two-part urethane\""},
      {"\"prefer\": \"minutes\"", "\"prefer\": \"fun\"", "\"prefer\": \"minutes\""},
      {",\n  \"target\": {\"size_um\": 8}", "", "\"target\": {\"size_um\": 8}"},
      {"[88, 97,", "[88, -97,", "\"readings_um\": [88, 97, 92]"},
      {"{\"mean_um\": 45, \"sd_um\": 6}", "{}", "\"film\": {\"mean_um\": 90, \"sd_um\": 5}"}};
  for (const auto& [from, to, example] : cases) {
    try {
      job_from_json(job_with(from, to));
      ADD_FAILURE() << to;
    } catch (const Error& error) {
      EXPECT_EQ(error.fault().example, example) << error.what();
    }
  }
}

TEST(Examples, AFileWithoutFormatIsReadToItsEnd) {
  const std::string text = with(job_with("\"format\": \"levigate.job/1\",", ""), "540", "-540");
  try {
    job_from_json(text);
    ADD_FAILURE() << "took a job without a format";
  } catch (const BadInput& error) {
    ASSERT_EQ(error.faults().size(), 2U);
    EXPECT_EQ(error.faults()[0].example, "\"format\": \"levigate.job/1\"");
    EXPECT_EQ(error.faults()[1].pointer, "/zones/0/area_cm2");
  }
}

TEST(Examples, AFileInThePlaceOfAnotherIsToldSo) {
  const std::string text = demo_text("stack.json");
  expect_bad(job_from_json, text, "/format", 2,
             {"this is a file of a stack, and a job is wanted", "'levigate.stack/1'"});
}

}  // namespace
}  // namespace examples_test
