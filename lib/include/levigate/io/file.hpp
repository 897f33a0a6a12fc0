// Reading and writing whole files: a file that is written is there completely or not at all.
#pragma once

#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/version.hpp"

namespace levigate::inline v0 {

/// A file of this library is a few kilobytes; what is larger than this is some other file.
inline constexpr std::size_t largest_file_bytes = 16 << 20;

/// The bytes of a file.
/// Throws: BadInput where there is no such file, it is a directory or device, cannot be read, or is
/// larger than largest_file_bytes
std::string read_file(const std::filesystem::path& path);

/// Writes a file, or replaces one, as a whole: the text goes to a new file in the same directory,
/// which is then moved to its place. Where that fails, what was there before stays untouched.
/// Throws: BadInput where the file cannot be written, or `path` is there and no regular file
void write_file(const std::filesystem::path& path, std::string_view text);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/io/work/file.hpp"
#endif
