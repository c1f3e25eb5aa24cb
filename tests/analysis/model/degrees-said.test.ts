import { describe, expect, it } from 'vitest';
import { degreesOverSaid, degreesSaid, overSaid } from '../../../src/analysis/model/degrees-said.ts';

// By hand: a kelvin is 1.8 degrees Fahrenheit; a number that a limit leaves out is not told as the limit.
describe('a misfit beside its limit', () => {
  it('has one digit where that tells it apart, more where it does not', () => {
    expect(degreesOverSaid(7.03, 2)).toBe('7.0 °C (12.7 °F)');
    expect(degreesOverSaid(1.24, 1.2)).toBe('1.24 °C (2.23 °F)');
    expect(degreesOverSaid(2.004, 2)).toBe('2.004 °C (3.607 °F)');
    expect(overSaid(0.704, 0.7, 2)).toBe('0.704');
    expect(overSaid(1.55, 0.7, 2)).toBe('1.55');
    expect(degreesSaid(1.24)).toBe('1.2 °C (2.2 °F)');
  });
  it('stops at four digits', () => {
    expect(overSaid(1.2000001, 1.2, 1)).toBe('1.2000');
  });
});
