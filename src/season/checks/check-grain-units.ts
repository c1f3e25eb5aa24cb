import { median } from '../../base/stats/quantile.ts';
import type { Finding } from '../loaded.ts';
import { type BinCheck, type Checked, flagCells } from './checked.ts';
import { isRatherFront } from './front-or-unit.ts';
import { type AtSensor, type Place, placesOf } from './places.ts';
import { DAY_MS, used } from './track.ts';
import { wrongShares } from './unit-fraction.ts';
import { dailyMedians, offByScale, offFromAir } from './unit-level.ts';
import { type Stretch, UNIT_MISTAKES, UNIT_SENSORS, type UnitMistake, unitStretches } from './unit-stretch.ts';
import { countText } from './wording.ts';

/** Cables whose temperatures, or sensors whose moistures, were logged in another unit than the file says. */
export function checkGrainUnits(check: BinCheck): Finding[] {
  return [...UNIT_MISTAKES.flatMap((mistake) => temperatures(check, mistake)), ...moistures(check)];
}

interface Found extends AtSensor {
  of: Checked;
  stretch: Stretch;
}

function temperatures(check: BinCheck, mistake: UnitMistake): Finding[] {
  const possible = check.sensors.filter((sensor) => {
    const said = check.saidUnit(sensor);
    return said === null || said === mistake.said;
  });
  const found = [...wholeLogs(check, possible, mistake), ...stretches(possible, mistake, check)].map((one) => {
    const positions = range(one.stretch);
    return { ...one, cells: flagCells(one.of, 'temp', positions, 'unit') };
  });
  return placesOf(
    found.filter((one) => one.cells > 0),
    check.roster,
    DAY_MS,
  ).map((place) => finding(place, mistake));
}

/** Whole cables, held against the bin's other cables; a whole bin against the outdoor air. */
function wholeLogs(check: BinCheck, sensors: readonly Checked[], mistake: UnitMistake): Found[] {
  const cables = byCable(sensors);
  const daily = new Map([...cables].map(([cable, its]) => [cable, dailyMedians(its.map((one) => one.temp))]));
  const all = byCable(check.sensors);
  for (const [cable, its] of all) if (!daily.has(cable)) daily.set(cable, dailyMedians(its.map((one) => one.temp)));
  const wrong = [...cables.keys()].filter((cable) =>
    [...daily.keys()].some((other) => other !== cable && offByScale(daily.get(cable)!, daily.get(other)!, mistake)),
  );
  if (wrong.length === 0 && cables.size === all.size && check.outdoor !== null) {
    const bin = dailyMedians(sensors.map((one) => one.temp));
    if (offFromAir(bin, check.outdoor.daily, mistake)) wrong.push(...cables.keys());
  }
  return wrong.flatMap((cable) =>
    cables.get(cable)!.map((of) => atSensor(of, { first: 0, last: of.series.rows.length - 1 })),
  );
}

/** Stretches that at least half of a cable's sensors show at once, and the cable's other sensors where the other scale fits them too. */
function stretches(sensors: readonly Checked[], mistake: UnitMistake, { outdoor }: BinCheck): Found[] {
  const out: Found[] = [];
  for (const its of byCable(sensors).values()) {
    const shown = its.flatMap((of) => unitStretches(of.temp, mistake).map((stretch) => atSensor(of, stretch)));
    const found = shown.filter((one) => !isRatherFront(one, shown, its.length, mistake, outdoor?.daily ?? null));
    const voted = found.flatMap((one) => {
      const middle = (one.fromMs + one.toMs) / 2;
      const fellows = found.filter(
        (two) =>
          two.fromMs <= middle &&
          two.toMs >= middle &&
          (Math.abs(two.fromMs - one.fromMs) <= DAY_MS || Math.abs(two.toMs - one.toMs) <= DAY_MS),
      );
      const reading = its.filter((of) => positionsWithin(of, one).length > 0);
      if (new Set(fellows.map(({ of }) => of)).size < UNIT_SENSORS * reading.length) return [];
      // One logger, one change: all of them share the middle start and end.
      const shared = {
        fromMs: median(fellows.map((two) => two.fromMs)),
        toMs: median(fellows.map((two) => two.toMs)),
      };
      const positions = positionsWithin(one.of, shared);
      return [atSensor(one.of, { first: positions[0], last: positions[positions.length - 1] })];
    });
    out.push(...voted, ...followers(its, voted, mistake));
  }
  return out;
}

