#include "engine/wording/left_ashore.hpp"

#include <gmock/gmock.h>

#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;

std::string sentences(const Page& page, const std::string& label) {
  std::string all;
  for (const Block& block : page.blocks)
    if (const auto* lines = std::get_if<Lines>(&block); lines != nullptr && lines->label == label)
      for (const std::string& line : lines->lines) all += line + "\n";
  return all;
}

DayInputs known_people() {
  DayInputs in = sample_inputs();
  in.settings.phone = "555-0101";
  in.settings.boat = "green drift boat";
  in.settings.ashore_contact = "Robin";
  in.settings.ashore_phone = "555-0102";
  return in;
}

// Off by 16:00, 35 min of shuttle and the hour of grace: 17:35, told no earlier than that.
TEST(LeftAshore, SaysWhomToCallAndWhen) {
  const std::string call = sentences(left_ashore(sample_plan(), known_people()), "CALL");
  EXPECT_THAT(call, HasSubstr("If not heard by 17:40"));
  EXPECT_THAT(call, HasSubstr("Robin, phone 555-0102"));
}

TEST(LeftAshore, SaysWhoIsAboardAndWhere) {
  const Page page = left_ashore(sample_plan(), known_people());
  EXPECT_THAT(sentences(page, "ABOARD"), HasSubstr("Wren, phone 555-0101\nguest"));
  EXPECT_THAT(sentences(page, "BOAT"), HasSubstr("green drift boat"));
  EXPECT_THAT(sentences(page, "PUT IN"), HasSubstr("Mill Bridge, launch 07:30"));
  EXPECT_THAT(sentences(page, "TAKE OUT"), HasSubstr("Old Ferry, off by 16:00"));
  EXPECT_THAT(sentences(page, "HELP"), HasSubstr("112"));
}

TEST(LeftAshore, SaysTheWaterAtLaunch) {
  const std::string water = sentences(left_ashore(sample_plan(), known_people()), "WATER");
  EXPECT_THAT(water, HasSubstr("1,850 cfs"));
  EXPECT_THAT(water, HasSubstr("47 F"));
}

TEST(LeftAshore, LeavesRoomForWhatWasNotTyped) {
  EXPECT_THAT(sentences(left_ashore(sample_plan(), sample_inputs()), "CALL"), HasSubstr("call ____"));
}

TEST(LeftAshore, PromisesNobodyOnTheWaterWithoutAPlan) {
  DayPlan plan = sample_plan();
  plan.nothing = true;
  const Page page = left_ashore(plan, known_people());
  EXPECT_THAT(sentences(page, ""), HasSubstr("No float is planned"));
  EXPECT_EQ(sentences(page, "CALL"), "");
}

}  // namespace
}  // namespace floatwright::testing
