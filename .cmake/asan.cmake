# Sanitizer variant (clang): address and undefined behavior.   cmake -C .cmake/asan.cmake -B .build/asan
set(CMAKE_CXX_COMPILER "clang++-14" CACHE STRING "")
set(CMAKE_BUILD_TYPE "Debug" CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O1 -g1 -fno-omit-frame-pointer -fsanitize=address,undefined -fno-sanitize-recover=undefined" CACHE STRING "")
