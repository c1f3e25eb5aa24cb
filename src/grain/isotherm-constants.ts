import type { IsothermEquation } from './isotherm-equations.ts';

/** One published set of constants: temperature in degC, humidity as a fraction, moisture in percent of dry matter. */
export interface IsothermConstants {
  /** id of the crop table */
  crop: string;
  /** the grain as the source calls it */
  grain: string;
  equation: IsothermEquation;
  edition: string;
  a: number;
  b: number;
  c: number;
  sourceKey: string;
  /** of the constants: read at a source, or recalled from the named work */
  provenance: 'seen' | 'memory';
  /** what outside the constants' own source bears them out */
  confirmation: string;
}

const row = (
  crop: string,
  grain: string,
  equation: IsothermEquation,
  edition: string,
  a: number,
  b: number,
  c: number,
  sourceKey: string,
  provenance: 'seen' | 'memory',
  confirmation: string,
): IsothermConstants => ({ crop, grain, equation, edition, a, b, c, sourceKey, provenance, confirmation });

/** D245.5 (1995, kept in D245.6) and D245.4 (as in Brooker, Bakker-Arkema and Hall 1992); two sets from elsewhere say so. */
// biome-ignore format: a table reads one row a line
export const ISOTHERM_CONSTANTS: readonly IsothermConstants[] = [
  row('corn', 'yellow corn', 'modified Henderson', 'D245.5', 6.6612e-5, 1.9677, 42.143, 'asae-d245-5', 'memory', '16 read cells of a published table, largest difference 0.05 point'),
  row('corn', 'yellow corn', 'modified Chung-Pfost', 'D245.5', 374.34, 0.18662, 31.696, 'asae-d245-5', 'memory', 'no table; within 0.8 point of the table that the D245.5 Henderson constants reproduce'),
  row('corn', 'yellow corn', 'modified Oswin', 'D245.5', 15.303, -0.10164, 3.0358, 'asae-d245-5', 'memory', 'no table; within 0.5 point of the table that the D245.5 Henderson constants reproduce'),
  row('corn', 'yellow corn', 'modified Henderson', 'D245.4', 8.6541e-5, 1.8634, 49.81, 'asae-d245-4', 'seen', 'constants read in a general agronomy library; two statements of NDSU within 0.1 point'),
  row('corn', 'yellow corn', 'modified Chung-Pfost', 'D245.4', 312.4, 0.16958, 30.205, 'asae-d245-4', 'memory', 'agrees with the Pfost form: exp(0.33872 / 0.05897) = 312.29'),
  row('soybean', 'soybean', 'modified Halsey', 'D245.5', 2.87, -0.0054, 1.38, 'asae-d245-5', 'memory', '16 read cells of a published table, largest difference 0.05 point'),
  row('soybean', 'soybean', 'modified Chung-Pfost', 'D245.4', 328.3, 0.13917, 100.288, 'asae-d245-4', 'memory', 'two read points (70 % at 0 and 20 degC) within 0.06 point'),
  row('soybean', 'soybean', 'modified Henderson', 'D245.4', 0.000305327, 1.2164, 134.136, 'asae-d245-4', 'memory', 'one statement of NDSU within 0.04 point'),
  row('durum', 'durum wheat', 'modified Oswin', 'D245.5', 13.101, -0.052626, 2.9987, 'asae-d245-5', 'memory', '12 read cells of a published table, largest difference 0.05 point'),
  row('durum', 'durum wheat', 'modified Henderson', 'D245.4', 2.5738e-5, 2.211, 70.318, 'asae-d245-4', 'memory', 'none; 0.3 to 0.9 point above the D245.5 durum table'),
  row('durum', 'durum wheat', 'modified Chung-Pfost', 'D245.4', 921.65, 0.18077, 112.35, 'asae-d245-4', 'memory', 'none; 0.4 to 0.6 point above the D245.5 durum table'),
  row('wheat', 'hard red wheat', 'modified Chung-Pfost', 'D245.5', 610.34, 0.15526, 93.213, 'asae-d245-5', 'seen', 'constants read second-hand (Storage of Cereal Grains and Their Products, 5th ed., p. 272); two statements of NDSU are 0.2 point higher'),
  row('wheat', 'hard red wheat', 'modified Henderson', 'D245.5', 4.3295e-5, 2.1119, 41.565, 'asae-d245-5', 'memory', 'none; 2.2 points above Chung-Pfost at -1 degC and 65 %'),
  row('wheat', 'hard red wheat', 'modified Oswin', 'D245.5', 15.868, -0.10378, 3.0842, 'asae-d245-5', 'memory', 'none; 1.4 points above Chung-Pfost at -1 degC and 65 %'),
  row('wheat', 'hard red wheat', 'modified Henderson', 'D245.4', 2.3007e-5, 2.2857, 55.815, 'asae-d245-4', 'memory', 'two statements of NDSU within 0.04 point'),
  row('wheat', 'hard red wheat', 'modified Chung-Pfost', 'D245.4', 529.43, 0.17609, 50.998, 'asae-d245-4', 'memory', 'two statements of NDSU within 0.2 point'),
  row('soft-wheat', 'soft red wheat', 'modified Henderson', 'D245.4', 1.2299e-5, 2.5558, 64.346, 'asae-d245-4', 'memory', 'one statement of a bulletin within 0.02 point'),
  row('soft-wheat', 'soft red wheat', 'modified Chung-Pfost', 'D245.4', 726.49, 0.23607, 35.662, 'asae-d245-4', 'memory', 'one point of a published chart within 0.03 point'),
  row('sorghum', 'grain sorghum', 'modified Chung-Pfost', 'D245.5', 797.33, 0.18159, 52.238, 'asae-d245-5', 'memory', '16 read cells of a published table, largest difference 0.04 point'),
  row('sorghum', 'grain sorghum', 'modified Henderson', 'D245.4', 8.532e-6, 2.4757, 113.725, 'asae-d245-4', 'memory', 'none; 1.0 to 2.5 points below the D245.5 sorghum table'),
  row('sorghum', 'grain sorghum', 'modified Chung-Pfost', 'D245.4', 1099.68, 0.19644, 102.849, 'asae-d245-4', 'memory', 'none; 1.2 to 2.3 points below the D245.5 sorghum table; A uncertain in its last digits'),
  row('barley', 'barley', 'modified Henderson', 'D245.4', 2.2919e-5, 2.0123, 195.267, 'asae-d245-4', 'memory', 'one statement of NDSU within 0.01 point'),
  row('barley', 'barley', 'modified Chung-Pfost', 'D245.4', 761.66, 0.19889, 91.323, 'asae-d245-4', 'memory', 'one statement of NDSU is 0.3 point higher'),
  row('barley', 'barley', 'modified Chung-Pfost', 'D245.5', 475.12, 0.14843, 71.996, 'asae-d245-5', 'memory', 'in conflict: a read excerpt (Storage of Cereal Grains and Their Products, 5th ed., p. 272) has A = 457.12, worth 0.2 point'),
  row('oats', 'oats', 'modified Henderson', 'D245.5', 8.5511e-5, 2.0087, 37.811, 'asae-d245-5', 'memory', 'none; within 0.5 point of the two other recalled sets at 25 degC and 30 to 75 %'),
  row('oats', 'oats', 'modified Chung-Pfost', 'D245.5', 442.85, 0.21228, 35.803, 'asae-d245-5', 'memory', 'none; within 0.5 point of the two other recalled sets at 25 degC and 30 to 75 %'),
  row('oats', 'oats', 'modified Oswin', 'D245.5', 12.412, -0.060707, 2.9397, 'asae-d245-5', 'memory', 'none; within 0.5 point of the two other recalled sets at 25 degC and 30 to 75 %'),
  row('rice', 'rough rice (long grain)', 'modified Henderson', 'D245.5', 4.1276e-5, 2.1191, 49.828, 'asae-d245-5', 'memory', '12 read cells of a published table, largest difference 0.05 point'),
  row('rice', 'rough rice (long grain)', 'modified Chung-Pfost', 'D245.5', 412.02, 0.17528, 39.016, 'asae-d245-5', 'memory', 'none; up to 1.0 point above the table that the D245.5 Henderson constants reproduce'),
  row('rice', 'rough rice', 'modified Henderson', 'D245.4', 1.9187e-5, 2.4451, 51.161, 'asae-d245-4', 'memory', 'within 0.28 point of the D245.5 long-grain table'),
  row('rice', 'rough rice', 'modified Chung-Pfost', 'D245.4', 594.61, 0.21732, 35.703, 'asae-d245-4', 'memory', 'within 0.9 point of the D245.5 long-grain table; agrees with the Pfost form: exp(0.29394 / 0.046015) = 594.6'),
  row('canola', 'canola/rapeseed', 'modified Henderson', 'Sokhansanj 1986', 0.0005056, 1.5702, 40.1204, 'sokhansanj-1986', 'memory', 'one statement of NDSU within 0.04 point'),
  row('canola', 'canola', 'modified Halsey', 'D245.5', 3.489, -0.010553, 1.86, 'asae-d245-5', 'memory', 'one statement of NDSU is 0.3 point higher'),
  row('rapeseed', 'rapeseed', 'modified Halsey', 'D245.5', 3.0026, -0.0048967, 1.7607, 'asae-d245-5', 'memory', 'one statement of NDSU is 0.9 point higher'),
  row('sunflower', 'sunflower (oilseed)', 'modified Henderson', 'unknown edition', 0.00031, 1.7459, 66.603, 'asae-d245-4', 'memory', 'low: one statement of NDSU is 0.4 point higher, and the edition is not known'),
];
