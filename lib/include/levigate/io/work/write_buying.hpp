// The work behind io/write_buying.hpp: defines what it declares.
#pragma once

#include <string>
#include <string_view>

#include "levigate/io/write_buying.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/io/work/write_described.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::string to_json(const Buying& buying) {
  return detail::file_text(buy_format, buying, detail::Style::whole);
}

LEVIGATE_WORK Buying buying_from_json(std::string_view text, std::string_view file) {
  return detail::value_of_file<Buying>(text, file, buy_format, detail::Style::whole);
}

}  // namespace levigate
