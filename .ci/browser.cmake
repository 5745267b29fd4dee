# The library compiled by Debian's Emscripten: no program is linked yet.
set(CMAKE_GENERATOR Ninja CACHE INTERNAL "")
set(CMAKE_TOOLCHAIN_FILE /usr/share/emscripten/cmake/Modules/Platform/Emscripten.cmake CACHE FILEPATH "")
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(SLABWRIGHT_BROWSER ON CACHE BOOL "")
# Only whether it compiles is asked here, and -O0 answers that in half the time.
set(CMAKE_CXX_FLAGS_RELEASE "-O0" CACHE STRING "")
set(SLABWRIGHT_JOINED ON CACHE BOOL "")
