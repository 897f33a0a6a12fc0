// The work behind faults.hpp: defines what it declares.
#pragma once

#include <cmath>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/faults.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/detail/work/fault_walk.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::vector<Fault> faults_of(const Description& description, const void* value,
                                           std::string_view where) {
  std::vector<Fault> faults;
  detail::FaultWalk(faults).value(description, value, std::string(where), "");
  return faults;
}

LEVIGATE_WORK void throw_faults(std::vector<Fault> faults) {
  if (faults.empty()) return;
  if (faults.size() > 1) throw BadInput(std::move(faults));
  switch (faults.front().code) {
    case ErrorCode::unknown_grade: throw UnknownGrade(std::move(faults.front()));
    case ErrorCode::ambiguous_label: throw AmbiguousLabel(std::move(faults.front()));
    case ErrorCode::out_of_range: throw OutOfRange(std::move(faults.front()));
    case ErrorCode::no_plan: throw NoPlan(std::move(faults.front().message));
    case ErrorCode::bad_input: throw BadInput(std::move(faults.front()));
  }
}

LEVIGATE_WORK bool same(const Kind& kind, const void* a, const void* b) {
  switch (kind.form) {
    case Form::number: return kind.number(a) == kind.number(b);
    case Form::whole:
    case Form::truth:
    case Form::choice: return kind.whole(a) == kind.whole(b);
    case Form::text: return kind.text(a) == kind.text(b);
    case Form::value:
      for (const Member& member : kind.described().members) {
        if (!same(*member.kind, member.in(a), member.in(b))) return false;
      }
      return true;
    case Form::either:
      return kind.whole(a) == kind.whole(b) &&
             same(*kind.held(a), kind.item(a, 0), kind.item(b, 0));
    case Form::maybe:
    case Form::list: break;
  }
  if (kind.size(a) != kind.size(b)) return false;
  for (std::size_t i = 0; i < kind.size(a); ++i) {
    if (!same(*kind.of, kind.item(a, i), kind.item(b, i))) return false;
  }
  return true;
}

}  // namespace levigate
