#!/usr/bin/env python3
"""Tries render_sheets.py on a small page that is in order, and on the same page with one thing wrong at a time."""
import sys
import tempfile
import unittest
from pathlib import Path

sys.dont_write_bytecode = True
import render_judge
import render_paper
import render_sheets
from devtools import Browser

GOOD = (Path(__file__).parent / "selftest" / "good.html").read_text(encoding="utf-8")
CARD = '<section class="card"><h3>Second card</h3><p>Its words</p></section>'
LINES = "words<br>" * 20
SCRIPT = "<script>document.body.append('more words')</script>"


def before_end(html):
    return ("</body>", html + "</body>")


def on_new_page(html, filled_px):
    return before_end(f'<p style="break-before:page;height:{filled_px}px">words</p>' + html)


def table_of(rows):
    return ("<table><tbody>" + "<tr><td>row</td><td>words</td></tr>" * rows + "</tbody></table>")


def in_drawing(svg):
    return ("</svg>", svg + "</svg>")


# What is replaced in the page by what, on which size that shows, and what is said. One thing at a time.
WRONG = {
    "script": (*before_end(SCRIPT), "any", "something that runs"),
    "script-only": (*before_end(SCRIPT), "desktop", "letters without scripts"),
    "handler": ("<p>", '<p onclick="x()">', "any", "something that runs"),
    "script-link": ('href="#plan"', 'href="javascript:x()"', "any", "something that runs"),
    "no-script": (*before_end("<noscript>words</noscript>"), "any", "something that runs"),
    "console": (*before_end("<script>console.error('broken')</script>"), "any", "console error: broken"),
    "exception": (*before_end("<script>nothing()</script>"), "any", "exception"),
    "network": (*before_end('<img alt="words" src="https://example.org/a.png">'), "any", "fetches https://example.org"),
    "other-file": (*before_end('<img alt="words" src="a.png">'), "any", "did not load"),
    "style-import": ("<style>", "<style>@import url(more.css);", "any", "reaches out of the page: more.css"),
    "picture-in-style": ("color: #111;", "color: #111; list-style-image: url(dot.png);", "any", "reaches out"),
    "preconnect": ("<title>", '<link rel="preconnect" href="https://example.org"><title>', "any", "reaches out"),
    "link-away": ('href="good.html"', 'href="https://example.org/"', "any", "link out of the folder"),
    "link-to-nothing": ('href="good.html"', 'href="gone.html"', "any", "link to no sheet"),
    "link-to-no-place": ('href="#plan"', 'href="#gone"', "any", "link to no place"),
    "wide-text": (*before_end('<p style="white-space:nowrap">' + "word " * 30 + "</p>"), "phone", "the page is"),
    "wide-page": (*before_end('<div style="width:500px">words</div>'), "phone", "the page is 516 px wide"),
    "left-out": (*before_end('<p style="margin-left:-40px">words</p>'), "phone", "sticks out of the window: from -24"),
    "wide-on-paper": (*before_end('<div class="wide"><div style="width:900px">words</div></div>'), "print",
                      "sticks out"),
    "scrolls-on-a-desk": (*before_end('<div class="wide" style="width:400px"><p style="width:600px">a</p></div>'),
                          "desktop", "has to be scrolled on a desk: 600 px"),
    "beside-on-text": ("width: 150px; flex: none }", "width: 150px; overflow: visible }", "phone", 'lies on "A box'),
    "text-on-text": (*before_end('<p style="margin-top:-40px">words upon words that are long enough</p>'), "phone",
                     'lies on "'),
    "label-on-label": (*in_drawing('<text x="50" y="44" font-size="14" fill="#f4f4f4">again</text>'), "desktop",
                       '"again" lies on "on dark"'),
    "turned-on-label": (*in_drawing('<text transform="translate(150 60) rotate(-90)" font-size="14" fill="#111">up'
                                    "wards again</text>"), "desktop", 'lies on "on dots"'),
    "aslant-on-aslant": ("translate(225 30) rotate(45)", "translate(241 24) rotate(45)", "desktop", "aslant"),
    "cut-off": (*before_end('<div style="height:20px;overflow:hidden">' + "words " * 200 + "</div>"), "desktop",
                "text is cut off"),
    "ellipsis": (*before_end('<div style="width:90px;overflow:hidden;text-overflow:ellipsis;white-space:nowrap">' +
                             "words " * 9 + "</div>"), "phone", "text is cut off"),
    "cut-off-on-paper": ("overflow: visible } .filler", "overflow: auto } .wide table { width: 900px } .filler",
                         "print", "text is cut off"),
    "out-of-drawing": (*in_drawing('<text x="300" y="90" font-size="14" fill="#111">too far right</text>'), "desktop",
                       "cut off by its drawing"),
    "out-of-clip": ('<text x="20" y="120"', '<text x="130" y="120"', "desktop", "cut off by its drawing"),
    "covered": (*in_drawing('<rect x="10" y="10" width="100" height="60" fill="#fff"/>'), "desktop", "text is covered"),
    "small": (*before_end('<p style="font-size:10px">words</p>'), "phone", "letters of 10.0 px"),
    "small-in-drawing": ("max-width: 100%", "width: 160px", "phone", "letters of 7.0 px"),
    "small-on-paper": ("@media print {", "@media print { h3 { font-size: 6px }", "print", "letters of 6.0 px"),
    "faint": ("color: #111;", "color: #777;", "desktop", "contrast 4.48, asked 4.5"),
    "faint-large": ("color: #888", "color: #999", "desktop", "contrast 2.85, asked 3"),
    "faint-by-opacity": ('class="faint"', 'class="faint" style="opacity:0.6"', "desktop", "contrast"),
    "faint-on-dark": ("color: #fff; padding", "color: #456; padding", "desktop", "contrast"),
    "faint-in-drawing": ('fill="#f4f4f4"', 'fill="#555555"', "desktop", "#555555 on #1a1a1a"),
    "faint-on-pattern": ('font-size="14" fill="#1a1a1a"', 'font-size="14" fill="#999999"', "desktop", "on #fff7e0"),
    "half-on-dark": ('x="20" y="40" font-size="14"', 'x="80" y="40" font-size="14"', "desktop", "#f4f4f4 on #fff7e0"),
    "ground-not-printed": ("; print-color-adjust: exact", "", "print", "#ffffff on #ffffff"),
    "on-picture": (".dark { background: #123", ".dark { background: linear-gradient(#123, #234)", "desktop",
                   "cannot be judged: a picture"),
    "on-image": ('<text x="130"', '<image x="110" y="0" width="90" height="80" href="data:image/gif,"/><text x="130"',
                 "desktop", "cannot be judged: a <image>"),
    "row-may-break": ("tr, figure,", "figure,", "print", "row"),
    "card-cut": (CARD, CARD.replace("Its words", "Its words<br>" * 60), "print", "px high, a page holds"),
    "row-cut": (*on_new_page(f'<table><tr style="break-inside:auto"><td>{LINES}</td></tr></table>', 700), "print",
                "is cut in two"),
    "card-cut-by-style": (*on_new_page(f'<div class="card" style="break-inside:auto">{LINES}</div>', 700), "print",
                          'card "wordswords'),
    "table-cut": (*on_new_page(table_of(20), 700), "print", "would fit on one page"),
    "table-without-head": (*before_end(table_of(60)), "print", "without its head"),
    "heading-alone": (*on_new_page('<h2 style="break-after:auto">Alone</h2><p style="height:300px;break-inside:avoid">'
                                   "words</p>", 800), "print", 'heading "Alone" stands on page 3'),
    "figure-too-high": ('height="160" viewBox', 'height="1600" viewBox', "print", "px high, a page holds"),
    "empty-page": (*before_end('<p style="break-before:page;break-after:page;height:9px"></p><p>words</p>'), "print",
                   "page 3 of 4 is empty"),
    "no-paper": ("@page { size: letter; margin: 12mm }", "", "print", "no @page rule"),
    "named-paper": ("@page {", "@page plan { size: A3 } @page {", "print", "cannot be judged"),
    "two-first-headings": ("<h2>Lengths</h2>", "<h1>Lengths</h1>", "any", "2 headings of the first rank"),
    "heading-skipped": ("<h2>Lengths</h2>", "<h4>Lengths</h4>", "any", "heading of rank 4 after rank 1"),
    "no-lang": (' lang="en"', "", "any", "no lang"),
    "no-title": ("<title>A sheet in order</title>", "", "any", "no title"),
    "no-viewport": ('<meta name="viewport" content="width=device-width, initial-scale=1">', "", "any",
                    "no meta viewport"),
    "no-zoom": ("initial-scale=1", "maximum-scale=1", "any", "keeps readers from enlarging"),
    "no-charset": ('<meta charset="utf-8">', "", "any", "no meta charset"),
    "no-doctype": ("<!DOCTYPE html>", "", "any", "no doctype"),
    "drawing-without-title": ("<title>Plan of a floor</title>", "", "any", "drawing without a title"),
    "id-twice": ('<h2>Lengths', '<h2 id="plan">Lengths', "any", "an id that another element has"),
}


