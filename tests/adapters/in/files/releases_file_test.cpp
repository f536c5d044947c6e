#include "adapters/in/files/releases_file.hpp"

#include "tests/adapters/in/files/reading_support.hpp"

namespace floatwright {
namespace {

using testing::AllOf;
using testing::ElementsAre;
using testing::IsEmpty;
using testing::SizeIs;
using namespace std::chrono_literals;

TEST(Releases, AreReadInEitherUnitWithOffsetsOrZ) {
  const auto read = read_releases(
      "r.csv", "time,flow_m3_s\n# the bulletin of Friday\n2027-05-14T09:00-06:00, 50\n\n2027-05-14T16:00Z,38.5\n");
  EXPECT_THAT(read.problems, IsEmpty());
  ASSERT_THAT(read.schedule, SizeIs(2));
  EXPECT_EQ(read.schedule[0].time, Instant{std::chrono::sys_days{2027y / 5 / 14} + 15h});
  EXPECT_EQ(in_cubic_metres_per_second(read.schedule[1].flow), 38.5);
  // 1 ft3 = 0.028316846592 m3 (NIST SP 811, Appendix B)
  const auto us = read_releases("r.csv", "\xEF\xBB\xBFtime,flow_cfs\r\n2027-05-14T09:00Z,1000\r\n");
  ASSERT_THAT(us.schedule, SizeIs(1));
  EXPECT_DOUBLE_EQ(in_cubic_metres_per_second(us.schedule[0].flow), 28.316846592);
}

TEST(Releases, TellEveryBadLineAtOnce) {
  const auto read =
      read_releases("r.csv",
                    "time,flow_cfs\n2027-05-14T09:00Z,1000\n2027-05-14T08:00Z,900\n2027-05-14,800\n"
                    "2027-05-15T09:00Z,nan\n2027-05-16T09:00Z,-5\n2027-05-17T09:00Z,1,5\n2027-05-18T09:00Z,1e400\n"
                    "2027-05-19T09:00Z,12cfs\n2027-05-20T09:00Z\n");
  EXPECT_THAT(read.problems, ElementsAre(AllOf(StandsAt(3, ""), Finds("not after the time before it (line 2)")),
                                         StandsAt(4, ""), StandsAt(5, ""), StandsAt(6, ""), StandsAt(7, ""),
                                         StandsAt(8, ""), StandsAt(9, ""), StandsAt(10, "")));
}

TEST(Releases, RefuseTheSameInstantTwice) {
  EXPECT_THAT(read_releases("r.csv", "time,flow_cfs\n2027-05-14T09:00Z,1\n2027-05-14T03:00-06:00,2\n").problems,
              ElementsAre(StandsAt(3, "")));
}

TEST(Releases, RefuseAFileWithoutHeaderOrContent) {
  EXPECT_THAT(read_releases("r.csv", "2027-05-14T09:00Z,1\n2027-05-14T10:00Z,1\n").problems,
              ElementsAre(StandsAt(1, "")));
  EXPECT_THAT(read_releases("r.csv", "").problems, ElementsAre(Finds("an empty file")));
  EXPECT_THAT(read_releases("r.csv", "<html><body>Not found</body></html>").problems, SizeIs(1));
}

}  // namespace
}  // namespace floatwright
