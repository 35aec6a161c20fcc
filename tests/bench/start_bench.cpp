/// Start to finish of `puteal eval` against an empty C++ program, alternated in one run; one JSON line.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

extern char **environ;

namespace
{

double seconds(std::vector<std::string> words)
{
    std::vector<char *> arguments;
    for (auto &word : words)
        arguments.push_back(word.data());
    arguments.push_back(nullptr);
    posix_spawn_file_actions_t actions;
    posix_spawn_file_actions_init(&actions);
    posix_spawn_file_actions_addopen(&actions, 1, "/dev/null", 1, 0);
    const auto start = std::chrono::steady_clock::now();
    pid_t child = 0;
    int status = 0;
    if (posix_spawn(&child, arguments[0], &actions, nullptr, arguments.data(), environ) != 0 ||
        waitpid(child, &status, 0) != child || status != 0) {
        std::fprintf(stderr, "%s failed\n", words[0].c_str());
        std::exit(1);
    }
    posix_spawn_file_actions_destroy(&actions);
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

double median(std::vector<double> values)
{
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
}

} // namespace

int main(int argc, char **argv)
{
    if (argc > 1 && std::string(argv[1]) == "--empty")
        return 0;
    char self[4096];
    const auto length = readlink("/proc/self/exe", self, sizeof self - 1);
    const std::string me(self, length > 0 ? static_cast<std::size_t>(length) : 0);
    // The floor is a program of the same language that does nothing: this one, told to leave at once.
    const std::string puteal = PUTEAL_BUILD_DIR "/bin/puteal";
    std::vector<double> ours, floors, ratios;
    for (int round = 0; round < 31; ++round) {
        const double floor = seconds({me, "--empty"});
        const double time = seconds({puteal, "eval", "compensated_hardness(10 gpg, 1 mg/L as Fe)"});
        ours.push_back(time);
        floors.push_back(floor);
        ratios.push_back(time / floor);
    }
    std::sort(ratios.begin(), ratios.end());
    std::printf("{\"bench\":\"start\",\"ours_ms\":%.3f,\"floor_ms\":%.3f,\"ratio\":%.2f,\"spread\":[%.2f,%."
                "2f],\"figure\":3}\n",
                median(ours) * 1e3, median(floors) * 1e3, ratios[ratios.size() / 2], ratios[3],
                ratios[ratios.size() - 4]);
}
