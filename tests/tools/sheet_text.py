"""HTML pages as a tree of elements, with what the checks of sheets ask of it. Standard library only."""
import re
from html.parser import HTMLParser

EMPTY = {"area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"}
NOT_READ = {"style", "script"}
# What a reader sees as a line or a cell of its own.
BLOCKS = set("""
address article aside blockquote body br caption dd desc div dl dt figcaption figure footer h1 h2 h3 h4 h5 h6 head
header hr html li main nav ol p section svg table tbody td text tfoot th thead title tr ul
""".split())
FOLDED = str.maketrans({"\u00a0": " ", "\u202f": " ", "\u2009": " ", "\u2212": "-", "\u2013": "-", "\u00b0": "",
                        "\u00b2": "2", "\u00b3": "3", "\u2033": "in", "\u2032": "ft"})


def plain(text):
    """Text with one blank between words and the plain form of minus, degrees and raised digits."""
    return " ".join(text.translate(FOLDED).split())


class Element:
    def __init__(self, tag, attributes, parent, line):
        self.tag, self.attributes, self.parent, self.line = tag, attributes, parent, line
        self.children = []  # elements and strings

    def elements(self):
        """This one and all within, in the order of the page."""
        yield self
        for child in self.children:
            if isinstance(child, Element):
                yield from child.elements()

    def ancestors(self):
        at = self.parent
        while at is not None:
            yield at
            at = at.parent

    def within(self, tag):
        return self if self.tag == tag else next((above for above in self.ancestors() if above.tag == tag), None)

    def text(self, skip=lambda element: False):
        """All text within; what is skipped leaves a blank."""
        parts = []
        for child in self.children:
            if isinstance(child, str):
                parts.append(child)
            elif child.tag in NOT_READ or skip(child):
                parts.append(" ")
            else:
                parts.append(f" {child.text(skip)} " if child.tag in BLOCKS else child.text(skip))
        return "".join(parts)

    def path(self):
        names = [f"#{self.attributes['id']}" if self.attributes.get("id") else self.tag]
        for above in self.ancestors():
            if names[0].startswith("#") or above.tag in ("html", "body", "page"):
                break
            names.insert(0, f"#{above.attributes['id']}" if above.attributes.get("id") else above.tag)
        return " > ".join(names[-4:])


class Builder(HTMLParser):
    def __init__(self):
        super().__init__(convert_charrefs=True)
        self.root = self.at = Element("page", {}, None, 1)
        self.unclosed = []

    def handle_starttag(self, tag, attributes):
        element = Element(tag, {name: value or "" for name, value in attributes}, self.at, self.getpos()[0])
        self.at.children.append(element)
        if tag not in EMPTY:
            self.at = element

    def handle_startendtag(self, tag, attributes):
        self.handle_starttag(tag, attributes)
        if tag not in EMPTY:
            self.at = self.at.parent

    def handle_endtag(self, tag):
        owner = self.at.within(tag)
        if owner is None or owner.parent is None:
            self.unclosed.append((tag, self.getpos()[0]))
            return
        if owner is not self.at:
            self.unclosed.append((self.at.tag, self.at.line))
        self.at = owner.parent

    def handle_data(self, data):
        self.at.children.append(data)


def tree_of(html):
    """The page as a tree, and the tags that were not closed in order with their lines."""
    builder = Builder()
    builder.feed(html)
    builder.close()
    if builder.at is not builder.root:
        builder.unclosed.append((builder.at.tag, builder.at.line))
    return builder.root, builder.unclosed


def drawing_of(element):
    """The outermost <svg> around an element."""
    found = None
    for above in element.ancestors():
        if above.tag == "svg":
            found = above
    return found


def word_in(needle, text, start=0):
    """Where the needle stands in the text as whole words, at `start` or later; -1 where it does not."""
    found = re.compile(r"(?<!\w)" + re.escape(needle) + r"(?!\w)").search(text, start)
    return found.start() if found else -1
