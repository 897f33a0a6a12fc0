// The work behind text/sentences.hpp: defines what it declares.
#pragma once

#include <string>
#include <vector>

#include "levigate/text/sentences.hpp"

#include "levigate/detail/work.hpp"
#include "levigate/film/agreement.hpp"
#include "levigate/grade/convert.hpp"
#include "levigate/journal/learned.hpp"
#include "levigate/journal/observed.hpp"
#include "levigate/journal/report.hpp"
#include "levigate/plan/why.hpp"
#include "levigate/recover/diagnosis.hpp"
#include "levigate/recover/way_back.hpp"
#include "levigate/stack/finding.hpp"
#include "levigate/surface/cure.hpp"
#include "levigate/surface/take_down.hpp"
#include "levigate/text/work/sentences_of_change.hpp"
#include "levigate/text/work/sentences_of_film.hpp"
#include "levigate/text/work/sentences_of_finding.hpp"
#include "levigate/text/work/sentences_of_grade.hpp"
#include "levigate/text/work/sentences_of_journal.hpp"
#include "levigate/text/work/sentences_of_recover.hpp"
#include "levigate/text/work/sentences_of_surface.hpp"
#include "levigate/text/work/sentences_of_wheel.hpp"
#include "levigate/text/work/sentences_of_why.hpp"
#include "levigate/wheel/finding.hpp"

namespace levigate::inline v0 {

LEVIGATE_WORK std::string bridges_text(const std::vector<Bridge>& ways) {
  return detail::bridged(ways);
}

LEVIGATE_WORK std::string sentence(const Equivalent& found) { return detail::sentence_of(found); }

LEVIGATE_WORK std::string sentence(const Agreement& agreement) {
  return detail::sentence_of(agreement);
}

LEVIGATE_WORK std::string sentence(const Finding& finding) { return detail::sentence_of(finding); }

LEVIGATE_WORK std::string sentence(const LearnedChange& change) {
  return detail::sentence_of(change);
}

LEVIGATE_WORK std::string sentence(const Unmatched& unmatched) {
  return detail::sentence_of(unmatched);
}

LEVIGATE_WORK std::string sentence(const Outlier& outlier) { return detail::sentence_of(outlier); }

LEVIGATE_WORK std::string sentence(const LearnedLine& line) { return detail::sentence_of(line); }

LEVIGATE_WORK std::string sentence(const Evidence& evidence) {
  return detail::sentence_of(evidence);
}

LEVIGATE_WORK std::string sentence(const WayBack& way) { return detail::sentence_of(way); }

LEVIGATE_WORK std::string sentence(Remedy remedy) { return detail::sentence_of(remedy); }

LEVIGATE_WORK std::string sentence(const AgedHardness& hardness) {
  return detail::sentence_of(hardness);
}

LEVIGATE_WORK std::string sentence(const CureState& cure) { return detail::sentence_of(cure); }

LEVIGATE_WORK std::string sentence(const LocalWork& work) { return detail::sentence_of(work); }

LEVIGATE_WORK std::string sentence(const WheelFinding& finding) {
  return detail::sentence_of(finding);
}

LEVIGATE_WORK std::string sentence(const Why& why) { return detail::sentence_of(why); }

}  // namespace levigate
