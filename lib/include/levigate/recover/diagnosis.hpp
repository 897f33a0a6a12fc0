// What a mark tells: which step made it, and how much has to come off until it is gone.
#pragma once

#include <array>
#include <concepts>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/fact.hpp"
#include "levigate/recover/mark.hpp"
#include "levigate/recover/need.hpp"

namespace levigate::inline v0 {

/// One explanation of a mark.
struct Cause {
  std::size_t step = 0;
  std::string sheet;
  bool stray = false;
  double probability = 0;
  double expected = 0;
  std::vector<double> missed{};

  friend bool operator==(const Cause&, const Cause&) = default;
};

template <std::same_as<Cause> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Cause", "One explanation of a mark.",
    member<&Value::step>("step", "in the order of what was done, from 0"),
    member<&Value::sheet>("sheet", "its id"),
    member<&Value::stray>("stray", "a stray grain under that sheet, not its own grain"),
    member<&Value::probability>("probability", chance_range, "given what was seen"),
    member<&Value::expected>("expected", at_least(0),
                             "such marks that it leaves in the zone on average"),
    member<&Value::missed>("missed", at_least(0),
                           "for each done step: chance that it missed the spot, given this cause"));

/// What a piece of evidence says.
enum class EvidenceKind {
  witness_line,   ///< the last round is sanded through
  bottom_shows,   ///< the film is, as its rounds melt together
  wave_seen,      ///< peel that was left; height_um where it was measured
  haze_seen,      ///< scratches narrower than shows_um
  width_seen,     ///< a mark of width_um is depth_um deep
  lamp_seen,      ///< wider than lamp_width_um, deeper than lamp_depth_um
  sun_seen,       ///< the same, and not above them
  peel_may_stay,  ///< no cause: peel of residual_um is allowed
  no_peel,        ///< no cause: no step had peel to level
  finish,         ///< no cause: scratches stand out from shows_um on
  elsewhere,      ///< no cause: no step leaves such a mark
  likeliest,      ///< the cause with the highest probability
  depth,          ///< its scratches reach scratch_um, and removal_um came off since
  expected,       ///< how many such marks it leaves in a zone
  missed,         ///< the step that likely missed the spot
  along,          ///< the mark runs at mark_deg, the strokes at strokes_deg: the same way
  across,         ///< another way
  other_cause,    ///< another one worth naming
  wash,           ///< a stray grain asks for a fresh sheet
  strokes_untold,  ///< the mark runs at mark_deg, and no step that may have made it tells its strokes
  ask_which_way,  ///< the way the mark runs would tell more
};

constexpr std::string_view to_string(EvidenceKind kind) noexcept {
  switch (kind) {
    case EvidenceKind::witness_line: return "witness_line";
    case EvidenceKind::bottom_shows: return "bottom_shows";
    case EvidenceKind::wave_seen: return "wave_seen";
    case EvidenceKind::haze_seen: return "haze_seen";
    case EvidenceKind::width_seen: return "width_seen";
    case EvidenceKind::lamp_seen: return "lamp_seen";
    case EvidenceKind::sun_seen: return "sun_seen";
    case EvidenceKind::peel_may_stay: return "peel_may_stay";
    case EvidenceKind::no_peel: return "no_peel";
    case EvidenceKind::finish: return "finish";
    case EvidenceKind::elsewhere: return "elsewhere";
    case EvidenceKind::likeliest: return "likeliest";
    case EvidenceKind::depth: return "depth";
    case EvidenceKind::expected: return "expected";
    case EvidenceKind::missed: return "missed";
    case EvidenceKind::along: return "along";
    case EvidenceKind::across: return "across";
    case EvidenceKind::other_cause: return "other_cause";
    case EvidenceKind::wash: return "wash";
    case EvidenceKind::strokes_untold: return "strokes_untold";
    case EvidenceKind::ask_which_way: return "ask_which_way";
  }
  return "";
}

template <>
inline constexpr auto choices<EvidenceKind> = std::to_array(
    {EvidenceKind::witness_line, EvidenceKind::bottom_shows,   EvidenceKind::wave_seen,
     EvidenceKind::haze_seen,    EvidenceKind::width_seen,     EvidenceKind::lamp_seen,
     EvidenceKind::sun_seen,     EvidenceKind::peel_may_stay,  EvidenceKind::no_peel,
     EvidenceKind::finish,       EvidenceKind::elsewhere,      EvidenceKind::likeliest,
     EvidenceKind::depth,        EvidenceKind::expected,       EvidenceKind::missed,
     EvidenceKind::along,        EvidenceKind::across,         EvidenceKind::other_cause,
     EvidenceKind::wash,         EvidenceKind::strokes_untold, EvidenceKind::ask_which_way});

/// One piece of evidence, as facts: sentence() of text/sentences.hpp says it.
struct Evidence {
  EvidenceKind kind = EvidenceKind::elsewhere;
  MarkKind mark = MarkKind::scratch;
  std::string sheet{};
  bool stray = false;
  std::vector<Quantity> numbers{};

  friend bool operator==(const Evidence&, const Evidence&) = default;
};

template <std::same_as<Evidence> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Evidence", "One piece of evidence on a mark.", member<&Value::kind>("kind", "what it says"),
    member<&Value::mark>("mark", "kind of the mark"),
    member<&Value::sheet>("sheet", "id").optional(),
    member<&Value::stray>("stray", "a stray grain under that sheet").optional(),
    member<&Value::numbers>("numbers", "what it rests on").optional());

/// What a mark tells.
struct Diagnosis {
  Mark mark;
  std::vector<Cause> causes;
  std::vector<Need> needs;
  double shows_um = 0;
  std::vector<Evidence> signs{};

  friend bool operator==(const Diagnosis&, const Diagnosis&) = default;
};

template <std::same_as<Diagnosis> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Diagnosis", "Which step made a mark.", member<&Value::mark>("mark", "as it was seen"),
    member<&Value::causes>("causes",
                           "most likely first, adding up to 1; none where no step explains it"),
    member<&Value::needs>("needs", "how much has to come off, from least to most"),
    member<&Value::shows_um>("shows_um", at_least(0),
                             "width from which a scratch stands out from the finish"),
    member<&Value::signs>("signs", "the evidence, piece by piece"));

}  // namespace levigate
