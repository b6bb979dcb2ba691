/** Short words for writing a circuit down. */
import type { StopCircuit, StopElement, StopMotion, StopWire } from '../../refit/types.ts';

type Settings = Readonly<Record<string, string>>;
/** 'K1 contactor', its name in words, its settings. */
export type Drawn = readonly [head: string, name: string, settings?: Settings];
/** 'F1.2 S1.11 S1.21' joins them all one after another; after ' / ' stands the cable. */
export type Run = string;

export interface Drawing {
  readonly pattern: string | null;
  readonly note?: string;
  readonly elements: readonly Drawn[];
  readonly runs: readonly Run[];
  readonly motions: readonly StopMotion[];
  readonly settings?: Settings;
}

/** A circuit from its drawing; wires are numbered in the order of the runs. */
export function draw({ pattern, note = '', elements, runs, motions, settings = {} }: Drawing): StopCircuit {
  const all = elements.map(([head, name, own = {}]): StopElement => {
    const [id = '', kind = ''] = head.split(' ');
    return { id, kind, name, settings: own };
  });
  const wires: StopWire[] = [];
  for (const run of runs) {
    const [path = '', cable = ''] = run.split(' / ');
    const ends = path.split(' ');
    for (let at = 1; at < ends.length; at++)
      wires.push({ id: `w${wires.length + 1}`, from: ends[at - 1]!, to: ends[at]!, cable });
  }
  const byId = <T extends { readonly id: string }>(list: readonly T[]) =>
    Object.fromEntries(list.map((each) => [each.id, each]));
  return { pattern, note, elements: byId(all), wires: byId(wires), motions: byId(motions), settings };
}
