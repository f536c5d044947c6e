floatwright_test(published_nist_sp_811_units_test SOURCES nist_sp_811_units_test.cpp USES units)
floatwright_test(published_rantz_1982_velocity_curve_test SOURCES rantz_1982_velocity_curve_test.cpp USES water)
floatwright_test(published_analytic_velocity_profiles_test
  SOURCES ${CMAKE_CURRENT_LIST_DIR}/analytic_velocity_profiles_test.cpp ${CMAKE_CURRENT_LIST_DIR}/mazi_surface_ratio_test.cpp
  USES water)
floatwright_test(published_leopold_maddock_1953_test SOURCES leopold_maddock_1953_test.cpp USES water)
floatwright_test(published_bieger_2015_regional_curves_test SOURCES bieger_2015_regional_curves_test.cpp USES water)
floatwright_test(published_celerity_test
  SOURCES ${CMAKE_CURRENT_LIST_DIR}/ponce_celerity_test.cpp ${CMAKE_CURRENT_LIST_DIR}/bedient_rating_loop_test.cpp
  USES water)
floatwright_test(published_normal_depth_test
  SOURCES ${CMAKE_CURRENT_LIST_DIR}/bedient_normal_depth_test.cpp ${CMAKE_CURRENT_LIST_DIR}/hec_22_channels_test.cpp
    ${CMAKE_CURRENT_LIST_DIR}/jarrett_1984_test.cpp
  USES water)
floatwright_test(published_reach_distributions_test
  SOURCES ${CMAKE_CURRENT_LIST_DIR}/lamouroux_reach_distributions_test.cpp
  USES water)
floatwright_test(published_midsection_measurements_test SOURCES midsection_measurements_test.cpp USES water)
