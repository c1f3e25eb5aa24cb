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
      Math.floor(Math.min(...corners.map((corner) => corner[pick])) / size) - 1,
      Math.ceil(Math.max(...corners.map((corner) => corner[pick])) / size) + 1,
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
      // A line from edge to edge of its tile is one line through all of them.
      const x = /^M([\d.]+) 0V[\d.]+$/.exec(child.getAttribute('d') ?? '')?.[1];
      const tile = (d: string) => {
        const path = child.cloneNode(true) as SVGElement;
        path.setAttribute('d', d);
        path.setAttribute('transform', matrix.toString());
        drawn.append(path);
      };
      if (x !== undefined) {
        let d = '';
        for (let i = left; i <= right; i++) d += `M${i * width + Number(x)} ${top * height}V${bottom * height}`;
        tile(d);
        continue;
      }
      for (let i = left; i <= right; i++) {
        for (let j = top; j <= bottom; j++) {
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
