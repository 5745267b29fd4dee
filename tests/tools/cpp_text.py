"""Reading C++ well enough to count and check it: text without comments and quotes, and the blocks in it."""
import re
from dataclasses import dataclass

QUOTED = re.compile(
    r'//[^\n]*|/\*.*?\*/'
    r'|R"(?P<fence>[^(\s]*)\(.*?\)(?P=fence)"'
    r'|"(?:\\.|[^"\\\n])*"'
    r"|(?<!\w)'(?:\\.|[^'\\\n])+'",
    re.DOTALL)
DIRECTIVE = re.compile(r'^[ \t]*#(?:[^\n]*\\\n)*[^\n]*', re.MULTILINE)
TYPE = re.compile(
    r'^(template\s*<.*>\s*)?((inline|static|const|constexpr|typedef)\s+)*(struct|class|union|enum)\b[^=(]*$', re.DOTALL)


def spaces(match):
    return re.sub(r'[^\n]', ' ', match.group())


def without_comments_and_quotes(text):
    """The same lines and columns, with comments, string and character literals as spaces."""
    return QUOTED.sub(spaces, text)


@dataclass
class Block:
    kind: str  # "namespace", "type", "function" or "other"
    head: str  # what stands before the brace
    start: int  # offsets into the text: start of the head, and the two braces
    opens: int
    closes: int


def kind_of(head, outer, parentheses):
    if re.search(r'\bnamespace\b', head):
        return "namespace"
    if TYPE.match(head):
        return "type"
    outside = all(block.kind in ("namespace", "type") for block in outer)
    if outside and parentheses == 0 and "(" in head and head[-1] not in "=,(":
        return "function"
    return "other"


def blocks(text):
    """All brace blocks of `text` (already without comments and quotes), in the order in which they close."""
    text = DIRECTIVE.sub(spaces, text)
    found, stack, head_from, parentheses = [], [], 0, 0
    for at, sign in enumerate(text):
        if sign == "(":
            parentheses += 1
        elif sign == ")":
            parentheses -= 1
        elif sign == ";" and parentheses == 0:
            head_from = at + 1
        elif sign == "{":
            head = text[head_from:at]
            start = head_from + len(head) - len(head.lstrip())
            kind = kind_of(head.strip(), [block for block, _ in stack], parentheses)
            stack.append((Block(kind, head.strip(), start, at, at), parentheses))
            head_from, parentheses = at + 1, 0
        elif sign == "}" and stack:
            block, parentheses = stack.pop()
            block.closes = at
            found.append(block)
            head_from = at + 1
    return found
