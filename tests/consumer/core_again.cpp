// The second translation unit of core.cpp; every_again.cpp takes in all headers once more.
#include <levigate/surface/removal.hpp>

double rate_seen_from_another_file() {
  return levigate::removal_rate_um_per_m(0.02, 18.3, 1.7, 150.0);
}
