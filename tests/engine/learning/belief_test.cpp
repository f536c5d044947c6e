// The posterior of one number against closed forms and against Boost.Math's quadrature of the same density.
#include "engine/learning/belief.hpp"

#include <gmock/gmock.h>

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>
#include <random>

namespace floatwright::testing {
namespace {

using boost::math::cdf;
using boost::math::pdf;
const boost::math::normal kUnit{};
constexpr double kPrior = 0.15;

struct Moments {
  double mean, sd;
};

// Adaptive Gauss-Kronrod over prior times likelihood, as the density is defined in belief.hpp.
Moments integrated(const std::vector<SeenValue>& values, const std::vector<SeenBound>& bounds) {
  const auto density = [&](double x) {
    double p = pdf(boost::math::normal(0.0, kPrior), x);
    for (const auto& v : values) p *= pdf(boost::math::normal(x, v.sd), v.x);
    for (const auto& b : bounds) p *= cdf(kUnit, (b.below ? b.at - x : x - b.at) / b.sd);
    return p;
  };
  const auto moment = [&](auto f) {
    return boost::math::quadrature::gauss_kronrod<double, 61>::integrate([&](double x) { return f(x) * density(x); }, -2.0, 2.0, 12, 1e-12);
  };
  const double all = moment([](double) { return 1.0; });
  const double mean = moment([](double x) { return x; }) / all;
  return {mean, std::sqrt(moment([&](double x) { return (x - mean) * (x - mean); }) / all)};
}

TEST(Belief, IsThePriorWhereNothingWasMet) {
  const Belief none = belief(kPrior, {}, {});
  EXPECT_EQ(none.mean, 0.0);
  EXPECT_DOUBLE_EQ(none.sd, kPrior);
}

// Conjugate update of a normal mean with known variance (Gelman et al., Bayesian Data Analysis, 3rd ed., eq. 2.12; from
// memory): precisions add, the mean is their weighted mean.
TEST(Belief, OfSoundingsIsTheConjugateOne) {
  const Belief three = belief(kPrior, {{0.10, 0.1}, {0.14, 0.1}, {0.06, 0.2}}, {});
  const double precision = 1 / 0.0225 + 100 + 100 + 25;
  EXPECT_NEAR(three.mean, (10.0 + 14.0 + 1.5) / precision, 1e-15);
  EXPECT_NEAR(three.sd, 1 / std::sqrt(precision), 1e-15);
}

// Mean of a normal after one probit factor, closed form (Rasmussen & Williams, Gaussian Processes for Machine Learning,
// eq. 3.85; from memory): v / sqrt(v + s^2) * phi(z)/Phi(z) from the prior's mean, z = -+ at / sqrt(v + s^2).
TEST(Belief, OfOneTouchHasTheClosedFormsMean) {
  for (const double at : {-0.3, -0.05, 0.0, 0.2, 0.8})
    for (const bool below : {true, false}) {
      const double scale = std::sqrt(kPrior * kPrior + 0.25 * 0.25), z = (below ? at : -at) / scale;
      const double shift = kPrior * kPrior / scale * pdf(kUnit, z) / cdf(kUnit, z);
      EXPECT_NEAR(belief(kPrior, {}, {{at, 0.25, below}}).mean, below ? -shift : shift, 1e-12) << at;
    }
}

TEST(Belief, OfManyTouchesAndSoundingsHasTheIntegralsMean) {
  std::mt19937 random{7};
  std::normal_distribution<double> unit;
  for (int trial = 0; trial < 40; ++trial) {
    std::vector<SeenValue> values;
    std::vector<SeenBound> bounds;
    for (int i = 0; i < trial % 3; ++i) values.push_back({0.2 * unit(random), i % 2 == 0 ? 0.1 : 0.2});
    for (int i = 0; i <= trial % 5; ++i) bounds.push_back({0.3 * unit(random), i % 2 == 0 ? 0.25 : 0.1, (trial + i) % 2 == 0});
    EXPECT_NEAR(belief(kPrior, values, bounds).mean, integrated(values, bounds).mean, 1e-9);
  }
}

// What touches tell is counted in the mean: over truths drawn from the prior, and touches as those truths make them, the
// scatter told is the exact posterior's within a tenth.
TEST(Belief, OfTouchesHasTheIntegralsScatterInTheMean) {
  std::mt19937 random{11};
  std::normal_distribution<double> unit;
  double told = 0.0, exact = 0.0;
  for (int trial = 0; trial < 60; ++trial) {
    const double truth = kPrior * unit(random);
    std::vector<SeenBound> bounds;
    for (int i = 0; i < 6; ++i) {
      const double at = 0.2 * unit(random);
      bounds.push_back({at, 0.25, truth + 0.25 * unit(random) < at});
    }
    told += belief(kPrior, {}, bounds).sd;
    exact += integrated({}, bounds).sd;
  }
  EXPECT_NEAR(told / exact, 1.0, 0.1);
}

TEST(Belief, IsTheSameToTheLastBitInAnyOrder) {
  std::mt19937 random{3};
  std::vector<SeenValue> values{{0.1, 0.1}, {-0.03, 0.2}, {0.2, 0.1}, {0.1, 0.2}};
  std::vector<SeenBound> bounds{{0.1, 0.25, true}, {0.0, 0.3, false}, {0.1, 0.25, false}, {-0.2, 0.1, false}};
  const Belief first = belief(kPrior, values, bounds);
  for (int i = 0; i < 20; ++i) {
    std::shuffle(values.begin(), values.end(), random);
    std::shuffle(bounds.begin(), bounds.end(), random);
    const Belief again = belief(kPrior, values, bounds);
    EXPECT_EQ(again.mean, first.mean);
    EXPECT_EQ(again.sd, first.sd);
  }
}

TEST(Belief, NeverWidensByOneMoreThingMet) {
  std::mt19937 random{5};
  std::normal_distribution<double> unit;
  std::vector<SeenValue> values;
  std::vector<SeenBound> bounds;
  double sd = kPrior;
  for (int i = 0; i < 60; ++i) {  // anything: contradicting and absurd ones too
    const double x = (i % 7 == 0 ? 3.0 : 0.4) * unit(random);
    if (i % 3 == 0) values.push_back({x, 0.1});
    if (i % 3 != 0) bounds.push_back({x, 0.25, i % 2 == 0});
    const Belief now = belief(kPrior, values, bounds);
    EXPECT_LE(now.sd, sd);
    EXPECT_TRUE(std::isfinite(now.mean));
    sd = now.sd;
  }
}

TEST(Belief, OfATouchGoesToTheSideOfTheTouch) {
  EXPECT_LT(belief(kPrior, {}, {{-0.1, 0.25, true}}).mean, 0.0);
  EXPECT_GT(belief(kPrior, {}, {{0.1, 0.25, false}}).mean, 0.0);
  EXPECT_LT(std::abs(belief(kPrior, {}, {{1.5, 0.25, true}}).mean), 1e-4);  // a fly that must touch tells nothing
}

}  // namespace
}  // namespace floatwright::testing
