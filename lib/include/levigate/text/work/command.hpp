// A command of the shell as a card shows it: names quoted, and lines that go on.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/text/work/page.hpp"

namespace levigate::inline v0 {

namespace detail {

/// A name as one word of a POSIX shell. A name that no card can show is left to fill in.
inline std::string shell_word(std::string_view name) {
  if (clean(name) != name) return "NAME";
  constexpr std::string_view plain =
      "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-./";
  if (!name.empty() && name.find_first_not_of(plain) == std::string_view::npos)
    return std::string(name);
  std::string word = "'";
  for (const char c : name) word += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return word + "'";
}

/// A command of this module's command line.
class Command {
 public:
  explicit Command(std::string_view begin) { parts_.push_back("levigate " + std::string(begin)); }

  Command& word(std::string_view name) {
    parts_.push_back(shell_word(name));
    return *this;
  }

  /// An option with a name. One that starts with a dash is no option of its own.
  Command& option(std::string_view key, std::string_view name) {
    parts_.push_back(std::string(key) + (name.starts_with('-') ? "=" : " ") + shell_word(name));
    return *this;
  }

  /// An option whose value the reader puts in.
  Command& to_fill(std::string_view key, std::string_view value) {
    parts_.push_back(std::string(key) + " " + std::string(value));
    return *this;
  }

  /// Lines of at most `width` columns, where no single option is longer. All but the last end with a backslash.
  std::vector<std::string> lines(std::size_t width) const {
    std::vector<std::string> result;
    for (const std::string& part : parts_) {
      constexpr std::size_t goes_on = 2;  // " \"
      if (!result.empty() && columns(result.back()) + 1 + columns(part) + goes_on <= width) {
        result.back() += " " + part;
        continue;
      }
      if (!result.empty()) result.back() += " \\";
      result.push_back((result.empty() ? "" : "  ") + part);
    }
    return result;
  }

 private:
  std::vector<std::string> parts_;
};

}  // namespace detail

}  // namespace levigate
