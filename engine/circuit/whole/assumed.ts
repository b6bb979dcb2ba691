/** Connections of a proposal that rest on nobody having said otherwise, each with its reason and how to say otherwise. */
import { andList } from '../../quantity/words.ts';
import { chosenPart } from '../../refit/place.ts';
import type { Refit, WiringDevice } from '../../refit/types.ts';
import type { Proposal } from '../wiring/index.ts';
import { partFacts } from '../wiring/part-facts.ts';
import { BY_NUMBER } from './ask-groups.ts';

export interface Assumed {
  /** What is connected how, and why it is taken so: a sentence or two. */
  readonly says: string;
  /** What would say otherwise: settings of the wiring, a fact of a part, or a stop circuit, which has neither. */
  readonly otherwise: {
    readonly of: 'wiring' | 'part' | 'stop';
    /** 'T1.feed' */
    readonly places: readonly string[];
    readonly value: string;
  };
}

/** Only of what the proposal lays anew. */
export function assumedOf({ changes, wiring }: Proposal, refit: Refit): readonly Assumed[] {
  const wires = changes.flatMap((change) => (change.do === 'wire' && change.new ? [change.new] : []));
  const ends = new Set(wires.flatMap(({ from, to }) => [from, to]));
  const laid = (mark: string, ...kinds: readonly string[]): readonly WiringDevice[] =>
    Object.values(wiring.devices)
      .filter(({ id, kind }) => kinds.includes(kind) && ends.has(`${id}.${mark}`))
      .sort((a, b) => BY_NUMBER.compare(a.id, b.id));
  const ids = (devices: readonly WiringDevice[]): string => andList(devices.map(({ id }) => id));
  const assumed: Assumed[] = [];

  const fed = laid('DC+', 'drive').filter(({ settings }) => settings.feed === undefined);
  if (fed.length > 0) {
    const one = fed.length === 1;
    assumed.push({
      says: `${ids(fed)} ${one ? 'is' : 'are'} fed with direct voltage at DC+ and DC-: most drives of servo and stepping motors are, and nothing says otherwise of ${one ? 'this one' : 'these'}. Look at the terminals: a drive that takes the mains has L and N in their place.`,
      otherwise: { of: 'wiring', places: fed.map(({ id }) => `${id}.feed`), value: 'mains' },
    });
  }

  const supply = chosenPart(refit, null, 'supply');
  if (supply && partFacts(supply).choice('type') === undefined) {
    const made = laid('L', 'supply').filter(({ part }) => part === supply.id);
    if (made.length > 0)
      assumed.push({
        says: `${ids(made)} is a ready-made supply that takes the mains at L and N, since the kind of supply is not known; a transformer with a rectifier is wired otherwise.`,
        otherwise: { of: 'part', places: ['supply.type'], value: 'transformer' },
      });
  }

  const inlet = laid('L1', 'mains-inlet');
  const site = chosenPart(refit, null, 'site');
  if (inlet.length > 0 && site && partFacts(site).choice('phases') === undefined)
    assumed.push({
      says: `${ids(inlet)} is laid with one phase and neutral, as most small machines have it, since the phases of the mains are not known.`,
      otherwise: { of: 'part', places: ['site.phases'], value: 'three' },
    });

  const inverters = laid('L', 'inverter').filter(({ settings, part }) => {
    const chosen = part === null ? undefined : refit.parts[part];
    return (
      settings.phases === undefined && (!chosen || partFacts(chosen).choice('inputPhases') === undefined)
    );
  });
  if (inverters.length > 0)
    assumed.push({
      says: `${ids(inverters)} takes one phase and neutral, since the phases it wants are not known; its plate says them at the input.`,
      otherwise: { of: 'wiring', places: inverters.map(({ id }) => `${id}.phases`), value: 'three' },
    });

  const enabled = wires.filter(
    ({ from, to }) =>
      [from, to].some((end) => end.endsWith('.EN')) && [from, to].some((end) => end.endsWith('.enable')),
  );
  if (!refit.stop && enabled.length > 0)
    assumed.push({
      says: `The control alone enables ${andList(enabled.map(({ from, to }) => (to.endsWith('.EN') ? to : from).slice(0, -3)))}, since no stop circuit is drawn yet. Draw it first: its contacts belong in between, and these wires would be laid anew.`,
      otherwise: { of: 'stop', places: [], value: '' },
    });
  return assumed;
}
