// What a page shows, gathered for render_sheets.py, which judges it. The last expression is the function that the
// script asks; `paper` is true where the page is laid out for print. The page's own scripts are off meanwhile.
(() => {
  const tags = new Map();  // what faults are about, by number
  const number_of = element => { const n = tags.size; tags.set(n, element); return n; };

  const path_of = element => {
    const steps = [];
    for (let e = element; e && e.nodeType === 1 && e !== document.documentElement; e = e.parentNode) {
      if (e.id) { steps.unshift("#" + e.id); break; }
      const alike = [...e.parentNode.children].filter(s => s.localName === e.localName);
      const css = e.localName + (e.classList.length ? "." + e.classList[0] : "");
      steps.unshift(alike.length > 1 ? `${css}:nth-of-type(${alike.indexOf(e) + 1})` : css);
    }
    return steps.slice(-5).join(" > ") || "html";
  };

  const style = getComputedStyle;
  const {in_svg, colour_of, opacity_of, scale_of, page_ground, colours_of, left_by_clips, root_of, unpainted} = ground;
  const seen = e => e.checkVisibility({checkOpacity: true, checkVisibilityCSS: true});
  // Text for screen readers only lies in a box of a pixel.
  const ears = new Map();
  const for_ears = e => {
    if (!e || e === document.body) return false;
    if (!ears.has(e)) {
      const pixel = !in_svg(e) && e.clientWidth <= 1 && e.clientHeight <= 1 && style(e).overflow !== "visible" &&
                    style(e).display !== "inline";
      ears.set(e, pixel || for_ears(e.parentElement));
    }
    return ears.get(e);
  };

  // Ink above and below the line that letters stand on, in shares of the size: [ink up, ink down, box up, box down].
  const canvas = document.createElement("canvas").getContext("2d"), inks = new Map();
  const ink_of = (css, text) => {
    const font = `${css.fontStyle} ${css.fontWeight} 100px ${css.fontFamily}`, key = font + "|" + text;
    if (!inks.has(key)) {
      canvas.font = font;
      const m = canvas.measureText(text);
      inks.set(key, [m.actualBoundingBoxAscent, m.actualBoundingBoxDescent, m.fontBoundingBoxAscent,
                     m.fontBoundingBoxDescent].map(v => v / 100));
    }
    return inks.get(key);
  };

  const scrolls = css => /^(auto|scroll)$/.test(css.overflowX);

  // ---- text

  // What a box that scrolls by itself lets be seen of what is in it, as [left, top, right, bottom].
  const windows = new Map(), everywhere = [-Infinity, -Infinity, Infinity, Infinity];
  const window_of = e => {
    if (!e || e === document.body) return everywhere;
    if (!windows.has(e)) {
      const around = window_of(e.parentElement), box = e.getBoundingClientRect(), own = !in_svg(e) && scrolls(style(e));
      windows.set(e, own ? [Math.max(around[0], box.left), Math.max(around[1], box.top),
                            Math.min(around[2], box.right), Math.min(around[3], box.bottom)] : around);
    }
    return windows.get(e);
  };
  // Boxes of four corners as far as they are seen.
  const seen_of = (boxes, element) => {
    const [left, top, right, bottom] = window_of(element);
    const within = (v, k) => k % 2 ? Math.min(Math.max(v, top), bottom) : Math.min(Math.max(v, left), right);
    const has_area = b => [0, 1].every(k => new Set([b[k], b[k + 2], b[k + 4], b[k + 6]]).size > 1);
    return boxes.map(box => box.map(within)).filter(has_area);
  };

  const html_text = (node, paper) => {
    const element = node.parentElement, css = style(element), text = node.data.replace(/\s+/g, " ").trim();
    const range = document.createRange(), size = parseFloat(css.fontSize);
    range.selectNodeContents(node);
    const ink = ink_of(css, text), up = (ink[2] - ink[0]) * size, down = (ink[3] - ink[1]) * size;
    const boxes = [...range.getClientRects()].filter(r => r.width > 0).map(r => [
      r.left, r.top + up, r.right, r.top + up, r.right, r.bottom - down, r.left, r.bottom - down]);
    if (!boxes.length) return null;
    const ground = page_ground(element, paper), colour = colour_of(css.color);
    return {text, n: number_of(element), boxes: seen_of(boxes, element), px: size, bold: css.fontWeight >= 600,
            colour: colour && [...colour.slice(0, 3), colour[3] * opacity_of(element)],
            grounds: typeof ground === "string" ? ground : [ground], svg: false};
  };

  const svg_text = (element, paper) => {
    const css = style(element), text = element.textContent.replace(/\s+/g, " ").trim(), size = parseFloat(css.fontSize);
    const box = element.getBBox(), ctm = element.getScreenCTM(), ink = ink_of(css, text);
    if (!ctm || box.width === 0) return null;
    const top = box.y + (ink[2] - ink[0]) * size, bottom = box.y + box.height - (ink[3] - ink[1]) * size;
    const px = size * scale_of(ctm);
    const place = (u, v) => new DOMPoint(box.x + u * box.width, top + v * (bottom - top)).matrixTransform(ctm);
    const corners = [[0, 0], [1, 0], [1, 1], [0, 1]].map(c => place(...c));
    const places = [[0.5, 0.5], [0.03, 0.5], [0.97, 0.5], [0.25, 0.5], [0.75, 0.5],
                    [0.03, 0.05], [0.97, 0.05], [0.03, 0.95], [0.97, 0.95]].map(c => place(...c));
    let {grounds, covered} = ground.of_drawing(element, places, px, paper);
    const halo = colour_of(css.stroke);
    if (halo && css.paintOrder.startsWith("stroke") && parseFloat(css.strokeWidth) >= 0.15 * size) grounds = [halo];
    const colours = colours_of(css.fill, css.fillOpacity * opacity_of(element));
    const clipped = places.filter(p => !left_by_clips(element, p)).length;
    const root = root_of(element), frame = root.getBoundingClientRect(), hides = style(root).overflow !== "visible";
    const out = hides && corners.some(p => p.x < frame.left - 1 || p.x > frame.right + 1 || p.y < frame.top - 1 ||
                                          p.y > frame.bottom + 1);
    return {text, n: number_of(element), boxes: seen_of([corners.flatMap(p => [p.x, p.y])], element), px,
            bold: css.fontWeight >= 600,
            colour: Array.isArray(colours) && colours.length === 1 ? colours[0] : null, grounds, svg: true,
            cut: clipped > 0 || out, covered: covered >= 2};
  };

  const texts = paper => {
    const found = [], walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), done = new Set();
    while (walk.nextNode()) {
      const node = walk.currentNode, element = node.parentElement;
      if (!node.data.trim() || done.has(element) || !seen(element) || for_ears(element)) continue;
      if (element.closest("script, style, noscript, title, desc, metadata")) continue;
      const svg = in_svg(element);
      if (svg && element.closest(unpainted)) continue;
      if (svg) done.add(element);
      const one = svg ? svg_text(element, paper) : html_text(node, paper);
      if (one) found.push(one);
    }
    return found;
  };

  // ---- boxes

  // Elements that stick out of the window sideways, outermost first. On a screen a box that scrolls by itself may hold
  // what is wider than it; on paper nothing scrolls.
  const sticking_out = paper => {
    const width = document.documentElement.clientWidth, found = [];
    const visit = e => {
      const css = style(e), box = e.getBoundingClientRect();
      if (css.display === "none" || !seen(e)) return;
      if (box.width > 0 && (box.right > width + 1 || box.left < -1)) {
        found.push({n: number_of(e), left: box.left, right: box.right});
        return;
      }
      if (e instanceof SVGElement || /^(hidden|clip)$/.test(css.overflowX) || (!paper && scrolls(css))) return;
      for (const child of e.children) visit(child);
    };
    for (const child of document.body.children) visit(child);
    return found;
  };

  // Boxes whose content must be scrolled to, and how wide that is.
  const scrolling = () => [...document.body.querySelectorAll("*")]
    .filter(e => !(e instanceof SVGElement) && scrolls(style(e)) && e.scrollWidth > e.clientWidth + 1 && seen(e))
    .map(e => ({n: number_of(e), wide: e.scrollWidth, shown: e.clientWidth}));

  const cut_off = paper => {
    const found = [], hides = paper ? /hidden|clip|auto|scroll/ : /hidden|clip/;
    for (const e of document.body.querySelectorAll("*")) {
      if (e instanceof SVGElement || !e.textContent.trim() || !seen(e) || for_ears(e)) continue;
      const css = style(e);
      if ((hides.test(css.overflowX) && e.scrollWidth > e.clientWidth + 1) ||
          (hides.test(css.overflowY) && e.scrollHeight > e.clientHeight + 1))
        found.push({n: number_of(e), text: e.textContent.replace(/\s+/g, " ").trim().slice(0, 40)});
    }
    return found;
  };

  // ---- what a page must have

  const outward = () => {
    const found = [], names = ["src", "srcset", "href", "xlink:href", "data", "poster", "action", "formaction", "ping",
                               "background", "manifest"];
    for (const e of document.querySelectorAll("*")) {
      for (const name of names) {
        const value = e.getAttribute(name);
        if (value === null || /^(#|data:)/.test(value) || (e.localName === "a" && name.endsWith("href"))) continue;
        found.push({n: number_of(e), to: value});
      }
      const css = (e.localName === "style" ? e.textContent : "") + (e.getAttribute("style") || "");
      for (const [, to] of css.matchAll(/(?:url\(\s*["']?|@import\s*["'])([^"')]*)/g))
        if (!/^(#|data:)/.test(to)) found.push({n: number_of(e), to});
    }
    return found;
  };

  const running = () => [...document.querySelectorAll("*")].filter(e =>
    /^(script|noscript|iframe|object|embed|applet|frame)$/.test(e.localName) ||
    [...e.attributes].some(a => /^on/i.test(a.name) || /^\s*javascript:/i.test(a.value))).map(number_of);

  const facts = () => {
    const ids = [...document.querySelectorAll("[id]")], first = new Set();
    return {
      lang: document.documentElement.lang, title: document.title, doctype: document.compatMode === "CSS1Compat",
      viewport: document.querySelector("meta[name=viewport]")?.content || "",
      charset: document.querySelector("meta[charset]")?.getAttribute("charset") || "",
      headings: [...document.querySelectorAll("h1,h2,h3,h4,h5,h6")].map(e => ({n: number_of(e), level: +e.localName[1],
                                                                                text: e.textContent.trim()})),
      svgs: [...document.querySelectorAll("svg")].filter(e => !e.ownerSVGElement && !e.closest("[aria-hidden=true]"))
        .map(e => ({n: number_of(e), name: [...e.children].find(c => c.localName === "title")?.textContent.trim() ||
                                           e.getAttribute("aria-label") || ""})),
      pictures: [...document.querySelectorAll("img:not([alt])")].map(number_of),
      twice: ids.filter(e => first.has(e.id) || !first.add(e.id)).map(number_of),
      links: [...document.querySelectorAll("a[href]")].map(e => ({n: number_of(e), to: e.getAttribute("href"),
                                                                  words: e.textContent.trim()})),
      ids: [...first], outward: outward(), running: running()};
  };

  // The paper that the page asks for, as its style sheets say it.
  const papers = () => {
    const found = [];
    const visit = rules => {
      for (const rule of rules) {
        if (rule instanceof CSSPageRule) {
          const get = name => rule.style.getPropertyValue(name);
          found.push({name: rule.selectorText, size: get("size"), left: get("margin-left"), right: get("margin-right"),
                      top: get("margin-top"), bottom: get("margin-bottom")});
        } else if (rule.cssRules && (!rule.media || matchMedia(rule.media.mediaText).matches)) visit(rule.cssRules);
      }
    };
    for (const sheet of document.styleSheets) visit(sheet.cssRules);
    return found;
  };

  window.rendered = {
    look: paper => {
      tags.clear();
      ears.clear();
      windows.clear();
      ground.forget();
      const root = document.documentElement;
      return {width: root.clientWidth, scroll_width: root.scrollWidth, sticking_out: sticking_out(paper),
              cut_off: cut_off(paper), scrolling: scrolling(), texts: texts(paper)};
    },
    facts: () => { tags.clear(); return facts(); },
    papers,
    paths: numbers => numbers.map(n => path_of(tags.get(n))),
    paths_of: elements => elements.map(path_of),
  };
})();
