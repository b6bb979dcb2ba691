/** How the ends of a screw are held: factors for whirling and for buckling. */

export interface ScrewEnds {
  readonly id: 'fixed-free' | 'supported-supported' | 'fixed-supported' | 'fixed-fixed';
  readonly name: string;
  readonly whirl: {
    /** First root of the beam's frequency equation, as printed. */
    readonly lambda: number;
    /** Catalogue shortcut factor; 0.8 of the whirling speed is inside. */
    readonly f: number;
    readonly source: string;
    readonly status: 'published' | 'from memory';
  };
  readonly buckling: {
    /** Multiple of the load of a column supported at both ends. */
    readonly nE: number;
    /** Catalogue shortcut factor; half of the buckling load is inside. */
    readonly q: number;
    readonly source: string;
    readonly status: 'published' | 'from memory';
  };
}

const whirlSource = 'THK Ball Screw General Catalog 513-1E, page A15-32';
const bucklingSource =
  'a ball-screw maker’s technical page: 1/4, 1, 2, 4 with safety factor 0.5 (exact theory for fixed and supported: 2.046); q as catalogues round it';

const ends = (
  id: ScrewEnds['id'],
  name: string,
  lambda: number,
  f: number,
  nE: number,
  q: number,
): ScrewEnds => ({
  id,
  name,
  whirl: { lambda, f, source: whirlSource, status: 'published' },
  buckling: { nE, q, source: bucklingSource, status: 'published' },
});

/** From the softest mounting to the stiffest. */
export const SCREW_ENDS: readonly ScrewEnds[] = [
  ends('fixed-free', 'one end fixed, the other free', 1.875, 3.4, 0.25, 1.3),
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: the catalogue prints the factor rounded
  ends('supported-supported', 'both ends supported', 3.142, 9.7, 1, 5),
  ends('fixed-supported', 'one end fixed, the other supported', 3.927, 15.1, 2, 10),
  ends('fixed-fixed', 'both ends fixed', 4.73, 21.9, 4, 20),
];
