// One line of the journal: something that really happened at the bench, and when.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/faults.hpp"
#include "levigate/journal/entry_kind.hpp"
#include "levigate/plan/rules.hpp"
#include "levigate/recover/mark.hpp"

namespace levigate::inline v0 {

/// The kind of that name. Throws: BadInput with the nearest name where there is none.
EntryKind entry_kind_named(std::string_view name);

/// One entry. Which members a kind has stands at the kind; the others are empty.
struct Entry {
  EntryKind kind = EntryKind::note;
  std::string at{};
  std::string job{};
  std::string zone{};
  std::string sheet{};
  std::optional<double> minutes{};
  std::optional<double> sheets_used{};
  std::optional<double> removal_um{};
  std::optional<double> overcut{};
  std::optional<double> direction_deg{};
  std::vector<double> readings_um{};
  std::optional<double> width_um{};
  std::optional<double> ra_um{};
  std::optional<Mark> mark{};
  std::string text{};
  std::string tool{};
  std::optional<double> area_cm2{};
  std::vector<double> before_um{};
  std::vector<double> after_um{};
  std::optional<double> before_g{};
  std::optional<double> after_g{};
  std::optional<std::size_t> line{};

  friend bool operator==(const Entry&, const Entry&) = default;
};

namespace detail {

/// Throws: BadInput where a member is missing that the kind needs or given that it does not have, `at` is no date and
/// time of RFC 3339, or a text is not UTF-8.
void of_one_kind(const Entry& entry, std::string_view where);

}  // namespace detail

template <std::same_as<Entry> Value>
inline constexpr auto described<Value> =
    describe<Value>(
        "Entry", "What really happened at the bench: one line of a journal.",
        member<&Value::at>("at", "when: date and time of RFC 3339 with Z or an offset")
            .such_as("\"2026-03-01T09:30:00Z\""),
        member<&Value::kind>("kind", "what happened; further members are those of the kind"),
        member<&Value::job>("job", "name of the job").not_empty(),
        member<&Value::zone>("zone", "name of a zone; none with a step: all zones")
            .not_empty()
            .left_out_as_made(),
        member<&Value::sheet>("sheet", "id of a sheet of the stack").not_empty().left_out_as_made(),
        member<&Value::minutes>("minutes", Within{0, 1e5},
                                "of a step that ended or a patch: sanding and all that belongs to "
                                "it, without the change; of one that began: so far"),
        member<&Value::sheets_used>("sheets_used", Within{0, 1e5},
                                    "of a step that ended: how many, where known"),
        member<&Value::removal_um>(
            "removal_um", Within{0, 1e4},
            "of a step that ended: film taken off, where it is not what the scratches asked for"),
        member<&Value::overcut>(
            "overcut", overcut_range,
            "of a step that ended: film taken off over the scratch depth before "
            "it, where the plan says more than the rules"),
        member<&Value::direction_deg>(
            "direction_deg", Within{0, 180},
            "of a step that began: strokes against the length of the zone, where known"),
        member<&Value::readings_um>("readings_um", Within{0, 2e4}, "of a film gauge, one a spot")
            .not_empty()
            .left_out_as_made(),
        member<&Value::width_um>("width_um", Within{0.1, 1e3},
                                 "of the deepest usual scratches, by loupe"),
        member<&Value::ra_um>("ra_um", Within{1e-4, 1e3}, "by a roughness tester"),
        member<&Value::tool>("tool",
                             "of a patch: name of the block or pad, as in the job or the profiles")
            .not_empty()
            .left_out_as_made(),
        member<&Value::area_cm2>("area_cm2", Within{0.1, 1e6}, "of a patch"),
        member<&Value::before_um>("before_um", Within{0, 2e4},
                                  "of a patch: a gauge's readings before, one a spot")
            .not_empty()
            .left_out_as_made(),
        member<&Value::after_um>("after_um", Within{0, 2e4},
                                 "of a patch: the same after, in the order of the spots")
            .not_empty()
            .left_out_as_made(),
        member<&Value::before_g>("before_g", Within{0, 1e6},
                                 "of a patch: weight of the dry part before"),
        member<&Value::after_g>("after_g", Within{0, 1e6}, "of a patch: the same after"),
        member<&Value::mark>("mark", "what an inspection showed; it names its zone"),
        member<&Value::line>("line", Within{1, 1e9},
                             "struck: the earlier line that does not count, from 1"),
        member<&Value::text>("text", "any words; with every kind").not_empty().left_out_as_made())
        .rule(rule_by<&detail::of_one_kind>);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/journal/work/entry.hpp"
#endif
