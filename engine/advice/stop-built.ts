/** What the wiring knows of the stop circuit's wires and of how long the buses stay charged, for the test sheet. */
import type { Built, BuiltBus, BuiltWire } from '../circuit/stop/index.ts';
import type { Looked } from '../circuit/whole/index.ts';
import type { ReadWiring, Wire } from '../circuit/wiring/index.ts';

/** Wires passed on a way before it counts as none. */
const LONGEST = 12;

/** Undefined while nothing is wired. */
export function stopBuilt({ read, findings }: Pick<Looked, 'read' | 'findings'>): Built | undefined {
  if (read.wires.size === 0) return undefined;
  return { wireAt: wiresOf(read), buses: findings.flatMap((each) => busOf(read, each)) };
}

/** Ways lead over wires and over the bridges of strips; any other device ends them. */
function wiresOf(read: ReadWiring): Built['wireAt'] {
  const at = new Map<string, Wire[]>();
  for (const wire of read.wires.values())
    for (const end of [wire.from, wire.to]) at.set(end, [...(at.get(end) ?? []), wire]);
  const joints = new Map<string, string[]>();
  for (const { id, device, nature } of read.terminals.values())
    if (nature.kind === 'joint') joints.set(device, [...(joints.get(device) ?? []), id]);
  const isJoint = (id: string) => read.terminals.get(id)?.nature.kind === 'joint';
  const bridged = (id: string): readonly string[] =>
    isJoint(id)
      ? (joints.get(read.terminals.get(id)!.device) ?? []).filter(
          (other) => read.netOf.get(other) === read.netOf.get(id),
        )
      : [];
  return (terminal, towards) => {
    const seen = new Set([terminal]);
    let front: { readonly id: string; readonly first: Wire | undefined }[] = [
      { id: terminal, first: undefined },
    ];
    for (let step = 0; step < LONGEST && front.length > 0; step++) {
      const next: typeof front = [];
      for (const { id, first } of front) {
        if (first && id === towards) return endsOf(first, terminal);
        if (first && !isJoint(id)) continue;
        for (const wire of at.get(id) ?? [])
          next.push({ id: wire.from === id ? wire.to : wire.from, first: first ?? wire });
        for (const other of bridged(id)) next.push({ id: other, first });
      }
      front = next.filter(({ id }) => !seen.has(id) && seen.add(id));
    }
    return undefined;
  };
}

/** From its far end to the terminal asked for. */
const endsOf = ({ id, number, from, to }: Wire, terminal: string): BuiltWire => ({
  number: number || id,
  from: to === terminal ? from : to,
  to: terminal,
});

/** As the rule of stored charge has worked it out, with the wait of its plate. */
function busOf(
  read: ReadWiring,
  { rule, about, figures, remedy, verdict }: Looked['findings'][number],
): BuiltBus[] {
  if (rule !== 'stored-charge') return [];
  const device = about[1] ?? about[0]!;
  const figure = (name: string) => figures.find((each) => each.name === name)?.value;
  const falls = figure('time to 60 V');
  // Nothing that stays charged.
  if (falls === undefined && verdict === 'fits') return [];
  const plate = /wait (\d+) s/.exec(remedy ?? '')?.[1];
  const name = read.devices.get(device)?.name;
  const unsure = verdict === 'unknown';
  return [
    {
      name: name ? `${name} (${device})` : device,
      falls: unsure ? undefined : falls,
      wait: unsure ? undefined : plate === undefined ? figure('time allowed') : Number(plate),
      plate: plate !== undefined,
    },
  ];
}
