// A shop's file: what journals taught, in a form one can read and edit.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

#include "levigate/journal/learned.hpp"

namespace levigate::inline v0 {

/// A shop from JSON text of format levigate.shop/1. A factor is the median and low and high tell the spread, so that either may be
/// edited alone; what is absent is as before any journal.
///
/// @param text  the JSON text, UTF-8
/// @param file  its name for messages; may be empty
/// @return      the shop
/// Throws:    BadInput, with pointer and line, for text that is not of the format or numbers that contradict each other; OutOfRange
///            for a number outside its range
/// Source:    data/schema/shop.schema.json
Shop shop_from_json(std::string_view text, std::string_view file = "");

/// A shop as JSON text of format levigate.shop/1, which shop_from_json reads back equal.
std::string to_json(const Shop& shop);

/// The shop in a file. Throws: what read_file and shop_from_json throw, naming the file.
Shop load_shop(const std::filesystem::path& path);

/// Writes a shop to a file, as a whole: see write_file().
/// Throws: as validate(Shop), write_file()
void save_shop(const std::filesystem::path& path, const Shop& shop);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/shop.hpp"
#endif
