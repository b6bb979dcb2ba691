/** The order in which findings of a wiring matter: what spoils the rest, then the worst verdict, then what it leads to. */
import { byVerdict } from '../../quantity/verdict.ts';
import type { Root, WiringFinding } from '../wiring/index.ts';

const ROOTS: readonly Root['harm'][] = ['mains', 'short', 'volts'];

/** By what follows when nobody acts: somebody is hurt; something burns or breaks; it does not work; it is untidy. */
const LEADS_TO: Readonly<Record<string, number>> = {
  mains: 0,
  earth: 0,
  protective: 0,
  'protective-leakage': 0,
  residual: 0,
  'residual-type': 0,
  'stored-charge': 0,
  electrician: 0,
  short: 1,
  'outputs-joined': 1,
  'supplies-joined': 1,
  reversing: 1,
  motor: 1,
  unfused: 1,
  'fuse-wire': 1,
  'fuse-dc': 1,
  'fuse-breaks': 1,
  'wire-current': 1,
  'hot-plug': 1,
  resistor: 1,
  contact: 1,
  separation: 3,
  shield: 3,
  holding: 3,
  wire: 3,
  loop: 3,
  part: 3,
  'least-wire': 3,
};
const DOES_NOT_WORK = 2;

const leadsTo = ({ rule }: WiringFinding): number =>
  Object.hasOwn(LEADS_TO, rule) ? LEADS_TO[rule]! : DOES_NOT_WORK;

/** What goes by way of contacts may be said of another root as well, and is looked at after those that are joined for good. */
const rootRank = ({ root }: WiringFinding): number =>
  root ? ROOTS.indexOf(root.harm) + (root.throughContacts ? ROOTS.length : 0) : 2 * ROOTS.length;

/** Equals keep the order they have. */
export const byConsequence = (a: WiringFinding, b: WiringFinding): number =>
  rootRank(a) - rootRank(b) || byVerdict(a, b) || leadsTo(a) - leadsTo(b);
