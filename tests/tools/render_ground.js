// What lies behind text: on the page, and in a drawing. A ground is one colour or all that it may be, or a word that
// says why it cannot be told.
(() => {
  const style = getComputedStyle;
  const in_svg = e => e instanceof SVGElement && !(e instanceof SVGSVGElement && !e.ownerSVGElement);

  const colour_of = css => {  // "rgb(1, 2, 3)", "rgba(1, 2, 3, 0.5)"; nothing for what is no plain colour
    const found = /^rgba?\(([\d.]+),\s*([\d.]+),\s*([\d.]+)(?:,\s*([\d.]+))?\)$/.exec(css);
    return found && [+found[1], +found[2], +found[3], found[4] === undefined ? 1 : +found[4]];
  };
  const over = (top, below) => top.slice(0, 3).map((c, i) => c * top[3] + below[i] * (1 - top[3]));
  // What an element has of its own and from all around it, asked once for each.
  const opacities = new Map(), grounds = new Map();
  const opacity_of = e => {
    if (!e) return 1;
    if (!opacities.has(e)) opacities.set(e, +style(e).opacity * opacity_of(e.parentElement));
    return opacities.get(e);
  };

  // The colour of the page behind an element, or in words why it cannot be told.
  const page_ground = (e, paper) => {
    if (!e) return [255, 255, 255];
    if (!grounds.has(e)) grounds.set(e, own_ground(e, paper));
    return grounds.get(e);
  };
  const own_ground = (e, paper) => {
    const css = style(e), colour = colour_of(css.backgroundColor);
    if (paper && css.printColorAdjust !== "exact") return page_ground(e.parentElement, paper);  // paper stays white
    if (css.backgroundImage !== "none") return "a picture lies behind it";
    if (!colour) return "a ground in a colour of another kind: " + css.backgroundColor;
    if (colour[3] === 1) return colour.slice(0, 3);
    const below = page_ground(e.parentElement, paper);
    return colour[3] === 0 || typeof below === "string" ? below : over(colour, below);
  };

  const unpainted = "defs, clipPath, pattern, marker, symbol, mask, linearGradient, radialGradient";
  const scale_of = ctm => Math.sqrt(Math.abs(ctm.a * ctm.d - ctm.b * ctm.c));
  const drawings = new Map();

  // The shapes of a drawing that could lie behind letters, in the order they are painted.
  const drawing_of = root => {
    if (drawings.has(root)) return drawings.get(root);
    const order = new Map(), shapes = [];
    for (const e of root.querySelectorAll("*")) {
      order.set(e, order.size);
      const judged = e instanceof SVGGeometryElement;
      if (!judged && !/^(use|image|foreignObject)$/.test(e.localName)) continue;
      const css = style(e), shape = {e, judged, at: order.size - 1, fill: css.fill, fill_opacity: +css.fillOpacity,
                                     stroke: css.stroke, stroke_opacity: +css.strokeOpacity, broad_px: 0};
      if (judged && shape.fill === "none" && shape.stroke === "none") continue;
      if (e.closest(unpainted) || css.visibility !== "visible" || !e.getScreenCTM()) continue;
      if (shape.stroke !== "none") shape.broad_px = parseFloat(css.strokeWidth) * scale_of(e.getScreenCTM());
      // Lines thinner than half the smallest letters are not what text is read against.
      if (judged && shape.fill === "none" && shape.broad_px < 3) continue;
      shape.box = e.getBoundingClientRect();
      shape.opacity = opacity_of(e);
      if (shape.opacity > 0) shapes.push(shape);
    }
    drawings.set(root, {order, shapes});
    return drawings.get(root);
  };

  const to_local = (e, p) => new DOMPoint(p.x, p.y).matrixTransform(e.getScreenCTM().inverse());
  const url_of = paint => (/^url\("?#([^")]*)"?\)/.exec(paint) || [])[1];

  // Whether a clip of the element or of what it stands in leaves the place.
  const left_by_clips = (element, p) => {
    for (let e = element; e && in_svg(e); e = e.parentElement) {
      const clip = document.getElementById(url_of(style(e).clipPath) || "");
      if (!clip) continue;
      const local = to_local(e, p);
      if (![...clip.children].some(c => c.isPointInFill && c.isPointInFill(local))) return false;
    }
    return true;
  };

  // All colours of a paint: one, or those of a pattern's ground or of a gradient. A word where it is of another kind.
  // A pattern's marks are thin, and no ground.
  const colours_of = (paint, opacity) => {
    const id = url_of(paint), with_opacity = colour => [...colour.slice(0, 3), colour[3] * opacity];
    if (!id) {
      const colour = colour_of(paint);
      return colour ? [with_opacity(colour)] : "a paint of another kind: " + paint;
    }
    const source = document.getElementById(id), found = [];
    for (const e of source?.querySelectorAll("stop, rect") || []) {
      const css = style(e), tile = e.localName === "rect";
      const narrower = side => e[side].baseVal.value < source[side].baseVal.value;
      if (tile && (narrower("width") || narrower("height"))) continue;
      const colour = colour_of(tile ? css.fill : css.stopColor);
      if (colour) found.push(with_opacity(colour));
    }
    return found.length ? found : "a paint whose ground cannot be told: " + paint;
  };

  const paint_at = (shape, p, size_px) => {
    if (!shape.judged) return "a <" + shape.e.localName + "> lies there";
    const e = shape.e, local = to_local(e, p);
    const broad = shape.broad_px >= 0.5 * size_px && e.isPointInStroke(local);
    if (!broad && (shape.fill === "none" || !e.isPointInFill(local))) return null;
    if (!left_by_clips(e, p)) return null;
    return broad ? colours_of(shape.stroke, shape.opacity * shape.stroke_opacity)
                 : colours_of(shape.fill, shape.opacity * shape.fill_opacity);
  };

  const lies_in = (box, p) => p.x >= box.left - 1 && p.x <= box.right + 1 &&
                              p.y >= box.top - 1 && p.y <= box.bottom + 1;

  // What is drawn below text in a drawing at a place: all grounds it may meet, or a word.
  const ground_at = (drawing, at, p, size_px, page) => {
    const layers = [];
    for (let k = drawing.shapes.length - 1; k >= 0; --k) {
      const shape = drawing.shapes[k];
      if (shape.at > at || !lies_in(shape.box, p)) continue;
      const paint = paint_at(shape, p, size_px);
      if (typeof paint === "string") return paint;
      if (!paint) continue;
      layers.push(paint);
      if (paint.every(c => c[3] === 1)) break;
    }
    if (typeof page === "string" && !(layers.length && layers.at(-1).every(c => c[3] === 1))) return page;
    let grounds = [page];
    for (const layer of layers.reverse()) grounds = layer.flatMap(c => c[3] === 1 ? [over(c, [0, 0, 0])] :
                                                                   grounds.map(g => over(c, g)));
    return grounds;
  };

  const covered_at = (drawing, at, p, size_px) => drawing.shapes.some(shape => {
    if (shape.at <= at || !lies_in(shape.box, p)) return false;
    const paint = paint_at(shape, p, size_px);
    return Array.isArray(paint) && paint.every(c => c[3] > 0.5);
  });

  const root_of = e => {
    let root = e.ownerSVGElement;
    while (root.ownerSVGElement) root = root.ownerSVGElement;
    return root;
  };

  // Of text in a drawing at places of it: all grounds it may meet, or a word; and at how many places something is
  // drawn over it.
  const of_drawing = (element, places, size_px, paper) => {
    const root = root_of(element), drawing = drawing_of(root), at = drawing.order.get(element);
    const page = page_ground(root, paper), covered = places.filter(p => covered_at(drawing, at, p, size_px)).length;
    const found = places.map(p => ground_at(drawing, at, p, size_px, page));
    return {grounds: found.find(one => typeof one === "string") || found.flat(), covered};
  };

  window.ground = {in_svg, colour_of, opacity_of, scale_of, page_ground, colours_of, left_by_clips, root_of,
                   unpainted, of_drawing, forget: () => [drawings, opacities, grounds].forEach(kept => kept.clear())};
})();
