// Numbers without any file: what a label means elsewhere, how deep it scratches, what levelling costs,
// how the surface then shines. Standard library only.
#include <iostream>

#include "levigate/levigate.hpp"
#include "levigate/text/sentences.hpp"

int main() {
  using namespace levigate;

  const Grade p1000 = grade("P1000");
  std::cout << sentence(convert(p1000, System::jis)) << "\n";

  const Block block = block_named("hard block");
  const Backing paper = backing_named("latex paper");
  const Coating urethane = coating_named("two-part urethane");
  const Contact touch = contact({.size_um = p1000.median_um,
                                 .log_spread = log_spread(p1000),
                                 .tip_spread = paper.tip_spread,
                                 .modulus_mpa = paper.modulus_mpa,
                                 .pressure_kpa = block.pressure_kpa(),
                                 .hardness_mpa = urethane.hardness_mpa});
  std::cout << "P1000 on " << urethane.name << ": " << touch.active_per_mm2()
            << " grains cut in a mm2, 99 % of the scratches are shallower than "
            << scratch_depth_um(touch, 0.99) << " um\n";

  for (const char* face : {"hard block", "foam pad"}) {
    const Block tool = block_named(face);
    std::cout << "Levelling 12 um of orange peel with a " << face << " takes "
              << levelling_removal_um({.peel_um = 12.0,
                                       .wavelength_mm = 3.0,
                                       .modulus_mpa = tool.modulus_mpa,
                                       .pressure_kpa = tool.pressure_kpa(),
                                       .residual_um = 0.4})
              << " um of film\n";
  }
  std::cout << "Gloss after P1000: at least "
            << gloss_gu(urethane.refractive_index, 60.0, rq_um(touch)) << " GU at 60 degrees\n";
}
