// Where in a JSON text things stand.
// The parser keeps no lines and takes repeated keys without a word, so the text is looked at again.
#pragma once

#include <algorithm>
#include <cstddef>
#include <nlohmann/json.hpp>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Keys keep the order in which they are set. One type of document, for reading and writing.
using OrderedJson = nlohmann::ordered_json;

/// Keys of one object; the formats need twenty. Each one more is looked for among all before it.
inline constexpr std::size_t most_keys = 1000;

/// Objects and arrays inside each other; the formats need five.
inline constexpr std::size_t deepest_nesting = 64;

/// A JSON pointer one member further down: "/a" and "b/c" make "/a/b~1c".
inline std::string pointer_to(std::string pointer, std::string_view key) {
  pointer += '/';
  for (const char c : key) {
    if (c == '~') {
      pointer += "~0";
    } else if (c == '/') {
      pointer += "~1";
    } else {
      pointer += c;
    }
  }
  return pointer;
}

/// Line of a byte of the text, from 1.
inline int line_at(std::string_view text, std::size_t byte) {
  int line = 1;
  for (const char c : text.substr(0, byte)) line += c == '\n' ? 1 : 0;
  return line;
}

/// Column of a byte of the text, from 1, in bytes.
inline std::size_t column_at(std::string_view text, std::size_t byte) {
  const std::size_t newline = text.substr(0, byte).rfind('\n');
  return newline == std::string_view::npos ? byte + 1 : byte - newline;
}

/// Walks JSON text to the last value that a pointer has in it. Text that is not well formed ends
/// the walk early.
class LineWalk {
 public:
  LineWalk(std::string_view text, std::string_view pointer) : text_(text), wanted_(pointer) {}

  /// The line, from 1; 0 where the pointer has no value.
  int line() {
    value(0);
    return found_ ? line_at(text_, *found_) : 0;
  }

 private:
  char here() const { return at_ < text_.size() ? text_[at_] : '\0'; }
  void blank() {
    while (at_ < text_.size() && std::string_view(" \t\r\n").find(here()) < 4) ++at_;
  }

  std::string_view string_token() {
    const std::size_t begin = at_++;
    while (at_ < text_.size() && here() != '"') at_ += here() == '\\' ? 2 : 1;
    at_ = std::min(at_ + 1, text_.size());
    return text_.substr(begin, at_ - begin);
  }

  void member(std::string_view key, std::size_t depth) {
    const std::string parent = path_;
    path_ = pointer_to(std::move(path_), key);
    value(depth + 1);
    path_ = parent;
  }

  void value(std::size_t depth) {
    blank();
    if (path_ == wanted_) found_ = at_;
    if (depth > deepest_nesting) {
      at_ = text_.size();
    } else if (here() == '{') {
      for (++at_, blank(); here() == '"'; blank()) {
        const auto key = OrderedJson::parse(string_token(), nullptr, false);
        blank();
        ++at_;  // the colon
        member(key.is_string() ? key.get<std::string>() : "", depth);
        blank();
        if (here() == ',') ++at_;
      }
      ++at_;
    } else if (here() == '[') {
      ++at_;
      blank();
      for (std::size_t i = 0; at_ < text_.size() && here() != ']'; ++i) {
        member(std::to_string(i), depth);
        blank();
        if (here() == ',') ++at_;
      }
      ++at_;
    } else if (here() == '"') {
      string_token();
    } else {
      const std::size_t end = text_.find_first_of(",]} \t\r\n", at_);
      at_ = end == std::string_view::npos ? text_.size() : std::max(end, at_ + 1);
    }
  }

  std::string_view text_;
  std::string_view wanted_;
  std::size_t at_ = 0;
  std::string path_;
  std::optional<std::size_t> found_;
};

/// Line of the value of a pointer, from 1; 0 where there is none.
inline int line_of(std::string_view text, std::string_view pointer) {
  return LineWalk(text, pointer).line();
}

/// Listens to the parser: what is wrong with a text, and at which pointer.
class SyntaxCheck final : public nlohmann::json_sax<OrderedJson> {
 public:
  struct Fault {
    std::string message;
    std::string pointer;
    std::size_t byte = 0;
  };

  std::optional<Fault> fault;           ///< the text is not JSON, or its nesting is too deep
  std::optional<std::string> repeated;  ///< pointer of the first key that its object had before

  bool null() override { return scalar(); }
  bool boolean(bool) override { return scalar(); }
  bool number_integer(number_integer_t) override { return scalar(); }
  bool number_unsigned(number_unsigned_t) override { return scalar(); }
  bool number_float(number_float_t, const string_t&) override { return scalar(); }
  bool string(string_t&) override { return scalar(); }
  bool binary(binary_t&) override { return scalar(); }
  bool start_object(std::size_t) override { return begin(false); }
  bool start_array(std::size_t) override { return begin(true); }
  bool end_object() override { return end(); }
  bool end_array() override { return end(); }

  bool key(string_t& name) override {
    Level& level = levels_.back();
    level.key = name;
    if (!level.keys.insert(name).second && !repeated) repeated = pointer();
    if (level.keys.size() <= most_keys) return true;
    fault = Fault{"an object has more than " + std::to_string(most_keys) + " keys", pointer()};
    return false;
  }

  bool parse_error(std::size_t byte, const std::string&,
                   const nlohmann::json::exception& error) override {
    // "[json.exception.parse_error.101] parse error at line 1, column 2: syntax error while ...": its number and place are
    // asked of the exception, and the reason stands behind them.
    std::string message = error.what();
    const bool placed = dynamic_cast<const nlohmann::json::parse_error*>(&error) != nullptr;
    const std::string before = placed ? ": " : "." + std::to_string(error.id) + "] ";
    message.erase(0, message.find(before) + before.size());
    fault = Fault{std::move(message), pointer(), byte > 0 ? byte - 1 : 0};
    return false;
  }

 private:
  struct Level {
    bool array = false;
    std::size_t begun = 0;  ///< elements of the array
    std::string key = {};
    std::set<std::string> keys = {};
  };

  bool scalar() {
    if (!levels_.empty()) ++levels_.back().begun;
    return true;
  }
  bool begin(bool array) {
    if (levels_.size() == deepest_nesting) {
      fault = Fault{"nested deeper than " + std::to_string(deepest_nesting) + " levels", pointer()};
      return false;
    }
    scalar();
    levels_.push_back({array});
    return true;
  }
  bool end() {
    levels_.pop_back();
    return true;
  }

  std::string pointer() const {
    std::string path;
    for (std::size_t i = 0; i < levels_.size(); ++i) {
      const Level& level = levels_[i];
      const bool last = i + 1 == levels_.size();
      if (level.array) {
        path = pointer_to(std::move(path), std::to_string(level.begun - (last ? 0 : 1)));
      } else if (!level.keys.empty()) {
        path = pointer_to(std::move(path), level.key);
      }
    }
    return path;
  }

  std::vector<Level> levels_;
};

}  // namespace detail

}  // namespace levigate
