import { fanHoursBetween, pushSpan, spanList, toFanSpans } from '../../../src/analysis/fan/spans.ts';
import {
  type BinFan,
  type BinMoisture,
  FAN_OFF,
  FAN_ON,
  FAN_UNKNOWN,
  type FanSeason,
} from '../../../src/analysis/types.ts';
import type { UsefulInput } from '../../../src/analysis/useful/useful-input.ts';
import type { Season } from '../../../src/season/season.ts';
import { inventedBin, seriesOf } from '../fronts/invented-bin.ts';

export const HOUR = 3_600_000;
const DAY = 24 * HOUR;
/** Midnight of 1 October 2024 in Chicago, five hours behind UTC. */
const START = Date.UTC(2024, 9, 1, 5);
const DAYS = 20;
const HEIGHTS = [0.6, 2, 3.5, 5];
export const LOCAL_HOUR = (ms: number) => ((((ms - START) / HOUR) % 24) + 24) % 24;

/** What a test changes in the season. */
export interface Made {
  /** fan on at a local hour of a day */
  on?: (hour: number, day: number) => boolean;
  air?: (hour: number) => { tempC: number; rh: number };
  grainWb?: number;
  grainC?: number;
  goal?: Season['bins'][number]['goal'];
  targetWb?: number | null;
  targetC?: number | null;
  plenum?: boolean;
  heater?: boolean;
  direction?: 'up' | 'down';
  usefulHours?: Season['usefulHours'];
  filledDay?: number;
  moistures?: boolean;
  temperatures?: boolean;
  /** the fan's log is silent in an hour of a day */
  silent?: (hour: number, day: number) => boolean;
  /** standard error of the fan hours, h */
  hoursSd?: number;
}

/**
 * A season whose every hour is known: one bin of corn that stays as it is, ten kilowatts of fan, air that changes with the
 * hour of the day alone. By day (8 to 20 h) 10 degC and 30 %, which a published table gives 9.5 % (tests/reference/emc.csv,
 * 50 degF, 30 %); by night 10 degC and 95 %, at which every set has corn above 20 %.
 */
export function knownInput(made: Made = {}): UsefulInput {
  const {
    on = (hour) => hour >= 14 || hour < 2,
    air = (hour) => ({ tempC: 10, rh: hour >= 8 && hour < 20 ? 0.3 : 0.95 }),
    grainWb = 0.16,
    grainC = 10,
  } = made;
  const list = spanList();
  for (let h = 0; h < DAYS * 24; h++) {
    const run = on(h % 24, Math.floor(h / 24));
    // The power wobbles from hour to hour, as logged currents do: a change of power alone is no start.
    if (made.silent?.(h % 24, Math.floor(h / 24)))
      pushSpan(list, START + h * HOUR, START + (h + 1) * HOUR, FAN_UNKNOWN, Number.NaN);
    else pushSpan(list, START + h * HOUR, START + (h + 1) * HOUR, run ? FAN_ON : FAN_OFF, run ? 10_000 + (h % 2) : 0);
  }
  const spans = toFanSpans(list);
  const onHours = fanHoursBetween(spans);
  const fan = {
    fanId: 'F1',
    spans,
    energyRelSd: 0.02,
    onHours,
    energyKwh: 10 * onHours,
    onHoursSd: made.hoursSd,
  } as unknown as FanSeason;
  const base = inventedBin(HEIGHTS, 2, made.direction ?? 'up');
  const filledMs = START + (made.filledDay ?? 0) * DAY;
  const bin = {
    ...base,
    goal: made.goal ?? 'dry',
    grain: {
      ...base.grain,
      depthSteps: [{ fromMs: filledMs, depthM: 6.5 }],
      targetMoistureWb: made.targetWb === undefined ? 0.145 : made.targetWb,
      targetTempC: made.targetC ?? null,
      filledMs,
    },
  };
  const season = {
    site: { timeZone: 'America/Chicago', elevationM: 300 },
    sensors: { moisture: { isotherm: null } },
    bins: [bin],
    fans: [{ id: 'F1', tariffId: 'T', nameplateW: 10_000, heater: made.heater ? { outputW: 20_000 } : null }],
    tariffs: [
      {
        id: 'T',
        energy: [
          { pricePerKwh: 0.1, when: { months: null, days: null, hours: [[20 * 60, 8 * 60]] } },
          { pricePerKwh: 0.2, when: null },
        ],
        demand: [],
      },
    ],
    usefulHours: made.usefulHours,
  } as unknown as Season;
  const times = Array.from({ length: DAYS * 24 + 1 }, (_, h) => START + h * HOUR);
  const rows = (warmer: number) => ({
    time: Float64Array.from(times),
    temp_c: Float64Array.from(times, (ms) => air(LOCAL_HOUR(ms)).tempC + warmer),
    rh: Float64Array.from(times, (ms) => air(LOCAL_HOUR(ms)).rh),
    flags: new Float64Array(times.length),
  });
  const none = {
    time: new Float64Array(0),
    temp_c: new Float64Array(0),
    rh: new Float64Array(0),
    flags: new Float64Array(0),
  };
  const daily = Array.from({ length: DAYS }, (_, day) => ({ dayMs: START + day * DAY, mean: grainWb, stillAir: true }));
  const moment = { value: grainWb, interval: [grainWb - 0.004, grainWb + 0.004] };
  const told = made.moistures !== false;
  const series = base.cables.flatMap((cable) =>
    HEIGHTS.map((height, i) => {
      const one = seriesOf(
        cable.id,
        i + 1,
        height,
        times,
        times.map(() => (made.temperatures === false ? Number.NaN : grainC)),
      );
      return told
        ? { ...one, moistureWb: Float64Array.from(times, () => grainWb), moistureFlags: new Uint8Array(times.length) }
        : one;
    }),
  );
  return {
    bin,
    season,
    series,
    spans,
    fan: { fans: [fan] } as unknown as BinFan,
    fans: [fan],
    moisture: (told
      ? { daily, start: moment, end: moment }
      : { daily: [], start: { value: null }, end: { value: null } }) as unknown as BinMoisture,
    plenum: made.plenum === false ? none : rows(0),
    weather: rows(0),
  };
}
