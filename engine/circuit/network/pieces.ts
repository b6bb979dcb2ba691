/** A circuit taken apart where nothing conducts, and what no solving could mend: loops of ideal sources. */
import { nodesOf } from './check.ts';
import type { Answer, Circuit, Element, Piece, Trouble } from './types.ts';
import { Union } from './union.ts';
import { closedAt } from './value.ts';

/** Whether an element lets a steady current pass; with `moving`, whether it does in a run in time. */
function conducts(e: Element, time: number, moving: boolean): boolean {
  switch (e.kind) {
    case 'current':
    case 'mirror':
      return false;
    case 'capacitor':
      return moving;
    case 'switch':
      return e.offOhms !== undefined || (moving && typeof e.closed !== 'boolean') || closedAt(e.closed, time);
    default:
      return true;
  }
}

/** Ideal for a steady current: fixes the voltage between its ends whatever flows. */
const isIdeal = (e: Element, moving: boolean): boolean =>
  (e.kind === 'voltage' && e.ohms === 0) || (!moving && e.kind === 'inductor' && e.ohms === 0);

function sourceLoop(elements: readonly Element[], moving: boolean): Trouble | undefined {
  const joined = new Union();
  const ideal = elements.filter((e) => isIdeal(e, moving));
  for (const e of ideal) {
    const [a, b] = nodesOf(e) as [string, string];
    if (joined.join(a, b)) continue;
    const root = joined.find(a);
    const loop = ideal.filter((each) => joined.find(nodesOf(each)[0]!) === root);
    return {
      kind: 'source-loop',
      nodes: [...new Set(loop.flatMap(nodesOf))],
      elements: loop.map(({ id }) => id),
      sentence:
        a === b
          ? `Both ends of ${e.id} are joined at ${a}: it is short-circuited.`
          : `${loop.map(({ id }) => id).join(' and ')} stand against each other between ${a} and ${b} with nothing in between that could limit the current.`,
    };
  }
  return undefined;
}

/** Current that a source drives between two pieces has no way back. */
function noReturn(elements: readonly Element[], joined: Union): Trouble | undefined {
  for (const e of elements) {
    if (e.kind !== 'current' && e.kind !== 'mirror') continue;
    if (joined.find(e.from) === joined.find(e.to)) continue;
    return {
      kind: 'no-return',
      nodes: [e.from, e.to],
      elements: [e.id],
      sentence: `The current of ${e.id} from ${e.from} to ${e.to} has no way back.`,
    };
  }
  return undefined;
}

/**
 * The pieces of a checked circuit at a moment.
 *
 * @param moving in a run in time, where capacitors conduct and ideal inductors are no shorts
 */
export function piecesOf(
  { elements, references }: Circuit,
  time = 0,
  moving = false,
): Answer<{ pieces: readonly Piece[] }> {
  const joined = new Union();
  for (const e of elements) {
    const [first, ...rest] = nodesOf(e);
    joined.find(first!);
    for (const other of rest) {
      joined.find(other);
      if (conducts(e, time, moving)) joined.join(first!, other);
    }
  }
  const trouble = noReturn(elements, joined) ?? sourceLoop(elements, moving);
  if (trouble) return { ok: false, trouble };
  const groups = new Map<string, { nodes: Set<string>; elements: Element[] }>();
  for (const e of elements)
    for (const node of nodesOf(e)) {
      const root = joined.find(node);
      const group = groups.get(root) ?? { nodes: new Set<string>(), elements: [] };
      groups.set(root, group);
      group.nodes.add(node);
      // An open contact between two pieces belongs to neither; a mirror stands with its nodes.
      if (group.elements.at(-1) !== e && nodesOf(e).every((each) => joined.find(each) === root))
        group.elements.push(e);
    }
  const pieces = [...groups.values()].map((group): Piece => {
    const reference = references.find((each) => group.nodes.has(each));
    return {
      nodes: [...group.nodes],
      elements: group.elements,
      reference: reference ?? [...group.nodes][0]!,
      anchored: reference !== undefined,
    };
  });
  return { ok: true, pieces };
}
