// `sink` as a person asks it: one rig on a screen, rigs side by side, a lake, pictures, and what is refused with a
// sentence.
#include <gmock/gmock.h>

#include <nlohmann/json.hpp>
#include <sstream>

#include "adapters/out/text/width.hpp"
#include "tests/scenarios/scenario.hpp"
#include "tests/support/schema.hpp"

namespace floatwright::testing {
namespace {

using ::testing::AllOf;
using ::testing::HasSubstr;
using ::testing::Not;
using Json = nlohmann::json;
using Words = std::vector<std::string>;

Words sink(const Words& more) {
  Words words{"sink"};
  words.insert(words.end(), more.begin(), more.end());
  return words;
}
Ran says(const Words& more) { return floatwright_says(sink(more)); }

const Words kTip{"--line", "sinking tip 12.5 ft 5 in/s", "--leader", "3.5 ft", "--fly", "weighted streamer"};
Words with(Words words, const Words& more) {
  words.insert(words.end(), more.begin(), more.end());
  return words;
}
const Words kTipInWater = with(kTip, {"--depth", "5 ft", "--speed", "3 ft/s"});

// Against config/schemas/sink.schema.json, by python3-jsonschema.
// An indicator's drift has closed forms, so that this page moves only with its words.
TEST(Sink, IsTheGoldenPage) {
  const auto ran = says({"--line", "floating nymph taper", "--fly", "heavy nymph", "--shot", "0.4 g", "--method",
                         "indicator", "--platform", "held", "--depth", "6 ft", "--speed", "2.5 ft/s", "--bed", "gravel",
                         "--temperature", "52 F"});
  const auto golden = kRoot / "fixtures/golden/sink_indicator.txt";
  if (ran.out != text_of(golden)) {
    const auto fresh = std::filesystem::path{FLOATWRIGHT_BINARY_DIR} / "sink_indicator.txt";
    write_text(fresh, ran.out);
    FAIL() << "the page differs from " << golden << "; read " << fresh << " aloud, and copy it over if it is better\n"
           << run_program({"/usr/bin/diff", "-u", golden.string(), fresh.string()}).out;
  }
}

TEST(Sink, AnswersOnOneScreen) {
  const auto ran = says(with(kTipInWater, {"--platform", "anchored", "--method", "swing"}));
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_EQ(ran.err, "");
  std::istringstream lines{ran.out};
  int count = 0;
  for (std::string line; std::getline(lines, line); ++count) EXPECT_LE(columns(line), 78U) << line;
  EXPECT_LE(count, 40) << "a terminal of 40 lines";
  for (const char* part :
       {"The fly is ", "Fish take from", "of each minute fish", "snags on the bed", "~ surface", "  fly ", "bed 5 ft",
        "No depth here was compared with a fly line in a real river", "The law, the agency"})
    EXPECT_THAT(ran.out, HasSubstr(part));
}

// 1 - 1/ln(30 h/ks) at 5 ft: cobble ks 0.525 m, sand 0.05 m; 1/(1 + 1/6) without a bed; 1/(1 + 1/4) as typed.
TEST(Sink, SaysHowTheWaterSlowsTowardItsBedAndByWhat) {
  EXPECT_THAT(says(with(kTipInWater, {"--bed", "cobble"})).out, HasSubstr("Water slows toward cobble: 0.78 of its surface speed"));
  EXPECT_THAT(says(with(kTipInWater, {"--bed", "sand"})).out, HasSubstr("Water slows toward sand: 0.85 of its surface speed"));
  EXPECT_THAT(says(kTipInWater).out, HasSubstr("The bed is not named; water is taken to slow as in most"));
  EXPECT_THAT(says(with(kTipInWater, {"--bed", "cobble", "--profile", "power 1/4"})).out,
              HasSubstr("Speed over depth as typed: 0.80 of the surface's"));
}

TEST(Sink, TakesEveryLineKindInWords) {
  for (const char* line :
       {"sinking tip 12.5 ft 5 in/s", "clear tip 12 ft 1.5 in/s", "floating with sinking leader 10 ft 4 in/s",
        "looped head tip 10 ft 7 in/s", "full sinking line 3 in/s", "floating", "floating nymph taper", "double taper",
        "shooting head", "thin nymph line", "mono rig", "sinking tip 15 ft 5 1/2 to 6 1/2 in/s 11 gr/ft"}) {
    const bool thin = std::string_view(line) == "thin nymph line" || std::string_view(line) == "mono rig";  // for a led nymph
    const auto ran = says({"--line", line, "--fly", thin ? "heavy nymph" : "weighted streamer", "--depth", "4 ft", "--speed", "2 ft/s"});
    EXPECT_EQ(ran.exit_code, 0) << line << ": " << ran.err;
  }
}

TEST(Sink, FishesEveryMethodFromWhereItIsFished) {
  const std::vector<Words> ways{
      {"--method", "strip", "--platform", "drifting", "--count", "6 s", "--strip", "2 ft/s", "--fly",
       "weighted streamer"},
      {"--method", "swing", "--platform", "wading", "--technique", "mend and feed", "--fly", "weighted streamer"},
      {"--method", "indicator", "--platform", "drifting", "--fly", "heavy nymph"},
      {"--method", "tight line", "--platform", "held", "--fly", "heavy nymph"},
      {"--method", "dry", "--platform", "anchored", "--fly", "small dry"}};
  for (const Words& way : ways) {
    const auto ran = says(with({"--line", "floating", "--depth", "3 ft", "--speed", "2 ft/s"}, way));
    EXPECT_EQ(ran.exit_code, 0) << way[1] << ": " << ran.err;
  }
}

TEST(Sink, KeepsToItsSchema) {
  const std::string demo = (kRoot / "config/demo").string();
  EXPECT_EQ(judged_by_schema("sink", says(with(kTipInWater, {"--as", "json"})).out), "valid");
  EXPECT_EQ(judged_by_schema("sink", says({"--config", demo, "--compare", "--depth", "5 ft", "--speed", "3 ft/s", "--as", "json"}).out),
            "valid");
  EXPECT_EQ(judged_by_schema("sink", says({"--config", demo, "--still", "--line", "seven_full", "--fly", "weighted streamer", "--depth",
                         "20 ft", "--layer", "10 ft", "--as", "json"})
                       .out),
            "valid");
  for (const char* name : {"tip_held_steady", "tip_cast_and_fed"})
    EXPECT_EQ(judged_by_schema("sink", says({"--case", (kRoot / "config/cases" / name).string() + ".json", "--as", "json"}).out),
              "valid");
}

TEST(Sink, TakesLinesAndFliesFromTheTackleFile) {
  const std::string demo = (kRoot / "config/demo").string();
  const Words water{"--config", demo, "--depth", "5 ft", "--speed", "3 ft/s"};
  const auto typed = says(with(water, {"--line", "six_tip_5", "--fly", "streamer_weighted"}));
  EXPECT_EQ(typed.exit_code, 0) << typed.err;
  EXPECT_THAT(typed.out, HasSubstr("Sinking tip 12 1/2 ft 5 in/s"));
  EXPECT_EQ(says(with(water, {"--line", "seven_looped", "--tip", "tip_10_7", "--fly", "weighted streamer"})).exit_code,
            0);
  const auto unknown = says(with(water, {"--line", "six_tip_9", "--fly", "weighted streamer"}));
  EXPECT_EQ(unknown.exit_code, 64);
  EXPECT_THAT(unknown.err, AllOf(HasSubstr("six_tip_9"), HasSubstr("six_tip_5")));
  EXPECT_THAT(says(with(water, {"--line", "seven_looped", "--fly", "weighted streamer"})).err, HasSubstr("--tip"));
}

// Common practice, no source: a weighted fly on a floating line is deep, yet the surface keeps hold of its line.
TEST(Sink, PutsAWeightedFlyOnAFloatingLineBesideALightOneOnATip) {
  const auto ran =
      says({"--compare", "--line", "floating", "--line", "sinking tip 12.5 ft 5 in/s", "--fly", "weighted streamer",
            "--fly", "unweighted streamer", "--depth", "4 ft", "--speed", "2 ft/s", "--as", "json"});
  ASSERT_EQ(ran.exit_code, 0) << ran.err;
  const Json rigs = Json::parse(ran.out).at("rigs");
  ASSERT_EQ(rigs.size(), 4U);
  const auto hold = [&](const char* line, const char* fly) {
    for (const auto& rig : rigs)
      if (rig.at("line") == line && rig.at("fly") == fly) return rig.at("surface_hold").get<double>();
    return -1.0;
  };
  EXPECT_GT(hold("floating", "weighted streamer"), hold("sinking tip 12.5 ft 5 in/s", "unweighted streamer"));
}

TEST(Sink, CountsALineDownInALake) {
  const auto ran = says({"--still", "--line", "full sinking line 3 in/s", "--line", "sinking tip 12.5 ft 5 in/s",
                         "--fly", "unweighted streamer", "--depth", "20 ft", "--layer", "9 ft"});
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_THAT(ran.out, HasSubstr("Count 40 s to 9 ft")) << "9 ft at 0.9 x 3 in/s";
  EXPECT_THAT(ran.out, HasSubstr("RETRIEVE"));
  EXPECT_EQ(says({"--still", "--line", "floating", "--fly", "weighted streamer", "--depth", "20 ft"}).exit_code, 65);
}

TEST(Sink, CountsDownToTheLayerOfALake) {
  const Words lake{"--config",
                   (kRoot / "config/demo").string(),
                   "--still",
                   "--line",
                   "seven_full",
                   "--fly",
                   "weighted streamer",
                   "--depth",
                   "12 ft"};
  const auto ran = says(with(lake, {"--lake", "heron_lake"}));
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_THAT(ran.out, AllOf(HasSubstr("Heron Lake: fish 0-9 ft down"), HasSubstr("Count 20 s to 4 1/2 ft")));
  const auto unknown = says(with(lake, {"--lake", "crane_lake"}));
  EXPECT_EQ(unknown.exit_code, 64);
  EXPECT_THAT(unknown.err, HasSubstr("heron_lake"));
}

TEST(Sink, DrawsItsPictures) {
  ScratchFolder scratch;
  const auto ran = says(with(kTipInWater, {"--as", "text,json,svg,png,pdf", "--out", scratch.path().string()}));
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_EQ(ran.out, "");
  const auto parsed = run_program({"/usr/bin/python3", "-c",
                                   "import sys,xml.dom.minidom as x; d=x.parse(sys.argv[1]); "
                                   "print(d.documentElement.tagName, len(d.getElementsByTagName('polyline'))>4)",
                                   (scratch.path() / "sink.svg").string()});
  EXPECT_EQ(parsed.out, "svg True\n") << parsed.err;
  // W3C Portable Network Graphics, second edition, 5.2: the signature.
  EXPECT_EQ(text_of(scratch.path() / "sink.png").substr(0, 8), "\x89PNG\r\n\x1a\n");
  const auto words = run_program({"/usr/bin/pdftotext", (scratch.path() / "sink.pdf").string(), "-"});
  EXPECT_THAT(words.out, HasSubstr("real river")) << words.err << "(needs the package poppler-utils)";
  const auto dry = says({"--line", "floating", "--fly", "small dry", "--method", "dry", "--depth", "2 ft", "--speed",
                         "2 ft/s", "--as", "svg"});
  EXPECT_EQ(dry.exit_code, 64) << "a dry fly has no picture";
  EXPECT_EQ(says(with(kTipInWater, {"--as", "svg,png"})).exit_code, 64) << "several kinds need --out";
}

struct Refused {
  Words words;
  const char* sentence;
};
class SinkRefuses : public ::testing::TestWithParam<Refused> {};

TEST_P(SinkRefuses, WithASentence) {
  const auto ran = says(GetParam().words);
  EXPECT_EQ(ran.exit_code, 64);
  EXPECT_EQ(ran.out, "");
  EXPECT_THAT(ran.err, HasSubstr(GetParam().sentence));
}

INSTANTIATE_TEST_SUITE_P(
    What, SinkRefuses,
    ::testing::Values(
        Refused{{}, "how deep is the water"}, Refused{with(kTip, {"--depth", "5", "--speed", "3 ft/s"}), "\"5 ft\""},
        Refused{with(kTip, {"--depth", "5 furlongs", "--speed", "3 ft/s"}), "a unit that is not known"},
        Refused{with(kTip, {"--depth", "0 ft", "--speed", "3 ft/s"}), "0.1 to 30 m"},
        Refused{with(kTip, {"--depth", "-5 ft", "--speed", "3 ft/s"}), "0.1 to 30 m"},
        Refused{with(kTip, {"--depth", "31 m", "--speed", "3 ft/s"}), "0.1 to 30 m"},
        Refused{with(kTip, {"--depth", "5 ft", "--speed", "4.1 m/s"}), "0 to 4 m/s"},
        Refused{with(kTip, {"--depth", "5 ft", "--speed", "3"}), "\"3 ft/s\""},
        Refused{with(kTip, {"--depth", "5 ft"}), "how fast is the water"},
        Refused{with(kTip, {"--depth", "5 ft", "--speed", "3 ft/s", "--mean", "2 ft/s"}), "give one of them"},
        Refused{with(kTipInWater, {"--method", "swim"}), "the nearest is \"swing\""},
        Refused{with(kTipInWater, {"--platform", "drifting"}), "anchored or wading"},
        Refused{with(kTipInWater, {"--profile", "cubic"}), "power 1/6"},
        Refused{with(kTipInWater, {"--layer", "3 ft"}), "--still"},
        Refused{with(kTipInWater, {"--count", "3 s"}), "strip"},
        Refused{with(kTipInWater, {"--compare", "--still"}), "--compare"},
        Refused{{"--line", "full sinking line 3 in/s", "--fly", "weighted streamer", "--depth", "5 ft", "--speed",
                 "3 ft/s", "--technique", "one mend"},
                "can't be mended"},
        Refused{
            {"--line", "sinking tip 12.5 ft 5 in/s", "--fly", "0.1 g 0 in/s", "--depth", "5 ft", "--speed", "3 ft/s"},
            "floats"},
        Refused{{"--line", "floating", "--line", "mono rig", "--fly", "weighted streamer", "--depth", "5 ft", "--speed",
                 "3 ft/s"},
                "--compare"}));

TEST(Sink, SaysWhatACastTooShortLeavesInTheRod) {
  const auto ran = says({"--line", "sinking tip 12.5 ft 5 in/s", "--leader", "15 m", "--fly", "weighted streamer",
                         "--depth", "0.1 m", "--speed", "4 m/s"});
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_THAT(ran.out, HasSubstr("longer than the cast"));
}

TEST(Sink, PrintsTheCautionsThatItsWaterCallsFor) {
  const auto ran = says(with(kTipInWater, {"--platform", "wading", "--temperature", "48 F"}));
  EXPECT_THAT(ran.out, AllOf(HasSubstr("Too deep or too fast to wade"), HasSubstr("life jackets ON")));
  const auto shallow = says(with(kTip, {"--depth", "2 ft", "--speed", "1 ft/s", "--platform", "wading", "--temperature", "62 F"}));
  EXPECT_THAT(shallow.out, AllOf(Not(HasSubstr("to wade")), Not(HasSubstr("life jackets")), HasSubstr("The law, the agency")));
}

TEST(Sink, WarnsOfARateThatNoLineOfThatWeightHas) {
  const auto ran = says({"--line", "sinking tip 12.5 ft 9 in/s 8 gr/ft", "--fly", "weighted streamer", "--depth",
                         "5 ft", "--speed", "3 ft/s"});
  EXPECT_EQ(ran.exit_code, 0) << ran.err;
  EXPECT_THAT(ran.out, HasSubstr("optimistic"));
  EXPECT_THAT(says(kTipInWater).out, Not(HasSubstr("optimistic")));
}

TEST(Sink, SaysWhereTurbulenceMayLiftASlowLine) {
  const auto ran =
      says({"--line", "clear tip 12 ft 1.5 in/s", "--fly", "weighted streamer", "--depth", "5 ft", "--speed", "1 m/s"});
  EXPECT_THAT(ran.out, HasSubstr("up to 53 % shallower"));
}

}  // namespace
}  // namespace floatwright::testing
