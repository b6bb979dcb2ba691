/** What is usual put into a proposal, as long as nothing fails by it. */
import { own } from '../../quantity/own.ts';
import type { Change, Refit, Wiring } from '../../refit/types.ts';
import { type WithSettings, withUsual } from '../../refit/usual.ts';
import {
  checkWiring,
  type Proposal,
  type Question,
  type ReadWiring,
  readWiring,
  type WiringFinding,
} from '../wiring/index.ts';
import { questionsFrom } from '../wiring/propose/questions.ts';
import { BY_NUMBER } from './ask-groups.ts';
import { isSaid } from './said-at.ts';
import { specAt } from './setting-at.ts';
import { type Usual, usualAt } from './usual.ts';

/** An answer nobody gave, taken because it is usual and does no harm. */
export interface Taken extends Usual {
  readonly question: Question;
}

interface WithUsual {
  readonly taken: readonly Taken[];
  readonly findings: readonly WiringFinding[];
  readonly wiring: Wiring;
  readonly read: ReadWiring;
}

/** What is known may ask for more: relays whose current is known ask what their contacts carry. */
const ROUNDS = 5;

/** A proposal with what is usual in it; what would make something fail is left to be asked. */
export function takeUsual({ wiring, findings }: Proposal, refit: Refit): WithUsual {
  const failed = new Set(findings.filter(({ verdict }) => verdict === 'fails').map(({ id }) => id));
  const asked = new Set<string>();
  for (;;) {
    const tried = takeBut(asked, wiring, findings, refit);
    const worse = tried.findings.filter(({ id, verdict }) => verdict === 'fails' && !failed.has(id));
    const wrong = tried.taken.filter((each) => worse.some((finding) => touches(each, finding, tried.wiring)));
    if (wrong.length === 0) return tried;
    for (const { question } of wrong) asked.add(question.id);
  }
}

function takeBut(
  asked: ReadonlySet<string>,
  start: Wiring,
  found: readonly WiringFinding[],
  refit: Refit,
): WithUsual {
  const taken = new Map<string, Taken>();
  let [wiring, findings] = [start, found];
  let read = readWiring(wiring, refit);
  for (let round = 0; round < ROUNDS; round++) {
    let more = 0;
    for (const question of questionsFrom(findings, wiring, read)) {
      const usual = usualAt(question.place, wiring, refit);
      if (!usual || asked.has(question.id) || taken.has(question.id) || isSaid(question.place, wiring))
        continue;
      taken.set(question.id, { question, ...usual });
      wiring = withAnswer(wiring, question, usual.value);
      more++;
    }
    if (more === 0) break;
    read = readWiring(wiring, refit);
    findings = checkWiring(wiring, refit);
  }
  return { taken: [...taken.values()], findings, wiring, read };
}

/** Whether a finding is about what something was taken of. */
function touches({ question: { place } }: Taken, { about }: WiringFinding, { wires }: Wiring): boolean {
  if (place.of === 'device') return about.some((each) => each.startsWith(`${place.id}.`));
  return (
    place.of === 'cable' &&
    Object.values(wires).some(
      ({ id, cable, from, to }) =>
        cable === place.id && about.some((each) => each === id || each === from || each === to),
    )
  );
}

function withAnswer(wiring: Wiring, { place }: Question, value: string): Wiring {
  const put = <T extends WithSettings>(all: Readonly<Record<string, T>>, id: string) => ({
    ...all,
    [id]: withUsual(all[id]!, { [place.setting]: value }),
  });
  if (place.of === 'device') return { ...wiring, devices: put(wiring.devices, place.id) };
  if (place.of === 'cable') return { ...wiring, cables: put(wiring.cables, place.id) };
  return wiring;
}

/** The changes of a proposal with what is taken as usual in them. */
export function withTaken(
  changes: readonly Change[],
  taken: readonly Taken[],
  { wiring }: Refit,
): readonly Change[] {
  const at = new Map<string, Record<string, string>>();
  for (const { question, value } of taken) {
    const { place } = question;
    if (place.of !== 'device' && place.of !== 'cable') continue;
    const key = `${place.of} ${place.id}`;
    at.set(key, { ...at.get(key), [place.setting]: value });
  }
  const settled = changes.map((change): Change => {
    if ((change.do !== 'device' && change.do !== 'cable') || change.new === null) return change;
    const key = `${change.do} ${change.id}`;
    const more = at.get(key);
    at.delete(key);
    if (!more) return change;
    return { ...change, new: withUsual<WithSettings>(change.new, more) } as Change;
  });
  // What is recorded already is only added to.
  for (const [key, more] of at) {
    const id = key.slice(key.indexOf(' ') + 1);
    const kind = key.startsWith('device ') ? 'device' : 'cable';
    const old = kind === 'device' ? own(wiring.devices, id) : own(wiring.cables, id);
    if (old)
      settled.push({
        do: kind,
        id,
        old,
        new: withUsual<WithSettings>(old, more),
      } as Change);
  }
  return settled;
}

/** What is taken alike. */
export interface TakenGroup {
  readonly id: string;
  /** 'current of the coil' */
  readonly name: string;
  readonly value: string;
  readonly because: string;
  readonly questions: readonly Question[];
}

/** What is taken as usual, each fact of one kind of thing once. */
export function takenGroups(taken: readonly Taken[], wiring: Wiring): readonly TakenGroup[] {
  const by = new Map<string, Taken[]>();
  for (const each of taken) {
    const key = `${each.question.place.setting}: ${each.value}: ${each.because}`;
    by.set(key, [...(by.get(key) ?? []), each]);
  }
  return [...by].map(([id, all]) => {
    const [{ question, value, because }] = all as [Taken, ...Taken[]];
    return {
      id,
      name: specAt(question.place, wiring)?.name ?? question.asks,
      value,
      because,
      questions: all.map((each) => each.question).sort((a, b) => BY_NUMBER.compare(a.id, b.id)),
    };
  });
}
