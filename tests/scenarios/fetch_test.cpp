// The archive as a user meets it: fetched from a server on the loopback, read when the network is gone.
#include <gmock/gmock.h>

#include <memory>
#include <nlohmann/json.hpp>

#include "tests/adapters/in/http/loopback_server.hpp"
#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

const std::string kItems = "location /collections/continuous/items { rewrite ^ /answer.json break; }";

// The demo, but its gauges are asked of one server. Its tributary is given a fifth of the last gauge's flow.
class Networked {
 public:
  Networked() : server_(std::make_unique<LoopbackServer>(kItems)) {
    demo_.replace("settings.json", R"(  "readings": "../payloads",)",
                  R"(  "services": [ { "name": "usgs-water-data", "address": ")" + server_->base() + R"(" } ],)");
    auto all = nlohmann::json::parse(text_of(demo_.payloads() / "usgs-water-data_00000001.json"));
    const auto more = nlohmann::json::parse(text_of(demo_.payloads() / "usgs-water-data_00000003.json"));
    for (auto feature : more["features"]) {
      all["features"].push_back(feature);
      auto& row = feature["properties"];
      if (row["parameter_code"] != "00060" || row["value"].is_null()) continue;
      row["monitoring_location_id"] = "USGS-00000002";
      row["time_series_id"] = "alder";
      row["value"] = std::to_string(std::stoi(row["value"].get<std::string>()) / 5);
      all["features"].push_back(feature);
    }
    all["numberReturned"] = all["features"].size();
    serve(all.dump());
  }
  void serve(const std::string& answer) const { server_->put("answer.json", answer); }
  void unplug() { server_.reset(); }
  [[nodiscard]] const DemoCopy& demo() const { return demo_; }

  [[nodiscard]] Ran run(std::vector<std::string> words, const std::string& now = kDemoNow) const {
    words.insert(words.end(), {"--config", demo_.config().string(), "--now", now});
    return floatwright_says(words);
  }

 private:
  DemoCopy demo_;
  std::unique_ptr<LoopbackServer> server_;
};

TEST(Fetch, FillsTheArchiveAndIsSilentWhenAllIsWell) {
  const Networked river;
  const auto fetched = river.run({"fetch"});
  EXPECT_EQ(fetched.exit_code, 0) << fetched.err;
  EXPECT_THAT(fetched.out, IsEmpty());
  EXPECT_THAT(fetched.err, IsEmpty());
  EXPECT_THAT(river.run({"fetch", "--verbose"}).err, HasSubstr("0 readings new, 0 changed"));
  const auto checked = river.demo().check();
  EXPECT_EQ(checked.exit_code, 0) << checked.err;
  EXPECT_THAT(checked.out, HasSubstr("readings.sqlite3: sound"));
}

TEST(Fetch, LeavesAPlanPossibleWhenTheNetworkIsGone) {
  Networked river;
  const auto fresh = river.run({"plan"});
  EXPECT_EQ(fresh.exit_code, 0) << fresh.err;
  EXPECT_THAT(fresh.out, HasSubstr("FLOAT"));
  river.unplug();
  const auto silent = river.run({"fetch"});
  EXPECT_EQ(silent.exit_code, 69);
  EXPECT_THAT(silent.err, AllOf(HasSubstr("usgs:00000001"), HasSubstr("http://127.0.0.1"), HasSubstr("3 of 3 stations")));
  const auto morning = "2027-05-14T05:30:00-06:00";
  const auto alone = river.run({"plan"}, morning);
  EXPECT_EQ(alone.exit_code, 75);
  EXPECT_THAT(alone.out, AllOf(HasSubstr("FLOAT"), HasSubstr("OLD")));
  EXPECT_THAT(alone.err, HasSubstr("older than 6 h"));
  const auto offline = river.run({"plan", "--offline"}, morning);
  EXPECT_EQ(offline.exit_code, 75);
  EXPECT_EQ(offline.out, alone.out);
}

TEST(Fetch, SaysWhatIsWrongWithAnAnswerAndKeepsWhatItHad) {
  const Networked river;
  EXPECT_EQ(river.run({"fetch"}).exit_code, 0);
  river.serve("<html>the service has moved</html>");
  const auto told = river.run({"fetch"}, "2027-05-13T20:50:00-06:00");
  EXPECT_THAT(told.err, AllOf(HasSubstr("usgs:00000001"), HasSubstr("127.0.0.1"), HasSubstr("a web page")));
  EXPECT_EQ(river.run({"plan", "--offline"}).exit_code, 0);
}

TEST(Fetch, RefusesASpanThatIsNone) {
  const Networked river;
  const auto told = river.run({"fetch", "--since", "5 years"});
  EXPECT_EQ(told.exit_code, 64);
  EXPECT_THAT(told.err, AllOf(HasSubstr("\"5 years\""), HasSubstr("P5Y")));
}

TEST(ShowReadings, DrawsAGaugeForATerminal) {
  const DemoCopy demo;
  const auto ran = floatwright_says({"show", "readings", "heron", "--config", demo.config().string(), "--now", kDemoNow});
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_EQ(ran.out, text_of(kRoot / "fixtures/golden/readings_heron.txt"));
}

TEST(ShowReadings, GivesTheSpanAskedForAsCsv) {
  const DemoCopy demo;
  const auto of = [&](const std::string& since) {
    return floatwright_says({"show", "readings", "usgs:00000003", "--config", demo.config().string(), "--now", kDemoNow, "--since",
                             since, "--as", "csv"});
  };
  const auto hours = of("PT2H"), days = of("P2D");
  EXPECT_EQ(hours.exit_code, 0) << hours.err;
  EXPECT_THAT(hours.out, AllOf(HasSubstr("series,station"), HasSubstr("usgs:00000003"), Not(HasSubstr("usgs:00000001"))));
  EXPECT_LT(hours.out.size() * 10, days.out.size());
  EXPECT_EQ(of("PT0H").exit_code, 69);
}

TEST(ShowReadings, NamesTheGaugesWhenOneIsNotThere) {
  const DemoCopy demo;
  const auto ran = floatwright_says({"show", "readings", "herron", "--config", demo.config().string()});
  EXPECT_EQ(ran.exit_code, 64);
  EXPECT_THAT(ran.err, AllOf(HasSubstr("\"herron\""), HasSubstr("heron, alder, ferry")));
}

}  // namespace
}  // namespace floatwright::testing
