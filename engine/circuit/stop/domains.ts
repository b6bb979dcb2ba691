/** Which supply a wire belongs to. */
import type { Model } from './model.ts';
import { networkOf } from './network.ts';

/** For each node, the supply it belongs to when every contact is closed; −1 for none. */
export function domains(model: Model): Int32Array {
  const { net, nets } = networkOf(model);
  const of = new Int32Array(nets).fill(-1);
  const edges: (readonly [number, number])[] = [
    ...model.contacts.map(({ a, b }) => [net[a]!, net[b]!] as const),
    ...model.movers.filter(({ a }) => a >= 0).map(({ a, b }) => [net[a]!, net[b]!] as const),
    ...model.safety.flatMap(({ fed, back, plus, loop }) => [
      ...fed.map((node) => [net[node]!, net[plus]!] as const),
      ...back.map((node) => [net[node]!, net[plus]!] as const),
      [net[loop]!, net[plus]!] as const,
    ]),
  ];
  // Minus sides that are both earthed are one net; nothing is followed through them.
  const minuses = new Set(model.sources.map(({ minus }) => net[minus]!));
  for (const [at, { plus }] of model.sources.entries()) of[net[plus]!] = at;
  for (let changed = true; changed; ) {
    changed = false;
    for (const [a, b] of edges)
      for (const [from, to] of [
        [a, b],
        [b, a],
      ] as const)
        if (of[from]! >= 0 && of[to]! < 0 && !minuses.has(to)) {
          of[to] = of[from]!;
          changed = true;
        }
  }
  for (const [at, { minus }] of model.sources.entries()) if (of[net[minus]!]! < 0) of[net[minus]!] = at;
  return Int32Array.from(model.nodes, (_, at) => of[net[at]!]!);
}

/** The plus a stray wire would touch: behind the first fuse where there is one. */
export function plusNode(model: Model, source: number): number {
  const { net } = networkOf(model);
  const plus = model.sources[source]!.plus;
  const fuse = model.contacts.find(
    ({ fuse, a, b }) => fuse && (net[a] === net[plus] || net[b] === net[plus]),
  );
  return fuse ? (net[fuse.a] === net[plus] ? fuse.b : fuse.a) : plus;
}
