import { relativeHumidity } from '../../../air/humidity.ts';

/** US: °F and inches of mercury; SI: °C and hPa. The header does not say it: version 1 is given in either. */
export type LcdUnits = 'us' | 'si';

/** What the rows of an LCD file say, numbers as they stand, NaN missing. */
export interface LcdSample {
  temperature: number;
  dewPoint: number;
  /** percent */
  humidity: number;
  /** of any of the pressure columns */
  pressure: number;
}

const MOST = 500;
const toC = (degF: number) => (degF - 32) / 1.8;

/**
 * The units of a file: by its pressures (20 to 35 can only be inches, 500 to 1100 only hPa), else by which reading of temperature and dew point
 * gives the humidity that stands beside them. Null where neither tells.
 */
export function lcdUnits(samples: Iterable<LcdSample>): LcdUnits | null {
  const votes = { us: 0, si: 0 };
  const fits = { us: 0, si: 0 };
  let seen = 0;
  for (const { temperature, dewPoint, humidity, pressure } of samples) {
    if (pressure > 20 && pressure < 35) votes.us += 1;
    else if (pressure > 500 && pressure < 1100) votes.si += 1;
    const [us, si] = [humidityOf(toC(temperature), toC(dewPoint)), humidityOf(temperature, dewPoint)].map((rh) =>
      Math.abs(rh * 100 - humidity),
    );
    if (us < si || (Number.isNaN(si) && us >= 0)) fits.us += 1;
    else if (si < us || (Number.isNaN(us) && si >= 0)) fits.si += 1;
    seen += 1;
    if (seen >= MOST) break;
  }
  if (votes.us !== votes.si) return votes.us > votes.si ? 'us' : 'si';
  if (fits.us !== fits.si) return fits.us > fits.si ? 'us' : 'si';
  return null;
}

/** NaN outside what the curve of saturation holds for. */
function humidityOf(tempC: number, dewPointC: number): number {
  const holds = (value: number) => value >= -60 && value <= 60;
  return holds(tempC) && holds(dewPointC) ? relativeHumidity(tempC, dewPointC) : Number.NaN;
}
