# Programs that look for input which breaks a reader, a polygon or the whole run: clang's libFuzzer, in tests/fuzz.
include(${CMAKE_CURRENT_LIST_DIR}/common.cmake)
set(CMAKE_CXX_COMPILER clang++ CACHE STRING "")
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
# What a fuzzer finds must stop it, and -O1 is what it can still tell lines of code apart in.
set(CMAKE_CXX_FLAGS
  "-fsanitize=fuzzer-no-link,address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer" CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELEASE "-O1 -g1" CACHE STRING "")
set(SLABWRIGHT_JOINED ON CACHE BOOL "")
set(SLABWRIGHT_TESTS OFF CACHE BOOL "")
set(SLABWRIGHT_FUZZ ON CACHE BOOL "")
