import * as z from 'zod';
import type { Fan } from '../../bin/fan.ts';
import type { Check } from './check.ts';
import type { Draft } from './draft.ts';
import { choice, fail, id, list, map } from './fields.ts';
import { checkHeater, heaterSchema, toHeater } from './heater.ts';
import { checkReference } from './ids.ts';
import type { YamlPath } from './path-text.ts';
import { ABOVE_ZERO, NOT_NEGATIVE, quantity, readQuantity, si, siOrNull } from './quantity.ts';
import { show } from './show.ts';

/** A number that its key already gives the unit of, or the same with the unit written: `230` or `230 V`, `0.85` or `85 %`. */
function bareOr(kind: 'voltage' | 'fraction', description: string, min: number, max: number, takes: string) {
  return z
    .string({ error: takes })
    .superRefine((text, ctx) => {
      const value = bareValue(kind, text);
      if (value === null) fail(ctx, 'SEASON_TYPE', `is ${show(text)}; it takes ${takes}.`);
      else if (!(value >= min && value <= max)) {
        fail(ctx, 'SEASON_RANGE', `is ${show(text)}; it must lie between ${min} and ${max}.`);
      }
    })
    .meta({ description, type: ['number', 'string'], minimum: min, maximum: max });
}

function bareValue(kind: 'voltage' | 'fraction', text: string): number | null {
  if (/^\d*\.?\d+$/.test(text)) return Number(text);
  const result = readQuantity(kind, text, 'USD');
  return result.ok ? result.si : null;
}

const CURVE_TAKES = 'a list of pairs of static pressure and airflow, e.g. [[0 inH2O, 17800 cfm], [4 inH2O, 11900 cfm]]';

export const fanSchema = (currency: string) =>
  map(
    {
      id: id('name of the fan, as in the logs'),
      nameplate: quantity('power', currency, 'shaft power on the nameplate', {
        above: 0,
        max: 1e6,
        words: 'it must be above zero and at most 1000 kW',
      }),
      supply: map(
        {
          phases: choice(['1', '3'], 'one or three phases').meta({ type: 'integer', enum: [1, 3] }),
          volts: bareOr('voltage', 'line voltage, V', 50, 1000, 'volts, e.g. 230'),
          power_factor: bareOr('fraction', 'power factor', 0.1, 1, 'a number from 0.1 to 1, e.g. 0.85'),
        },
        'electricity supply, by which current becomes power',
      ).optional(),
      load: quantity('fraction', currency, 'share of the nameplate at which the motor works', {
        above: 0,
        max: 1.5,
        words: 'it must be above 0 % and at most 150 %',
      }).optional(),
      motor_efficiency: quantity('fraction', currency, 'shaft power over electric power', {
        above: 0,
        max: 1,
        words: 'it must be above 0 % and at most 100 %',
      }).optional(),
      running_above: quantity(
        'current',
        currency,
        'current above which the fan runs; else found from the log',
        ABOVE_ZERO,
      ).optional(),
      tariff: id('id of its tariff').optional(),
      curve: list(
        z
          .tuple(
            [
              quantity('pressure', currency, 'static pressure', NOT_NEGATIVE),
              quantity('airflow', currency, 'airflow at that pressure', NOT_NEGATIVE),
            ],
            { error: 'a pair like [0 inH2O, 17800 cfm]' },
          )
          .meta({ description: 'static pressure and airflow' }),
        'fan curve: airflow at each static pressure',
        CURVE_TAKES,
        2,
      ).optional(),
      heater: heaterSchema(currency).optional(),
    },
    'a fan',
  );

export type FanText = z.infer<ReturnType<typeof fanSchema>>;

export function checkFan(fan: Draft<FanText>, path: YamlPath, tariffs: readonly string[] | null, check: Check): void {
  checkReference('tariff', fan.tariff, tariffs, [...path, 'tariff'], check);
  if (fan.heater !== undefined) checkHeater(fan.heater, [...path, 'heater'], check);
  if (fan.curve !== undefined && !check.bad.under([...path, 'curve'])) checkCurve(fan, [...path, 'curve'], check);
}

/** A curve is one airflow for each pressure, and less of it the higher the pressure. Each of the two is told once, with all that breaks it. */
function checkCurve(fan: Draft<FanText>, path: YamlPath, { report, currency }: Check): void {
  const points = (fan.curve as NonNullable<FanText['curve']>)
    .map(([pressure, flow]) => ({
      pressure: si('pressure', pressure, currency),
      flow: si('airflow', flow, currency),
      said: `[${pressure}, ${flow}]`,
    }))
    .sort((a, b) => a.pressure - b.pressure);
  const pairs = points.slice(1).map((point, i) => ({ before: points[i], point }));
  const twice = pairs.filter(({ before, point }) => !(point.pressure > before.pressure));
  const rising = pairs.filter(({ before, point }) => point.pressure > before.pressure && !(point.flow <= before.flow));
  const list = (some: typeof pairs) => some.map(({ before, point }) => `${before.said} and ${point.said}`).join('; ');
  if (twice.length > 0) report('SEASON_RANGE', path, `has two airflows at one pressure: ${list(twice)}. Keep one.`);
  if (rising.length === 0) return;
  const text = `has an airflow that rises with pressure: ${list(rising)}. A fan gives less air against more pressure; put the pressures beside their own airflows.`;
  report('SEASON_RANGE', path, text);
}

function toCurve(text: FanText['curve'], currency: string): [number, number][] | null {
  if (text === undefined) return null;
  return text
    .map(([pressure, flow]): [number, number] => [si('pressure', pressure, currency), si('airflow', flow, currency)])
    .sort((a, b) => a[0] - b[0]);
}

export function toFan(text: FanText, currency: string): Fan {
  const { supply } = text;
  return {
    id: text.id,
    nameplateW: si('power', text.nameplate, currency),
    supply:
      supply === undefined
        ? null
        : {
            phases: supply.phases === '1' ? 1 : 3,
            volts: bareValue('voltage', supply.volts) as number,
            powerFactor: bareValue('fraction', supply.power_factor) as number,
          },
    load: siOrNull('fraction', text.load, currency),
    motorEfficiency: siOrNull('fraction', text.motor_efficiency, currency),
    runningAboveA: siOrNull('current', text.running_above, currency),
    tariffId: text.tariff ?? null,
    curve: toCurve(text.curve, currency),
    heater: text.heater === undefined ? null : toHeater(text.heater, currency),
  };
}
