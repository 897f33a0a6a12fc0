// Results as JSON: every key of the schema and no other, and the figures of the plan.
#include <nlohmann/json.hpp>

#include "levigate/error.hpp"
#include "levigate/grade/convert.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/stack/check.hpp"
#include "levigate/text/card.hpp"
#include "levigate/text/sentences.hpp"
#include "unit/io/json_workshop.hpp"

namespace write_plan_test {
namespace {

using namespace json_workshop;
using Json = nlohmann::json;

/// Follows a schema through a value: objects have all keys and no other, null only where it may be.
// What a result has only where there is something to tell.
const std::set<std::string> rare{"machine", "too_heavy", "usual_spread", "usual_wavelength_mm"};

void expect_shape(const Json& root, const Json& schema, const Json& value, const std::string& at) {
  if (schema.contains("$ref")) {
    const std::string name = schema["$ref"].get<std::string>();
    return expect_shape(root, root.at(Json::json_pointer(name.substr(1))), value, at);
  }
  if (schema.contains("oneOf")) {
    return value.is_null() ? void() : expect_shape(root, schema["oneOf"].back(), value, at);
  }
  if (schema.contains("const")) return;
  if (schema.contains("enum")) {
    EXPECT_NE(std::find(schema["enum"].begin(), schema["enum"].end(), value), schema["enum"].end())
        << at << " " << value;
    return;
  }
  const Json types = schema["type"].is_array() ? schema["type"] : Json::array({schema["type"]});
  const std::string type = value.is_number() ? "number" : value.type_name();
  const bool fits = std::find(types.begin(), types.end(), type) != types.end() ||
                    (value.is_number_integer() && types[0] == "integer");
  EXPECT_TRUE(fits) << at << " is of type " << type;
  if (value.is_object()) {
    for (const auto& [key, held] : value.items())
      EXPECT_TRUE(schema["properties"].contains(key)) << at << " " << key;
    for (const auto& [key, part] : schema["properties"].items()) {
      if ((key == "$schema" || rare.contains(key)) && !value.contains(key))
        continue;  // an editor's key is not ours
      ASSERT_TRUE(value.contains(key)) << at << " " << key;
      expect_shape(root, part, value[key], at + "/" + key);
    }
  } else if (value.is_array()) {
    for (const Json& item : value) expect_shape(root, schema["items"], item, at + "/-");
  }
}

Json checked_json(const Plan& plan) {
  const Json schema =
      Json::parse(read_file(std::string(LEVIGATE_DATA_DIR) + "/schema/plan.schema.json"));
  Json json = Json::parse(to_json(plan));
  expect_shape(schema, schema, json, "");
  EXPECT_EQ(json["format"], plan_format);
  return json;
}

Job demo_job() { return job_from_json(demo_text("job.json")); }
Stack demo_stack() { return stack_from_json(demo_text("stack.json")); }

TEST(JsonPlan, HasTheFiguresOfThePlan) {
  const Plan found = plan(demo_job(), demo_stack());
  const Json json = checked_json(found);
  EXPECT_TRUE(json["found"].get<bool>());
  EXPECT_TRUE(json["why"].is_null());
  ASSERT_EQ(json["steps"].size(), found.steps.size());
  for (std::size_t i = 0; i < found.steps.size(); ++i) {
    const Json& step = json["steps"][i];
    EXPECT_EQ(step["sheet"], found.steps[i].sheet);
    EXPECT_EQ(step["minutes"].get<double>(), found.steps[i].minutes);
    for (std::size_t z = 0; z < found.steps[i].zones.size(); ++z) {
      EXPECT_EQ(step["zones"][z]["zone"], found.steps[i].zones[z].zone);
      EXPECT_EQ(step["zones"][z]["film_left_um"].get<double>(),
                *found.steps[i].zones[z].film_left_um);
    }
  }
  EXPECT_TRUE(json["steps"][0]["size_ratio"].is_null());
  EXPECT_EQ(json["total"]["minutes"].get<double>(), found.total.minutes);
  EXPECT_EQ(json["tradeoff"].size(), found.tradeoff.size());
  EXPECT_EQ(json["findings"].size(), found.findings.size());
  EXPECT_EQ(json["cautions"].size(), found.cautions.size());
  EXPECT_EQ(json["relies_on"].size(), found.relies_on.size());
}

TEST(JsonPlan, HasAllThatACardPrints) {
  const Job job = job_from_json(demo_text("day.json"));
  const Plan found = plan(job, stack_from_json(demo_text("day_stack.json")));
  ASSERT_TRUE(found.found);
  const Json json = checked_json(found);
  EXPECT_EQ(json["job"], found.job);
  EXPECT_EQ(json["coating"], "two-part urethane");
  EXPECT_EQ(json["scratched_by"], "");
  EXPECT_EQ(json["target"]["gloss_gu"].get<double>(), *found.target.gloss_gu);
  EXPECT_TRUE(json["target"]["size_um"].is_null());
  EXPECT_EQ(json["reserve_um"].get<double>(), found.reserve_um);
  EXPECT_EQ(json["cut_through_limit"].get<double>(), found.cut_through_limit);
  ASSERT_EQ(json["zones"].size(), found.zones.size());
  EXPECT_EQ(json["zones"][0]["zone"], found.zones[0].zone);
  EXPECT_EQ(json["zones"][0]["film_sd_um"].get<double>(), *found.zones[0].film_sd_um);
  EXPECT_EQ(json["zones"][0]["budget_um"].get<double>(), *found.zones[0].budget_um);
  const Json& first = json["steps"][0];
  EXPECT_TRUE(first["levels"].get<bool>());
  EXPECT_EQ(first["way"], "one way");
  EXPECT_EQ(first["done"], "no shiny spot");
  EXPECT_EQ(first["size_basis"], to_string(found.steps[0].size_basis));
  EXPECT_EQ(json["zones"][0]["marks"].get<double>(), found.zones[0].marks);
  EXPECT_EQ(json["steps"][1]["overcut"].get<double>(), *found.steps[1].overcut);
  EXPECT_TRUE(first["overcut"].is_null());
  EXPECT_EQ(first["zones"][0]["tool"], found.steps[0].zones[0].tool);
  EXPECT_TRUE(first["zones"][0]["passed_by"].is_null());
  EXPECT_EQ(first["zones"][3]["passed_by"], "not levelled");
  EXPECT_EQ(first["zones"][0]["film_used"].get<double>(), *found.steps[0].zones[0].film_used);
  EXPECT_EQ(first["change_every_minutes"].get<double>(), *found.steps[0].change_every_minutes);
  EXPECT_TRUE(first["wheel"].is_null());
  const Json& last = json["steps"].back();
  EXPECT_EQ(last["takes_out"], Json::array({(found.steps.end() - 2)->label}));
  EXPECT_EQ(last["done_gloss_gu"].get<double>(), *found.target.gloss_gu);
  EXPECT_EQ(last["wheel"]["rise_k"].get<double>(), *found.steps.back().wheel->rise_k);
  EXPECT_EQ(last["zones"][0]["passes"].get<double>(), *found.steps.back().zones[0].passes);
  EXPECT_TRUE(last["rinse_every_strokes"].is_null());
  const Json& point = json["tradeoff"].back();
  EXPECT_EQ(point["job"], found.job);
  EXPECT_EQ(point["zones"][0]["budget_um"], json["zones"][0]["budget_um"]);
}

TEST(JsonPlan, PrintsItsCardWhenItIsReadBack) {
  const Plan found = plan(demo_job(), demo_stack());
  const Plan back = plan_from_json(to_json(found), "plan.json");
  EXPECT_EQ(card(back), card(found));
  EXPECT_EQ(card(back.tradeoff.back()), card(found.tradeoff.back()));
}

TEST(JsonPlan, AFilmThatAffordsNothingReadsBack) {
  Job job = demo_job();
  job.zones[2].film = Film{40, 30};
  const Plan taken = evaluate(job, demo_stack(), {"a-p400", "a-p800"});
  ASSERT_EQ(taken.zones[2].budget_um, 0.0);
  const Json json = Json::parse(to_json(taken));
  EXPECT_EQ(json["steps"][1]["zones"][2]["film_used"], "no budget");
  EXPECT_EQ(json["total"]["film"], "no budget");
  const Plan back = plan_from_json(to_json(taken), "plan.json");
  EXPECT_EQ(back.steps[1].zones[2].film_used, taken.steps[1].zones[2].film_used);
  EXPECT_EQ(back.total.film, taken.total.film);
  EXPECT_EQ(card(back), card(taken));
}

TEST(JsonPlan, HasTheWorkBeforeTheFirstStepAndTheGlossAtEachAngle) {
  Job job = demo_job();
  job.zones[0].defects = {{DefectKind::run, 150, 6, 35, 3}};
  const Plan found = plan(job, demo_stack());
  const Json json = checked_json(found);
  ASSERT_EQ(json["before"].size(), 1U);
  const Json& run = json["before"][0];
  EXPECT_EQ(run["zone"], "top");
  EXPECT_EQ(run["defect"]["kind"], "run");
  EXPECT_EQ(run["defect"]["count"], 3);
  EXPECT_EQ(run["shaved"], found.before[0].work.shaved);
  EXPECT_EQ(run["local"]["minutes"].get<double>(), found.before[0].work.local.minutes);
  EXPECT_EQ(run["flat"]["film_um"].get<double>(), found.before[0].work.flat.film_um);
  EXPECT_EQ(run["verdict"], sentence(found.before[0].work));
  const ZoneStep& zone = found.steps.back().zones[0];
  const Json& told = json["steps"].back()["zones"][0];
  EXPECT_EQ(told["gloss_20_gu"].get<double>(), zone.gloss_20_gu);
  EXPECT_EQ(told["gloss_85_gu"].get<double>(), zone.gloss_85_gu);
  EXPECT_LT(zone.gloss_20_gu, zone.gloss_gu);
  EXPECT_LT(zone.gloss_gu, zone.gloss_85_gu);
}

TEST(JsonPlan, SaysThatACompoundMeetsScratchesBeyondItsReach) {
  Job job = demo_job();
  job.target = {.size_um = {}, .gloss_gu = 80, .label = ""};
  Stack stack = stack_from_json(
      "{\"format\": \"levigate.stack/1\", \"sheets\": [{\"id\": \"fine\", \"label\": \"fine\", "
      "\"compound\": \"fine\", \"wheel\": \"loose muslin\"}]}");
  stack.sheets.push_back(demo_stack().sheets[1]);
  const Json why = checked_json(plan(job, stack))["why"];
  EXPECT_EQ(why["blocked_by"], "scratch");
  EXPECT_EQ(why["compound"], "fine");
  EXPECT_GT(why["too_deep_um"].get<double>(), 0.0);
}

TEST(JsonPlan, SaysWhyThereIsNone) {
  Job job = demo_job();
  job.target.size_um = 1;
  EXPECT_EQ(checked_json(plan(job, demo_stack()))["why"]["blocked_by"], "target");

  job = demo_job();
  Stack two;
  for (const Sheet& sheet : demo_stack().sheets) {
    if (sheet.id == "a-p400" || sheet.id == "b-pad") two.sheets.push_back(sheet);
  }
  two.sheets[1].on_hand = 0.1;
  job.scratched_by = grade("P320");
  const Json why = checked_json(plan(job, two))["why"];
  EXPECT_EQ(why["blocked_by"], "several");
  ASSERT_EQ(why["gaps"].size(), 1U);
  ASSERT_EQ(why["paper"].size(), 1U);
  EXPECT_EQ(why["gaps"][0]["coarse"], "a-p400");
  EXPECT_FALSE(why["gaps"][0]["bridges"].empty());
  EXPECT_EQ(why["paper"][0]["sheet"], "b-pad");
}

TEST(JsonPlan, ASolidHasNoFilm) {
  Job job = demo_job();
  job.coating = coating_named("acrylic sheet");
  for (Zone& zone : job.zones) zone.film.reset();
  const Json json = checked_json(plan(job, demo_stack()));
  ASSERT_TRUE(json["found"].get<bool>());
  EXPECT_TRUE(json["total"]["film"].is_null());
  EXPECT_TRUE(json["steps"][0]["zones"][0]["cut_through"].is_null());
}

TEST(JsonPlan, ARigidBlockIsWrittenAsSuch) {
  Job job = demo_job();
  job.zones[0].block = {"glass", std::numeric_limits<double>::infinity(), 60, 10, 0.5, 0.6, 1};
  const Json json = checked_json(plan(job, demo_stack()));
  EXPECT_EQ(std::count_if(json["relies_on"].begin(), json["relies_on"].end(),
                          [](const Json& r) { return r["value"] == "rigid"; }),
            1);
}

TEST(JsonPlan, BytesThatAreNoTextAreReplaced) {
  Stack stack = demo_stack();
  stack.sheets[1].id = "\xFF";
  EXPECT_EQ(checked_json(evaluate(demo_job(), stack, {"\xFF"}))["steps"][0]["sheet"], "\uFFFD");
}

TEST(JsonFindings, IsAnArray) {
  const std::vector<Finding> findings = check(demo_stack());
  const Json json = Json::parse(to_json(findings));
  ASSERT_EQ(json.size(), findings.size());
  EXPECT_EQ(json[0]["kind"], to_string(findings[0].kind));
  EXPECT_EQ(json[0]["message"], sentence(findings[0]));
  EXPECT_TRUE(json[0]["zone"].is_null());
  ASSERT_EQ(json[0]["numbers"].size(), findings[0].numbers.size());
  for (std::size_t i = 0; i < findings[0].numbers.size(); ++i) {
    EXPECT_EQ(json[0]["numbers"][i]["name"], findings[0].numbers[i].name);
    EXPECT_EQ(json[0]["numbers"][i]["value"].get<double>(), findings[0].numbers[i].value);
  }
  EXPECT_EQ(Json::parse(to_json(std::vector<Finding>{})), Json::array());
}

TEST(JsonEquivalent, HasTheGradeAndItsNeighbours) {
  const Equivalent found = convert(grade("P1000"), System::jis);
  const Json json = Json::parse(to_json(found));
  EXPECT_EQ(json["grade"]["label"], found.grade.label);
  EXPECT_EQ(json["grade"]["median_um"].get<double>(), found.grade.median_um);
  EXPECT_EQ(json["coarser"]["label"], found.coarser->label);
  EXPECT_EQ(json["within_tolerance"], *found.within_tolerance);
  EXPECT_EQ(json["verdict"], sentence(found));
  const Json micron = Json::parse(to_json(convert(grade("P1000"), System::micron)));
  EXPECT_TRUE(micron["number"].is_null());
}

TEST(JsonMeanings, HasEachMeaningWithItsNearestGrades) {
  const LabelMeanings label = meanings("600");
  const Json json = Json::parse(to_json(label));
  EXPECT_EQ(json["label"], "600");
  EXPECT_EQ(json["ambiguous"], true);
  EXPECT_TRUE(json["bare_number"].is_null());
  ASSERT_EQ(json["meanings"].size(), label.meanings.size());
  for (std::size_t i = 0; i < label.meanings.size(); ++i) {
    EXPECT_EQ(json["meanings"][i]["grade"]["label"], label.meanings[i].grade.label);
    EXPECT_EQ(json["meanings"][i]["nearest"][2],
              Json::parse(to_json(convert(label.meanings[i].grade, System::jis))));
  }
  EXPECT_EQ(Json::parse(to_json(meanings("600", System::cami)))["bare_number"], "CAMI");
}

}  // namespace
}  // namespace write_plan_test
