// Evenings and mornings of three days as cron runs them, by a clock of the test's: what lies in the folder, what was
// mailed, and what cron itself would have mailed (all that a run prints).
#include <date/date.h>
#include <gmock/gmock.h>

#include <regex>
#include <set>

#include "tests/scenarios/scenario.hpp"
#include "tests/support/loopback_mail.hpp"

namespace floatwright::testing {
namespace {

namespace fs = std::filesystem;
using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::SizeIs;

class CronDays : public ::testing::Test {
 protected:
  [[nodiscard]] fs::path out() const { return demo_.folder() / "out"; }
  [[nodiscard]] Ran run(const std::string& now, std::vector<std::string> more = {}) const {
    std::vector<std::string> words{"plan", "--config", demo_.config().string(), "--offline", "--quiet", "--now", now, "--out", out().string()};
    words.insert(words.end(), more.begin(), more.end());
    return floatwright_says(words, {{"STATE_DIRECTORY=" + (demo_.folder() / "state").string()}, "/"});
  }
  [[nodiscard]] Ran cron(const std::string& now) const {
    return run(now, {"--as", "plan,sheet,ashore,calendar,map,json,mail", "--send"});
  }
  [[nodiscard]] std::string plan_of(const std::string& day) const { return text_of(out() / (day + "-plan.txt")); }

  // What a working network brings: the demo's payloads with every time so much later.
  void readings_arrive(std::chrono::seconds later) const {
    for (const auto& file : fs::directory_iterator(kRoot / "fixtures/lantern/payloads"))
      write_text(demo_.payloads() / file.path().filename(), moved(text_of(file.path()), later));
  }
  [[nodiscard]] std::size_t waiting() const {
    const fs::directory_iterator all{demo_.folder() / "state/outbox"};
    return static_cast<std::size_t>(std::count_if(begin(all), end(all), [](const auto& entry) { return entry.is_regular_file(); }));
  }

  DemoCopy demo_;

 private:
  static std::string moved(const std::string& text, std::chrono::seconds later) {
    static const std::regex time{R"(20\d\d-\d\d-\d\dT\d\d:\d\d:\d\d)"};
    std::string all;
    auto rest = text.cbegin();
    for (std::sregex_iterator at{text.begin(), text.end(), time}, none; at != none; ++at) {
      date::local_seconds read;
      std::istringstream{at->str()} >> date::parse("%FT%T", read);
      all.append(rest, text.cbegin() + at->position());
      all += date::format("%FT%T", read + later);
      rest = text.cbegin() + at->position() + at->length();
    }
    return all.append(rest, text.cend());
  }
};

TEST_F(CronDays, SayInTheMorningWhatChangedSinceTheEvening) {
  EXPECT_EQ(run(kDemoNow).exit_code, 0);
  EXPECT_THAT(plan_of("2027-05-14"), Not(HasSubstr("CHANGED"))) << "no plan was made before";
  demo_.replace("settings.json", "\"earliest_launch\": \"07:30\"", "\"earliest_launch\": \"08:30\"");
  EXPECT_EQ(run("2027-05-14T01:20:00-06:00").exit_code, 0);
  const auto morning = plan_of("2027-05-14");
  EXPECT_THAT(morning, HasSubstr("CHANGED Since the plan of 19:50 yesterday: "));
  EXPECT_LT(morning.find("CHANGED"), morning.find("FLOAT "));
  EXPECT_EQ(run(kDemoNow).exit_code, 0);
  EXPECT_THAT(plan_of("2027-05-14"), Not(HasSubstr("CHANGED"))) << "what is kept is newer";
}

TEST_F(CronDays, TellOfAKeptPlanThatIsNoneAndGoOn) {
  EXPECT_EQ(run(kDemoNow).exit_code, 0);
  const auto kept = fs::directory_iterator{demo_.folder() / "state/plans"}->path();
  write_text(kept, "half a pl");
  const auto ran = run("2027-05-14T01:20:00-06:00");
  EXPECT_EQ(ran.exit_code, 0);
  EXPECT_THAT(ran.err, HasSubstr(kept.string()));
  EXPECT_THAT(plan_of("2027-05-14"), HasSubstr("FLOAT"));
}

TEST_F(CronDays, KeepASpotApartFromTheBoat) {
  EXPECT_EQ(run(kDemoNow).exit_code, 0);
  EXPECT_EQ(run("2027-05-14T01:20:00-06:00", {"--at", "bend"}).exit_code, 0);
  EXPECT_THAT(plan_of("2027-05-14"), AllOf(HasSubstr("Cottonwood Bend"), Not(HasSubstr("CHANGED"))));
}

// The network is cut on the second evening: neither new readings nor the mail server are reached.
TEST_F(CronDays, LoseNothingWhenTheNetworkIsCutOnTheSecond) {
  const LoopbackMail mail;
  const std::string server = "smtp://127.0.0.1:" + std::to_string(mail.port());
  const std::string cut = "smtp://127.0.0.1:" + std::to_string(silent_port());
  demo_.replace("settings.json", "\"schema_version\": 1,",
                R"("schema_version": 1, "mail": { "from": "plan@example.org", "to": "wren@example.org", "server": ")" + server + "\" },");
  const std::chrono::seconds night = std::chrono::hours{8} + std::chrono::minutes{40}, day = std::chrono::hours{24};

