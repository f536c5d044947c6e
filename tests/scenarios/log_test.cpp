// What was met on the water, from a day's notes to the plans that follow. The demo's river; corrections are held against
// the closed form of a conjugate normal update: prior sd 0.15, a sounding 0.10 (of the logarithm).
#include <fcntl.h>
#include <gmock/gmock.h>
#include <sys/file.h>
#include <unistd.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "tests/scenarios/scenario.hpp"

namespace floatwright::testing {
namespace {

using nlohmann::json;
using ::testing::AllOf;
using ::testing::ContainsRegex;
using ::testing::HasSubstr;
using ::testing::Not;

const std::string kEvening = "2027-05-13T19:50:00-06:00";

class Logbook : public DemoCopy {
 public:
  Ran log(std::vector<std::string> more, const std::string& now = kEvening) const {
    std::vector<std::string> words{"log", "--config", config().string(), "--now", now};
    words.insert(words.end(), more.begin(), more.end());
    return floatwright_says(words);
  }
  Ran notes(const std::string& text, const std::string& name = "notes.txt") const {
    write_text(folder() / name, text);
    return log({(folder() / name).string()});
  }
  [[nodiscard]] std::filesystem::path file() const { return config() / "log.jsonl"; }
  [[nodiscard]] std::string text() const { return std::filesystem::exists(file()) ? text_of(file()) : ""; }
  json shown() const { return json::parse(log({"--show", "--as", "json"}).out); }
  json water(const std::string& where, const std::string& kind) const {
    const json all = shown();
    for (const json& one : all.at("waters"))
      if (one.at("where") == where && one.at("water") == kind) return one;
    return {};
  }
  json river_water(const std::string& reach, const std::string& kind) const {
    const auto ran = floatwright_says({"show", "river", "--config", config().string(), "--offline", "--now", kEvening, "--as", "json"});
    const json all = json::parse(ran.out);
    for (const json& one : all.at("reaches"))
      for (std::size_t i = 0; one.at("name") == reach && i < one.at("waters").size(); ++i)
        if (one.at("waters")[i].at("water") == kind)
          return {{"water", one.at("waters")[i]}, {"noon", one.at("hours").at(12).at("waters")[i]}};
    return {};
  }
};

const std::string kThree =
    "13 May 2027\n# three soundings\n"
    "Mill run bank  hour 10:10  depth 4 ft\nMill run bank  hour 11:20  depth 3 1/2 ft\nMill run bank  hour 12:00  depth 4 ft\n";

TEST(Log, OfADayCorrectsDepthAndBandOfThatWaterInEveryAnswer) {
  const Logbook book;
  const json before = book.river_water("Mill run", "bank"), other = book.river_water("Mill run", "run");
  const auto ran = book.notes(kThree);
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_THAT(ran.err, HasSubstr("logged"));
  const json after = book.river_water("Mill run", "bank");
  EXPECT_EQ(after.at("water").at("source"), "noted");
  EXPECT_EQ(after.at("water").at("logged").at("depth_entries"), 3);
  const double factor = after.at("water").at("logged").at("depth_factor");
  EXPECT_GT(factor, 1.05);
  const auto depth = [](const json& at, const char* end) { return at.at("noon").at("depth_m").at(end).get<double>(); };
  EXPECT_NEAR(depth(after, "best"), factor * depth(before, "best"), 1e-9);
  EXPECT_LT(depth(after, "high") / depth(after, "low"), depth(before, "high") / depth(before, "low"));
  EXPECT_EQ(book.river_water("Mill run", "run"), other);
  EXPECT_TRUE(before.at("water").at("logged").is_null());
}

// ln of each sounding over the note at the flow kept in the entry; what is shown is their conjugate mean.
TEST(Log, ShowsTheConjugateMeanOfItsEntries) {
  const Logbook book;
  EXPECT_EQ(book.notes(kThree).exit_code, 0);
  const json water = book.water("Mill run", "bank");
  const double precision = 1 / 0.0225 + 300;
  EXPECT_NEAR(water.at("depth_m").at("sd_ln"), 1 / std::sqrt(precision), 1e-4);
  EXPECT_EQ(water.at("depth_m").at("entries"), 3);
  EXPECT_NEAR(water.at("depth_m").at("noted"), 3 * 0.3048, 1e-3);
  EXPECT_NEAR(std::log(water.at("depth_m").at("now").get<double>() / water.at("depth_m").at("noted").get<double>()),
              water.at("depth_m").at("ln").get<double>(), 1e-3);
  const auto text = book.log({"--show"}).out;
  EXPECT_THAT(text, HasSubstr("Mill run bank: "));
  EXPECT_THAT(text, ContainsRegex("[0-9.]+ ft deeper than noted \\(3 entries\\)"));
}

TEST(Log, IsOneJsonObjectALineThatKeepsToItsSchema) {
  const Logbook book;
  EXPECT_EQ(book.notes(kThree + "put-in Heron Ramp 07:30 take-out Mill Bridge 11:40 stopped 90 min\n").exit_code, 0);
  const auto judged = run_program({"/usr/bin/python3", "-c",
                                   "import json,sys,jsonschema\n"
                                   "schema=json.load(open(sys.argv[1]))\n"
                                   "lines=[json.loads(l) for l in open(sys.argv[2])]\n"
                                   "errors=[e.message for l in lines for e in jsonschema.Draft202012Validator(schema).iter_errors(l)]\n"
                                   "print(len(lines), errors[:3])",
                                   (kRoot / "config/schemas/log.schema.json").string(), book.file().string()});
  EXPECT_EQ(judged.out, "4 []\n") << judged.err << "(needs the package python3-jsonschema)";
}

TEST(Log, OfTheSameThingTwiceIsToldAndKeptOnce) {
  const Logbook book;
  EXPECT_EQ(book.notes(kThree).exit_code, 0);
  const std::string once = book.text();
  const auto again = book.notes(kThree);
  EXPECT_EQ(again.exit_code, 0);
  EXPECT_THAT(again.err, HasSubstr("logged before as"));
  EXPECT_EQ(book.text(), once);
}

TEST(Log, TakesAnEntryBackAsIfItHadNeverBeenLogged) {
  const Logbook book, never;
  EXPECT_EQ(book.notes(kThree + "Mill run bank  hour 15:00  depth 9 ft\n").exit_code, 0);
  EXPECT_EQ(never.notes(kThree).exit_code, 0);
  const std::string id = book.shown().at("entries").back().at("id");
  const std::string before = book.text();
  EXPECT_EQ(book.log({"--retract", id}).exit_code, 0);
  EXPECT_THAT(book.text(), ::testing::StartsWith(before));  // nothing is taken out of the file
  EXPECT_EQ(book.water("Mill run", "bank"), never.water("Mill run", "bank"));
  EXPECT_EQ(book.shown().at("retracted").at(0).at("id"), id);
  EXPECT_THAT(book.log({"--retract", id}).err, HasSubstr("taken back before"));
  EXPECT_EQ(book.log({"--retract", "nothing"}).exit_code, 64);
}

TEST(Log, LearnsABoatsPaceFromItsFloats) {
  const Logbook book;
  const auto launch_to_end = [&] {
    const auto plan = json::parse(book.plan({"--as", "json"}).out);
    return plan.at("stretches").at(0).at("on_water_s").get<double>();
  };
  const double before = launch_to_end();
  EXPECT_EQ(book.notes("2027-05-13\nput-in Heron Ramp 07:30 take-out Mill Bridge 10:00 stopped 60 min\n").exit_code, 0);
  EXPECT_THAT(book.log({"--show"}).out, ContainsRegex("Drift boat, green: floats [0-9]+ % faster than noted \\(1 float\\)"));
  EXPECT_LT(launch_to_end(), before);
}

TEST(Log, IsToldInThePlansSources) {
  const Logbook book;
  EXPECT_EQ(book.notes("2027-05-13\nBoulder garden run hour 10:00 depth 6 ft\nBoulder garden pocket hour 10:30 depth 4 ft\n").exit_code, 0);
  EXPECT_THAT(book.plan().out, AllOf(HasSubstr("Depths and speeds from notes"), ContainsRegex("ft deeper than noted \\(1")));
}

TEST(Log, OfOneNoteInOptionsIsTheNoteOfAFile) {
  const Logbook file, options;
  EXPECT_EQ(file.notes("2027-05-13\nMill run bank hour 10:10 depth 4 ft\n").exit_code, 0);
  const auto ran = options.log({"--where", "Mill run bank", "--hour", "10:10", "--depth", "4 ft"});
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_EQ(options.water("Mill run", "bank"), file.water("Mill run", "bank"));
  EXPECT_EQ(options.log({"--where", "Mill run bank", "--hour", "10:70"}).exit_code, 64);
  EXPECT_EQ(options.log({}).exit_code, 64);  // no file, no terminal to ask
}

// A terminal is asked in the words of the pencil row; an answer that can't be read is asked for again.
TEST(Log, AsksATerminalAndLogsTheAnswers) {
  const Logbook book;
  const auto ran = run_program(
      {"/usr/bin/python3", "-c",
       "import os,pty,sys\n"
       "child,terminal=pty.fork()\n"
       "if child==0: os.execv(sys.argv[1],sys.argv[1:])\n"
       "os.write(terminal,b'Mill run bank\\n10:70\\n4 ft\\n\\n\\n\\n\\n\\nMill run bank\\n10:10\\n4 ft\\n\\n\\n\\n\\n52 F\\n\\n')\n"
       "said=b''\n"
       "while True:\n"
       "  try: part=os.read(terminal,4096)\n"
       "  except OSError: break\n"
       "  if not part: break\n"
       "  said+=part\n"
       "print(said.decode())\n"
       "sys.exit(os.waitstatus_to_exitcode(os.waitpid(child,0)[1]))",
       FLOATWRIGHT_PROGRAM, "log", "--config", book.config().string(), "--now", kEvening, "--date", "2027-05-13"});
  EXPECT_EQ(ran.exit_code, 0) << ran.out;
  EXPECT_THAT(ran.out, AllOf(HasSubstr("where"), HasSubstr("bottom"), HasSubstr("10:70"), HasSubstr("once more"), HasSubstr("logged")));
  EXPECT_EQ(book.shown().at("entries").size(), 1u);
}

TEST(Log, ReadsNotesAsJsonToo) {
  const Logbook book, text;
  EXPECT_EQ(text.notes(kThree).exit_code, 0);
  const auto ran = book.notes(R"({"schema_version": 1, "date": "2027-05-13", "notes": [
    {"where": "Mill run", "water": "bank", "hour": "10:10", "depth_ft": 4},
    {"where": "mill_run", "water": "bank", "hour": "11:20", "depth_ft": 3.5},
    {"where": "Mill run bank", "hour": "12:00", "depth_m": 1.2192}]})", "notes.json");
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_EQ(book.water("Mill run", "bank"), text.water("Mill run", "bank"));
}

