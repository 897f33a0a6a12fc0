// The work: its coating, its zones, where it starts and where it must end.
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/faults.hpp"
#include "levigate/film/film.hpp"
#include "levigate/grade/grade.hpp"
#include "levigate/plan/carried.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/plan/sequence.hpp"
#include "levigate/stack/block.hpp"
#include "levigate/surface/coating.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/defect.hpp"
#include "levigate/surface/peel.hpp"

namespace levigate::inline v0 {

/// An edge or corner: it holds less film than the flat beside it, and the levelling step passes it by.
struct Edge {
  std::string of;
  std::optional<double> radius_mm{};

  friend bool operator==(const Edge&, const Edge&) = default;
};

template <std::same_as<Edge> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Edge", "Of which zone an edge is, and how round.",
    member<&Value::of>("of", "name of the flat zone that it belongs to").not_empty(),
    member<&Value::radius_mm>("radius_mm", Within{0, std::numeric_limits<double>::infinity()},
                              "of the edge; none: the zone has a film of its own")
        .such_as("2"));

/// A part of the surface that is sanded with one block and has one film.
struct Zone {
  std::string name;
  double area_cm2 = 0;
  Block block;
  std::optional<Film> film{};
  std::optional<Edge> edge{};
  bool levelled = true;
  double peel_um = 0;
  double peel_wavelength_mm = usual_peel().peel_wavelength_mm.value;
  PeelHow peel_how = PeelHow::by_eye;
  double levelled_peel_um = 0;
  double below_um = 0;
  std::vector<Defect> defects{};
  std::optional<Carried> carries{};
  bool usual_wavelength = false;

  friend bool operator==(const Zone&, const Zone&) = default;
};

template <std::same_as<Zone> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Zone", "A part of the surface that is sanded with one block and has one film.",
    member<&Value::name>("name", "of the zone; unique in a job").not_empty().such_as("\"top\""),
    member<&Value::area_cm2>("area_cm2", Within{0.1, 1e6}, "to be sanded").such_as("540"),
    member<&Value::block>("block", "what presses and drives the paper"),
    member<&Value::film>("film", "of the last round; a coat needs it, a solid has none"),
    member<&Value::peel_um>("peel_um", Within{0, 1e4},
                            "orange peel as sprayed, peak to valley; a file that tells none where "
                            "it counts: as usual")
        .optional()
        .such_as("30"),
    member<&Value::peel_wavelength_mm>("peel_wavelength_mm", Within{1e-3, 1e3},
                                       "from crest to crest of the peel")
        .optional()
        .such_as("3"),
    member<&Value::usual_wavelength>("usual_wavelength",
                                     "true: nobody told peel_wavelength_mm, it is taken as usual")
        .only_where_told(),
    member<&Value::peel_how>("peel_how", "how peel_um was told, which tells its error")
        .left_out_as_made(),
    member<&Value::levelled_peel_um>(
        "levelled_peel_um", Within{0, 1e4},
        "orange peel that was levelled since film was read; its error is in what is left")
        .optional()
        .left_out_as_made(),
    member<&Value::edge>("edge", "where it is an edge and no flat"),
    member<&Value::levelled>("levelled", "false: the levelling step passes it by").optional(),
    member<&Value::below_um>("below_um", Within{0, 2e4}, "film of the rounds below the last one")
        .optional(),
    member<&Value::defects>("defects", "runs, sags, nibs, ridges: taken down before levelling")
        .optional(),
    member<&Value::carries>("carries", "where it starts in another state than the job"));

/// Whether the levelling step works a zone: no edge, and no flat that is to be left.
inline bool is_levelled(const Zone& zone) noexcept { return zone.levelled && !zone.edge; }

/// What ends the sequence: the first sheet that meets it. One of size and gloss is set.
struct Target {
  std::optional<double> size_um{};
  std::optional<double> gloss_gu{};
  std::string label{};
  std::optional<double> gloss_high_gu{};
  double angle_deg = 60;
  std::string rub_out{};

  friend bool operator==(const Target&, const Target&) = default;
};

/// Throws: BadInput for no target or two, for a band of gloss that is upside down, or for an angle that no glossmeter has.
void require_one_target(const Target& target, std::string_view where);

