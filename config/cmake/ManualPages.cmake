# The manual pages: docs/man made into roff by scdoc and compressed as Debian wants it, in build/man.
include_guard()

find_program(FLOATWRIGHT_SCDOC scdoc)
set(FLOATWRIGHT_MANUAL_PAGES)

# floatwright-judgement(5) holds the file that it describes.
file(READ ${PROJECT_SOURCE_DIR}/config/judgement.json JUDGEMENT)
string(STRIP "${JUDGEMENT}" JUDGEMENT)
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${PROJECT_SOURCE_DIR}/config/judgement.json)

foreach(page floatwright.1 floatwright-river.5 floatwright-tackle.5 floatwright-settings.5 floatwright-boats.5 floatwright-judgement.5)
  set(source ${PROJECT_BINARY_DIR}/man/${page}.scd)
  configure_file(${PROJECT_SOURCE_DIR}/docs/man/${page}.scd ${source} @ONLY)
  if(FLOATWRIGHT_SCDOC)
    add_custom_command(OUTPUT ${PROJECT_BINARY_DIR}/man/${page}.gz
      COMMAND sh -c "${FLOATWRIGHT_SCDOC} < man/${page}.scd > man/${page} && gzip -9nkf man/${page}"
      DEPENDS ${source} WORKING_DIRECTORY ${PROJECT_BINARY_DIR} VERBATIM)
    list(APPEND FLOATWRIGHT_MANUAL_PAGES ${PROJECT_BINARY_DIR}/man/${page}.gz)
  endif()
endforeach()
if(FLOATWRIGHT_SCDOC)
  add_custom_target(manual_pages ALL DEPENDS ${FLOATWRIGHT_MANUAL_PAGES})
else()
  message(STATUS "no manual pages: the package scdoc is not installed")
endif()
