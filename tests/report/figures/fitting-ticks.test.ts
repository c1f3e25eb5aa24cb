import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { fittingTicks } from '../../../src/report/figures/fitting-ticks.ts';
import { waterfall } from '../../../src/report/figures/waterfall.ts';
import { exampleInput } from '../example-review.ts';

describe('ticks whose labels fit', () => {
  it('are fewer where the axis would take more than it was asked for', () => {
    // Asked for 7 from -8,690 to 12,530 the axis takes steps of 2,000: labels of 6 signs, 47 px each at 14 px, every 45 px. Asked for 6, of 5,000.
    expect(fittingTicks([-8690, 12_530], 7, 480, 14)).toBe(6);
    // Room for two labels.
    expect(fittingTicks([-8690, 12_530], 7, 100, 14)).toBe(2);
    // From 0 to 7,000 in steps of 1,000: 8 labels of 5 signs, 39 px each, on 480 px.
    expect(fittingTicks([0, 7000], 7, 480, 14)).toBe(7);
  });

  it('do not run into each other under the worth of a season', () => {
    const { units } = exampleInput();
    // A metric farm of four bins (held out): shrink and discounts spared, water lost, fans paid.
    const steps = [5530, 7000, -7490, -3540, -3860, -1570].map((value, i) => ({
      name: `Weight of water, to the base ${i}`,
      value,
    }));
    const left = { name: 'Left', of: { value: -3930, interval: [-8690, 720] as [number, number], why: null } };
    const data = {
      id: 'worth',
      title: '',
      subtitle: '',
      alt: '',
      quantity: 'money' as const,
      steps,
      left,
      notShown: null,
    };
    for (const size of [
      { width: 880, narrow: false, idPrefix: 'w' },
      { width: 340, narrow: true, idPrefix: 'n' },
    ]) {
      const { document } = parseHTML(waterfall(data, units).draw(size));
      const axis = [...document.querySelectorAll('text')]
        .filter((one) => one.getAttribute('y') === '0.7em')
        .map((one) => ({
          x: Number(/translate\(([-\d.]+)/.exec(one.getAttribute('transform') ?? '')?.[1]),
          signs: (one.textContent ?? '').length,
        }))
        .sort((a, b) => a.x - b.x);
      expect(axis.length).toBeGreaterThan(1);
      for (let i = 1; i < axis.length; i++) {
        // 0.56 of the type's size is the mean width of a sign.
        const half = ((axis[i].signs + axis[i - 1].signs) / 2) * 0.56 * (size.narrow ? 12 : 14);
        expect(axis[i].x - axis[i - 1].x).toBeGreaterThan(half);
      }
    }
  });
});
