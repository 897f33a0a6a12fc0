// What the names in a journal's entries stand for in a job, and under which names something can be learned.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "levigate/journal/observed.hpp"
#include "levigate/journal/prior.hpp"
#include "levigate/journal/work/prior.hpp"
#include "levigate/plan/job.hpp"
#include "levigate/plan/work/workings.hpp"
#include "levigate/stack/backing.hpp"
#include "levigate/stack/machine.hpp"
#include "levigate/stack/sheet.hpp"
#include "levigate/surface/coating.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Why an entry teaches nothing.
struct Reason {
  UnmatchedKind kind;
  std::vector<std::string> names{};
};

/// Where the names of entries stand in a job, and what is learned of them under which.
class ObservedNames {
 public:
  explicit ObservedNames(const Workings& workings) : workings_(workings) {}

  std::optional<std::size_t> sheet_at(const std::string& id) const {
    const std::vector<Sheet>& sheets = workings_.stack.sheets;
    const auto at = std::find_if(sheets.begin(), sheets.end(),
                                 [&](const Sheet& sheet) { return sheet.id == id; });
    if (at == sheets.end()) return std::nullopt;
    return static_cast<std::size_t>(at - sheets.begin());
  }

  std::optional<std::size_t> zone_at(const std::string& name) const {
    const std::vector<Zone>& zones = workings_.job.zones;
    const auto at = std::find_if(zones.begin(), zones.end(),
                                 [&](const Zone& zone) { return zone.name == name; });
    if (at == zones.end()) return std::nullopt;
    return static_cast<std::size_t>(at - zones.begin());
  }

  const std::string& backing(std::size_t sheet) const {
    return workings_.stack.sheets[sheet].backing.name;
  }

  /// Whether the machine of a sheet works a zone with it.
  bool by_machine(std::size_t sheet, std::size_t zone) const {
    return workings_.work[sheet][zone].machine;
  }

  /// The name under which a sheet is learned where its machine works, or the hand.
  std::string learned(std::size_t sheet, bool machine) const {
    return learned_name(workings_.stack.sheets[sheet], !machine);
  }

  /// Why nothing can be learned under the names of the coating, and of the backing and the machine of a sheet, if that is so: unlike
  /// things would share a name.
  std::optional<Reason> nameless(std::optional<std::size_t> sheet = {},
                                 bool machine = false) const {
    const std::string& coating = workings_.job.coating.name;
    const bool no_coating = coating.empty() || coating == nameless_coating;
    if (no_coating || (sheet && (backing(*sheet).empty() || backing(*sheet) == nameless_backing))) {
      return Reason{no_coating ? UnmatchedKind::unnamed_coating : UnmatchedKind::unnamed_backing};
    }
    if (!machine) return std::nullopt;
    const std::string& name = machine_of(workings_.stack.sheets[*sheet])->name;
    if (name.empty() || name == Machine{}.name) return Reason{UnmatchedKind::unnamed_machine};
    return std::nullopt;
  }

 private:
  const Workings& workings_;
};

}  // namespace detail

}  // namespace levigate
