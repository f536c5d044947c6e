floatwright_test(published_muskingum_test
  SOURCES ${CMAKE_CURRENT_LIST_DIR}/chow_1988_muskingum_test.cpp ${CMAKE_CURRENT_LIST_DIR}/ponce_muskingum_test.cpp
    ${CMAKE_CURRENT_LIST_DIR}/bedient_muskingum_cunge_test.cpp
  ALONE bedient_muskingum_cunge_test.cpp ponce_muskingum_test.cpp
  USES routing)
floatwright_test(published_area_ratio_test SOURCES ${CMAKE_CURRENT_LIST_DIR}/area_ratio_test.cpp USES routing)
floatwright_test(published_scores_test
  SOURCES ${CMAKE_CURRENT_LIST_DIR}/hydroerr_scores_test.cpp ${CMAKE_CURRENT_LIST_DIR}/forecast_scores_test.cpp
  USES statistics)
floatwright_test(published_recession_test SOURCES ${CMAKE_CURRENT_LIST_DIR}/recession_test.cpp USES forecast)
floatwright_test(published_heat_exchange_test SOURCES ${CMAKE_CURRENT_LIST_DIR}/edinger_1968_heat_exchange_test.cpp
  USES temperature)
floatwright_test(published_travel_time_test SOURCES ${CMAKE_CURRENT_LIST_DIR}/jobson_1996_travel_time_test.cpp
  USES temperature)
