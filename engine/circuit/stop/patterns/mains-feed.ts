/** A spindle drive that takes mains: its power comes from there, through the same contactors by poles of its own. */
import type { StopCircuit, StopElement, StopWire } from '../../../refit/types.ts';

export type Phases = 'one' | 'three';

/** By what the mains of the machine are called, in wiring and stop circuit alike. */
const MAINS = 'X0';
const POLES: Readonly<
  Record<Phases, { readonly from: readonly string[]; readonly to: readonly string[]; readonly gives: string }>
> = {
  one: { from: ['L1', 'N'], to: ['L', 'N'], gives: 'one phase of the mains' },
  three: { from: ['L1', 'L2', 'L3'], to: ['L1', 'L2', 'L3'], gives: 'three phases of the mains' },
};

/** The same circuit with this drive fed from the mains, through the contactors that lie in its way now. */
export function fedFromMains(circuit: StopCircuit, drive: string, phases: Phases): StopCircuit {
  const contactors = contactorsBefore(circuit, drive);
  const { from, to, gives } = POLES[phases];
  const elements: Record<string, StopElement> = { ...circuit.elements };
  elements[MAINS] ??= { id: MAINS, kind: 'supply', name: 'Mains of the machine', settings: { gives } };
  const own = elements[drive]!;
  if (phases === 'three') elements[drive] = { ...own, settings: { ...own.settings, phases } };
  const ends = new Set([`${drive}.L`, `${drive}.N`]);
  const wires: Record<string, StopWire> = Object.fromEntries(
    Object.entries(circuit.wires).filter(([, wire]) => !ends.has(wire.from) && !ends.has(wire.to)),
  );
  let number = 1;
  const join = (a: string, b: string): void => {
    while (Object.hasOwn(circuit.wires, `w${number}`) || Object.hasOwn(wires, `w${number}`)) number++;
    wires[`w${number}`] = { id: `w${number}`, from: a, to: b, cable: '' };
  };
  const at = from.map((mark) => `${MAINS}.${mark}`);
  for (const id of contactors) {
    const used = polesUsed(circuit, id);
    const element = elements[id]!;
    const main = Math.max(Number(element.settings.main ?? 3), used + at.length);
    elements[id] = { ...element, settings: { ...element.settings, main: String(main) } };
    for (const [n, end] of at.entries()) {
      join(end, `${id}.${2 * (used + n) + 1}`);
      at[n] = `${id}.${2 * (used + n) + 2}`;
    }
  }
  for (const [n, end] of at.entries()) join(end, `${drive}.${to[n]}`);
  return { ...circuit, elements, wires };
}

/** Main contacts are marked 1 to 9, or 10 to 16; 13 and 14 are those of an auxiliary contact. */
const MOST_MARK = 10;

/** Contactors between a drive and what feeds it, that nearest to the source first. */
function contactorsBefore({ wires, elements }: StopCircuit, drive: string): readonly string[] {
  const found: string[] = [];
  let ends = [`${drive}.L`, `${drive}.N`];
  const seen = new Set(ends);
  while (ends.length > 0) {
    const next: string[] = [];
    for (const { from, to } of Object.values(wires)) {
      const far = ends.includes(from) ? to : ends.includes(to) ? from : undefined;
      if (far === undefined || seen.has(far)) continue;
      seen.add(far);
      const [id = '', mark = ''] = far.split('.');
      if (elements[id]?.kind !== 'contactor' || !/^\d$/.test(mark)) continue;
      if (!found.includes(id)) found.unshift(id);
      const other = `${id}.${Number(mark) % 2 === 0 ? Number(mark) - 1 : Number(mark) + 1}`;
      seen.add(other);
      next.push(other);
    }
    ends = next;
  }
  return found;
}

function polesUsed({ wires }: StopCircuit, contactor: string): number {
  const poles = Object.values(wires)
    .flatMap(({ from, to }) => [from, to])
    .filter((end) => end.startsWith(`${contactor}.`))
    .map((end) => end.slice(contactor.length + 1))
    .filter((mark) => /^\d{1,2}$/.test(mark) && Number(mark) <= MOST_MARK);
  return Math.max(0, ...poles.map((mark) => Math.ceil(Number(mark) / 2)));
}
