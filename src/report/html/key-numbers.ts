import { DASH } from '../number-text.ts';
import type { KeyNumber, Page } from '../page.ts';
import type { Units } from '../units.ts';
import { html, type Markup } from './markup.ts';

const USUAL_RANGES =
  'Ranges are 90 % intervals: nine times in ten the true value lies inside. Where none stands, the number was counted, or both ends round to it.';

/** A page's key numbers; nothing where it has none. */
export function renderKeyNumbers({ keyNumbers, units }: Page, classes: string): Markup | false {
  return (
    keyNumbers.length > 0 && html`<dl class="${classes}">${keyNumbers.map((key) => renderKeyNumber(key, units))}</dl>`
  );
}

/** What the ranges of the key numbers are; nothing where none has one. */
export function renderRanges({ keyNumbers, ranges }: Page): Markup | false {
  return keyNumbers.some(hasInterval) && html`<p class="small">${ranges ?? USUAL_RANGES}</p>`;
}

function renderKeyNumber(key: KeyNumber, units: Units): Markup {
  const amount = key.amount;
  const value = amount === null || typeof amount === 'number' ? amount : amount.value;
  const why = amount !== null && typeof amount === 'object' ? amount.why : null;
  const interval = amount !== null && typeof amount === 'object' ? units.interval(key.quantity, amount) : '';
  const note = [key.note, value === null ? (why ?? (key.note === undefined ? 'Not known.' : null)) : null];
  return html`<div><dt>${key.label}</dt><dd><span class="big">${value === null ? DASH : units.number(key.quantity, value)}</span> <span class="unit">${value === null ? '' : [units.unit(key.quantity), key.known].filter(Boolean).join(', ')}</span>${interval && html`<br><span class="small">${interval}</span>`}${note.map((text) => (text ? html`<br><span class="small">${text}</span>` : null))}</dd></div>`;
}

function hasInterval({ amount }: KeyNumber): boolean {
  return amount !== null && typeof amount === 'object' && amount.interval !== null;
}
