// A place in a JSON document: what stands there, in whatever unit, and every error with pointer, line and file.
#pragma once

#include <algorithm>
#include <charconv>
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
#include "levigate/io/work/document.hpp"
#include "levigate/io/work/locate.hpp"
#include "levigate/told_unit.hpp"

namespace levigate::inline v0 {

namespace detail {

/// One value of a document and its pointer.
class Node {
 public:
  explicit Node(const Document& document) : Node(document, document.root(), "") {}

  const std::string& pointer() const { return pointer_; }
  bool is_text() const { return value_->is_string(); }
  bool is_null() const { return value_->is_null(); }
  bool is_array() const { return value_->is_array(); }
  bool is_object() const { return value_->is_object(); }
  bool has(std::string_view key) const { return value_->contains(key) || told_for(key); }
  /// The key as the file has it, which may end with another unit.
  std::string spelt(std::string_view key) const {
    return value_->contains(key) ? std::string(key) : told_for(key).value_or(std::string(key));
  }
  /// Whether the file has the number of this value in another unit than that of its name.
  bool in_other_unit() const { return from_ != nullptr; }

  [[noreturn]] void fail(const std::string& message) const { document_->fail(message, pointer_); }

  /// Of the value of a key.
  [[noreturn]] void fail_at(const std::string& key, const std::string& message) const {
    document_->fail(message, pointer_to(pointer_, key));
  }

  void require_text(std::string_view wanted) const {
    if (!is_text()) fail_type(wanted);
  }
  void require_object(std::string_view wanted) const {
    if (!value_->is_object()) fail_type(wanted);
  }

  std::vector<std::string> unknown_keys(std::span<const std::string_view> keys) const {
    std::vector<std::string> result;
    for (const auto& [key, value] : value_->items()) {
      if (member_of(key, keys).empty()) result.push_back(key);
    }
    return result;
  }
  /// The one of these keys that a key of the file gives, in its own or another unit; empty where it gives none.
  std::string_view member_of(std::string_view key, std::span<const std::string_view> keys) const {
    if (const auto at = std::find(keys.begin(), keys.end(), key); at != keys.end()) return *at;
    if (!document_->any_unit()) return {};
    const auto at = std::find_if(keys.begin(), keys.end(), [&](std::string_view known) {
      return unit_told_for(key, known) != nullptr;
    });
    return at == keys.end() ? std::string_view() : *at;
  }
  /// Keys that give a member which another key has given before, each with that other one.
  std::vector<std::pair<std::string, std::string>> given_twice(
      std::span<const std::string_view> keys) const {
    std::vector<std::pair<std::string, std::string>> result;
    std::vector<std::pair<std::string_view, std::string>> before;
    for (const auto& [key, value] : value_->items()) {
      const std::string_view member = member_of(key, keys);
      if (member.empty()) continue;
      for (const auto& [other, first] : before) {
        if (other == member) result.emplace_back(key, first);
      }
      before.emplace_back(member, key);
    }
    return result;
  }
  [[noreturn]] void fail_unknown(const std::string& key,
                                 std::span<const std::string_view> keys) const {
    const std::string_view close_by = meant_by(key, keys);
    const bool unit = document_->any_unit() && lacks_unit_of(key, close_by);
    document_->fail("key " + detail::quoted(key) + " is not known" +
                        (close_by.empty() ? "" : "; the nearest is " + detail::quoted(close_by)) +
                        (unit ? units_text(close_by) : "; known are " + names_text(keys)),
                    pointer_to(pointer_, key));
  }
  /// The one of these keys that another one is most likely meant for: of its name and a unit that is not known, or without a unit,
  /// else the nearest; empty where none is near.
  static std::string_view meant_by(std::string_view key, std::span<const std::string_view> keys) {
    std::string_view of_stem;
    for (const std::string_view known : keys) {
      if (!lacks_unit_of(key, known)) continue;
      if (key == name_parts(known).stem) return known;
      if (of_stem.empty()) of_stem = known;
    }
    const std::string_view close_by = nearest_name(key, keys);
    return close_by.empty() ? of_stem : close_by;
  }

  /// That an object has just one of these keys.
  void require_one_of(std::span<const std::string_view> keys) const {
    std::string_view found;
    for (const std::string_view key : keys) {
      if (!has(key)) continue;
      if (!found.empty())
        at(key).fail(spelt(key) + " does not go with " + spelt(found) + ": one of them is wanted");
      found = key;
    }
    if (found.empty()) fail("one is wanted of " + names_text(keys));
  }

