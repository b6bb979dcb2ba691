/** Looks the wiring through beside the page, draws it, lists it, and tries what may be joined. */
import { supplyDrawn } from '../../../engine/advice/supply-drawn.ts';
import { type Assessment, assess } from '../../../engine/assess/index.ts';
import { type Diagrams, layOut, planOf, symbolsOf } from '../../../engine/circuit/drawing/index.ts';
import { LISTS } from '../../../engine/circuit/lists/index.ts';
import {
  assumedOf,
  type Looked,
  photosOf,
  restingOf,
  settledOf,
  WiringLook,
} from '../../../engine/circuit/whole/index.ts';
import { fitting, proposeWiring, readWiring } from '../../../engine/circuit/wiring/index.ts';
import { askedOfWiring } from '../../../engine/control/index.ts';
import type { Refit } from '../../../engine/refit/types.ts';
import { type EndableLayouter, elkWorker } from './elk-worker.ts';
import { reconcile, reconcileWiring } from './reconcile.ts';
import type { Proposed, WiringAsk, WiringReply } from './wiring-protocol.ts';

const watch = new WiringLook();
let refit: Refit | undefined;
let looked: Looked | undefined;
let assessed: Assessment | undefined;
let diagrams: Diagrams | undefined;
let library: EndableLayouter | undefined;
/** Number of the drawing that is wanted; another one, or none, ends it. */
let drawing = 0;
/** The look whose rest is still to be done; 0 where there is none. */
let unsettled = 0;
let settling: ReturnType<typeof setTimeout> | undefined;
/** Time for the page to ask for its drawing first, which needs nothing of the rest; in ms. */
const AFTER_PAGE = 150;

self.onmessage = ({ data }: MessageEvent<WiringAsk>) => {
  try {
    answer(data);
  } catch (error) {
    post({ n: data.n, problem: `The wiring could not be looked through: ${String(error)}` });
  }
};

function answer(data: WiringAsk): void {
  if (data.do === 'look') {
    refit = sameWhereEqual(data.refit);
    step(data.n, 'Reading devices and wires, and asking the rules', 1, 4);
    // Shown at once with what the drives took before; what they take now is a matter of the whole machine.
    looked = withResting(watch.look(refit), looked?.resting);
    post({ n: data.n, looked, whole: false });
    unsettled = data.n;
    later(AFTER_PAGE);
    return;
  }
  if (data.do === 'stop-looking') {
    unsettled = 0;
    clearTimeout(settling);
    return;
  }
  if (data.do === 'stop-drawing') {
    drawing = 0;
    library?.end();
    library = undefined;
    return;
  }
  if (!refit || !looked) {
    post({ n: data.n, problem: 'The wiring is not looked through yet; ask again in a moment.' });
    return;
  }
  switch (data.do) {
    case 'draw':
      void draw(data.n, refit, looked);
      return;
    case 'fitting':
      post({ n: data.n, fitting: fitting(refit.wiring, data.terminal, refit) });
      return;
    case 'try':
      post({ n: data.n, tried: watch.tryWire(refit, looked, data.wire) });
      return;
    case 'propose':
      post({ n: data.n, proposed: propose(data.n, refit) });
      return;
    case 'list':
      post({ n: data.n, list: LISTS[data.list](looked.read, { photos: photosOf(refit.wiring) }) });
  }
}

function sameWhereEqual(now: Refit): Refit {
  if (!refit) return now;
  return {
    ...now,
    parts: reconcile(refit.parts, now.parts),
    places: reconcile(refit.places, now.places),
    chains: reconcile(refit.chains, now.chains),
    wiring: reconcileWiring(refit.wiring, now.wiring),
  };
}

function propose(n: number, now: Refit): Proposed {
  step(n, 'Laying the wires', 1, 3);
  const proposal = proposeWiring(now, askedOfWiring(now), supplyDrawn(assess(now)));
  step(n, 'Putting in what is usual, and asking the rules', 2, 3);
  const settled = settledOf(proposal, now);
  step(n, 'Asking what rests on usual values', 3, 3);
  return {
    proposal,
    settled,
    assumed: assumedOf(proposal, now),
    resting: restingOf(settled, now),
    read: readWiring(settled.wiring, now),
  };
}

/** What is left of the look, piece by piece, so that questions of the page are answered in between. */
const REST = [
  [
    'Judging the whole machine: what the drives take',
    (now: Refit) => {
      assessed = assess(now, assessed ? { previous: assessed } : {});
    },
  ],
  [
    'Judging the supply',
    (now: Refit) => {
      looked = withResting(watch.look(now, supplyDrawn(assessed!)), looked?.resting);
    },
  ],
  [
    'Asking what rests on usual values',
    (now: Refit) => {
      looked = withResting(looked!, watch.resting(now));
    },
  ],
] as const;

/** Goes on with the rest of the look, after a moment for what the page asks. */
function later(wait = 0, at = 0): void {
  clearTimeout(settling);
  settling = setTimeout(() => settle(at), wait);
}

function settle(at: number): void {
  const n = unsettled;
  if (!refit || n === 0) return;
  const [says, does] = REST[at]!;
  step(n, says, at + 2, REST.length + 1);
  try {
    does(refit);
  } catch (error) {
    unsettled = 0;
    post({ n, problem: `The supply could not be judged: ${String(error)}` });
    return;
  }
  if (at + 1 < REST.length) {
    later(0, at + 1);
    return;
  }
  unsettled = 0;
  post({ n, looked: looked!, whole: true });
}

/** Until it is asked anew, what rested on usual values before. */
const withResting = (now: Looked, resting: Looked['resting']): Looked =>
  resting ? { ...now, resting } : now;

async function draw(n: number, now: Refit, { read }: Looked): Promise<void> {
  drawing = n;
  library ??= elkWorker();
  const plan = planOf(now, read);
  try {
    const drawn = await layOut(plan, library.layOut, {
      previous: diagrams,
      isCancelled: () => drawing !== n,
      onProgress: (done, all) => post({ n, done, all }),
    });
    // Another drawing has begun from where this one did.
    if (drawing !== n && drawing !== 0) {
      post({ n, drawn: null });
      return;
    }
    diagrams = drawn;
    const { sheets, laidOut, done, of } = drawn;
    post({ n, drawn: { sheets, symbols: symbolsOf(plan), laidOut, done, of } });
  } catch (error) {
    post(
      drawing === n
        ? { n, problem: `The diagrams could not be drawn: ${String(error)}` }
        : { n, drawn: null },
    );
  }
}

const step = (n: number, says: string, at: number, of: number): void => post({ n, step: { says, at, of } });

const post = (reply: WiringReply): void => self.postMessage(reply);
