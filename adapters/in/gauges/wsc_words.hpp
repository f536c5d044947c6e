#pragma once
// The words that the services of the Water Survey of Canada share.
// Symbols as its archive lists them (A partial day, B ice, D dry, E estimated, R revised, S sampled); steps of checking
// 1 to 4 of the datamart, grades 10 to 50 and approval words of the web service as public clients describe them. The
// list is open: a code that is not in it is Mark::Unknown.
#include <set>
#include <string>
#include <string_view>

#include "engine/readings/reading.hpp"

namespace floatwright {

// "Provisional/Provisoire": the half before the slash, without blanks around it.
[[nodiscard]] std::string_view english_half(std::string_view text);

// One cell's codes, several parted by ";" or ",". Unknown ones are kept in `unknown`.
void add_wsc_marks(std::string_view cell, Marks& marks, std::set<std::string>& unknown);

// The head of a station's series; `series_id` as the service names it.
[[nodiscard]] GaugeSeries wsc_series(std::string_view station, std::string series_id, Variable variable,
                                     const std::string& where);

}  // namespace floatwright
