import { expect, it } from 'vitest';
import type { BinHeater } from '../../src/analysis/types.ts';
import { estimate, withheld } from '../../src/base/estimate.ts';
import { namedTable } from '../../src/notebook/estimate-rows.ts';
import { heatCostNotes, heaterNotes } from '../../src/notebook/heater-notes.ts';
import { heaterRows } from '../../src/notebook/heater-rows.ts';
import { Units } from '../../src/report/units.ts';

const none = withheld('Not asked.');
const bin = (name: string, ...ids: string[]) =>
  ({ review: { bin: { name } }, whatIf: { strategies: ids.map((id) => ({ id })) } }) as unknown as Parameters<
    typeof heaterNotes
  >[0][number];

it('says of the bins that have a heater, and of no other, when it burns in a run', () => {
  expect(heaterNotes([bin('North', 'always-on')])).toEqual([]);
  const [note, ...more] = heaterNotes([bin('North', 'always-on'), bin('South', 'always-on', 'warmed-air')]);
  expect(more).toEqual([]);
  expect(note).toMatch(/^South: no fan log tells/);
  expect(note).toContain('and without that whenever its fan does; “Warmed air” burns it by its own rule');
});

it('says what of a cost is heat, where there is a cost and heat in it', () => {
  const us = new Units('us', 'USD', 'America/Chicago');
  const of = (name: string, cost = estimate(357, 327, 387), heatCost = estimate(155, 130, 180)) => ({
    bin: { name },
    fan: { cost, heatCost, fans: [] },
  });
  const unheated = [
    of('North', undefined, estimate(0, 0, 0)),
    of('East', withheld('No price.'), withheld('No price.')),
  ];
  expect(heatCostNotes(unheated, us)).toEqual([]);
  expect(heatCostNotes([...unheated, of('South')], us)).toEqual([
    'South: 155 USD (130 to 180) of the 357 USD is for heat; the heater is taken to run whenever its fan does, and the lower end leaves it out. What it burnt or drew is not in the kWh.',
  ]);
});

it('says of each of a bin’s heaters what its hours and fuel are, where they differ', () => {
  const us = new Units('us', 'USD', 'America/Chicago');
  const heaters: BinHeater[] = [
    { fanId: 'F1', fuel: 'propane', hoursFrom: 'fan', hours: none, used: estimate(69.03, 0, 80.4), unit: 'gal' },
    { fanId: 'F2', fuel: 'electric', hoursFrom: 'plenum', hours: none, used: estimate(1200, 800, 1400), unit: 'kWh' },
    { fanId: 'F3', fuel: 'electric', hoursFrom: 'fan', hours: none, used: withheld('Within.'), unit: 'kWh' },
  ];
  const told = (...of: BinHeater[]) => {
    const fan = { cost: estimate(357, 327, 387), heatCost: estimate(155, 0, 180), fans: [], heaters: of };
    return heatCostNotes([{ bin: { name: 'South' }, fan }], us)[0];
  };
  expect(told(...heaters)).toBe(
    'South: 155 USD (0 to 180) of the 357 USD is for heat. The heater of fan F1 is taken to run whenever its fan does, and the lower end leaves it out: 69.0 gal (0.0 to 80.4) of propane. The heater of fan F2 burned in the hours that the warming of the plenum’s air tells: 1,200 kWh (800 to 1,400) of electricity. What these burnt or drew is not in the kWh. That of fan F3 is in the kWh and the energy cost of its fan.',
  );
  // Of one nothing else has to be told from, and what it burned.
  expect(told(heaters[1])).toBe(
    'South: 155 USD (0 to 180) of the 357 USD is for heat; the warming of the plenum’s air tells in which hours the heater burned: 1,200 kWh (800 to 1,400) of electricity. What it burnt or drew is not in the kWh.',
  );
});

it('lists hours and fuel of each heater under each other, in the unit of its price', () => {
  const heater = { fanId: 'F1', fuel: 'propane', hoursFrom: 'fan', unit: 'gal' } as const;
  const hours = estimate(100, 0, 100);
  const rows = heaterRows({
    heaters: [
      { ...heater, hours, used: estimate(69.03, 0, 80.4) },
      { ...heater, fanId: 'F2', fuel: 'natural gas', unit: 'therm', hours, used: withheld('Not told.') },
    ],
  });
  const { rows: cells } = namedTable('numbers', 'Numbers', rows, new Units('si', 'USD', 'America/Chicago'));
  expect(cells.map(({ label, unit }) => [label, unit])).toEqual([
    ['Hours of the heater of fan F1', 'h'],
    ['Propane of the heater of fan F1', 'gal'],
    ['Hours of the heater of fan F2', 'h'],
    ['Natural gas of the heater of fan F2', 'therm'],
  ]);
  expect(cells[3].value).toEqual({ value: null, why: 'Not told.' });
  expect(heaterRows({})).toEqual([]);
});
