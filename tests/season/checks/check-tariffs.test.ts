import { describe, expect, it } from 'vitest';
import type { EnergyRule } from '../../../src/money/tariff.ts';
import { checkTariffs } from '../../../src/season/checks/check-tariffs.ts';
import type { Season } from '../../../src/season/season.ts';
import { billTable, type Given } from '../../analysis/energy/bill-table.ts';

const NIGHT = { months: null, days: null, hours: [[0, 360]] as const };
const october = { from: Date.UTC(2024, 9, 1, 5), to: Date.UTC(2024, 10, 1, 5) };

function told(energy: readonly EnergyRule[], bills: readonly Given[] = [], currency = 'USD') {
  const tariffs = [{ id: 'T', energy, demand: [] }];
  const season = { tariffs, currency, site: { timeZone: 'America/Chicago' } } as unknown as Season;
  return checkTariffs(season, billTable(bills));
}
const at = (pricePerKwh: number): EnergyRule[] => [{ pricePerKwh, when: null }];

// Average US retail prices lay between 8 and 40 cents a kWh by state in 2023 (from memory of the EIA's tables).
describe('the energy prices of a tariff', () => {
  it.each([0, 0.03, 0.08, 0.4, 1.5])('%f a kWh is nothing to tell', (price) => expect(told(at(price))).toEqual([]));

  it('in cents are told as read, with the price they most likely mean', () => {
    const [one, ...more] = told(at(11.8));
    expect(more).toEqual([]);
    expect(one).toMatchObject({ kind: 'unit', where: 'tariff T', cells: 0 });
    expect(one.text).toContain('Energy price 1 of tariff T is 11.8 USD/kWh');
    expect(one.advice).toContain('11.8 cents are 0.118 USD/kWh');
    // a price of a MWh's, and one by a currency of other worth
    expect(told(at(0.0008))).toHaveLength(1);
    expect(told(at(38), [], 'HUF')).toEqual([]);
  });

  it('that the bills contradict are told beside what a kWh of them came to, in any currency', () => {
    // By hand: 6 of 24 h at 3.8, 18 at 38: 29.45 in the mean; 1,000 kWh for 380 are 0.38 each.
    const energy = [{ pricePerKwh: 3.8, when: NIGHT }, ...at(38)] as EnergyRule[];
    const [one, ...more] = told(energy, [{ ...october, kwh: 1000, amount: 380, tariff: 'T' }], 'HUF');
    expect(more).toEqual([]);
    expect(one.text).toContain('costs 29.4 HUF/kWh in the mean over the time of its bills (3.8 to 38 HUF/kWh)');
    expect(one.text).toContain('came to 0.38 HUF/kWh');
    expect(one.advice).toContain('cents');
  });

  it('and bills with demand in them, a credit, or no energy agree', () => {
    const bill = (kwh: number, amount: number) => ({ ...october, kwh, amount, tariff: 'T' });
    expect(told(at(0.12), [bill(1000, 250)])).toEqual([]);
    // A bill at half the tariff's price is another season's price or a credit, no other unit.
    expect(told(at(0.12), [bill(1000, 60)])).toEqual([]);
    expect(told(at(0.12), [bill(1000, -5), bill(0, 1)])).toEqual([]);
    expect(told(at(0.12), [{ ...bill(1000, 1), tariff: 'U' }])).toEqual([]);
  });
});
