#include <fmt/format.h>

#include "adapters/out/start/first_files.hpp"
#include "adapters/out/start/quoted.hpp"

namespace floatwright {
namespace {

// A lodge's own staff gauge or logger: its file and columns are declared, no service is asked.
std::string csv_gauge(const std::string& station) {
  if (!station.starts_with("csv:")) return {};
  return fmt::format(
      "  \"csv_gauges\": [\n"
      "    {{ \"station\": {},\n"
      "      \"file\": null,         // TYPE: where the readings are, such as \"staff_gauge.csv\"\n"
      "      \"time_column\": null,  // TYPE: the column of the time, by its name or its number from 1\n"
      "      \"columns\": [\n"
      "        {{ \"column\": null,   // TYPE: the column of the flow\n"
      "          \"quantity\": \"discharge\",\n"
      "          \"unit\": null      // TYPE: such as \"cfs\" or \"m3/s\"\n"
      "        }} ] }} ],\n\n",
      quoted(station));
}

std::string readings(const std::filesystem::path& payloads) {
  if (payloads.empty())
    return "  // \"archive\": \"archive\",  // a directory for the readings kept; else the program's own\n";
  return fmt::format(
      "  // Recorded answers in place of the network. Take the line away, and the service itself is asked.\n"
      "  \"readings\": {},\n",
      quoted(payloads.string()));
}

}  // namespace

std::string first_settings(const FirstValues& values) {
  const bool us = values.units == UnitSystem::Us;
  return fmt::format(
             "// How you fish and what you want: usual values, to be made your own.\n"
             "// floatwright-settings(5) has the rest.\n"
             "{{\n  \"schema_version\": 1,\n  \"units\": \"{}\",\n",
             us ? "us" : "metric") +
         "  // \"who\": { \"name\": \"Wren\", \"phone\": \"555-0142\" },  // you, as the pages name you\n\n"
         "  // Who fishes from the boat: how far each casts, and whether they wade.\n" +
         fmt::format("  \"people\": [ {{ \"name\": \"guest\", \"{}\": {}, \"wades\": false }} ],\n",
                     us ? "cast_ft" : "cast_m", us ? 40 : 12) +
         "  // How gladly you fish each way, 0 to 1. Leave one out and it is never advised; \"tight_line\" too.\n"
         "  \"methods\": { \"swing\": 1.0, \"strip\": 1.0, \"indicator\": 1.0, \"dry\": 1.0 },\n"
         "  \"rods_aboard\": 3,\n"
         "  \"hours\": { \"earliest_launch\": \"07:30\", \"latest_off\": \"19:00\" },\n\n"
         "  // Whoever stays ashore and calls for help when you are not heard of.\n"
         "  // \"ashore\": { \"contact\": \"Marten\", \"phone\": \"555-0199\" },\n"
         "  // \"emergency\": \"Call 112 or 911. No signal between mile 37 and mile 31.\",\n\n" +
         csv_gauge(values.about.station) + readings(values.payloads) +
         "  // \"contact\": \"you@example.org\",  // told to the gauge services, so that they can write to you\n"
         "  \"day_turns_at\": \"10:00\"  // from then on tomorrow is planned, on the river's clock\n"
         "}\n";
}

}  // namespace floatwright
