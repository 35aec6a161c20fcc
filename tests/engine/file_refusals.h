/// Table of refusals for file_test.cpp: rule, text, file line, whole message. Included once, there.

inline void FileTest::refused_data()
{
    QTest::addColumn<QString>("text");
    QTest::addColumn<int>("line");
    QTest::addColumn<QString>("shows");
    const auto row = [](const char *rule, const std::string &text, int line, const QString &shows) {
        QTest::newRow(rule) << QString::fromStdString(text) << line << shows;
    };
    const auto book = [&](const char *rule, const std::string &records, int line, const QString &shows) {
        row(rule, "puteal workbook 1\n" + records + "end workbook\n", line,
            QString("file line %1: ").arg(line) + shows);
    };
    // Lines of sheet s begin at file line 7.
    const auto lines = [&](const char *rule, const std::string &records, int sheetLine, int line,
                           const QString &shows, const char *count = "1") {
        row(rule, inSheet(records, count), line,
            (sheetLine > 0 ? QString("sheet s line %1 (file line %2): ").arg(sheetLine).arg(line)
                           : QString("sheet s (file line %1): ").arg(line)) +
                shows);
    };

    row("another file", "hello\n", 1,
        "file line 1: the first line is not `puteal workbook 1`: this is some other file, or its first line "
        "was lost");
    row("version zero", "puteal workbook 0\nend workbook\n", 1,
        "file line 1: the first line is not `puteal workbook 1`: this is some other file, or its first line "
        "was lost");
    row("cut after a record", "puteal workbook 1\ntitle \"T\"\n", 3,
        "file line 3: the file ends without `end workbook`, so it was cut: take the copy kept beside it");
    row("cut inside a sheet", "puteal workbook 1\nsheet s \"S\"\nline\n", 4,
        "sheet s (file line 4): the file ends inside this sheet, so it was cut: take the copy kept beside "
        "it, or add `end s 1` and "
        "`end workbook`");
    row("cut inside the last line", "puteal workbook 1\nend workbook", 2,
        "file line 2: the last line has no line end: add one, or take the copy kept beside the file if it "
        "was cut");
    row("more after the end", "puteal workbook 1\nend workbook\n# x\n", 3,
        "file line 3: something stands after `end workbook`: take it out, or put it in front");
    row("carriage return", "puteal workbook 1\r\nend workbook\r\n", 1,
        "file line 1: this line ends with a carriage return: save the file with plain line feeds");
    row("carriage returns alone", "puteal workbook 1\rend workbook\r", 1,
        "file line 1: the lines of this file end with carriage returns alone: save it with plain line feeds");
    row("a packed file", std::string("PK\x03\x04\0\0", 6), 1,
        "file line 1: the first line is not `puteal workbook 1`: this is some other file, or its first line "
        "was lost");
    book("blank at a line end", "title \"T\" \n", 2, "blanks stand at the end of this line: take them out");
    book("tab", "title \"a\tb\"\n", 2, "a tab stands in this line: write blanks, or \\t inside quoted words");
    book("merge left open", "<<<<<<< mine\n", 2,
         "a merge left both sides here: keep one, take the lines with <<<<<<<, ======= and >>>>>>> out, then "
         "run `puteal recount "
         "FILE`");
    book("no record", "Title \"T\"\n", 2,
         "`Title \"T\"` is no record: take it out, or put # in front to keep it as a comment");
    book("title without quotation marks", "title T\n", 2,
         "`title` takes words in quotation marks, as in title \"Cutbank Road house\"");
    book("two titles", "title \"T\"\ntitle \"U\"\n", 3, "a second `title` stands here: keep one");
    book("plugin without version", "uses softening\n", 2,
         "`uses` takes a plugin and its major version, as in uses softening 1");
    book("plugin twice", "uses softening 1\nuses softening 2\n", 3,
         "the plugin softening is used twice: keep one `uses softening`");
    book("thing twice", "thing tank\nthing tank\n", 3,
         "the counted thing tank is declared twice: keep one `thing tank`");
    book("thing with a blank", "thing big tank\n", 2, "`thing` takes one word, as in thing tank");
    book("rule of below", "below third\n", 2, "`below` takes bound, half or zero");
    book("two rules of below", "below half\nbelow zero\n", 3, "a second `below` stands here: keep one");
    book("units", "units metric\n", 2, "`units` takes US or SI");
    book("list without words", "list verdict\n", 2,
         "`list` takes a name and words in quotation marks, best first, as in list verdict \"works\" "
         "\"marginal\"");
    book("word twice in a list", "list v \"x\"\n", 2,
         "`list` takes a name and words in quotation marks, best first, as in list verdict \"works\" "
         "\"marginal\"");
    book("the same word twice", "list verdict \"x\" \"y\" \"x\"\n", 2,
         "the word \"x\" stands twice in the list verdict: keep one");
    book("list twice", "list verdict \"x\"\nlist verdict \"y\"\n", 3,
         "the list verdict is declared twice: keep one");
    book("unknown mark", "source X1 laboratory \"x\"\n", 2,
         "`source` takes a mark, its word and words in quotation marks, as in source L1 laboratory \"sheet "
         "7\"; marks begin with "
         "one of L F M D S H E P T R C A W");
    book("mark and word disagree", "source L1 handbook \"x\"\n", 2,
         "the mark L1 goes with the word laboratory, not with handbook: change one of them");
    book("source twice", "source L1 laboratory \"x\"\nsource L1 laboratory \"y\"\n", 3,
         "the source L1 is declared twice: give one of them another number");
    book("source without words", "source L1 laboratory x\n", 2,
         "`source L1 laboratory` takes words in quotation marks, as in source L1 laboratory \"sheet 7\"");
    book("required too late", "title \"T\"\n!require studies\n", 3,
         "`!require` stands directly under the first line: move it there");
    book("required twice", "!require studies\n!require studies\n", 3,
         "`!require studies` stands twice: keep one");
    book("required without a word", "!require\n", 2, "`!require` takes one word, as in !require studies");
    book("two workbooks joined", "puteal workbook 1\n", 2,
         "a second first line stands here: two workbooks were joined, keep one");
    book("cell outside a sheet", "amount: 3\n", 2,
         "the cell `amount` stands outside a sheet: put it under a `line` of its sheet");
    book("line outside a sheet", "line\n", 2,
         "`line` stands outside a sheet: put it between `sheet` and its `end`");
    book("attribute under nothing", "  name iron\n", 2,
         "this stands under no cell: put it under its cell, and comments above the cell");
    book("sheet without title", "sheet s\n", 2,
         "`sheet` takes a key and words in quotation marks, as in sheet water \"Water test\"");
    book("sheet twice", "sheet s \"S\"\nend s 0\nsheet s \"T\"\nend s 0\n", 4,
         "the sheet s stands twice: give one of them another key");
    book("reserved sheet key", "sheet not \"S\"\nend not 0\n", 2,
         "`not` is a word of the formula language: give the sheet another key");
    book("plot without chart", "plot s.a[:]\n", 2, "`plot` stands under no chart: put it under its `chart`");
    book("plot after another record", "chart c lines \"C\" x s.a[:]\ntitle \"T\"\nplot s.a[:]\n", 4,
         "`plot` stands under no chart: put it under its `chart`");
    book("chart twice", "chart c lines \"C\" x s.a[:]\nchart c bars \"C\" x s.a[:]\n", 3,
         "the chart c stands twice: give one of them another key");
    book("kind of chart", "chart c pies \"C\" x s.a[:]\n", 2,
         "`chart` takes a key, lines, bars or steps, words and x with a reference, as in chart cost lines "
         "\"Cost\" x costs.year[:]");
    book("plot twice", "chart c lines \"C\" x s.a[:]\nplot s.b[:]\nplot s.b[:] \"B\"\n", 4,
         "the chart c plots s.b[:] twice: keep one");
    book("plot with open words", "chart c lines \"C\" x s.a[:]\nplot s.b[:] \"B\n", 3,
         "`plot` takes a reference, words in quotation marks and perhaps only with a yes/no cell, as in plot "
         "costs.balance[:] "
         "\"Balance\"");

    lines("mistyped key", "line\nitme: \"x\"\n", 1, 8,
          "`itme` is no column of sheet s: write item, or add the column");
    lines("unknown key", "line\nyear: 3\n", 1, 8,
          "`year` is no column of sheet s: its columns are item, a and b");
    lines("cell before line", "a: 1\nline\n", 0, 7,
          "the cell `a` stands before the first `line`: put `line` in front");
    lines("cell under skip", "skip 2\na: 1\n", 2, 8,
          "the cell `a` stands under `skip`: put `line` in front, and count the skip again", "2");
    lines("key twice", "line\na: 1\nb: 2\na: 3\n", 1, 10,
          "`a` stands twice on this line: keep one, or put `line` between them");
    lines("cell and at", "line\nat a\na: 3\n", 1, 9,
          "`a` has an `at a` on this line: put those attributes under the cell");
    lines("at after a cell", "line\na: 3\nat a\n", 1, 9,
          "`a` stands twice on this line: put its attributes under one record");
    lines("at of no column", "line\nat c\n", 1, 8, "`at` takes a column of this sheet, as in at amount");
    lines("cell without text", "line\na:\n", 1, 8,
          "after `a:` stand one blank and the text: a blank cell has no record");
    lines("two blanks before the text", "line\na:  3\n", 1, 8,
          "after `a:` stand one blank and the text: a blank cell has no record");
    lines("line with more", "line 3\n", 0, 7, "`line` stands alone: put what follows it into the next line");
    lines("skip of nothing", "skip 0\n", 0, 7, "`skip` takes a number of lines from 1 up, as in skip 12",
          "0");
    lines("skip of words", "skip two\n", 0, 7, "`skip` takes a number of lines from 1 up, as in skip 12",
          "0");
    lines("column after a line", "line\ncolumn c amounts \"C\" 3\n", 1, 8,
          "`column` stands above the first line of its sheet: move it there");
    lines("column twice", "column a amounts \"C\" 3\n", 0, 7,
          "sheet s already has a column `a`: take another key");
    lines("width zero", "column c amounts \"C\" 0\n", 0, 7,
          "`column` takes a key, words or amounts, a title and a width from 1 to 1000, as in column item "
          "words \"Item\" 30");
    lines("name under a column", "column c amounts \"C\" 3\n  hide\n", 0, 8,
          "under a column stand unit, figures, places, source and choices only: put the rest under cells");
    lines("sheet inside a sheet", "line\nsheet t \"T\"\n", 1, 8,
          "`sheet` stands inside sheet s, which has no end: put `end s 1` in front");
    lines("workbook ends inside", "line\nend workbook\n", 1, 8, "sheet s has no end: put `end s 1` in front");
    lines("another sheet's end", "line\nend t 1\n", 1, 8,
          "this ends `t`, but the sheet here is s: look at both, the end of one was lost");
    lines("end without count", "line\nend s\n", 1, 8,
          "`end` takes the sheet's key and its number of lines: write `end s 1`");
    lines("wrong count", "line\nline\n", 0, 9,
          "s has 2 lines, not 3: look at the merge, then `puteal recount FILE`", "3");
    lines("expect without amount", "line\nexpect setting\n", 1, 8,
          "`expect` takes a reference, = and an amount, as in expect setting = 25 gpg within 1 %");
    lines("expected twice", "line\nexpect x = 1\nexpect x = 2\n", 1, 9, "`x` is expected twice: keep one");

    lines("fill in words", "line\nfill item: a\nline\nstop item\n", 1, 8,
          "`item` is a column of words, which are never filled: write the words on each line", "2");
    lines("fill without reference", "line\nfill a: 3 gpm\nline\nstop a\n", 1, 8,
          "`3 gpm` refers to no cell, so it cannot be filled: write it on each line", "2");
    lines("fill of no column", "line\nfill c: a\n", 1, 8,
          "`fill` takes a column, a colon and a formula, as in fill year: year[-1] + 1");
    lines("fill under skip", "skip 1\nfill a: b\n", 1, 8,
          "`fill a` stands under no `line`: put `line` in front");
    lines("fill without stop", "line\nline\nfill a: b\nline\n", 2, 9,
          "`fill a` has no stop: put `stop a` under the last line of the run", "3");
    lines("stop on the fill's line", "line\nfill a: b\nstop a\n", 1, 9,
          "`stop a` stands on the line of its own fill: a run has two lines or more, write `a:` instead of "
          "`fill a:`");
    lines("stop without fill", "line\nstop a\n", 1, 8,
          "`stop a` ends no run: take it out, or put `fill a` on a line above");
    lines("stop of nothing", "line\nstop\n", 1, 8,
          "`stop` takes the columns whose runs end here, as in stop year balance");
    lines("stop under skip", "line\nfill a: b\nskip 2\nstop a\n", 3, 10,
          "`stop a` stands under `skip`: put `line` in front, and count the skip again", "3");
    lines("cell while filled", "line\nfill a: b\nline\na: 3\n", 2, 10,
          "`a` is filled from line 1 on: take this cell out, or put `stop a` on a line above", "2");
    lines("fill while filled", "line\nfill a: b\nline\nfill a: b\n", 2, 10,
          "`a` is already filled from line 1 on: put `stop a` on a line above", "2");
    lines("cell on the stop's line", "line\nfill a: b\nline\nstop a\na: 3\n", 2, 11,
          "`a` is filled from line 1 on: take this cell out, or put `stop a` on a line above", "2");
    lines("name under fill", "line\nfill a: b\n  name total\n  hide\nline\nstop a\n", 1, 9,
          "`name` stands under `fill a`: a name belongs to one cell, put it under `at a`", "2");

    const auto beside = [&](const char *rule, const std::string &text, const std::string &attributes,
                            int line, const QString &shows) {
        lines(rule, "line\na: " + text + "\n" + attributes, 1, line, shows);
    };
    beside("attribute twice", "3", "  figures 2\n  figures 2\n", 10,
           "`figures` stands twice here: keep one `figures`");
    beside("note twice", "3", "  note \"x\"\n  note \"x\"\n", 10,
           "`note` stands twice here: keep one `note`");
    beside("hide twice", "3", "  hide\n  hide\n", 10, "`hide` stands twice here: keep one `hide`");
    beside("limit twice", "3", "  limit <= 3\n  limit <= 4\n", 10,
           "`limit` stands twice here: keep one `limit`");
    beside("figures with places", "3", "  figures 2\n  places 2\n", 10,
           "`figures` and `places` exclude each other: keep one");
    beside("figures zero", "3", "  figures 0\n", 9, "`figures` takes one digit from 1 to 9, as in figures 2");
    beside("choices with unit", "x", "  unit mg/L\n  choices \"x\"\n", 10,
           "`choices` and `unit` exclude each other: a choice is no amount, keep one");
    beside("choices with limit", "x", "  choices \"x\"\n  limit <= 3\n", 10,
           "`choices` and `limit` exclude each other: a choice is no amount, keep one");
    beside("choices with tolerance", "x", "  choices \"x\"\n  tolerance +- 3\n", 10,
           "`choices` and `tolerance` exclude each other: a choice is no amount, keep one");
    beside("choice twice", "x", "  choices \"x\" \"x\"\n", 9, "the choice \"x\" stands twice here: keep one");
    beside("choices of nothing", "x", "  choices X\n", 9,
           "`choices` takes the name of a list or words in quotation marks, as in choices \"dry well\" "
           "\"septic\"");
    beside("ask on a formula", "b + 1", "  ask \"how much?\"\n", 9,
           "`ask` belongs to a cell that is typed, not to a formula: take it away");
    beside("ask with hide", "3", "  hide\n  ask \"how much?\"\n", 10,
           "`ask` and `hide` exclude each other: what is asked must be seen and typed, keep one");
    beside("ask with lock", "3", "  ask \"how much?\"\n  lock\n", 10,
           "`ask` and `lock` exclude each other: what is asked must be seen and typed, keep one");
    beside("ask without words", "3", "  ask how\n", 9,
           "`ask` takes words in quotation marks, as in ask \"...\"");
    beside("tolerance on a formula", "b * 2", "  tolerance +- 1\n", 9,
           "`tolerance` belongs to a typed quantity, not to a formula: take it away");
    beside("tolerance on words", "\"x\"", "  tolerance +- 1\n", 9,
           "`tolerance` belongs to a quantity, not to words: take it away");
    beside("tolerance on yes", "yes", "  tolerance +- 1\n", 9,
           "`tolerance` belongs to a quantity, not to yes or no: take it away");
    beside("tolerance on a date", "2026-05-12", "  tolerance +- 1 day\n", 9,
           "`tolerance` belongs to a quantity, not to a date: take it away");
    beside("tolerance on a bounded reading", "<3 mg/L", "  tolerance +- 1 mg/L\n", 9,
           "`tolerance` belongs to a quantity, not to a bounded reading: take it away");
    beside("tolerance without sign", "3", "  tolerance 1\n", 9,
           "`tolerance` takes +- and an amount, as in tolerance +- 0.2 mg/L");
    beside("source not declared", "3", "  source P1\n", 9,
           "the source P1 is not declared: add the record source P1 price \"...\" above the sheets");
    beside("source of a limit not declared", "3", "  limit <= 3 mg/L S1\n", 9,
           "the source S1 is not declared: add the record source S1 standard \"...\" above the sheets");
    beside("mark twice", "3", "  source L1 L1\n", 9, "the mark L1 stands twice here: keep one");
    beside("name is a unit word", "3", "  name gpm\n", 9,
           "`gpm` is a unit word: take a longer name, as in gpm_used");
    beside("name is a key", "3", "  name item\n", 9,
           "`item` is the key of a column of sheet s: take another name");
    beside("name is reserved", "3", "  name yes\n", 9,
           "`yes` is a word of the formula language: take another name");
    beside("name is no name", "3", "  name Raw iron\n", 9,
           "`Raw iron` cannot be a name: use lower-case letters, digits and _, starting with a letter, two "
           "characters or more, as "
           "in raw_iron");
    lines("name twice", "line\na: 1\n  name iron\nline\nb: 2\n  name iron\n", 2, 12,
          "`iron` already names line 1 of sheet s: take another name", "2");
    beside("indented by one blank", "3", " hide\n", 9, "what stands under a cell is indented by two blanks");
    beside("indented cell", "3", "  b: 3\n", 9,
           "cells stand without blanks in front: take the two blanks away");
    beside("no attribute", "3", "  Hide\n", 9, "`Hide` is nothing that stands under a cell: take it away");
    beside("attribute under a comment", "3", "# x\n  hide\n", 10,
           "this stands under no cell: put it under its cell, and comments above the cell");
}

