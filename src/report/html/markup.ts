import { escape as escapeHtml } from 'html-escaper';
import { gluedUnits } from './glued-units.ts';

/** HTML that is safe to put into a page. Only `html`, `raw` and `join` make it. */
export class Markup {
  readonly text: string;
  constructor(text: string) {
    this.text = text;
  }
  toString(): string {
    return this.text;
  }
}

type Part = Markup | string | number | false | null | readonly Part[];

function partText(part: Part): string {
  if (part === null || part === false) return '';
  if (part instanceof Markup) return part.text;
  if (typeof part === 'string' || typeof part === 'number') return escapeHtml(gluedUnits(String(part)));
  if (Array.isArray(part)) return part.map(partText).join('');
  throw new TypeError(`a template cannot hold ${typeof part}`);
}

/** A template that escapes whatever is not Markup already; null and false leave nothing. */
export function html(strings: TemplateStringsArray, ...parts: readonly Part[]): Markup {
  return new Markup(strings.reduce((all, text, i) => all + partText(parts[i - 1]) + text));
}

/** Text that is HTML or SVG already, made by us. */
export function raw(text: string): Markup {
  return new Markup(text);
}

/** A list, or a paragraph that says that there is nothing. */
export function list(items: readonly string[], none: string): Markup {
  if (items.length === 0) return html`<p>${none}</p>`;
  return html`<ul>${items.map((item) => html`<li>${item}</li>`)}</ul>`;
}

/** Text fit for an `id` and an address: letters, digits and dashes. Different texts stay different. */
export function slug(text: string): string {
  const plain = text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  // Ids that differ by capitals alone are refused in season.yaml.
  if (plain === text.toLowerCase()) return plain;
  let sum = 0;
  for (const char of text) sum = (sum * 31 + (char.codePointAt(0) ?? 0)) >>> 0;
  return `${plain || 'x'}-${sum.toString(36)}`;
}
