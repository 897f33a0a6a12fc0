// The work behind io/write_when_done.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>

#include "levigate/io/write_when_done.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/io/work/write_described.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::string to_json(const WhenDone& when) {
  return detail::file_text(when_done_format, when, detail::Style::whole);
}

LEVIGATE_WORK WhenDone when_done_from_json(std::string_view text, std::string_view file) {
  return detail::value_of_file<WhenDone>(text, file, when_done_format, detail::Style::whole);
}

}  // namespace levigate
