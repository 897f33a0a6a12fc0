// The formulas of the library by the name of their function, each with its basis and citation.
// The header that holds the function says more: units, domain, accuracy.
#pragma once

#include <optional>
#include <string_view>

#include "levigate/source.hpp"

namespace levigate::inline v0 {

/// One formula.
struct Formula {
  std::string_view function;  ///< name in C++ and Python
  std::string_view formula;
  Source source;
};

inline constexpr Formula formulas[] = {
    {"log_spread",
     "1/2 [ln(ds3/ds50)/1.880794 + ln(ds50/dsF)/z]",
     {Basis::computed, "log-normal sizes through the limits of a grade"}},
    {"extrapolated_size",
     "d(N) = d_f (N/N_f)^b",
     {Basis::extrapolated, "power law through the six finest printed grades"}},
    {"contact",
     "n integral of A delta(h-z)^2 N(h; 0, s) dh = P",
     {Basis::published_table,
      "Gaussian heights and force balance: Xi and Zhou, Int. J. Mach. Tools Manuf. 45:365-372 "
      "(2005); "
      "cones with their front half in contact, from memory: Rabinowicz, Friction and Wear of "
      "Materials; "
      "a spring under each grain: assumption"}},
    {"scratch_depth_um",
     "quantile of the depth of the tips in contact",
     {Basis::assumption, "the quantile is a rule"}},
    {"size_effect",
     "min(1, (d/100 um)^0.5)",
     {Basis::published_table,
      "Sydor et al., Appl. Sci. 11(6):2860 (2021), exponents 0.41 and 0.65; saturation from "
      "memory"}},
    {"removal_rate_um_per_m",
     "K eta(d) P/H",
     {Basis::from_memory,
      "Archard, Preston; K of two-body wear: Rabinowicz, Friction and Wear of Materials"}},
    {"clogging_share",
     "floor + (1 - floor)(1 - e^-x)/x",
     {Basis::published_table,
      "decay to a floor on belts: Ockajova et al., BioResources 11(2):5242-5254 (2016)"}},
    {"levelling_removal_um",
     "max(0, a0 - ac) + ac ln(min(a0, ac)/af), ac = lambda P/(pi E)",
     {Basis::from_memory,
      "full contact of a wavy surface: Westergaard; Johnson, Contact Mechanics"}},
    {"gloss_gu",
     "100 R(n)/R(1.567) exp(-(4 pi Rq cos i/lambda)^2)",
     {Basis::standard,
      "ISO 2813:1997, glass of 1.567 as 100 GU; loss from memory: Bennett and Porteus, J. Opt. "
      "Soc. Am. "
      "51:123 (1961)"}},
    {"mean_reading_gu",
     "gloss of the smooth film times the share that the receptor takes in, mean of both lays",
     {Basis::computed,
      "scalar Kirchhoff theory on the law of V grooves, from memory: Beckmann and "
      "Spizzichino (1963)"}},
    {"wear_coefficient",
     "(2/pi) f tan(flank)",
     {Basis::from_memory, "cones that cut: Rabinowicz, Friction and Wear of Materials"}},
    {"cut_through",
     "1 - (1 - p)^N, p = Phi((D + reserve - mean)/sqrt(sd^2 + (cv D)^2)), its mean over the errors "
     "that all spots share",
     {Basis::assumption, "normal film and normal depth, independent spots of 1 cm2"}},
    {"depth_budget_um",
     "cut_through = limit, solved for D",
     {Basis::computed, "that of cut_through"}},
    {"simulate",
     "inputs over their bands with the value as median, film and peel by their errors; each cm2: "
     "N(mean, sd) - D N(1, cv)",
     {Basis::assumption, "independent inputs, a band as the whole range; film as cut_through"}},
    {"exact_share",
     "P(X >= k | low) = P(X <= k | high) = (1 - confidence)/2",
     {Basis::from_memory, "Clopper and Pearson, Biometrika 26:404-413 (1934)"}},
    {"philox4x32",
     "ten rounds of two 32-bit products mixed with a key",
     {Basis::from_memory,
      "Salmon, Moraes, Dror and Shaw, Parallel random numbers: as easy as 1, 2, 3, SC 2011"}},
    {"dry_film_um",
     "wet film x volume solids / (1 + thinner)",
     {Basis::common_practice, "coating trade, volume solids"}},
    {"rounds",
     "coats within the recoat window fuse; dry film of each, less its shrink",
     {Basis::common_practice, "coating trade; conservation of volume"}},
    {"edge_share",
     "1 - 0.5/(1 + r/r0), 0.8 at 2 mm",
     {Basis::common_practice,
      "half on a sharp edge, four fifths on 2 mm; the curve is an assumption"}},
    {"hardness_at",
     "linear in the logarithm of the age, between given points",
     {Basis::assumption, "the points are the user's"}},
    {"take_down",
     "minutes = shave + mask + V/(rate area)/speed/duty, V = 2/3 h w l",
     {Basis::common_practice, "Archard's law on the volume; parabolic section"}},
    {"sanded_flat",
     "moments on a block that tips over a defect",
     {Basis::assumption,
      "rigid block, flat punch: Johnson, Contact Mechanics (1985), from memory"}},
    {"wheel_pass",
     "dwell = contact/feed; film = rate speed dwell",
     {Basis::computed, "geometry; heat as dwell_limit_s"}},
    {"edge_load",
     "pressure on an edge over that on the flat",
     {Basis::assumption, "the lesser of Hertz's line contact and a wedge"}},
    {"strokes_within",
     "floor(depth/(rate min(stroke, pad)))",
     {Basis::from_memory, "Preston's law"}},
    {"cleaning",
     "clogged share = max(0, 1 - fade ln 2/interval)",
     {Basis::assumption, "clogged where half of what fades has faded"}},
    {"compound_rate_um_per_m",
     "wear_share K eta(d) P/H x clogging_share",
     {Basis::from_memory,
      "loose grain wears a tenth of what held grain does: Hutchings, Tribology (1992)"}},
    {"with_diameter",
     "contact' = contact sqrt(D'/D)",
     {Basis::from_memory, "Hertz's line contact; that a buff obeys it: assumption"}},
    {"temperature_rise_k",
     "2q/e sqrt(t/pi), q = share mu p v",
     {Basis::from_memory,
      "half-space under a constant flux: Carslaw and Jaeger, Conduction of Heat in Solids"}},
    {"learn",
     "ln(minutes/computed) = -ln duty_factor - ln rate_factor + noise, by Bayes' rule",
     {Basis::from_memory,
      "normal-inverse-gamma regression: Gelman et al., Bayesian Data Analysis; spreads of before "
      "from the bands of the profiles, noise of before: assumption"}},
    {"surface_speed_m_s", "pi D n", {Basis::computed, "geometry"}},
    {"pad_speed_m_s",
     "mean of |a + b r/R e^(i phi)| over disc and phi; a = pi orbit n, b = pi pad n'",
     {Basis::computed, "geometry; Gauss's series"}},
    {"dwell_limit_s",
     "pi (e dT/2q)^2, q = share mu p v",
     {Basis::from_memory,
      "half-space under a constant flux: Carslaw and Jaeger, Conduction of Heat in Solids"}},
};

/// The formula of that function, or nothing.
constexpr std::optional<Formula> formula_named(std::string_view function) noexcept {
  for (const Formula& formula : formulas) {
    if (formula.function == function) return formula;
  }
  return std::nullopt;
}

}  // namespace levigate
