#include "adapters/in/files/services_object.hpp"

#include <algorithm>

#include "adapters/in/files/station_name.hpp"
#include "adapters/in/http/web_address.hpp"

namespace floatwright {
namespace {

// https, or plain http on this machine; a query would be lost behind what is put after it.
bool may_be_asked(const std::string& address) {
  const auto parts = web_address(address);
  if (!parts || parts->host.empty() || address.find_first_of("?#@") != std::string::npos) return false;
  return parts->scheme == "https" || (parts->scheme == "http" && is_loopback(parts->host));
}

std::string without_slash(std::string address) {
  while (address.ends_with('/')) address.pop_back();
  return address;
}

void tell_ending(TypedObject& in, const std::string& name) {
  constexpr bool kWarning = true;
  if (name != "usgs-legacy" && name != "usgs-waterml1") return;
  in.tell("name", "\"" + name + "\"", "a service that stays: the agency switches this one off on 22 February 2027",
          "Take the entry away; usgs-water-data is asked then.", kWarning);
}

ServiceSettings read_service(TypedObject& in) {
  ServiceSettings out;
  out.name = in.text("name", Need::Required);
  if (!out.name.empty() && std::ranges::find(service_names(), out.name) == service_names().end())
    tell_unknown_word(in, "name", out.name, service_names());
  tell_ending(in, out.name);
  const std::string address = in.text("address", Need::Optional), key = in.text("api_key_file", Need::Optional);
  if (!address.empty() && !may_be_asked(address))
    in.tell("address", "\"" + address + "\"", "an https address without a query, or http to a loopback number",
            "Write it as \"https://host/path\".");
  if (!address.empty()) out.address = without_slash(address);
  if (!key.empty()) out.api_key_file = key;
  in.finish();
  return out;
}

}  // namespace

std::vector<ServiceSettings> read_services(TypedObject& in) {
  std::vector<ServiceSettings> out;
  for (TypedObject& service : in.objects("services", Need::Optional)) out.push_back(read_service(service));
  return out;
}

}  // namespace floatwright
