#include "adapters/in/files/located_json.hpp"

#include <gmock/gmock.h>

#include "tests/adapters/in/files/reading_support.hpp"

namespace floatwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

TEST(LocatedJson, KnowsTheLineOfEveryValue) {
  const auto parsed = parse_located_json(
      "f", "// a comment\n{\n  \"a\": 12\n  ,\"b\": [\n    true,\n    3.5\n  ],\n  \"c\": \"x\"\n}\n");
  ASSERT_TRUE(parsed.root);
  EXPECT_THAT(parsed.problems, IsEmpty());
  EXPECT_EQ(line_of(*parsed.root, ""), 2);
  EXPECT_EQ(line_of(*parsed.root, "/a"), 3);
  EXPECT_EQ(line_of(*parsed.root, "/b"), 4);
  EXPECT_EQ(line_of(*parsed.root, "/b/0"), 5);
  EXPECT_EQ(line_of(*parsed.root, "/b/1"), 6);
  EXPECT_EQ(line_of(*parsed.root, "/c"), 8);
}

TEST(LocatedJson, GivesTheLineOfWhatStandsAboveAMissingPointer) {
  const auto parsed = parse_located_json("f", "{\n\"a\": [\n{ \"b\": 1 }]}");
  ASSERT_TRUE(parsed.root);
  EXPECT_EQ(line_of(*parsed.root, "/a/0/none/deeper"), 3);
  EXPECT_EQ(line_of(*parsed.root, "/a/7"), 2);
}

// RFC 6901 section 5: the keys "a/b" and "m~n" are pointed to by "/a~1b" and "/m~0n".
TEST(LocatedJson, WritesPointersAsRfc6901Does) {
  EXPECT_EQ(pointer_to("", "a/b"), "/a~1b");
  EXPECT_EQ(pointer_to("", "m~n"), "/m~0n");
  const auto parsed = parse_located_json("f", "{\"x\": 0,\n\"a/b\": 1,\n\"m~n\": 8}");
  ASSERT_TRUE(parsed.root);
  EXPECT_EQ(line_of(*parsed.root, "/a~1b"), 2);
  EXPECT_EQ(line_of(*parsed.root, "/m~0n"), 3);
}

TEST(LocatedJson, TellsBothLinesOfADoubledKeyAndReadsOn) {
  const auto parsed = parse_located_json("f", "{ \"in\": [ { \"mile\": 1,\n\"id\": 2,\n\"mile\": 3 } ],\n\"in\": 4 }");
  ASSERT_TRUE(parsed.root);
  ASSERT_THAT(parsed.problems, ElementsAre(StandsAt(3, "/in/0/mile"), StandsAt(4, "/in")));
  EXPECT_THAT(parsed.problems[0].found, HasSubstr("line 1 already"));
}

TEST(LocatedJson, KeepsTheFirstOfADoubledKey) {
  const auto parsed = parse_located_json("f", "{ \"mile\": 1, \"mile\": 3 }");
  ASSERT_TRUE(parsed.root);
  ASSERT_THAT(parsed.root->members, SizeIs(1));
  EXPECT_EQ(parsed.root->members[0].second.number, 1.0);
}

TEST(LocatedJson, RefusesTextThatIsCutOff) {
  const auto parsed = parse_located_json("f", "{\n \"a\": [1, 2,\n\n\n");
  EXPECT_FALSE(parsed.root);
  EXPECT_THAT(parsed.problems, ElementsAre(StandsAt(2, "")));
}

TEST(LocatedJson, RefusesAnEmptyFile) {
  EXPECT_THAT(parse_located_json("f", "").problems, ElementsAre(Finds("an empty file")));
  EXPECT_THAT(parse_located_json("f", " \n\t\r\n").problems, ElementsAre(Finds("an empty file")));
  EXPECT_THAT(parse_located_json("f", "// only a comment\n").problems, SizeIs(1));
}

TEST(LocatedJson, RefusesTextAfterTheEnd) {
  EXPECT_THAT(parse_located_json("f", "{}\n{}").problems, ElementsAre(StandsAt(2, "")));
}

TEST(LocatedJson, RefusesNumbersThatNoDoubleHolds) {
  EXPECT_THAT(parse_located_json("f", "{\n\"a\": 1e999\n}").problems, ElementsAre(StandsAt(2, "")));
  EXPECT_THAT(parse_located_json("f", "{\n\"a\": -1e999}").problems, ElementsAre(Finds("1e999")));
  EXPECT_THAT(parse_located_json("f", "{\n\n\"a\": NaN }").problems, ElementsAre(StandsAt(3, "")));
  EXPECT_THAT(parse_located_json("f", "{\"a\": Infinity }").problems, SizeIs(1));
}

TEST(LocatedJson, RefusesTenThousandBracketsWithoutFallingOver) {
  for (const char* bracket : {"[", "{\"a\":"}) {
    std::string deep;
    for (int i = 0; i < 10000; ++i) deep += bracket;
    const auto parsed = parse_located_json("f", deep);
    EXPECT_FALSE(parsed.root);
    EXPECT_THAT(parsed.problems, ElementsAre(Finds("more than 64 brackets")));
  }
}

TEST(LocatedJson, TakesSixtyFourBrackets) {
  const std::string deep = std::string(64, '[') + std::string(64, ']');
  EXPECT_TRUE(parse_located_json("f", deep).root);
  EXPECT_FALSE(parse_located_json("f", "[" + deep + "]").root);
}

// Sequences that RFC 3629 section 10 and 3 forbid: an overlong NUL, a surrogate, a value past U+10FFFF, a lone byte.
TEST(LocatedJson, RefusesWhatIsNoUtf8EvenInAComment) {
  for (const char* bytes : {"\xC0\x80", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xFF", "\xE2\x89"}) {
    const auto in_text = parse_located_json("f", std::string("{\n\"a\": \"") + bytes + "\"}");
    EXPECT_FALSE(in_text.root);
    EXPECT_THAT(in_text.problems, ElementsAre(StandsAt(2, "")));
    EXPECT_FALSE(parse_located_json("f", std::string("{} // ") + bytes).root);
  }
}

// RFC 3629 section 7: "A<NOT IDENTICAL TO><ALPHA>." as UTF-8.
TEST(LocatedJson, TakesUtf8) {
  const auto parsed = parse_located_json("f", "[\"\x41\xE2\x89\xA2\xCE\x91\x2E\"]");
  ASSERT_TRUE(parsed.root);
  EXPECT_EQ(parsed.root->items[0].text, "\x41\xE2\x89\xA2\xCE\x91\x2E");
}

TEST(LocatedJson, CountsLinesEndedByCarriageReturnAndNewline) {
  const auto parsed = parse_located_json("f", "{\r\n\"a\": 1\r\n,\"b\": 2\r\n}");
  ASSERT_TRUE(parsed.root);
  EXPECT_EQ(line_of(*parsed.root, "/a"), 2);
  EXPECT_EQ(line_of(*parsed.root, "/b"), 3);
}

}  // namespace
}  // namespace floatwright
