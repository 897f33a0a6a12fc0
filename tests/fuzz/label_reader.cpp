// Any bytes as a label: read_label, grade and sized_grade return or throw an Error of the library,
// and what they return reads back as itself.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "levigate/grade/label.hpp"
#include "levigate/grade/sized.hpp"

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  try {
    const levigate::LabelReading read = levigate::read_label(text);
    if (read.candidates.empty()) std::abort();
    for (const levigate::Grade& candidate : read.candidates) {
      if (levigate::grade(candidate.label) != candidate) std::abort();
    }
  } catch (const levigate::Error&) {
  }
  for (const levigate::System system : levigate::all_systems) {
    try {
      levigate::grade(text, system);
    } catch (const levigate::Error&) {
    }
  }
  try {
    if (levigate::sized_grade(text, 5.0).median_um != 5.0) std::abort();
  } catch (const levigate::BadInput&) {
  }
  return 0;
}
