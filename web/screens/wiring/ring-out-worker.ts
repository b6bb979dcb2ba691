/** Works out beside the page what a meter should show; ended by ending the worker. */
import { type List, seekRingOutList } from '../../../engine/circuit/lists/index.ts';
import type { ReadWiring } from '../../../engine/circuit/wiring/index.ts';

export type RingOutReply =
  | { readonly share: number }
  | { readonly list: List }
  | { readonly problem: string };

/** Milliseconds between one word on how far it is and the next. */
const PIECE = 100;

self.onmessage = ({ data }: MessageEvent<ReadWiring>) => {
  try {
    const working = seekRingOutList(data);
    for (let told = performance.now(); ; ) {
      const step = working.next();
      if (step.done) {
        post({ list: step.value });
        return;
      }
      if (performance.now() < told + PIECE) continue;
      told = performance.now();
      post({ share: step.value });
    }
  } catch (error) {
    post({ problem: `The readings could not be worked out: ${String(error)}` });
  }
};

const post = (reply: RingOutReply): void => self.postMessage(reply);
