/// Large workbook texts of known content, for benches and bounds.
#pragma once

#include <cstdint>
#include <string>

namespace puteal::test
{

/// A sheet `big` with one column of words and `amounts` columns of typed quantities, every cell different:
/// lines * (amounts + 1) cells. Cell (l, c) is (l * 7 + c) / 100 mg/L.
inline std::string bigWorkbookText(std::uint32_t lines, std::uint32_t amounts)
{
    std::string text = "puteal workbook 1\nsheet big \"Large\"\ncolumn item words \"Item\" 20\n";
    for (std::uint32_t c = 0; c < amounts; ++c)
        text += "column c" + std::to_string(c) + " amounts \"Column\" 12\n";
    text.reserve(text.size() + std::size_t{lines} * (20 + std::size_t{amounts} * 18));
    for (std::uint32_t l = 0; l < lines; ++l) {
        text += "line\nitem: \"Well ";
        text += std::to_string(l);
        text += "\"\n";
        for (std::uint32_t c = 0; c < amounts; ++c) {
            const std::uint32_t hundredths = l * 7 + c;
            text += 'c';
            text += std::to_string(c);
            text += ": ";
            text += std::to_string(hundredths / 100);
            text += '.';
            text += static_cast<char>('0' + hundredths / 10 % 10);
            text += static_cast<char>('0' + hundredths % 10);
            text += " mg/L\n";
        }
    }
    return text + "end big " + std::to_string(lines) + "\nend workbook\n";
}

/// A sheet `runs` whose `columns` columns are filled with one formula each over all lines but the first.
inline std::string filledWorkbookText(std::uint32_t lines, std::uint32_t columns)
{
    std::string text = "puteal workbook 1\nsheet runs \"Runs\"\n", first = "line\n", second = "line\n",
                last = "line\nstop";
    for (std::uint32_t c = 0; c < columns; ++c) {
        const std::string key = "c" + std::to_string(c);
        text += "column " + key + " amounts \"Column\" 12\n";
        first += key + ": " + std::to_string(c) + "\n";
        second += "fill " + key + ": " + key + "[-1] + 1\n";
        last += ' ' + key;
    }
    text += first + second;
    if (lines > 3)
        text += "skip " + std::to_string(lines - 3) + '\n';
    return text + last + "\nend runs " + std::to_string(lines) + "\nend workbook\n";
}

} // namespace puteal::test
