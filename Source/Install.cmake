# Where Debian wants things: `cmake --install build --prefix DIR`, and `cpack --preset deb` for a package.
# The command and the plugins find their presets in share/coldiron beside them (job/PresetFolders).
include(GNUInstallDirs)

install(TARGETS coldiron RUNTIME DESTINATION ${CMAKE_INSTALL_BINDIR})
install(DIRECTORY ${PROJECT_SOURCE_DIR}/presets/ DESTINATION ${CMAKE_INSTALL_DATADIR}/coldiron/presets)
install(FILES ${PROJECT_SOURCE_DIR}/README.md ${PROJECT_SOURCE_DIR}/CHANGELOG.md
        DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/coldiron)
install(FILES ${PROJECT_SOURCE_DIR}/Assets/desktop/copyright DESTINATION ${CMAKE_INSTALL_DATADIR}/doc/coldiron)

if(COLDIRON_PLUGIN)
    # Hosts look for plugins in lib/vst3 and lib/lv2, whatever the machine's own library folder is.
    get_target_property(artefacts coldiron_plugin LIBRARY_OUTPUT_DIRECTORY)
    install(DIRECTORY "${artefacts}/VST3/Coldiron.vst3" DESTINATION lib/vst3 USE_SOURCE_PERMISSIONS)
    install(DIRECTORY "${artefacts}/LV2/Coldiron.lv2" DESTINATION lib/lv2 USE_SOURCE_PERMISSIONS)
    install(PROGRAMS "$<TARGET_FILE:coldiron_plugin_Standalone>" DESTINATION ${CMAKE_INSTALL_BINDIR} RENAME coldiron-app)
    install(FILES ${PROJECT_SOURCE_DIR}/Assets/desktop/coldiron.desktop DESTINATION ${CMAKE_INSTALL_DATADIR}/applications)
    install(FILES ${PROJECT_SOURCE_DIR}/Assets/desktop/coldiron.svg DESTINATION ${CMAKE_INSTALL_DATADIR}/icons/hicolor/scalable/apps)
endif()

set(CPACK_GENERATOR DEB)
set(CPACK_PACKAGE_NAME coldiron)
set(CPACK_PACKAGE_VENDOR "Coldiron")
set(CPACK_PACKAGE_CONTACT "Coldiron maintainers <maintainers@coldiron.example>")
set(CPACK_PACKAGE_DESCRIPTION_SUMMARY "Hear a guitar rewire before a joint is opened")
set(CPACK_PACKAGE_DESCRIPTION "Takes a clean DI take of an electric guitar or bass, removes the computed response of the guitar
as it was recorded, and applies that of any other wiring and knob position: command, app, VST3 and LV2 plugin.")
set(CPACK_PACKAGING_INSTALL_PREFIX /usr)
set(CPACK_STRIP_FILES ON)
set(CPACK_DEBIAN_FILE_NAME DEB-DEFAULT)
set(CPACK_DEBIAN_PACKAGE_SECTION sound)
set(CPACK_DEBIAN_PACKAGE_PRIORITY optional)
set(CPACK_DEBIAN_PACKAGE_SHLIBDEPS ON) # asks dpkg-shlibdeps what the programs link
include(CPack)
