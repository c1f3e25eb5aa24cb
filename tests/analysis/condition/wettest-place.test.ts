import { describe, expect, it } from 'vitest';
import { binCondition } from '../../../src/analysis/condition/bin-condition.ts';
import { alertText } from '../../../src/analysis/condition/condition-alerts.ts';
import { wettestPlace } from '../../../src/analysis/condition/wettest-place.ts';
import type { SensorShare } from '../../../src/analysis/types.ts';
import { draws } from '../../season/checks/made-bin.ts';
import { plainBin, stoodAt } from '../../support/plain-bin.ts';
import { keptInput } from './kept-bin.ts';

const NO_ERRORS = { accuracyWb: null, noiseWb: null, biasWb: null, isotherm: null };
const share = (sensor: number, endWb: number | null) =>
  ({ cable: 'C1', sensor, heightM: sensor, share: 0.25, startWb: 0.2, endWb }) as SensorShare;
const binOf = (crop: string, unloadedMs: number | null = null) =>
  plainBin({}, { crop, depthSteps: stoodAt(6), filledMs: null, unloadedMs });

describe('the wettest place at the end', () => {
  // A core short of air: corn whose mean of 13.4 % is dry enough for six months (15 %, msu-grain-monitoring), its top not.
  const core = { shares: [share(1, 0.116), share(2, 0.117), share(3, 0.118), share(4, 0.185)] };

  it('is told with the sensor’s own error and the shared one, half a point each where season.yaml states none', () => {
    // Three sensors: too few to tell what of their scatter is error.
    const found = wettestPlace(binOf('corn'), { shares: core.shares.slice(1) }, NO_ERRORS);
    expect(found).toMatchObject({ cable: 'C1', sensor: 4, aboveWb: 0.15 });
    const half = (Math.hypot(0.005, 0.005) * 1.6449) / 1.96;
    expect(found?.endWb.interval?.[0]).toBeCloseTo(0.185 - half, 5);
    expect(found?.endWb.interval?.[1]).toBeCloseTo(0.185 + half, 5);
  });

  it('is no alarm where the guidance lies within its error, where none was read, and where the grain is out', () => {
    const near = { shares: [share(1, 0.12), share(2, 0.154)] };
    expect(wettestPlace(binOf('corn'), near, NO_ERRORS)?.aboveWb).toBeNull();
    expect(wettestPlace(binOf('oats'), core, NO_ERRORS)?.aboveWb).toBeNull();
    expect(wettestPlace(binOf('corn', 1), core, NO_ERRORS)?.aboveWb).toBeNull();
    expect(wettestPlace(binOf('corn'), { shares: [share(1, null)] }, NO_ERRORS)).toBeNull();
  });

  it('is held against the longer limit where no short one was read', () => {
    // Wheat: 13.5 % (ndsu-2019-drying), nothing for shorter.
    expect(wettestPlace(binOf('wheat'), { shares: [share(1, 0.15)] }, NO_ERRORS)?.aboveWb).toBe(0.135);
  });

  it('allows for the wettest of many sensors reading high by chance', () => {
    // Bins whose truth is drawn: 4,000 each, sensors and their shared error by the half points that 95 % keep.
    const random = draws(20261201);
    const kinds: [string, (cable: number, height: number, front: number) => number][] = [
      ['even', () => 0.1 * random.normal()],
      ['dried up to a front', (_, height, front) => (height > front ? 1.5 : 0) + 0.1 * random.normal()],
      ['a wet core', (cable, height) => (cable === 0 && height > 0.5 ? 3 : 0) + 0.15 * random.normal()],
    ];
    for (const [kind, extra] of kinds) {
      for (const [cables, heights] of [
        [2, 6],
        [4, 7],
        [5, 9],
      ]) {
        let held = 0;
        let falseAlarms = 0;
        for (let bin = 0; bin < 4000; bin++) {
          const front = 0.3 + 0.6 * random.uniform();
          const shared = (0.5 / 1.96) * random.normal();
          const truths = new Map<string, number>();
          const shares: SensorShare[] = [];
          for (let c = 0; c < cables; c++) {
            for (let h = 0; h < heights; h++) {
              const truth = 13 + extra(c, (h + 0.5) / heights, front);
              truths.set(`C${c} ${h}`, truth);
              const read = truth + shared + (0.5 / 1.96) * random.normal();
              shares.push({ ...share(h, read / 100), cable: `C${c}`, heightM: h + 0.5 });
            }
          }
          const found = wettestPlace(binOf('corn'), { shares }, NO_ERRORS)!;
          const [low, high] = found.endWb.interval!.map((end) => 100 * end);
          const truth = truths.get(`${found.cable} ${found.sensor}`)!;
          if (low <= truth && truth <= high) held++;
          if (low > Math.max(...truths.values())) falseAlarms++;
        }
        // As read, without the allowance: 59 to 88 % held, an alarm in 8 to 24 % where no place is above the limit.
        // 0.87 and 0.075 were kept before; this is the price of not drawing a wet pocket towards even grain (next test): of a core of three
        // sensors in a third the wettest stands as it reads.
        expect(held / 4000, `${kind}, ${cables} x ${heights}`).toBeGreaterThan(0.86);
        expect(falseAlarms / 4000, `${kind}, ${cables} x ${heights}`).toBeLessThan(0.1);
      }
    }
  });

  it('tells a wet pocket at one sensor among hundreds of even grain', () => {
    // Truths drawn as above, 200 bins each; one sensor stands in grain of 16.5 % among grain of 14.
    const random = draws(20261202);
    for (const [cables, heights] of [
      [5, 9],
      [30, 20],
    ]) {
      let held = 0;
      let told = 0;
      for (let bin = 0; bin < 200; bin++) {
        const shared = (0.5 / 1.96) * random.normal();
        const pocket = Math.floor(cables * heights * random.uniform());
        const shares = Array.from({ length: cables * heights }, (_, i): SensorShare => {
          const truth = i === pocket ? 16.5 : 14 + 0.1 * random.normal();
          const endWb = (truth + shared + (0.5 / 1.96) * random.normal()) / 100;
          return {
            ...share(1 + (i % heights), endWb),
            cable: `C${Math.floor(i / heights)}`,
            heightM: 0.5 + (i % heights),
          };
        });
        const { endWb, aboveWb } = wettestPlace(binOf('corn'), { shares }, NO_ERRORS)!;
        const [low, high] = endWb.interval!;
        if (low <= 0.165 && 0.165 <= high) held++;
        if (aboveWb !== null) told++;
      }
      // Drawn towards its third like the rest it read up to 1.6 points too dry: 160 and 1 of 200 held, alerts for 192 and 9.
      expect(held, `${cables} x ${heights}`).toBeGreaterThan(170);
      expect(told, `${cables} x ${heights}`).toBeGreaterThan(190);
    }
  });

  it('is among what a reader of summary.json should act on', () => {
    const input = keptInput({ days: 30, tempC: () => 5 });
    const standing = { ...input.bin, grain: { ...input.bin.grain, unloadedMs: null } };
    const alerts = (bin: typeof input.bin) =>
      binCondition({ ...input, bin, moisture: { ...input.moisture, shares: core.shares } }).alerts;
    expect(alerts(standing).map(({ kind }) => kind)).toEqual(['ended wet']);
    expect(alerts(input.bin)).toEqual([]);
    const [alert] = alerts(standing);
    expect(alertText(alert)).toBe(
      'Cable C1, sensor 4 (4.0 m) ended at 18.5 % moisture (17.9 to 19.1), above the 15 % that is published for storing the crop.',
    );
  });
});
