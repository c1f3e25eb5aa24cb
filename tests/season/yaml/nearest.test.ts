import { describe, expect, it } from 'vitest';
import { nearest } from '../../../src/season/yaml/nearest.ts';

// Counted by hand: letters to change, put in or take out, against a third of the longer word.
describe('the known word that was meant', () => {
  it.each([
    ['curency', ['currency', 'starts'], 'currency'], // 1 of 8
    ['dyr', ['dry', 'cool'], 'dry'], // all letters in another order
    ['binz', ['bins', 'fans'], 'bins'], // 1 of 4
    ['Static-Pressure', ['static_pressure'], 'static_pressure'], // 0: capitals and hyphens do not count
    ['b1', ['B1', 'B2'], 'B1'], // 0 but for the capital
    ['tempratur', ['temperature', 'time'], 'temperature'], // 2 of 11
  ])('%s of %j is %s', (given, known, meant) => {
    expect(nearest(given, known)).toBe(meant);
  });

  it.each([
    ['moisture', ['time', 'sensor', 'temperature', 'feuchte']], // 5 of 8 to time
    ['humidity', ['time', 'temperature']], // 6 of 8 to time
    ['Z', ['A', 'B']], // 1 of 1: any letter would do
    ['B3', ['B1', 'B2']], // 1 of 2
    ['', ['A']],
    ['x', []],
  ])('%s of %j: none is near', (given, known) => {
    expect(nearest(given, known)).toBeNull();
  });
});
