/** A count with its thousands grouped, whatever the locale: `12,300`. */
export function groupedCount(count: number): string {
  return String(Math.round(count)).replace(/\B(?=(\d{3})+$)/g, ',');
}
