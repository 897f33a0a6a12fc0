// Keys of results that are made of other members: sentences, written beside the facts and passed over in reading.
#pragma once

#include <nlohmann/json.hpp>
#include <span>
#include <string_view>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/detail/work.hpp"
#include "levigate/io/work/locate.hpp"
#include "levigate/plan/change.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/way_back.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/surface/take_down.hpp"
#include "levigate/text/sentences.hpp"

namespace levigate::inline v0::detail {

/// One such key.
struct SaidKey {
  const Description* of;  ///< the type that has it
  std::string_view key;
  std::string_view after;  ///< member that it follows
  std::string_view about;
  bool list;  ///< of sentences
  OrderedJson (*say)(const void* value);
};

/// The sentence of a value.
template <typename Value>
OrderedJson said(const void* value) {
  return sentence(as<Value>(value));
}

/// The sentences of all values of a list.
template <typename Value>
OrderedJson said_each(const std::vector<Value>& values) {
  OrderedJson json = OrderedJson::array();
  for (const Value& value : values) json.push_back(sentence(value));
  return json;
}

/// All of them.
inline std::span<const SaidKey> said_keys() {
  static const SaidKey keys[] = {
      {&description_of<Finding>(), "message", "sheets", "a sentence with names, sizes and limits",
       false, said<Finding>},
      {&description_of<Why>(), "message", "blocked_by", "all of it in words", false, said<Why>},
      {&description_of<LearnedChange>(), "message", "now", "all of it in words", false,
       said<LearnedChange>},
      {&description_of<LocalWork>(), "verdict", "flat", "both ways, in a sentence", false,
       said<LocalWork>},
      {&description_of<WayBack>(), "why", "film_um",
       "why there is no way back; empty where there is one", false, said<WayBack>},
      {&description_of<WayBack>(), "remains", "film_um", "what can be done instead", true,
       [](const void* way) { return said_each(as<WayBack>(way).remedies); }},
      {&description_of<Diagnosis>(), "evidence", "shows_um", "in words", true,
       [](const void* diagnosis) { return said_each(as<Diagnosis>(diagnosis).signs); }},
  };
  return keys;
}

}  // namespace levigate::inline v0::detail
