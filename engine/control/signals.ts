/** Sorts of signal a machine asks of its control, and which of its terminals can serve each; the hardest to serve come first. */
import type { CountId } from '../parts/control-abilities.ts';

export const SIGNALS = {
  'switch-24v': { name: '24 V input for a plain switch', way: 'in', serves: ['inputs-24v'] },
  'pnp-24v': { name: '24 V input for a PNP sensor', way: 'in', serves: ['inputs-24v'] },
  'npn-24v': { name: '24 V input for an NPN sensor', way: 'in', serves: ['inputs-24v'] },
  contact: { name: 'free contact', way: 'out', serves: ['outputs-relay'] },
  '5v': { name: '5 V output', way: 'out', serves: ['outputs-5v', 'outputs-relay'] },
  '24v': { name: '24 V output', way: 'out', serves: ['outputs-24v', 'outputs-relay'] },
  '10v-both': { name: '±10 V output', way: 'out', serves: ['outputs-10v-both'] },
  '10v': { name: '0 to 10 V output', way: 'out', serves: ['outputs-10v', 'outputs-10v-both'] },
  pulses: { name: 'pair of pulse outputs', way: 'out', serves: ['pulse-outputs'] },
  encoder: { name: 'encoder input', way: 'in', serves: ['encoder-inputs'] },
} as const satisfies Readonly<
  Record<string, { readonly name: string; readonly way: 'in' | 'out'; readonly serves: readonly CountId[] }>
>;

export type SignalId = keyof typeof SIGNALS;
export const SIGNAL_IDS = Object.keys(SIGNALS) as readonly SignalId[];

/** One wire to or from the control. */
export interface Signal {
  readonly sort: SignalId;
  /** 'Turret: in place'. */
  readonly from: string;
  /** Why it is taken to be there: of the refit, by habit, as the wiring is drawn, or wished. */
  readonly by: 'refit' | 'habit' | 'wiring' | 'wish';
}
