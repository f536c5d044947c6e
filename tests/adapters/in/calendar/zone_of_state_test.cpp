// Held against zone.tab of the system's zone database (package tzdata), whose comments say which parts of which states
// a zone is for: "Mountain - ID (south), OR (east)", "MST - AZ (except Navajo)", "Eastern - MI (most areas)", "Central
// - MI (Wisconsin border)", "Alaska - western Aleutians". Zones of the states: from memory.
#include "adapters/in/calendar/zone_of_state.hpp"

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

namespace floatwright {
namespace {

// What zone.tab says of a zone: its country and its comment.
std::string told_of(const std::string& zone) {
  std::ifstream table("/usr/share/zoneinfo/zone.tab");
  std::string line, country, place, name, comment;
  while (std::getline(table, line)) {
    std::istringstream fields(line);
    comment.clear();
    std::getline(fields, country, '\t') && std::getline(fields, place, '\t') && std::getline(fields, name, '\t') &&
        std::getline(fields, comment);
    if (name == zone) return country + ": " + comment;
  }
  return "not there";
}

struct Place {
  std::string state, abbreviation;
  bool daylight_saving;
  std::string told;
};

class ZoneOfState : public testing::TestWithParam<Place> {};

TEST_P(ZoneOfState, IsTheOneOfTheTable) {
  const auto& [state, abbreviation, daylight_saving, told] = GetParam();
  const auto zone = zone_of_state(state, abbreviation, daylight_saving);
  ASSERT_TRUE(zone.has_value()) << state;
  EXPECT_EQ(told_of(zone->name).find(told), 0u) << zone->name << " is \"" << told_of(zone->name) << "\"";
  EXPECT_TRUE(zone->by_both);
}

INSTANTIATE_TEST_SUITE_P(All, ZoneOfState,
                         testing::Values(Place{"Montana", "MST", true, "US: Mountain (most areas)"},
                                         Place{"Montana", "MST", false, "US: Mountain (most areas)"},
                                         Place{"Idaho", "MST", true, "US: Mountain - ID (south)"},
                                         Place{"Idaho", "PST", true, "US: Pacific"},
                                         Place{"Oregon", "MST", true, "US: Mountain - ID (south), OR (east)"},
                                         Place{"Arizona", "MST", false, "US: MST - AZ (except Navajo)"},
                                         Place{"Arizona", "MST", true, "US: Mountain (most areas)"},
                                         Place{"Michigan", "EST", true, "US: Eastern - MI (most areas)"},
                                         Place{"Michigan", "CST", true, "US: Central - MI (Wisconsin border)"},
                                         Place{"Indiana", "EST", true, "US: Eastern - IN (most areas)"},
                                         Place{"Florida", "CST", true, "US: Central (most areas)"},
                                         Place{"Tennessee", "EST", true, "US: Eastern (most areas)"},
                                         Place{"Alaska", "AKST", true, "US: Alaska (most areas)"},
                                         Place{"Alaska", "HST", true, "US: Alaska - western Aleutians"},
                                         Place{"Hawaii", "HST", false, "US: Hawaii"},
                                         Place{"Puerto Rico", "AST", false, "PR: "}));

TEST(ZoneOfAState, IsDoubtfulWithoutAnAbbreviationThatFits) {
  ASSERT_TRUE(zone_of_state("Montana", "", std::nullopt).has_value());
  EXPECT_FALSE(zone_of_state("Montana", "CST", true)->by_both);
  EXPECT_FALSE(zone_of_state("Idaho", "", std::nullopt).has_value());
  EXPECT_FALSE(zone_of_state("Atlantis", "MST", true).has_value());
}

}  // namespace
}  // namespace floatwright
