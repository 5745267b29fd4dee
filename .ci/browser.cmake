# The core compiled by Debian's Emscripten and linked as one file, slabwright.js, that a page or Node loads.
include(${CMAKE_CURRENT_LIST_DIR}/common.cmake)
set(CMAKE_TOOLCHAIN_FILE /usr/share/emscripten/cmake/Modules/Platform/Emscripten.cmake CACHE FILEPATH "")
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(SLABWRIGHT_BROWSER ON CACHE BOOL "")
set(CMAKE_CXX_FLAGS_RELEASE "-O1" CACHE STRING "")
set(SLABWRIGHT_JOINED ON CACHE BOOL "")