class Pages(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        """All pages through one browser: what is said about each, by its name."""
        with tempfile.TemporaryDirectory() as folder:
            pages = {"good": GOOD}
            for name, (old, new, _, _) in WRONG.items():
                pages[name] = GOOD.replace(old, new, 1)
            for name, html in pages.items():
                (Path(folder) / f"{name}.html").write_text(html, encoding="utf-8")
            lines, cls.printed = render_sheets.lines_of([folder], browser=Browser())
        cls.said = {name: [] for name in pages}
        for line in lines:
            page, size, what, where = line.split("\t")
            cls.said[Path(page).stem].append((size, what, where))

    def test_a_page_in_order_has_no_faults(self):
        self.assertEqual([], self.said["good"])

    def test_each_fault_is_seen(self):
        for name, (old, new, size, what) in WRONG.items():
            with self.subTest(name):
                self.assertIn(old, GOOD)
                self.assertTrue([one for one in self.said[name] if one[0] == size and what in one[1]], self.said[name])

    def test_faults_say_where(self):
        self.assertIn("text:nth-of-type(1)", "".join(where for _, what, where in self.said["faint-in-drawing"]
                                                     if "contrast" in what))


class Judged(unittest.TestCase):
    def test_contrast_is_the_published_formula(self):
        self.assertEqual(21.0, render_judge.contrast([0, 0, 0], [255, 255, 255]))
        self.assertEqual(1.0, render_judge.contrast([9, 99, 199], [9, 99, 199]))
        # The greys that are the last to hold on white: 4.5:1 and 3:1.
        for grey, asked in ((0x76, 4.5), (0x94, 3.0)):
            self.assertGreaterEqual(render_judge.contrast([grey] * 3, [255] * 3), asked)
            self.assertLess(render_judge.contrast([grey + 1] * 3, [255] * 3), asked)

    def test_boxes_turned_in_any_way(self):
        square, diamond = [0, 0, 10, 0, 10, 10, 0, 10], [20, 9, 31, 20, 20, 31, 9, 20]
        self.assertLess(render_judge.overlap_px(square, diamond), 0)  # though upright boxes about them meet
        self.assertAlmostEqual(4.0, render_judge.overlap_px(square, [6, 0, 16, 0, 16, 10, 6, 10]))

    def test_paper(self):
        inch = 96.0
        self.assertEqual((17 * inch, 11 * inch), render_paper.size_px("17in 11in"))
        self.assertEqual((8.5 * inch, 11 * inch), tuple(round(v, 6) for v in render_paper.size_px("letter")))
        self.assertAlmostEqual(420 / 25.4 * inch, render_paper.size_px("A3 landscape")[0])
        self.assertIsNone(render_paper.size_px("auto"))
        told = [{"name": "", "size": "10in 8in", "left": "1in", "right": "", "top": "0.5in", "bottom": "0.5in"}]
        self.assertEqual((9 * inch - render_paper.DEFAULT_MARGIN_PX, 7 * inch), render_paper.area_px(told))


if __name__ == "__main__":
    unittest.main()
