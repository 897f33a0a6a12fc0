// The work behind io/write_way_back.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>

#include "levigate/io/write_way_back.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/io/work/write_described.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::string to_json(const WayBack& way) {
  return detail::file_text(way_back_format, way, detail::Style::whole);
}

LEVIGATE_WORK WayBack way_back_from_json(std::string_view text, std::string_view file) {
  return detail::value_of_file<WayBack>(text, file, way_back_format, detail::Style::whole);
}

}  // namespace levigate
