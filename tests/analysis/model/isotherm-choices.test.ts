import { describe, expect, it } from 'vitest';
import type { BinLog } from '../../../src/analysis/model/bin-log.ts';
import { isothermChoices } from '../../../src/analysis/model/isotherm-choices.ts';
import { isothermOf } from '../../../src/grain/isotherm.ts';

const logOf = (isotherm: string | null, cable: string, cableStated: boolean) =>
  ({
    bin: { grain: { crop: 'soybean', isotherm } },
    cableIsotherm: isothermOf('soybean', cable),
    cableStated,
  }) as unknown as BinLog;
const HALSEY = 'modified Halsey D245.5';
const PFOST = 'modified Chung-Pfost D245.4';
const HENDERSON = 'modified Henderson D245.4';

describe('isotherms that a fit tries', () => {
  it('are those in use for the grain, each with the usual cable and with one calibrated on such grain', () => {
    expect(isothermChoices(logOf(null, HALSEY, false))).toEqual([
      { grain: HALSEY, cable: HALSEY },
      { grain: PFOST, cable: HALSEY },
      { grain: PFOST, cable: PFOST },
      { grain: HENDERSON, cable: HALSEY },
      { grain: HENDERSON, cable: HENDERSON },
    ]);
  });

  it('leave the cable alone where season.yaml says by which it works', () => {
    const cables = isothermChoices(logOf(null, PFOST, true)).map((one) => one.cable);
    expect(cables).toEqual([PFOST, PFOST, PFOST]);
  });

  it('are one where season.yaml says both', () => {
    expect(isothermChoices(logOf(HENDERSON, PFOST, true))).toEqual([{ grain: HENDERSON, cable: PFOST }]);
  });
});
