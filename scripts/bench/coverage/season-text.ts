import { localText } from '../../sample/calendar.ts';
import { statedLimits } from './draw-errors.ts';
import type { BinDraw, SeasonDraw } from './plan.ts';

/** Files of a season folder, by what they hold; `fan` has one for each kind of log. */
export const PATHS = {
  grain: 'logs/grain.csv',
  plenum: 'logs/plenum.csv',
  weather: 'weather.csv',
  tickets: 'tickets.csv',
} as const;
export const fanPath = (what: string): string => `logs/fan-${what}.csv`;

const FAN_COLUMNS = {
  power: 'power: { column: value, unit: kW }',
  current: 'current: { column: value, unit: A }',
  energy: 'energy: { column: value, unit: kWh }',
  state: 'state: value',
} as const;

/** The season.yaml that the grower of this season would write. Sensor limits are stated once a season. */
export function seasonText(draw: SeasonDraw, weighed = false): string {
  const { tariff, bins } = draw;
  const night = tariff.night === null ? [] : [`{ price: ${tariff.night} USD/kWh, when: { hours: 22:00-06:00 } }`];
  const logs = [...new Set(bins.map((bin) => bin.fan.log))];
  return `${[
    'format: 1',
    `season: Drawn season ${draw.seed}`,
    'site: { latitude: 42, longitude: -94, elevation: 1010 ft, time_zone: America/Chicago }',
    'tariffs:',
    '  - id: farm',
    `    energy: [${[...night, `{ price: ${tariff.day} USD/kWh }`].join(', ')}]`,
    ...(tariff.demand > 0 ? [`    demand: [{ price: ${tariff.demand} USD/kW }]`] : []),
    ...(tariff.connected > 0 ? [`    connected: ${tariff.connected} USD/hp/year`] : []),
    'bins:',
    ...bins.flatMap(binLines),
    'fans:',
    ...bins.map(
      ({ fan, heater }) =>
        `  - { id: ${fan.id}, nameplate: ${fan.hp} hp, supply: { phases: 3, volts: 230, power_factor: ${fan.statedPowerFactor} }, tariff: farm${heaterText(heater)} }`,
    ),
    ...sensorLines(bins),
    'files:',
    `  - { path: ${PATHS.grain}, holds: grain, time_zone: UTC, columns: { time: time, bin: bin, cable: cable, sensor: sensor, temperature: { column: t, unit: degC }, moisture: { column: mc, unit: "%" } } }`,
    ...logs.map(
      (what) =>
        `  - { path: ${fanPath(what)}, holds: fan, time_zone: UTC, columns: { time: time, fan: fan, ${FAN_COLUMNS[what]} } }`,
    ),
    ...(bins.some((bin) => bin.plenum)
      ? [
          `  - { path: ${PATHS.plenum}, holds: plenum, time_zone: UTC, columns: { time: time, bin: bin, temperature: { column: t, unit: degC }, humidity: { column: rh, unit: "%" }, static_pressure: { column: sp, unit: Pa } } }`,
        ]
      : []),
    `  - { path: ${PATHS.weather}, holds: weather, time_zone: UTC, columns: { time: time, temperature: { column: t, unit: degC }, humidity: { column: rh, unit: "%" } } }`,
    ...(weighed
      ? [
          `  - { path: ${PATHS.tickets}, holds: tickets, time_zone: UTC, columns: { time: time, bin: bin, direction: way, net: { column: kg, unit: kg }, moisture: { column: mc, unit: "%" } } }`,
        ]
      : []),
  ].join('\n')}\n`;
}

function heaterText(heater: BinDraw['heater']): string {
  if (heater === undefined) return '';
  const { fuel, outputW, efficiency, price } = heater;
  const priced = price === null ? '' : `, price: ${price}`;
  return `, heater: { fuel: ${fuel}, output: ${(outputW / 1000).toFixed(3)} kW${priced}, efficiency: ${100 * efficiency} % }`;
}

function binLines(bin: BinDraw): string[] {
  return [
    `  - id: ${bin.id}`,
    `    name: Bin ${bin.id}`,
    `    diameter: ${bin.diameterM} m`,
    '    grain:',
    `      crop: ${bin.crop}`,
    `      depth: ${bin.depthM} m`,
    `      test_weight: ${bin.testWeightLb} lb/bu`,
    `      target_moisture: ${bin.targetWb} %`,
    `      filled: ${localText(bin.filledMs)}`,
    ...(bin.unloaded ? [`      unloaded: ${localText(bin.endMs)}`] : []),
    `    goal: ${bin.goal}`,
    ...(bin.statedPacking === null ? [] : [`    airflow_factor: ${bin.statedPacking}`]),
    `    fans: [${bin.fan.id}]`,
    '    cables:',
    ...bin.cables.map(
      (cable) =>
        `      - { id: ${cable.id}, from_centre: ${cable.fromCentreM} m, bearing: ${cable.bearingDeg} deg, sensors: { heights: [${cable.heightsM.map((height) => `${height} m`).join(', ')}] } }`,
    ),
  ];
}

function sensorLines(bins: readonly BinDraw[]): string[] {
  const { moistureErrors, statedCurve } = bins[0];
  const isotherm = statedCurve === null ? [] : [`isotherm: ${statedCurve}`];
  // One statement for all of a farm's bins: that of the crop in which the sensors err most.
  const limits = bins.map(statedLimits).reduce((a, b) => (b.bias > a.bias ? b : a));
  const points = (value: number) => `${value.toFixed(2)} %`;
  const stated = moistureErrors.stated
    ? [`accuracy: ${points(limits.accuracy)}`, `noise: ${points(limits.noise)}`, `bias: ${points(limits.bias)}`]
    : [];
  const all = [...stated, ...isotherm];
  return all.length === 0 ? [] : ['sensors:', `  moisture: { ${all.join(', ')} }`];
}
