import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { reviewSeason } from '../../../src/analysis/review-season.ts';
import { allFindings } from '../../../src/notebook/all-findings.ts';
import { loadSeason } from '../../../src/season/load-season.ts';
import { readSeason } from '../../../src/season/read-season.ts';
import { makeSeasonFolder } from '../../support/season-folder.ts';

const folder = mkdtempSync(join(tmpdir(), 'doubted-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const { fanHours } = makeSeasonFolder(folder);
const fanPath = join(folder, 'logs', 'fans.csv');
const cablePath = join(folder, 'logs', 'B1.csv');
const yamlPath = join(folder, 'season.yaml');
const rows = readFileSync(fanPath, 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','));
const pressure = rows.map(
  ([time, , amps], i) => `${time},B1,${Number(amps) > 1 ? (2.6 + (i % 5) / 50).toFixed(2) : '0.01'}`,
);
writeFileSync(join(folder, 'logs', 'plenum.csv'), `time,bin,sp\n${pressure.join('\n')}\n`);
writeFileSync(join(folder, 'bills.csv'), 'from,to,tariff,kwh,usd\n2024-10-04,2024-11-03,farm,6000,600\n');
const bare = readFileSync(yamlPath, 'utf8');
const yaml = `${bare}  - path: logs/plenum.csv
    holds: plenum
    columns: { time: time, bin: bin, static_pressure: { column: sp, unit: inH2O } }
  - path: bills.csv
    holds: bills
    columns: { from: from, to: to, tariff: tariff, energy: { column: kwh, unit: kWh }, amount: { column: usd, unit: USD } }
`;

/** The season with its currents as they are, or as `amps` has them. */
async function reviewed(
  unit: 'A' | 'mA',
  amps: (i: number, value: string) => string = (_, value) => value,
  text = yaml,
) {
  writeFileSync(yamlPath, text.replace('column: amps, unit: A', `column: amps, unit: ${unit}`));
  writeFileSync(
    fanPath,
    `time,fan,amps\n${rows.map(([t, fan, value], i) => `${t},${fan},${amps(i, value)}`).join('\n')}\n`,
  );
  const loaded = await loadSeason(await readSeason(folder));
  return { loaded, review: reviewSeason(loaded) };
}

describe('a current a thousandth of the true one all season, while the plenum shows the fan at work', () => {
  it('hours, energy, cost and what hangs on them are missing, with that reason', async () => {
    const { loaded, review } = await reviewed('mA');
    const [one] = review.bins;
    const why = new RegExp(`pressure in the plenum of Bin 1 shows fan F1 at work for ${fanHours} h, the log for 0 h`);
    for (const told of [
      one.fan.hours,
      one.fan.energyKwh,
      one.fan.cost,
      one.fan.costPerBushel,
      one.unitCosts.costPerPoint,
      one.moisture.perHundredFanHours,
      one.unitEnergy!.kwhPerPoint,
      review.bills![0].fansKwh,
      review.bills![0].share,
      review.bills![0].restMoney,
    ]) {
      expect(told.value).toBeNull();
      expect(told.why).toMatch(why);
    }
    expect(one.fronts).toMatchObject({ campaigns: [], why: expect.stringMatching(why) });
    expect(one.airflow.why).toMatch(why);
    expect(loaded.load.findings.map((found) => `${found.kind} ${found.where}`)).toContain('stuck fan F1');
  });

  it('the true unit tells the hours', async () => {
    const { review } = await reviewed('A');
    expect(review.bins[0].fan.hours.value).toBeCloseTo(fanHours, 6);
    expect(review.fans[0].doubt).toBeUndefined();
  });

  it('a log of one hour for two points is doubted too, where nothing but the grain speaks against it', async () => {
    const first = rows.findIndex(([, , amps]) => Number(amps) > 1);
    // The made bin hardly dries: here all of its grain goes down by four points more, within three days.
    const cable = readFileSync(cablePath, 'utf8');
    const [head, ...lines] = cable.trim().split('\n');
    const drier = lines.map((line, i) => {
      const cells = line.split(',');
      return [...cells.slice(0, -1), (Number(cells.at(-1)) - 4 * Math.min(1, (10 * i) / lines.length)).toFixed(2)].join(
        ',',
      );
    });
    writeFileSync(cablePath, `${[head, ...drier].join('\n')}\n`);
    const { loaded, review } = await reviewed('A', (i) => (i === first ? '38.5' : '0.2'), bare).finally(() =>
      writeFileSync(cablePath, cable),
    );
    const [one] = review.bins;
    for (const told of [one.fan.hours, one.fan.cost, one.unitCosts.costPerPoint, one.unitEnergy!.kwhPerPoint]) {
      expect(told.value).toBeNull();
      expect(told.why).toMatch(/^Bin 1 lost at least .* times the water .* so the fan log is most likely wrong/);
    }
    expect(one.moisture.pointsRemoved.value).not.toBeNull();
    expect(allFindings(loaded, review).filter(({ kind }) => kind === 'contradicted')).toMatchObject([
      { where: 'fan F1', binId: 'B1', text: one.fan.hours.why },
    ]);
  });

  it('moistures of days after the filling are not those of its start', async () => {
    const cable = readFileSync(cablePath, 'utf8');
    const [head, ...lines] = cable.trim().split('\n');
    // The first five days are lost: the plenum shows the fan at work in three of them.
    writeFileSync(cablePath, `${[head, ...lines.filter((line) => line >= '2024-10-09T05:00')].join('\n')}\n`);
    const { review } = await reviewed('mA').finally(() => writeFileSync(cablePath, cable));
    const [{ moisture, temperature }] = review.bins;
    expect(moisture.pointsRemoved.value).toBeNull();
    expect(moisture.why).toBe(
      'The first believable moistures come 5 days after filling, and the fan log, which would tell what happened in between, is left out.',
    );
    expect(temperature.start.value).not.toBeNull();
  });

  it('a sensor that dies for less than half of the hours leaves these open, and no more', async () => {
    // By hand: the hours that the fan ran from reading 450 on are lost; at rest the pressure and the current agree.
    const lost = rows.filter(([, , amps], i) => i >= 450 && Number(amps) > 1).length;
    const { review } = await reviewed('A', (i, value) => (i >= 450 ? '0.1' : value));
    expect(lost).toBeGreaterThan(48);
    const { fan } = review.bins[0];
    // The last good reading before a hole may hold for its hour, or not.
    expect(fan.hours.value).toBeGreaterThanOrEqual(fanHours - lost - 1);
    expect(fan.hours.value).toBeLessThanOrEqual(fanHours - lost);
    // An hour more at the most about each start and stop: the pressure before and after must show the same.
    expect(fan.unknownHours).toBeGreaterThanOrEqual(lost);
    expect(fan.unknownHours).toBeLessThan(lost + 24);
    expect(fan.hours.interval![1]).toBeGreaterThanOrEqual(fanHours);
  });
});

describe('a current that stays on while the plenum shows the fan at rest', () => {
  const plenumPath = join(folder, 'logs', 'plenum.csv');
  const plenum = readFileSync(plenumPath, 'utf8');
  /** A third of each day at work by the plenum, unless `at` has it otherwise; the log says on all the time. */
  const stuck = (at: (i: number) => string = (i) => (i % 24 < 8 ? (2.6 + (i % 5) / 50).toFixed(2) : '0.01')) => {
    writeFileSync(plenumPath, `time,bin,sp\n${rows.map(([time], i) => `${time},B1,${at(i)}`).join('\n')}\n`);
    return reviewed('A', (i) => (38.5 + (i % 7) / 10).toFixed(1)).finally(() => writeFileSync(plenumPath, plenum));
  };

  it('is left out, and told as a finding', async () => {
    const { loaded, review } = await stuck();
    const [{ fan }] = review.bins;
    // Thirty days of 8 h, and 29 nights of 16 between them.
    expect(fan.hours.value).toBeNull();
    expect(fan.hours.why).toMatch(
      /pressure in the plenum of Bin 1 shows fan F1 at work for 240 h, the log for 704 h of the same time.*stays on/,
    );
    expect(allFindings(loaded, review).filter(({ kind }) => kind === 'contradicted')).toMatchObject([
      { where: 'fan F1', binId: 'B1', text: fan.hours.why },
    ]);
  });

  it('stands where the pressure is dead: all zero, or one value', async () => {
    for (const at of [() => '0.00', () => '2.61'] as const) {
      const { review } = await stuck(at);
      expect(review.fans[0].doubt).toBeUndefined();
      expect(review.bins[0].fan.hours.value).toBeGreaterThan(600);
    }
  });
});
