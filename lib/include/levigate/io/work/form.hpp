// How described values stand in a file: walks both ways, and the types that have a form of their own.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/error.hpp"
#include "levigate/io/work/locate.hpp"

namespace levigate::inline v0::detail {

class Node;
class DescribedReader;

enum class Style {
  whole,   ///< a result: every key is there, null for none
  sparse,  ///< what one gives: keys that say nothing are left out
};

/// As Member::infinite: JSON's null stands for an infinite number.
inline constexpr std::string_view null_text = "null";

/// The form of a type that is not the object of its members, in files of what one gives.
struct FileForm {
  const Description* of;
  OrderedJson (*write)(const void* value);
  /// Reads into a value as it is made. Throws any Error for what it cannot read.
  void (*read)(DescribedReader& reader, const Node& node, void* value, const std::string& named);
};

/// The form of a type, or null where it is the object of its members.
const FileForm* form_of(const Description& description);

/// A value in its form or as the object of its members.
OrderedJson json_of(const Description& description, const void* value, Style style);

/// Text with two blanks a level. Bytes that are not UTF-8 are replaced, as JSON cannot hold them.
std::string json_text(const OrderedJson& json);

/// A whole file: its format, then the members of the value.
OrderedJson file_json(std::string_view format, const Description& description, const void* value,
                      Style style);

template <Described Value>
std::string file_text(std::string_view format, const Value& value, Style style) {
  return json_text(file_json(format, description_of<Value>(), &value, style));
}

/// Reads a file that file_text() wrote, or somebody by hand, into a value as it is made.
///
/// Throws: what is wrong with it, all at once, each with pointer and line: see throw_faults()
void read_file_text(std::string_view text, std::string_view file, std::string_view format,
                    const Description& description, void* value, Style style, int first_line);

template <Described Value>
Value value_of_file(std::string_view text, std::string_view file, std::string_view format,
                    Style style, int first_line = 1) {
  Value value;
  read_file_text(text, file, format, description_of<Value>(), &value, style, first_line);
  return value;
}

}  // namespace levigate::inline v0::detail
