import type { BinPlan, CablePlan, FanPlan, FarmPlan, MeasurePlan, TariffPlan } from './farm-types.ts';

const list = (items: readonly string[]): string => `[${items.join(', ')}]`;
const two = (hour: number) => `${String(hour).padStart(2, '0')}:00`;

function tariffLines(tariff: TariffPlan): string[] {
  const lines = [`  - id: ${tariff.id}`, '    energy:'];
  for (const rule of tariff.energy) {
    const when = [
      rule.months && `months: ${rule.months.join('-')}`,
      rule.weekdays && 'days: mon-fri',
      rule.hours && `hours: ${rule.hours.map(two).join('-')}`,
    ].filter(Boolean);
    lines.push(`      - { price: ${rule.price} USD/kWh${when.length > 0 ? `, when: { ${when.join(', ')} }` : ''} }`);
  }
  if (tariff.demand) {
    const { price, hours, ratchet } = tariff.demand;
    lines.push('    demand:');
    lines.push(
      `      - { price: ${price} USD/kW, when: { hours: ${hours.map(two).join('-')} }, ratchet: ${100 * ratchet} % }`,
    );
  }
  lines.push(`    fixed: ${tariff.fixed} USD/month`);
  if (tariff.connectedPerHpYear) lines.push(`    connected: ${tariff.connectedPerHpYear} USD/hp/year`);
  if (tariff.minimum) lines.push(`    minimum: ${tariff.minimum} USD/month`);
  return lines;
}

function cableLine(cable: CablePlan): string {
  const [first, second] = cable.heightsFt;
  const sensors = cable.even
    ? `{ count: ${cable.heightsFt.length}, first: ${first} ft, spacing: ${Math.round(100 * (second - first)) / 100} ft }`
    : `{ heights: ${list(cable.heightsFt.map((height) => `${height} ft`))} }`;
  return `      - { id: ${cable.id}, from_centre: ${cable.fromCentreFt} ft, bearing: ${cable.bearing} deg, sensors: ${sensors} }`;
}

function binLines(bin: BinPlan): string[] {
  const levels = [...bin.fills, ...bin.emptying];
  const depth =
    levels.length === 1
      ? [`      depth: ${bin.fills[0].depthFt} ft`]
      : ['      depth:', ...levels.map((one) => `        - { on: ${one.at}, depth: ${one.depthFt} ft }`)];
  return [
    `  - id: ${bin.id}`,
    `    name: ${bin.name}`,
    `    diameter: ${bin.diameterFt} ft`,
    `    eave_height: ${bin.eaveFt} ft`,
    '    floor: full',
    '    grain:',
    `      crop: ${bin.crop}`,
    ...depth,
    `      test_weight: ${bin.testWeightLb} lb/bu`,
    `      target_moisture: ${bin.targetMoisture} %`,
    ...(bin.targetTempF === undefined ? [] : [`      target_temperature: ${bin.targetTempF} degF`]),
    `      filled: ${bin.fills.at(-1)!.at}`,
    ...(bin.emptying.length === 0 ? [] : [`      unloaded: ${bin.emptying[0].at}`]),
    `    goal: ${bin.goal}`,
    '    air: up',
    ...(bin.airflowFactor === undefined ? [] : [`    airflow_factor: ${bin.airflowFactor}`]),
    `    managed_as: ${JSON.stringify(bin.managedAs)}`,
    ...(bin.strategy === undefined ? [] : [`    strategy: ${bin.strategy}`]),
    `    fans: ${list(bin.fans)}`,
    '    cables:',
    ...bin.cables.map(cableLine),
  ];
}

function fanLines(fan: FanPlan): string[] {
  return [
    `  - id: ${fan.id}`,
    `    nameplate: ${fan.hp} hp`,
    `    supply: { phases: ${fan.phases}, volts: ${fan.volts}, power_factor: ${fan.powerFactor} }`,
    ...(fan.nameplate === undefined
      ? []
      : [`    load: ${100 * fan.nameplate.load} %`, `    motor_efficiency: ${100 * fan.nameplate.efficiency} %`]),
    ...(fan.runningAboveA === undefined ? [] : [`    running_above: ${fan.runningAboveA} A`]),
    `    tariff: ${fan.tariff}`,
    ...(fan.curveStated ? ['    curve:', ...fan.curve.map(([sp, cfm]) => `      - [${sp} inH2O, ${cfm} cfm]`)] : []),
  ];
}

function measureLine({ measure, bins, price }: MeasurePlan): string {
  return `  - { measure: ${measure}, ${bins === undefined ? '' : `bins: ${list(bins)}, `}price: ${price} USD }`;
}

/** The season.yaml of a farm, ending with its files. */
export function seasonYaml(farm: FarmPlan, fileLines: readonly string[]): string {
  const crops = new Set(farm.bins.map((bin) => bin.crop));
  const prices = {
    corn: '{ price: 4.35 USD/bu, base_moisture: 15 %, shrink: 1.4 %/point, discount: 0.03 USD/bu/point }',
    soybean: '{ price: 10.6 USD/bu, base_moisture: 13 %, shrink: 1.3 %/point, discount: 0.12 USD/bu/point }',
    wheat: '{ price: 5.6 USD/bu, base_moisture: 13.5 %, shrink: 1.3 %/point, discount: 0.04 USD/bu/point }',
  };
  return `${[
    '# An invented farm, made by scripts/make-sample.ts. Nobody, no place and no machine in it is real.',
    'format: 1',
    `season: ${farm.title}`,
    `starts: ${farm.starts}`,
    `ends: ${farm.ends}`,
    'prepared_for: Sorrel Fork (an invented farm)',
    'site:',
    '  latitude: 42.0',
    '  longitude: -94.0',
    '  elevation: 1010 ft',
    '  time_zone: America/Chicago',
    'show_units: us',
    'currency: USD',
    '',
    'tariffs:',
    ...farm.tariffs.flatMap(tariffLines),
    '',
    'prices:',
    ...Object.entries(prices)
      .filter(([crop]) => crops.has(crop as 'corn'))
      .map(([crop, price]) => `  ${crop}: ${price}`),
    'drying_alternative:',
    '  commercial: 0.05 USD/bu/point',
    '  high_temperature: { fuel: 1.75 USD/gal, fuel_use: 0.02 gal/bu/point, electricity: 0.01 kWh/bu/point }',
    ...(farm.measures === undefined
      ? []
      : ['measures: # invented prices, for their payback in the year-end report', ...farm.measures.map(measureLine)]),
    '',
    'bins:',
    ...farm.bins.flatMap(binLines),
    '',
    'fans:',
    ...farm.fans.flatMap(fanLines),
    '',
    "sensors: # limits that 95 % of sensors keep, from the maker's leaflet",
    '  temperature: { accuracy: 1.5 degF }',
    '  moisture: { accuracy: 0.5 %, noise: 0.2 %, bias: 0.6 % }',
    '',
    'files:',
    ...fileLines,
  ].join('\n')}\n`;
}
