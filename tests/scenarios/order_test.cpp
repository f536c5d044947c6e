// The demo with the keys and lists of its files in another order: the pages must be the same to the byte.
#include <gmock/gmock.h>

#include <algorithm>
#include <nlohmann/json.hpp>
#include <random>
#include <regex>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using OrderedJson = nlohmann::ordered_json;

// Two of a kind at one place, day or hour, beside those of the demo.
void add_likes(const DemoCopy& demo) {
  demo.replace("river.json", R"("hazards": [)", R"("hazards": [
    { "what": "The Cable", "mile": 30.4, "how": "STOP ABOVE. PORTAGE LEFT.", "must_portage": true, "portage_min": 20 },)");
  demo.replace("river.json", R"("closures": [)", R"("closures": [
    { "from_mile": 32.0, "to_mile": 31.5, "from_hour": "20:00", "to_hour": "24:00", "why": "warm evenings" },
    { "from_mile": 32.0, "to_mile": 31.5, "why": "works at the bank" },)");
  demo.replace("river.json", R"("hatches": [)", R"("hatches": [
    { "name": "midges", "from_date": "04-01", "to_date": "05-31", "from_hour": "12:00", "to_hour": "15:30" },)");
}

// Lists that rise or fall, which the program refuses in another order.
bool is_in_order_of_itself(const std::string& key) { return key == "profile" || key == "share_by_flow"; }

OrderedJson in_another_order(const OrderedJson& json, std::mt19937& random, const std::string& key = {}) {
  if (json.is_array()) {
    std::vector<OrderedJson> items;
    for (const OrderedJson& item : json) items.push_back(in_another_order(item, random));
    if (!is_in_order_of_itself(key)) std::ranges::shuffle(items, random);
    return items;
  }
  if (!json.is_object()) return json;
  std::vector<std::pair<std::string, OrderedJson>> entries;
  for (const auto& [name, value] : json.items()) entries.emplace_back(name, in_another_order(value, random, name));
  std::ranges::shuffle(entries, random);
  OrderedJson turned = OrderedJson::object();
  for (auto& [name, value] : entries) turned[name] = std::move(value);
  return turned;
}

class OtherOrder : public ::testing::TestWithParam<unsigned> {
 protected:
  void turn(const DemoCopy& demo) {
    std::mt19937 random(GetParam());
    for (const char* name : {"river.json", "settings.json", "tackle.json"}) {
      const auto file = demo.config() / name;
      const std::string before = text_of(file);
      const OrderedJson typed = OrderedJson::parse(before, nullptr, true, true);
      write_text(file, in_another_order(typed, random).dump(1));
      ASSERT_NE(text_of(file), before);
    }
  }
};

// What is printed, without the folder in which the copy lies.
std::string printed(const DemoCopy& demo, const std::string& as) {
  const Ran ran = demo.plan({"--as", as});
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  return std::regex_replace(ran.out, std::regex(demo.folder().string()), "COPY");
}

TEST_P(OtherOrder, GivesTheSamePages) {
  const DemoCopy as_typed, turned;
  add_likes(as_typed);
  add_likes(turned);
  turn(turned);
  for (const char* as : {"plan", "json"}) {
    const std::string page = printed(as_typed, as);
    for (const char* what : {"The Cable", "The Ledge", "warm evenings", "works at the bank", "midges", "olive mayflies"})
      EXPECT_THAT(page, ::testing::HasSubstr(what));
    EXPECT_EQ(printed(turned, as), page) << as;
  }
}

INSTANTIATE_TEST_SUITE_P(Seeds, OtherOrder, ::testing::Values(1u, 2u, 3u));

}  // namespace
}  // namespace floatwright::testing
