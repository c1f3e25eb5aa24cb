/** How full the bin was and what lay in it. */
export interface BinGrainAmount {
  dryMatterKg: number | null;
  /** weight as filled, wet, kg */
  weightKg: number | null;
  volumeM3: number | null;
  /** weight as filled over the crop's legal bushel weight */
  bushels: number | null;
  /** volume over 1.2445 ft3 */
  volumeBushels: number | null;
  depthM: number | null;
  /** what the weight comes from: scale tickets that cover the filling, or depth and test weight; null where it is not known */
  from?: 'tickets' | 'volume' | null;
  /** 90 %; null where the number is */
  weightKgInterval?: [number, number] | null;
  bushelsInterval?: [number, number] | null;
  dryMatterKgInterval?: [number, number] | null;
  /** what a reader must know of it, whole sentences */
  notes?: readonly string[];
  /** true: the scale tickets of the filling weigh clearly other than depth and test weight tell */
  contradicted?: boolean;
  why: string | null;
}
