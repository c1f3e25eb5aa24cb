import { beforeAll, describe, expect, test } from 'vitest';
import type { BinReview, SeasonReview } from '../../src/analysis/types.ts';
import type { LoadedSeason } from '../../src/season/loaded.ts';
import { sensorSeries } from '../../src/tables/sensors.ts';
import { loadedSample, reviewedSample } from '../support/sample.ts';
import { type Truth, truthOf } from './read-sample.ts';

const HOUR = 3_600_000;
/** Of the arrivals told in clear planned campaigns, how many may have no true one near. */
const SPURIOUS_PART = 0.15;

// The bounds are those that the kit promises (fan hours 0.5 %, kWh and cost 1 % of metered or current fans, points in the interval
// and 0.2 from the middle, nine of ten arrivals within 6 fan hours); the truth is the generator's, which shares no code with the kit.
describe.each(['sorrel-fork', 'sorrel-fork-2023'] as const)('the review of %s', (folder) => {
  const truth: Truth = truthOf(folder);
  let loaded: LoadedSeason;
  let review: SeasonReview;
  beforeAll(async () => {
    loaded = await loadedSample(folder);
    review = await reviewedSample(folder);
  }, 240_000);

  const found = (id: string): BinReview => review.bins.find((one) => one.bin.id === id)!;
  const relative = (given: number | null, known: number) => Math.abs(given! / known - 1);

  describe.each(truth.bins.map((bin) => [bin.id, bin] as const))('bin %s', (id, bin) => {
    test('fan hours to half a percent, starts, silent hours told', () => {
      const { fan } = found(id);
      expect(found(id).failure).toBeNull();
      expect(relative(fan.hours.value, bin.fan.hours)).toBeLessThan(0.005);
      expect(fan.starts).toBe(bin.fan.starts);
      const gap = truth.faults.find((one) => one.kind === 'gap' && one.bin === id && one.where.startsWith('fan '));
      const silent = gap === undefined ? 0 : (gap.toMs - gap.fromMs) / HOUR;
      // The gap's own ends lie one reading (10 minutes) off on either side.
      expect(Math.abs(fan.unknownHours! - silent)).toBeLessThan(0.5);
    });

    test('energy and money to one percent, where a meter or a current tells the energy', () => {
      const { fan } = found(id);
      const nameplate = fan.energyFrom === 'nameplate';
      // A nameplate knows nothing of cold, dense air: 5 % is what the stated load may be off.
      const bound = nameplate ? 0.05 : 0.01;
      expect(relative(fan.energyKwh.value, bin.fan.energyKwh)).toBeLessThan(bound);
      expect(relative(fan.energyCost.value, bin.fan.energyCost)).toBeLessThan(bound);
      // F1's meter steps by 0.1 kWh, that is 0.4 kW of a quarter hour, and a peak is the highest of thousands: up to 0.4 of 13 kW too high.
      const peak = fan.energyFrom === 'meter' ? 0.03 : 0.01;
      expect(Math.abs(fan.demandCost.value! - bin.fan.demandCost)).toBeLessThan(peak * bin.fan.demandCost + 0.01);
      // One storage season bears one year's horsepower charge.
      expect(fan.connectedCost.value).toBeCloseTo(bin.fan.connectedPerYear, 2);
      const cost = bin.fan.costWithoutConnected + bin.fan.connectedPerYear;
      expect(relative(fan.cost.value, cost)).toBeLessThan(bound);
    });

    test('points removed: the truth lies in the interval, the middle within 0.2 point', () => {
      const { pointsRemoved } = found(id).moisture;
      const points = bin.moisture.pointsRemoved;
      expect(pointsRemoved.interval![0]).toBeLessThanOrEqual(points);
      expect(pointsRemoved.interval![1]).toBeGreaterThanOrEqual(points);
      expect(Math.abs(pointsRemoved.value! - points)).toBeLessThan(0.2);
    });
  });

  test('bushels and dry matter as filled: 0.3 % by tickets, the interval holds them by volume', () => {
    for (const { id, grain } of truth.bins) {
      const { from, bushels, bushelsInterval, dryMatterKg, dryMatterKgInterval } = found(id).grain;
      expect(bushelsInterval![0], id).toBeLessThanOrEqual(grain.bushels);
      expect(bushelsInterval![1], id).toBeGreaterThanOrEqual(grain.bushels);
      expect(dryMatterKgInterval![0], id).toBeLessThanOrEqual(grain.dryMatterKg);
      expect(dryMatterKgInterval![1], id).toBeGreaterThanOrEqual(grain.dryMatterKg);
      // B6 of 2024 has no tickets; all others do.
      expect(from, id).toBe(id === 'B6' ? 'volume' : 'tickets');
      if (from !== 'tickets') continue;
      expect(relative(bushels, grain.bushels), id).toBeLessThan(0.003);
      // Loads' moistures are read to a tenth of a point, with a meter's error.
      expect(relative(dryMatterKg, grain.dryMatterKg), id).toBeLessThan(0.006);
    }
  });

  test('mean temperatures: the interval holds the truth, a warmed rim without a cable included', () => {
    for (const { id, temperature } of truth.bins) {
      const { start, end } = found(id).temperature;
      expect(end.interval![0], id).toBeLessThanOrEqual(temperature.endC);
      expect(end.interval![1], id).toBeGreaterThanOrEqual(temperature.endC);
      // The truth of the start is of the first 24 hours, the kit's of their still-air readings: the same only where no fan cooled the grain meanwhile.
      const bin = truth.bins.find((one) => one.id === id)!;
      const firstRun = Math.min(...bin.fan.fans.flatMap((fan) => fan.runs.map(([from]) => from)));
      if (firstRun < Date.parse(bin.grain.filled) + 24 * HOUR && firstRun > Date.parse(bin.grain.filled)) continue;
      expect(start.interval![0], id).toBeLessThanOrEqual(temperature.startC);
      expect(start.interval![1], id).toBeGreaterThanOrEqual(temperature.startC);
    }
  });

  test('every fan hour has one class, and for and against the goal are among them', () => {
    for (const { bin, fan, useful } of review.bins) {
      const told = Object.values(useful!.hours).reduce((sum, one) => sum + one.value!, 0);
      expect(told, bin.id).toBeCloseTo(fan.hours.value!, 6);
      expect(useful!.forGoal.value! + useful!.against.value!, bin.id).toBeLessThanOrEqual(told + 1e-6);
      for (const groups of [useful!.months, useful!.hoursOfDay, useful!.outdoor]) {
        expect(
          groups.reduce((sum, one) => sum + one.hours.value!, 0),
          bin.id,
        ).toBeCloseTo(told, 6);
      }
      // What the hours against the goal cost is part of what all of them cost.
      expect(useful!.againstCost.value!, bin.id).toBeLessThanOrEqual(fan.energyCost.value!);
    }
  });

  test('fan hours a point and kWh a bushel-point are told with one interval, by bin and beside the other bins', () => {
    const same = review.bins.flatMap(({ bin, fan, moisture, rates, unitEnergy }) => {
      const factors = review.compared!.bins.find((one) => one.binId === bin.id)!.factors;
      if (factors === null || bin.goal !== 'dry') return [];
      expect(factors.energy, bin.id).toEqual(unitEnergy!.kwhPerBushelPoint);
      // A cost is of all hours, the points of those since the bin was full: where hours of filling lie between, the two part.
      const { season } = rates!;
      if (season!.fanHours < 0.99 * fan.hours.value!) {
        expect(factors.hours.value, bin.id).toBeCloseTo(fan.hours.value! / moisture.pointsRemoved.value!, 6);
        expect(season!.hoursPerPoint.value, bin.id).toBeCloseTo(season!.fanHours / moisture.pointsRemoved.value!, 6);
        return [];
      }
      expect(factors.hours, bin.id).toEqual(season!.hoursPerPoint);
      return [bin.id];
    });
    expect(same.length).toBeGreaterThan(1);
  });

  test('the 90 % intervals of hours, energy and money hold the truth in at least 84 % of cases', () => {
    const inside = truth.bins.flatMap((bin) => {
      const { fan } = found(bin.id);
      const cost = bin.fan.costWithoutConnected + bin.fan.connectedPerYear;
      const pairs = [
        [fan.hours, bin.fan.hours],
        [fan.energyKwh, bin.fan.energyKwh],
        [fan.demandCost, bin.fan.demandCost],
        [fan.cost, cost],
        [fan.costPerBushel, cost / bin.grain.bushels],
      ] as const;
      // A cent and a hundredth of an hour are below what the truth itself is rounded to.
      return pairs.map(([{ interval }, known]) => interval![0] <= known + 0.01 && known - 0.01 <= interval![1]);
    });
    expect(inside.filter((yes) => yes).length / inside.length).toBeGreaterThanOrEqual(0.84);
  });

  /** Told and true arrivals of a bin's planned campaigns, held against each other in fan hours. */
  const arrivalsOf = (bin: Truth['bins'][number]) => {
    const runs = bin.fan.fans.flatMap((fan) => fan.runs);
    const fanHours = (a: number, b: number) =>
      runs.reduce(
        (sum, [from, to]) => sum + Math.max(0, Math.min(to, Math.max(a, b)) - Math.max(from, Math.min(a, b))),
        0,
      ) / HOUR;
    // Fan hours alone would call two arrivals with a long rest between them near.
    const apart = (a: number, b: number) =>
      Math.abs(a - b) > 4 * 24 * HOUR ? Number.POSITIVE_INFINITY : fanHours(a, b);
    const told = found(bin.id).fronts.campaigns.flatMap((one) =>
      one.arrivals
        .filter((each) => each.fanHours !== null)
        .map((each) => ({ kind: one.kind, cable: each.cable, sensor: each.sensor, ms: each.arrivedMs! })),
    );
    return bin.campaigns.map((campaign) => {
      const known = campaign.arrivals
        .filter((one) => one.arrived !== null)
        .map((one) => ({ kind: campaign.kind, cable: one.cable, sensor: one.sensor, ms: Date.parse(one.arrived!) }));
      const same = (a: (typeof told)[number], b: (typeof told)[number]) =>
        a.kind === b.kind && a.cable === b.cable && a.sensor === b.sensor;
      const [fromMs, toMs] = [Date.parse(campaign.from), Date.parse(campaign.to)];
      return {
        gapK: Math.abs(campaign.enteringC - campaign.grainC),
        known: known.length,
        missed: known.filter((one) => !told.some((each) => same(each, one) && apart(each.ms, one.ms) <= 6)),
        // Outside the planned campaigns truth.json says nothing of fronts (the drying stages had some), so it can't be asked there.
        told: told.filter((each) => each.ms >= fromMs && each.ms <= toMs).length,
        spurious: told.filter(
          (each) =>
            each.ms >= fromMs &&
            each.ms <= toMs &&
            !known.some((one) => same(each, one) && apart(each.ms, one.ms) <= 24),
        ),
      };
    });
  };

  // By the contract a campaign has air clearly cooler than the grain over a day, and a change under 3 C is no front; the cables may be 0.8 C and
  // the plenum 0.2 C off by what season.yaml states, so below 4 C a reader of the logs can't tell whether there is a campaign at all.
  const CLEAR_K = 4;

  test.each(truth.bins.map((bin) => [bin.id, bin] as const))(
    'front arrivals of %s within 6 fan hours, same kind, for nine of ten sensors',
    (_, bin) => {
      const clear = arrivalsOf(bin).filter((one) => one.gapK >= CLEAR_K);
      const known = clear.reduce((sum, one) => sum + one.known, 0);
      const missed = clear.flatMap((one) => one.missed);
      const where = missed.map((one) => `${one.cable}-${one.sensor} ${new Date(one.ms).toISOString()}`).join(', ');
      // Under ten known arrivals one miss is more than a tenth already: one is allowed.
      expect(missed.length, where).toBeLessThanOrEqual(Math.max(1, Math.floor(known / 10)));
    },
  );

  test('front arrivals of campaigns between 3 and 4 kelvin', () => {
    // Not promised by themselves: there the cold came late and fell in two steps
    // (truth.json's runnerUp, the second steepest change against the steepest, is 0.7 to 0.99), and which is the steepest is told by a hair. Pooled with the clear ones at most 15 % are missed.
    const faint = truth.bins.flatMap(arrivalsOf).filter((one) => one.gapK < CLEAR_K && one.gapK >= 3);
    const all = truth.bins.flatMap(arrivalsOf).filter((one) => one.gapK >= 3);
    const sum = (list: typeof all, of: (one: (typeof all)[number]) => number) =>
      list.reduce((n, one) => n + of(one), 0);
    if (folder === 'sorrel-fork') expect(sum(faint, (one) => one.known)).toBeGreaterThan(0);
    expect(sum(all, (one) => one.missed.length)).toBeLessThanOrEqual(sum(all, (one) => one.known) * 0.15);
  });

  test('few arrivals are told in the planned campaigns that were none', () => {
    // Counted: told by the review, and no true arrival of the kind at that sensor within 24 fan hours. A second fall of the air within one
    // planned campaign is one to the kit's reader and none to the generator, which tells each sensor one arrival a campaign (B3's first).
    const clear = truth.bins.flatMap(arrivalsOf).filter((one) => one.gapK >= CLEAR_K);
    const told = clear.reduce((sum, one) => sum + one.told, 0);
    const spurious = clear.flatMap((one) => one.spurious);
    const where = spurious.map((one) => `${one.cable}-${one.sensor} ${new Date(one.ms).toISOString()}`).join(', ');
    expect(told).toBeGreaterThan(10);
    expect(spurious.length, where).toBeLessThanOrEqual(SPURIOUS_PART * told);
  });

  // The past season has no stall planted, so there is nothing to tell there.
  test.runIf(folder === 'sorrel-fork')('the planted stall on the cable under the spreader is told', () => {
    const stalled = truth.bins
      .find((one) => one.id === 'B3')!
      .campaigns[0].arrivals.filter(
        (one) => one.cable === 'C4' && one.arrived === null && one.why !== 'above the grain',
      );
    expect(stalled.length).toBeGreaterThan(0);
    const [first] = found('B3').fronts.campaigns;
    for (const { sensor } of stalled) {
      const told = first.arrivals.find((one) => one.cable === 'C4' && one.sensor === sensor)!;
      expect(told.fanHours, `C4-${sensor}`).toBeNull();
      expect(told.why, `C4-${sensor}`).toMatch(/did not get there/);
    }
  });

  test('every planted fault is among the findings', () => {
    const { findings, files } = loaded.load;
    const missing: string[] = [];
    for (const one of truth.faults) {
      const overlaps = (from: number | null, to: number | null) =>
        from === null || to === null || (from < one.toMs + 3 * HOUR && to > one.fromMs - 3 * HOUR);
      if (one.kind === 'repeated-hour') {
        if (findings.some((each) => each.kind === 'duplicate' && /fans-lane|plenum\.csv/.test(each.where))) {
          missing.push(`${one.where}: the repeated hour was taken for duplicates`);
        }
        continue;
      }
      if (one.kind === 'outside') {
        const file = files.find((each) => each.path === one.where)!;
        if (file.outside < one.count) missing.push(`${one.where}: ${file.outside} outside of ${one.count}`);
        continue;
      }
      // A dead current sensor may be called silent or stuck: it is both.
      const kinds: string[] = one.kind === 'silent' ? ['silent', 'stuck'] : [one.kind];
      const hit = findings.some(
        (each) =>
          kinds.includes(each.kind) &&
          // The finding may stand for a sensor or be pooled for its cable or bin.
          (one.where === each.where || one.where.startsWith(`${each.where} `) || each.where.startsWith(one.where)) &&
          (one.kind === 'reject' || overlaps(each.fromMs, each.toMs)),
      );
      if (!hit) missing.push(`${one.kind} ${one.where}`);
    }
    expect(missing).toEqual([]);
  });

  test('every planted spike is flagged, and nothing else for a spike', () => {
    const { readings } = loaded.tables;
    const series = sensorSeries(readings);
    const planted = truth.faults.filter((one) => one.kind === 'spike');
    for (const fault of planted) {
      for (const cell of fault.cells!) {
        const one = series.find(
          (each) => each.bin === fault.bin && each.cable === cell.cable && each.sensor === cell.sensor,
        )!;
        const flags = fault.quantity === 'moisture' ? one.moistureFlags : one.tempFlags;
        // A sensor above the grain is out anyway: there the headspace flag will do.
        expect(flags[one.timeMs.indexOf(cell.ms)], `${fault.where} ${cell.cable}-${cell.sensor}`).not.toBe(0);
      }
    }
    const count = planted.reduce((sum, one) => sum + one.count, 0);
    expect(loaded.load.totals.flagged.spike).toBeLessThanOrEqual(count);
  });
});
