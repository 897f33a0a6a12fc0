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
    return "The first hardness is for " + number_text(*hardness.first_h) +
           " h. The coat is younger and softer";
  }
  if (hardness.last_h) {
    return "The last hardness is for " + number_text(*hardness.last_h) + " h. The coat is older";
  }
  return "";
}

inline std::string sentence_of(const CureState& cure) {
  if (cure.hard) return "";
  std::string text =
      "The coat is " + fixed(cure.age_h, 0) + " h old. It needs " + fixed(cure.hard_cure_h, 0) +
      " h to cure fully, unless the data sheet says otherwise. A soft film clogs the paper. It "
      "scratches deeper and shrinks back";
  if (cure.hardness_ratio && cure.scratch_ratio) {
    const std::string outside =
        sentence_of(AgedHardness{.first_h = cure.first_h, .last_h = cure.last_h});
    text += ". It has " + fixed(100 * *cure.hardness_ratio, 0) +
            " % of its hardness. Scratches are " + fixed(*cure.scratch_ratio, 2) +
            " times as deep" + (outside.empty() ? "" : ". " + outside);
  }
  return text + ". The film may still shrink by up to " + fixed(100 * cure.shrink_left, 1) + " %";
}

/// How a defect is taken down, with the thickness of the tape as told.
inline std::string local_way_text(const LocalWork& work, const std::string& tape) {
  return work.shaved   ? "Mask, shave down to the tape (" + tape + ") and block flush"
         : work.masked ? "Mask and block flush"
                       : "Block flush";
}

inline std::string sentence_of(const LocalWork& work) {
  const bool slower = work.flat.minutes > work.local.minutes;
  const bool shows = work.flat.film_um > work.residual_um;
  const std::string local = local_way_text(work, fixed(work.tape_um, 0) + " um");
  const auto minutes_of = [](double minutes) {
    return minutes < 0.05 ? std::string("under 0.1") : fixed(minutes, 1);
  };
  return local + ". That takes " + minutes_of(work.local.minutes) +
         " min and no film beside the defect. Sanding flat takes " + minutes_of(work.flat.minutes) +
         " min and up to " + fixed(work.flat.film_um, 1) +
         " um of film beside it. Sanding flat is " +
         (slower && shows ? "slower and costs film"
          : shows         ? "quicker but costs film"
          : slower        ? "slower"
                          : "quicker and leaves no hollow that shows");
}

}  // namespace detail

}  // namespace levigate
