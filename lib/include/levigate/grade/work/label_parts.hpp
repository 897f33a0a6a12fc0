// A label taken apart: what stands before its number, the number, and what stands after it.
#pragma once

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <optional>
#include <string>
#include <string_view>

#include "levigate/error.hpp"
#include "levigate/grade/system.hpp"
#include "levigate/grade/work/from_row.hpp"
#include "levigate/grade/work/label_text.hpp"

namespace levigate::inline v0 {

namespace detail {

/// What a label says, before any table is asked.
struct LabelParts {
  std::optional<System> system;  ///< none where the label does not say it
  std::string number;            ///< digits, for a size with a decimal point or comma
  std::string old_symbol_for;    ///< CAMI number, where the digits are an old US symbol as well
  bool may_be_size = false;      ///< "A16" or "3": a grit or a symbol, or a size in um
  std::string note;

  bool whole() const { return number.find_first_of(".,") == std::string::npos; }
};

struct Prefix {
  std::string_view text;
  std::optional<System> system;
  std::string_view note;
};

inline constexpr Prefix prefixes[] = {
    {"", {}, ""},
    {"p", System::fepa_p, ""},
    {"fepap", System::fepa_p, ""},
    {"isop", System::fepa_p, ""},
    {"fepa", System::fepa_p, "FEPA alone is read as P: F is for bonded and loose grain"},
    {"iso", System::fepa_p, "ISO alone is read as P: F is for bonded and loose grain"},
    {"f", System::fepa_f, ""},
    {"fepaf", System::fepa_f, ""},
    {"isof", System::fepa_f, ""},
    {"fepaftube", System::fepa_f_tube, ""},
    {"cami", System::cami, ""},
    {"cami#", System::cami, ""},
    {"ansi", System::cami, ""},
    {"ansi#", System::cami, ""},
    {"j", System::jis, ""},
    {"jis", System::jis, ""},
    {"jis#", System::jis, ""},
    {"#", System::jis, "# is JIS; older and loose usage puts it before any grit"},
    {"jissedimentation", System::jis_sedimentation, ""},
    {"jissedimentation#", System::jis_sedimentation, ""},
    {"micron", System::micron, ""},
    {"k", {}, "K is German shop notation for grit and names no system"},
    {"a",
     {},
     "A is a grain letter (alumina), or on structured abrasives stands before a size in um"},
    {"c", {}, "C is a grain letter (silicon carbide) and names no system"},
};

inline constexpr std::string_view size_units[] = {
    "um",      "u",          "mic",         "mics",       "micron",
    "microns", "micrometer", "micrometers", "micrometre", "micrometres",
};

/// Old US symbols and the CAMI numbers they stand for.
inline constexpr std::string_view old_symbols[][2] = {
    {"2/0", "100"}, {"0", "80"}, {"1/2", "60"}, {"1", "50"}, {"2", "36"}, {"3", "24"}, {"4", "16"},
};

constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }

[[noreturn]] inline void refuse_label(std::string_view text, std::string_view why) {
  throw UnknownGrade("label " + quoted(text) + " is not known: " + std::string(why));
}

[[noreturn]] inline void refuse_form(std::string_view text, std::string_view why) {
  refuse_label(text, std::string(why) +
                         ". Tried: P, F, #, J, K, A, C, FEPA, ISO, CAMI, ANSI or JIS before a "
                         "number; a number alone, with \"grit\", a weight letter or a size unit "
                         "(um, mic, micron); the old US symbols 2/0 to 4");
}

/// A folded label, cut at its first number; spaces matter in the number only.
struct Pieces {
  std::string before;
  std::string number;
  std::string after;
};

inline Pieces cut(std::string_view label) {
  const auto digit_at = [&](std::size_t i) { return i < label.size() && is_digit(label[i]); };
  std::size_t begin = 0;
  while (begin < label.size() && !digit_at(begin) && !(label[begin] == '.' && digit_at(begin + 1)))
    ++begin;
  std::size_t end = begin;
  while (digit_at(end)) ++end;
  if (end < label.size() && (label[end] == '.' || label[end] == ',') && digit_at(end + 1)) {
    ++end;
    while (digit_at(end)) ++end;
  }
  Pieces pieces{std::string(label.substr(0, begin)), std::string(label.substr(begin, end - begin)),
                std::string(label.substr(end))};
  std::erase(pieces.before, ' ');
  std::erase(pieces.after, ' ');
  return pieces;
}

/// The parts of an old US symbol. Digits alone, as "1", keep their own number beside it, for a user
/// whose bare numbers mean something else.
inline std::optional<LabelParts> old_symbol(const Pieces& pieces) {
  if (!pieces.before.empty()) return std::nullopt;
  for (const auto& [symbol, number] : old_symbols) {
    if (pieces.number + pieces.after != symbol) continue;
    LabelParts parts;
    parts.note = "old US symbol for " + canonical_label(System::cami, number);
    if (pieces.after.empty()) {
      parts.number = pieces.number;
      parts.old_symbol_for = number;
      parts.may_be_size = symbol != "0";
    } else {
      parts.system = System::cami;
      parts.number = number;
    }
    return parts;
  }
  return std::nullopt;
}

inline void refuse_other_systems(const Pieces& pieces, std::string_view text) {
  constexpr std::string_view gost_fractions[] = {"-n", "-p", "-h", "-d"};
  if (pieces.before == "m" || std::ranges::count(gost_fractions, std::string_view(pieces.after))) {
    refuse_label(text, "it looks like a GOST grade, and that system is not held");
  }
  if (pieces.before == "b" || pieces.before == "d") {
    refuse_label(text, "B and D are superabrasives, and their system is not held");
  }
}

/// Takes a label apart. Throws BadInput as folded_label; UnknownGrade where the text has none of
/// the forms.
inline LabelParts take_apart(std::string_view text) {
  Pieces pieces = cut(folded_label(text));
  if (pieces.number.empty()) refuse_form(text, "it holds no number");
  if (const auto symbol = old_symbol(pieces)) return *symbol;
  refuse_other_systems(pieces, text);

  auto& [before, number, after] = pieces;
  if (before.starts_with("grit")) before.erase(0, 4);
  const auto prefix = std::ranges::find(prefixes, std::string_view(before), &Prefix::text);
  if (prefix == std::end(prefixes)) refuse_form(text, "no form starts as it does");
  LabelParts parts;
  parts.system = prefix->system;
  parts.number = number;
  parts.may_be_size = before == "a";
  parts.note = prefix->note;

  const bool has_unit = std::ranges::count(size_units, std::string_view(after)) > 0;
  if (parts.system == System::micron ? has_unit || after.empty() : before.empty() && has_unit) {
    parts.system = System::micron;
    return parts;
  }

  if (after.ends_with("grit")) {
    after.erase(after.size() - 4);
    if (after.ends_with('-')) after.pop_back();
  }
  const bool weight = after.size() == 1 && std::string_view("abcdefgjxy").find(after[0]) < 10;
  if (parts.system == System::micron) {
    refuse_form(text, "a size ends with its unit");
  } else if (after == std::string(1, folded_ban) &&
             parts.system.value_or(System::jis) == System::jis) {
    parts.system = System::jis;
  } else if (after == "tube" && parts.system == System::fepa_f) {
    parts.system = System::fepa_f_tube;
  } else if (after == "sedimentation" && parts.system == System::jis) {
    parts.system = System::jis_sedimentation;
  } else if (weight) {
    const std::string letter(1, static_cast<char>(after[0] - 'a' + 'A'));
    parts.note = joined_notes(parts.note, letter + " is the weight of the paper or cloth");
  } else if (!after.empty()) {
    refuse_form(text, "no form ends as it does");
  }
  if (!parts.whole()) refuse_form(text, "a grit number is whole, and a size needs its unit");
  return parts;
}

}  // namespace detail

}  // namespace levigate
