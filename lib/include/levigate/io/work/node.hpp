// A JSON text parsed, and a place in it: what stands there, and every error with its pointer, line and file.
#pragma once

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <nlohmann/json.hpp>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "levigate/detail/names.hpp"
#include "levigate/detail/profile.hpp"
#include "levigate/detail/text.hpp"
#include "levigate/error.hpp"
#include "levigate/faults.hpp"
#include "levigate/grade/work/label_text.hpp"
#include "levigate/io/file.hpp"
#include "levigate/io/work/locate.hpp"

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

/// JSON text, parsed, with the name of its file and the line of the file that it opens on.
class Document {
 public:
  /// Throws: BadInput where the text is not JSON, too large or too deeply nested, or an object has a key
  /// twice
  Document(std::string_view text, std::string_view file, int first_line = 1)
      : text_(text), file_(file), first_line_(first_line) {
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
  }

  const OrderedJson& root() const { return root_; }
  /// 0 where the pointer has no value.
  int line(std::string_view pointer) const {
    const int here = line_of(text_, pointer);
    return here > 0 ? here + first_line_ - 1 : 0;
  }

  /// ", line 12 of job.json"
  std::string at_line(std::string_view pointer) const {
    return ", line " + std::to_string(line(pointer)) + (file_.empty() ? "" : " of " + file_);
  }

  [[noreturn]] void fail(const std::string& message, const std::string& pointer) const {
    const std::string place = pointer.empty() ? "" : ", in " + shown(pointer);
    throw BadInput(message + place + at_line(pointer), pointer, line(pointer));
  }

 private:
  std::string in_file() const { return file_.empty() ? "" : ", in " + file_; }

  [[noreturn]] void fail_at(const SyntaxCheck::Fault& fault) const {
    if (fault.byte == 0 && line(fault.pointer) > 0) fail(shown(fault.message), fault.pointer);
    const std::size_t byte = std::min(fault.byte, text_.size());
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
  OrderedJson root_;
};

/// One value of a document and its pointer.
class Node {
 public:
  explicit Node(const Document& document) : Node(document, document.root(), "") {}

  const std::string& pointer() const { return pointer_; }
  bool is_text() const { return value_->is_string(); }
  bool is_null() const { return value_->is_null(); }
  bool is_array() const { return value_->is_array(); }
  bool is_object() const { return value_->is_object(); }
  bool has(std::string_view key) const { return value_->contains(key); }

  [[noreturn]] void fail(const std::string& message) const { document_->fail(message, pointer_); }

  void require_object(std::string_view wanted) const {
    if (!value_->is_object()) fail_type(wanted);
  }

  std::vector<std::string> unknown_keys(std::span<const std::string_view> keys) const {
    std::vector<std::string> result;
    for (const auto& [key, value] : value_->items()) {
      if (std::find(keys.begin(), keys.end(), key) == keys.end()) result.push_back(key);
    }
    return result;
  }
  [[noreturn]] void fail_unknown(const std::string& key,
                                 std::span<const std::string_view> keys) const {
    const std::string_view near = nearest_name(key, keys);
    document_->fail("key " + detail::quoted(key) + " is not known" +
                        (near.empty() ? "" : "; the nearest is " + detail::quoted(near)) +
                        "; known are " + names_text(keys),
                    pointer_to(pointer_, key));
  }

  /// The member of an object.
  Node at(std::string_view key) const {
    if (!has(key)) fail(std::string(key) + " is missing");
    return {*document_, value_->at(key), pointer_to(pointer_, key)};
  }
  std::optional<Node> find(std::string_view key) const {
    return has(key) ? std::optional(at(key)) : std::nullopt;
  }

