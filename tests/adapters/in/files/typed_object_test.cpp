#include "adapters/in/files/typed_object.hpp"

#include "adapters/in/files/nearest.hpp"
#include "adapters/in/files/quantities.hpp"
#include "tests/adapters/in/files/reading_support.hpp"

namespace floatwright {
namespace {

using testing::AllOf;
using testing::DoubleNear;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr Range<Length> kDepths{metres(0.1), metres(100.0)};

auto depth_of(const std::string& text, Need need = Need::Required) {
  return read_text(text, [&](const LocatedJson& root, FileReading& reading) {
    TypedObject in(root, "", "", reading);
    const auto depth = read_length(in, "depth", kDepths, need);
    (void)in.text("name", Need::Optional);
    in.finish();
    return depth;
  });
}

// 1 ft = 0.3048 m exactly (NIST SP 811, Appendix B).
TEST(TypedObject, TakesEitherSpellingOfAUnit) {
  EXPECT_THAT(in_metres(*depth_of("{\"depth_ft\": 10}").value), DoubleNear(3.048, 1e-12));
  EXPECT_THAT(in_metres(*depth_of("{\"depth_m\": 3.048}").value), DoubleNear(3.048, 1e-12));
}

TEST(TypedObject, RefusesTwoSpellingsOfOneThing) {
  const auto both = depth_of("{ \"depth_ft\": 10,\n\"depth_m\": 3 }");
  EXPECT_FALSE(both.value);
  EXPECT_THAT(both.problems, ElementsAre(AllOf(StandsAt(2, "/depth_m"), Finds("\"depth_ft\" or \"depth_m\" at once"))));
}

TEST(TypedObject, TellsARequiredNumberThatIsNotThere) {
  EXPECT_THAT(depth_of("{}").problems, ElementsAre(Mends("Add \"depth_ft\" or \"depth_m\".")));
  EXPECT_THAT(depth_of("{}", Need::Optional).problems, IsEmpty());
}

TEST(TypedObject, NamesTheNearestKeyForAnUnknownOne) {
  const auto read = depth_of("{\n\"depth_ft\": 1,\n\"nmae\": \"x\" }");
  EXPECT_THAT(read.problems, ElementsAre(AllOf(StandsAt(3, "/nmae"), Mends("\"name\""))));
}

TEST(TypedObject, AsksForTheUnitWhereItWasLeftOut) {
  const auto read = depth_of("{ \"depth\": 1 }", Need::Optional);
  EXPECT_THAT(read.problems, ElementsAre(Mends("Write \"depth_ft\" or \"depth_m\"")));
}

TEST(TypedObject, RefusesWrongTypes) {
  for (const char* wrong : {"\"4\"", "null", "true", "[4]", "{}"}) {
    const auto read = depth_of(std::string("{\"depth_ft\": ") + wrong + "}");
    EXPECT_FALSE(read.value) << wrong;
    EXPECT_THAT(read.problems, ElementsAre(StandsAt(1, "/depth_ft"))) << wrong;
  }
}

TEST(TypedObject, RefusesWhatIsOutOfRangeInTheUnitTyped) {
  for (const char* wrong : {"-4", "0", "1e300", "329"}) {
    const auto read = depth_of(std::string("{\"depth_ft\": ") + wrong + "}");
    EXPECT_FALSE(read.value) << wrong;
    ASSERT_THAT(read.problems, ElementsAre(StandsAt(1, "/depth_ft"))) << wrong;
    EXPECT_THAT(read.problems[0].allowed, HasSubstr("feet from 0.3281 to 328.1"));
  }
}

TEST(TypedObject, TakesBothEndsOfARange) {
  EXPECT_TRUE(depth_of("{\"depth_m\": 0.1}").value);
  EXPECT_TRUE(depth_of("{\"depth_m\": 100}").value);
}

TEST(TypedObject, RefusesControlCharactersInText) {
  const auto read = depth_of("{\"depth_m\": 1, \"name\": \"Wren\\u000aBcc: all\" }");
  EXPECT_THAT(read.problems, ElementsAre(AllOf(StandsAt(1, "/name"), Finds("\\u000A"))));
}

TEST(TypedObject, RefusesWholeNumbersThatAreNot) {
  for (const char* wrong : {"3.7", "-1", "13", "1e19", "\"3\""}) {
    const auto read =
        read_text(std::string("{\"rods\": ") + wrong + "}", [](const LocatedJson& root, FileReading& reading) {
          return TypedObject(root, "", "", reading).whole_number("rods", 1, 12, Need::Required);
        });
    EXPECT_FALSE(read.value) << wrong;
    EXPECT_THAT(read.problems, ElementsAre(StandsAt(1, "/rods"))) << wrong;
  }
}

// 212 F is 100 C and 32 F is 0 C; 1 grain = 64.79891 mg; 1 ft3 = 0.028316846592 m3 (NIST SP 811, Appendix B).
TEST(Quantities, AreReadInEverySpellingOfTheirKind) {
  const auto all = read_text(
      "{\"a_f\": 212, \"b_gr\": 10, \"c_cfs\": 1000, \"d_in_s\": 5, \"e_mi2\": 1, \"f_min\": 90, \"g_mph\": 1, "
      "\"h_ft2_s\": 1,"
      "\"i_gr_per_ft\": 10, \"j_mi\": 1}",
      [](const LocatedJson& root, FileReading& reading) {
        TypedObject in(root, "", "", reading);
        return std::vector<double>{
            in_celsius(*read_temperature(in, "a", {celsius(-5), celsius(200)}, Need::Required)),
            in_kilograms(*read_mass(in, "b", {grams(0), grams(100)}, Need::Required)),
            in_cubic_metres_per_second(
                *read_flow(in, "c", {Discharge{}, cubic_metres_per_second(1e5)}, Need::Required)),
            in_metres_per_second(*read_sink_rate(in, "d", {Speed{}, metres_per_second(1)}, Need::Required)),
            in_square_metres(*read_area(in, "e", {Area{}, square_kilometres(1e6)}, Need::Required)),
            in_seconds(*read_duration(in, "f", {Duration{}, hours(10)}, Need::Required)),
            in_metres_per_second(
                *read_surface_speed(in, "g", {SurfaceSpeed{}, surface_metres_per_second(9)}, Need::Required)),
            *read_depth_times_speed_m2_s(in, "h", {0.0, 1.0}, Need::Required),
            in_kilograms_per_metre(
                *read_linear_density(in, "i", {LinearDensity{}, kilograms_per_metre(1)}, Need::Required)),
            in_metres(*read_distance(in, "j", {Length{}, kilometres(10)}, Need::Required))};
      });
  EXPECT_THAT(all.problems, IsEmpty());
  EXPECT_THAT(all.value,
              ElementsAre(DoubleNear(100.0, 1e-9), DoubleNear(6.479891e-4, 1e-12), DoubleNear(28.316846592, 1e-9),
                          DoubleNear(0.127, 1e-12), DoubleNear(2589988.110336, 1e-3), DoubleNear(5400.0, 1e-9),
                          DoubleNear(0.44704, 1e-12), DoubleNear(0.09290304, 1e-12),
                          DoubleNear(6.479891e-4 / 0.3048, 1e-12), DoubleNear(1609.344, 1e-9)));
}

// The usual textbook pair; "recieve" is one swap away.
TEST(Nearest, CountsLettersToChange) {
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3u);
  EXPECT_EQ(edit_distance("recieve", "receive"), 1u);
  EXPECT_EQ(edit_distance("", "abc"), 3u);
  EXPECT_EQ(nearest_word("milee", {"name", "mile", "id"}), "mile");
  EXPECT_EQ(nearest_word("x", {}), "");
}

}  // namespace
}  // namespace floatwright
