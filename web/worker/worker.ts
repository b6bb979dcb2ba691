/** The engine, beside the page so that typing never waits for it. */
import {
  type Assessment,
  assess,
  next,
  type Remedy,
  type Step,
  seekRemedies,
  seekSpread,
  why,
  withOption,
} from '../../engine/assess/index.ts';
import { setPath } from '../../engine/assess/set-policy.ts';
import type { UnitSystem } from '../../engine/quantity/index.ts';
import { applyEdit } from '../../engine/refit/edit.ts';
import { findPlace } from '../../engine/refit/place.ts';
import type { Change, Refit } from '../../engine/refit/types.ts';
import type { Ask, Asked, Cancel, Reply, Snapshot } from './protocol.ts';
import { readingOf } from './reading.ts';
import { snapshot } from './snapshot.ts';
import { Sender } from './travel.ts';

/** What is recorded, and what is shown: the same, or a draft on top of it. */
let recorded: Assessment | undefined;
let shown: Assessment | undefined;
let known: readonly Step[] = [];
const cancelled = new Set<number>();

const sender = new Sender();
/** When the last draft came, so that long work can stand back while somebody types. */
let lastDraft = Number.NEGATIVE_INFINITY;

const send = (reply: Reply): void => self.postMessage(reply);

/** The answer without its snapshot, which goes beside it as a change. */
function sendAnswer(n: number, answer: unknown): void {
  if (answer instanceof Shown) {
    send({ n, answer: answer.rest, change: sender.change(answer.snapshot) });
  } else send({ n, answer });
}

/** An answer with a snapshot in it. */
class Shown {
  readonly snapshot: Snapshot;
  /** What else the answer holds; null when it is the snapshot alone. */
  readonly rest: object | null;

  constructor(snapshot: Snapshot, rest: object | null = null) {
    this.snapshot = snapshot;
    this.rest = rest;
  }
}

function record(refit: Refit, system?: UnitSystem): Snapshot {
  recorded = assess(refit, { previous: recorded?.refit.id === refit.id ? recorded : undefined, system });
  shown = recorded;
  known = next(recorded, 8);
  return snapshot(recorded, known);
}

const need = (): Assessment => {
  if (!recorded) throw new Error('no refit is open');
  return recorded;
};

/** Shows what changes would make of the refit. Changes that do not go are left out of the picture. */
function tryOut(changes: readonly Change[]): Snapshot {
  const base = need();
  const applied = applyEdit(base.refit, { changes });
  shown = applied.ok ? assess(applied.value, { previous: base }) : base;
  return snapshot(shown);
}

function draft(ask: Asked['draft']['ask']): Shown {
  lastDraft = performance.now();
  const base = need();
  if (ask === null) {
    shown = base;
    return new Shown(snapshot(base, known), { reading: null });
  }
  const { path, text } = ask;
  const set = setPath(base.refit, path, text, {
    ...(ask.basis ? { basis: ask.basis } : {}),
    ...(ask.note ? { note: ask.note } : {}),
  });
  const reading = readingOf({ path, text }, set);
  return new Shown(tryOut(reading.changes), { reading });
}

function remedyChanges(remedy: Remedy): readonly Change[] {
  const { refit } = need();
  if (remedy.kind === 'part') {
    const [place, chain = null] = remedy.path.split('.').reverse() as [string, string | null];
    const old = findPlace(refit, chain, place);
    return old ? [{ do: 'place', chain, place, old, new: { ...old, chosen: remedy.text } }] : [];
  }
  const set = setPath(refit, remedy.path, remedy.text);
  return set.ok ? set.value.changes : [];
}

/** Milliseconds without a keystroke after which long work goes on. */
const HAND_RESTS = 250;

const breathe = (): Promise<void> =>
  new Promise((done) => setTimeout(done, performance.now() - lastDraft < HAND_RESTS ? 50 : 0));

let spreadTurn = 0;

/**
 * Draws what is in doubt in the state that is shown, in pieces. Undefined when another state is shown by then: its own draws
 * follow.
 */