TEST(Log, KeepsWhatItDoesNotUnderstandAndSaysThatItTeachesNothing) {
  const Logbook book;
  const auto ran = book.notes(
      "2027-05-13\nMull run bank hour 10:10 depth 4 ft\nMill run bank hour 23:10 depth 4 ft\n"
      "Mill run bank hour 11:00 water 51 F\n2026-06-01\nMill run bank hour 10:00 depth 4 ft\n");
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_THAT(ran.err, AllOf(HasSubstr("no water here is called \"Mull run bank\"; the nearest is \"Mill run\""),
                             HasSubstr("that hour was still to come"), HasSubstr("no depth, no speed"),
                             HasSubstr("teaches nothing: the flow there and then is not known")));
  EXPECT_EQ(book.shown().at("entries").size(), 4u);
  EXPECT_EQ(book.shown().at("waters").size(), 0u);
}

TEST(Log, TellsALineThatCanNotBeReadAndLogsTheRest) {
  const Logbook book;
  const auto ran = book.notes("2027-05-13\nMill run bank hour 10:10 depth 400 ft\nMill run bank hour 11:10 depth 4 ft\nhello\n");
  EXPECT_EQ(ran.exit_code, 65);
  EXPECT_THAT(ran.err, AllOf(HasSubstr("notes.txt:2"), HasSubstr("400 ft"), HasSubstr("notes.txt:4"), HasSubstr("no hour")));
  EXPECT_EQ(book.shown().at("entries").size(), 1u);
  EXPECT_EQ(book.log({(book.folder() / "nothing.txt").string()}).exit_code, 66);
}

