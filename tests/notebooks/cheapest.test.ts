import { describe, expect, it } from 'vitest';
import { baseMoisture } from '../../src/analysis/moisture/wanted-moisture.ts';
import { estimate, withheld } from '../../src/base/estimate.ts';
import {
  cheapestTitle,
  costFigure,
  costSpan,
  dryingSaid,
  fansSaid,
  givenAwayLead,
  knownTotal,
  Units,
} from '../../src/notebook.ts';
import { exampleInput } from '../report/example-review.ts';

const us = new Units('us', 'USD', 'America/Chicago');
const cheap = { name: 'A', cost: estimate(0.027, 0.025, 0.03) };
const near = { name: 'B', cost: estimate(0.03, 0.028, 0.033) };
const dear = { name: 'C', cost: estimate(0.041, 0.037, 0.047) };
const none = { name: 'D', cost: withheld('No log.') };

describe('the cheapest bin', () => {
  it('is named with those whose interval reaches into its own', () => {
    expect(cheapestTitle([dear, cheap], 'was cheapest')).toBe('A was cheapest');
    expect(cheapestTitle([dear, near, cheap, none], 'was cheapest')).toBe('A was cheapest, though B may be no dearer');
    // Of a season of many bins a title names no more than three.
    const others = Array.from({ length: 5 }, (_, i) => ({ ...near, name: `N${i}` }));
    expect(cheapestTitle([cheap, ...others], 'was cheapest')).toBe('A was cheapest, though 5 others may be no dearer');
    expect(cheapestTitle([none, dear], 'was cheapest')).toBe('Only C has this cost');
    expect(cheapestTitle([none], 'was cheapest')).toBeNull();
  });
  it('has no figure where there is nothing to compare', () => {
    expect(costFigure('c', 'money per grain point', 'was cheapest', [cheap], us)).toEqual([]);
    expect(costFigure('c', 'money per grain point', 'was cheapest', [none, none], us)).toEqual([]);
    const [figure] = costFigure('c', 'money per grain point', 'was cheapest', [cheap, none], us);
    expect(figure.notShown).toBe('1 of 2 bins not shown: the notes of the table say why.');
  });
  it('opens the span of the costs', () => {
    const said = (bins: Parameters<typeof costSpan>[0]) => costSpan(bins, 'money per grain point', us);
    expect(said([dear, cheap, none])).toBe(
      'from 0.027 USD a bushel-point (0.025 to 0.030) in A to 0.041 USD a bushel-point (0.037 to 0.047) in C',
    );
    expect(said([cheap, { ...cheap, name: 'E' }])).toBe('0.027 USD a bushel-point (0.025 to 0.030) in each of 2 bins');
    expect(said([none])).toBeNull();
  });
});

describe('the first sentence', () => {
  const { bins } = exampleInput().review;
  it('tells apart a price that is not known and one that there cannot be', () => {
    expect(dryingSaid(bins, [none, none], us)).toBe('what a point cost can’t be told of any bin');
    expect(dryingSaid(bins.slice(0, 1), [none], us)).toBe('what a point cost can’t be told. No log');
    // The third bin's goal is to cool.
    expect(dryingSaid(bins.slice(2, 3), [none], us)).toBe('the fans were not run to dry, so no point has a price');
  });
  it('names the bins that hours and cost are known of, each its own', () => {
    const all = knownTotal([estimate(100, 90, 110), estimate(200, 180, 220)]);
    const one = knownTotal([estimate(38, 30, 44), withheld('No tariff.')]);
    const nothing = knownTotal([withheld('No log.'), withheld('No log.')]);
    expect(fansSaid(all, one, us)).toBe('Your fans ran 300 h (270 to 330) and cost 38 USD (30 to 44) in 1 of 2 bins');
    expect(fansSaid(all, nothing, us)).toBe('Your fans ran 300 h (270 to 330); what they cost can’t be told');
    expect(fansSaid(nothing, nothing, us)).toBe('Can’t tell how long the fans ran or what they cost');
  });
});

describe('what over-drying gave away', () => {
  const { review, loaded } = exampleInput();
  const [bin] = review.bins;
  const season = loaded.season;
  const lost = (bushels: ReturnType<typeof estimate>, money = withheld('No price.')) => ({
    ...bin,
    moisture: { ...bin.moisture, overdryingLossBushels: bushels, overdryingLoss: money },
  });
  it('is told in money, else by weight, and only where it is sure', () => {
    const dry = lost(estimate(346, 246, 444), estimate(1503, 1069, 1932));
    expect(givenAwayLead([dry, lost(estimate(0, 0, 0))], us, season)).toBe(
      'North 36 gave away most by ending too dry, 1,500 USD (1,070 to 1,930); its fans cost 878 USD (823 to 933).',
    );
    // A bin that may have lost as much (its interval reaches into the first's) is named.
    const near = { ...lost(estimate(200, 60, 330), estimate(877, 287, 1460)), bin: { ...bin.bin, name: 'South 30' } };
    expect(givenAwayLead([dry, near], us, season)).toBe(
      'North 36 gave away most by ending too dry, 1,500 USD (1,070 to 1,930), though South 30 may have given away as much; the fans of North 36 cost 878 USD (823 to 933).',
    );
    expect(givenAwayLead([lost(estimate(346, 246, 444))], us, season)).toContain(
      'gave away by ending too dry, 346 bu (246 to 444)',
    );
    expect(givenAwayLead([lost(estimate(51, 0, 125)), bin], us, season)).toBe(
      'No bin is sure to have ended drier than the market pays for.',
    );
    expect(givenAwayLead([lost(withheld('No sensor.'))], us, season)).toMatch(/^Can’t tell/);
  });
  it('says where the grain came in as dry already, which no fan did', () => {
    const dry = lost(estimate(346, 246, 444), estimate(1503, 1069, 1932));
    const base = baseMoisture(season, bin.bin)!;
    const at = (startWb: number) => ({
      ...dry,
      moisture: { ...dry.moisture, start: { ...dry.moisture.start, value: startWb } },
    });
    expect(givenAwayLead([at(base - 0.01)], us, season)).toMatch(
      /gave away by ending too dry, 1,500 USD .*\. North 36 came in drier than the market pays for already\.$/,
    );
    expect(givenAwayLead([at(base + 0.01)], us, season)).not.toContain('already');
  });
});