  /// The member of an object.
  Node at(std::string_view key) const {
    if (value_->contains(key)) return {*document_, value_->at(key), pointer_to(pointer_, key)};
    const auto told = told_for(key);
    if (!told) fail(std::string(key) + " is missing");
    Node node(*document_, value_->at(*told), pointer_to(pointer_, *told));
    node.from_ = unit_told_for(*told, key);
    node.to_ = name_parts(key).unit;
    return node;
  }
  std::optional<Node> find(std::string_view key) const {
    return has(key) ? std::optional(at(key)) : std::nullopt;
  }

  double number() const {
    const double read = typed();
    return from_ ? in_unit(read, *from_, *to_) : read;
  }
  /// The number as it stands in the file, whatever its unit.
  double typed() const {
    if (!value_->is_number()) fail_type("a number");
    return value_->get<double>();
  }
  std::string text() const {
    if (!is_text()) fail_type("text in double quotes");
    return value_->get<std::string>();
  }
  bool boolean() const {
    if (!value_->is_boolean()) fail_type("true or false");
    return value_->get<bool>();
  }
  std::vector<Node> items() const {
    if (!value_->is_array()) fail_type("a list in [ ]");
    std::vector<Node> result;
    for (std::size_t i = 0; i < value_->size(); ++i) {
      result.push_back({*document_, (*value_)[i], pointer_to(pointer_, std::to_string(i))});
      result.back().from_ = from_;
      result.back().to_ = to_;
    }
    return result;
  }

  /// One of these texts, as its position. Case, spaces and hyphens are free.
  std::size_t one_of(std::span<const std::string_view> known, std::string_view what) const {
    const std::string given = text();
    const auto at = std::find_if(known.begin(), known.end(),
                                 [&](std::string_view name) { return same_name(name, given); });
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
    const std::string given = tell_as_given(fault);
    while (!fault.pointer.empty() && document_->line(fault.pointer) == 0)  // not in the file
      fault.pointer.erase(std::min(fault.pointer.rfind('/'), fault.pointer.size()));
    fault.line = document_->line(fault.pointer);
    const bool names_place =
        pointer_.empty() || fault.message.find(", in " + pointer_) != std::string::npos;
    fault.message +=
        (names_place ? "" : ", in " + pointer_) + document_->at_line(fault.pointer) + given;
    return fault;
  }

  /// The number where it is whole, in all its digits; one that is `natural` may take all 64 bits.
  std::optional<std::int64_t> whole(bool natural) const {
    constexpr double end = 0x1p63;
    if (from_) {
      const double read = number();
      return read == std::floor(read) && std::abs(read) < end
                 ? std::optional(static_cast<std::int64_t>(read))
                 : std::nullopt;
    }
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
    fail((nameless ? "the value" : name) + " is " + std::string(type_text()) + ", wanted " +
         std::string(wanted));
  }

  std::string_view type_text() const {
    switch (value_->type()) {
      case OrderedJson::value_t::null: return "null";
      case OrderedJson::value_t::boolean: return "true or false";
      case OrderedJson::value_t::string: return "text";
      case OrderedJson::value_t::array: return "a list";
      case OrderedJson::value_t::object: return "an object";
      default: return "a number";
    }
  }

  /// Of "readings_um[2]" too.
  std::string member(std::string_view quantity) const {
    const std::string_view name = quantity.substr(0, quantity.find('['));
    return value_->is_object() && has(name) ? pointer_to(pointer_, spelt(name)) : pointer_;
  }

  /// The key of this object that gives a member in another unit; none where it has none.
  std::optional<std::string> told_for(std::string_view key) const {
    if (!document_->any_unit() || !value_->is_object()) return std::nullopt;
    const NameParts parts = name_parts(key);
    if (!parts.unit) return std::nullopt;
    for (const auto& [given, value] : value_->items()) {
      if (given.starts_with(parts.stem) && unit_told_for(given, key)) return given;
    }
    return std::nullopt;
  }

  /// Whether a key is the name of a known one with no unit, or with one that is not known: "area" or "area_acres" of "area_cm2".
  static bool lacks_unit_of(std::string_view key, std::string_view known) {
    const std::string_view stem = name_parts(known).stem;
    return !stem.empty() && !other_endings(known).empty() && key.starts_with(stem) &&
           (key.size() == stem.size() ||
            (key[stem.size()] == '_' && key.find('_', stem.size() + 1) == key.npos));
  }

