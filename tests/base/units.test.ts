import { describe, expect, it } from 'vitest';
import { fromSi, parseQuantity, type UnitKind, unitsOf } from '../../src/base/units.ts';

const si = (kind: UnitKind, text: string) => {
  const result = parseQuantity(kind, text);
  if (!result.ok) throw new Error(result.reason);
  return result.si;
};

// Factors from NIST Special Publication 811 (2008), appendix B; the bushel of 1.2445 ft3 and its weights are trade facts.
describe('quantities', () => {
  it.each([
    ['length', '36 ft', 36 * 0.3048],
    ['length', '1,050 ft', 320.04],
    ['power', '15 hp', 15 * 745.69987],
    ['heat flow', '60000 BTU/h', 60000 * 0.29307107],
    ['pressure', '3.1 inH2O', 3.1 * 249.0889],
    ['pressure', '29.92 inHg', 29.92 * 3386.389],
    ['airflow', '17800 cfm', 17800 * 4.719474e-4],
    ['temperature', '40 degF', 40 / 9],
    ['temperature', '40 °F', 40 / 9],
    ['temperature', '-40 degF', -40],
    ['temperature difference', '9 degF', 5],
    ['moisture', '17.8 %', 0.178],
    ['bulk density', '56 lb/bu', (56 * 0.45359237) / (1.2445 * 0.028316846592)],
    ['bulk density', '72.1 kg/hL', 721],
    ['bulk density', '721 kg/m³', 721],
    ['airflow', '8.4 m^3/s', 8.4],
    ['airflow', '8.4 m³/s', 8.4],
    ['weight', '1 ton', 907.18474],
    ['energy', '1 kWh', 3.6e6],
    ['price per energy', '0.094 USD/kWh', 0.094],
    ['price per energy', '94 USD/MWh', 0.094],
    ['price per power and year', '12 USD/hp/year', 12],
    ['price per fuel', '1.80 USD/gal', 1.8 / 0.003785411784],
    ['fuel per bushel-point', '0.02 gal/bu/point', 0.02 * 0.003785411784],
    ['shrink per point', '1.4 %/point', 0.014],
  ] as [UnitKind, string, number][])('%s: %s', (kind, text, expected) => {
    expect(si(kind, text) / expected).toBeCloseTo(1, 6);
  });

  it('come back from SI in every unit of every kind', () => {
    const kinds: UnitKind[] = [
      'length',
      'temperature',
      'power',
      'pressure',
      'airflow',
      'bulk density',
      'price per fuel',
    ];
    for (const kind of kinds) {
      for (const unit of unitsOf(kind)) expect(fromSi(kind, si(kind, `12.5 ${unit}`), unit)).toBeCloseTo(12.5, 9);
    }
  });

  it('say what is allowed when the unit is missing or wrong', () => {
    expect(parseQuantity('length', '36')).toEqual({
      ok: false,
      reason: 'is "36"; a length needs a unit (units: ft, in, m, cm, mm). Write e.g. "36 ft".',
    });
    expect(parseQuantity('length', '36 hp')).toMatchObject({
      ok: false,
      reason: expect.stringContaining('"hp" is no unit of length'),
    });
    expect(parseQuantity('price per energy', '0.1 EUR/kWh', 'USD')).toMatchObject({ ok: false });
    expect(parseQuantity('price per energy', '0.1 EUR/kWh', 'EUR')).toMatchObject({ ok: true, si: 0.1 });
    expect(parseQuantity('length', 'tall')).toMatchObject({ ok: false });
  });
});
