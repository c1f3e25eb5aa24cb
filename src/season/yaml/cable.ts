import type * as z from 'zod';
import type { Cable } from '../../bin/cable.ts';
import type { Check } from './check.ts';
import type { Draft } from './draft.ts';
import { checked, choice, id, list, map, number } from './fields.ts';
import type { YamlPath } from './path-text.ts';
import { ABOVE_ZERO, NOT_NEGATIVE, quantity, si } from './quantity.ts';
import { show } from './show.ts';

const BEARING = /^([+-]?\d+(?:\.\d+)?) ?(?:deg|°)$/;

function readBearing(text: string): { ok: true; deg: number } | { ok: false; reason: string } {
  const deg = Number(BEARING.exec(text.trim())?.[1] ?? Number.NaN);
  if (deg >= 0 && deg <= 360) return { ok: true, deg: deg % 360 };
  const reason = `is ${show(text)}; a bearing runs from 0 deg (north) over 90 deg (east) to 360 deg and needs its unit (units: deg). Write e.g. "90 deg".`;
  return { ok: false, reason };
}

const numbered = () => choice(['up', 'down'], 'up: sensor 1 is the lowest; down: sensor 1 is the highest').optional();

export const cableSchema = (currency: string) =>
  map(
    {
      id: id('name of the cable, as in the logs; its own within the bin'),
      from_centre: quantity('length', currency, 'distance from the centre of the bin', NOT_NEGATIVE),
      bearing: checked('SEASON_UNIT', 'a direction with its unit, e.g. "90 deg"', readBearing, {
        description: 'direction from the centre, clockwise from north, e.g. 90 deg',
        pattern: BEARING.source,
      }).optional(),
      sensors: map(
        {
          count: number('how many sensors', { min: 1, max: 200, whole: true }).optional(),
          first: quantity('length', currency, 'height of the lowest sensor above the floor', ABOVE_ZERO).optional(),
          spacing: quantity('length', currency, 'distance between sensors', ABOVE_ZERO).optional(),
          heights: list(
            quantity('length', currency, 'height above the floor', ABOVE_ZERO),
            'height of each sensor above the floor, in place of count, first and spacing',
            'a list of heights, e.g. [2 ft, 5 ft, 8 ft]',
            1,
          ).optional(),
          numbered: numbered(),
        },
        'where the sensors hang: count, first and spacing, or heights',
      ),
      numbered: numbered(),
    },
    'a cable of sensors',
  );

export type CableText = z.infer<ReturnType<typeof cableSchema>>;

const TALLEST_M = 60;

export function checkCable(cable: Draft<CableText>, path: YamlPath, radiusM: number | null, check: Check): void {
  const { report, bad, currency } = check;
  if (cable.from_centre !== undefined && radiusM !== null) {
    if (si('length', cable.from_centre, currency) > radiusM) {
      const text = `is ${show(cable.from_centre)}; that is beyond the wall, ${radiusM.toFixed(2)} m from the centre.`;
      report('SEASON_RANGE', [...path, 'from_centre'], text);
    }
  }
  const { sensors } = cable;
  if (sensors === undefined) return;
  if (cable.numbered !== undefined && sensors.numbered !== undefined && cable.numbered !== sensors.numbered) {
    report('SEASON_CONFLICT', [...path, 'numbered'], 'says otherwise than sensors.numbered. Keep one of them.', 'key');
  }
  const at = [...path, 'sensors'];
  const spaced = ['count', 'first', 'spacing'] as const;
  if (sensors.heights !== undefined || bad.under([...at, 'heights'])) {
    for (const key of spaced.filter((one) => sensors[one] !== undefined)) {
      report('SEASON_CONFLICT', [...at, key], 'stands beside heights, which says it already. Keep one.', 'key');
    }
  } else {
    for (const key of spaced.filter((one) => sensors[one] === undefined && !bad.under([...at, one]))) {
      const text = 'is missing; sensors take count, first and spacing, or a list of heights.';
      report('SEASON_MISSING', [...at, key], text, 'parent');
    }
  }
  if (bad.under(at)) return;
  checkHeights(cable, at, check);
}

function checkHeights(cable: Draft<CableText>, at: YamlPath, { report, currency }: Check): void {
  const { heights, count, first, spacing } = cable.sensors ?? {};
  if (heights === undefined) {
    if (count === undefined || first === undefined || spacing === undefined) return;
    const top = si('length', first, currency) + (Number(count) - 1) * si('length', spacing, currency);
    if (!(top <= TALLEST_M)) {
      const text = `put the highest sensor at ${top.toFixed(1)} m; no bin is that tall. Check count, first and spacing, and their units.`;
      report('SEASON_RANGE', at, text);
    }
    return;
  }
  const metres = heights.map((one) => si('length', one as string, currency));
  const rising = metres.every((height, i) => i === 0 || height > metres[i - 1]);
  const falling = metres.every((height, i) => i === 0 || height < metres[i - 1]);
  if (!rising && !(falling && isDown(cable))) {
    const text = falling
      ? 'fall, but sensors are numbered from the floor up. If sensor 1 is the highest, write `numbered: down`.'
      : 'are out of order; they must rise from the floor up, each once.';
    report('SEASON_RANGE', [...at, 'heights'], text);
  }
  const tooTall = metres.findIndex((height) => !(height <= TALLEST_M));
  if (tooTall >= 0) {
    const text = `is ${show(heights[tooTall])}; no bin is that tall. Check its unit.`;
    report('SEASON_RANGE', [...at, 'heights', tooTall], text);
  }
}

const isDown = (cable: Draft<CableText>) => (cable.sensors?.numbered ?? cable.numbered) === 'down';

export function toCable(text: CableText, currency: string): Cable {
  const metres = (value: string) => si('length', value, currency);
  const { heights, count, first, spacing } = text.sensors;
  const up =
    heights?.map(metres).sort((a, b) => a - b) ??
    Array.from({ length: Number(count) }, (_, i) => metres(first as string) + i * metres(spacing as string));
  const bearing = text.bearing === undefined ? null : readBearing(text.bearing);
  return {
    id: text.id,
    fromCentreM: metres(text.from_centre),
    bearingDeg: bearing?.ok ? bearing.deg : null,
    sensorHeightsM: isDown(text) ? up.reverse() : up,
  };
}
