# What does `cmake --install` put where, and what is in the Debian package? The program, its manual page and completion
# scripts (printed by the program itself after it is built), the JSON schemas, README and licences, in the usual places
# of the file hierarchy standard.
include(GNUInstallDirs)
find_program(GZIP_PROGRAM gzip REQUIRED)

set(pages ${CMAKE_BINARY_DIR}/pages)
add_custom_command(
  OUTPUT ${pages}/tapbook.1.gz ${pages}/tapbook ${pages}/_tapbook ${pages}/tapbook.fish
  COMMAND ${CMAKE_COMMAND} -E make_directory ${pages}
  COMMAND tapbook manual > ${pages}/tapbook.1
  COMMAND ${GZIP_PROGRAM} -9 --no-name --force ${pages}/tapbook.1
  COMMAND tapbook completion bash > ${pages}/tapbook
  COMMAND tapbook completion zsh > ${pages}/_tapbook
  COMMAND tapbook completion fish > ${pages}/tapbook.fish
  DEPENDS tapbook
  VERBATIM)
add_custom_target(tapbook_pages ALL DEPENDS ${pages}/tapbook.1.gz)

set(CMAKE_SKIP_INSTALL_ALL_DEPENDENCY ON)  # installing builds nothing; tests and tools build first
install(TARGETS tapbook)
install(FILES ${pages}/tapbook.1.gz DESTINATION ${CMAKE_INSTALL_MANDIR}/man1)
install(FILES ${pages}/tapbook DESTINATION ${CMAKE_INSTALL_DATADIR}/bash-completion/completions)
install(FILES ${pages}/_tapbook DESTINATION ${CMAKE_INSTALL_DATADIR}/zsh/site-functions)
install(FILES ${pages}/tapbook.fish DESTINATION ${CMAKE_INSTALL_DATADIR}/fish/vendor_completions.d)
file(GLOB json_schemas CONFIGURE_DEPENDS ${CMAKE_SOURCE_DIR}/schema/*.schema.json)
install(FILES ${json_schemas} DESTINATION ${CMAKE_INSTALL_DATADIR}/tapbook/schema)
install(FILES README.md LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR})
install(FILES LICENSE DESTINATION ${CMAKE_INSTALL_DOCDIR} RENAME copyright)

# The libraries inside the program: their licences ask to travel with it.
foreach(library libcli11-dev libfmt-dev libsqlite3-dev nlohmann-json3-dev libtomlplusplus-dev libutf8proc-dev libsodium-dev nettle-dev libqrcodegencpp-dev
    coinor-libcbc-dev)
  if(EXISTS /usr/share/doc/${library}/copyright)
    install(FILES /usr/share/doc/${library}/copyright DESTINATION ${CMAKE_INSTALL_DOCDIR}/libraries RENAME ${library})
  endif()
endforeach()

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME tapbook)
set(CPACK_PACKAGE_VERSION ${PROJECT_VERSION})
set(CPACK_PACKAGE_CONTACT "tapbook contributors <tapbook@example.invalid>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "where to tap a factory sound system, and which converter fits")
set(CPACK_DEBIAN_PACKAGE_DESCRIPTION
    "Tells the installer of a car amplifier where to tap a factory radio's speaker\n\
wiring, which two conductors, which one is positive and how sure that is, and\n\
which line output converter fits. The shop fills its own catalog, one SQLite\n\
file; an invented practice shop comes with the program.")
set(CPACK_DEBIAN_PACKAGE_SECTION electronics)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
include(CPack)
