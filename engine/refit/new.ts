import type { Refit } from './types.ts';

/** A refit in which nothing is known yet. The id is the caller's: the engine has no randomness. */
export const newRefit = (
  start: Pick<Refit, 'id' | 'name' | 'machine'> & { readonly about?: string },
): Refit => ({
  format: 'fettle-refit',
  version: 5,
  id: start.id,
  name: start.name,
  about: start.about ?? '',
  machine: start.machine,
  places: {},
  chains: [],
  parts: {},
  policies: {},
  evidence: {},
  tags: {},
  keeps: {},
  survey: {},
  stop: null,
  work: {},
  auxiliaries: {},
  wiring: { devices: {}, wires: {}, cables: {}, settings: {} },
});
