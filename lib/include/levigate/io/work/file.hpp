// The work behind io/file.hpp: defines what it declares.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <memory>
#include <string>
#include <string_view>
#include <system_error>
#include <vector>

#include "levigate/io/file.hpp"

#include "levigate/detail/names.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/error.hpp"

namespace levigate::inline v0 {

namespace detail {

/// "; the nearest is 'job.json'": the file of that directory whose name is nearest; empty where none is near.
inline std::string nearest_file_text(const std::filesystem::path& path) {
  constexpr std::size_t most = 1000;  // files looked at
  const std::filesystem::path parent = path.parent_path();
  std::vector<std::string> names;
  std::error_code failed;
  std::filesystem::directory_iterator at(parent.empty() ? "." : parent, failed), end;
  for (; !failed && at != end && names.size() < most; at.increment(failed)) {
    std::error_code unknown;
    if (at->is_regular_file(unknown)) names.push_back(at->path().filename().string());
  }
  const std::vector<std::string_view> known(names.begin(), names.end());
  const std::string_view close_by = nearest_name(path.filename().string(), known);
  return close_by.empty() ? std::string()
                          : "; the nearest is '" + (parent / close_by).string() + "'";
}

}  // namespace detail

LEVIGATE_WORK std::string read_file(const std::filesystem::path& path) {
  const std::string name = path.string();
  std::error_code failed;
  const std::filesystem::file_status status = std::filesystem::status(path, failed);
  if (!std::filesystem::exists(status))
    throw BadInput("there is no file '" + name + "'" + detail::nearest_file_text(path));
  if (std::filesystem::is_directory(status)) {
    throw BadInput("'" + name + "' is a directory, wanted a file");
  }
  if (!std::filesystem::is_regular_file(status)) {
    throw BadInput("'" + name + "' is not a regular file");
  }
  const std::uintmax_t bytes = std::filesystem::file_size(path, failed);
  if (!failed && bytes > largest_file_bytes) {
    throw BadInput("file '" + name + "' has " + std::to_string(bytes) + " bytes, at most " +
                   std::to_string(largest_file_bytes) + " are read");
  }
  std::ifstream in(path, std::ios::binary);
  std::string text(failed ? 0 : static_cast<std::size_t>(bytes), '\0');
  if (failed || !in.read(text.data(), static_cast<std::streamsize>(text.size()))) {
    throw BadInput("file '" + name + "' cannot be read");
  }
  return text;
}

namespace detail {

struct CloseFile {
  void operator()(std::FILE* file) const noexcept { std::fclose(file); }
};

/// A new file beside `path`. It is removed again unless it was moved to its place.
class FileBeside {
 public:
  explicit FileBeside(const std::filesystem::path& path) {
    for (int attempt = 0; attempt < 100 && !file_; ++attempt) {
      name_ = path;
      name_ += ".part" + std::to_string(attempt);
      file_.reset(std::fopen(name_.string().c_str(), "wbx"));  // x: never one that is there
    }
  }
  FileBeside(const FileBeside&) = delete;
  FileBeside& operator=(const FileBeside&) = delete;
  ~FileBeside() {
    if (!made_) return;
    file_.reset();
    std::error_code ignored;
    std::filesystem::remove(name_, ignored);
  }

  /// Writes, closes and moves to `path`; false where any of it fails.
  bool become(const std::filesystem::path& path, std::string_view text) {
    if (!file_) return false;
    made_ = true;
    if (std::fwrite(text.data(), 1, text.size(), file_.get()) != text.size()) return false;
    if (std::fclose(file_.release()) != 0) return false;
    std::error_code failed;
    std::filesystem::rename(name_, path, failed);
    made_ = static_cast<bool>(failed);
    return !failed;
  }

 private:
  std::filesystem::path name_;
  std::unique_ptr<std::FILE, CloseFile> file_;
  bool made_ = false;
};

}  // namespace detail

LEVIGATE_WORK void write_file(const std::filesystem::path& path, std::string_view text) {
  std::error_code ignored;
  std::filesystem::path target = std::filesystem::weakly_canonical(path, ignored);  // past a link
  if (target.empty()) target = path;
  const std::filesystem::file_status status = std::filesystem::status(target, ignored);
  if (std::filesystem::exists(status) && !std::filesystem::is_regular_file(status)) {
    throw BadInput("'" + path.string() + "' is there and is not a regular file");
  }
  if (!detail::FileBeside(target).become(target, text)) {
    throw BadInput("file '" + path.string() + "' cannot be written");
  }
}

}  // namespace levigate
