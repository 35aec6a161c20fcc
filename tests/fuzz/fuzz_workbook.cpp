/// Bytes as a workbook file: refused with a place and words, or read, written and read again as the same.
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "file/reader.h"
#include "file/writer.h"

using namespace puteal;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t *data, std::size_t size)
{
    const std::string_view text(reinterpret_cast<const char *>(data), size);
    (void)recounted(text);
    const auto book = readWorkbook(text);
    if (!book) {
        if (book.error().words.empty())
            std::abort();
        return 0;
    }
    const std::string written = writeWorkbook(*book);
    const auto again = readWorkbook(written);
    if (!again || !(*again == *book) || writeWorkbook(*again) != written)
        std::abort(); // the promise of the file
    return 0;
}
