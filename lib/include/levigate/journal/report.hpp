// What a shop's numbers say, line by line.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "levigate/describe.hpp"
#include "levigate/error.hpp"
#include "levigate/journal/learn.hpp"
#include "levigate/journal/shop_factors.hpp"

namespace levigate::inline v0 {

/// One learned number: sentence() of text/sentences.hpp says it. Nine times in ten the truth is between low and high, if the model holds.
struct LearnedLine {
  std::string subject;           ///< as "latex paper on two-part urethane"
  std::string quantity;          ///< "minutes", "scratches" or "film_um"; "lines" of a journal
  double value = 0;              ///< median: a multiple of what is computed; of a film, added [um]
  double low = 0;                ///< 5 % are below it
  double high = 0;               ///< 5 % are above it
  std::size_t observations = 0;  ///< behind it

  friend bool operator==(const LearnedLine&, const LearnedLine&) = default;
};

template <std::same_as<LearnedLine> Value>
inline constexpr auto described<Value> = describe<Value>(
    "LearnedLine", "One learned number.",
    member<&Value::subject>("subject", "as \"latex paper on two-part urethane\""),
    member<&Value::quantity>("quantity", "minutes, scratches, film_um, or lines of a journal"),
    member<&Value::value>("value", "median: a multiple of what is computed; of a film, added [um]"),
    member<&Value::low>("low", "5 % are below it"),
    member<&Value::high>("high", "5 % are above it"),
    member<&Value::observations>("observations", at_least(0), "behind it"));

/// What a shop's numbers say: of the person alone, of the person with each backing on each coating (which is what minutes tell of
/// directly), of scratches and films.
///
/// @param shop  what journals taught
/// @return      a line for each of its numbers, in their order
/// Throws:    as validate(Shop)
/// NaN:       rejected
/// Source:    sum_of()
std::vector<LearnedLine> report(const Shop& shop);

/// report() of the shop, and how many lines of the journal were learned before, where some were.
///
/// @param learned  of learn()
/// @return         the lines, that of the journal last
/// Throws:    as validate(Shop)
/// NaN:       rejected
/// Source:    report() of the shop
std::vector<LearnedLine> report(const Learned& learned);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/journal/work/report.hpp"
#endif
