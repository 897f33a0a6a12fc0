// The work behind io/write_spraying.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>

#include "levigate/io/write_spraying.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/io/work/write_described.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::string to_json(const Spraying& spraying) {
  return detail::file_text(spray_format, spraying, detail::Style::whole);
}

LEVIGATE_WORK Spraying spraying_from_json(std::string_view text, std::string_view file) {
  return detail::value_of_file<Spraying>(text, file, spray_format, detail::Style::whole);
}

}  // namespace levigate
