/** Units that published rows are printed in, in SI. NIST SP 811; exact but for the pressures. */
export const FT_M = 0.3048;
export const LB_KG = 0.45359237;
export const CFM_M3S = FT_M ** 3 / 60;
/** conventional inch of water */
export const IN_WATER_PA = 249.08891;
export const PSI_PA = 6894.757293;
export const BTU_LB_F_J_KGK = 4186.8;

/** degC from degF. */
export const celsius = (tempF: number) => (tempF - 32) / 1.8;
