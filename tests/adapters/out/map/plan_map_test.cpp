// GeoJSON read back by Python's json and held to RFC 7946; GPX read back by the package python3-gpxpy.
#include <gmock/gmock.h>

#include <limits>

#include "adapters/out/map/plan_geojson.hpp"
#include "adapters/out/map/plan_gpx.hpp"
#include "tests/support/read_back.hpp"
#include "tests/support/sample_plan.hpp"

namespace floatwright::testing {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

// What RFC 7946 asks, then a line a feature. Python's json takes NaN and Infinity unless told not to.
constexpr const char* kGeoJsonReader =
    "import json, sys\n"
    "def no_number(word): raise ValueError(word)\n"
    "document = json.load(open(sys.argv[1], encoding='utf-8'), parse_constant=no_number)\n"
    "assert document['type'] == 'FeatureCollection' and isinstance(document['features'], list)\n"
    "assert 'coordinates' not in document and 'geometry' not in document and 'crs' not in document\n"
    "for f in document['features']:\n"
    "  assert f['type'] == 'Feature' and 'properties' in f and 'geometry' in f\n"
    "  p, g = f['properties'], f['geometry']\n"
    "  if g is not None:\n"
    "    assert g['type'] == 'Point' and len(g['coordinates']) == 2\n"
    "    assert -180 <= g['coordinates'][0] <= 180 and -90 <= g['coordinates'][1] <= 90\n"
    "  print(p['kind'], p['name'], g and g['coordinates'], p['part'], p['approximate'], p.get('off_by_at_most_m'), repr(p['description']), sep='|')\n";

constexpr const char* kGpxReader =
    "import sys, gpxpy\n"
    "gpx = gpxpy.parse(open(sys.argv[1], encoding='utf-8'))\n"
    "print(gpx.version, gpx.creator, gpx.name, gpx.time, repr(gpx.description), sep='|')\n"
    "for w in gpx.waypoints: print(w.type, w.name, w.latitude, w.longitude, repr(w.description), sep='|')\n";

DayInputs inputs() {
  DayInputs in = sample_inputs();
  const auto access = [](const char* id, const char* name, double mile, double latitude, double longitude) {
    Access made;
    made.id = id;
    made.name = name;
    made.kind = "ramp";
    made.place = river_mile(mile);
    made.at = GeoPoint{latitude, longitude};
    return made;
  };
  in.river.accesses = {access("mill", "Mill Bridge", 40.2, 45.163, -111.251),
                       access("bar", "Alder Bar", 34.4, 45.214, -111.189),
                       access("ferry", "Old Ferry", 28.6, 45.266, -111.127)};
  Hazard ledge;
  ledge.what = "The Ledge";
  ledge.place = river_mile(31.5);  // half way from Alder Bar to Old Ferry
  ledge.how = "STOP ABOVE. PORTAGE RIGHT.";
  ledge.must_portage = true;
  ledge.portage_time = floatwright::minutes(40);
  Hazard shelf;
  shelf.what = "Quarry shelf";
  shelf.place = river_mile(25.1);  // below the last access that has coordinates
  shelf.least_flow = cubic_feet_per_second(750);
  in.river.hazards = {ledge, shelf};
  Spot run;
  run.id = "mill_bend";
  run.name = "Mill bend";
  run.place = river_mile(39.0);
  in.river.spots = {run};
  return in;
}

std::string geojson(const DayInputs& in) { return read_back(kGeoJsonReader, plan_geojson(sample_plan(), in)); }
std::string gpx(const DayInputs& in) { return read_back(kGpxReader, plan_gpx(sample_plan(), in)); }

TEST(MapOfTheDay, HasItsAccessesWithLongitudeFirst) {
  const auto read = geojson(inputs());
  EXPECT_THAT(read, HasSubstr("access|Mill Bridge|[-111.251, 45.163]|put in|False|None|"));
  EXPECT_THAT(read, HasSubstr("access|Alder Bar|[-111.189, 45.214]|on the float|False|None|'Ramp.'"));
  EXPECT_THAT(read, HasSubstr("access|Old Ferry|[-111.127, 45.266]|take out|False|None|'Ramp.\\nOff the water by 16:00.'"));
}

TEST(MapOfTheDay, PlacesAHazardBetweenTheAccessesAndSaysThatItIsApproximate) {
  const auto read = geojson(inputs());
  // Half way: mean of the coordinates. How far off at most, by hand: accesses 0.052 and 0.062 degrees apart, 5782 m and
  // 4857 m at 45.24 N, so 7551 m; the river 9334 m; its half times sqrt(1 - 0.6545) is 2743 m, within the next ten.
  EXPECT_THAT(read, HasSubstr("hazard|The Ledge|[-111.158, 45.24]|on the float|True|2750.0|'STOP ABOVE. PORTAGE RIGHT.\\nPortage, 40 min."));
  EXPECT_THAT(read, HasSubstr("PLACE APPROXIMATE, from the way along the river between Alder Bar and Old Ferry: it may be up to 1.8 mi away."));
}

TEST(MapOfTheDay, KeepsAHazardThatItCannotPlace) {
  EXPECT_THAT(geojson(inputs()), HasSubstr("hazard|Quarry shelf|None|None|False|None|'Under 750 cfs."));
  EXPECT_THAT(gpx(inputs()), HasSubstr("NOT ON THIS MAP: hazard Quarry shelf, mile 25.1. Under 750 cfs."));
}

TEST(MapOfTheDay, HasTheRigInTheDescription) {
  const auto read = geojson(inputs());
  EXPECT_THAT(read, HasSubstr("A (square): 9 ft 6-wt  sinking tip 12 1/2 ft 5 in/s; leader")) << "at the put-in";
  EXPECT_THAT(read, HasSubstr("spot|Mill bend|"));
  EXPECT_THAT(read, HasSubstr("'Mill run 07:30-09:10.\\nRun: A, sinking tip 12 1/2 ft 5 in/s, leader 3 1/2 ft, weighted streamer"));
  EXPECT_THAT(read, HasSubstr("\\nBank: A, sinking tip"));
}

TEST(MapOfTheDay, SaysTheSameAsGpx) {
  const auto read = gpx(inputs());
  EXPECT_THAT(read, HasSubstr("1.1|floatwright|Lantern River: Mill Bridge -> Old Ferry, Friday 14 May 2027|2027-05-14 02:20:00+00:00|"));
  EXPECT_THAT(read, HasSubstr("access|Mill Bridge|45.163|-111.251|'mile 40.2, put in\\nRamp."));
  EXPECT_THAT(read, HasSubstr("hazard|HAZARD The Ledge (about here)|45.24|-111.158|'mile 31.5, on the float\\nSTOP ABOVE."));
  EXPECT_THAT(read, HasSubstr("spot|Mill bend (about here)|"));
  EXPECT_THAT(read, Not(HasSubstr("Quarry shelf (about here)")));
}

TEST(MapOfTheDay, IsWholeWithoutAPlanAndWithoutCoordinates) {
  DayInputs in = inputs();
  for (Access& access : in.river.accesses) access.at.reset();
  DayPlan plan = sample_plan();
  plan.nothing = true;
  plan.stretches.clear();
  const auto json = read_back(kGeoJsonReader, plan_geojson(plan, in));
  EXPECT_THAT(json, HasSubstr("access|Mill Bridge|None|None|False|None|"));
  const auto xml = read_back(kGpxReader, plan_gpx(plan, in));
  EXPECT_THAT(xml, HasSubstr("NO PLAN: Lantern River"));
  EXPECT_THAT(xml, HasSubstr("NOT ON THIS MAP: access Mill Bridge"));
}

TEST(MapOfTheDay, WritesNoNumberThatIsNone) {
  DayInputs in = inputs();
  in.river.accesses[1].at->latitude_deg = std::numeric_limits<double>::quiet_NaN();
  in.river.accesses[2].at->longitude_deg = std::numeric_limits<double>::infinity();
  EXPECT_THAT(geojson(in), HasSubstr("access|Alder Bar|None|"));
  EXPECT_THAT(gpx(in), HasSubstr("access|Mill Bridge|45.163"));
}

TEST(MapOfTheDay, LetsNoNameBreakItsDocument) {
  DayInputs in = inputs();
  in.river.hazards[0].what = "<Ledge> & \"sons\"]]>\r\n\x01\xFF \xEF\xBF\xBE 水 🛶";
  EXPECT_THAT(geojson(in), HasSubstr("hazard|<Ledge> & \"sons\"]]> ? "));
  EXPECT_THAT(gpx(in), HasSubstr("hazard|HAZARD <Ledge> & \"sons\"]]> ? ? 水 🛶 (about here)|45.24|"));
}

}  // namespace
}  // namespace floatwright::testing
