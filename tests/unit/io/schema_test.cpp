// The schemas say what the readers do: the same keys, names, ranges and defaults.
#include <limits>
#include <nlohmann/json.hpp>
#include <set>

#include "levigate/film/gauge_table.hpp"
#include "levigate/io/entry.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/forms.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/work/entry_shape.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/stack/backing_table.hpp"
#include "levigate/stack/block_table.hpp"
#include "levigate/surface/coating_table.hpp"
#include "levigate/surface/defect.hpp"
#include "levigate/surface/sheen_band_table.hpp"
#include "levigate/wheel/compound_table.hpp"
#include "levigate/wheel/wheel_table.hpp"
#include "unit/io/json_workshop.hpp"

namespace schema_test {
namespace {

using namespace json_workshop;
using Json = nlohmann::json;
using Pointer = Json::json_pointer;

Json schema(const std::string& name) {
  return Json::parse(
      read_file(std::string(LEVIGATE_DATA_DIR) + "/schema/" + name + ".schema.json"));
}

std::set<std::string> keys_of(const Json& object) {
  std::set<std::string> keys;
  for (const auto& [key, value] : object.items()) keys.insert(key);
  return keys;
}

/// Keys that an object must have, each with its own unit: one that may come in another is asked for by a pattern, "^width_(um|mil)$".
std::set<std::string> required(const Json& rule) {
  std::set<std::string> keys = rule.value("required", std::set<std::string>());
  for (const Json& more : rule.value("allOf", Json::array())) {
    if (!more.contains("not")) continue;  // a condition
    for (const std::string& pattern : keys_of(more["not"]["patternProperties"])) {
      const std::size_t open = pattern.find('('), end = pattern.find('|');
      keys.insert(pattern.substr(1, open - 1) + pattern.substr(open + 1, end - open - 1));
    }
  }
  return keys;
}

/// Keys that an object may have, each with its own unit.
Json allowed(const Json& rule) {
  const Json& names = rule["propertyNames"];
  return names.contains("anyOf") ? names["anyOf"][0]["enum"] : names["enum"];
}

/// Keys of an object, or of all its forms together.
std::set<std::string> properties(const Json& part) {
  std::set<std::string> keys;
  if (part.contains("properties")) keys = keys_of(part["properties"]);
  for (const Json& form : part.value("oneOf", Json::array())) keys.merge(properties(form));
  return keys;
}

std::set<std::string> reader(std::span<const std::string_view> keys) {
  return {keys.begin(), keys.end()};
}

/// Keys of an object of this description, as the reader has them.
std::set<std::string> keys_by(const Description& description, const detail::Style& style) {
  std::vector<Fault> faults;
  std::vector<std::string_view> keys;
  detail::DescribedReader(style, faults).add_keys(description, keys);
  return reader(keys);
}

template <typename Value>
std::set<std::string> keys_by() {
  return keys_by(description_of<Value>(), detail::as_given);
}

template <typename Value>
std::set<std::string> file_keys() {
  std::set<std::string> keys = keys_by<Value>();
  keys.merge(std::set<std::string>{"format", "$schema"});
  return keys;
}

TEST(Schema, KeysAreThoseOfTheReaders) {
  const Json stack = schema("stack");
  EXPECT_EQ(properties(stack), file_keys<Stack>());
  EXPECT_EQ(properties(stack["$defs"]["sheet"]), keys_by<Sheet>());
  EXPECT_EQ(properties(stack["$defs"]["backing"]), keys_by<Backing>());
  EXPECT_EQ(properties(stack["$defs"]["block"]), keys_by<Block>());
  EXPECT_EQ(properties(stack["$defs"]["compound"]), keys_by<Polish>());
  EXPECT_EQ(properties(stack["$defs"]["wheel"]), keys_by<Wheel>());
  EXPECT_EQ(properties(stack["$defs"]["machine"]), keys_by<Machine>());
  const Json job = schema("job");
  EXPECT_EQ(properties(job), file_keys<Job>());
  EXPECT_EQ(properties(job["$defs"]["coating"]), keys_by<Coating>());
  EXPECT_EQ(properties(job["$defs"]["limits"]), keys_by<WheelLimits>());
  EXPECT_EQ(properties(job["$defs"]["zone"]), keys_by<Zone>());
  std::set<std::string> film;
  for (const Description* shape : detail::film_shapes())
    film.merge(keys_by(*shape, detail::as_given));
  EXPECT_EQ(properties(job["$defs"]["film"]), film);
  EXPECT_EQ(properties(job["$defs"]["start"]), keys_by<detail::StartTold>());
  EXPECT_EQ(properties(job["$defs"]["zone_start"]), keys_by<Carried>());
  EXPECT_EQ(properties(job["$defs"]["target"]), keys_by<Target>());
  EXPECT_EQ(properties(job["$defs"]["rules"]), keys_by<Rules>());
  EXPECT_EQ(properties(job["$defs"]["defect"]), keys_by<Defect>());
  EXPECT_EQ(properties(job["$defs"]["defect_readings"]), keys_by<detail::HeightReadings>());
  EXPECT_EQ(properties(job["$defs"]["gauge"]), keys_by<Gauge>());
  EXPECT_EQ(properties(job["$defs"]["coat"]), keys_by<Coat>());
  EXPECT_EQ(properties(job["$defs"]["cure"]), keys_by<Cure>());
  EXPECT_EQ(properties(job["$defs"]["sheen"]), keys_by<detail::SheenName>());
  EXPECT_EQ(job["$defs"]["block"], stack["$defs"]["block"]);
  const Json journal = schema("journal");
  EXPECT_EQ(properties(journal), file_keys<Entry>());
  EXPECT_EQ(properties(journal["$defs"]["mark"]), keys_by<Mark>());
  const Json shop = schema("shop");
  const auto of_shop = [](const auto& described) {
    return keys_by(described, detail::Style::sparse);
  };
  EXPECT_EQ(properties(shop), file_keys<Shop>());
  EXPECT_EQ(properties(shop["$defs"]["person"]), of_shop(described_pace<LearnedFactor>.whole()));
  EXPECT_EQ(properties(shop["$defs"]["rate"]), keys_by<LearnedPair>());
  EXPECT_EQ(properties(shop["$defs"]["scratch"]), of_shop(described_scratch<LearnedPair>.whole()));
  EXPECT_EQ(properties(shop["$defs"]["film"]), keys_by<LearnedFilm>());
  EXPECT_EQ(properties(shop["$defs"]["noise"]), keys_by<LearnedNoise>());
}

TEST(Schema, NamesAreThoseOfTheProfilesAndSystems) {
  const auto names = [](const auto& table) {
    Json result = Json::array();
    for (const auto& row : table) {
      result.push_back(row.name);
      for (const std::string_view other : row.also) result.push_back(other);
    }
    return result;
  };
  const Json job = schema("job");
  const Json sheet = schema("stack")["$defs"]["sheet"]["properties"];
  EXPECT_EQ(job["properties"]["coating"]["oneOf"][0]["enum"], names(coating_table));
  EXPECT_EQ(job["$defs"]["zone"]["properties"]["block"]["oneOf"][0]["enum"], names(block_table));
  EXPECT_EQ(sheet["block"]["oneOf"][0]["enum"], names(block_table));
  EXPECT_EQ(sheet["backing"]["oneOf"][0]["enum"], names(backing_table));
  EXPECT_EQ(sheet["compound"]["oneOf"][0]["enum"], names(compound_table));
  EXPECT_EQ(sheet["wheel"]["oneOf"][0]["enum"], names(wheel_table));
  const Json parts = job["$defs"];
  for (const Json& gauge : {parts["defect_readings"]["properties"]["gauge"],
                            parts["film"]["oneOf"][1]["properties"]["gauge"],
                            parts["film"]["oneOf"][4]["properties"]["gauge"]}) {
    EXPECT_EQ(gauge["oneOf"][0]["enum"], names(gauge_table));
  }
  std::set<std::string> schemes, sheens;
  for (const SheenBand& band : sheen_band_table) {
    schemes.emplace(band.scheme);
    sheens.emplace(band.name);
  }
  EXPECT_EQ(parts["sheen"]["properties"]["scheme"]["enum"].get<std::set<std::string>>(), schemes);
  EXPECT_EQ(parts["sheen"]["properties"]["name"]["enum"].get<std::set<std::string>>(), sheens);
  Json systems = Json::array();
  for (const System system : all_systems) systems.push_back(to_string(system));
  EXPECT_EQ(sheet["system"]["enum"], systems);
  const auto texts = [](const auto& all) {
    Json result = Json::array();
    for (const auto one : all) result.push_back(to_string(one));
    return result;
  };
  const Json journal = schema("journal");
  const Json mark = journal["$defs"]["mark"]["properties"];
  EXPECT_EQ(journal["properties"]["kind"]["enum"], texts(all_entry_kinds));
  EXPECT_EQ(mark["kind"]["enum"], texts(all_mark_kinds));
  EXPECT_EQ(mark["seen"]["enum"], texts(all_ways_seen));
}

TEST(Schema, AKindOfEntryHasTheKeysOfItsShape) {
  const Json journal = schema("journal");
  ASSERT_EQ(journal["allOf"].size(), std::size(all_entry_kinds));
  for (std::size_t i = 0; i < std::size(all_entry_kinds); ++i) {
    const EntryKind kind = all_entry_kinds[i];
    const Json& rule = journal["allOf"][i];
    EXPECT_EQ(rule["if"]["properties"]["kind"]["const"], to_string(kind));
    const detail::EntryShape shape = detail::shape_of(kind);
    EXPECT_EQ(required(rule["then"]), reader(shape.needs));
    std::set<std::string> may = reader(shape.may);
    may.merge(reader(shape.needs));
    may.merge(std::set<std::string>{"$schema", "format", "at", "kind", "job", "text"});
    EXPECT_EQ(allowed(rule["then"]).get<std::set<std::string>>(), may);
  }
}

TEST(Schema, DefaultsAreThoseOfTheRules) {
  const Json rules = schema("job")["$defs"]["rules"]["properties"];
  const Json written = Json::parse(to_json(Job{}))["rules"];
  for (const auto& [key, value] : written.items()) {
    EXPECT_EQ(rules[key]["default"].get<double>(), value.get<double>()) << key;
  }
}

/// Whether the reader finds fault with the range of this value.
template <typename Read>
bool out_of_range(Read read, Json document, const Pointer& at, double value) {
  document[at] = value;
  try {
    read(document.dump(), "");
  } catch (const OutOfRange& error) {
    const std::string message = error.what();
    return message.starts_with(at.back() + " = ") || message.starts_with(at.back() + " (");
  } catch (const BadInput&) {
  }
  return false;
}

/// Reads values at both ends of the range that the schema gives, and just beyond.
template <typename Read>
int expect_ranges(Read read, const Json& part, const Json& document, const Pointer& object) {
  int checked = 0;
  constexpr double infinity = std::numeric_limits<double>::infinity();
  for (const auto& [key, rule] : part["properties"].items()) {
    const Json& range = rule.contains("oneOf") ? rule["oneOf"][0] : rule;
    if (!range.contains("minimum")) continue;
    const Pointer at = object / key;
    const double low = range["minimum"].get<double>();
    const double step = rule.value("type", "") == "integer" ? 1.0 : 0.0;
    EXPECT_FALSE(out_of_range(read, document, at, low)) << at;
    EXPECT_TRUE(
        out_of_range(read, document, at, step > 0 ? low - step : std::nextafter(low, -infinity)))
        << at;
    ++checked;
    if (!range.contains("maximum")) continue;
    const double high = range["maximum"].get<double>();
    EXPECT_FALSE(out_of_range(read, document, at, high)) << at;
    EXPECT_TRUE(
        out_of_range(read, document, at, step > 0 ? high + step : std::nextafter(high, infinity)))
        << at;
  }
  return checked;
}

TEST(Schema, RangesOfAStackAreThoseOfTheReader) {
  const Json parts = schema("stack")["$defs"];
  Stack stack;
  Sheet& sheet = stack.sheets.emplace_back();
  sheet.id = "a";
  sheet.label = "P400";
  sheet.width_mm = sheet.height_mm = 100;
  sheet.backing = {"own", 0.1, 20, 200, 10, 30, 0.4};
  sheet.kind = Pad{Block{"own", 10, 50, 10, 0.5, 0.5, 1}};
  const Json document = Json::parse(to_json(stack));
  const Pointer at("/sheets/0");
  int checked = expect_ranges(stack_from_json, parts["sheet"], document, at);
  checked += expect_ranges(stack_from_json, parts["backing"], document, at / "backing");
  checked += expect_ranges(stack_from_json, parts["block"], document, at / "block");
  EXPECT_EQ(checked, 5 + 6 + 6);

  // Ranges that depend on another number are taken where that one is out of the way.
  Json polish = document;
  polish["sheets"][0] = {
      {"id", "bar"},
      {"label", "fine"},
      {"compound",
       {{"size_um", 100}, {"worn_um", 0.01}, {"coarsest_scratch_um", 0.5}, {"wear_share", 0.1}}},
      {"wheel",
       {{"diameter_mm", 2000},
        {"rpm", 1},
        {"rated_rpm", 100'000},
        {"width_mm", 100},
        {"contact_mm", 10},
        {"force_n", 10},
        {"feed_m_s", 0.2},
        {"modulus_mpa", 0.1},
        {"friction", 0.4},
        {"heat_share", 0.5},
        {"duty", 0.5}}}};
  Json by_scratch = parts["compound"], by_paper = by_scratch;
  by_scratch["properties"].erase("coarsest_paper_um");
  by_paper["properties"].erase("coarsest_scratch_um");
  EXPECT_EQ(expect_ranges(stack_from_json, by_scratch, polish, at / "compound"), 4);
  polish["sheets"][0]["compound"].erase("coarsest_scratch_um");
  polish["sheets"][0]["compound"]["coarsest_paper_um"] = 8;
  EXPECT_EQ(expect_ranges(stack_from_json, by_paper, polish, at / "compound"), 4);
  EXPECT_EQ(expect_ranges(stack_from_json, parts["wheel"], polish, at / "wheel"), 11);
}

TEST(Schema, RangesOfAJobAreThoseOfTheReader) {
  const Json parts = schema("job")["$defs"];
  Json document = Json::parse(demo_text("job.json"));
  document["coating"] = {{"kind", "coat"},
                         {"hardness_mpa", 150},
                         {"wear_coefficient", 0.02},
                         {"refractive_index", 1.5}};
  document["rules"] = Json::object();
  document["zones"][2]["peel_wavelength_mm"] = 3;
  int checked = expect_ranges(job_from_json, parts["coating"], document, Pointer("/coating"));
  checked += expect_ranges(job_from_json, parts["rules"], document, Pointer("/rules"));
  Json zone = parts["zone"], edge = zone;
  zone["properties"].erase("radius_mm");
  checked += expect_ranges(job_from_json, zone, document, Pointer("/zones/2"));
  const Json& film = parts["film"]["oneOf"];
  checked += expect_ranges(job_from_json, film[0], document, Pointer("/zones/2/film"));
  checked += expect_ranges(job_from_json, film[2], document, Pointer("/zones/1/film"));
  Json size = parts["target"], gloss = size;
  for (const char* key : {"gloss_gu", "gloss_high_gu", "angle_deg"}) size["properties"].erase(key);
  for (const char* key : {"size_um", "gloss_high_gu"}) gloss["properties"].erase(key);
  checked += expect_ranges(job_from_json, size, document, Pointer("/target"));
  document["target"] = {{"gloss_gu", 50}};
  checked += expect_ranges(job_from_json, gloss, document, Pointer("/target"));
  EXPECT_EQ(checked, 4 + 10 + 4 + 7 + 4 + 1 + 2);

  document["age_h"] = 100;
  document["cure"] = {{"hard_cure_h", 200}};
  document["zones"][0]["defects"] = {
      {{"kind", "run"}, {"height_um", 80}, {"width_mm", 0.01}, {"length_mm", 1000}}};
  document["zones"][1]["film"] = {{"coats", {{{"wet_um", 100}, {"volume_solids", 0.5}}}},
                                  {"recoat_window_h", 24},
                                  {"sd_um", 5}};
  const Pointer defect("/zones/0/defects/0");
  const Pointer layers("/zones/1/film");
  // Ranges that depend on another number are taken where that one is out of the way.
  Json limits = parts["limits"], high = limits;
  limits["properties"].erase("speed_high_m_s");
  high["properties"].erase("speed_low_m_s");
  document["coating"]["limits"] = {
      {"speed_low_m_s", 0.001}, {"speed_high_m_s", 100}, {"effusivity", 500}, {"rise_k", 30}};
  const Pointer wheel("/coating/limits");
  EXPECT_EQ(expect_ranges(job_from_json, limits, document, wheel), 3);
  EXPECT_EQ(expect_ranges(job_from_json, high, document, wheel), 3);
  checked = expect_ranges(job_from_json, parts["cure"], document, Pointer("/cure"));
  checked += expect_ranges(job_from_json, parts["defect"], document, defect);
  checked += expect_ranges(job_from_json, film[3], document, layers);
  EXPECT_EQ(checked, 2 + 4 + 3);
  for (const auto& [key, value] : zone["properties"].items()) edge["properties"].erase(key);
  document["zones"][2] = {{"name", "rim"},
                          {"area_cm2", 20},
                          {"block", "foam pad"},
                          {"edge_of", "top"},
                          {"radius_mm", 1}};
  EXPECT_EQ(expect_ranges(job_from_json, edge, document, Pointer("/zones/2")), 1);
  document["zones"][0]["start"] = {{"scratched_by", "own"}, {"size_um", 10'000}};
  EXPECT_EQ(expect_ranges(job_from_json, parts["zone_start"], document, Pointer("/zones/0/start")),
            4);
  const Json properties = schema("job")["properties"];
  const Json numbers = {{"properties", {{"age_h", properties["age_h"]}}}};
  EXPECT_EQ(expect_ranges(job_from_json, numbers, document, Pointer("")), 1);
}

TEST(Schema, RangesOfAnEntryAreThoseOfTheReader) {
  const auto read = [](const std::string& text, const std::string& file) {
    return entry_from_json(text, file);
  };
  const Json journal = schema("journal");
  const Json plain = {{"format", journal_format}, {"at", "2026-03-01T09:30:00Z"}, {"job", "a"}};
  // Each kind with the numbers that it may have.
  const std::pair<Json, std::vector<std::string>> kinds[] = {
      {{{"kind", "step begun"}, {"sheet", "a"}}, {"direction_deg"}},
      {{{"kind", "step ended"}, {"sheet", "a"}, {"minutes", 1}}, {"minutes", "sheets_used"}},
      {{{"kind", "scratch read"}, {"sheet", "a"}, {"zone", "b"}}, {"width_um"}},
      {{{"kind", "scratch read"}, {"sheet", "a"}, {"zone", "b"}}, {"ra_um"}}};
  int checked = 0;
  for (const auto& [members, numbers] : kinds) {
    Json document = plain, part;
    document.update(members);
    for (const std::string& key : numbers) part["properties"][key] = journal["properties"][key];
    checked += expect_ranges(read, part, document, Pointer(""));
  }
  EXPECT_EQ(checked, 5);

  const Json readings = journal["properties"]["readings_um"]["items"];
  Json film = plain;
  film.update({{"kind", "film read"}, {"zone", "b"}, {"readings_um", {100, 100}}});
  for (const auto& [end, beyond] : {std::pair("minimum", -1.0), std::pair("maximum", 1e9)}) {
    film["readings_um"][1] = readings[end];
    EXPECT_NO_THROW(read(film.dump(), "")) << end;
    film["readings_um"][1] = std::nextafter(readings[end].get<double>(), beyond);
    EXPECT_THROW(read(film.dump(), ""), OutOfRange) << end;
  }

  const Json rule = journal["$defs"]["mark"]["properties"];
  const std::pair<Json, std::vector<std::string>> marks[] = {
      {{{"kind", "cluster"}, {"zone", "b"}, {"seen", "loupe"}, {"width_um", 1}},
       {"width_um", "direction_deg", "count"}},
      {{{"kind", "wave"}, {"zone", "b"}, {"seen", "lamp"}}, {"height_um"}}};
  checked = 0;
  for (const auto& [members, numbers] : marks) {
    Json document = plain, part;
    document.update({{"kind", "mark found"}, {"mark", members}});
    for (const std::string& key : numbers) part["properties"][key] = rule[key];
    checked += expect_ranges(read, part, document, Pointer("/mark"));
  }
  EXPECT_EQ(checked, 4);
}

TEST(Schema, RangesOfAShopAreThoseOfTheReader) {
  const Json parts = schema("shop")["$defs"];
  // Ranges that depend on another number are taken where that one is out of the way.
  const Json factor = {{"coating", "shellac"}, {"backing", "film"}, {"factor", 1},
                       {"low", 1e-9},          {"high", 1e9},       {"observations", 1}};
  Json document = {
      {"format", "levigate.shop/1"},
      {"person", {{"duty_factor", 1}, {"low", 1e-9}, {"high", 1e9}, {"observations", 1}}},
      {"rates", {factor}},
      {"scratches", {factor}},
      {"films", {{{"coating", "shellac"}, {"offset_um", 0}, {"low_um", -1e4}, {"high_um", 1e4}}}},
      {"jobs", {{{"job", "tray"}, {"lines", 1}}}},
      {"minutes_noise", {{"log_sd", 0.3}, {"weight", 4}}},
      {"scratch_noise", {{"log_sd", 0.3}, {"weight", 4}}}};
  const auto without = [](Json part, std::initializer_list<const char*> keys) {
    for (const char* key : keys) part["properties"].erase(key);
    return part;
  };
  const Pointer none;
  const auto check = [&](const Json& part, const Pointer& at) {
    return expect_ranges(shop_from_json, part, document, at);
  };
  int checked = check(without(parts["person"], {"low", "high"}), none / "person");
  for (const char* list : {"rates", "scratches"}) {
    const Json& part = parts[list == std::string("rates") ? "rate" : "scratch"];
    checked += check(without(part, {"low", "high"}), none / list / 0);
  }
  checked += check(without(parts["film"], {"low_um", "high_um"}), none / "films" / 0);
  checked += check(parts["job"], none / "jobs" / 0);
  checked += check(parts["noise"], none / "minutes_noise");
  checked += check(parts["noise"], none / "scratch_noise");
  EXPECT_EQ(checked, 2 + 2 * 2 + 2 + 1 + 2 * 2);
  const auto only = [&](const Json& part, const char* key) {
    return Json{{"properties", {{key, part["properties"][key]}}}};
  };
  const auto ends = [&](const char* part, const char* object, const char* low, const char* high,
                        double smallest, double largest) {
    const Pointer at(object);
    Json& row = document[at];
    row[low] = smallest;
    row[high] = largest;
    // Their own ends are inside; beyond them nothing is.
    EXPECT_EQ(only(parts[part], low)["properties"][low]["minimum"], smallest);
    EXPECT_EQ(only(parts[part], high)["properties"][high]["maximum"], largest);
    EXPECT_TRUE(out_of_range(shop_from_json, document, at / low, std::nextafter(smallest, -1e300)));
    EXPECT_TRUE(out_of_range(shop_from_json, document, at / high, std::nextafter(largest, 1e300)));
  };
  ends("person", "/person", "low", "high", 1e-9, 1e9);
  ends("rate", "/rates/0", "low", "high", 1e-9, 1e9);
  ends("scratch", "/scratches/0", "low", "high", 1e-9, 1e9);
  ends("film", "/films/0", "low_um", "high_um", -1e4, 1e4);
}

}  // namespace
}  // namespace schema_test
