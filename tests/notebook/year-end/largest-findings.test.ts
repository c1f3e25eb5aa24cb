import { describe, expect, it } from 'vitest';
import type { BinReview, SeasonReview } from '../../../src/analysis/types.ts';
import { type Estimate, estimate, withheld } from '../../../src/base/estimate.ts';
import { largestFindings } from '../../../src/notebook/year-end/largest-findings.ts';
import type { Measure } from '../../../src/notebook/year-end/measure.ts';
import { Units } from '../../../src/report/units.ts';
import type { Season } from '../../../src/season/season.ts';

const units = new Units('us', 'USD', 'America/Chicago');
const season = { prices: { corn: { baseMoistureWb: 0.15 }, soybean: { baseMoistureWb: 0.13 } } } as unknown as Season;
const NONE = estimate(0, 0, 0);

/** A bin that came in at a moisture and ended below its base by so much money. */
const bin = (id: string, crop: 'corn' | 'soybean', startWb: number, loss: Estimate = NONE) =>
  ({
    bin: { id, name: `Bin ${id}`, grain: { crop, targetMoistureWb: null } },
    failure: null,
    fan: { cost: estimate(1000, 900, 1100) },
    grain: { from: 'tickets' },
    moisture: { start: { value: startWb }, overdryingLoss: loss, overdryingLossBushels: loss },
    useful: null,
  }) as unknown as BinReview;
const measure = (kind: Measure['kind'], one: BinReview, seen: string, saving: Estimate, tells?: Estimate): Measure => ({
  kind,
  title: '',
  bins: [one],
  seen,
  todo: '',
  saving,
  ...(tells === undefined ? {} : { tells }),
  energy: withheld('not told'),
  from: 'by the logs',
  cautions: [],
});
const found = (bins: BinReview[], measures: Measure[]) =>
  largestFindings(season, { bins } as unknown as SeasonReview, measures, units);

describe('the largest findings', () => {
  const dried = bin('B1', 'corn', 0.18, estimate(1500, 1000, 2000));
  const cooled = bin('B2', 'soybean', 0.124, estimate(900, 500, 1300));
  const kept = bin('B3', 'soybean', 0.14, estimate(880, 290, 1460));
  const unsure = bin('B4', 'corn', 0.152, estimate(230, 0, 560));
  const stop = measure(
    'stop-at-target',
    dried,
    'B1 lost 1,500.',
    estimate(520, 90, 950),
    dried.moisture.overdryingLoss,
  );
  const hours = measure('useful-hours-only', dried, 'Hours cost 580.', estimate(580, 300, 700));
  const turns = measure('fans-in-turns', dried, 'Turns save 470.', estimate(470, 450, 490));

  it('count losses of bins that were not run to dry, and rank by the money that each tells', () => {
    // By hand: 900 and 880 are 1,780, before the 1,500 of which stopping would spare 520, and the hours’ 580.
    const told = found([dried, cooled, kept, unsure], [hours, stop, turns]);
    expect(told).toEqual([
      'Bin B2 and Bin B3 went out drier than the market’s base and weighed 1,780 bu (790 to 2,760) less than at it, 1,780 USD (790 to 2,760). Bin B2 came in drier than that already.',
      'B1 lost 1,500.',
      'Hours cost 580.',
    ]);
  });

  it('tell a dried bin’s loss also where no day was there to stop on', () => {
    const noDay = { ...stop, saving: withheld('There was no day to stop on.') };
    expect(found([dried], [hours, noDay])[0]).toMatch(/^Bin B1 went out drier .* 1,500 USD \(1,000 to 2,000\)\.$/);
  });

  it('name the target beside the base where no price tells a base', () => {
    const target = { prices: { soybean: { baseMoistureWb: null } } } as unknown as Season;
    const [told] = largestFindings(target, { bins: [kept] } as unknown as SeasonReview, [], units);
    expect(told).toMatch(/^Bin B3 went out drier than the base or target and weighed/);
  });

  it('tell the hours of Bin 1 though a finding names Bin 10', () => {
    const hoursOf = (one: BinReview) =>
      ({ ...one, useful: { againstShare: estimate(0.4, 0.3, 0.5), against: estimate(200, 150, 250) } }) as BinReview;
    const told = found(
      [hoursOf(bin('10', 'corn', 0.18, estimate(1500, 1000, 2000))), hoursOf(bin('1', 'corn', 0.18))],
      [],
    );
    expect(told[0]).toMatch(/^Bin 10 went out drier/);
    expect(told.slice(1)).toEqual([expect.stringMatching(/ of the fan hours of Bin 1 pushed air/)]);
  });

  it('leave out a loss that may be none, or that is next to nothing beside what the fans cost', () => {
    const little = bin('B5', 'corn', 0.18, estimate(9, 5, 14));
    expect(found([unsure], [])).toEqual([]);
    // Under half a percent of 2,000 USD.
    expect(found([little, unsure], [])).toEqual([]);
    expect(found([little], [])).toHaveLength(1);
  });
});