async function settle(n: number): Promise<Shown | undefined> {
  const mine = ++spreadTurn;
  const state = shown ?? need();
  const search = seekSpread(state);
  for (;;) {
    const piece = search.next();
    if (piece.done) {
      const drawn = assess(state.refit, { previous: state, spread: piece.value });
      const isRecorded = state === recorded;
      shown = drawn;
      if (isRecorded) {
        recorded = drawn;
        known = next(drawn, 8);
      }
      return new Shown(snapshot(drawn, known), { isRecorded });
    }
    send({ n, progress: piece.value });
    await new Promise((done) => setTimeout(done));
    if (mine !== spreadTurn || state !== shown || cancelled.delete(n)) return undefined;
  }
}

/** Milliseconds of long work without a look at who is typing. */
const STRETCH = 30;

/** Long work in pieces: shows how far it is, stands back while somebody types, and can be given up. */
async function inPieces<T>(n: number, search: Generator<number, T>): Promise<T | undefined> {
  let looked = Number.NEGATIVE_INFINITY;
  for (;;) {
    const piece = search.next();
    if (piece.done) return piece.value;
    if (performance.now() - looked < STRETCH) continue;
    send({ n, progress: piece.value });
    do await breathe();
    while (performance.now() - lastDraft < HAND_RESTS && !cancelled.has(n));
    if (cancelled.delete(n)) return undefined;
    looked = performance.now();
  }
}

async function work(message: Ask): Promise<unknown> {
  switch (message.do) {
    case 'open':
      recorded = undefined;
      return new Shown(record(message.ask.refit, message.ask.system));
    case 'apply': {
      let { refit } = need();
      for (const edit of message.ask.edits) {
        const applied = applyEdit(refit, edit);
        if (!applied.ok) throw new Error(applied.problem.message);
        refit = applied.value;
      }
      return new Shown(record(refit), { refit });
    }
    case 'draft':
      return draft(message.ask);
    case 'attempt':
      return new Shown(tryOut(message.ask.changes));
    case 'system':
      return new Shown(record(need().refit, message.ask.system));
    case 'settle':
      return settle(message.n);
    case 'why':
      return why(shown ?? need(), message.ask.id) ?? null;
    case 'remedies':
      return inPieces(message.n, seekRemedies(need(), message.ask.id));
    case 'remedyChanges':
      return remedyChanges(message.ask.remedy);
    case 'keep': {
      const { seekAllAdvice } = await import('../../engine/advice/index.ts');
      return inPieces(message.n, seekAllAdvice(need()));
    }
    case 'worth': {
      const { worthOf } = await import('../../engine/advice/index.ts');
      return worthOf(need().refit);
    }
    case 'axisModel': {
      const { axisModel } = await import('../../engine/advice/axis-model.ts');
      const { chain, parts } = message.ask;
      const base = shown ?? need();
      const refit = Object.entries(parts).reduce(
        (now, [place, part]) => withOption(now, chain, place, part),
        base.refit,
      );
      return axisModel(refit === base.refit ? base : assess(refit, { previous: base }), chain);
    }
    case 'pictures': {
      const { pictures } = await import('../../engine/assess/pictures/index.ts');
      const assessment = shown ?? need();
      const { chain } = message.ask;
      if (assessment.refit.chains.find(({ id }) => id === chain)?.kind !== 'spindle')
        return pictures(assessment, chain);
      const { spindleDemands } = await import('../../engine/work/spindle-demands.ts');
      return pictures(assessment, chain, { demands: spindleDemands(assessment) });
    }
    case 'bench': {
      const { bench } = await import('./bench.ts');
      return bench(need().refit, message.ask);
    }
  }
}

self.onmessage = async ({ data }: MessageEvent<Ask | Cancel>) => {
  if ('cancel' in data) {
    cancelled.add(data.cancel);
    return;
  }
  try {
    sendAnswer(data.n, await work(data));
  } catch (error) {
    send({ n: data.n, fault: error instanceof Error ? error.message : String(error) });
  }
};
