import { describe, expect, it } from 'vitest';
import { readWays } from '../../../src/notebook/form/read-ways.ts';
import type { Way } from '../../../src/notebook/form/try-ways.ts';
import { wayTitleOf } from '../../../src/notebook/way-title.ts';
import { Units } from '../../../src/report/units.ts';
import { usualParameters } from '../../../src/simulation/strategies/usual-parameters.ts';

const US = new Units('us', 'USD', 'America/Chicago');
const SI = new Units('si', 'USD', 'America/Chicago');

function problem(...ways: unknown[]): string {
  try {
    readWays(ways as Way[], US);
  } catch (error) {
    return String(error);
  }
  return '';
}

describe('ways that a notebook tries', () => {
  it('stand beside each other with other parameters, in words and in the reader’s units', () => {
    const cool = { id: 'temperature-difference', parameters: { cooler: '9.9 degF', coldest: -5 } };
    const ways = readWays(
      ['humidity-limit', { id: 'humidity-limit', parameters: { rh: 0.65 } }, cool, 'as-logged'],
      US,
    );
    expect(ways.map((way) => (typeof way === 'string' ? way : way.title))).toEqual([
      'Humidity limit',
      'Humidity limit, below 65.0 %',
      'Temperature difference, 9.9 °F cooler, not below 23 °F',
      'as-logged',
    ]);
    const [, , chosen] = ways;
    if (typeof chosen === 'string') throw new Error('a strategy is due');
    expect(chosen.id).toBe('temperature-difference with cooler 5.5 K and coldest -5 degC');
    expect(usualParameters(chosen, {})).toEqual({ cooler: 5.5, coldest: -5 });
    expect(wayTitleOf(chosen.id, SI)).toBe('Temperature difference, 5.5 K cooler, not below −5 °C');
    expect(wayTitleOf('nobody', SI)).toBeNull();
  });

  it('are refused with all that is wrong with all of them', () => {
    const told = problem(
      { id: 'humidity-limit', parameters: { rh: 1.4, hr: 0.5 } },
      { id: 'humidity-limit', settings: { rh: 0.6 } },
      { id: 'night-hours' },
      'always on',
      { id: 'Mine', title: 'Mine', fan: () => 1 },
      'always-on',
      'always-on',
    );
    expect(told).toContain('humidity-limit: rh is 1.4; 20 % to 100 % is allowed, 70 % is usual.');
    expect(told).toContain('humidity-limit has no parameter "hr"; it has rh (20 % to 100 %, usually 70 %).');
    expect(told).toContain('the way "humidity-limit" has "settings"; write { id, parameters: { … } }');
    expect(told).toContain('the way "night-hours" has no parameters; write');
    expect(told).toContain('the kit has no strategy "always on"; it has as-logged, always-on, ');
    expect(told).toContain('"Mine" is no id of a strategy;');
    expect(told).toContain('"always-on" is tried twice;');
    // 70 % is usual: the same way by another name.
    expect(problem('humidity-limit', 'humidity-limit with rh 70 %')).toContain('"humidity-limit" is tried twice;');
  });
});
