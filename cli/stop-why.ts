/** One finding of the stop circuit with what it rests on, for `fettle why`. */
import { stopOffers } from '../engine/advice/stop-offers.ts';
import type { Assessment } from '../engine/assess/index.ts';
import {
  analyseStop,
  NO_CIRCUIT,
  type StopAnalysis,
  type StopFinding,
} from '../engine/circuit/stop/index.ts';
import { readWiring } from '../engine/circuit/wiring/index.ts';
import { nearest } from '../engine/quantity/nearest.ts';
import { shown } from './arguments.ts';
import { need, Refusal } from './refusal.ts';

/** Names of findings of the stop circuit begin so, and no others do. */
const OF_STOP = 'stop.';

export const isOfStop = (id: string): boolean => id.trim().toLowerCase().startsWith(OF_STOP);

export interface StopWhy {
  readonly finding: StopFinding;
  readonly looked: StopAnalysis;
}

/** Throws a Refusal where there is no circuit, none that can be read, or no such finding. */
export function stopWhy(assessment: Assessment, id: string): StopWhy {
  const { refit } = assessment;
  if (refit.stop === null) throw new Refusal(`${NO_CIRCUIT} “fettle stop” offers some to lay out.`);
  const looked = need(
    analyseStop(refit.stop, stopOffers(assessment, refit.stop), readWiring(refit.wiring, refit)),
  );
  const wanted = id.trim().toLowerCase();
  const finding = looked.findings.find((each) => each.id.toLowerCase() === wanted);
  if (finding) return { finding, looked };
  const near = nearest(
    shown(wanted),
    looked.findings.map((each) => each.id),
  );
  throw new Refusal(
    `The stop circuit of “${refit.name}” has no finding “${shown(id)}”. ${near ? `Did you mean ${near}?` : '“fettle stop” shows the names of all.'}`,
  );
}

export const stopWhyJson = ({ finding }: StopWhy) => ({ format: 'fettle-stop-why', version: 1, ...finding });
