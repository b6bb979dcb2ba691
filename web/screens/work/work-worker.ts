/** Judges the wanted work beside the page, and runs threads and taps in time. */
import { type Assessment, assess } from '../../../engine/assess/index.ts';
import type { Refit } from '../../../engine/refit/types.ts';
import { ModelError } from '../../../engine/simulate/index.ts';
import {
  chartFor,
  type InStepAnswer,
  type JudgedWork,
  judgeOne,
  type NotInStep,
  runInStep,
  seekDrawn,
  type WorkChart,
  type WorkMachine,
  workMachineOf,
} from '../../../engine/work/index.ts';

export type WorkAsk =
  /** `first`: id of the work that is looked at. */
  | { readonly n: number; readonly refit: Refit; readonly first: string }
  | { readonly run: string; readonly n: number };

export type WorkReply =
  | { readonly n: number; readonly one: JudgedWork; readonly done: number; readonly all: number }
  | { readonly n: number; readonly drawn: number }
  | { readonly n: number; readonly judged: readonly JudgedWork[]; readonly chart: WorkChart | null }
  | { readonly n: number; readonly run: string; readonly answer: InStepAnswer | NotInStep };

let assessed: Assessment | undefined;
let machine: WorkMachine | undefined;
let judged: readonly JudgedWork[] = [];
let newest = 0;

self.onmessage = ({ data }: MessageEvent<WorkAsk>) => {
  newest = data.n;
  if ('run' in data) post({ n: data.n, run: data.run, answer: runOne(data.run) });
  else void judge(data);
};

async function judge({ n, refit, first }: Extract<WorkAsk, { readonly refit: Refit }>): Promise<void> {
  assessed = assess(refit, assessed?.refit.id === refit.id ? { previous: assessed } : undefined);
  machine = workMachineOf(assessed);
  const all = Object.values(refit.work);
  const found = new Map<string, JudgedWork>();
  for (const each of [...all.filter(({ id }) => id === first), ...all.filter(({ id }) => id !== first)]) {
    const one = judgeOne(machine, each);
    found.set(each.id, one);
    judged = [...found.values()];
    post({ n, one, done: found.size, all: all.length });
    // A newer refit may have come in meanwhile.
    await new Promise((next) => setTimeout(next, 0));
    if (newest !== n) return;
  }
  judged = all.map(({ id }) => found.get(id)!);
  post({ n, judged, chart: chartFor(machine, judged) });
  await draw(n, assessed, machine);
}

/** ms of drawing between two looks at what came in meanwhile. */
const AT_A_STRETCH = 60;

/** The same with chances, once everything is judged: it takes a few seconds. */
async function draw(n: number, assessment: Assessment, on: WorkMachine): Promise<void> {
  const work = seekDrawn(assessment, on, judged);
  let since = performance.now();
  for (;;) {
    const step = work.next();
    if (step.done) {
      judged = step.value;
      post({ n, judged, chart: chartFor(on, judged) });
      return;
    }
    if (performance.now() - since < AT_A_STRETCH) continue;
    post({ n, drawn: step.value });
    await new Promise((next) => setTimeout(next, 0));
    if (newest !== n) return;
    since = performance.now();
  }
}

function runOne(id: string): InStepAnswer | NotInStep {
  const one = judged.find(({ work }) => work.id === id);
  if (!machine || !one) return { says: 'It is not judged yet.', needs: [] };
  try {
    return runInStep(machine, one);
  } catch (fault) {
    if (fault instanceof ModelError)
      return { says: fault.problems.map(({ message }) => message).join(' '), needs: [] };
    throw fault;
  }
}

const post = (reply: WorkReply): void => self.postMessage(reply);