  /// "; area_cm2 may end with mm2, m2, in2 or ft2 in place of cm2"
  static std::string units_text(std::string_view known) {
    const std::vector<std::string_view> endings = other_endings(known);
    return "; it may end with " +
           list_text(std::vector<std::string>(endings.begin(), endings.end()), " or ") +
           " in place of " + std::string(name_parts(known).unit->ending);
  }

  /// A fault of a member that the file gives in another unit: its pointer is that of the key in the file, and it speaks in that unit.
  /// Returns what its message is to end with.
  std::string tell_as_given(Fault& fault) const {
    if (!document_->any_unit() || !fault.pointer.starts_with(pointer_ + "/")) return {};
    Node at = *this;
    std::string name;
    for (std::size_t begin = pointer_.size() + 1; begin < fault.pointer.size();) {
      const std::size_t end = std::min(fault.pointer.find('/', begin), fault.pointer.size());
      const std::string token = fault.pointer.substr(begin, end - begin);
      if (at.is_object()) {
        if (!at.has(token)) return {};
        const std::string spelt = at.spelt(token);
        fault.pointer.replace(begin, token.size(), spelt);
        begin += spelt.size() + 1;
        name = token;
        at = at.at(token);
      } else {
        const std::vector<Node> items = at.is_array() ? at.items() : std::vector<Node>();
        if (token.find_first_not_of("0123456789") != token.npos || token.size() > 6) return {};
        const std::size_t i = index_in(token);
        if (i >= items.size()) return {};
        at = items[i];
        begin = end + 1;
      }
    }
    return at.from_ ? at.retell(fault, name) : std::string();
  }

  /// In the unit that the file has, a fault of `name`, which is this value or the list that it is.
  std::string retell(Fault& fault, const std::string& name) const {
    const std::string own = name_in(name_parts(name), *from_);
    const bool of_it = fault.quantity.starts_with(name) &&
                       (fault.quantity.size() == name.size() || fault.quantity[name.size()] == '[');
    if (!fault.value || !of_it) return {};
    const std::size_t at = fault.quantity.find('[');
    Node one = *this;
    if (at != std::string::npos && is_array())
      one = items().at(index_in(std::string_view(fault.quantity).substr(at + 1)));
    const double typed =
        one.value_->is_number() ? one.typed() : in_unit(*fault.value, *to_, *from_);
    const std::string unit(from_->unit);
    const std::size_t says = fault.message.find(" = "), place = fault.message.find(", in ");
    const bool range = fault.low && fault.high && says != std::string::npos &&
                       fault.message.find(" is outside ") < place && place != std::string::npos &&
                       fault.message.starts_with(name);
    if (!range) return ". The file has " + own + " = " + number_text(typed) + " " + unit;
    const double low = in_unit(*fault.low, *to_, *from_);
    const double high = in_unit(*fault.high, *to_, *from_);
    fault.message = own + fault.message.substr(name.size(), says - name.size()) + " = " +
                    number_text(typed) + " " + unit + " is outside " + inward(low, true) + " to " +
                    inward(high, false) + " " + unit + fault.message.substr(place);
    fault.low = low;
    fault.high = high;
    fault.unit = unit;
    fault.value = typed;
    fault.quantity.replace(0, name.size(), own);
    return {};
  }

  /// An end of a range to five digits, rounded into the range.
  static std::string inward(double end, bool low) {
    if (end == 0.0 || !std::isfinite(end)) return number_text(end);
    const double digits = 4.0 - std::floor(std::log10(std::abs(end)));
    const double scaled = end * std::pow(10.0, digits);
    const double rounded = low ? std::ceil(scaled - 1e-6) : std::floor(scaled + 1e-6);
    const std::string text =
        fixed(rounded * std::pow(10.0, -digits), std::max(0, static_cast<int>(digits)));
    double shortest = 0;
    std::from_chars(text.data(), text.data() + text.size(), shortest);
    return number_text(shortest);
  }

  /// The number that a text of digits is, of a list no longer than a file can hold.
  static std::size_t index_in(std::string_view digits) {
    std::size_t index = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), index);
    return index;
  }

  const Document* document_;
  const OrderedJson* value_;
  std::string pointer_;
  const ToldUnit* from_ = nullptr;  ///< unit of the file, where it is another than that of the name
  const ToldUnit* to_ = nullptr;
};

}  // namespace detail

}  // namespace levigate
