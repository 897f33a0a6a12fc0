// What results say, as sentences made of their facts. It needs the standard library alone, so that JSON may hold them too.
#pragma once

#include <string>
#include <vector>

#include "levigate/version.hpp"

namespace levigate::inline v0 {

struct AgedHardness;
struct Agreement;
struct Bridge;
struct CureState;
struct Equivalent;
struct Evidence;
struct Finding;
struct LearnedChange;
struct LearnedLine;
struct LocalWork;
struct Outlier;
struct Unmatched;
struct WayBack;
struct WheelFinding;
struct Why;
enum class Remedy;

/// "P800 or CAMI 400": the ways to bridge.
std::string bridges_text(const std::vector<Bridge>& ways);

/// How near the nearest grade of a system is to the given one.
std::string sentence(const Equivalent& found);

/// What speaks against a film's coats or readings; empty where they agree.
std::string sentence(const Agreement& agreement);

/// What a finding says, with names, sizes and limits. It ends without a full stop.
std::string sentence(const Finding& finding);
std::string sentence(const WheelFinding& finding);

/// Why there is no plan, all of it.
std::string sentence(const Why& why);

/// How a plan differs from the one without what was learned, and why. It ends without a full stop.
std::string sentence(const LearnedChange& change);

/// How a defect is taken down, and what sanding it out flat would take.
std::string sentence(const LocalWork& work);

/// How old a coat is and what that means; empty where it is hard.
std::string sentence(const CureState& cure);

/// Where an age is outside the points of a cure; empty between them.
std::string sentence(const AgedHardness& hardness);

/// Why there is no way back; empty where there is one.
std::string sentence(const WayBack& way);
std::string sentence(Remedy remedy);

/// What a piece of evidence says.
std::string sentence(const Evidence& evidence);

/// Why an entry of a journal teaches nothing.
std::string sentence(const Unmatched& unmatched);

/// What was set aside, and how far off it is.
std::string sentence(const Outlier& outlier);

/// What a number of a shop says.
std::string sentence(const LearnedLine& line);

}  // namespace levigate

#ifndef LEVIGATE_COMPILED
#include "levigate/text/work/sentences.hpp"
#endif
