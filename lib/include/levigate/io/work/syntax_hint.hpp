// What is wrong with a text that is no JSON, in the words of who wrote it by hand, and where.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/io/work/locate.hpp"

namespace levigate::inline v0 {

namespace detail {

/// The first thing that is wrong, and the byte where it stands.
struct SyntaxHint {
  std::string message;
  std::size_t byte = 0;
};

/// Walks a text token by token to the first that cannot stand there.
class SyntaxWalk {
 public:
  explicit SyntaxWalk(std::string_view text) : text_(text) {}

  std::optional<SyntaxHint> hint() {
    while (!hint_) {
      blank();
      if (at_ >= text_.size()) {
        at_end();
        break;
      }
      if (static_cast<unsigned char>(text_[at_]) < 0x20) break;  // no character that one types
      if (here("//") || here("/*") || here("#")) {
        tell("JSON takes no comments: take it out");
      } else if (want_ == Want::value) {
        value();
      } else if (want_ == Want::key) {
        key();
      } else if (want_ == Want::colon) {
        if (text_[at_] == ':') {
          take(Want::value);
        } else {
          tell("a colon is missing after \"" + key_ + "\"");
        }
      } else if (open_.empty()) {
        tell("there is more text after the end");
      } else {
        next();
      }
    }
    return hint_;
  }

 private:
  enum class Want { value, key, colon, next };

  bool here(std::string_view piece) const { return text_.substr(at_).starts_with(piece); }
  void blank() {
    while (at_ < text_.size() && std::string_view(" \t\r\n").find(text_[at_]) < 4) ++at_;
  }
  void tell(std::string message) { tell(std::move(message), at_); }
  void tell(std::string message, std::size_t byte) { hint_ = SyntaxHint{std::move(message), byte}; }
  void take(Want next) {
    ++at_;
    want_ = next;
    fresh_ = false;
  }
  bool in_object() const { return !open_.empty() && text_[open_.back()] == '{'; }

  void at_end() {
    if (!open_.empty()) {
      tell(std::string("the text ends too early: the ") + text_[open_.back()] + " of line " +
           std::to_string(line_at(text_, open_.back())) + " is not closed");
    } else if (want_ == Want::value) {
      tell("the text is empty, wanted an object in { }");
    }
  }

  /// A closing bracket where a value or a key is wanted.
  void close_early() {
    const bool fits = text_[at_] == (in_object() ? '}' : ']') && !open_.empty();
    if (fits && fresh_) return close();
    if (fits && comma_) {
      tell("a comma stands before " + std::string(1, text_[at_]) + ": take it out", *comma_);
    } else {
      tell(std::string("a value is missing before ") + text_[at_]);
    }
  }

  void close() {
    open_.pop_back();
    take(Want::next);
  }

  void value() {
    const char c = text_[at_];
    if (c == '{' || c == '[') {
      open_.push_back(at_);
      take(c == '{' ? Want::key : Want::value);
      fresh_ = true;
      comma_.reset();
    } else if (c == '}' || c == ']') {
      close_early();
    } else if (c == ',') {
      tell("a value is missing before the comma");
    } else if (c == '"') {
      if (string()) ended(Want::next);
    } else if (is_word(c)) {
      word();
    } else if (c == '\'' || here("\xE2\x80")) {
      tell("text stands in straight double quotes");
    } else {
      tell("a value is wanted: text in double quotes, or a number");
    }
  }

  void key() {
    const char c = text_[at_];
    if (c == '"') {
      const std::size_t begin = at_ + 1;
      if (!string()) return;
      key_ = std::string(text_.substr(begin, at_ - begin - 1));
      ended(Want::colon);
    } else if (c == '}' || c == ']') {
      close_early();
    } else if (is_digit(c) && comma_ && *comma_ + 1 == at_ && *comma_ > 0 &&
               is_digit(text_[*comma_ - 1])) {
      tell("a number has a decimal point, no comma", *comma_);
    } else {
      tell("a name in double quotes is wanted, as \"name\"");
    }
  }

  /// After a value in a list or an object.
  void next() {
    const char c = text_[at_], wanted = in_object() ? '}' : ']';
    if (c == ',') {
      comma_ = at_;
      take(in_object() ? Want::key : Want::value);
    } else if (c == wanted) {
      close();
    } else if (c == '}' || c == ']') {
      tell(std::string("wanted ") + wanted + ", which closes the " + text_[open_.back()] +
           " of line " + std::to_string(line_at(text_, open_.back())));
    } else {
      tell("a comma is missing here", end_);
    }
  }

  void ended(Want next) {
    end_ = at_;
    want_ = next;
    fresh_ = false;
  }

  /// Moves behind a string. False: it has no end.
  bool string() {
    const std::size_t begin = at_++;
    while (at_ < text_.size() && text_[at_] != '"' && text_[at_] != '\n')
      at_ += text_[at_] == '\\' ? 2 : 1;
    if (at_ < text_.size() && text_[at_] == '"') {
      ++at_;
      return true;
    }
    tell("the closing double quote of a text is missing", begin);
    return false;
  }

  static bool is_digit(char c) { return c >= '0' && c <= '9'; }
  static bool is_word(char c) {
    return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '-' ||
           c == '+' || c == '.' || c == '_';
  }

  /// As JSON writes one, however large.
  static bool is_number(std::string_view word) {
    std::size_t at = word.starts_with('-') ? 1 : 0;
    const auto digits = [&] {
      const std::size_t begin = at;
      while (at < word.size() && is_digit(word[at])) ++at;
      return at - begin;
    };
    const bool zero = at < word.size() && word[at] == '0';
    const std::size_t whole = digits();
    if (whole == 0 || (zero && whole > 1)) return false;
    if (at < word.size() && word[at] == '.') {
      ++at;
      if (digits() == 0) return false;
    }
    if (at < word.size() && (word[at] == 'e' || word[at] == 'E')) {
      ++at;
      if (at < word.size() && (word[at] == '+' || word[at] == '-')) ++at;
      if (digits() == 0) return false;
    }
    return at == word.size();
  }

  void word() {
    const std::size_t begin = at_;
    while (at_ < text_.size() && is_word(text_[at_])) ++at_;
    const std::string word(text_.substr(begin, at_ - begin));
    if (word == "true" || word == "false" || word == "null" || is_number(word)) {
      ended(Want::next);
    } else if (word == "True" || word == "False" || word == "None") {
      tell(word + " is written true, false or null here", begin);
    } else if (word == "NaN" || word.find("nfinity") != word.npos) {
      tell(word + " is no number of JSON", begin);
    } else if (is_digit(word[0]) || word.find_first_of("+-.") == 0) {
      tell(word + " is no number as JSON has it: write 0.5, 12 or -3", begin);
    } else {
      tell("text wants double quotes: \"" + word + "\"", begin);
    }
  }

  std::string_view text_;
  std::size_t at_ = 0, end_ = 0;
  std::vector<std::size_t> open_;  ///< where brackets stand that are not closed
  Want want_ = Want::value;
  bool fresh_ = false;  ///< just behind an opening bracket
  std::optional<std::size_t> comma_;
  std::string key_;
  std::optional<SyntaxHint> hint_;
};

/// None where a walk by tokens finds nothing, as in bytes that are not UTF-8.
inline std::optional<SyntaxHint> syntax_hint(std::string_view text) {
  return SyntaxWalk(text).hint();
}

}  // namespace detail

}  // namespace levigate
