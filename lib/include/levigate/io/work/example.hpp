// An example of a right value for each member of a file, by its description.
#pragma once

#include <cmath>
#include <span>
#include <string>
#include <string_view>

#include "levigate/describe.hpp"
#include "levigate/error.hpp"
#include "levigate/io/work/form.hpp"

namespace levigate::inline v0::detail {

/// A number in its range: as it is made where that is above zero, else one of the middle with one digit.
inline double example_number(const Member& member) {
  double number = 1;
  if (member.low > 0.0 && std::isfinite(member.high)) {
    number = std::sqrt(member.low * member.high);
    const double unit = std::pow(10.0, std::floor(std::log10(number)));
    number = std::round(number / unit) * unit;
  } else if (member.low <= 0.0 && member.high <= 1.0) {
    number = member.low < 0.0 ? 0.0 : member.high / 2.0;
  }
  return number < member.low ? member.low : number > member.high ? member.high : number;
}

/// JSON text of a right value, as a description says it; empty where that is an object of several members.
inline std::string example_value(const Member& member, const Kind& kind, const FileForms& forms) {
  if (!member.example.empty()) return std::string(member.example);
  const auto quoted = [](std::string_view text) { return "\"" + std::string(text) + "\""; };
  switch (kind.form) {
    case Form::number: return number_text(example_number(member));
    case Form::whole: return number_text(std::ceil(example_number(member)));
    case Form::truth: return "true";
    case Form::text: return quoted("text");
    case Form::choice: return quoted(kind.choice(0));
    case Form::maybe: return example_value(member, *kind.of, forms);
    case Form::list: {
      const std::string item = example_value(member, *kind.of, forms);
      return item.empty() ? item : "[" + item + "]";
    }
    case Form::value: {
      const FileForm* form = forms.of(kind.described());
      return form && form->names ? quoted(form->names().front()) : std::string();
    }
    case Form::either: break;
  }
  return {};
}

/// "\"area_cm2\": 540"; empty where there is none.
inline std::string example_of(const Member& member, const FileForms& forms) {
  const std::string value = example_value(member, *member.kind, forms);
  return value.empty() ? value : "\"" + std::string(member.name) + "\": " + value;
}

/// Gives a fault an example, also in its words.
inline void show_example(Fault& fault, const std::string& example) {
  if (example.empty() || !fault.example.empty()) return;
  fault.example = example;
  fault.message += ". For example " + example;
}

/// Shows an example to those faults that are of the value of a member itself, or of one in its list.
inline void show_examples(std::span<Fault> faults, const Member& member, const std::string& pointer,
                          const FileForms& forms) {
  const Kind* kind = member.kind;
  while (kind->form == Form::maybe || kind->form == Form::list) kind = kind->of;
  for (Fault& fault : faults) {
    const std::string_view place = fault.pointer;
    const bool item = kind->form != Form::value && place.starts_with(pointer + "/") &&
                      place.find('/', pointer.size() + 1) == place.npos;
    if (place == pointer || item) show_example(fault, example_of(member, forms));
  }
}

}  // namespace levigate::inline v0::detail
