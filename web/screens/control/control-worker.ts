/** Compares controls and goes through auxiliaries beside the page, in pieces. */
import { type Assessment, assess } from '../../../engine/assess/index.ts';
import { seekChecked } from '../../../engine/control/auxiliaries/check.ts';
import {
  type AuxiliaryFinding,
  type Checked,
  type ControlReport,
  compareControls,
  openAll,
  together,
} from '../../../engine/control/index.ts';
import type { Refit } from '../../../engine/refit/types.ts';

export type ControlAsk = {
  readonly n: number;
  readonly refit: Refit;
  readonly of: 'control' | 'auxiliaries';
};

export interface AuxiliariesLooked {
  readonly checked: Readonly<Record<string, Checked>>;
  readonly together: readonly AuxiliaryFinding[];
  /** What cannot be read, by the id of the auxiliary. */
  readonly problems: Readonly<Record<string, string>>;
}

export type ControlReply =
  | { readonly n: number; readonly report: ControlReport }
  | { readonly n: number; readonly looked: AuxiliariesLooked; readonly share: number };

/** Milliseconds of work before something newer may come in. */
const PIECE = 40;
let assessed: Assessment | undefined;
let newest = 0;
/** What was gone through before, by kind and settings: only what is changed is gone through anew. */
const kept = new Map<string, Checked>();

self.onmessage = ({ data }: MessageEvent<ControlAsk>) => {
  newest = data.n;
  void (data.of === 'control' ? compare(data.n, data.refit) : look(data.n, data.refit));
};

const post = (reply: ControlReply): void => self.postMessage(reply);
const rest = (): Promise<void> => new Promise((next) => setTimeout(next, 0));

async function compare(n: number, refit: Refit): Promise<void> {
  assessed = assess(refit, assessed ? { previous: assessed } : undefined);
  post({ n, report: compareControls(assessed) });
}

async function look(n: number, refit: Refit): Promise<void> {
  const reports = openAll(refit);
  const { findings, problems: asks } = together(reports);
  const problems: Record<string, string> = {};
  for (const { auxiliary, problem } of reports) {
    const found = problem ?? asks.get(auxiliary.id);
    if (found) problems[auxiliary.id] = `${found.where ? `${found.where}: ` : ''}${found.message}`;
  }
  const checked: Record<string, Checked> = {};
  const say = (share: number): void =>
    post({ n, looked: { checked: { ...checked }, together: findings, problems }, share });
  say(0);
  let until = performance.now() + PIECE;
  for (const [at, { auxiliary, opened }] of reports.entries()) {
    if (!opened) continue;
    const key = JSON.stringify([auxiliary.kind, auxiliary.settings]);
    let found = kept.get(key);
    if (!found) {
      const search = seekChecked(opened.kind, opened.machine);
      for (let piece = search.next(); ; piece = search.next()) {
        if (piece.done) {
          found = piece.value;
          break;
        }
        if (performance.now() < until) continue;
        say((at + piece.value) / reports.length);
        await rest();
        if (newest !== n) return;
        until = performance.now() + PIECE;
      }
      if (kept.size > 200) kept.clear();
      kept.set(key, found);
    }
    checked[auxiliary.id] = found;
  }
  say(1);
}