inline void FileTest::openedAllTheSame_data()
{
    QTest::addColumn<QString>("text");
    const auto row = [](const char *rule, const std::string &lines, const char *count = "1") {
        QTest::newRow(rule) << QString::fromStdString(inSheet(lines, count));
    };
    row("broken formula", "line\na: 3 +* (b\n");
    row("decimal comma", "line\na: 1,5 mg/L\n");
    row("broken limit", "line\na: 3\n  limit about 3 or so\n");
    row("limit with broken words", "line\na: 3\n  limit <= 3 \"x\\q\"\n");
    row("limit whose letter is a unit", "line\na: 3\n  limit <= 3 L\n");
    row("unit that is none", "line\na: 3\n  unit foo/bar\n");
    row("undeclared list", "line\na: x\n  choices nowhere\n");
    row("broken text with ask", "line\na: about 3 mg/L\n  ask \"how much?\"\n");
    row("broken formula filled", "line\nfill a: b +* 3\nline\nstop a\n", "2");
    row("comment without record after it", "line\na: 3\n# the end\n");
    row("comment before a skip", "line\na: 3\n# five blank lines\nskip 5\n", "6");
    row("comments between filled lines", "line\nfill a: b\n# x\nline\n# y\nstop a\n", "2");
    row("records as keys", "line\na: line\nb: end s 1\n");
    row("expectation of what is no cell", "line\nexpect nothing + 1 = far too much\n");
    row("words without quotation marks", "line\nitem: plain words \"and more\"\n");
    row("empty words", "line\nitem: \"\"\n");
    row("unknown records", "line\nsticker green\n  on top\na: 3\n  colour red\n  # why\n");
    row("one of a run has other figures",
        "line\nfill a: b\n  figures 2\nline\nat a\n  figures 3\nline\nstop a\n", "3");
    row("equal inputs are no run", "line\na: 5 gpm\nline\na: 5 gpm\n", "2");
    row("runs that meet", "line\nfill a: b\nline\nstop a\nline\nfill a: b + 1\nline\nstop a\n", "4");
    row("run cut into two records", "line\na: b\nline\nfill a: b\nline\nstop a\n", "3");
}
