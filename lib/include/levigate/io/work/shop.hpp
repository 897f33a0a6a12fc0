// The work behind io/shop.hpp: defines what it declares.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "levigate/io/shop.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/io/file.hpp"
#include "levigate/io/formats.hpp"
#include "levigate/io/work/read_described.hpp"
#include "levigate/io/work/write_described.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK Shop shop_from_json(std::string_view text, std::string_view file) {
  return detail::value_of_file<Shop>(text, file, shop_format, detail::Style::sparse);
}

LEVIGATE_WORK std::string to_json(const Shop& shop) {
  return detail::file_text(shop_format, shop, detail::Style::sparse);
}

LEVIGATE_WORK Shop load_shop(const std::filesystem::path& path) {
  return shop_from_json(read_file(path), path.string());
}

LEVIGATE_WORK void save_shop(const std::filesystem::path& path, const Shop& shop) {
  validate(shop);
  write_file(path, to_json(shop));
}

}  // namespace levigate
