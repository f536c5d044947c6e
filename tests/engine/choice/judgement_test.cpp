// config/judgement.json and the struct are one: the same keys, the same numbers, each with its sentence.
#include <gmock/gmock.h>

#include <array>
#include <cstring>
#include <fstream>
#include <limits>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

#include "engine/choice/judgement_keys.hpp"
#include "engine/choice/limits.hpp"

namespace floatwright {
namespace {

std::string shipped_text() {
  const std::ifstream file(FLOATWRIGHT_SOURCE_DIR "/config/judgement.json");
  std::ostringstream text;
  text << file.rdbuf();
  return text.str();
}

nlohmann::json shipped() { return nlohmann::json::parse(shipped_text(), nullptr, true, true); }

TEST(Judgement, IsInTheShippedFileNumberByNumber) {
  const nlohmann::json file = shipped();
  Judgement judgement;
  for (const JudgementKey& key : judgement_keys(judgement)) {
    const nlohmann::json::json_pointer at(key.pointer);
    ASSERT_TRUE(file.contains(at)) << key.pointer;
    EXPECT_EQ(file.at(at).get<double>(), *key.value) << key.pointer;
  }
}

TEST(Judgement, HasNothingElseInTheShippedFile) {
  Judgement judgement;
  std::set<std::string> known;
  for (const JudgementKey& key : judgement_keys(judgement))
    EXPECT_TRUE(known.insert(key.pointer).second) << key.pointer;
  std::size_t numbers = 0;
  const nlohmann::json flat = shipped().flatten();
  for (const auto& [pointer, value] : flat.items()) {
    EXPECT_TRUE(known.contains(pointer)) << pointer;
    ++numbers;
  }
  EXPECT_EQ(numbers, known.size());
}

TEST(Judgement, SaysEverySentenceInTheShippedFile) {
  const std::string text = shipped_text();
  Judgement judgement;
  for (const JudgementKey& key : judgement_keys(judgement)) {
    EXPECT_NE(text.find("// " + key.sentence), std::string::npos) << key.pointer << ": " << key.sentence;
  }
}

// A member that the keys forget cannot be overridden: every double of the struct is a key.
TEST(Judgement, HasAKeyForEveryNumberOfTheStruct) {
  Judgement judgement;
  EXPECT_EQ(judgement_keys(judgement).size() * sizeof(double), sizeof(Judgement));
}

TEST(Judgement, IsWithinItsOwnLimits) { EXPECT_TRUE(judgement_problems(Judgement{}).empty()); }

TEST(Judgement, IsWrittenThroughItsKeys) {
  Judgement judgement;
  for (const JudgementKey& key : judgement_keys(judgement)) {
    if (key.pointer == "/snag/rate_per_s/wood") *key.value = 0.4;
  }
  EXPECT_EQ(judgement.snag.rate_per_s.wood, 0.4);
}

// Every number that limits a drift reaches the casts: change all keys, and all limits differ.
TEST(Judgement, GivesTheCastsEveryLimitOfADrift) {
  Judgement judgement;
  for (const JudgementKey& key : judgement_keys(judgement)) *key.value += 0.5;
  const DriftLimits given = drift_limits(judgement), shipped = drift_limits(Judgement{});
  const auto numbers = [](const DriftLimits& limits) {
    std::array<double, sizeof(DriftLimits) / sizeof(double)> result;
    std::memcpy(result.data(), &limits, sizeof limits);
    return result;
  };
  EXPECT_EQ(numbers(shipped), numbers(DriftLimits{}));
  for (std::size_t i = 0; i < numbers(given).size(); ++i) EXPECT_NE(numbers(given)[i], numbers(shipped)[i]) << i;
}

TEST(Judgement, NamesANumberOutsideItsLimits) {
  Judgement judgement;
  judgement.zone.hold_height_m = -1.0;
  const Problems problems = judgement_problems(judgement);
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_EQ(problems[0].pointer, "/zone/hold_height_m");
  EXPECT_EQ(problems[0].found, "-1");
}

TEST(Judgement, NamesATableThatDoesNotRise) {
  Judgement judgement;
  judgement.suits.dry.by_temperature[2].at = 6.0;  // after 7
  const Problems problems = judgement_problems(judgement);
  ASSERT_EQ(problems.size(), 1u);
  EXPECT_EQ(problems[0].pointer, "/suits/dry/by_temperature/2/at_c");
}

TEST(Judgement, NamesWhatIsNotANumber) {
  Judgement judgement;
  judgement.times.cast_s = std::numeric_limits<double>::quiet_NaN();
  EXPECT_EQ(judgement_problems(judgement).size(), 1u);
}

}  // namespace
}  // namespace floatwright
