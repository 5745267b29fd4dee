# The everyday build: quick to compile, library assertions on, backtraces readable.
include(${CMAKE_CURRENT_LIST_DIR}/common.cmake)
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS "-D_GLIBCXX_ASSERTIONS" CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O1 -g1" CACHE STRING "")
