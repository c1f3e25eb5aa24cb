import { expect, it } from 'vitest';
import type { BinReview } from '../../src/analysis/types.ts';
import { type Estimate, estimate, withheld } from '../../src/base/estimate.ts';
import { pointsLead } from '../../src/notebook/points-lead.ts';
import { Units } from '../../src/report/units.ts';

const units = new Units('us', 'USD', 'America/Chicago');
const bin = (name: string, pointsRemoved: Estimate) =>
  ({ bin: { name }, moisture: { pointsRemoved } }) as unknown as BinReview;
const north = bin('North', estimate(3.5, 2.8, 4));
const south = bin('South', estimate(0.5, -0.1, 0.7));
const damp = bin('Damp', estimate(-2.5, -2.8, -2.2));

it('says which bin lost the most and which the least, and ranks none whose points may be zero', () => {
  const said = (...bins: BinReview[]) => pointsLead(bins, units);
  const sure = bin('Lane', estimate(1.2, 0.9, 1.4));
  expect(said(sure, north)).toBe(
    'North lost 3.5 points (2.8 to 4.0), the most; Lane lost 1.2 points (0.9 to 1.4), the least.',
  );
  expect(said(south, north)).toBe('North lost 3.5 points (2.8 to 4.0), the most; South lost 0.5 points (−0.1 to 0.7).');
  expect(said(damp, south)).toBe('South lost 0.5 points (−0.1 to 0.7); Damp took up 2.5 points (2.2 to 2.8).');
  expect(said(north, bin('West', withheld('-')))).toBe('North lost 3.5 points (2.8 to 4.0). It can’t be told of West.');
  // 2.8 to 4.3 reaches into 2.8 to 4.0, 1.3 to 1.9 into 0.9 to 1.4: neither the most nor the least is sure.
  const wide = bin('Wide', estimate(3.1, 2.8, 4.3));
  const low = bin('Low', estimate(1.5, 1.3, 1.9));
  expect(said(sure, low, wide, north)).toBe(
    'North lost 3.5 points (2.8 to 4.0), the most, though Wide may have lost as much; Lane lost 1.2 points (0.9 to 1.4).',
  );
  expect(said()).toMatch(/^Can’t tell/);
});
