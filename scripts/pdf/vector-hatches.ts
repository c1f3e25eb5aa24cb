/**
 * Runs in the printing browser: patterns are drawn out as lines. A printer of PDF makes a picture of every shape that a pattern
 * fills, half a megabyte each; a line is a line, and sharp.
 */
export function vectorHatches(): void {
  const SVG = 'http://www.w3.org/2000/svg';
  /** more tiles than this are left to the printer */
  const MOST = 20_000;
  let made = 0;
  for (const shape of document.querySelectorAll<SVGGraphicsElement>('svg [fill^="url(#"]')) {
    const pattern = document.getElementById(/#([^")]+)/.exec(shape.getAttribute('fill') ?? '')?.[1] ?? '');
    if (!(pattern instanceof SVGPatternElement) || pattern.children.length === 0) continue;
    const box = shape.getBBox();
    if (!(box.width > 0 && box.height > 0)) {
      shape.remove();
      continue;
    }
    const [width, height] = [pattern.width.baseVal.value, pattern.height.baseVal.value];
    const turn = pattern.patternTransform.baseVal.consolidate()?.matrix;
    const matrix =
      turn === undefined ? new DOMMatrix() : new DOMMatrix([turn.a, turn.b, turn.c, turn.d, turn.e, turn.f]);
    const back = matrix.inverse();
    const corners = [box.x, box.x + box.width].flatMap((x) =>
      [box.y, box.y + box.height].map((y) => new DOMPoint(x, y).matrixTransform(back)),
    );
    const of = (pick: 'x' | 'y', size: number): [number, number] => [
      Math.floor(Math.min(...corners.map((corner) => corner[pick])) / size),
      Math.ceil(Math.max(...corners.map((corner) => corner[pick])) / size),
    ];
    const [left, right] = of('x', width);
    const [top, bottom] = of('y', height);
    if ((right - left) * (bottom - top) > MOST) continue;
    const clip = document.createElementNS(SVG, 'clipPath');
    clip.id = `hatch-clip-${made++}`;
    const outline = shape.cloneNode(true) as SVGGraphicsElement;
    outline.removeAttribute('fill');
    clip.append(outline);
    const drawn = document.createElementNS(SVG, 'g');
    drawn.setAttribute('clip-path', `url(#${clip.id})`);
    for (const child of pattern.children) {
      // A line from edge to edge of its tile is one line through all of them, no longer than the shape: what hangs over the paper's
      // edge makes the printer shrink every sheet, clipped or not.
      const at = /^M([\d.]+) 0V[\d.]+$/.exec(child.getAttribute('d') ?? '')?.[1];
      if (at !== undefined) {
        let d = '';
        for (let i = left; i <= right; i++) {
          const x = i * width + Number(at);
          let [from, to] = [top * height, bottom * height];
          for (const [slope, start, low, size] of [
            [matrix.c, matrix.a * x + matrix.e, box.x, box.width],
            [matrix.d, matrix.b * x + matrix.f, box.y, box.height],
          ]) {
            if (Math.abs(slope) < 1e-9) {
              if (start < low || start > low + size) from = Number.POSITIVE_INFINITY;
              continue;
            }
            const ends = [(low - start) / slope, (low + size - start) / slope];
            from = Math.max(from, Math.min(...ends));
            to = Math.min(to, Math.max(...ends));
          }
          if (!(from < to)) continue;
          const end = (y: number) =>
            `${(matrix.a * x + matrix.c * y + matrix.e).toFixed(2)} ${(matrix.b * x + matrix.d * y + matrix.f).toFixed(2)}`;
          d += `M${end(from)}L${end(to)}`;
        }
        const path = child.cloneNode(true) as SVGElement;
        path.setAttribute('d', d);
        drawn.append(path);
        continue;
      }
      for (let i = left; i < right; i++) {
        for (let j = top; j < bottom; j++) {
          const copy = child.cloneNode(true) as SVGElement;
          copy.setAttribute('transform', matrix.translate(i * width, j * height).toString());
          drawn.append(copy);
        }
      }
    }
    const still = shape.cloneNode(true) as SVGGraphicsElement;
    still.setAttribute('fill', 'none');
    shape.replaceWith(clip, drawn, still);
  }
}