/** Sensors whose own record does not prove the change (it was too cold for a clear jump) but which fit their cable only with it. */
function followers(its: readonly Checked[], voted: readonly Found[], mistake: UnitMistake): Found[] {
  const out: Found[] = [];
  for (const lead of voted) {
    for (const of of its) {
      if ([...voted, ...out].some((one) => one.of === of && one.fromMs <= lead.toMs && one.toMs >= lead.fromMs))
        continue;
      const positions = positionsWithin(of, lead);
      if (positions.length === 0) continue;
      const level = (sensor: Checked) => median(positionsWithin(sensor, lead).map((i) => sensor.temp.values[i]));
      const fellows = median(
        voted
          .filter((one) => one.fromMs <= lead.toMs && one.toMs >= lead.fromMs)
          .map((one) => mistake.truth(level(one.of))),
      );
      const own = level(of);
      if (Math.abs(mistake.truth(own) - fellows) < Math.abs(own - fellows)) {
        out.push(atSensor(of, { first: positions[0], last: positions[positions.length - 1] }));
      }
    }
  }
  return out;
}

function positionsWithin({ temp }: Checked, span: { fromMs: number; toMs: number }): number[] {
  return [...used(temp)].filter((i) => temp.timeMs[i] >= span.fromMs && temp.timeMs[i] <= span.toMs);
}

function moistures(check: BinCheck): Finding[] {
  const found: AtSensor[] = [];
  for (const sensor of check.sensors) {
    const positions = wrongShares(sensor.moisture.values, sensor.moisture.use, 'moisture');
    if (positions.length === 0) continue;
    const one = atSensor(sensor, { first: positions[0], last: positions[positions.length - 1] });
    found.push({ ...one, cells: flagCells(sensor, 'moisture', positions, 'unit') });
  }
  return placesOf(found, check.roster, DAY_MS).map((place) => ({
    kind: 'unit',
    where: place.where,
    binId: place.binId,
    fromMs: place.fromMs,
    toMs: place.toMs,
    cells: place.cells,
    text: `${countText(place.cells, 'moisture reading')} make sense only a hundredfold: percent and fraction were mixed up between the log and season.yaml.`,
    advice: 'Set the unit of the moisture column to "%" or "fraction" as it was logged, and load again.',
  }));
}

function byCable(sensors: readonly Checked[]): Map<string, Checked[]> {
  const out = new Map<string, Checked[]>();
  for (const sensor of sensors) out.set(sensor.series.cable, [...(out.get(sensor.series.cable) ?? []), sensor]);
  return out;
}

function atSensor(of: Checked, stretch: Stretch): Found {
  const { bin, cable, sensor, timeMs } = of.series;
  return { bin, cable, sensor, fromMs: timeMs[stretch.first], toMs: timeMs[stretch.last], cells: 0, of, stretch };
}

function* range({ first, last }: Stretch): Generator<number> {
  for (let i = first; i <= last; i++) yield i;
}

const SCALE = { degF: '°F', degC: '°C' } as const;

function finding(place: Place, mistake: UnitMistake): Finding {
  const { said, logged } = mistake;
  return {
    kind: 'unit',
    where: place.where,
    binId: place.binId,
    fromMs: place.fromMs,
    toMs: place.toMs,
    cells: place.cells,
    text: `${countText(place.cells, 'temperature reading')} were read as ${SCALE[said]} but fit the readings and the air around them only as ${SCALE[logged]}.`,
    advice: `If the logger wrote ${SCALE[logged]}, put those rows in a file of their own with unit ${logged} in season.yaml, and load again.`,
  };
}
