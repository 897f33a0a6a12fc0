// The work behind recover/mark.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>

#include "levigate/recover/mark.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK void detail::seen_as_it_can_be(const levigate::Mark& mark, std::string_view where) {
  const auto refuse = [&](const std::string& member, const std::string& why) {
    throw BadInput::of(member, member + why + ", in " + std::string(where));
  };
  const bool measured = mark.seen == Seen::loupe || mark.seen == Seen::comparison;
  const std::string seen(to_string(mark.seen));
  const bool lines = mark.kind != MarkKind::wave && mark.kind != MarkKind::witness_line;
  if (mark.width_um && !measured)
    refuse("width_um", " is given, but " + seen + " measures no width");
  if (mark.width_um && !lines) refuse("width_um", " is given, but the mark is not a scratch");
  if (!mark.width_um && measured && lines)
    refuse("width_um", " is missing, but the mark was seen by " + seen);
  if (mark.count && mark.kind != MarkKind::cluster)
    refuse("count", " is given, but the mark is not a cluster");
  if (mark.height_um && mark.kind != MarkKind::wave)
    refuse("height_um", " is given, but the mark is not a wave");
}

}  // namespace levigate
