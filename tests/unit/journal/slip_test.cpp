// Readings of a film that are most likely a slip of the unit are refused before they are written.
#include "levigate/journal/slip.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "unit/journal/learn_workshop.hpp"

namespace slip_test {
namespace {

using namespace learn_workshop;
using testing::AllOf;
using testing::HasSubstr;

TEST(SlipOfTheUnit, IsRefusedWithTheValueTheFilmAndTheUnit) {
  Job job = clock_case();  // 120 um on the top
  for (const double reading_um : {0.11, 11.9, 181.0, 4700.0}) {
    EXPECT_THAT(
        [&] {
          require_likely_readings(film_read("top", {118, reading_um}), job);
        },
        testing::ThrowsMessage<BadInput>(AllOf(HasSubstr(detail::number_text(reading_um) + " um"),
                                               HasSubstr("120 um"), HasSubstr("zone 'top'"),
                                               HasSubstr("unit"))))
        << reading_um;
  }
  EXPECT_NO_THROW(require_likely_readings(film_read("top", {12, 118, 180}), job));
  job.zones[0].below_um = 80;  // a gauge reads all rounds
  EXPECT_NO_THROW(require_likely_readings(film_read("top", {300}), job));
  EXPECT_THROW(require_likely_readings(film_read("top", {19}), job), BadInput);
  job.zones[0].film.reset();
  EXPECT_NO_THROW(require_likely_readings(film_read("top", {4700}), job)) << "no film to compare";
  EXPECT_NO_THROW(require_likely_readings(width_read("P400", 900, "door"), job));
}

}  // namespace
}  // namespace slip_test
