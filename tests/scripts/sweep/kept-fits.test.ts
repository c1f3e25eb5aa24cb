import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { KeptFits } from '../../../scripts/sweep/kept-fits.ts';

let path: string;
let dir: string;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'fits-'));
  path = join(dir, 'fits.jsonl');
});
afterEach(() => rmSync(dir, { recursive: true, force: true }));

const fit = {
  trusted: true,
  why: 'It is near.',
  fitted: {
    flowM3S: 0.1 + 0.2,
    cableFlows: [0.9, 1.02],
    isotherm: 'modified Henderson D245.5',
    moistureBiasWb: -1e-17,
    startK: 0,
    wallFactor: 1,
    respirationFactor: 1,
    cableIsotherm: 'modified Oswin',
    heatFactor: 1.1,
    rateFactor: 2,
    isothermShiftDb: 0.003,
    aboveAirWb: 0,
    heatedM3S: 1.1,
    enteringK: -0.2,
    cablesK: 0.1,
    offsetsWb: [Float64Array.of(0.01, Number.NaN), new Float64Array(0)],
  },
};
const none = { trusted: false, why: 'It does not fit.', fitted: null };

describe('fits kept in a file', () => {
  it('come back as they were, to the last bit', () => {
    const first = new KeptFits(path, 'now');
    first.add('B1', fit);
    first.add('B2', none);
    const again = new KeptFits(path, 'now');
    expect(again.get('B1')).toEqual(fit);
    expect(again.get('B2')).toEqual(none);
    expect(again.get('B3')).toBeUndefined();
  });

  it('are dropped where files or code are others', () => {
    new KeptFits(path, 'now').add('B1', fit);
    expect(new KeptFits(path, 'later').get('B1')).toBeUndefined();
    expect(readFileSync(path, 'utf8').split('\n')).toHaveLength(2);
  });

  it('a line cut short is fitted anew and spoils no other', () => {
    const first = new KeptFits(path, 'now');
    first.add('B1', fit);
    first.add('B2', none);
    writeFileSync(path, readFileSync(path, 'utf8').slice(0, -9));
    const torn = new KeptFits(path, 'now');
    expect([torn.get('B1')?.trusted, torn.get('B2')]).toEqual([true, undefined]);
    torn.add('B2', none);
    expect(new KeptFits(path, 'now').get('B2')).toEqual(none);
  });
});
