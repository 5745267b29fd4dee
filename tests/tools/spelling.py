#!/usr/bin/env python3
"""Spelling of what people read: the pages, what the program prints, what headers and sources say about themselves.

usage: spelling.py [PROJECT]

English as the British write it, with -ise: hunspell with Debian's en_GB dictionary, and words.txt beside this script
for the words of the trade, names and units. Code, files and formulas in pages are left out. A word of the list that
nobody uses, or that the dictionary knows, is refused too.
"""
import re
import subprocess
import sys
from pathlib import Path

sys.dont_write_bytecode = True

WORD = re.compile(r"[^\W\d_]+")
# What is no prose: anything with a digit or a sign of code in it, options, names of files and of types.
CODE = re.compile(r"\S*[\d_=^\\<>|#@*$~+]\S*|(?<!\w)--?\w\S*|\S+\.[a-z]+\S*"
                  r"|\S*::\S*|\S*\([^\s)]*\)\S*|\b\w+[a-z][A-Z]\w*")
# A map drawn in letters.
MAP = re.compile(r"\S*(\w)\1{3,}\S*")
# The name of a tool, and of a function.
Z_STAYS = {"sanitizer", "sanitizers", "normalized"}
IZE = re.compile(r"iz(?=e$|es$|ed$|er$|ing$|ation$|ations$)")


def prose_of_page(text):
    """A page without its code: blocks, but for what the program prints; what stands in back quotes; formulas."""
    text = re.sub(r"^```(?!text)[a-z]*\n.*?^```$", "", text, flags=re.MULTILINE | re.DOTALL)
    text = re.sub(r"^```(?:text)?$|`[^`]*`|^    .*$", "", text, flags=re.MULTILINE)
    return re.sub(r"\]\([^)]*\)|[|/]", " ", text)


def sentences_of_source(text):
    """Comments, and texts in quotes that hold a blank: words without one are names and units."""
    for line in text.splitlines():
        if line.startswith("#include"):
            continue
        quoted = [re.sub(r"\{[^}]*\}|\\n|\\\"", " ", one) for one in re.findall(r'"((?:[^"\\]|\\.)*)"', line)]
        yield from (one for one in quoted if " " in one.strip() and not one.lstrip().startswith("<"))
        comment = re.search(r"(?<![:\w])///?<? (.*)$", line)
        if comment and line.count('"', 0, comment.start()) % 2 == 0:
            yield re.sub(r"`[^`]*`|'[^']*'|\"[^\"]*\"", " ", comment.group(1))


# Sources that write in a shell's language or a manual page's: only their comments are prose.
OTHER_LANGUAGES = {"completion.cpp", "manual.cpp"}
# What is said about files with mistakes in them quotes the mistakes.
OF_MISTAKES = {"hostile-si.txt"}


def texts(project):
    """(file, prose) of everything that is read."""
    pages = [*project.glob("*.md"), *(project / "manuals").glob("*.md")]
    for page in sorted(pages):
        yield page, prose_of_page(page.read_text(encoding="utf-8"))
    for answer in sorted((project / "tests/golden").glob("*.txt")):
        if answer.name in OF_MISTAKES:
            continue
        yield answer, answer.read_text(encoding="utf-8").replace("|", " ")
    for folder in ("include", "src"):
        for source in sorted((project / folder).rglob("*.[ch]pp")):
            text = source.read_text(encoding="utf-8")
            if source.name in OTHER_LANGUAGES:
                text = re.sub(r'"(?:[^"\\]|\\.)*"', '""', text)
            yield source, "\n".join(sentences_of_source(text))


def words_in(prose):
    # "the run's": the dictionary need not know the possessive of every word.
    return WORD.findall(re.sub(r"'s\b", "", CODE.sub(" ", MAP.sub(" ", prose))))


def unknown(words):
    """Those of the words that the dictionary does not know."""
    ran = subprocess.run(["hunspell", "-l", "-i", "utf-8", "-d", "en_GB"], input="\n".join(sorted(words)), text=True,
                         capture_output=True, encoding="utf-8")
    if ran.returncode != 0 or "Can't open" in ran.stderr:
        raise SystemExit(f"hunspell with en_GB does not run: {ran.stderr.strip()}\nbash .ci/setup test installs it")
    return set(ran.stdout.split())


def american(words):
    """Words in -ize whose -ise the dictionary knows."""
    with_s = {IZE.sub("is", word.lower()): word for word in words
              if IZE.search(word.lower()) and word.lower() not in Z_STAYS}
    return {with_s[word] for word in set(with_s) - unknown(with_s)}


def own_words(path):
    lines = path.read_text(encoding="utf-8").splitlines()
    return [line.strip() for line in lines if line.strip() and not line.startswith("#")]


def faults(project, own=None):
    own = own_words(project / "tests/tools/words.txt") if own is None else own
    where = {}
    for path, prose in texts(project):
        for word in words_in(prose):
            where.setdefault(word, path.relative_to(project))
    known = set(own)
    foreign = {word for word in unknown(where) if word not in known and word.lower() not in known}
    yield from (f"{where[word]}: {word}" for word in sorted(foreign, key=lambda word: (str(where[word]), word)))
    yield from (f"{where[word]}: {word}, written with -ise elsewhere" for word in sorted(american(where)))
    used = set(where) | {word.lower() for word in where}
    yield from (f"words.txt: nobody writes {word}" for word in own if word not in used)
    yield from (f"words.txt: the dictionary knows {word}" for word in sorted(known - unknown(known)))
    yield from (f"words.txt: {word} stands there twice" for word in sorted({w for w in own if own.count(w) > 1}))


def main(project):
    found = list(faults(project))
    print("\n".join(found) or "spelling: nothing to mend")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1] if len(sys.argv) > 1 else Path(__file__).parents[2])))
