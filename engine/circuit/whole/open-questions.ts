/** Which wires of a proposal wait for which question: what nobody can judge yet is not laid. */
import { own } from '../../quantity/own.ts';
import type { Change, Refit, Wiring, WiringWire } from '../../refit/types.ts';
import {
  natureSettings,
  type Proposal,
  type Question,
  type ReadWiring,
  readWiring,
  type WiringFinding,
} from '../wiring/index.ts';
import { questionsFrom } from '../wiring/propose/questions.ts';
import { answeredOf } from './answered.ts';
import { type AskGroup, groupsOf } from './ask-groups.ts';
import { isSaid } from './said-at.ts';
import { type Taken, takeUsual, withTaken } from './take-usual.ts';

export interface OpenQuestion {
  readonly question: Question;
  /** Ids of proposed wires that are not laid before it is answered. */
  readonly wires: readonly string[];
  /** What stays unmade, in a sentence. */
  readonly waits: string;
}

export interface Settled {
  /** What the whole hangs on first, then what most wires wait for. */
  readonly open: readonly OpenQuestion[];
  /** The same in the order of the job, what is alike asked once. */
  readonly groups: readonly AskGroup[];
  /** How many such groups were answered already. */
  readonly answered: number;
  /** Taken as usual; recorded with the wires. */
  readonly taken: readonly Taken[];
  /** What is found of the proposal with what is taken as usual. */
  readonly findings: readonly WiringFinding[];
  /** The proposed wiring with what is taken as usual. */
  readonly wiring: Wiring;
  /** What can be recorded now: everything but the wires that wait. */
  readonly changes: readonly Change[];
  /** The same with the wires that wait. */
  readonly everything: readonly Change[];
  /** Wires that wait, each once. */
  readonly waiting: number;
}

/** What a proposal for this refit can lay now, and what each open question keeps from being laid. */
export function settledOf(proposal: Proposal, refit: Refit): Settled {
  const { changes, questions } = proposal;
  const { taken, findings, wiring, read } = takeUsual(proposal, refit);
  const fresh = changes.flatMap((change) => (change.do === 'wire' && change.new ? [change.new] : []));
  const by = new Map<string, string[]>();
  const add = (thing: string | null, wire: string) => {
    if (thing !== null) by.set(thing, [...(by.get(thing) ?? []), wire]);
  };
  for (const { id, from, to, cable } of fresh) for (const thing of [id, from, to, cable]) add(thing, id);
  const bridges = bridgesOf(fresh, read, refit);
  const wiresOf = (thing: string): readonly string[] => {
    const wires = by.get(thing) ?? [];
    return [...wires, ...bridges.filter((all) => wires.some((each) => all.includes(each))).flat()];
  };
  // First what is asked of the proposal as a whole, then what single findings wait for.
  const asked = new Map<string, { question: Question; wires: Set<string> }>();
  const fromFindings = new Set(
    questionsFrom(proposal.findings, proposal.wiring, readWiring(proposal.wiring, refit)).map(({ id }) => id),
  );
  for (const question of questions)
    if (!fromFindings.has(question.id)) asked.set(question.id, { question, wires: new Set() });
  for (const finding of findings)
    for (const need of finding.needs ?? [])
      for (const found of questionsFrom([{ ...finding, needs: [need] }], wiring, read)) {
        // Where it is answered, something else is meant, which the device does not ask.
        const question = isSaid(found.place, wiring) ? (ofTerminal(need, read) ?? found) : found;
        const known = asked.get(question.id) ?? { question, wires: new Set() };
        for (const thing of finding.about) for (const wire of wiresOf(thing)) known.wires.add(wire);
        asked.set(question.id, known);
      }
  const open = [...asked.values()]
    .map(
      ({ question, wires }): OpenQuestion => ({
        question,
        wires: [...wires],
        waits: sayWaits(question, wires.size),
      }),
    )
    .sort((a, b) => Number(weight(a) < weight(b)) - Number(weight(a) > weight(b)));
  const waiting = new Set(open.flatMap(({ wires }) => wires));
  const everything = withTaken(changes, taken, refit);
  return {
    open,
    groups: groupsOf(open, wiring, refit),
    answered: answeredOf(open, wiring, refit),
    taken,
    findings,
    wiring,
    changes: everything.filter((change) => change.do !== 'wire' || !waiting.has(change.id)),
    everything,
    waiting: waiting.size,
  };
}

/**
 * The new wires of each device that only stands between two others, such as a buffer, and is not wired yet: laid all together
 * or not at all, since half of them say nothing of the way the signals go.
 */
function bridgesOf(
  fresh: readonly WiringWire[],
  { devices, terminals }: ReadWiring,
  { wiring }: Refit,
): readonly (readonly string[])[] {
  const on = (device: string) => (wire: WiringWire) =>
    wire.from.startsWith(`${device}.`) || wire.to.startsWith(`${device}.`);
  return [...devices.values()].flatMap((device) => {
    const natures = device.terminals.map((id) => terminals.get(id)!.nature.kind);
    const isBetween =
      device.part === null && natures.includes('input') && natures.some((kind) => /output$/.test(kind));
    if (!isBetween || Object.values(wiring.wires).some(on(device.id))) return [];
    // Where one of its terminals would hold too many, a strip of its own spreads it.
    const strips = fresh.flatMap(({ from, to }) =>
      from.startsWith(`${device.id}.`) && to.endsWith('.1') ? [to.slice(0, -2)] : [],
    );
    const all = [device.id, ...strips.filter((id) => devices.get(id)?.kind === 'strip')].map(on);
    return [fresh.filter((wire) => all.some((each) => each(wire))).map(({ id }) => id)];
  });
}

/** The same asked of the terminal itself. */
function ofTerminal(need: string, { terminals }: ReadWiring): Question | undefined {
  const last = need.lastIndexOf('.');
  const terminal = terminals.get(need.slice(0, last));
  const setting = need.slice(last + 1);
  const spec = terminal && own(natureSettings(terminal.nature.kind), setting);
  if (!terminal || !spec) return undefined;
  return {
    id: need,
    asks: `${terminal.id} (${terminal.name}): ${spec.name}?`,
    place: { of: 'terminal', id: terminal.device, mark: terminal.mark, kind: terminal.nature.kind, setting },
    ...(spec.kind === 'quantity' ? { unit: spec.unit } : {}),
    ...(spec.kind === 'choice' ? { options: spec.options } : {}),
  };
}

/** What the whole hangs on comes first, then what most wires wait for. */
const weight = ({ question, wires }: OpenQuestion): number =>
  question.place.of === 'wiring' ? Number.POSITIVE_INFINITY : wires.length;

function sayWaits({ place }: Question, wires: number): string {
  if (wires > 0)
    return wires === 1
      ? 'One wire is not laid before it is told.'
      : `${wires} wires are not laid before it is told.`;
  return place.of === 'wiring'
    ? 'Nothing of this is laid before it is told.'
    : 'No wire waits for it; what hangs on it stays unknown.';
}
