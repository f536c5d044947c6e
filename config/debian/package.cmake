# What is installed, and the Debian package made of it by cpack: program, manual pages, completion, schemas and, as
# examples, the demo with its payloads and the files for cron and systemd.
include_guard()
include(GNUInstallDirs)

set(documents ${CMAKE_INSTALL_DOCDIR})
set(examples ${documents}/examples)

install(TARGETS floatwright)
foreach(page ${FLOATWRIGHT_MANUAL_PAGES})
  string(REGEX REPLACE ".*\\.([15])\\.gz$" "\\1" section ${page})
  install(FILES ${page} DESTINATION ${CMAKE_INSTALL_MANDIR}/man${section})
endforeach()
install(FILES config/completion/floatwright.bash RENAME floatwright
  DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions)
install(FILES config/completion/_floatwright DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/vendor-completions)
install(DIRECTORY config/schemas DESTINATION ${CMAKE_INSTALL_DATADIR}/floatwright)
# The demo finds its payloads by the same way as in the source tree.
install(DIRECTORY config/demo config/cases config/cron DESTINATION ${examples}/config)
install(FILES config/judgement.json DESTINATION ${examples}/config)
install(DIRECTORY fixtures/lantern/payloads DESTINATION ${examples}/fixtures/lantern)

# As a field of a control file: one blank before each line, a full stop on an empty one.
file(READ docs/LICENSE license)
string(REGEX REPLACE "^MIT License\n\nCopyright[^\n]*\n\n" "" license "${license}")
string(STRIP "${license}" license)
string(REGEX REPLACE "\n" "\n " license_as_field " ${license}")
string(REPLACE "\n \n" "\n .\n" license_as_field "${license_as_field}")
configure_file(config/debian/copyright.in ${PROJECT_BINARY_DIR}/debian/copyright @ONLY)
execute_process(COMMAND gzip -9n INPUT_FILE ${PROJECT_SOURCE_DIR}/config/debian/changelog
  OUTPUT_FILE ${PROJECT_BINARY_DIR}/debian/changelog.Debian.gz COMMAND_ERROR_IS_FATAL ANY)
set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS docs/LICENSE config/debian/changelog)
install(FILES ${PROJECT_BINARY_DIR}/debian/copyright ${PROJECT_BINARY_DIR}/debian/changelog.Debian.gz DESTINATION ${documents})

install(FILES config/debian/lintian-overrides RENAME floatwright DESTINATION ${CMAKE_INSTALL_DATADIR}/lintian/overrides)

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME floatwright)
set(CPACK_PACKAGE_CONTACT "the floatwright authors <authors@floatwright.invalid>")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_INSTALL_DEFAULT_DIRECTORY_PERMISSIONS
  OWNER_READ OWNER_WRITE OWNER_EXECUTE GROUP_READ GROUP_EXECUTE WORLD_READ WORLD_EXECUTE)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_RELEASE 1)
set(CPACK_DEBIAN_PACKAGE_SECTION science)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
# What no shared library tells: fonts of the sheet, zones of the rivers, certificates of the services.
set(CPACK_DEBIAN_PACKAGE_DEPENDS "fonts-dejavu-core, tzdata, ca-certificates")
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION
"For guides and anglers of large trout rivers: from the newest flow and water
temperature of public river gauges it works out how deep and how fast each
reach will be tomorrow, which stretch to float and when, and which fly line,
sinking tip, leader and fly reach the fish there. It runs without a screen,
prints text, PDF, calendar and map, and never says that water is safe.")
include(CPack)