  double number() const {
    if (!value_->is_number()) fail_type("a number");
    return value_->get<double>();
  }
  std::string text() const {
    if (!is_text()) fail_type("a string");
    return value_->get<std::string>();
  }
  bool boolean() const {
    if (!value_->is_boolean()) fail_type("true or false");
    return value_->get<bool>();
  }
  std::vector<Node> items() const {
    if (!value_->is_array()) fail_type("an array");
    std::vector<Node> result;
    for (std::size_t i = 0; i < value_->size(); ++i) {
      result.push_back({*document_, (*value_)[i], pointer_to(pointer_, std::to_string(i))});
    }
    return result;
  }

  /// One of these texts, as its position.
  std::size_t one_of(std::span<const std::string_view> known, std::string_view what) const {
    const std::string given = text();
    const auto at = std::find(known.begin(), known.end(), given);
    if (at == known.end()) fail(unknown_name_text(what, shown(given), known));
    return static_cast<std::size_t>(at - known.begin());
  }

  /// Runs `work`, which knows no files, and tells where its errors belong: see the other one.
  template <typename Work>
  auto placed(Work work) const {
    try {
      return work();
    } catch (const Error& error) {
      std::vector<Fault> faults;
      for (const Fault& fault : error.faults()) faults.push_back(placed(fault));
      throw_faults(std::move(faults));
      throw;
    }
  }

  /// A fault of this value with its place: the one it names itself, else the member of its quantity, where this object has
  /// it, else this value.
  Fault placed(Fault fault) const {
    if (fault.line > 0) return fault;  // it has its place
    const bool label =
        fault.code == ErrorCode::ambiguous_label || fault.code == ErrorCode::unknown_grade;
    for (char& c : fault.message) {
      if (c >= 0 && c < 0x20) c = '?';  // of a name in the file; a zero byte would end what()
    }
    if (!fault.pointer.starts_with('/') || fault.pointer == pointer_)
      fault.pointer = label ? pointer_ : member(fault.quantity);
    while (!fault.pointer.empty() && document_->line(fault.pointer) == 0)  // not in the file
      fault.pointer.erase(std::min(fault.pointer.rfind('/'), fault.pointer.size()));
    fault.line = document_->line(fault.pointer);
    const bool names_place =
        pointer_.empty() || fault.message.find(", in " + pointer_) != std::string::npos;
    fault.message += (names_place ? "" : ", in " + pointer_) + document_->at_line(fault.pointer);
    return fault;
  }

  /// The number where it is whole, in all its digits; one that is `natural` may take all 64 bits.
  std::optional<std::int64_t> whole(bool natural) const {
    constexpr double end = 0x1p63;
    if (value_->is_number_unsigned()) {
      const auto read = value_->get<std::uint64_t>();
      const bool fits = natural || read <= std::numeric_limits<std::int64_t>::max();
      return fits ? std::optional(static_cast<std::int64_t>(read)) : std::nullopt;
    }
    if (value_->is_number_integer()) return value_->get<std::int64_t>();
    const double read = value_->get<double>();
    if (!(read >= -end && read < end) || read != std::floor(read)) return std::nullopt;
    return static_cast<std::int64_t>(read);
  }

 private:
  Node(const Document& document, const OrderedJson& value, std::string pointer)
      : document_(&document), value_(&value), pointer_(std::move(pointer)) {}

  [[noreturn]] void fail_type(std::string_view wanted) const {
    const std::string name = pointer_.substr(pointer_.rfind('/') + 1);
    const bool nameless = name.find_first_not_of("0123456789") == std::string::npos;
    fail((nameless ? "the value" : name) + " is of type " + value_->type_name() + ", wanted " +
         std::string(wanted));
  }

  /// Of "readings_um[2]" too.
  std::string member(std::string_view quantity) const {
    const std::string_view name = quantity.substr(0, quantity.find('['));
    return value_->is_object() && has(name) ? pointer_to(pointer_, name) : pointer_;
  }

  const Document* document_;
  const OrderedJson* value_;
  std::string pointer_;
};

}  // namespace detail

}  // namespace levigate
