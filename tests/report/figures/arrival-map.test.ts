import { describe, expect, it } from 'vitest';
import { type ArrivalMap, arrivalMap, type MapPanel } from '../../../src/report/figures/arrival-map.ts';
import { Units } from '../../../src/report/units.ts';

const units = new Units('us', 'USD', 'America/Chicago');
const wide = { width: 900, narrow: false, idPrefix: 't' };
const narrow = { width: 360, narrow: true, idPrefix: 'n' };

const panel: MapPanel = {
  name: 'North 36',
  said: '3 Dec 2024: 2 of 5 passed',
  depthM: 6,
  cables: [
    { id: 'C1', fromCentreM: 0 },
    { id: 'C2', fromCentreM: 3.048 },
  ],
  sensors: [
    { cable: 'C1', heightM: 1, outcome: 'passed', fanHours: 8, slowest: false },
    { cable: 'C1', heightM: 5, outcome: 'passed', fanHours: 40, slowest: true },
    { cable: 'C2', heightM: 1, outcome: 'followed', fanHours: null, slowest: false },
    { cable: 'C2', heightM: 3, outcome: 'untold', fanHours: null, slowest: false },
    { cable: 'C2', heightM: 5, outcome: 'held', fanHours: null, slowest: false },
  ],
};
const data: ArrivalMap = { id: 'm', title: 'T', alt: 'A', kind: 'cooling', panels: [panel], notShown: null };

/** Place of a text in the drawing. */
function placeOf(svg: string, words: string): { x: number; y: number } {
  const tag = [...svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)].find((found) => found[2] === words)?.[1] ?? '';
  return { x: Number(/x="([\d.]+)"/.exec(tag)?.[1]), y: Number(/y="([\d.]+)"/.exec(tag)?.[1]) };
}

describe('the arrival map', () => {
  const svg = arrivalMap(data, units).draw(wide);
  it('puts the floor at the bottom and a cable under its column', () => {
    const [low, high] = [placeOf(svg, '8.0'), placeOf(svg, '40.0')];
    expect(high.y).toBeLessThan(low.y);
    expect(low.x).toBe(high.x);
    expect(placeOf(svg, 'C1').x).toBe(low.x);
    expect(placeOf(svg, 'C1').y).toBeGreaterThan(low.y);
  });
  it('tells each outcome by its shape, and names the shapes it uses', () => {
    expect(svg.match(/<circle/g)?.length).toBe(1);
    expect(svg.match(/<rect[^>]*url\(#t-untold\)/g)?.length).toBe(1);
    expect(svg.match(/<path[^>]*stroke-width="2.5"/g)?.length).toBe(1);
    expect(svg.match(/<rect[^>]*fill="var\(--ink\)"/g)?.length).toBe(2);
    expect(
      arrivalMap(data, units)
        .legend.map((item) => item.swatch)
        .slice(1),
    ).toEqual(['cross', 'ring', 'hatch', 'dash']);
    const plain = { ...panel, sensors: panel.sensors.slice(0, 2) };
    expect(
      arrivalMap({ ...data, panels: [plain] }, units)
        .legend.map((item) => item.swatch)
        .slice(1),
    ).toEqual(['dash']);
  });
  it('stands out the more the later, and frames the slowest', () => {
    const boxes = [...svg.matchAll(/<rect[^>]*fill="var\(--ink\)"[^>]*>/g)].map(([tag]) => tag);
    const opacity = boxes.map((tag) => Number(/fill-opacity="([\d.]+)"/.exec(tag)?.[1]));
    expect(opacity[1]).toBeGreaterThan(opacity[0]);
    expect(boxes.map((tag) => /stroke-width="(\d)"/.exec(tag)?.[1])).toEqual(['0', '2']);
  });
  it('says how far a cable hangs from the centre', () => {
    expect(svg).toContain('>centre<');
    expect(svg).toContain('>10<');
  });
  it('stays inside its width with long names and many cables, and leaves out numbers that have no room', () => {
    const cables = Array.from({ length: 20 }, (_, i) => ({ id: `Cable ${i + 1}`, fromCentreM: 3 }));
    const sensors = cables.flatMap(({ id }) =>
      [1, 3, 5].map((heightM) => ({ cable: id, heightM, outcome: 'passed' as const, fanHours: 123, slowest: false })),
    );
    const crowded = { ...panel, name: 'The old bin behind the north shed that nobody likes to climb', cables, sensors };
    for (const size of [wide, narrow]) {
      const drawn = arrivalMap({ ...data, panels: [crowded, panel] }, units).draw(size);
      for (const found of drawn.matchAll(/<rect [^>]*\bx="([\d.-]+)"[^>]*width="([\d.]+)"/g)) {
        expect(Number(found[1])).toBeGreaterThanOrEqual(0);
        expect(Number(found[1]) + Number(found[2])).toBeLessThanOrEqual(size.width + 0.1);
      }
      if (size.narrow) expect(drawn).not.toContain('>123<');
    }
    expect(arrivalMap({ ...data, panels: [crowded] }, units).draw(narrow)).toContain('…');
  });
  it('refuses to draw nothing', () => {
    expect(() => arrivalMap({ ...data, panels: [] }, units)).toThrow(/no bin/);
  });
});
