// Sentences on a coat that is young and on defects.
#pragma once

#include <string>

#include "levigate/detail/text.hpp"
#include "levigate/error.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/take_down.hpp"

namespace levigate::inline v0 {

namespace detail {

inline std::string sentence_of(const AgedHardness& hardness) {
  if (hardness.first_h) {
    return "younger than the first hardness, " + number_text(*hardness.first_h) +
           " h: softer than this";
  }
  if (hardness.last_h)
    return "older than the last hardness, " + number_text(*hardness.last_h) + " h";
  return "";
}

inline std::string sentence_of(const CureState& cure) {
  if (cure.hard) return "";
  std::string text =
      fixed(cure.age_h, 0) + " h old, fully cured at " + fixed(cure.hard_cure_h, 0) +
      " h (the data sheet decides): soft film clogs, scratches deeper and shrinks back";
  if (cure.hardness_ratio && cure.scratch_ratio) {
    const std::string outside =
        sentence_of(AgedHardness{.first_h = cure.first_h, .last_h = cure.last_h});
    text += "; " + fixed(100 * *cure.hardness_ratio, 0) + " % of its hardness" +
            (outside.empty() ? "" : " (" + outside + ")") + ", scratches " +
            fixed(*cure.scratch_ratio, 2) + " times as deep";
  }
  return text + "; up to " + fixed(100 * cure.shrink_left, 1) + " % of the film still to be lost";
}

inline std::string sentence_of(const LocalWork& work) {
  const bool slower = work.flat.minutes > work.local.minutes;
  const bool shows = work.flat.film_um > work.residual_um;
  const std::string local = work.shaved ? "mask it, shave it to the tape (" +
                                              fixed(work.tape_um, 0) + " um) and block it flush"
                            : work.masked ? "mask it and block it flush"
                                          : "block it flush";
  return local + ": " + fixed(work.local.minutes, 1) +
         " min, no film beside it; sanded out flat it takes " + fixed(work.flat.minutes, 1) +
         " min and up to " + fixed(work.flat.film_um, 1) + " um of film beside it: " +
         (slower && shows ? "worse in time and film"
          : shows         ? "quicker, but paid in film"
          : slower        ? "slower"
                          : "quicker, and no hollow that shows");
}

}  // namespace detail

}  // namespace levigate
