/** Voltage levels of digital outputs and inputs. All voltages in V, currents in A. */

export interface LogicFamily {
  readonly id: string;
  readonly name: string;
  /** Supply for which the levels hold, in V; 'any' when the levels are shares of the supply. */
  readonly supply: number | 'any';
  /** Highest input read as low. */
  readonly inputLow: number;
  /** Lowest input read as high. */
  readonly inputHigh: number;
  /** Highest output when low; undefined for a kind that is an input only. */
  readonly outputLow?: number;
  /** Lowest output when high; undefined for a kind that is an input only. */
  readonly outputHigh?: number;
  /** Current an input takes at `inputHigh` at least, and at most. */
  readonly inputCurrent?: readonly [least: number, most: number];
  readonly note: string;
  /** Of the levels. */
  readonly source: string;
  readonly status: 'published' | 'from memory';
}

const jeita = 'JEITA ED-5007 as quoted in a semiconductor maker’s logic-level note';
const plc = 'IEC 61131-2 as quoted by makers of input modules';

export const LOGIC_FAMILIES = [
  {
    id: 'ttl-5v',
    name: '5 V TTL',
    supply: 5,
    inputLow: 0.8,
    inputHigh: 2.0,
    outputLow: 0.4,
    outputHigh: 2.4,
    note: 'Output when high is far from 5 V.',
    source: 'TI SN74ALS1004 data sheet as quoted in a semiconductor maker’s logic-level note',
    status: 'published',
  },
  {
    id: 'logic-3v3',
    name: '3.3 V logic (LVTTL, LVCMOS)',
    supply: 3.3,
    inputLow: 0.8,
    inputHigh: 2.0,
    outputLow: 0.4,
    outputHigh: 2.4,
    note: 'Unless its sheet says that it stands 5 V, 5 V destroys it.',
    source: 'JESD8C, from memory',
    status: 'from memory',
  },
  {
    id: 'cmos',
    name: 'CMOS, inputs as shares of the supply',
    supply: 'any',
    inputLow: 0.3,
    inputHigh: 0.7,
    note: 'Lightly loaded outputs come within about 0.1 V of supply and ground (from memory).',
    source: jeita,
    status: 'published',
  },
  {
    id: 'hc-4v5',
    name: 'HC at 4.5 V',
    supply: 4.5,
    inputLow: 1.35,
    inputHigh: 3.15,
    outputLow: 0.33,
    outputHigh: 3.84,
    note: 'Outputs at 4 mA.',
    source: 'from memory',
    status: 'from memory',
  },
  {
    id: 'hct-5v',
    name: 'HCT at 5 V',
    supply: 5,
    inputLow: 0.8,
    inputHigh: 2.0,
    outputLow: 0.33,
    outputHigh: 3.84,
    note: 'Made to be driven by TTL and 3.3 V logic.',
    source: 'from memory',
    status: 'from memory',
  },
  {
    id: 'plc-type-1',
    name: '24 V input, type 1',
    supply: 24,
    inputLow: 5,
    inputHigh: 15,
    inputCurrent: [0.002, 0.015],
    note: 'For contacts and three-wire sensors. The most current is from memory.',
    source: plc,
    status: 'published',
  },
  {
    id: 'plc-type-2',
    name: '24 V input, type 2',
    supply: 24,
    inputLow: 5,
    inputHigh: 11,
    inputCurrent: [0.006, 0.03],
    note: 'For two-wire sensors.',
    source: 'IEC 61131-2, from memory',
    status: 'from memory',
  },
  {
    id: 'plc-type-3',
    name: '24 V input, type 3',
    supply: 24,
    inputLow: 5,
    inputHigh: 11,
    inputCurrent: [0.002, 0.015],
    note: 'For contacts, three-wire and frugal two-wire sensors. The most current is from memory.',
    source: plc,
    status: 'published',
  },
] as const satisfies readonly LogicFamily[];

export type LogicFamilyId = (typeof LOGIC_FAMILIES)[number]['id'];

/** Levels of a family in V, with its shares taken of `supply` where it has shares. */
export function logicFamily(id: LogicFamilyId, supply?: number): LogicFamily {
  const family: LogicFamily = LOGIC_FAMILIES.find((each) => each.id === id)!;
  if (family.supply !== 'any') return family;
  if (supply === undefined || !(supply > 0)) {
    throw new RangeError(`the levels of '${id}' are shares of its supply, so the supply in volts is needed`);
  }
  return {
    ...family,
    supply,
    inputLow: family.inputLow * supply,
    inputHigh: family.inputHigh * supply,
  };
}

/** Differential levels of TIA/EIA-422-B: driver into 100 Ω, receiver, common mode; all in V. */
export const RS422 = {
  driverLeast: 2,
  driverOpenMost: 6,
  receiverThreshold: 0.2,
  commonMode: 7,
  /** In Ω, at the far end. */
  termination: [100, 120],
  source: 'TIA/EIA-422-B as quoted in interface data sheets',
  status: 'published',
} as const;
