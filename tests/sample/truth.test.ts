import { describe, expect, test } from 'vitest';
import { linesOf, truthOf } from './read-sample.ts';

describe.each(['sorrel-fork', 'sorrel-fork-2023'])('the truth of %s', (folder) => {
  const truth = truthOf(folder);

  test('adds up: points, fans to bins, costs, dry matter', () => {
    for (const bin of truth.bins) {
      expect(bin.moisture.pointsRemoved).toBeCloseTo(bin.moisture.startPct - bin.moisture.endPct, 3);
      const sum = (pick: (fan: (typeof bin.fan.fans)[number]) => number) =>
        bin.fan.fans.reduce((all, fan) => all + pick(fan), 0);
      expect(bin.fan.energyKwh).toBeCloseTo(
        sum((fan) => fan.energyKwh),
        3,
      );
      expect(bin.fan.costWithoutConnected).toBeCloseTo(
        sum((fan) => fan.energyCost + fan.demandCost),
        3,
      );
      expect(bin.fan.hours).toBeLessThanOrEqual(bin.fan.runHours + 1e-3); // both to four digits
      for (const fan of bin.fan.fans) {
        const hours = fan.runs.reduce((all, [from, to]) => all + (to - from) / 3_600_000, 0);
        expect(fan.runHours).toBeCloseTo(hours, 3);
        expect(fan.starts).toBe(fan.runs.length);
      }
    }
  });

  test('demand is shared out whole among the fans', () => {
    for (const tariff of truth.tariffs) {
      const billed = tariff.demand.reduce((sum, month) => sum + month.cost, 0);
      const shared = truth.bins.flatMap((bin) => bin.fan.fans).reduce((sum, fan) => sum + fan.demandCost, 0);
      // All fans with a demand charge hang on the one tariff that has it.
      if (tariff.demand.length > 0) expect(shared).toBeCloseTo(billed, 2);
    }
  });

  // Water in the grain before less after is what the air carried off: two accounts of the generator, to the kilogram that the file shows.
  test('water carried by the air is water lost by the grain', () => {
    for (const bin of truth.bins) expect(bin.water.carriedByAirKg).toBeCloseTo(bin.water.lostByGrainKg, 0);
  });

  // Dry matter times the change of dry-basis moisture is the same water by a third way. Moisture is told as the mean of a first day, so where the fan ran
  // in that day a part of the water is gone before it: those bins, and one that was dried between its fillings, are left to the account above.
  test('points times dry matter is the water', () => {
    let checked = 0;
    for (const bin of truth.bins) {
      const first = Math.min(...bin.fan.fans.flatMap((fan) => fan.runs.map(([from]) => from)));
      if (first < Date.parse(bin.grain.filled) + 86_400_000) continue;
      checked++;
      const db = (pct: number) => pct / (100 - pct);
      const kg = bin.grain.dryMatterKg * (db(bin.moisture.startPct) - db(bin.moisture.endPct));
      expect(Math.abs(kg / bin.water.lostByGrainKg - 1), bin.id).toBeLessThan(0.005);
    }
    expect(checked).toBeGreaterThan(0);
  });

  test('fronts climb: where no second cold spell blurs them, a higher sensor of a cable is reached later', () => {
    let clear = 0;
    for (const bin of truth.bins) {
      for (const campaign of bin.campaigns) {
        const sharp = campaign.arrivals.filter((one) => one.fanHours !== null && one.runnerUp! < 0.8);
        clear += sharp.length;
        for (const one of sharp) {
          const below = sharp.filter((other) => other.cable === one.cable && other.heightM < one.heightM);
          for (const other of below) expect(one.fanHours!).toBeGreaterThan(other.fanHours!);
        }
      }
    }
    expect(clear).toBeGreaterThan(10);
  });
});

// The meter in the file must tell the energy of the truth by itself: readings summed across the reset.
test('the energy meter of F1 tells the kWh of the truth', () => {
  const rows = linesOf('sorrel-fork', 'logs/fan-f1.csv.gz')
    .slice(1)
    .map((line) => Number(line.split(',')[3]));
  let kwh = 0;
  for (let i = 1; i < rows.length; i++) kwh += rows[i] >= rows[i - 1] ? rows[i] - rows[i - 1] : rows[i];
  const truth = truthOf('sorrel-fork').bins.find((bin) => bin.id === 'B1')!;
  // One interval of 15 minutes at 13 kW may be lost in the reset.
  expect(Math.abs(kwh - truth.fan.energyKwh)).toBeLessThan(4);
});

test('the sampled state of F5 tells its fan hours to half a percent', () => {
  const on = linesOf('sorrel-fork', 'logs/fans-shop.csv.gz').filter((line) => /,F5,1,/.test(line)).length;
  const truth = truthOf('sorrel-fork').bins.find((bin) => bin.id === 'B5')!;
  expect(Math.abs(on / 4 / truth.fan.hours - 1)).toBeLessThan(0.005);
});