TEST(Log, TellsEntriesThatSpeakAgainstEachOtherAndKeepsBoth) {
  const Logbook book;
  const auto ran = book.notes("2027-05-13\nMill run bank hour 10:10 depth 3 ft\nMill run bank hour 11:10 depth 7 ft\n");
  EXPECT_THAT(ran.err, HasSubstr("speak against each other: both are kept and count"));
  EXPECT_EQ(book.water("Mill run", "bank").at("depth_m").at("entries"), 2);
}

// A line cut off by a failing machine is told by every command and left as it is; what is logged after it stands on a line
// of its own. So are a broken line in the middle and one of a newer program.
TEST(Log, LosesNothingToBrokenLines) {
  const Logbook book;
  EXPECT_EQ(book.notes(kThree).exit_code, 0);
  const std::string good = book.text();
  const std::string cut = good.substr(0, good.size() - 40);
  write_text(book.file(), cut);
  const auto show = book.log({"--show", "--as", "json"});
  EXPECT_THAT(show.err, AllOf(HasSubstr("log.jsonl:3"), HasSubstr("cut while it was written")));
  EXPECT_EQ(json::parse(show.out).at("entries").size(), 2u);
  EXPECT_EQ(book.notes("2027-05-13\nMill run run hour 9:00 depth 5 ft\n").exit_code, 0);
  EXPECT_THAT(book.text(), ::testing::StartsWith(cut + "\n{"));
  EXPECT_EQ(book.shown().at("entries").size(), 3u);

  write_text(book.file(), good + "{\"schema_version\": 2, \"something\": 1}\nnot json\n" + good.substr(0, good.find('\n') + 1));
  const auto plan = book.plan();
  EXPECT_EQ(plan.exit_code, 0) << plan.err;
  EXPECT_THAT(plan.err, AllOf(HasSubstr("log.jsonl:4"), HasSubstr("newer floatwright"), HasSubstr("log.jsonl:5"),
                              HasSubstr("log.jsonl:6"), HasSubstr("the rest counts")));
  EXPECT_EQ(book.water("Mill run", "bank").at("depth_m").at("entries"), 3);
  EXPECT_THAT(book.check().out, HasSubstr("log.jsonl:5"));
}

