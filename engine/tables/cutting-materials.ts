/** How hard materials are to cut: the two constants of the cutting force. */

export interface CuttingMaterial {
  readonly id: string;
  readonly name: string;
  /** Other words people use for it, lower case. */
  readonly words: readonly string[];
  /** Force of a chip 1 mm thick and wide, Pa. */
  readonly kc11: number;
  readonly mc: number;
  /** Forces per area printed for it in N/mm², by feed in millimetres. */
  readonly printed?: Readonly<Record<string, number>>;
  /** Widest distance of the constants from the printed values, per cent. */
  readonly within?: number;
  readonly note?: string;
  readonly source: string;
  readonly status: 'published' | 'from memory';
}

const constants =
  'constants of Kienzle and Victor as handbooks reprint them, from memory; compared with Mitsubishi Materials, formulae for cutting power, turning';
const milling = 'fitted to Mitsubishi Materials, formulae for cutting power, milling';
const MPA = 1e6;
const FEEDS = ['0.1', '0.2', '0.3', '0.4', '0.6'];

function turned(
  id: string,
  name: string,
  words: readonly string[],
  kc11: number,
  mc: number,
  forces: readonly number[],
  within: number,
): CuttingMaterial {
  const printed = Object.fromEntries(FEEDS.map((feed, at) => [feed, forces[at]!]));
  return { id, name, words, kc11: kc11 * MPA, mc, printed, within, source: constants, status: 'from memory' };
}

const milled = (
  id: string,
  name: string,
  words: readonly string[],
  kc11: number,
  mc: number,
): CuttingMaterial => ({
  id,
  name,
  words,
  kc11: kc11 * MPA,
  mc,
  note: 'From milling data: take it as a first estimate.',
  source: milling,
  status: 'published',
});

/** Within each group from the easiest to the hardest. The pairing of names with printed rows is ours. */
export const CUTTING_MATERIALS: readonly CuttingMaterial[] = [
  turned(
    'c45',
    'medium carbon steel C45',
    ['steel', 'carbon steel', 'en8', '1045'],
    2220,
    0.14,
    [3040, 2800, 2630, 2500, 2400],
    1.7,
  ),
  turned(
    'mild-steel',
    'mild steel E295 (St 50)',
    ['mild steel', 'mild', 'st50', 'e295'],
    1990,
    0.26,
    [3610, 3100, 2720, 2500, 2280],
    2.5,
  ),
  turned(
    'steel-e335',
    'structural steel E335 (St 60)',
    ['st60', 'e335', 'structural steel'],
    2110,
    0.17,
    [3080, 2700, 2570, 2450, 2300],
    3,
  ),
  turned('c60', 'carbon steel C60', ['en9', '1060'], 2130, 0.18, [3150, 2850, 2620, 2450, 2340], 2.9),
  turned(
    '16mncr5',
    'case-hardening steel 16MnCr5',
    ['case hardening steel'],
    2100,
    0.26,
    [3830, 3250, 2900, 2650, 2400],
    2,
  ),
  turned('18crni6', 'case-hardening steel 18CrNi6', [], 2260, 0.3, [4510, 3900, 3240, 2900, 2630], 7),
  turned('34crmo4', 'tempered steel 34CrMo4', ['4130'], 2240, 0.21, [3610, 3200, 2880, 2700, 2500], 2.5),
  turned(
    '42crmo4',
    'tempered steel 42CrMo4',
    ['en19', '4140', 'alloy steel'],
    2500,
    0.26,
    [4500, 3900, 3400, 3150, 2850],
    3,
  ),
  turned(
    '55nicrmov6',
    'hot-work steel 55NiCrMoV6, annealed',
    ['tool steel', 'hot-work steel'],
    1740,
    0.24,
    [3070, 2650, 2350, 2200, 1980],
    4,
  ),
  turned(
    '55nicrmov6-352hb',
    'hot-work steel 55NiCrMoV6, 352 HB',
    ['hard tool steel'],
    1920,
    0.24,
    [3310, 2900, 2580, 2400, 2200],
    3,
  ),
  turned('meehanite', 'Meehanite cast iron', ['nodular iron'], 1270, 0.26, [2300, 1930, 1730, 1600, 1450], 1),
  turned(
    'grey-iron',
    'grey cast iron EN-GJL-250',
    ['cast iron', 'grey iron', 'iron', 'gjl', 'gg25', 'gg26'],
    1160,
    0.26,
    [2110, 1800, 1600, 1400, 1330],
    6,
  ),
  turned('chilled-iron', 'chilled cast iron', ['hard iron'], 2060, 0.19, [3190, 2800, 2600, 2450, 2270], 1),
  milled('stainless', 'austenitic stainless steel', ['stainless steel', '304', '316', 'inox'], 1642, 0.1),
  milled('brass', 'brass', ['bronze'], 524, 0.349),
  milled('aluminium', 'aluminium, strong wrought alloy (AlZnMgCu)', ['aluminum', 'alu', '7075'], 718, 0.098),
  milled('aluminium-soft', 'aluminium, soft wrought alloy (AlMg)', ['soft aluminium', '5083'], 264, 0.348),
  milled('aluminium-cast', 'aluminium casting alloy (AlSi)', ['cast aluminium', 'alsi'], 332, 0.336),
];
