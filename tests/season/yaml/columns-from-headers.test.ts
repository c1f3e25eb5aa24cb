import { describe, expect, it } from 'vitest';
import { columnsFromHeaders } from '../../../src/season/yaml/columns-from-headers.ts';

describe('columnsFromHeaders', () => {
  it('takes units from the headers, and the plain ones without', () => {
    const headers = ['Time', 'bin', 'cable', 'sensor', 'temperature (°F)', 'moisture', 'remarks'];
    expect(columnsFromHeaders('grain', headers, 'USD')).toEqual({
      columns: {
        time: { header: 'Time', unit: null },
        bin: { header: 'bin', unit: null },
        cable: { header: 'cable', unit: null },
        sensor: { header: 'sensor', unit: null },
        temperature: { header: 'temperature (°F)', unit: '°F' },
        moisture: { header: 'moisture', unit: '%' },
      },
      problems: [],
    });
    expect(columnsFromHeaders('plenum', ['Static Pressure [Pa]', 'temperature_degC'], 'USD').columns).toEqual({
      static_pressure: { header: 'Static Pressure [Pa]', unit: 'Pa' },
      temperature: { header: 'temperature_degC', unit: 'degC' },
    });
    expect(columnsFromHeaders('bills', ['amount', 'energy'], 'EUR').columns).toEqual({
      amount: { header: 'amount', unit: 'EUR' },
      energy: { header: 'energy', unit: 'kWh' },
    });
  });

  it('guesses no temperature, weight, length or pressure', () => {
    for (const [holds, header] of [
      ['weather', 'temperature'],
      ['tickets', 'net'],
      ['probes', 'height'],
      ['weather', 'pressure'],
    ] as const) {
      const { columns, problems } = columnsFromHeaders(holds, [header], 'USD');
      expect(columns).toEqual({});
      expect(problems).toEqual([expect.stringContaining(`"${header}" has no unit`)]);
    }
  });

  it('tells wrong units and columns that stand twice', () => {
    expect(columnsFromHeaders('fan', ['current (degF)'], 'USD').problems[0]).toContain('no unit of current');
    expect(columnsFromHeaders('fan', ['current', 'current (A)'], 'USD').problems[0]).toContain('two columns');
  });
});