TEST(Log, WaitsForNoOtherRunAndSaysSo) {
  const Logbook book;
  const int held = open(book.config().c_str(), O_RDONLY | O_DIRECTORY);
  ASSERT_EQ(flock(held, LOCK_EX), 0);
  const auto ran = book.notes(kThree);
  EXPECT_EQ(ran.exit_code, 75);
  EXPECT_THAT(ran.err, HasSubstr("another run"));
  EXPECT_EQ(book.text(), "");
  close(held);
  EXPECT_EQ(book.notes(kThree).exit_code, 0);
}

// The fly of a rod is reckoned as a plan would fish it there and then.
TEST(Log, ReckonsTheFlyOfARodWhoseTouchIsTold) {
  const Logbook book;
  const auto ran = book.notes("2027-05-13\nmill_run run hour 10:10 bottom Y rod square\n");
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  const json entry = book.shown().at("entries").at(0);
  EXPECT_GT(entry.at("fly_depth_m").get<double>(), 0.1);
  EXPECT_EQ(book.water("Mill run", "run").at("depth_m").at("entries"), 1);
  EXPECT_LE(book.water("Mill run", "run").at("depth_m").at("ln").get<double>(), 0.0);
}

class LettersOfADay : public Logbook {
 public:
  Ran run(std::vector<std::string> words, std::vector<std::string> more) const {
    words.insert(words.end(), {"--config", config().string(), "--now", kEvening, "--quiet"});
    words.insert(words.end(), more.begin(), more.end());
    return floatwright_says(words, {{"STATE_DIRECTORY=" + (folder() / "state").string()}, kRoot});
  }
  Ran plan(std::vector<std::string> more = {}) const {
    more.insert(more.end(), {"--offline", "--date", "2027-05-14", "--as", "json", "--out", (folder() / "out").string()});
    return run({"plan"}, more);
  }
  Ran touch(const std::string& rod, const std::string& day = "2027-05-14") const {
    write_text(folder() / "notes.txt", day + "\nMill run run  hour 10:10  bottom Y  fly 3 ft  rod " + rod + "\n");
    return run({"log"}, {(folder() / "notes.txt").string()});
  }
  [[nodiscard]] json rods_of(const std::string& file) const {
    return json::parse(text_of(folder() / "out" / file)).at("stretches").at(0).at("rods");
  }
  [[nodiscard]] std::string last_rod() const {
    const json all = shown().at("entries");
    return all.empty() ? "" : all.back().at("rod").get<std::string>();
  }
};

