import { describe, expect, it } from 'vitest';
import { MADE_TARIFF, madeFarm } from '../../../scripts/bench/sweep/made-farm.ts';
import { outdoorAir } from '../../../src/analysis/strategies/outdoor-air.ts';
import { airOfRun } from '../../../src/analysis/strategies/typical-year.ts';
import { yearSpec, yearsOnFile } from '../../../src/analysis/strategies/weather-years.ts';
import { zoneOf } from '../../../src/base/zone.ts';
import { loadOf } from '../../season/readers/load-of.ts';
import { fileOf } from '../../season/readers/season-of.ts';

const HOUR_MS = 3_600_000;
const CHICAGO = zoneOf('America/Chicago');
const SITE = { zone: CHICAGO, tariff: MADE_TARIFF };
const FILE = fileOf('weather', 'w.epw', { format: 'epw', role: 'history' });

/** Every month from a year of its own where `typical`; its temperature is its number, so that each hour tells where it is from. */
function epw(typical: boolean): string {
  const lines = [
    'LOCATION,Nowhere,XX,USA,hand-made,999999,42.00,-94.00,-6.0,300.0',
    'DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31',
  ];
  for (let ms = Date.UTC(2001, 0, 1); ms < Date.UTC(2002, 0, 1); ms += HOUR_MS) {
    const at = new Date(ms);
    const [month, day, hour] = [at.getUTCMonth() + 1, at.getUTCDate(), at.getUTCHours() + 1];
    const year = typical && month > 6 ? 1990 : 2001;
    lines.push(`${year},${month},${day},${hour},0,?9?9?9,${month}.0,-5.0,60,98000,0,0,300,0`);
  }
  return `${lines.join('\n')}\n`;
}

const airOf = async (typical: boolean) => outdoorAir(await loadOf({ 'w.epw': epw(typical) }, [FILE]), 98_000);
/** A bin filled in October, dried until late in January. */
const [{ spec }] = madeFarm({ bins: 1, years: 1, days: 110, layers: 8 }).bins;
const stretch = [spec!.hours.startMs, spec!.hours.startMs + spec!.endHour * HOUR_MS] as const;

describe('a typical year on file', () => {
  it('goes on over New Year with its own January', async () => {
    const air = await airOf(true);
    expect(yearsOnFile(...stretch, air, CHICAGO)).toEqual([2001]);
    const year = yearSpec(spec!, air, SITE, 2001);
    expect(year.why).toBeNull();
    const monthOf = (hour: number) => new Date(year.spec!.hours.startMs + (hour - 6) * HOUR_MS).getUTCMonth() + 1;
    // Each hour's temperature is the month in which it lies by the archive's clock, six hours behind UTC.
    const wrong = [...year.spec!.hours.tempC].filter((tempC, hour) => tempC !== monthOf(hour));
    expect(wrong).toEqual([]);
    expect(year.spec!.hours.tempC.at(-1)).toBe(1);
  });

  it('leaves a run within it, and one that begins elsewhere, as they are', async () => {
    const air = await airOf(true);
    const [{ fromMs, toMs }] = air.typical;
    expect(airOfRun(air, fromMs, toMs)).toBe(air);
    expect(airOfRun(air, fromMs - HOUR_MS, toMs + HOUR_MS)).toBe(air);
  });

  it('is not made of a real year, which another January followed', async () => {
    const air = await airOf(false);
    expect(air.typical).toEqual([]);
    expect(yearSpec(spec!, air, SITE, 2001).why).toMatch(/^Its weather has a gap of .* from 2001-12-31 on/);
  });
});
