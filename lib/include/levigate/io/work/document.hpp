// JSON text, parsed, and where in it things stand: every error of a file names its line.
#pragma once

#include <algorithm>
#include <cstddef>
#include <nlohmann/json.hpp>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/detail/text.hpp"
#include "levigate/error.hpp"
#include "levigate/io/file.hpp"
#include "levigate/io/work/locate.hpp"
#include "levigate/io/work/syntax_hint.hpp"

namespace levigate::inline v0 {

namespace detail {

/// Text from a file in a message: control characters and bytes outside ASCII become '?', the middle of what is
/// long is left out.
inline std::string shown(std::string text) {
  for (char& c : text) {
    if (c < 0x20 || c > 0x7E) c = '?';
  }
  constexpr std::size_t longest = 160;
  if (text.size() > longest) text.replace(longest / 2, text.size() - longest, " ... ");
  return text;
}

/// "a, b and c"
inline std::string names_text(std::span<const std::string_view> names) {
  return list_text(std::vector<std::string>(names.begin(), names.end()));
}

/// JSON text, parsed, with the name of its file and the line of the file that it opens on; 0: it is in no file.
class Document {
 public:
  /// `any_unit`: a key may end with another unit than that of the member it gives.
  /// An editor finds the schema of a file by "$schema", which says nothing here.
  /// Throws: BadInput where the text is not JSON, too large or too deeply nested, or an object has a key
  /// twice; where "$schema" is no text
  Document(std::string_view text, std::string_view file, int first_line = 1, bool any_unit = false)
      : text_(text), file_(file), first_line_(first_line), any_unit_(any_unit) {
    if (text.size() > largest_file_bytes) {
      throw BadInput("JSON text has " + std::to_string(text.size()) + " bytes, at most " +
                     std::to_string(largest_file_bytes) + " are read" + in_file());
    }
    if (text_.starts_with("\xEF\xBB\xBF")) text_.remove_prefix(3);  // byte-order mark
    SyntaxCheck check;
    OrderedJson::sax_parse(text_, &check);
    // The parser takes a zero byte for the end of the text, whatever stands behind it.
    if (const std::size_t zero = text_.find('\0'); !check.fault && zero != text_.npos) {
      check.fault = {"there is a zero byte", "", zero};
    }
    if (check.fault) fail_at(*check.fault);
    if (check.repeated) fail("the key is repeated in its object", *check.repeated);
    root_ = OrderedJson::parse(text_);
    if (!root_.is_object() || !root_.contains("$schema")) return;
    if (!root_["$schema"].is_string()) fail("$schema is no text", "/$schema");
    root_.erase("$schema");
  }

  const OrderedJson& root() const { return root_; }
  bool any_unit() const { return any_unit_; }
  /// 0 where the pointer has no value.
  int line(std::string_view pointer) const {
    if (first_line_ == 0) return 0;
    const int here = line_of(text_, pointer);
    return here > 0 ? here + first_line_ - 1 : 0;
  }

  /// ", line 12 of job.json"
  std::string at_line(std::string_view pointer) const {
    if (first_line_ == 0) return {};
    return ", line " + std::to_string(line(pointer)) + (file_.empty() ? "" : " of " + file_);
  }

  [[noreturn]] void fail(const std::string& message, const std::string& pointer) const {
    const std::string place = pointer.empty() ? "" : ", in " + shown(pointer);
    throw BadInput(message + place + at_line(pointer), pointer, line(pointer));
  }

 private:
  std::string in_file() const { return file_.empty() ? "" : ", in " + file_; }

  [[noreturn]] void fail_at(const SyntaxCheck::Fault& fault) const {
    const std::size_t byte = std::min(fault.byte, text_.size());
    const bool bytes = fault.message.find("UTF-8") != std::string::npos;
    if (const auto hint = syntax_hint(text_); hint && !bytes && hint->byte <= byte)
      throw_at({hint->message, fault.pointer}, hint->byte);
    if (fault.byte == 0 && line(fault.pointer) > 0) fail(shown(fault.message), fault.pointer);
    throw_at(fault, byte);
  }

  [[noreturn]] void throw_at(const SyntaxCheck::Fault& fault, std::size_t byte) const {
    const int line_here = line_at(text_, byte) + first_line_ - 1;
    throw BadInput(
        shown(fault.message) + (fault.pointer.empty() ? "" : ", in " + shown(fault.pointer)) +
            ", line " + std::to_string(line_here) + ", column " +
            std::to_string(column_at(text_, byte)) + (file_.empty() ? "" : " of " + file_),
        fault.pointer, line_here);
  }

  std::string_view text_;
  std::string file_;
  int first_line_;
  bool any_unit_;
  OrderedJson root_;
};

}  // namespace detail

}  // namespace levigate
