#pragma once
// The loop that all routing goes through: one Muskingum piece over all steps, N flows abreast. Step follows step
// through the outflow before, so one flow waits for its own arithmetic; N of them fill that time.
#include <array>
#include <span>

#include "engine/routing/muskingum.hpp"

namespace floatwright {

// In place: inflow goes in, outflow comes out. Rows are equally long and not empty.
template <std::size_t N>
void pass_piece(const std::array<std::span<Discharge>, N>& flow, const std::array<MuskingumWeights, N>& weights,
                const std::array<Discharge, N>& first_outflow) {
  std::array<Discharge, N> inflow_before, outflow = first_outflow;
  for (std::size_t j = 0; j < N; ++j) {
    inflow_before[j] = flow[j][0];
    flow[j][0] = outflow[j];
  }
  const std::size_t steps = flow[0].size();
  for (std::size_t i = 1; i < steps; ++i) {
    for (std::size_t j = 0; j < N; ++j) {
      const Discharge inflow = flow[j][i];
      outflow[j] = weights[j].inflow_now * inflow + weights[j].inflow_before * inflow_before[j] +
                   weights[j].outflow_before * outflow[j];
      inflow_before[j] = inflow;
      flow[j][i] = outflow[j];
    }
  }
}

}  // namespace floatwright
