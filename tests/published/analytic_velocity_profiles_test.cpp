// Integrals of the two usual laws, exact: power law u = U (1+1/m) (z/h)^(1/m) and log law u = (u*/0.41) ln(30 z/ks)
// with its zero height left out of the integral. Computed from the formulas, five figures.
#include <gtest/gtest.h>

#include <cmath>

#include "engine/water/bed_profile.hpp"

namespace floatwright {
namespace {

struct Expected {
  double parameter;  // m, or h/ks
  double mean_over_surface;
  double at_02, at_06, at_08;  // point over mean at 0.2, 0.6, 0.8 of the depth from the surface
};

Profile power(double m) { return {Profile::Law::Power, 1.0 / m, {}}; }
Profile log_law(double depth_over_ks) { return {Profile::Law::Log, 0.0, metres(1.0 / depth_over_ks)}; }

void hold(const Profile& profile, const Expected& e) {
  const Length depth = metres(1.0);
  const double mean = mean_over_surface(profile, depth);
  const auto at = [&](double depth_share) { return share_of_surface(profile, depth, 1.0 - depth_share) / mean; };
  EXPECT_NEAR(mean, e.mean_over_surface, 1e-5) << e.parameter;
  EXPECT_NEAR(at(0.2), e.at_02, 1e-4) << e.parameter;
  EXPECT_NEAR(at(0.6), e.at_06, 1e-4) << e.parameter;
  EXPECT_NEAR(at(0.8), e.at_08, 1e-4) << e.parameter;
}

TEST(AnalyticProfiles, PowerLaw) {
  hold(power(6.0), {6.0, 0.857143, 1.1241, 1.0014, 0.8922});
  hold(power(7.0), {7.0, 0.875, 1.1070, 1.0026, 0.9081});
}

TEST(AnalyticProfiles, PowerLawMeetsItsMeanWhereTheFormulaSays) {
  EXPECT_NEAR(share_of_surface(power(6.0), metres(1.0), 0.396569), 6.0 / 7.0, 1e-6);
  EXPECT_NEAR(share_of_surface(power(7.0), metres(1.0), 0.392696), 7.0 / 8.0, 1e-6);
}

TEST(AnalyticProfiles, LogLaw) {
  hold(log_law(5.0), {5.0, 0.80042, 1.1937, 1.0209, 0.8480});
  hold(log_law(10.0), {10.0, 0.82468, 1.1652, 1.0178, 0.8704});
  hold(log_law(20.0), {20.0, 0.84368, 1.1439, 1.0155, 0.8871});
  hold(log_law(50.0), {50.0, 0.86326, 1.1231, 1.0133, 0.9035});
}

// The power law of the log law's mean, which is how a bed is reckoned with, at the same table's rows of the log law: the
// greatest difference at 0.6 of the depth, where the usual reading of the mean is taken.
TEST(AnalyticProfiles, PowerLawOverABedIsNearTheLogLaw) {
  const auto hold_near = [](double depth_over_ks, double at_02, double at_06, double at_08) {
    const Length depth = metres(depth_over_ks * 3.5 * 0.05);  // gravel: ks 3.5 D84, D84 0.05 m
    const Profile profile = bed_profile(Bed::Gravel, depth);
    const double mean = mean_over_surface(profile, depth);
    EXPECT_NEAR(mean, mean_over_surface(log_law(depth_over_ks), metres(1.0)), 1e-12);
    EXPECT_NEAR(share_of_surface(profile, depth, 0.8) / mean, at_02, 0.013) << depth_over_ks;
    EXPECT_NEAR(share_of_surface(profile, depth, 0.4) / mean, at_06, 0.028) << depth_over_ks;
    EXPECT_NEAR(share_of_surface(profile, depth, 0.2) / mean, at_08, 0.013) << depth_over_ks;
  };
  hold_near(5.0, 1.1937, 1.0209, 0.8480);
  hold_near(10.0, 1.1652, 1.0178, 0.8704);
  hold_near(20.0, 1.1439, 1.0155, 0.8871);
}

TEST(AnalyticProfiles, LogLawMeetsItsMeanAtOneOverE) {
  EXPECT_NEAR(share_of_surface(log_law(20.0), metres(1.0), std::exp(-1.0)),
              mean_over_surface(log_law(20.0), metres(1.0)), 1e-12);
}

}  // namespace
}  // namespace floatwright
