/** Looks the wiring through beside the page, draws it, lists it, and tries what may be joined. */
import { supplyDrawn } from '../../../engine/advice/supply-drawn.ts';
import { type Assessment, assess } from '../../../engine/assess/index.ts';
import { type Diagrams, layOut, planOf, symbolsOf } from '../../../engine/circuit/drawing/index.ts';
import { LISTS } from '../../../engine/circuit/lists/index.ts';
import { type Looked, photosOf, settledOf, WiringLook } from '../../../engine/circuit/whole/index.ts';
import { fitting, proposeWiring } from '../../../engine/circuit/wiring/index.ts';
import { askedOfWiring } from '../../../engine/control/index.ts';
import type { Refit } from '../../../engine/refit/types.ts';
import { type EndableLayouter, elkWorker } from './elk-worker.ts';
import { reconcile, reconcileWiring } from './reconcile.ts';
import type { WiringAsk, WiringReply } from './wiring-protocol.ts';

const watch = new WiringLook();
let refit: Refit | undefined;
let looked: Looked | undefined;
let assessed: Assessment | undefined;
let diagrams: Diagrams | undefined;
let library: EndableLayouter | undefined;
/** Number of the drawing that is wanted; another one, or none, ends it. */
let drawing = 0;
let settling: ReturnType<typeof setTimeout> | undefined;

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
    // Shown at once with what the drives took before; what they take now is a matter of the whole machine.
    looked = withResting(watch.look(refit), looked?.resting);
    post({ n: data.n, looked, whole: false });
    clearTimeout(settling);
    settling = setTimeout(() => settle(data.n), 0);
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
    case 'propose': {
      const proposal = proposeWiring(refit, askedOfWiring(refit));
      post({ n: data.n, proposed: { proposal, settled: settledOf(proposal, refit) } });
      return;
    }
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

function settle(n: number): void {
  if (!refit) return;
  try {
    assessed = assess(refit, assessed ? { previous: assessed } : {});
    looked = watch.look(refit, supplyDrawn(assessed));
    looked = withResting(looked, watch.resting(refit));
    post({ n, looked, whole: true });
  } catch (error) {
    post({ n, problem: `The supply could not be judged: ${String(error)}` });
  }
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

const post = (reply: WiringReply): void => self.postMessage(reply);