TEST(Log, KnowsARodByItsLetterOnTheSheetOfThatDay) {
  const LettersOfADay book;
  ASSERT_EQ(book.plan().exit_code, 0);
  const json rods = book.rods_of("2027-05-14-plan.json");
  ASSERT_GE(rods.size(), 2U);
  for (const auto& [letter, place] : {std::pair{"A", 0U}, {"b", 1U}}) {
    const auto ran = book.touch(letter);
    EXPECT_EQ(ran.exit_code, 0) << ran.err;
    EXPECT_EQ(book.last_rod(), rods.at(place).at("rod"));
  }
}

TEST(Log, SaysWhyALetterTellsNoRod) {
  const LettersOfADay book;
  const auto before = book.touch("A");
  EXPECT_EQ(before.exit_code, 65);
  EXPECT_THAT(before.err, AllOf(HasSubstr("A on 14 May 2027"), HasSubstr("no plan of that day"), HasSubstr("id or mark")));
  ASSERT_EQ(book.plan().exit_code, 0);
  EXPECT_THAT(book.touch("A", "2027-05-12").err, HasSubstr("no plan of that day"));
  EXPECT_THAT(book.touch("Z").err, HasSubstr("no such rod in the plans"));
  EXPECT_EQ(book.text(), "");
}

TEST(Log, AsksWhoseSheetItWasWhereTheBoatsOfADayDiffer) {
  const LettersOfADay book;
  ASSERT_EQ(book.plan({"--boats", (book.config() / "boats.json").string()}).exit_code, 0);
  const auto ran = book.touch("A");
  EXPECT_EQ(ran.exit_code, 65);
  EXPECT_THAT(ran.err, AllOf(HasSubstr(" of Boat 1"), HasSubstr(" of Boat 2"), HasSubstr("say whose sheet it was")));
  const auto named = book.touch("A  boat Boat 2");
  EXPECT_EQ(named.exit_code, 0) << named.err;
  EXPECT_THAT(ran.err, HasSubstr(book.last_rod() + " of Boat 2"));
}

}  // namespace
}  // namespace floatwright::testing