template <std::same_as<Target> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "Target", "What ends the sequence: the first sheet that meets it.",
        member<&Value::size_um>("size_um", Within{0.01, 1e4}, "met by grain of at most this size")
            .such_as("8"),
        member<&Value::gloss_gu>("gloss_gu", Within{0, 200},
                                 "least reading of a glossmeter in every zone"),
        member<&Value::gloss_high_gu>("gloss_high_gu", Within{0, 200},
                                      "most that it may read; none: any"),
        member<&Value::angle_deg>("angle_deg", Within{20, 85},
                                  "of the glossmeter: 20, 60 or 85; limits of a sheen are at 60")
            .optional()
            .left_out_as_made(),
        member<&Value::rub_out>("rub_out",
                                "id of the sheet that the last step is rubbed with, one way; "
                                "none: any sheet that meets the target")
            .left_out_as_made(),
        member<&Value::label>("label",
                              "of the grade or the sheen, where the target was given as one")
            .optional())
        .rule(rule_by<&require_one_target>);

/// One job.
struct Job {
  std::string name;
  Coating coating;
  std::vector<Zone> zones;
  std::optional<Grade> scratched_by{};
  Target target;
  std::optional<double> age_h{};
  std::string age_at{};
  std::optional<Cure> cure{};
  std::optional<double> weight_kg{};
  Rules rules;
  Objective prefer = Objective::minutes;

  friend bool operator==(const Job&, const Job&) = default;
};

/// Throws: BadInput where zones share a name, an edge is of no flat zone, a film is missing or leaves nothing to remove, or age_at is
///         no date and time of RFC 3339 or stands without age_h.
void require_workable(const Job& job, std::string_view where);

/// Of a job, for messages.
inline constexpr std::string_view example_zones =
    R"([{"name": "top", "area_cm2": 540, "block": "hard block", "film": {"mean_um": 90, "sd_um": 5}, )"
    R"("peel_um": 30, "peel_wavelength_mm": 3}])";

template <std::same_as<Job> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "Job", "One job: coating, zones, start, target and rules.",
        member<&Value::name>("name", "what the work is").such_as("\"Walnut box\""),
        member<&Value::coating>("coating", "what is being sanded"),
        member<&Value::zones>("zones", "the zones").not_empty().such_as(example_zones),
        member<&Value::scratched_by>("scratched_by",
                                     "grade whose scratches the work carries; none: as sprayed"),
        member<&Value::target>("target", "what ends the sequence").such_as(R"({"size_um": 8})"),
        member<&Value::rules>("rules", "the rules of its plan").optional(),
        member<&Value::prefer>("prefer", "what the plan is to be best in").optional(),
        member<&Value::age_h>("age_h", Within{0.01, 1e6}, "of the last coat; none: fully cured")
            .such_as("336"),
        member<&Value::age_at>(
            "age_at", "when it is of that age: date and time of RFC 3339 with Z or an offset")
            .not_empty()
            .left_out_as_made(),
        member<&Value::cure>("cure", "by this coat's data sheet; none: the coating's own"),
        member<&Value::weight_kg>("weight_kg", Within{0.001, 1e4},
                                  "of the piece; a heavy one is not held to a wheel")
            .such_as("3"))
        .rule(rule_by<&require_workable>);

/// What a zone carries: its own state, else what the job starts with; none: as sprayed.
inline std::optional<Carried> carried_in(const Job& job, const Zone& zone) {
  if (zone.carries || !job.scratched_by) return zone.carries;
  return Carried{*job.scratched_by};
}

/// Whether a zone holds orange peel that the first step levels.
inline bool has_peel_to_level(const Job& job, const Zone& zone) {
  return is_levelled(zone) && zone.peel_um > 0.0 && !carried_in(job, zone);
}

/// Whether the first step levels orange peel: where a zone as sprayed is to be levelled, or no zone carries a grade.
inline bool starts_by_levelling(const Job& job) {
  bool carried = false;
  for (const Zone& zone : job.zones) {
    if (carried_in(job, zone)) {
      carried = true;
    } else if (is_levelled(zone)) {
      return true;
    }
  }
  return !carried;
}

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/plan/work/job.hpp"
#endif
