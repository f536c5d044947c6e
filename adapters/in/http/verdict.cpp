#include "adapters/in/http/verdict.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <string_view>

#include "adapters/in/text/printable.hpp"

namespace floatwright {
namespace {

// Types are words without case (RFC 9110, 8.3.1).
bool contains(std::string_view type, std::string_view word) {
  const auto lower = [](unsigned char c) { return std::tolower(c); };
  return word.empty() || !std::ranges::search(type, word, {}, lower, lower).empty();
}

std::string advice(int status) {
  if (status == 429) return "asked too often: wait an hour, or name an api_key_file in settings.json";
  if (status == 401) return "it wants a key, or another: look at api_key_file in settings.json";
  if (status == 403) return "it lets this machine or this key in no more: look at api_key_file in settings.json";
  if (status == 410 || (status >= 300 && status < 400)) return "the service may have moved: look at its pages";
  if (status == 400 || status == 414 || status == 422)
    return "it does not understand what was asked: look at the station in river.json";
  return "try again later";
}

// A service may repeat what it was sent.
std::string without_secret(std::string text, const std::string& secret_header) {
  const auto value = secret_header.find_first_not_of(": ", secret_header.find(':'));
  if (secret_header.empty() || value == std::string::npos) return text;
  const std::string secret = secret_header.substr(value);
  const std::string shown = "(the key)";
  for (auto at = text.find(secret); at != std::string::npos; at = text.find(secret, at + shown.size()))
    text.replace(at, secret.size(), shown);
  return text;
}

// What the service itself says, where that is a text and not a page.
std::string its_words(const HttpRequest& request, const HttpAnswer& answer) {
  constexpr std::size_t kLongest = 200;
  const std::string& type = answer.content_type;
  const bool is_text = contains(type, "json") || contains(type, "text/plain") || contains(type, "xml");
  if (answer.body.empty() || !is_text || contains(type, "html")) return "";
  return ", " + printable(without_secret(answer.body, request.secret_header), kLongest);
}

bool is_of_type(const HttpRequest& request, const HttpAnswer& answer) {
  return request.content_types.empty() || std::ranges::any_of(request.content_types, [&](const auto& word) {
           return contains(answer.content_type, word);
         });
}

}  // namespace

bool is_passing(int status) { return status == 429 || (status >= 500 && status < 600); }

std::optional<std::string> why_no_answer(const HttpRequest& request, const HttpAnswer& answer) {
  const bool conditional = !request.etag.empty() || !request.last_modified.empty();
  if (answer.status == 404 || (answer.status == 304 && conditional)) return std::nullopt;
  if (answer.status != 200 && answer.status != 206)
    return fmt::format("the service answered with status {}{}; {}", answer.status, its_words(request, answer),
                       advice(answer.status));
  if (is_of_type(request, answer)) return std::nullopt;
  return fmt::format("the service sent \"{}\", not {}; it may have moved: look at its pages",
                     printable(answer.content_type), fmt::join(request.content_types, " or "));
}

}  // namespace floatwright
