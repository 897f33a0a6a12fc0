// What to buy before a day of work: sheets that suffice, the one kind that shortens the day most, and labels that matter.
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/plan/why.hpp"

namespace levigate::inline v0 {

/// Sheets of one kind that the plan needs.
struct SheetsNeeded {
  std::string sheet;
  std::string label;
  std::string maker;
  double usual = 0;
  double pieces = 0;
  std::optional<double> on_hand;
  double buy = 0;

  friend bool operator==(const SheetsNeeded&, const SheetsNeeded&) = default;
};

template <std::same_as<SheetsNeeded> Value>
inline constexpr auto described<Value> = describe<Value>(
    "SheetsNeeded", "Sheets of one kind that the plan needs.", member<&Value::sheet>("sheet", "id"),
    member<&Value::label>("label", "of its grade"),
    member<&Value::maker>("maker", "of the sheet; may be empty"),
    member<&Value::usual>("usual", at_least(0), "sheets used in the median draw"),
    member<&Value::pieces>(
        "pieces", at_least(0),
        "whole sheets; those of all steps together suffice in nine of ten draws"),
    member<&Value::on_hand>("on_hand", at_least(0), "sheets; none: no limit"),
    member<&Value::buy>("buy", at_least(0), "whole sheets that are missing"));

/// One kind of sheet that a shop sells, and what it gives.
struct Offer {
  std::string label;
  std::string maker;
  std::string backing;
  double size_um = 0;
  double sheets = 0;
  double less_minutes = 0;
  std::vector<std::string> sequence;

  friend bool operator==(const Offer&, const Offer&) = default;
};

template <std::same_as<Offer> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Offer", "One kind of sheet that a shop sells, and what it gives.",
    member<&Value::label>("label", "of its grade"),
    member<&Value::maker>("maker", "whose other sheets are in the drawer; may be empty"),
    member<&Value::backing>("backing", "name, as theirs"),
    member<&Value::size_um>("size_um", at_least(0), "median grain size"),
    member<&Value::sheets>("sheets", at_least(0), "whole ones that the plan then needs of it"),
    member<&Value::less_minutes>("less_minutes", "of the quickest plan with it, with going back"),
    member<&Value::sequence>("sequence", "labels of the sheets of that plan"));

/// One thing that an open label can mean, and what the plan then is.
struct Meaning {
  std::string label;
  double size_um = 0;
  std::optional<double> width_um;
  bool found = false;
  double minutes = 0;
  std::vector<std::string> sequence;

  friend bool operator==(const Meaning&, const Meaning&) = default;
};

template <std::same_as<Meaning> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Meaning", "One thing that an open label can mean, and what the plan then is.",
    member<&Value::label>("label", "of the grade"),
    member<&Value::size_um>("size_um", at_least(0), "its median grain size"),
    member<&Value::width_um>("width_um", at_least(0),
                             "of the scratch that it leaves under the first zone's tool"),
    member<&Value::found>("found",
                          "whether there is a plan, other open labels at their first meaning"),
    member<&Value::minutes>("minutes", at_least(0), "that plan, with going back; 0 without one"),
    member<&Value::sequence>("sequence", "ids of its sheets"));

/// A label that does not settle its size.
struct OpenLabel {
  std::string sheet;
  std::string printed;
  std::string maker;
  bool known = true;
  bool matters = false;
  std::vector<Meaning> meanings;

  friend bool operator==(const OpenLabel&, const OpenLabel&) = default;
};

template <std::same_as<OpenLabel> Value>
inline constexpr auto described<Value> = describe<Value>(
    "OpenLabel", "A label that does not settle its size.", member<&Value::sheet>("sheet", "id"),
    member<&Value::printed>("printed", "the label as printed"),
    member<&Value::maker>("maker", "of the sheet; may be empty"),
    member<&Value::known>("known", "false: no system has it, and any size of FEPA P may be meant"),
    member<&Value::matters>("matters",
                            "whether two meanings give other sequences, or minutes more than 3 % "
                            "apart, whatever the other open labels mean"),
    member<&Value::meanings>("meanings", "all of them, coarse to fine"));

/// What to buy, as facts. buying_card() of text/buying.hpp says it.
struct Buying {
  std::string job;
  bool found = false;
  std::optional<Why> why;
  std::int64_t draws = 0;
  std::uint64_t seed = 0;
  double enough = 0;
  std::vector<SheetsNeeded> sheets;
  double minutes = 0;
  std::size_t tried = 0;
  std::vector<Offer> offers;
  std::vector<OpenLabel> labels;

  friend bool operator==(const Buying&, const Buying&) = default;
};

template <std::same_as<Buying> Value>
inline constexpr auto described<Value> = describe<Value>(
    "Buying", "What to buy before a day of work.", member<&Value::job>("job", "its name"),
    member<&Value::found>("found", "whether the sheets whose labels are settled give a plan"),
    member<&Value::why>("why", "why they do not"),
    member<&Value::draws>("draws", at_least(0), "behind the sheets needed"),
    member<&Value::seed>("seed", "of the random numbers; the same seed gives the same figures"),
    member<&Value::enough>("enough", Within{0, 1},
                           "share of the draws in which these pieces suffice"),
    member<&Value::sheets>("sheets", "of each step of the plan, in order"),
    member<&Value::minutes>("minutes", at_least(0),
                            "of the quickest plan from the drawer, with going back; 0 without one"),
    member<&Value::tried>("tried", "kinds of sheets that were tried"),
    member<&Value::offers>("offers",
                           "those that shorten the day by more than 3 %, or give a plan where the "
                           "drawer has none; best first, at most ten"),
    member<&Value::labels>("labels", "those that do not settle their size"));

}  // namespace levigate