  const auto expect_silence = [](const Ran& ran) {
    EXPECT_EQ(ran.exit_code, 0);
    EXPECT_EQ(ran.out + ran.err, "") << "cron would mail this";
  };
  expect_silence(cron("2027-05-13T19:50:00-06:00"));
  readings_arrive(night);
  expect_silence(cron("2027-05-14T04:30:00-06:00"));
  ASSERT_THAT(mail.taken(), SizeIs(2));
  EXPECT_THAT(plan_of("2027-05-14"), HasSubstr("CHANGED"));

  demo_.replace("settings.json", server, cut);
  const Ran second = cron("2027-05-14T19:50:00-06:00");
  EXPECT_EQ(second.exit_code, 75);
  EXPECT_THAT(second.err, AllOf(HasSubstr("older than 6 h"), HasSubstr("outbox"))) << "what a person must know";
  EXPECT_EQ(second.out, "");
  EXPECT_EQ(waiting(), 1u);
  EXPECT_THAT(plan_of("2027-05-15"), HasSubstr("OLD READINGS"));

  demo_.replace("settings.json", cut, server);
  readings_arrive(day + night);
  expect_silence(cron("2027-05-15T04:30:00-06:00"));
  EXPECT_EQ(waiting(), 0u);
  readings_arrive(2 * day);
  expect_silence(cron("2027-05-15T19:50:00-06:00"));

  const auto taken = mail.taken();
  ASSERT_THAT(taken, SizeIs(5)) << "two of the first day, the late one, two of the third";
  std::set<std::string> ids;
  for (const TakenLetter& letter : taken) {
    const auto at = letter.bytes.find("\nMessage-Id: ");
    ASSERT_NE(at, std::string::npos);
    ids.insert(letter.bytes.substr(at, letter.bytes.find("\r\n", at) - at));
  }
  EXPECT_THAT(ids, SizeIs(5)) << "none twice";
  for (const char* planned : {"2027-05-14", "2027-05-15", "2027-05-16"})
    for (const char* ending : {"-plan.txt", "-plan.json", "-plan.ics", "-sheet.pdf", "-ashore.txt", "-map.geojson", "-map.gpx", "-mail.eml"})
      EXPECT_TRUE(fs::exists(out() / (std::string{planned} + ending))) << planned << ending;
  const fs::directory_iterator files{out()};
  EXPECT_EQ(std::distance(begin(files), end(files)), 24) << "and nothing else";
}

}  // namespace
}  // namespace floatwright::testing
