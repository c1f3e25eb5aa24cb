const GREEK: Readonly<Record<string, string>> = { theta: 'θ', rho: 'ρ', eta: 'η', alpha: 'α', lambda: 'λ', pi: 'π' };
const RAISED: Readonly<Record<string, string>> = {
  '-': '⁻',
  '0': '⁰',
  '1': '¹',
  '2': '²',
  '3': '³',
  '4': '⁴',
  '5': '⁵',
  '6': '⁶',
  '7': '⁷',
  '8': '⁸',
  '9': '⁹',
};
const raise = (digits: string) => [...digits].map((sign) => RAISED[sign]).join('');

/** Names of Greek letters as letters, also in sentences. */
export function greekText(text: string): string {
  return text.replace(/\b(theta|rho|eta|alpha|lambda|pi)(?=\b|_)/g, (name) => GREEK[name]);
}

/** An equation as tests evaluate it, set for people: `4.1e-5 * K^2 - 1` as `4.1×10⁻⁵ · K² − 1`. */
export function equationText(equation: string): string {
  return greekText(equation)
    .replace(/(\d)e(-?\d+)/g, (_, digit: string, power: string) => `${digit}×10${raise(power)}`)
    .replace(/\^(-?\d+)(?![.\d])/g, (_, power: string) => raise(power))
    .replaceAll(' * ', ' · ')
    .replace(/-(?=[^⁰-⁹])/g, '−');
}

/** What the tables say in plain letters, set for people: `at -1 degC` as `at −1 °C`. */
export function unitsText(text: string): string {
  return text.replace(/\bdeg([CF])\b/g, '°$1').replace(/(^|[\s(])-(?=\d)/g, '$1−');
}
