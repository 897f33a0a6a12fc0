// A job in a file: where it starts, its target, and its zones, of which edges hang on others.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/choices.hpp"
#include "levigate/describe.hpp"
#include "levigate/error.hpp"
#include "levigate/film/edge.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/grade/label.hpp"
#include "levigate/grade/sized.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/io/work/file_keys.hpp"
#include "levigate/io/work/form.hpp"
#include "levigate/io/work/form_film.hpp"
#include "levigate/io/work/node.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/surface/sheen_band_table.hpp"
#include "levigate/surface/sheen_bands.hpp"

namespace levigate::inline v0 {

namespace detail {

/// What a surface is like that carries no scratches.
enum class Unsanded { sprayed };

constexpr std::string_view to_string(Unsanded) noexcept { return "sprayed"; }

/// What a job starts with, in one of two keys.
struct StartTold {
  std::optional<Unsanded> as;
  std::optional<std::string> scratched_by;
};

/// Key of a job.
struct JobStart {
  std::optional<StartTold> start;
};

/// Key of a target.
struct TargetGrade {
  std::optional<std::string> grade;
};

struct SheenName {
  std::string scheme;
  std::string name;
};

/// Key of a target.
struct TargetSheen {
  std::optional<SheenName> sheen;
};

/// Key of a zone.
struct ZoneFilm {
  std::optional<LaidFilm> film;
};

/// Keys of a zone that is an edge.
struct ZoneEdge {
  std::optional<std::string> edge_of;
  std::optional<double> radius_mm;
};

/// Key of a zone.
struct ZoneStart {
  std::optional<Carried> start;
};

/// Keys of what a zone carries. A label may come with a size of its own.
struct CarriedGrade {
  std::string scratched_by;
  std::optional<double> size_um;
};

inline constexpr std::string_view about_scratches = "label of the grade whose scratches it carries";

}  // namespace detail

template <>
inline constexpr auto choices<detail::Unsanded> = std::to_array({detail::Unsanded::sprayed});

template <std::same_as<detail::StartTold> Value>
inline constexpr auto described<Value> = describe<Value>(
    "StartTold", "What the surface carries.",
    member<&Value::as>("as", "where it carries no scratches"),
    member<&Value::scratched_by>("scratched_by", detail::about_scratches).such_as("\"P800\""));

template <std::same_as<detail::JobStart> Value>
inline constexpr auto described<Value> =
    describe<Value>("JobStart", "Key of a job.",
                    member<&Value::start>("start", "what the surface carries; none: as sprayed")
                        .such_as(R"({"as": "sprayed"})"));

template <std::same_as<detail::TargetGrade> Value>
inline constexpr auto described<Value> = describe<Value>(
    "TargetGrade", "Key of a target.",
    member<&Value::grade>("grade", "label; met by grain of at most its size").such_as("\"P2000\""));

template <std::same_as<detail::SheenName> Value>
inline constexpr auto described<Value> = describe<Value>(
    "SheenName", "A name of sheen in a scheme that has limits for it at 60 degrees.",
    member<&Value::scheme>("scheme", "whose names"),
    member<&Value::name>("name", "one of the scheme's"));

template <std::same_as<detail::TargetSheen> Value>
inline constexpr auto described<Value> = describe<Value>(
    "TargetSheen", "Key of a target.", member<&Value::sheen>("sheen", "met by its least gloss"));

template <std::same_as<detail::ZoneFilm> Value>
inline constexpr auto described<Value> =
    describe<Value>("ZoneFilm", "Key of a zone.",
                    member<&Value::film>("film", "of the last round; a coat needs it")
                        .such_as(R"({"mean_um": 90, "sd_um": 5})"));

template <std::same_as<detail::ZoneEdge> Value>
inline constexpr auto described<Value> = describe<Value>(
    "ZoneEdge", "Keys of a zone.",
    member<&Value::edge_of>("edge_of", "zone above whose edge it is: it shares its film"),
    detail::member_as<&Value::radius_mm, Edge>("radius_mm"));

template <std::same_as<detail::ZoneStart> Value>
inline constexpr auto described<Value> = describe<Value>(
    "ZoneStart", "Key of a zone.",
    member<&Value::start>("start", "what it carries; none: what the job starts with"));

template <std::same_as<detail::CarriedGrade> Value>
inline constexpr auto described<Value> = describe<Value>(
    "CarriedGrade", "Keys of what a zone carries.",
    member<&Value::scratched_by>("scratched_by", detail::about_scratches).such_as("\"P800\""),
    member<&Value::size_um>("size_um", Within{0.01, 1e4},
                            "of the grain, where it is not the label's"));

namespace detail {

inline void take_start(const Node& node, const JobStart& keys, Job& job) {
  if (!keys.start || !keys.start->scratched_by) return;
  const Node label = node.at("start").at("scratched_by");
  job.scratched_by = label.placed([&] { return grade(label.text()); });
}

inline JobStart start_keys(const Job& job) {
  const std::optional<Grade>& scratched_by = job.scratched_by;
  if (!scratched_by) return {StartTold{Unsanded::sprayed, {}}};
  if (scratched_by->basis() == Basis::user && scratched_by->system != System::micron) {
    throw BadInput("scratched_by '" + scratched_by->label +
                       "' has a size of its own; a file holds a label only, in /start/scratched_by",
                   "/start/scratched_by");
  }
  return {StartTold{{}, scratched_by->label}};
}

/// "satin (institute)": the label of a target that is a band of sheen.
inline std::string sheen_label(const SheenBand& band) {
  return std::string(band.name) + " (" + std::string(band.scheme) + ")";
}

inline bool is_sheen(const Target& target) { return target.gloss_gu && !target.label.empty(); }

inline void take_grade(const Node& node, const TargetGrade& keys, Target& target) {
  if (!keys.grade) return;
  const Grade read = node.at("grade").placed([&] { return grade(*keys.grade); });
  target.size_um = read.median_um;
  target.label = read.label;
}

inline TargetGrade grade_keys(const Target& target) {
  if (is_sheen(target) || target.label.empty()) return {};
  return {target.label};
}

/// A band of sheen is at least its lower end, and no more than its upper.
inline void take_sheen(const Node& node, const TargetSheen& keys, Target& target) {
  if (!keys.sheen) return;
  for (const std::string_view key : {"gloss_high_gu", "angle_deg"}) {
    if (node.has(key)) node.at(key).fail(node.spelt(key) + " does not go with sheen");
  }
  const Node sheen = node.at("sheen");
  const SheenBand band =
      sheen.placed([&] { return band_named(keys.sheen->scheme, keys.sheen->name); });
  if (!band.low_gu)
    sheen.fail("sheen '" + keys.sheen->name + "' has no limits at 60 degrees to aim at");
  target.gloss_gu = band.low_gu;
  target.gloss_high_gu = band.high_gu;
  target.label = sheen_label(band);
}

inline TargetSheen sheen_keys(const Target& target) {
  if (!is_sheen(target)) return {};
  for (const SheenBand& band : sheen_band_table) {
    if (sheen_label(band) == target.label)
      return {SheenName{std::string(band.scheme), std::string(band.name)}};
  }
  throw BadInput("target '" + target.label + "' is no band of sheen that a file can name",
                 "/target");
}

inline void take_film(const Node& node, const ZoneFilm& keys, Zone& zone) {
  if (!keys.film) return;
  zone.film = keys.film->film;
  zone.below_um = keys.film->below_um;
  if (zone.below_um > 0.0 && node.has("below_um"))
    node.at("below_um").fail(node.spelt("below_um") + " does not go with coats, which tell it");
}

inline ZoneFilm film_keys(const Zone& zone) {
  return {zone.film ? std::optional(LaidFilm{*zone.film}) : std::nullopt};
}

inline void take_edge(const Node& node, const ZoneEdge& keys, Zone& zone) {
  if (!keys.edge_of) {
    if (keys.radius_mm) node.at("radius_mm").fail(node.spelt("radius_mm") + " needs edge_of");
    return;
  }
  zone.edge = Edge{*keys.edge_of, keys.radius_mm};
  if (node.has("levelled"))
    node.at("levelled").fail("levelled does not go with edge_of: an edge is not levelled");
}

inline ZoneEdge edge_keys(const Zone& zone) {
  if (!zone.edge) return {};
  return {zone.edge->of, zone.edge->radius_mm};
}

inline void take_carried(const Node&, const ZoneStart& keys, Zone& zone) {
  zone.carries = keys.start;
}

inline ZoneStart carried_keys(const Zone& zone) { return {zone.carries}; }

inline void take_carried_grade(const Node& node, const CarriedGrade& keys, Carried& carried) {
  const std::string& label = keys.scratched_by;
  carried.grade = keys.size_um ? node.placed([&] { return sized_grade(label, *keys.size_um); })
                               : node.at("scratched_by").placed([&] { return grade(label); });
}

/// The size stands beside the label where it is not the label's.
inline CarriedGrade carried_grade_keys(const Carried& carried) {
  const Grade& grade = carried.grade;
  const bool own = grade.method == sized_grade(grade.label, grade.median_um).method;
  return {grade.label, own ? std::optional(grade.median_um) : std::nullopt};
}

/// The film of an edge that tells none: a share of that of its zone, which stands above it in the list.
inline void settle_edge(DescribedReader& reader, const Node& node, std::span<const Zone> above,
                        Zone& zone) {
  const auto flat = std::find_if(above.begin(), above.end(),
                                 [&](const Zone& other) { return other.name == zone.edge->of; });
  if (flat == above.end()) {
    const auto nameless = [](const Zone& other) { return other.name.empty(); };
    if (std::any_of(above.begin(), above.end(), nameless)) return;  // a fault of its own
    node.at("edge_of").fail("edge_of '" + shown(zone.edge->of) +
                            "' is no zone that stands before this one");
  }
  if (node.has("film") || !flat->film) return;  // a solid has none on either
  if (node.has("below_um"))
    node.at("below_um")
        .fail(node.spelt("below_um") + " does not go with edge_of, which tells it by the radius");
  if (!node.has("radius_mm")) return reader.require(description_of<Zone>(), node, "radius_mm");
  zone.film = edge_film(*flat->film, *zone.edge->radius_mm);
  zone.below_um = edge_share(*zone.edge->radius_mm) * flat->below_um;
}

/// Orange peel counts where a zone as sprayed is to be levelled.
/// What nobody told of it is taken as usual.
inline void settle_peel(DescribedReader& reader, const Node& node, Zone& zone) {
  if (node.has("start") || node.has("edge_of") || !is_levelled(zone)) return;
  if (reader.misspelt_in(description_of<Zone>(), node)) return;  // a fault of its own
  if (!node.has("peel_um")) {
    if (node.has("peel_how") && zone.peel_how != PeelHow::usual)
      node.at("peel_how").fail("peel_how needs peel_um");
    zone.peel_um = usual_peel().peel_um.value;
    zone.peel_how = PeelHow::usual;
  }
  if (zone.peel_um > 0.0 && !node.has("peel_wavelength_mm")) zone.usual_wavelength = true;
}

inline void settle_zones(DescribedReader& reader, const Node& node, void* value) {
  Job& job = as<Job>(value);
  const auto zones = node.find("zones");
  if (!zones || !zones->is_array()) return;
  const auto start = node.find("start");
  const bool sprayed = !start || (start->is_object() && start->has("as"));
  const std::vector<Node> nodes = zones->items();
  for (std::size_t i = 0; i < std::min(nodes.size(), job.zones.size()); ++i) {
    if (!nodes[i].is_object()) continue;
    Zone& zone = job.zones[i];
    if (zone.edge)
      reader.attempt([&] { settle_edge(reader, nodes[i], {job.zones.data(), i}, zone); });
    if (sprayed) reader.attempt([&] { settle_peel(reader, nodes[i], zone); });
  }
}

/// A target is written as what was given: a grade by its label, a sheen by its name.
inline bool hides_numbers(const void* value, std::string_view member) {
  const Target& target = as<Target>(value);
  if (member == "rub_out") return false;
  return is_sheen(target) || (member == "size_um" && !target.label.empty());
}

inline bool hides_levelled(const void* value, std::string_view member) {
  return member == "levelled" && as<Zone>(value).edge;
}

inline std::vector<FileForm> job_type_forms() {
  return {{.of = &description_of<Job>(), .settle = settle_zones},
          {.of = &description_of<StartTold>(), .one_key = true},
          {.of = &description_of<Target>(),
           .one_key = true,
           .beside_it = {"gloss_high_gu", "angle_deg", "rub_out"},
           .hides = hides_numbers},
          {.of = &description_of<Zone>(), .hides = hides_levelled},
          {.of = &description_of<HardnessPoint>(), .pair = "a point is a pair, hours and MPa"}};
}

}  // namespace detail

}  // namespace levigate
