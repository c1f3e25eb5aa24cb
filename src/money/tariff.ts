/** When a rule of a tariff holds; a part left out holds always. Local time of the site. */
export interface When {
  /** months 1 to 12 */
  months: ReadonlySet<number> | null;
  /** weekdays 1 (Monday) to 7 (Sunday), of the local day in which the moment lies */
  days: ReadonlySet<number> | null;
  /** minutes after local midnight, [from, to); from > to runs across midnight */
  hours: readonly (readonly [number, number])[] | null;
}

export interface EnergyRule {
  /** money per kWh */
  pricePerKwh: number;
  /** the last rule has none */
  when: When | null;
}

export interface DemandRule {
  /** money per kW of the month's highest 15-minute mean in `when` */
  pricePerKw: number;
  when: When | null;
  /** fraction of the highest peak of the 11 months before that is billed at least */
  ratchet: number | null;
}

export interface Tariff {
  id: string;
  /** the first rule that matches prices an interval */
  energy: readonly EnergyRule[];
  /** each rule bills its own peak; the charges add up */
  demand: readonly DemandRule[];
  /** money per month */
  fixedPerMonth: number | null;
  /** money per nameplate horsepower and year */
  connectedPerHpYear: number | null;
  /** money per month */
  minimumPerMonth: number | null;
}
