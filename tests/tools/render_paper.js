// Marks the ends of what must stay whole on paper, so that they are found in the PDF, page by page. The marks are
// letters of a pixel beside the text; they take no room. `mark` gives a row for each thing: its number, what it is,
// whether its style keeps it whole, its height, and what it belongs with.
(() => {
  const style = getComputedStyle;
  const numbers = new Map();
  const sheet = document.createElement("style");
  const ends = "position:absolute!important;left:0!important;font:1px/1 sans-serif!important;" +
               "letter-spacing:0!important;text-transform:none!important;color:#000!important;" +
               "display:block!important;float:none!important";
  sheet.textContent = `[data-end]::before,[data-end]::after{${ends}}` +
    '[data-end]::before{content:"zq" attr(data-end) "az"!important;top:0!important}' +
    '[data-end]::after{content:"zq" attr(data-end) "bz"!important;bottom:0!important}' +
    "[data-end-placed]{position:relative!important}" +
    // Lines and areas take most of the time that a PDF takes, and tell nothing about where pages break.
    "svg path,svg rect,svg circle,svg ellipse,svg line,svg polyline,svg polygon{visibility:hidden!important}";

  const mark = e => {
    // A row has no box of its own to stand in; its first cell is as high as the row.
    const host = e.localName === "tr" ? e.cells[0] : e;
    if (!host || !host.checkVisibility({checkVisibilityCSS: true}) || style(host).display === "inline") return null;
    if (!numbers.has(host)) numbers.set(host, numbers.size);
    return numbers.get(host);
  };
  // After all has been asked: each change makes the browser lay the page out anew before it answers again.
  const write_marks = () => {
    const placed = [...numbers.keys()].filter(host => style(host).position === "static");
    for (const [host, n] of numbers) host.dataset.end = n;
    for (const host of placed) host.dataset.endPlaced = "";
    document.head.append(sheet);
  };

  const follower = e => {
    for (; e && e !== document.body; e = e.parentElement) if (e.nextElementSibling) return e.nextElementSibling;
    return null;
  };

  window.paper = {
    mark: () => {
      const found = [], height = e => e.getBoundingClientRect().height;
      for (const e of document.body.querySelectorAll("*")) {
        if (e instanceof SVGElement && e.localName !== "svg") continue;
        const keeps = /^avoid/.test(style(e).breakInside), card = e.classList.contains("card");
        const kind = e.localName === "tr" ? "row" : e.localName === "figure" ? "figure" : card ? "card" :
                     keeps ? "part" : null;
        if (e.localName === "svg" && !e.ownerSVGElement && !e.closest("figure")) found.push({kind: "drawing", n: null,
                                                                          keeps: true, height: height(e), at: e});
        if (kind) found.push({kind, n: mark(e), keeps, height: height(e), at: e});
        if (e.localName === "table" && e.rows.length > 1) {
          const head = e.tHead && style(e.tHead).display === "table-header-group";
          found.push({kind: "table", n: mark(e.rows[0]), last: mark(e.rows[e.rows.length - 1]), keeps: head,
                      height: height(e), at: e});
        }
        const next = /^h[1-6]$/.test(e.localName) && follower(e);
        if (next) found.push({kind: "heading", n: mark(e), last: mark(next.localName === "table" ? next.rows[0] : next),
                              keeps: true, height: 0, at: e});
      }
      write_marks();
      window.paper.things = found.map(f => f.at);
      const words = e => e.textContent.replace(/\s+/g, " ").trim().slice(0, 40);
      return found.map(({at, ...rest}, thing) => ({...rest, thing, text: words(at)}));
    },
  };
})();
